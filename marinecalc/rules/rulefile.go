package rules

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"example.org/driveline/marinecalc/problem"
)

// read reads one rule file for a book. Its problems lie under where. Rows
// without columns of their own have those of the book's table.
func (b *Book) read(text []byte, where string) (*ruleFile, problem.List) {
	var s ruleFile
	if err := json.Unmarshal(text, &s); err != nil {
		return nil, problem.List{{Where: where, What: "this rule file cannot be read: " + err.Error(),
			Allowed: "the form of schemas/rules-*.schema.json", Hint: "compare it with a file of marinecalc/rules/data"}}
	}
	s.takeWritten()
	switch {
	case s.Name == "" && len(s.Rows) > 0:
		return nil, problem.List{{Where: where + "/table", What: "the rows name no table",
			Allowed: fmt.Sprint(b.Tables()), Hint: `write "table": "…"`}}
	case slices.Contains(jobTables, s.Name):
		return nil, problem.List{{Where: where + "/table", What: "the table of " + s.Name + " is made of the rows of that kind",
			Allowed: `{"` + s.Name + `": […]}`, Hint: `write the rows under "` + s.Name + `"`}}
	case s.Columns == nil && b.tables[s.Name] != nil:
		s.Columns = b.table(s.Name).columns
	}
	if faults := s.faults(where); len(faults) > 0 {
		return nil, faults
	}
	return &s, nil
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

// writtenRow is a row as it stands in a file. A file has hundreds, so they are
// read in one go, without a method for each.
type writtenRow struct {
	ID      string                     `json:"id"`
	Pick    string                     `json:"pick"`
	Name    string                     `json:"name"`
	Valid   Valid                      `json:"valid"`
	Values  map[string]json.RawMessage `json:"values"`
	Note    string                     `json:"note"`
	Decides *bool                      `json:"decides"`
	Provenance
}

// row decides unless it says otherwise. Its values, put behind those of other
// rows, hold their text until the table gives them meaning by their columns.
func (w *writtenRow) row(behind *[]Cell) Row {
	r := Row{ID: w.ID, Pick: w.Pick, Name: w.Name, Valid: w.Valid, Note: w.Note, Provenance: w.Provenance,
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
