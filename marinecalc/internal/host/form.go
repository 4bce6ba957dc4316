// Package host is what other programs ask for besides sheets: the form of a
// calculation for whatever draws forms (form.go, choices.go), the rules in
// force (rules.go), and a quantity in another unit (convert.go).
package host

import (
	"cmp"
	"encoding/json"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// dialect is the one of JSON Schema that form generators agree on.
const dialect = "http://json-schema.org/draft-07/schema#"

// field is one place of a form as a JSON Schema that refers to nothing else.
type field struct {
	Dialect     string   `json:"$schema,omitempty"`
	Title       string   `json:"title,omitempty"`
	Description string   `json:"description,omitempty"`
	Type        string   `json:"type"`
	Format      string   `json:"format,omitempty"`
	Pattern     string   `json:"pattern,omitempty"`
	OneOf       []word   `json:"oneOf,omitempty"`
	Default     any      `json:"default,omitempty"`
	Examples    []any    `json:"examples,omitempty"`
	Minimum     *float64 `json:"minimum,omitempty"`
	Maximum     *float64 `json:"maximum,omitempty"`
	MinLength   int      `json:"minLength,omitempty"`
	MaxLength   int      `json:"maxLength,omitempty"`
	MinItems    int      `json:"minItems,omitempty"`
	MaxItems    int      `json:"maxItems,omitempty"`
	Items       *field   `json:"items,omitempty"`
	Required    []string `json:"required,omitempty"`
	Properties  members  `json:"properties,omitempty"`
	Others      *bool    `json:"additionalProperties,omitempty"`
	Quantity    string   `json:"quantity,omitempty"`
	Units       []string `json:"units,omitempty"`
}

// word is something that can be picked.
type word struct {
	Const string `json:"const"`
	Title string `json:"title"`
}

// members are the places of an object, in the order of the form.
type members []contract.Member

// MarshalJSON keeps the order.
func (m members) MarshalJSON() ([]byte, error) { return contract.ObjectOf(m), nil }

// Form is the input of a calculation as a JSON Schema by itself: what can be
// picked with its titles, defaults, and units in the help. What stands in the
// boat, by given, need not be typed. The inputs that stand first on the sheet
// do so here, and those that are rarely typed last.
func Form(c *contract.Calculation, book *rules.Book, given map[string]calc.Given) (json.RawMessage, error) {
	f := former{book, given}
	out, err := f.field(c.Input, nil, c.Input)
	if err != nil {
		return nil, err
	}
	out.Dialect, out.Title, out.Description = dialect, c.Title, c.Answers
	return json.Marshal(out)
}

type former struct {
	book  *rules.Book
	given map[string]calc.Given
}

// field is the place of a property that stands in another.
func (f former) field(p, in, top *contract.Property) (*field, error) {
	out := &field{Title: p.Title, Description: p.Description, Type: typeOf(p), Format: p.Format, Pattern: p.Pattern,
		MinLength: p.MinLength, MaxLength: p.MaxLength, MinItems: p.MinItems, MaxItems: p.MaxItems}
	switch {
	case p.Kind != nil:
		f.quantity(out, p)
	case out.Type == "object":
		return out, f.object(out, p, top)
	case out.Type == "array" && p.Items != nil:
		var err error
		if out.Items, err = f.field(p.Items, p, top); err != nil {
			return nil, err
		}
	default:
		out.Default, out.Minimum, out.Maximum = p.Default, p.Minimum, p.Maximum
	}
	out.Examples = p.Examples
	f.choices(out, p, in)
	if given, has := f.given[p.Name]; has && in == top {
		out.Description = joined(out.Description, "The boat gives "+strings.TrimSuffix(given.Text, ".")+".")
	}
	return out, nil
}

// choices puts in what can be picked. Of an open table it is proposed, since
// other words may be written too.
func (f former) choices(out *field, p, in *contract.Property) {
	table := f.book.Table(p.Rows)
	if out.Type != "string" || p.Kind != nil || len(p.Enum) == 0 && table == nil {
		return
	}
	list := Choices(p, in, f.book)
	if table != nil && table.Open {
		out.Examples = nil
		for _, c := range list {
			out.Examples = append(out.Examples, c.Pick)
		}
		return
	}
	for _, c := range list {
		out.OneOf = append(out.OneOf, word{c.Pick, cmp.Or(c.Name, c.Pick)})
	}
	out.Examples = nil // they are among what can be picked
}

func (f former) object(out *field, p, top *contract.Property) error {
	no := false
	out.Others, out.Required = &no, p.Required
	ordered := slices.Clone(p.Properties)
	place := func(q *contract.Property) int {
		switch i := slices.Index(p.Asks, q.Name); {
		case i >= 0:
			return i
		case q.Level == sheet.Detail:
			return len(p.Asks) + 1
		}
		return len(p.Asks)
	}
	sort.SliceStable(ordered, func(i, j int) bool { return place(ordered[i]) < place(ordered[j]) })
	for _, q := range ordered {
		one, err := f.field(q, p, top)
		if err != nil {
			return err
		}
		text, err := json.Marshal(one)
		if err != nil {
			return err
		}
		out.Properties = append(out.Properties, contract.Member{Name: q.Name, Value: text})
		if _, given := f.given[q.Name]; p == top && !given && Required(q, p, f.book) {
			out.Required = append(out.Required, q.Name)
		}
	}
	return nil
}

// quantity is a text with its unit, as people type it.
func (f former) quantity(out *field, p *contract.Property) {
	out.Type, out.Quantity, out.Units = "string", p.Kind.Name, p.Kind.Units()
	out.Description = joined(out.Description, unitsOf(p))
	if allowed := contract.AllowedRange(p); allowed != "" {
		out.Description = joined(out.Description, "From "+allowed+".")
		if p.Minimum == nil {
			out.Description = strings.Replace(out.Description, "From up to", "Up to", 1)
		}
	}
	switch v := p.Default.(type) {
	case json.Number:
		si, _ := v.Float64() // it was read as a number before
		out.Default = typedAs(p, si)
	default:
		out.Default = v
	}
}

func unitsOf(p *contract.Property) string {
	if p.Kind.Name == quantity.KindMoney {
		return "With its currency, such as 120 EUR."
	}
	var named []string
	for _, unit := range p.Kind.Units() {
		if unit != "" {
			named = append(named, unit)
		}
	}
	if p.Kind.SIUnit() == "" {
		return "A plain number, or in " + strings.Join(named, ", ") + "."
	}
	return "With its unit: " + strings.Join(named, ", ") + "."
}

// typedAs is a number in SI as a text that reads back as the same one.
func typedAs(p *contract.Property, si float64) string {
	for _, unit := range []string{p.Units[0], p.Kind.Usual(quantity.Metric)} {
		if x, is := p.Kind.Convert(si, unit); is {
			text := strings.TrimSpace(strconv.FormatFloat(x, 'g', 15, 64) + " " + unit)
			if r, err := p.Kind.Parse(text); err == nil && r.SI == si {
				return text
			}
		}
	}
	return strings.TrimSpace(strconv.FormatFloat(si, 'g', -1, 64) + " " + p.Kind.SIUnit())
}

// typeOf is the one type of a place: a text where it may be a text or a number.
func typeOf(p *contract.Property) string {
	switch {
	case p.Properties != nil:
		return "object"
	case len(p.Types) == 0 || slices.Contains(p.Types, "string"):
		return "string"
	}
	return p.Types[0]
}

func joined(a, b string) string { return strings.TrimSpace(a + " " + b) }
