package rules

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
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

// job is the rows of the job around the arithmetic.
type job struct {
	Causes   []Cause    `json:"causes"`
	Evidence []Evidence `json:"evidence"`
	Signs    []Sign     `json:"signs"`
	Chains   []Chain    `json:"chains"`
	Remedies []Remedy   `json:"remedies"`
	Steps    []Step     `json:"steps"`
	Parts    []Part     `json:"parts"`
}

// any tells whether there is a row.
func (j *job) any() bool {
	return len(j.Causes)+len(j.Evidence)+len(j.Signs)+len(j.Chains)+len(j.Remedies)+len(j.Steps)+len(j.Parts) > 0
}

// over returns the job with the rows of next applied to it.
func (j *job) over(next *job) *job {
	return &job{
		Causes:   replace(j.Causes, next.Causes, func(c Cause) string { return c.ID }),
		Evidence: replace(j.Evidence, next.Evidence, func(e Evidence) string { return e.ID }),
		Signs:    replace(j.Signs, next.Signs, func(s Sign) string { return s.ID }),
		Chains:   replace(j.Chains, next.Chains, func(c Chain) string { return c.ID }),
		Remedies: replace(j.Remedies, next.Remedies, func(r Remedy) string { return r.ID }),
		Steps:    replace(j.Steps, next.Steps, func(s Step) string { return s.ID }),
		Parts:    replace(j.Parts, next.Parts, func(p Part) string { return p.ID }),
	}
}

// jobTables are the kinds of rows of the job that people pick from.
var jobTables = []string{"evidence", "remedies", "parts"}

// tables makes tables of the rows that people pick from.
func (j *job) tables() []*Table {
	questions := &Table{Name: "evidence", Title: "Questions of the fault finding", About: "What can be asked about a trouble in the drivetrain."}
	for _, e := range j.Evidence {
		questions.Rows.items = append(questions.Rows.items, pickOf(e.ID, e.Title, e.Note, e.Provenance))
	}
	cures := &Table{Name: "remedies", Title: "Work that cures", About: "What can be put right in the drivetrain."}
	for _, r := range j.Remedies {
		cures.Rows.items = append(cures.Rows.items, pickOf(r.ID, r.Title, r.Note, r.Provenance))
	}
	goods := &Table{Name: "parts", Title: "Parts and materials", About: "What the steps of the work take."}
	for _, p := range j.Parts {
		goods.Rows.items = append(goods.Rows.items, pickOf(p.ID, p.Title, p.Note, p.Provenance))
	}
	return []*Table{questions, cures, goods}
}

func pickOf(id, title, note string, backing Provenance) Row {
	return Row{ID: id, Pick: id, Name: title, Decides: true, Note: note, Provenance: backing}
}

// Causes returns everything that can be wrong.
func (b *Book) Causes() List[Cause] { return List[Cause]{b.filled().job().Causes} }

// Evidence returns every question of the fault finding.
func (b *Book) Evidence() List[Evidence] { return List[Evidence]{b.filled().job().Evidence} }

// Signs returns how likely each answer is under each cause.
func (b *Book) Signs() List[Sign] { return List[Sign]{b.filled().job().Signs} }

// Chains returns which trouble leads to which.
func (b *Book) Chains() List[Chain] { return List[Chain]{b.filled().job().Chains} }

// Remedies returns all work that cures causes.
func (b *Book) Remedies() List[Remedy] { return List[Remedy]{b.filled().job().Remedies} }

// Steps returns all steps of the remedies.
func (b *Book) Steps() List[Step] { return List[Step]{b.filled().job().Steps} }

// Parts returns everything that steps take.
func (b *Book) Parts() List[Part] { return List[Part]{b.filled().job().Parts} }

// places are where work can be done.
var places = []string{"afloat", "ashore", "either"}

// faults names what cannot be believed or understood in the rows themselves.
func (j *job) faults(add func(kind string, i int, id string, faults ...fault)) {
	unless := func(ok bool, what, allowed string) fault {
		if ok {
			return fault{}
		}
		return fault{what: what, allowed: allowed}
	}
	place := func(is string) fault {
		return unless(slices.Contains(places, is), "its place is not afloat, ashore or either", `"place": `+quoted(places))
	}
	titled := func(title string) fault { return unless(title != "", "it has no title", `"title": "…"`) }
	share := func(p float64) bool { return 0 < p && p < 1 }
	for i, c := range j.Causes {
		add("causes", i, c.ID, c.fault(), titled(c.Title), unless(c.Prior > 0, "its prior is not over 0", "how common it is beside the others, over 0"))
	}
	for i, e := range j.Evidence {
		add("evidence", i, e.ID, e.fault(), titled(e.Title),
			unless(share(e.Otherwise), "its probability otherwise is not over 0 and under 1", "over 0 and under 1"),
			unless(e.Minutes > 0, "its minutes are not over 0", "the minutes that it takes, over 0"),
			unless(1 <= e.Access && e.Access <= 3, "its access is not 1, 2 or 3", "1 in reach, 2 something must come off, 3 hard to reach"), place(e.Place),
			unless(!slices.ContainsFunc(e.Readings.items, func(r ReadingAnswers) bool { return !r.asks() }), "it does not say what a reading must be", "words, atLeast, under, riseAtLeast or riseUnder"))
	}
	for i, s := range j.Signs {
		add("signs", i, s.ID, s.fault(), s.weightFault(), unless(s.Weight != "" || share(s.Yes), "its probability of a yes is not over 0 and under 1", "over 0 and under 1"))
	}
	for i, c := range j.Chains {
		rates := []string{"mostly", "often", "sometimes", "seldom"}
		add("chains", i, c.ID, c.fault(), unless(c.Because != "", "it does not say why", `"because": "…"`),
			unless(c.Rate == "" || slices.Contains(rates, c.Rate), "its rate is not often, sometimes or seldom", `"rate": `+quoted(rates)))
	}
	for i, r := range j.Remedies {
		kinds := []string{"repair", "replace", "adjust"}
		add("remedies", i, r.ID, r.fault(), unless(slices.Contains(kinds, r.Kind), "its kind is not repair, replace or adjust", `"kind": `+quoted(kinds)))
	}
	for i, s := range j.Steps {
		add("steps", i, s.ID, s.fault(), unless(s.Hours > 0, "its hours are not over 0", "the hours that it takes, over 0"), place(s.Place),
			unless(s.Hazards.Len() > 0 || s.Safe != "", "it lists no hazards and does not say why there are none", `"hazards": ["id of a caution"], or "safe": "why there are none"`))
	}
	for i, p := range j.Parts {
		add("parts", i, p.ID, p.fault(), unless(p.Unit != "", "it has no unit", `"unit": "…"`), unless(p.LeadDays >= 0, "its lead days are under 0", "0 or more"))
	}
}

// quoted lists the words that a member may have.
func quoted(words []string) string { return `"` + strings.Join(words, `", "`) + `"` }
