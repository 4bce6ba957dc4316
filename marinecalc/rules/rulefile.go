package rules

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// read reads one rule file for a book. Its problems lie under where. Rows
// without columns of their own have those of the book's table.
func (b *Book) read(text []byte, where string) (*ruleFile, problem.List) {
	var s ruleFile
	if err := json.Unmarshal(withoutMark(text), &s); err != nil {
		return nil, unreadable(withoutMark(text), where, err)
	}
	return b.settled(&s, where)
}

// settled is a file as the book takes it, or its faults.
func (b *Book) settled(s *ruleFile, where string) (*ruleFile, problem.List) {
	s.takeWritten()
	switch {
	case s.Name == "" && len(s.Rows) > 0:
		return nil, problem.List{{Where: where + "/table", What: "the rows name no table",
			Allowed: fmt.Sprint(b.names()), Hint: `write "table": "…"`}}
	case slices.Contains(jobTables, s.Name):
		return nil, problem.List{{Where: where + "/table", What: "the table of " + s.Name + " is made of the rows of that kind",
			Allowed: `{"` + s.Name + `": […]}`, Hint: `write the rows under "` + s.Name + `"`}}
	case s.Columns == nil && b.tables[s.Name] != nil:
		s.Columns = b.tables[s.Name]().columns
	}
	if faults := s.faults(where); len(faults) > 0 {
		return nil, faults
	}
	return s, nil
}

// ruleFile is one file of rule data, of any kind.
type ruleFile struct {
	Name     string            `json:"table"`
	Title    string            `json:"title"`
	About    string            `json:"about"`
	Open     bool              `json:"open"`
	Columns  map[string]string `json:"columns"` // column -> kind of quantity, "text", "number" or "accuracy"
	Written  []writtenRow      `json:"rows"`    // of the table
	Rows     []Row             `json:"-"`       // what is made of them
	States   map[string]State  `json:"states"`  // that several limits name
	Limits   []Limit           `json:"limits"`
	Shared   []Shared          `json:"shared"`
	Cautions []Caution         `json:"cautions"`
	Advice   []Advice          `json:"advice"`
	job
}

// table is the table of the file.
func (s *ruleFile) table() *Table {
	return &Table{Name: s.Name, Title: s.Title, About: s.About, Rows: List[Row]{s.Rows}, Open: s.Open, columns: s.Columns}
}

// faults names every row that cannot be believed or understood. where leads
// each problem to the file.
func (s *ruleFile) faults(where string) problem.List {
	var list problem.List
	seen := map[string]bool{}
	add := func(kind string, i int, id string, faults ...fault) {
		switch {
		case id == "":
			faults = append(faults, fault{"it has no id", `"id": "a-name-of-its-own"`, "give it one; the id of a row that is there replaces that row"})
		case seen[kind+"/"+id]:
			faults = append(faults, fault{"an earlier row of this file has the same id", "an id that is used once", "rename one of them, or leave it out"})
		}
		seen[kind+"/"+id] = true
		for _, f := range faults {
			if f.what != "" {
				list.Add(fmt.Sprintf("%s/%s/%d", where, kind, i), "row "+id+": "+f.what, f.allowed, f.hint)
			}
		}
	}
	for i := range s.Rows {
		r := &s.Rows[i]
		faults := []fault{r.fault()}
		for n := range r.Values.items {
			faults = append(faults, s.settleCell(&r.Values.items[n]))
		}
		add("rows", i, r.ID, faults...)
	}
	for i := range s.Limits {
		l := &s.Limits[i]
		var sides fault
		if l.Max.Given() == l.Min.Given() {
			sides = fault{"a limit has either max or min", `"max": … or "min": …`, "write two limits where there are two sides"}
		}
		add("limits", i, l.ID, l.fault(), sides, s.settleStates(l))
	}
	for i, c := range s.Cautions {
		var signal fault
		if c.Signal.Gravity() < 0 {
			signal = fault{fmt.Sprintf("its signal %q is not known", c.Signal), "DANGER, WARNING, CAUTION, NOTICE", "take the word for the worst that can happen"}
		}
		add("cautions", i, c.ID, c.fault(), signal)
	}
	for i, a := range s.Advice {
		add("advice", i, a.ID, a.fault())
	}
	s.job.faults(add)
	return list
}

// settleStates puts the states that a limit names in place of their names.
func (s *ruleFile) settleStates(l *Limit) fault {
	for i, state := range l.States.items {
		if state.named == "" {
			continue
		}
		full, has := s.States[state.named]
		if !has {
			return fault{fmt.Sprintf("%q is not one of the states of its file", state.named), strings.Join(slices.Sorted(maps.Keys(s.States)), ", "),
				"use one of these, or write the state itself: valid and text"}
		}
		l.States.items[i] = full
	}
	return fault{}
}

// settleCell gives a value of a row its meaning by its column.
func (s *ruleFile) settleCell(v *Cell) fault {
	kind, ok := s.Columns[v.Column]
	if !ok {
		return fault{fmt.Sprintf("%q is not one of its columns", v.Column), strings.Join(slices.Sorted(maps.Keys(s.Columns)), ", "),
			"use one of these, or name the column and its kind under columns"}
	}
	text := v.Text
	if err := v.parse(kind); err != nil {
		f := fault{what: v.Column + ": " + err.Error(), hint: "the row has " + text}
		switch _, known := quantity.Lookup(kind); {
		case kind == "text" || kind == "accuracy":
			f.allowed = "a text"
		case kind == "number":
			f.allowed = "a number, or a range of low, typical, high and shape"
		case known:
			f.allowed = "a " + strings.ReplaceAll(kind, "-", " ") + " with its unit, or a range of low, typical, high and shape"
		default:
			f.allowed = "a kind of quantity, text, number or accuracy for the column"
		}
		return f
	}
	return fault{}
}

// writtenRow is a row as it stands in a file. A file has hundreds, so they are
// read in one go, without a method for each.
type writtenRow struct {
	ID      string                     `json:"id"`
	Pick    string                     `json:"pick"`
	Also    List[string]               `json:"also"`
	Name    string                     `json:"name"`
	Valid   Valid                      `json:"valid"`
	Values  map[string]json.RawMessage `json:"values"`
	Note    string                     `json:"note"`
	Decides *bool                      `json:"decides"`
	Bracket string                     `json:"bracket"`
	Sure    List[string]               `json:"sure"`
	Provenance
}

// row decides unless it says otherwise. Its values, put behind those of other
// rows, hold their text until the table gives them meaning by their columns.
func (w *writtenRow) row(behind *[]Cell) Row {
	r := Row{ID: w.ID, Pick: w.Pick, Also: w.Also, Name: w.Name, Valid: w.Valid, Note: w.Note, Bracket: w.Bracket, Sure: w.Sure, Provenance: w.Provenance,
		Decides: w.Decides == nil || *w.Decides}
	if r.Pick == "" {
		r.Pick = r.ID
	}
	first := len(*behind)
	for _, column := range slices.Sorted(maps.Keys(w.Values)) {
		*behind = append(*behind, Cell{column, Value{Text: string(w.Values[column])}})
	}
	r.Values.items = (*behind)[first:len(*behind):len(*behind)]
	return r
}

// takeWritten makes rows of what the file has written, the values of them all
// in one list.
func (s *ruleFile) takeWritten() {
	if len(s.Written) == 0 {
		return
	}
	count := 0
	for i := range s.Written {
		count += len(s.Written[i].Values)
	}
	all := make([]Cell, 0, count)
	s.Rows = make([]Row, len(s.Written))
	for i := range s.Written {
		s.Rows[i] = s.Written[i].row(&all)
	}
	s.Written = nil
}
