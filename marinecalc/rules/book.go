package rules

import (
	"embed"
	"encoding/json"
	"fmt"
	"maps"
	"path"
	"slices"
	"sync"

	"example.org/driveline/marinecalc/problem"
)

//go:embed *.json tables/*.json job/*.json
var files embed.FS

// Book is all rule data in force: what marinecalc brings, and what was laid
// over it. A Book is never changed after it is made.
type Book struct {
	tables   map[string]func() *Table // each read when first asked for
	limits   []Limit
	shared   []Shared
	cautions []Caution
	advice   []Advice
	overlays []string // titles of what was laid over, in order

	work  func() *job                       // read when first asked for: most calculations do without
	picks func() []*Table                   // the tables of the job, as jobTables names them
	of    func(calculation string) *section // the rows of one calculation, found once
}

// section is the rows of one calculation.
type section struct {
	limits   []Limit
	cautions []Caution // gravest first
	advice   []Advice
}

// index readies what is looked up in the rows, each when first asked for.
func (b *Book) index() {
	b.picks = sync.OnceValue(func() []*Table { return b.work().tables() })
	var known sync.Map // calculation -> *section
	b.of = func(calculation string) *section {
		if s, ok := known.Load(calculation); ok {
			return s.(*section)
		}
		s := &section{
			limits:   keep(b.limits, func(l Limit) bool { return l.Calculation == calculation }),
			cautions: keep(b.cautions, func(c Caution) bool { return slices.Contains(c.Calculations, calculation) }),
			advice:   keep(b.advice, func(a Advice) bool { return a.Calculation == calculation }),
		}
		for _, one := range b.shared {
			if one.Calculation == calculation {
				s.limits = append(s.limits, one.taken(b.limits)...)
			}
		}
		slices.SortStableFunc(s.cautions, func(x, y Caution) int { return x.Signal.Gravity() - y.Signal.Gravity() })
		known.Store(calculation, s)
		return s
	}
}

// Standard returns the rule data that marinecalc brings.
var Standard = sync.OnceValue(func() *Book {
	b := (&Book{tables: standardTables(), work: sync.OnceValue(standardJob)}).standing(filesIn("."))
	b.share(words{})
	return b
})

// standardTables finds the tables that marinecalc brings. A table's rows may
// stand in several files.
func standardTables() map[string]func() *Table {
	parts := map[string][]string{}
	for _, file := range filesIn("tables") {
		name := tableIn(file)
		parts[name] = append(parts[name], file)
	}
	tables := map[string]func() *Table{}
	for name, files := range parts {
		tables[name] = sync.OnceValue(func() *Table {
			t := (&Book{}).standing(files).Table(name)
			t.share(words{})
			return t
		})
	}
	return tables
}

// tableIn reads the name of a file's table, which is the first thing it says.
func tableIn(file string) string {
	f, _ := files.Open(file)
	d := json.NewDecoder(f)
	for range 2 { // the brace and the key
		_, _ = d.Token() // a test holds that every file begins so
	}
	name, _ := d.Token()
	text, _ := name.(string)
	return text
}

// standardJob reads the rows of the job that marinecalc brings.
func standardJob() *job { return (&Book{}).standing(filesIn("job")).work() }

// standing lays files of our own over a book.
func (b *Book) standing(names []string) *Book {
	for _, name := range names {
		text, _ := files.ReadFile(name) // embedded
		s, faults := b.read(text, name)
		if len(faults) > 0 {
			panic(faults) // a fault in our own data; a test loads every file
		}
		b = b.with(s)
	}
	return b
}

// filesIn lists the embedded files of a directory.
func filesIn(directory string) []string {
	var names []string
	entries, _ := files.ReadDir(directory) // an embedded directory is always there
	for _, e := range entries {
		if !e.IsDir() {
			names = append(names, path.Join(directory, e.Name()))
		}
	}
	return names
}

// Table returns the table of that name, or nil.
func (b *Book) Table(name string) *Table {
	if read := b.tables[name]; read != nil {
		return read()
	}
	if slices.Contains(jobTables, name) {
		return b.picks()[slices.Index(jobTables, name)]
	}
	return nil
}

// Tables lists the names of all tables, in alphabetical order.
func (b *Book) Tables() []string {
	names := slices.AppendSeq(slices.Clone(jobTables), maps.Keys(b.tables))
	slices.Sort(names)
	return names
}

// Limits returns the limits of one calculation.
func (b *Book) Limits(calculation string) []Limit { return b.of(calculation).limits }

// Cautions returns the cautions of one calculation, gravest first.
func (b *Book) Cautions(calculation string) []Caution { return b.of(calculation).cautions }

// Advice returns the advice of one calculation.
func (b *Book) Advice(calculation string) []Advice { return b.of(calculation).advice }

// AllLimits returns every limit.
func (b *Book) AllLimits() []Limit { return b.limits }

// AllShared returns which calculations share the limits of another.
func (b *Book) AllShared() []Shared { return b.shared }

// AllCautions returns every caution.
func (b *Book) AllCautions() []Caution { return b.cautions }

// AllAdvice returns every piece of advice.
func (b *Book) AllAdvice() []Advice { return b.advice }

// Overlays names what was laid over the standard rules, in order.
func (b *Book) Overlays() []string { return b.overlays }

// Overlay returns a book in which the rows of a rule file replace those of
// the same id and the others are added. Every row must bring its own source.
// The book itself stays as it was.
func (b *Book) Overlay(text []byte) (*Book, problem.List) {
	s, faults := b.read(text, "")
	if len(faults) > 0 {
		return nil, faults
	}
	next := b.with(s)
	before := b.Loose()
	faults = slices.DeleteFunc(next.Loose(), func(p problem.Problem) bool { return slices.Contains(before, p) })
	if len(faults) > 0 {
		return nil, faults
	}
	title := s.Title
	if title == "" {
		title = "rows laid over"
	}
	next.overlays = append(slices.Clone(b.overlays), title)
	return next, nil
}

// read reads one rule file for a book. Its problems lie under where. Rows
// without columns of their own have those of the book's table.
func (b *Book) read(text []byte, where string) (*sheaf, problem.List) {
	var s sheaf
	if err := json.Unmarshal(text, &s); err != nil {
		return nil, problem.List{{Where: where, What: "this rule file cannot be read: " + err.Error(),
			Allowed: "the form of schemas/rules-*.schema.json", Hint: "compare it with a file of marinecalc/rules"}}
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
		s.Columns = b.Table(s.Name).Columns
	}
	if faults := s.faults(where); len(faults) > 0 {
		return nil, faults
	}
	return &s, nil
}

// with merges what a rule file brings into a copy of the book.
func (b *Book) with(s *sheaf) *Book {
	next := &Book{tables: map[string]func() *Table{}, work: b.work,
		limits:   replace(b.limits, s.Limits, func(l Limit) string { return l.ID }),
		shared:   slices.Concat(b.shared, s.Shared),
		cautions: replace(b.cautions, s.Cautions, func(c Caution) string { return c.ID }),
		advice:   replace(b.advice, s.Advice, func(a Advice) string { return a.ID })}
	maps.Copy(next.tables, b.tables)
	if s.Name != "" {
		table := s.Table
		if b.tables[s.Name] != nil {
			old := b.Table(s.Name)
			table.Title, table.About = old.Title, old.About
			table.Columns = maps.Clone(old.Columns)
			maps.Copy(table.Columns, s.Columns)
			table.Rows = replace(old.Rows, s.Rows, func(r Row) string { return r.ID })
		}
		next.tables[s.Name] = func() *Table { return &table }
	}
	if s.job.any() {
		next.work = sync.OnceValue(func() *job { return b.jobSoFar().over(&s.job) })
	}
	next.index()
	return next
}

// replace returns old with the rows of the same id replaced, and the other
// new rows put first, so that a row laid over is found before a general one.
func replace[T any](old, rows []T, id func(T) string) []T {
	if len(rows) == 0 {
		return old
	}
	out := slices.Clone(old)
	var added []T
	for _, r := range rows {
		if i := slices.IndexFunc(out, func(o T) bool { return id(o) == id(r) }); i >= 0 {
			out[i] = r
		} else {
			added = append(added, r)
		}
	}
	return append(added, out...)
}

func keep[T any](all []T, want func(T) bool) []T {
	var out []T
	for _, v := range all {
		if want(v) {
			out = append(out, v)
		}
	}
	return out
}
