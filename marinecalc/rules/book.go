package rules

import (
	"iter"
	"maps"
	"slices"
	"sort"
	"sync"

	"example.org/driveline/marinecalc/sheet"
)

// Book is all rule data in force: what marinecalc brings, with the overlays
// applied to it. A Book is never changed after it is made: what it hands out are values
// and copies whose parts cannot be changed from outside. The zero Book, or a nil
// one, means the standard rules.
type Book struct {
	tables   map[string]func() *Table          // each read when first asked for
	all      func() *section                   // the rows of all calculations, read when first asked for
	rows     func(calculation string) *section // the rows of one as the files have them
	known    map[string]func() *ready          // the same, as a run takes them; made once
	overlays []sheet.Overlay                   // applied to the standard rules, in order

	job   func() *job     // read when first asked for: most calculations do without
	picks func() []*Table // the tables of the job, as jobTables names them

	kind    kindKey  // of boat, as For made it; "" for any
	derived sync.Map // by the keys of Derived
}

// Derived is what others work out of a book once and keep with it, such as a
// model of its rows. key is of a type of their own, as with a context. make may
// be called more than once at the same time; all get the same answer, which
// nobody changes. It is of use to whoever reads a book often, and for the inner
// packages (the index of what can be found, the model of the fault finding, gauges and
// rows of verdicts) it has to be here: a cache beside the book would outlive it.
func (b *Book) Derived(key any, make func() any) any {
	b = b.filled()
	if is, ok := b.derived.Load(key); ok {
		return is
	}
	is, _ := b.derived.LoadOrStore(key, make())
	return is
}

// filled is the book itself, or the standard one where nothing was put in it.
func (b *Book) filled() *Book {
	if b == nil || b.all == nil {
		return Standard()
	}
	return b
}

// ready is the rows of one calculation, as a run takes them.
type ready struct {
	limits   []Limit   // and those it shares
	cautions []Caution // gravest first
	advice   []Advice
	usual    Table
}

// index readies what is looked up in the rows of the named calculations, each
// when first asked for. Others have what common.json and overlays hold.
func (b *Book) index(calculations iter.Seq[string], rows func(calculation string) *section) {
	b.picks = sync.OnceValue(func() []*Table { return b.job().tables() })
	b.rows = rows
	b.known = map[string]func() *ready{}
	for c := range calculations {
		b.known[c] = sync.OnceValue(func() *ready { return b.ready(c) })
	}
}

// of returns the rows of one calculation.
func (b *Book) of(calculation string) *ready {
	b = b.filled()
	if known := b.known[calculation]; known != nil {
		return known()
	}
	return b.ready(calculation)
}

func (b *Book) ready(calculation string) *ready {
	s := b.rows(calculation)
	r := &ready{limits: s.limits, cautions: s.cautions, advice: s.advice, usual: Table{Name: usualValues, Rows: List[Row]{s.usual}}}
	for i := range s.shared {
		r.limits = append(r.limits, s.shared[i].limits(b.rows(s.shared[i].LimitsOf).limits)...)
	}
	sort.SliceStable(r.cautions, func(i, j int) bool { return r.cautions[i].Signal.Gravity() < r.cautions[j].Signal.Gravity() })
	return r
}

// Table returns a copy of the table of that name, or nil.
func (b *Book) Table(name string) *Table {
	found := b.table(name)
	if found == nil {
		return nil
	}
	table := *found // stays on the caller's stack
	return &table
}

func (b *Book) table(name string) *Table {
	b = b.filled()
	if read := b.tables[name]; read != nil {
		return read()
	}
	if slices.Contains(jobTables, name) {
		return b.picks()[slices.Index(jobTables, name)]
	}
	return nil
}

// Tables lists the names of all tables, in alphabetical order.
func (b *Book) Tables() []string { return b.filled().names() }

func (b *Book) names() []string {
	names := slices.AppendSeq(slices.Clone(jobTables), maps.Keys(b.tables))
	slices.Sort(names)
	return names
}

// Limits returns the limits of one calculation.
func (b *Book) Limits(calculation string) List[Limit] { return List[Limit]{b.of(calculation).limits} }

// Cautions returns the cautions of one calculation, gravest first.
func (b *Book) Cautions(calculation string) List[Caution] {
	return List[Caution]{b.of(calculation).cautions}
}

// Advice returns the advice of one calculation.
func (b *Book) Advice(calculation string) List[Advice] { return List[Advice]{b.of(calculation).advice} }

// Usual returns a copy of the usual values that one calculation may take.
func (b *Book) Usual(calculation string) *Table {
	table := b.of(calculation).usual // stays on the caller's stack
	return &table
}

// AllLimits returns every limit.
func (b *Book) AllLimits() List[Limit] { return List[Limit]{b.filled().all().limits} }

// AllShared returns which calculations share the limits of another.
func (b *Book) AllShared() List[Shared] { return List[Shared]{b.filled().all().shared} }

// AllCautions returns every caution.
func (b *Book) AllCautions() List[Caution] { return List[Caution]{b.filled().all().cautions} }

// AllAdvice returns every piece of advice.
func (b *Book) AllAdvice() List[Advice] { return List[Advice]{b.filled().all().advice} }

// Overlays lists the rule files applied to the standard rules, in order.
func (b *Book) Overlays() []sheet.Overlay { return slices.Clone(b.filled().overlays) }

// SortCautions puts cautions in the order in which people need them: that the
// shaft stays still before all, since everything else comes after it, then the
// gravest first; of those alike the one that is named first.
func (b *Book) SortCautions(list []sheet.Caution) {
	stop := ""
	for _, c := range b.AllCautions().All() {
		if c.ID == StopNow {
			stop = c.Text
		}
	}
	rank := func(c *sheet.Caution) int {
		if c.Text == stop {
			return -1
		}
		return c.Signal.Gravity()
	}
	sort.SliceStable(list, func(i, j int) bool { return rank(&list[i]) < rank(&list[j]) })
}
