// Package contract reads the JSON Schema of a calculation or of a document
// and holds what comes in to it: the one place that knows the validator and
// the annotation keywords of our own.
package contract

import (
	"slices"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// Property is one described place of a document: an input, a result, or an
// object or list that holds more of them.
type Property struct {
	Name        string
	Index       int    // its place among its siblings
	IsResult    bool   // a result, not an input
	Pointer     string // "/name", its place in the input
	Path        string // "calculation/name", as maker's figures and earlier results name it
	Title       string
	Description string
	Symbol      string
	Types       []string // JSON types allowed here
	Kind        *quantity.Kind
	Units       [2]string // preferred for display: metric, US
	Shown       quantity.Shown
	Minimum     *float64 // in SI
	Maximum     *float64
	MinItems    int
	MaxItems    int
	MinLength   int
	MaxLength   int
	Format      string // of a text: "date"
	Pattern     string
	Enum        []string
	EnumTitles  []string
	Default     any
	Examples    []any
	Needs       []string
	Asks        []string // the few inputs that stand first
	Required    []string // members without which an object is not whole

	Rows    string            // table whose row is picked here
	Fills   map[string]string // the inputs that its columns fill, where not those of the same names
	Typical string            // row of the usual values that stands in
	LikeRow string            // pick whose row with the sizes known stands in before that
	Boat    string            // where the boat file holds it
	Unkept  string            // why the boat file has no place for it: a code
	After   string            // "calculation/result" that stands in
	ReadBy  string            // the input that names the gauge
	Bare    string            // the row of the bare figures that says how far off it may be where nobody says; "digits" is half its last one
	Group   string            // of a member of the boat file: title of the group of inputs that it gives
	Seen    bool              // the owner can see or count it, though no gauge reads it
	Between float64           // this part of the difference of two such readings; 0: it is one reading
	Level   sheet.Level

	Formula      string
	Method       string
	DependsOn    []string
	Source       string
	Basis        string
	NoCompare    bool     // "compare": false, a difference of two states says nothing
	Ways         []string // inputs of which each by itself leads to this result, the one that goes before the others first
	NotUnder     []string // inputs or results that it cannot be less than
	Once         bool     // a reading that cannot be made again
	QuotientOf   []string // the result and the input that it is the quotient of, as gap and diameter
	IfNone       string   // of an input that takes no 0: what one that was read would mean
	AgreesWith   []string // inputs or results that it must be the same as
	OfReading    bool     // names a reading of the boat file
	NearTo       []Near   // inputs given by hand that it must come near to, by their names
	SizedBy      string   // "compare": the result without which this direction says nothing
	JudgedOnly   bool     // an input that limits, cautions and advice go by, and the arithmetic does not
	Chance       bool     // 1 or 0 in each trial; the mean over the trials is what is shown
	Probability  bool     // shown as one, in whole per cent
	Setting      bool     // a figure that a person sets: trials hold it
	CountedIn    string   // the input that says in how much the events of this number were counted; "" for no count
	CountedFor   string   // the input that says for how much they are reported
	InfiniteFrom *float64 // in SI: from here on the result stands for what does not occur, and is no figure
	FollowedTo   *float64 // in SI: from here on the result is so much or more

	Properties []*Property // in the order of the document
	Items      *Property
	Others     *Property // what any other member of an object is
	byName     map[string]*Property
}

// Near is an input that a figure must come as near to as that share of it.
type Near struct {
	Input string
	Share float64
}

// Child returns the property of that name, or nil.
func (p *Property) Child(name string) *Property { return p.byName[name] }

// Words gives what people read for one of the property's codes: its title
// among enumTitles, and any other text as it is.
func (p *Property) Words(code string) string {
	if i := slices.Index(p.Enum, code); i >= 0 && i < len(p.EnumTitles) {
		return p.EnumTitles[i]
	}
	return code
}

// At walks a decoded JSON pointer, such as ["readings", "0", "gap"], and
// returns the deepest property that is described along it; whole tells
// whether the walk reached the end.
func (p *Property) At(tokens []string) (found *Property, whole bool) {
	for _, t := range tokens {
		next := p.Child(t)
		if next == nil {
			next = p.Items
		}
		if next == nil {
			next = p.Others
		}
		if next == nil {
			return p, false
		}
		p = next
	}
	return p, true
}

// FilledBy names the input that a column of a picked row fills.
func (p *Property) FilledBy(column string) (input string, ok bool) {
	if p.Fills == nil {
		return column, true
	}
	input, ok = p.Fills[column]
	return input, ok
}

// ColumnFor names the column of a picked row that fills an input.
func (p *Property) ColumnFor(input string) (column string, ok bool) {
	if p.Fills == nil {
		return input, true
	}
	for column, filled := range p.Fills {
		if filled == input {
			return column, true
		}
	}
	return "", false
}

// Here is the name that an input asked by a picked row's condition has in this
// form: the one that Fills has for it, or its own.
func (p *Property) Here(name string) string {
	if to, ok := p.Fills[name]; ok {
		return to
	}
	return name
}
