package host

import (
	"cmp"
	"fmt"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// InForce are rules by which sheets are made: of all calculations or of one,
// and the rows of one table.
type InForce struct {
	Limits []Limit         `json:"limits,omitempty"`
	Tables []Table         `json:"tables,omitempty"` // without their rows
	Table  *Table          `json:"table,omitempty"`
	Files  []sheet.Overlay `json:"files,omitempty"` // rule files over the standard rules, in order
}

// Limit is what a result or a reading is held against.
type Limit struct {
	ID          string   `json:"id"`
	Calculation string   `json:"calculation"`
	On          string   `json:"on"` // the result or input
	Title       string   `json:"title"`
	Text        string   `json:"text"` // "at most 10 K", as it is written
	Side        string   `json:"side"`
	SI          *float64 `json:"si,omitempty"`       // nil where it is another result or input
	Of          string   `json:"of,omitempty"`       // that one
	Quantity    string   `json:"quantity,omitempty"` // "" for a plain number
	Goes        []string `json:"goesBy,omitempty"`   // inputs and results that say whether it applies
	Guide       bool     `json:"guide,omitempty"`    // nothing is over it
	Basis       string   `json:"basis"`
	Source      string   `json:"source"`
	Why         string   `json:"why,omitempty"`
	How         string   `json:"how,omitempty"`
}

// Table is one kind of thing that people pick from.
type Table struct {
	Name    string            `json:"name"`
	Title   string            `json:"title"`
	About   string            `json:"about,omitempty"`
	Open    bool              `json:"open,omitempty"` // other words may be written too
	Count   int               `json:"count"`          // of rows
	Columns map[string]string `json:"columns,omitempty"`
	Rows    []Row             `json:"rows,omitempty"`
}

// Row is one row of a table.
type Row struct {
	ID     string           `json:"id"`
	Pick   string           `json:"pick,omitempty"`
	Name   string           `json:"name"`
	Goes   []string         `json:"goesBy,omitempty"`
	Values map[string]Value `json:"values,omitempty"`
	Guess  bool             `json:"guess,omitempty"` // nobody confirmed it: low and high are a bracket
	Basis  string           `json:"basis"`
	Source string           `json:"source"`
	Note   string           `json:"note,omitempty"`
}

// Value is what a row says in one column: words, or a number in SI and, where
// it has a range, its ends.
type Value struct {
	Text string   `json:"text,omitempty"`
	SI   *float64 `json:"si,omitempty"`
	Low  *float64 `json:"low,omitempty"`
	High *float64 `json:"high,omitempty"`
}

// Rules tells the limits of a calculation, or of all where none is named, and
// the tables that there are, or one with its rows where one is named.
func Rules(book *rules.Book, calculation, table string) (*InForce, error) {
	out := &InForce{Files: book.Overlays()}
	if table != "" {
		t := book.Table(table)
		if t == nil {
			return nil, problem.List{{Where: "/table", What: fmt.Sprintf("there is no table %q", table), Hint: problem.DidYouMean(table, book.Tables()),
				Allowed: "a name of the tables that are told without it", Kind: problem.Unknown}}.Err()
		}
		whole := tableOf(t, true)
		out.Table = &whole
		if calculation == "" {
			return out, nil
		}
	}
	list := book.AllLimits()
	if calculation != "" {
		list = book.Limits(calculation)
	}
	for _, l := range list.All() {
		out.Limits = append(out.Limits, limitOf(&l))
	}
	if table == "" && calculation == "" {
		for _, name := range book.Tables() {
			out.Tables = append(out.Tables, tableOf(book.Table(name), false))
		}
	}
	return out, nil
}

func limitOf(l *rules.Limit) Limit {
	side, b := "at most", l.Max
	if l.Min.Given() {
		side, b = "at least", l.Min
	}
	out := Limit{ID: l.ID, Calculation: l.Calculation, On: l.On, Title: l.Title, Text: side + " " + cmp.Or(b.Of, b.Text), Side: side, Of: b.Of,
		Guide: l.Basis.Guides(), Basis: string(l.Basis), Source: l.Source.String(), Why: l.Why, How: l.How}
	if b.Of == "" {
		out.SI = &b.SI
	}
	if b.Kind != nil {
		out.Quantity = b.Kind.Name
	}
	for name := range l.Valid.Names() {
		out.Goes = append(out.Goes, name)
	}
	return out
}

func tableOf(t *rules.Table, whole bool) Table {
	out := Table{Name: t.Name, Title: t.Title, About: t.About, Open: t.Open, Count: t.Rows.Len()}
	if !whole {
		return out
	}
	out.Columns = map[string]string{}
	for _, r := range t.Rows.All() {
		row := Row{ID: r.ID, Pick: r.Pick, Name: r.Name, Guess: !r.Decides, Basis: string(r.Basis), Source: r.Source.String(), Note: r.Note, Values: map[string]Value{}}
		for name := range r.Valid.Names() {
			row.Goes = append(row.Goes, name)
		}
		for _, c := range r.Values.All() {
			out.Columns[c.Column], _ = t.Kind(c.Column)
			v := Value{Text: c.Text}
			if !c.IsText {
				v.Text, v.SI = "", &c.SI
				if c.Ranged() {
					v.Low, v.High = &c.Low, &c.High
				}
			}
			row.Values[c.Column] = v
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}
