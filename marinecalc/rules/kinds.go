package rules

import (
	"encoding/json"
	"fmt"
	"slices"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// Table is one kind of thing people pick from, or look up.
type Table struct {
	Name    string            `json:"table"`
	Title   string            `json:"title"`
	About   string            `json:"about"`
	Columns map[string]string `json:"columns"` // column -> kind of quantity, "text", "number" or "accuracy"
	Rows    []Row             `json:"-"`       // a file's come by way of writtenRow
}

// Find returns the row of that pick that applies to what is known, or nil.
func (t *Table) Find(pick string, known Known) *Row {
	for i := range t.Rows {
		if r := &t.Rows[i]; r.Pick == pick && r.Valid.Meets(known) {
			return r
		}
	}
	return nil
}

// Picks lists what can be chosen, in the order of the rows, with its name.
func (t *Table) Picks() (picks, names []string) {
	seen := map[string]bool{}
	for _, r := range t.Rows {
		if !seen[r.Pick] {
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
	Of string
}

// UnmarshalJSON reads an amount or {"of": "name"}.
func (b *Bound) UnmarshalJSON(text []byte) error {
	if text[0] != '{' {
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
	Max         *Bound  `json:"max"`
	Min         *Bound  `json:"min"`
	Near        float64 `json:"near"`
	Chance      bool    `json:"chance"` // the value is itself the probability that all is well
	Valid       Valid   `json:"valid"`
	How         string  `json:"how"` // how to take the reading when it is missing
	Why         string  `json:"why"` // what it means to be beyond
	Decides     *bool   `json:"decides"`
	Note        string  `json:"note"`
	Backing
}

// Shared says that results of one calculation are held against the limits of
// another, under names of their own.
type Shared struct {
	Calculation string            `json:"calculation"`
	LimitsOf    string            `json:"limitsOf"`
	On          map[string]string `json:"on"`    // what the limit is on -> the result held against it here
	Title       string            `json:"title"` // put before the limit's title
	How         string            `json:"how"`   // how to come by the result when it is missing
}

// taken gives the limits that the calculation shares.
func (s *Shared) taken(all []Limit) []Limit {
	var list []Limit
	for _, l := range all {
		if on, has := s.On[l.On]; has && l.Calculation == s.LimitsOf {
			l.Calculation, l.On, l.How = s.Calculation, on, s.How
			l.Title = s.Title + ": " + l.Title
			list = append(list, l)
		}
	}
	return list
}

// Caution is what can hurt people or the boat in the work that a calculation
// belongs to.
type Caution struct {
	ID           string       `json:"id"`
	Calculations []string     `json:"calculations"`
	Signal       sheet.Signal `json:"signal"`
	Text         string       `json:"text"`
	Valid        Valid        `json:"valid"`
	Note         string       `json:"note"`
	Backing
}

// Advice is what to do next, after a verdict or always.
type Advice struct {
	ID          string       `json:"id"`
	Calculation string       `json:"calculation"`
	Limit       string       `json:"limit"`
	Words       []sheet.Word `json:"words"`
	Besides     Besides      `json:"besides"`
	Valid       Valid        `json:"valid"`
	Text        string       `json:"text"`
	Note        string       `json:"note"`
	Backing
}

// Besides is what advice asks of other limits: limit -> the verdicts with which
// it may be given. A limit that does not apply does not stand in its way.
type Besides map[string][]sheet.Word

// Agree tells whether no verdict speaks against it. word gives the verdict on
// a limit, or nothing where the limit does not apply.
func (b Besides) Agree(word func(limit string) sheet.Word) bool {
	for limit, words := range b {
		if w := word(limit); w != "" && !slices.Contains(words, w) {
			return false
		}
	}
	return true
}

// sheaf is one file of rule data, of any kind.
type sheaf struct {
	Table
	Written  []writtenRow `json:"rows"` // of the table
	Limits   []Limit      `json:"limits"`
	Shared   []Shared     `json:"shared"`
	Cautions []Caution    `json:"cautions"`
	Advice   []Advice     `json:"advice"`
	job
}

// faults names every row that cannot be believed or understood. where leads
// each problem to the file.
func (s *sheaf) faults(where string) problem.List {
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
		for n := range r.Values {
			v := &r.Values[n]
			kind, ok := s.Columns[v.Column]
			if !ok {
				add("rows", i, r.ID, fmt.Sprintf("%q is not one of its columns", v.Column))
				continue
			}
			if err := v.settle(kind); err != nil {
				add("rows", i, r.ID, v.Column+": "+err.Error())
			}
		}
	}
	for i := range s.Limits {
		l := &s.Limits[i]
		add("limits", i, l.ID, l.missing())
		if (l.Max == nil) == (l.Min == nil) {
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
