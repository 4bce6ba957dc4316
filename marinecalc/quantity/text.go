package quantity

import (
	"encoding/json"
	"math"
	"strconv"

	"example.org/driveline/marinecalc/problem"
)

// How values of the unit types are written and read as text and as JSON. A
// result that was not asked for is NaN: as text it is empty, in JSON null.
// Money alone is written as a plain number, since the amount does not know its
// currency.

// written gives a value for people.
func written(kind string, si float64) string {
	return byName[kind].Print(si, Metric, "", "")
}

// asText gives a value with its usual metric unit, as exact as [Kind.Exact].
func asText(kind string, si float64) ([]byte, error) {
	switch {
	case math.IsNaN(si):
		return nil, nil
	case math.IsInf(si, 0):
		return nil, refusal("an infinite value cannot be written", "a finite number", "")
	}
	k := byName[kind]
	return []byte(k.Exact(si, k.metric)), nil
}

// fromText reads what asText writes, and all that [Kind.Parse] reads. An
// accuracy is refused: a single number has no place for it.
func fromText(kind string, text []byte, to *float64) error {
	k := byName[kind]
	if len(text) == 0 {
		*to = math.NaN()
		return nil
	}
	if k.isMoney() {
		x, err := strconv.ParseFloat(string(text), 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			return refusal(quote(string(text))+" is not a plain amount", "a number without its currency", `write "120.50"`)
		}
		*to = x
		return nil
	}
	r, err := k.Parse(string(text))
	if err != nil {
		return err
	}
	if r.Accuracy != 0 {
		return refusal(quote(string(text))+" has an accuracy, which would be lost", "a number and its unit", "leave out the ± and what follows it")
	}
	*to = r.SI
	return nil
}

// asJSON gives the SI number, or null for NaN.
func asJSON(si float64) ([]byte, error) {
	if math.IsNaN(si) {
		return []byte("null"), nil
	}
	return json.Marshal(si)
}

// fromJSON reads an SI number, a text with its unit, or null as NaN.
func fromJSON(kind string, text []byte, to *float64) error {
	if string(text) == "null" {
		*to = math.NaN()
		return nil
	}
	if len(text) > 0 && text[0] == '"' {
		var written string
		if err := json.Unmarshal(text, &written); err != nil {
			return err
		}
		return fromText(kind, []byte(written), to)
	}
	return json.Unmarshal(text, to)
}

// defined tells whether a kind is one of [Kinds], and neither nil nor the zero
// Kind. Those two print plain numbers and read nothing.
func (k *Kind) defined() bool { return k != nil && k.spellings != nil }

// bare gives a number without a unit, for want of a kind.
func bare(si float64) string {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return unknown
	}
	var buf [32]byte
	return string(appendSignificant(buf[:0], si, digits))
}

// errNoKind is the refusal of a nil or zero Kind.
var errNoKind error = problem.Problem{What: "it is not said what kind of quantity this is", Allowed: "a kind that Lookup gives", Hint: `such as the kind "length"`}
