package contract

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// written is a schema as it stands in the file.
type written struct {
	Ref         string             `json:"$ref"`
	Title       string             `json:"title"`
	Description string             `json:"description"`
	Symbol      string             `json:"symbol"`
	Type        json.RawMessage    `json:"type"`
	Quantity    string             `json:"quantity"`
	Units       []string           `json:"units"`
	Minimum     *float64           `json:"minimum"`
	Maximum     *float64           `json:"maximum"`
	MinItems    int                `json:"minItems"`
	MaxItems    int                `json:"maxItems"`
	MinLength   int                `json:"minLength"`
	MaxLength   int                `json:"maxLength"`
	Format      string             `json:"format"`
	Pattern     string             `json:"pattern"`
	Enum        []any              `json:"enum"`
	EnumTitles  []string           `json:"enumTitles"`
	Default     json.RawMessage    `json:"default"`
	Examples    json.RawMessage    `json:"examples"`
	Needs       []string           `json:"needs"`
	Asks        []string           `json:"asks"`
	Required    []string           `json:"required"`
	Rows        string             `json:"rows"`
	Fills       map[string]string  `json:"fills"`
	Usual       string             `json:"usual"`
	LikeRow     string             `json:"likeRow"`
	Boat        string             `json:"boat"`
	Unkept      string             `json:"unkept"`
	After       string             `json:"after"`
	ReadBy      string             `json:"readBy"`
	Bare        string             `json:"bare"`
	Group       string             `json:"group"`
	Seen        bool               `json:"seen"`
	Difference  float64            `json:"difference"`
	Level       sheet.Level        `json:"level"`
	Formula     string             `json:"formula"`
	Method      string             `json:"method"`
	Rests       []string           `json:"rests"`
	Source      string             `json:"source"`
	Basis       string             `json:"basis"`
	Compare     any                `json:"compare"` // false or a name
	JudgedOnly  bool               `json:"judgedOnly"`
	Ways        []string           `json:"ways"`
	NotUnder    []string           `json:"notUnder"`
	IfNone      string             `json:"ifNone"`
	Once        bool               `json:"once"`
	QuotientOf  []string           `json:"quotientOf"`
	AgreesWith  []string           `json:"agreesWith"`
	NearTo      map[string]float64 `json:"nearTo"`
	OfReading   bool               `json:"ofReading"`
	Chance      bool               `json:"chance"`
	Probability bool               `json:"probability"`
	Setting     bool               `json:"setting"`
	Counted     string             `json:"counted"`
	Never       *float64           `json:"never"`
	FollowedTo  *float64           `json:"followedTo"`
	Properties  json.RawMessage    `json:"-"`
	Items       json.RawMessage    `json:"-"`
	Others      json.RawMessage    `json:"-"`
}

// readWritten reads a schema; what holds schemas of its own stays as it stands.
func readWritten(raw json.RawMessage) (*written, error) {
	names, values, err := split(raw)
	if err != nil {
		return nil, err
	}
	var w written
	own := make([]Member, 0, len(names))
	for i, name := range names {
		switch name {
		case "properties":
			w.Properties = values[i]
		case "items":
			w.Items = values[i]
		case "additionalProperties":
			w.Others = values[i]
		case "$defs":
		default:
			own = append(own, Member{name, values[i]})
		}
	}
	return &w, json.Unmarshal(ObjectOf(own), &w)
}

func (r *reader) property(name string, raw json.RawMessage) (*Property, error) {
	w, err := readWritten(raw)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if w.Ref != "" {
		of, target, err := r.follow(w.Ref)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		p, err := of.property(name, target)
		if err != nil {
			return nil, err
		}
		return p, r.fill(p, w)
	}
	p := &Property{Name: name, Level: sheet.Main, byName: map[string]*Property{}}
	return p, r.fill(p, w)
}

// fill writes what a schema says of itself into p; of a reference p holds
// already what stands where it points.
func (r *reader) fill(p *Property, w *written) error {
	if w.Quantity != "" {
		kind, ok := quantity.Lookup(w.Quantity)
		if !ok {
			return fmt.Errorf("%s: %q is not a kind of quantity", p.Name, w.Quantity)
		}
		p.Kind = kind
	}
	w.overlay(p)
	if len(w.Type) > 0 {
		types, err := typeNames(w.Type)
		if err != nil {
			return fmt.Errorf("%s: %w", p.Name, err)
		}
		p.Types = types
	}
	if len(w.Properties) > 0 {
		keys, values, err := split(w.Properties)
		if err != nil {
			return fmt.Errorf("%s: %w", p.Name, err)
		}
		p.Properties, p.byName = nil, map[string]*Property{}
		for i, key := range keys {
			child, err := r.property(key, values[i])
			if err != nil {
				return fmt.Errorf("%s/%w", p.Name, err)
			}
			child.Index = i
			p.Properties = append(p.Properties, child)
			p.byName[key] = child
		}
	}
	if len(w.Items) > 0 {
		items, err := r.property(p.Name, w.Items)
		if err != nil {
			return err
		}
		p.Items = items
	}
	if len(w.Others) > 0 && w.Others[0] == '{' {
		others, err := r.property(p.Name, w.Others)
		if err != nil {
			return err
		}
		p.Others = others
	}
	return nil
}

// overlay writes a schema's own keywords over p; beside a reference this lets
// a place give its own help, symbol and boat pointer.
func (w *written) overlay(p *Property) {
	set := func(to *string, from string) {
		if from != "" {
			*to = from
		}
	}
	set(&p.Title, w.Title)
	set(&p.Description, w.Description)
	set(&p.Symbol, w.Symbol)
	set(&p.Format, w.Format)
	set(&p.Pattern, w.Pattern)
	set(&p.Rows, w.Rows)
	if w.Fills != nil {
		p.Fills = w.Fills
	}
	set(&p.Typical, w.Usual)
	set(&p.LikeRow, w.LikeRow)
	set(&p.Boat, w.Boat)
	set(&p.Unkept, w.Unkept)
	set(&p.After, w.After)
	set(&p.ReadBy, w.ReadBy)
	set(&p.Bare, w.Bare)
	set(&p.Group, w.Group)
	p.Seen = p.Seen || w.Seen
	set(&p.Formula, w.Formula)
	set(&p.Method, w.Method)
	set(&p.Source, w.Source)
	set(&p.Basis, w.Basis)
	if w.Ways != nil {
		p.Ways = w.Ways
	}
	if w.QuotientOf != nil {
		p.QuotientOf = w.QuotientOf
	}
	if w.Once {
		p.Once = true
	}
	if w.IfNone != "" {
		p.IfNone = w.IfNone
	}
	if w.NotUnder != nil {
		p.NotUnder = w.NotUnder
	}
	if w.AgreesWith != nil {
		p.AgreesWith = w.AgreesWith
	}
	p.OfReading = p.OfReading || w.OfReading
	if w.NearTo != nil {
		p.NearTo = nil
		for _, input := range slices.Sorted(maps.Keys(w.NearTo)) {
			p.NearTo = append(p.NearTo, Near{input, w.NearTo[input]})
		}
	}
	p.Chance = p.Chance || w.Chance
	p.Probability = p.Probability || w.Probability || w.Chance
	if w.Difference != 0 {
		p.Between = w.Difference
	}
	p.Setting = p.Setting || w.Setting
	if w.Counted != "" {
		p.CountedIn, p.CountedFor, _ = strings.Cut(w.Counted, "/")
	}
	p.JudgedOnly = p.JudgedOnly || w.JudgedOnly
	if w.Never != nil {
		p.InfiniteFrom = w.Never
	}
	if w.FollowedTo != nil {
		p.FollowedTo = w.FollowedTo
	}
	switch c := w.Compare.(type) {
	case bool:
		p.NoCompare = !c
	case string:
		p.SizedBy = c
	}
	if w.Level != "" {
		p.Level = w.Level
	}
	if len(w.Units) == 2 {
		p.Units = [2]string{w.Units[0], w.Units[1]}
	}
	if w.Minimum != nil {
		p.Minimum = w.Minimum
	}
	if w.Maximum != nil {
		p.Maximum = w.Maximum
	}
	if p.Kind != nil {
		p.Shown = p.Kind.In(p.Units[0], p.Units[1])
	}
	if w.MinItems > 0 {
		p.MinItems = w.MinItems
	}
	if w.MaxItems > 0 {
		p.MaxItems = w.MaxItems
	}
	if w.Enum != nil {
		p.Enum = nil
	}
	if w.MinLength > 0 {
		p.MinLength = w.MinLength
	}
	if w.MaxLength > 0 {
		p.MaxLength = w.MaxLength
	}
	for _, e := range w.Enum {
		p.Enum = append(p.Enum, fmt.Sprint(e))
	}
	if w.EnumTitles != nil {
		p.EnumTitles = w.EnumTitles
	}
	if len(w.Default) > 0 {
		p.Default, _ = Decode(w.Default) // the document was read as JSON before
	}
	if len(w.Examples) > 0 {
		examples, _ := Decode(w.Examples)
		p.Examples, _ = examples.([]any)
	}
	if w.Needs != nil {
		p.Needs = w.Needs
	}
	if w.Asks != nil {
		p.Asks = w.Asks
	}
	if w.Required != nil {
		p.Required = w.Required
	}
	if w.Rests != nil {
		p.DependsOn = w.Rests
	}
}

// typeNames reads the keyword "type", one name or a list of them.
func typeNames(raw json.RawMessage) ([]string, error) {
	if len(raw) == 0 {
		return nil, nil
	}
	var many []string
	if raw[0] == '[' {
		err := json.Unmarshal(raw, &many)
		return many, err
	}
	var one string
	err := json.Unmarshal(raw, &one)
	return []string{one}, err
}
