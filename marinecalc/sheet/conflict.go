package sheet

// Conflict is something given twice that does not agree, or given in vain.
type Conflict struct {
	Code   ConflictCode    `json:"code"`
	On     string          `json:"on"` // the input or result, or the limit
	Title  string          `json:"title"`
	Text   string          `json:"text"`             // a sentence for people
	Values []ConflictValue `json:"values,omitempty"` // the newest first
	Doubt  string          `json:"doubt,omitempty"`  // the first part of the sentence, of one that withholds verdicts
	Remedy string          `json:"remedy,omitempty"` // the rest of it
}

// ConflictCode is what sort of conflict it is, for programs.
type ConflictCode string

// The codes.
const (
	TwoWays    ConflictCode = "two-ways"    // two ways to one quantity disagree: no verdict rests on it
	TypedOver  ConflictCode = "typed-over"  // the boat file has another figure than the one typed, which is used
	TwoFigures ConflictCode = "two-figures" // two figures of one thing contradict each other
	FigureIdle ConflictCode = "figure-idle" // a maker's figure for a limit that does not apply
)

// ConflictValue is one of the values that do not agree.
type ConflictValue struct {
	Input  string  `json:"input,omitempty"` // by which it came
	Title  string  `json:"title"`
	Text   string  `json:"text"`
	SI     float64 `json:"si"`
	Origin Origin  `json:"origin,omitempty"`
	Date   string  `json:"date,omitempty"` // year-month-day
}
