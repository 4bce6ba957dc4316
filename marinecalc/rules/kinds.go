package rules

import (
	"encoding/json"
	"fmt"
	"iter"
	"maps"
	"slices"

	"example.org/driveline/marinecalc/problem"
)

// Table is one kind of thing people pick from, or look up.
type Table struct {
	Name    string
	Title   string
	About   string
	Rows    List[Row]
	columns map[string]string
}

// Kind returns the kind of quantity of a column, or "text", "number" or
// "accuracy". ok is false where the table has no such column.
func (t *Table) Kind(column string) (kind string, ok bool) {
	kind, ok = t.columns[column]
	return kind, ok
}

// Find returns a copy of the row of that pick that applies to what is known,
// or nil.
func (t *Table) Find(pick string, known Known) *Row {
	found := t.find(pick, known)
	if found == nil {
		return nil
	}
	row := *found // stays on the caller's stack
	return &row
}

func (t *Table) find(pick string, known Known) *Row {
	for i := range t.Rows.items {
		if r := &t.Rows.items[i]; r.Pick == pick && r.Valid.Meets(known) {
			return r
		}
	}
	return nil
}

// Picks lists what can be chosen, in the order of the rows, with its name.
func (t *Table) Picks() (picks, names []string) {
	seen := map[string]bool{}
	for i := range t.Rows.items {
		if r := &t.Rows.items[i]; !seen[r.Pick] {
			seen[r.Pick] = true
			picks, names = append(picks, r.Pick), append(names, r.Name)
		}
	}
	return picks, names
}

// Bound is one side of a limit: an amount, or the value of another input or
// result of the same calculation.
type Bound struct {
	Amount
	Of    string
	given bool
}

// BoundAt returns a bound of an amount in SI.
func BoundAt(si float64) Bound { return Bound{Amount: Amount{SI: si}, given: true} }

// Given tells whether there is a bound on this side.
func (b Bound) Given() bool { return b.given }

// UnmarshalJSON reads an amount or {"of": "name"}.
func (b *Bound) UnmarshalJSON(text []byte) error {
	*b = Bound{given: string(text) != "null"}
	switch {
	case !b.given:
		return nil
	case text[0] != '{':
		return b.Amount.UnmarshalJSON(text)
	}
	var w struct{ Of string }
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	if w.Of == "" {
		return fmt.Errorf("a bound by name needs %q", "of")
	}
	b.Of = w.Of
	return nil
}

// Limit is what a result or a reading is held against.
type Limit struct {
	ID          string  `json:"id"`
	Calculation string  `json:"calculation"`
	On          string  `json:"on"`
	Title       string  `json:"title"`
	Max         Bound   `json:"max"` // given, or min is
	Min         Bound   `json:"min"`
	Near        float64 `json:"near"`
	Chance      bool    `json:"chance"` // the value is itself the probability that all is well
	Valid       Valid   `json:"valid"`
	How         string  `json:"how"` // how to take the reading when it is missing
	Why         string  `json:"why"` // what it means to be beyond
	// Decides is false where no source confirms the limit: no verdict is drawn
	// from it.
	Decides bool   `json:"-"`
	Note    string `json:"note"`
	Provenance
}

// UnmarshalJSON reads a limit, which decides unless it says otherwise.
func (l *Limit) UnmarshalJSON(text []byte) error {
	type plain Limit
	w := struct {
		plain
		Decides *bool `json:"decides"`
	}{}
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	*l = Limit(w.plain)
	l.Decides = w.Decides == nil || *w.Decides
	return nil
}

// Shared says that results of one calculation are held against the limits of
// another, under names of their own.
type Shared struct {
	Calculation string
	LimitsOf    string
	Title       string // put before the limit's title
	How         string // how to come by the result when it is missing
	on          map[string]string
}

// On goes through what a limit is on, and the result held against it here.
func (s *Shared) On() iter.Seq2[string, string] { return maps.All(s.on) }

// UnmarshalJSON reads what is shared.
func (s *Shared) UnmarshalJSON(text []byte) error {
	var w struct {
		Calculation, LimitsOf, Title, How string
		On                                map[string]string
	}
	err := json.Unmarshal(text, &w)
	*s = Shared{Calculation: w.Calculation, LimitsOf: w.LimitsOf, Title: w.Title, How: w.How, on: w.On}
	return err
}

// limits gives the limits that the calculation shares.
func (s *Shared) limits(all []Limit) []Limit {
	var list []Limit
	for _, l := range all {
		if on, has := s.on[l.On]; has && l.Calculation == s.LimitsOf {
			l.Calculation, l.On, l.How = s.Calculation, on, s.How
			l.Title = s.Title + ": " + l.Title
			list = append(list, l)
		}
	}
	return list
}

// Signal is a signal word of ANSI Z535.6.
type Signal string

// The signal words, gravest first.
const (
	Danger  Signal = "DANGER"
	Warning Signal = "WARNING"
	Care    Signal = "CAUTION"
	Notice  Signal = "NOTICE"
)

// Gravity orders the signal words: 0 is the gravest.
func (s Signal) Gravity() int { return slices.Index([]Signal{Danger, Warning, Care, Notice}, s) }

// Caution is what can hurt people or the boat in the work that a calculation
// belongs to.
type Caution struct {
	ID           string       `json:"id"`
	Calculations List[string] `json:"calculations"`
	Signal       Signal       `json:"signal"`
	Text         string       `json:"text"`
	Valid        Valid        `json:"valid"`
	Note         string       `json:"note"`
	Provenance
}

// Advice is what to do next, after a verdict or always.
type Advice struct {
	ID            string        `json:"id"`
	Calculation   string        `json:"calculation"`
	Limit         string        `json:"limit"`
	Words         List[string]  `json:"words"`
	OtherVerdicts OtherVerdicts `json:"besides"`
	Valid         Valid         `json:"valid"`
	Text          string        `json:"text"`
	Note          string        `json:"note"`
	Provenance
}

// OtherVerdicts is what advice asks of other limits: limit -> the verdicts with
// which it may be given. A limit that does not apply does not stand in its way.
type OtherVerdicts struct{ words map[string][]string }

// UnmarshalJSON reads an object of verdicts by limit.
func (b *OtherVerdicts) UnmarshalJSON(text []byte) error {
	b.words = nil
	return json.Unmarshal(text, &b.words)
}

// Limits goes through the limits whose verdicts matter.
func (b OtherVerdicts) Limits() iter.Seq[string] { return maps.Keys(b.words) }

// Agree tells whether no verdict speaks against it. word gives the verdict on
// a limit, or nothing where the limit does not apply.
func (b OtherVerdicts) Agree(word func(limit string) string) bool {
	for limit, words := range b.words {
		if w := word(limit); w != "" && !slices.Contains(words, w) {
			return false
		}
	}
	return true
}

// ruleFile is one file of rule data, of any kind.
type ruleFile struct {
	Name     string            `json:"table"`
	Title    string            `json:"title"`
	About    string            `json:"about"`
	Columns  map[string]string `json:"columns"` // column -> kind of quantity, "text", "number" or "accuracy"
	Written  []writtenRow      `json:"rows"`    // of the table
	Rows     []Row             `json:"-"`       // what is made of them
	Limits   []Limit           `json:"limits"`
	Shared   []Shared          `json:"shared"`
	Cautions []Caution         `json:"cautions"`
	Advice   []Advice          `json:"advice"`
	job
}

// table is the table of the file.
func (s *ruleFile) table() *Table {
	return &Table{Name: s.Name, Title: s.Title, About: s.About, Rows: List[Row]{s.Rows}, columns: s.Columns}
}

// faults names every row that cannot be believed or understood. where leads
// each problem to the file.
func (s *ruleFile) faults(where string) problem.List {
	var list problem.List
	add := func(kind string, i int, id, what string) {
		if id == "" && what == "" {
			what = "it has no id"
		}
		if what != "" {
			list.Add(fmt.Sprintf("%s/%s/%d", where, kind, i), "row "+id+": "+what,
				"a row with id, source.document and basis", "write where the figure comes from, or that it is common practice")
		}
	}
	for i := range s.Rows {
		r := &s.Rows[i]
		add("rows", i, r.ID, r.missing())
		for n := range r.Values.items {
			v := &r.Values.items[n]
			kind, ok := s.Columns[v.Column]
			if !ok {
				add("rows", i, r.ID, fmt.Sprintf("%q is not one of its columns", v.Column))
				continue
			}
			if err := v.parse(kind); err != nil {
				add("rows", i, r.ID, v.Column+": "+err.Error())
			}
		}
	}
	for i := range s.Limits {
		l := &s.Limits[i]
		add("limits", i, l.ID, l.missing())
		if l.Max.Given() == l.Min.Given() {
			add("limits", i, l.ID, "a limit has either max or min")
		}
	}
	for i, c := range s.Cautions {
		add("cautions", i, c.ID, c.missing())
	}
	for i, a := range s.Advice {
		add("advice", i, a.ID, a.missing())
	}
	s.job.faults(add)
	return list
}
