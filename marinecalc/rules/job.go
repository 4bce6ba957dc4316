package rules

import "slices"

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

// WrongBy is the share of wrong answers of a row of the table ways-of-looking,
// 0 where there is no such row.
func (b *Book) WrongBy(way string) float64 {
	row := b.Table("ways-of-looking").Find(way, nil)
	if row == nil {
		return 0
	}
	return row.Values.Of("wrong").SI
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
	row := b.Table("sign-weights").Find(s.Weight, nil)
	if row == nil {
		return otherwise // a test finds every word
	}
	figure := row.Values.Of("figure").SI
	if slices.Contains(hides, s.Weight) {
		return otherwise * figure
	}
	return 1 - (1-otherwise)*(1-figure)
}
