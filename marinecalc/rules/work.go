package rules

import (
	"encoding/json"
	"fmt"
)

// The rows of the job around the arithmetic: what can be wrong, what tells
// it, what cures it, and in which steps.

// Cause is one thing that can be wrong.
type Cause struct {
	ID      string  `json:"id"`
	Part    string  `json:"part"`  // the machine part it is in
	Title   string  `json:"title"` // short, as in a list
	Text    string  `json:"text"`  // how it shows
	Prior   float64 `json:"prior"` // how common it is beside the others; any positive scale
	Confirm string  `json:"confirm"`
	// KeepStill says why the shaft is not run while it is among the leaders.
	KeepStill string `json:"keepStill"`
	// Renew, Keep and When say what the engineering asks for when it is cured,
	// before any money: what is renewed, what may be used again, how long it
	// may wait.
	Renew    string       `json:"renew"`
	Keep     string       `json:"keep"`
	When     string       `json:"when"`
	Dangers  List[string] `json:"dangers"` // ids of cautions that count while it is found or among the leaders
	Remedies List[string] `json:"remedies"`
	Note     string       `json:"note"`
	Provenance
}

// Chain says that one trouble leads to another.
type Chain struct {
	ID      string `json:"id"`
	From    string `json:"from"` // id of a limit or of a cause
	To      string `json:"to"`   // id of a limit or of a cause
	Because string `json:"because"`
	// Rate is how often one cause has brought on the other by the time
	// somebody looks: "mostly", "often", "sometimes" or "seldom"; "" for none.
	Rate string `json:"rate"`
	Note string `json:"note"`
	Provenance
}

// Remedy is work that cures causes.
type Remedy struct {
	ID    string       `json:"id"`
	Title string       `json:"title"`
	Text  string       `json:"text"`
	Kind  string       `json:"kind"` // "repair", "replace" or "adjust"
	Cures List[string] `json:"cures"`
	// OnceSeen is the evidence of which a yes puts it before the other cures
	// of its cause.
	OnceSeen List[string] `json:"onceSeen"`
	Last     bool         `json:"last"` // done when all else in the line is back
	Steps    List[string] `json:"steps"`
	// Unless: it is no work of a boat of which this holds; Absent says why.
	Unless OtherThan `json:"unless"`
	Absent string    `json:"absent"`
	Note   string    `json:"note"`
	Provenance
}

// Step is one piece of work.
type Step struct {
	ID    string       `json:"id"`
	Title string       `json:"title"`
	Text  string       `json:"text"`
	After List[string] `json:"after"` // steps that come before it, where the plan has them
	Hours float64      `json:"hours"`
	// LongHours is what it takes when it does not go smoothly; 0: twice Hours.
	LongHours float64 `json:"longHours"`
	// WaitDays must pass after it before anything that rests on it.
	WaitDays int `json:"waitDays"`
	// LaysUp: from it on the boat cannot be used, so that it is done no
	// earlier than what it is done for.
	LaysUp  bool           `json:"laysUp"`
	Place   string         `json:"place"` // "afloat", "ashore" or "either"
	Lift    bool           `json:"lift"`  // a hoist or crane lifts something in it
	Tools   List[string]   `json:"tools"`
	Parts   List[PartNeed] `json:"parts"`
	Hazards List[string]   `json:"hazards"` // ids of cautions
	Safe    string         `json:"safe"`    // why it has no hazards, where it has none
	// Phase is where in the job it stands: "as-found" (read before the first
	// bolt), "open", "work", "close", "first-start", "trial" or "afterwards".
	Phase string `json:"phase"`
	// Record is what is read or seen here and written down.
	Record List[Record] `json:"record"`
	// Outdates are readings that it puts an end to: of a joint as it was before.
	Outdates List[string] `json:"outdates"`
	// Use is which figures of the boat's sheets are needed here:
	// "calculation/name" of results or inputs.
	Use List[string] `json:"use"`
	// Gathers: the torques that later steps of the same work set are needed here.
	Gathers bool `json:"gathers"`
	// Cases are what it says besides, by the choices of the boat.
	Cases List[StepCase] `json:"cases"`
	// Unless: it is no step of a boat of which this holds; Absent says why.
	Unless OtherThan `json:"unless"`
	Absent string    `json:"absent"`
	// Drawing is the calculation whose picture stands beside it.
	Drawing string `json:"drawing"`
	// Bares are remedies that are cheap while this lies open.
	Bares List[string] `json:"bares"`
	// DueHours and DueDays say when a step afterwards is due: engine hours or
	// days after the trial, whichever comes first; 0 for none.
	DueHours float64 `json:"dueHours"`
	DueDays  int     `json:"dueDays"`
	Note     string  `json:"note"`
	Provenance
}

// Record is something to read or to look at, and to write down.
type Record struct {
	Title   string `json:"title"`
	Reading string `json:"reading"` // the boat's reading of that name, where there is one
}

// PartNeed is how much of a part a step takes.
type PartNeed struct {
	Part     string `json:"part"`
	Quantity Count  `json:"quantity"`
	// With and Without are steps: it is taken only where the plan has one of
	// With, or none of Without. An empty list asks nothing.
	With    List[string] `json:"with"`
	Without List[string] `json:"without"`
}

// Count is a number, or a result or input of the boat's sheets; of an input
// that is a list, how many entries it has.
type Count struct {
	Number float64
	Of     string  // "calculation/name" of a result or an input
	Times  float64 // of that; 1 where nothing else is said
}

// UnmarshalJSON reads a number, or {"of": "calculation/result", "times": 1.1}.
func (c *Count) UnmarshalJSON(text []byte) error {
	if text[0] != '{' {
		return json.Unmarshal(text, &c.Number)
	}
	w := struct {
		Of    string
		Times float64
	}{Times: 1}
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	if w.Of == "" {
		return fmt.Errorf("a quantity by name needs %q", "of")
	}
	c.Of, c.Times = w.Of, w.Times
	return nil
}

// Part is something to buy or to have ready.
type Part struct {
	ID       string  `json:"id"`
	Title    string  `json:"title"`
	Unit     string  `json:"unit"`
	LeadDays float64 `json:"leadDays"`
	// Sizes are the results or inputs, "calculation/name", that say which one
	// to buy.
	Sizes List[string] `json:"sizes"`
	// Only and Unless tie the part to a choice of the boat.
	Only   OtherThan `json:"only"`
	Unless OtherThan `json:"unless"`
	// Asked: taken only where the plan is told that the maker asks for it.
	Asked bool `json:"asked"`
	// Sundry: what any toolbox holds, or what is aboard for safety; no spare
	// that is weighed by the days without drive that it saves.
	Sundry bool `json:"sundry"`
	// ReturnDays: the old one goes back as a core, within so many days as a rule.
	ReturnDays int    `json:"returnDays"`
	Note       string `json:"note"`
	Provenance
}

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
