package sheet

import "strings"

// Verdict is how a result or a reading stands to a limit.
type Verdict struct {
	Limit       string    `json:"limit"`
	Title       string    `json:"title"`
	On          string    `json:"on"`
	Word        Word      `json:"word"`
	Reads       string    `json:"reads"`                 // the word as people read it
	Probability *float64  `json:"probability,omitempty"` // that the true value meets the limit
	Value       string    `json:"value,omitempty"`
	Bound       string    `json:"bound"`
	SI          *float64  `json:"si,omitempty"`      // the value
	BoundSI     *float64  `json:"boundSI,omitempty"` // nil where the limit is a figure that is not known
	Side        Side      `json:"side"`
	Kind        Kind      `json:"kind,omitempty"` // of quantity; empty for words
	Unit        string    `json:"unit,omitempty"` // the SI unit of both numbers; empty where they are plain numbers
	Sentence    string    `json:"sentence"`
	Authority   string    `json:"authority"`
	Source      string    `json:"source"`
	Settle      string    `json:"settle,omitempty"`   // what would settle it
	SettleBy    *SettleBy `json:"settleBy,omitempty"` // the same for programs
	Guide       bool      `json:"guide,omitempty"`    // common practice or memory: it compares, and nothing is over it
	Awaits      []string  `json:"awaits,omitempty"`   // the unverified figures, or what nobody told, that leave it untold, by title
	Turns       *Turn     `json:"turns,omitempty"`    // of an untold one: where it turns
	Over        string    `json:"over,omitempty"`     // the brackets of unverified figures over the whole of which it holds
	Replaced    *Replaced `json:"replaced,omitempty"` // the limit whose place this one takes
	Moot        bool      `json:"moot,omitempty"`     // there is nothing to judge, by how things are, and no reading to take
	State       string    `json:"state,omitempty"`    // how things are where there is no value to judge, or too little is told, and what to do about it; "" elsewhere
	Stops       bool      `json:"stops,omitempty"`    // past this limit the shaft must not run under power: never of a guide
	Says        string    `json:"says,omitempty"`     // value, range, bound and word alone, of one that stops the shaft
	Hangs       bool      `json:"hangs,omitempty"`    // the value meets its limit, and counts only once another is met: no reading of this one settles it
}

// SettleBy is the reading that would settle a verdict: with a finer gauge, or
// as the mean of several.
type SettleBy struct {
	Input    string `json:"input"`
	Title    string `json:"title"`
	Gauge    string `json:"gauge,omitempty"`
	Readings int    `json:"readings,omitempty"`
}

// Replaced is the limit in force without an overlay, or without the maker's
// figure.
type Replaced struct {
	Bound     string   `json:"bound"`
	BoundSI   *float64 `json:"boundSI,omitempty"` // nil where it is a figure that is not known
	Authority string   `json:"authority"`
	Source    string   `json:"source"`
}

// Turn is the value of an unverified figure at which a verdict turns: Word
// holds while the figure is at most, or at least, the value.
type Turn struct {
	Figure string  `json:"figure"` // "calculation/input"
	Title  string  `json:"title"`
	Word   Word    `json:"word"` // within or beyond
	Side   Side    `json:"side"`
	SI     float64 `json:"si"`
	Text   string  `json:"text"`
	Usual  string  `json:"usual"`            // its bracket
	Past   bool    `json:"past,omitempty"`   // the value lies outside its bracket: more or less than is usual
	Strict bool    `json:"strict,omitempty"` // the text is an end of the bracket, at which it does not hold yet: more, or less, than that
}

// Backing says what kind of authority stands behind a verdict, and which: that
// of common practice says so itself.
func (v *Verdict) Backing() string {
	if v == nil {
		return ""
	}
	if strings.HasPrefix(v.Source, v.Authority) {
		return v.Source
	}
	return v.Authority + ": " + v.Source
}

// EstimatePast tells whether the estimate lies on the wrong side of its limit, or just
// at one that is a most; false where estimate or limit is not known.
func (v *Verdict) EstimatePast() bool {
	return v != nil && v.SI != nil && v.BoundSI != nil && (v.Side == AtLeast) != (*v.SI >= *v.BoundSI)
}
