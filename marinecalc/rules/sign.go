package rules

import (
	"slices"
	"strings"
)

// Sign is how likely a yes is under one cause: by a word of the table
// sign-weights, or, where somebody counted, by a number.
type Sign struct {
	ID       string `json:"id"`
	Cause    string `json:"cause"`
	Evidence string `json:"evidence"`
	Weight   string `json:"weight,omitempty"`
	// Yes is the probability of a yes, over 0 and under 1; 0 where Weight
	// says it.
	Yes     float64 `json:"yes,omitempty"`
	Because string  `json:"because,omitempty"` // what it rests on
	Note    string  `json:"note"`
	Provenance
}

// Makes tells whether its cause makes a yes likelier.
func (s Sign) Makes() bool { return slices.Contains(makes, s.Weight) }

// What the words of Sign.Weight do: the first ones make the sign, the others
// make it rarer than it is anyway.
var (
	makes = []string{"certain", "strong", "fair", "weak"}
	hides = []string{"against", "rules-out"}
)

// weightFault tells what is wrong with word and number.
func (s Sign) weightFault() fault {
	words := slices.Concat(makes, hides)
	switch {
	case s.Weight != "" && s.Yes != 0:
		return fault{what: "it has both a weight and a probability", allowed: `"weight" or "yes"`, hint: "leave one out"}
	case s.Weight != "" && !slices.Contains(words, s.Weight):
		return fault{what: "its weight is none of the words of the table sign-weights", allowed: `"weight": ` + quoted(words)}
	}
	return fault{}
}

// quoted lists the words that a member may have.
func quoted(words []string) string { return `"` + strings.Join(words, `", "`) + `"` }
