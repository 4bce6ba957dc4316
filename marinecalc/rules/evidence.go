// What is asked, in which ways it can be looked at, and what of the boat
// answers it.

package rules

import "example.org/driveline/marinecalc/sheet"

// Evidence is a question that can be answered with yes, no or don't know.
type Evidence struct {
	ID    string `json:"id"`
	Title string `json:"title"` // the question
	Help  string `json:"help"`  // how to look, and with which gauge
	Kind  string `json:"kind"`  // "symptom": remembered or noticed; "check": work of its own
	Group string `json:"group"` // sound, shake, heat, leak, handling, history, look or reading
	// Minutes is the work of answering it, in minutes.
	Minutes float64      `json:"minutes"`
	Access  int          `json:"access"`  // 1 in reach, 2 something must come off, 3 hard to reach
	Place   string       `json:"place"`   // "afloat", "ashore" or "either"
	Hazards List[string] `json:"hazards"` // ids of cautions
	// Otherwise is the probability of a yes under a cause without a sign of
	// its own for this question.
	Otherwise float64      `json:"otherwise"`
	Needs     List[string] `json:"needs"` // tools and people
	// Absence: a yes says that something is absent, so that with several
	// causes at work their noes add up.
	Absence   bool `json:"absence"`
	RunsShaft bool `json:"runsShaft"` // the shaft turns under power for it
	// RunsEngine: the engine runs for it, in neutral. While the shaft must stand
	// the engine is stopped and its key out, so that it waits as well.
	RunsEngine bool   `json:"runsEngine"`
	KeepStill  string `json:"keepStill"` // why the shaft is not run once the answer is yes
	// Happened: a yes tells of something that happened to the boat, which by itself
	// can be what made a part fail.
	Happened bool `json:"happened"`
	// Dangers are ids of cautions that count once the answer is yes.
	Dangers List[string] `json:"dangers"`
	// Ways are how it can be looked at, rows of the table ways-of-looking;
	// none: those of waysAnywhere.
	Ways List[string] `json:"ways"`
	// Blind are ways in which a no says nothing, as a clean dipstick says
	// nothing about metal.
	Blind    List[string]         `json:"blind"`
	Verdicts List[VerdictAnswers] `json:"verdicts"`
	Readings List[ReadingAnswers] `json:"readings"`
	Boat     List[BoatAnswers]    `json:"boat"`
	Note     string               `json:"note"`
	Provenance
}

// The ways of looking that questions without ways of their own have, and the
// one that is taken where nobody said.
var waysAnywhere = List[string]{[]string{"hearsay", "noticed", "feel", "eye", "gauge"}}

// Hearsay is the way of looking that never shows a trouble to be there.
const Hearsay = "hearsay"

// Runs tells whether the engine runs for it, in gear or in neutral.
func (e Evidence) Runs() bool { return e.RunsShaft || e.RunsEngine }

// WaysToLook are the ways in which the question can be looked at.
func (e Evidence) WaysToLook() List[string] {
	if e.Ways.Len() > 0 {
		return e.Ways
	}
	return waysAnywhere
}

// Unsaid is the way of looking that is taken where nobody said: of ways of its
// own the first that is not hearsay, else by eye what is work of its own, and
// noticed what is not.
func (e Evidence) Unsaid() string {
	for _, way := range e.Ways.items {
		if way != Hearsay {
			return way
		}
	}
	if e.Kind == "check" {
		return "eye"
	}
	return "noticed"
}

// BoatAnswers says that a choice of the boat file, or the answer to another
// question, answers the question: what a boat does not have cannot fail.
type BoatAnswers struct {
	At       string       `json:"at"`       // pointer into the boat file
	Question string       `json:"question"` // id of the other question, in its place
	Words    List[string] `json:"words"`
	Answer   string       `json:"answer"` // "yes" or "no"
	Has      string       `json:"has"`    // what she has by that, where it is work that she cannot need
}

// ReadingAnswers says that the newest reading of a name answers the question
// where all that is said here holds.
type ReadingAnswers struct {
	Reading string       `json:"reading"`
	Words   List[string] `json:"words"`
	// By is how it must have been looked at, where that matters: words of the
	// reading of the same day whose name has By at its end.
	By List[string] `json:"by"`
	// AtLeast and Under bound the reading, in SI; 0 for none.
	AtLeast float64 `json:"atLeast"`
	Under   float64 `json:"under"`
	// RiseAtLeast and RiseUnder bound the reading over the one before; PerHour
	// takes each over the hours on the fluid, where both are known.
	RiseAtLeast float64 `json:"riseAtLeast"`
	RiseUnder   float64 `json:"riseUnder"`
	PerHour     bool    `json:"perHour"`
	// Way is how such a reading is looked at, a row of the table
	// ways-of-looking, where no reading of By says.
	Way    string `json:"way"`
	Answer string `json:"answer"` // "yes" or "no"
}

// asks tells whether the row asks anything of the reading.
func (r ReadingAnswers) asks() bool {
	return r.Words.Len() > 0 || r.AtLeast > 0 || r.Under > 0 || r.Rises()
}

// Rises tells whether the reading before counts.
func (r ReadingAnswers) Rises() bool { return r.RiseAtLeast > 0 || r.RiseUnder > 0 }

// VerdictAnswers says that a verdict of the boat answers the question.
type VerdictAnswers struct {
	Limits List[string]     `json:"limits"` // a verdict on one of them is enough
	Words  List[sheet.Word] `json:"words"`
	Answer string           `json:"answer"` // "yes", "no", or "unknown" where the verdict keeps the lines below from answering
}
