package rules

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/quantity"
)

// Table is one kind of thing people pick from, or look up.
type Table struct {
	Name    string
	Title   string
	About   string
	Rows    List[Row]
	Open    bool // what is no pick of a row may be written too, and no row goes with it
	columns map[string]string
}

// Kind returns the kind of quantity of a column, or "text", "number" or
// "accuracy". ok is false where the table has no such column.
func (t *Table) Kind(column string) (kind string, ok bool) {
	if t == nil {
		return "", false
	}
	kind, ok = t.columns[column]
	return kind, ok
}

// Find returns a copy of the row of that pick, as people may write it, that
// applies to what is known, or nil.
func (t *Table) Find(pick string, known Known) *Row {
	found := t.named(pick, known)
	if found == nil {
		found = t.alike(pick, known)
	}
	if found == nil {
		return nil
	}
	row := *found // stays on the caller's stack
	return &row
}

// Named is Find of a pick that nobody typed: it is as the row has it. What that
// saves is a reading of every row, where none applies.
func (t *Table) Named(pick string, known Known) *Row {
	found := t.named(pick, known)
	if found == nil {
		return nil
	}
	row := *found // stays on the caller's stack
	return &row
}

func (t *Table) named(pick string, known Known) *Row {
	if t == nil {
		return nil
	}
	for i := range t.Rows.items {
		if r := &t.Rows.items[i]; r.Pick == pick && r.Valid.Meets(known) {
			return r
		}
	}
	return nil
}

func (t *Table) alike(pick string, known Known) *Row {
	if t == nil {
		return nil
	}
	written := plainly(pick)
	for i := range t.Rows.items {
		r := &t.Rows.items[i]
		if alike := plainly(r.Pick) == written || slices.ContainsFunc(r.Also.items, func(a string) bool { return plainly(a) == written }); alike && r.Valid.Meets(known) {
			return r
		}
	}
	return nil
}

var plain = strings.NewReplacer(" ", "", "\u00a0", "", "×", "x", "*", "x", "unc", "", "unf", "")

// plainly is a pick without what people write otherwise or leave out: capitals,
// blanks, the × of a thread, and the series of an inch thread, whose turns to the
// inch say it too.
func plainly(pick string) string { return plain.Replace(strings.ToLower(pick)) }

// Short tells whether a row was found by a word that leaves something to be taken
// as usual.
func (r *Row) Short(word string) bool {
	return r != nil && slices.ContainsFunc(r.Also.items, func(a string) bool { return plainly(a) == plainly(word) })
}

// Picks lists what can be chosen, in the order of the rows, with its name.
func (t *Table) Picks() (picks, names []string) {
	if t == nil {
		return nil, nil
	}
	seen := map[string]bool{}
	for i := range t.Rows.items {
		if r := &t.Rows.items[i]; !seen[r.Pick] {
			seen[r.Pick] = true
			picks, names = append(picks, r.Pick), append(names, r.Name)
		}
	}
	return picks, names
}

// Row is one row of a table.
type Row struct {
	ID     string       `json:"id"`
	Pick   string       `json:"pick"` // what people choose; several rows may share it, each with its own Valid
	Also   List[string] `json:"also"` // what else they write for it, and leave something to be taken as usual: M10 for M10x1.5
	Name   string       `json:"name"`
	Valid  Valid        `json:"valid"`
	Values Values       `json:"values"`
	Note   string       `json:"note"`
	// Decides is false on rows that nobody confirmed: their values are
	// brackets, and a verdict stands only where it holds over all of them.
	Decides bool   `json:"decides"`
	Bracket string `json:"bracket"` // what low and high of such a row rest on
	// Sure are the columns of such a row that its source confirms all the same.
	Sure List[string] `json:"sure"`
	Provenance
}

// Confirms tells whether what the row says in a column is confirmed.
func (r *Row) Confirms(column string) bool {
	return r != nil && (r.Decides || Contains(r.Sure, column))
}

// Values are what a row says, column by column.
type Values struct{ List[Cell] }

// Cell is one value and its column.
type Cell struct {
	Column string
	Value
}

// Find returns the value of a column.
func (v Values) Find(column string) (value Value, ok bool) {
	for i := range v.items {
		if v.items[i].Column == column {
			return v.items[i].Value, true
		}
	}
	return Value{}, false
}

// Of returns the value of a column, or an empty one.
func (v Values) Of(column string) Value {
	value, _ := v.Find(column)
	return value
}

// Value is what a row says in one column: a text, or a number in SI with or
// without a range.
type Value struct {
	SI        float64
	Low, High float64
	Shape     string // "", "rectangular", "triangular" or "normal"
	Text      string // where the column is text
	IsText    bool
}

// Ranged tells whether the value has a spread.
func (v Value) Ranged() bool { return v.Shape != "" && v.Low < v.High }

// parse reads the kept text as the column's kind says.
func (v *Value) parse(column string) error {
	raw := []byte(v.Text)
	v.Text = ""
	read := func(raw json.RawMessage) (quantity.Reading, error) {
		var s string
		if raw[0] != '"' {
			var n float64
			if json.Unmarshal(raw, &n) != nil {
				return quantity.Reading{}, fmt.Errorf("%s is neither a number nor a text", raw)
			}
			return quantity.Reading{SI: n}, nil
		}
		if err := json.Unmarshal(raw, &s); err != nil {
			return quantity.Reading{}, err
		}
		kind, ok := quantity.Lookup(column)
		if !ok {
			return quantity.Reading{}, fmt.Errorf("%q is not a kind of column", column)
		}
		return kind.Parse(s)
	}
	switch column {
	case "text", "accuracy":
		v.IsText = true
		return json.Unmarshal(raw, &v.Text)
	case "number":
		column = "ratio"
	}
	if raw[0] != '{' {
		r, err := read(raw)
		v.SI, v.Low, v.High = r.SI, r.SI, r.SI
		if a := r.Accuracy; a > 0 {
			v.Low, v.High, v.Shape = v.SI-a, v.SI+a, "rectangular"
		}
		return err
	}
	var ranged struct {
		Low, Typical, High json.RawMessage
		Shape              string
	}
	if err := json.Unmarshal(raw, &ranged); err != nil {
		return err
	}
	for _, part := range []struct {
		raw json.RawMessage
		to  *float64
	}{{ranged.Low, &v.Low}, {ranged.Typical, &v.SI}, {ranged.High, &v.High}} {
		if len(part.raw) == 0 {
			return fmt.Errorf("a range needs low, typical and high")
		}
		r, err := read(part.raw)
		if err != nil {
			return err
		}
		*part.to = r.SI
	}
	v.Shape = ranged.Shape
	switch {
	case v.Shape != "rectangular" && v.Shape != "triangular" && v.Shape != "normal":
		return fmt.Errorf("shape %q is not rectangular, triangular or normal", v.Shape)
	case !(v.Low <= v.SI && v.SI <= v.High):
		return fmt.Errorf("low, typical and high are not in order")
	}
	return nil
}
