package contract

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// quantityKeyword teaches the validator the keyword "quantity": a text in
// its place must be a quantity of that kind, inside minimum and maximum.
type quantityKeyword struct{}

// Compile reads the keyword where a schema has it.
func (quantityKeyword) Compile(_ jsonschema.CompilerContext, m map[string]any) (jsonschema.ExtSchema, error) {
	name, has := m["quantity"]
	if !has {
		return nil, nil
	}
	text, _ := name.(string)
	kind, ok := quantity.Lookup(text)
	if !ok {
		return nil, fmt.Errorf("quantity: %v is not a kind of quantity", name)
	}
	k := quantityCheck{kind: kind, min: math.Inf(-1), max: math.Inf(1)}
	if n, ok := m["minimum"].(json.Number); ok {
		k.min, _ = n.Float64()
	}
	if n, ok := m["maximum"].(json.Number); ok {
		k.max, _ = n.Float64()
	}
	return k, nil
}

type quantityCheck struct {
	kind     *quantity.Kind
	min, max float64
}

// Validate refuses a text that is not such a quantity. What exactly is wrong
// is worked out again when the problem is put into words.
func (k quantityCheck) Validate(ctx jsonschema.ValidationContext, v any) error {
	text, ok := v.(string)
	if !ok {
		return nil // bare numbers are held against minimum and maximum by the standard keywords
	}
	if !k.allows(text) {
		return ctx.Error("quantity", "not an allowed quantity")
	}
	return nil
}

// allows tells whether a text is such a quantity.
func (k quantityCheck) allows(text string) bool {
	r, err := k.kind.Parse(text)
	return err == nil && !outside(r.SI, k.min, k.max)
}

// outside allows the last digit of a limit that was converted from another
// unit: 300 mm must not be beyond 0.3 m.
func outside(v, lo, hi float64) bool {
	slack := 1e-12 * math.Abs(v)
	return v < lo-slack || v > hi+slack
}

// check runs the validator and puts every leaf of its findings into words.
// The validator's own panics, which some of its inputs are known to cause,
// become a problem too. Where it is open, members that it does not know are no
// problem.
func check(s *jsonschema.Schema, root *Property, value any, open bool) (found problem.List) {
	defer func() {
		if p := recover(); p != nil {
			found = one("", fmt.Sprint("the input could not be checked: ", p), "", "report this together with the input")
		}
	}()
	if isCrowded(root, value, open) {
		return crowded(nil, root, value, open).Few()
	}
	if fine(s, value) {
		return nil
	}
	err := s.Validate(value)
	if err == nil {
		return nil
	}
	var failed *jsonschema.ValidationError
	if !errors.As(err, &failed) {
		return one("", err.Error(), "", "")
	}
	w := wording{root: root, value: value, open: open}
	w.leaves(failed)
	return w.list.Sorted().Few()
}

func (w *wording) tooMany(where string, p *Property) {
	w.list = append(w.list, problem.Problem{Where: where, What: fmt.Sprintf("%s has too many entries", label(p)), Allowed: fmt.Sprintf("at most %d", p.MaxItems), Kind: problem.TooLarge})
}

// wrongLength says of a text how long it is and may be, which the validator
// says in a formula.
func (w *wording) wrongLength(where string, p *Property, keyword, message string) {
	var limit, length int
	if _, err := fmt.Sscanf(strings.NewReplacer("<=", "", ">=", "").Replace(message), "length must be %d, but got %d", &limit, &length); err != nil {
		w.list.Add(where, label(p)+": "+Shorten(message), "", example(p))
		return
	}
	found := problem.Problem{Where: where, What: fmt.Sprintf("%s has %d characters", label(p), length), Allowed: fmt.Sprintf("at most %d", limit), Kind: problem.TooLarge}
	if keyword == "minLength" {
		found.Allowed, found.Hint, found.Kind = fmt.Sprintf("at least %d", limit), example(p), ""
	}
	w.list = append(w.list, found)
}

// wrongForm says of a text how it has to be written. The validator says it by
// its own expression.
func (w *wording) wrongForm(where string, p *Property, value any) {
	text, _ := value.(string)
	what, allowed, hint := fmt.Sprintf("%s: %s is not written as it has to be", label(p), Shorten(strconv.Quote(text))), "", example(p)
	switch {
	case p.Format == "date":
		what, allowed = fmt.Sprintf("%s: %s is no date", label(p), Shorten(strconv.Quote(text))), "year-month-day"
		if at, err := time.Parse(time.RFC3339, text); err == nil {
			hint = fmt.Sprintf("write %q; a time of day has a place of its own beside it where it counts", at.Format(time.DateOnly))
		}
	case strings.TrimSpace(text) == "":
		what, allowed = label(p)+" is empty", "a text with letters in it"
	}
	w.list.Add(where, what, allowed, hint)
}

// mostProblems caps the problems that are told of one text. A few times as many
// are looked at, so that those told are the first ones by place.
const mostProblems = problem.Most

// wording turns the validator's findings into problems for people.
type wording struct {
	root  *Property
	value any
	open  bool // unknown members are let through
	list  problem.List
}

func (w *wording) leaves(e *jsonschema.ValidationError) {
	for _, c := range e.Causes {
		if len(w.list) < 20*mostProblems {
			w.leaves(c)
		}
	}
	if len(e.Causes) == 0 {
		w.put(e)
	}
}

func (w *wording) put(e *jsonschema.ValidationError) {
	keyword := e.KeywordLocation[strings.LastIndexByte(e.KeywordLocation, '/')+1:]
	where := e.InstanceLocation
	if plain, err := url.PathUnescape(where); err == nil { // the validator escapes its pointers for use in a URL
		where = plain
	}
	tokens := Tokens(where)
	p, _ := w.root.At(tokens)
	value, _ := Resolve(w.value, tokens)
	switch keyword {
	case "quantity":
		w.quantity(where, p, value)
	case "type":
		Refuse(&w.list, p, where, fmt.Sprintf("%s is %s", label(p), typeOf(p, value)), example(p), "")
	case "minimum", "maximum", "exclusiveMinimum", "exclusiveMaximum":
		w.bareNumber(where, p, value)
	case "enum", "const":
		w.list.Add(where, fmt.Sprintf("%s is not one of the words for %s", Shorten(fmt.Sprint(value)), label(p)), strings.Join(p.Enum, ", "), problem.DidYouMean(fmt.Sprint(value), p.Enum))
	case "additionalProperties":
		if w.open {
			return
		}
		w.unknownNames(where, p, value)
	case "required":
		w.lacking(where, p, value)
	case "minItems":
		w.list.Add(where, fmt.Sprintf("%s has too few entries", label(p)), fmt.Sprintf("at least %d", p.MinItems), "")
	case "maxItems":
		w.tooMany(where, p)
	case "format", "pattern":
		w.wrongForm(where, p, value)
	case "minLength", "maxLength":
		w.wrongLength(where, p, keyword, e.Message)
	default:
		w.list.Add(where, label(p)+": "+Shorten(e.Message), "", example(p))
	}
}

// quantity explains a text that was refused as a quantity.
func (w *wording) quantity(where string, p *Property, value any) {
	text, _ := value.(string)
	r, err := p.Kind.Parse(text)
	if err == nil {
		w.beyond(where, p, r.SI, text)
		return
	}
	NotRead(&w.list, p, where, err)
}

func (w *wording) bareNumber(where string, p *Property, value any) {
	n, _ := value.(json.Number)
	f, _ := n.Float64()
	w.beyond(where, p, f, n.String())
}

// beyond explains a value outside its range and, for a bare number, tries
// the units that people most likely meant.
func (w *wording) beyond(where string, p *Property, si float64, text string) {
	low := p.Minimum != nil && si < *p.Minimum
	side := "above"
	if low {
		side = "below"
	}
	hint := ""
	if f, err := json.Number(text).Float64(); err == nil && p.Kind != nil {
		for _, unit := range p.Units {
			if r, err := p.Kind.Parse(text + " " + unit); unit != "" && err == nil && !outside(r.SI, bound(p.Minimum, -1), bound(p.Maximum, 1)) {
				hint = fmt.Sprintf("a bare number is in %s; write %q if %v %s was meant", p.Kind.Units()[0], text+" "+unit, f, unit)
				break
			}
		}
	}
	shown := text
	if p.Kind != nil && hint != "" {
		shown += " " + p.Kind.Units()[0]
	}
	if si == 0 && low && hint == "" {
		hint = strings.TrimSpace("leave it out where it was not measured. " + p.IfNone)
	}
	w.list.Add(where, fmt.Sprintf("%s %s is %s what is allowed", label(p), shown, side), AllowedRange(p), hint)
}

func bound(limit *float64, sign int) float64 {
	if limit == nil {
		return math.Inf(sign)
	}
	return *limit
}

func (w *wording) unknownNames(where string, p *Property, value any) {
	object, _ := value.(map[string]any)
	names := p.names()
	found := 0
	for _, name := range slices.Sorted(maps.Keys(object)) {
		if found > mostProblems {
			return
		}
		if p.Child(name) == nil {
			found++
			w.list.Add(where+Pointer([]string{name}), fmt.Sprintf("%q is not a name known here", Shorten(name)), strings.Join(names, ", "), problem.DidYouMean(name, names))
		}
	}
}

// lacking names every required member that an object does not have.
func (w *wording) lacking(where string, p *Property, value any) {
	object, _ := value.(map[string]any)
	for _, name := range p.Required {
		child := p.Child(name)
		if _, has := object[name]; !has && child != nil {
			Refuse(&w.list, child, where+Pointer([]string{name}), label(child)+" is missing", example(child), problem.Missing)
		}
	}
}

// Shorten cuts what is quoted from an input to what one reads.
func Shorten(text string) string {
	const most = 160 // bytes
	if len(text) > most {
		return strings.ToValidUTF8(text[:most], "") + "…"
	}
	return text
}

func label(p *Property) string {
	switch {
	case p.Title != "":
		return p.Title
	case p.Name != "":
		return p.Name
	default:
		return "the input"
	}
}

func typeOf(p *Property, v any) string {
	switch v.(type) {
	case nil:
		return "empty (null)"
	case bool:
		return "a yes or no"
	case json.Number:
		if p.Kind == nil && slices.Contains(p.Types, "integer") {
			return "no whole number"
		}
		return "a bare number"
	case string:
		return "a text"
	case []any:
		return "a list"
	default:
		return "an object"
	}
}

// Refuse adds a problem with what may stand in a property's place.
func Refuse(l *problem.List, p *Property, where, what, hint string, kind problem.Kind) {
	l.Add(where, what, "", hint)
	last := &(*l)[len(*l)-1]
	last.Kind = kind
	last.Allowed, last.Bare = allowedTypes(p)
}

// allowedTypes says in words what may stand in a property's place, and in
// which SI unit a bare number is read there, where it has one.
func allowedTypes(p *Property) (words, bare string) {
	if p.Kind != nil && p.Kind.Name == "money" {
		return "an amount of money with its currency, or a bare number in the currency of the others", ""
	}
	if p.Kind != nil {
		kind := "a " + strings.ReplaceAll(p.Kind.Name, "-", " ")
		units := p.Kind.Units()
		switch {
		case units[0] != "":
			return kind + " with its unit", units[0]
		case len(units) > 1:
			return kind + " as a bare number, or with " + strings.Join(units[1:], ", "), ""
		}
		return kind + " as a bare number", ""
	}
	switch {
	case len(p.Enum) > 0:
		return strings.Join(p.Enum, ", "), ""
	case p.Format == "date":
		return "year-month-day", ""
	}
	types := map[string]string{"string": "a text", "number": "a number", "integer": "a whole number", "boolean": "true or false", "array": "a list", "object": "an object"}
	var out []string
	for _, t := range p.Types {
		out = append(out, types[t])
	}
	return strings.Join(out, " or "), ""
}

// AllowedRange says minimum and maximum in the units people use, metric and US.
func AllowedRange(p *Property) string {
	show := func(v float64) string {
		if p.Kind == nil {
			return fmt.Sprint(v)
		}
		return p.Shown.Print(v, quantity.Both)
	}
	switch {
	case p.Minimum != nil && p.Maximum != nil:
		return show(*p.Minimum) + " to " + show(*p.Maximum)
	case p.Minimum != nil:
		return show(*p.Minimum) + " or more"
	case p.Maximum != nil:
		return "up to " + show(*p.Maximum)
	}
	return ""
}

func example(p *Property) string {
	if len(p.Examples) == 0 {
		return ""
	}
	text, err := json.Marshal(p.Examples[0])
	if err != nil || len(text) > 200 { // a list of all that a mount has is no help
		return ""
	}
	return "for example " + string(text)
}
