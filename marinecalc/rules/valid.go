package rules

import (
	"encoding/json"
	"fmt"
	"iter"
	"maps"
	"math"
	"slices"

	"example.org/driveline/marinecalc/quantity"
)

// Known gives what is known of a named input or result: a number in SI, or a
// word. ok is false when it is not known. Of nil nothing is known.
type Known func(name string) (si float64, word string, ok bool)

func (k Known) of(name string) (si float64, word string, ok bool) {
	if k == nil {
		return 0, "", false
	}
	return k(name)
}

// Valid says where a row applies: every input or result that it names must
// meet its condition. The empty Valid applies everywhere.
type Valid struct{ terms []term }

// term is what a row asks of one input or result.
type term struct {
	of        string
	condition condition
}

// UnmarshalJSON reads an object of conditions by name.
func (v *Valid) UnmarshalJSON(text []byte) error {
	var byName map[string]condition
	if err := json.Unmarshal(text, &byName); err != nil {
		return err
	}
	v.terms = nil
	for _, name := range slices.Sorted(maps.Keys(byName)) {
		v.terms = append(v.terms, term{name, byName[name]})
	}
	return nil
}

// Meets tells whether every condition holds. Something not known meets no
// condition but the one that asks for that, the one that rules words out, and bounds
// that are met by it too.
func (v Valid) Meets(known Known) bool {
	for i := range v.terms {
		t := &v.terms[i]
		si, word, ok := known.of(t.of)
		if t.condition.unknown {
			if ok {
				return false
			}
			continue
		}
		if !ok && (t.condition.not != nil || t.condition.orUnknown) {
			continue
		}
		if !ok || !t.condition.holds(si, word) {
			return false
		}
	}
	return true
}

// Knows tells whether all is known that a condition asks for, whatever it is, and
// nothing that must not be.
func (v Valid) Knows(known Known) bool {
	return !slices.ContainsFunc(v.terms, func(t term) bool {
		_, _, ok := known.of(t.of)
		return ok == t.condition.unknown && !t.condition.orUnknown
	})
}

// WantsUnknown tells whether the row applies only while that is not known.
func (v Valid) WantsUnknown(name string) bool {
	return slices.ContainsFunc(v.terms, func(t term) bool { return t.of == name && t.condition.unknown })
}

// Names goes through the inputs and results that have a condition.
func (v Valid) Names() iter.Seq[string] {
	return func(yield func(string) bool) {
		for i := range v.terms {
			if !yield(v.terms[i].of) {
				return
			}
		}
	}
}

// Asked is what a condition asks for: a range, or one of several words.
type Asked struct {
	Low, High float64 // infinite where the range is open
	Words     []string
}

// Misses goes through the conditions on what is known that do not hold.
func (v Valid) Misses(known Known) iter.Seq2[string, Asked] {
	return func(yield func(string, Asked) bool) {
		for i := range v.terms {
			c := &v.terms[i].condition
			si, word, ok := known.of(v.terms[i].of)
			if c.unknown || !ok || c.holds(si, word) {
				continue
			}
			if !yield(v.terms[i].of, Asked{Low: c.low, High: c.high, Words: slices.Clone(c.words)}) {
				return
			}
		}
	}
}

// condition is a range (min and max inclusive, above and below exclusive), a
// list of words, one of words that it must not be ("not"), or that nothing is known
// ("known": false); bounds may be met as well where nothing is ("orUnknown": true).
type condition struct {
	low, high         float64
	openLow, openHigh bool
	words, not        []string
	unknown           bool
	orUnknown         bool
}

// UnmarshalJSON reads a condition; its quantities name their own units.
func (c *condition) UnmarshalJSON(text []byte) error {
	var w struct {
		Min, Max, Above, Below *Amount
		Any, Not               []string
		Known                  *bool
		OrUnknown              bool
	}
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	*c = condition{low: math.Inf(-1), high: math.Inf(1), words: w.Any, not: w.Not, unknown: w.Known != nil && !*w.Known, orUnknown: w.OrUnknown}
	if w.Min != nil {
		c.low = w.Min.SI
	}
	if w.Max != nil {
		c.high = w.Max.SI
	}
	if w.Above != nil {
		c.low, c.openLow = w.Above.SI, true
	}
	if w.Below != nil {
		c.high, c.openHigh = w.Below.SI, true
	}
	return nil
}

func (c *condition) holds(si float64, word string) bool {
	if c.words != nil {
		return slices.Contains(c.words, word)
	}
	if c.not != nil {
		return !slices.Contains(c.not, word)
	}
	// A limit converted from another unit must hold at the limit itself.
	slack := 1e-9 * math.Abs(si)
	low, high := si >= c.low-slack, si <= c.high+slack
	if c.openLow {
		low = si > c.low+slack
	}
	if c.openHigh {
		high = si < c.high-slack
	}
	return low && high
}

// Amount is a quantity whose unit tells its kind, or a bare number in SI.
type Amount struct {
	SI   float64
	Kind *quantity.Kind // nil for a bare number
	Text string
}

// UnmarshalJSON reads "1/4 in", "1200 rpm" or 0.2.
func (a *Amount) UnmarshalJSON(text []byte) error {
	if json.Unmarshal(text, &a.SI) == nil {
		a.Text = string(text)
		return nil
	}
	if err := json.Unmarshal(text, &a.Text); err != nil {
		return fmt.Errorf("%s is neither a number nor a quantity", text)
	}
	r, kind, err := quantity.Infer(a.Text)
	a.SI, a.Kind = r.SI, kind
	return err
}
