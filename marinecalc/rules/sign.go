package rules

import "slices"

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

// SignYes is the probability of a yes under the cause of a sign, to a question
// that is answered with yes anyway with the probability otherwise.
//
// A word that makes the sign stands for how often it does, beside what is
// there anyway (noisy-or): 1 − (1 − otherwise)·(1 − figure). One that hides it
// stands for what is left: otherwise·figure.
func (b *Book) SignYes(s Sign, otherwise float64) float64 {
	if s.Weight == "" {
		return s.Yes
	}
	row := b.Table("sign-weights").Find(s.Weight, func(string) (float64, string, bool) { return 0, "", false })
	if row == nil {
		return otherwise // a test finds every word
	}
	figure := row.Values.Of("figure").SI
	if slices.Contains(hides, s.Weight) {
		return otherwise * figure
	}
	return 1 - (1-otherwise)*(1-figure)
}
