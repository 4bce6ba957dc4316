package rules

// StepCase is what a step says, which figures it needs and what can hurt in it, on
// a boat with one choice and not another: with a key or without, with one nut or two.
type StepCase struct {
	Text    string       `json:"text"`
	Use     List[string] `json:"use"`     // "calculation/name"
	Hazards List[string] `json:"hazards"` // ids of cautions
	// Only and Unless tie it to choices of the boat; where both stand, both must
	// allow it.
	Only   OtherThan `json:"only"`
	Unless OtherThan `json:"unless"`
}

// OtherThan holds where a choice of the boat is known and is none of Not. It
// asks nothing where Of is empty. As Unless with no word in Not it leaves a row
// to the boats of which the choice is not known.
type OtherThan struct {
	Of  string       `json:"of"` // "calculation/input"
	Not List[string] `json:"not"`
}

// On is the step as it stands where these of its cases hold: their texts after
// its own, their figures and cautions beside its own.
func (s Step) On(cases []StepCase) Step {
	for _, c := range cases {
		if c.Text != "" {
			s.Text += " " + c.Text
		}
		s.Use = List[string]{Join(append([]string(nil), s.Use.items...), c.Use)}
		s.Hazards = List[string]{Join(append([]string(nil), s.Hazards.items...), c.Hazards)}
	}
	return s
}
