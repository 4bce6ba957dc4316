// Package rules holds judgement as data: tables of bolts, packings and
// gauges, limits, cautions and advice, each row with its source. The rows
// are JSON files beside this code; a yard lays the maker's figures over them
// without touching either.
package rules

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/quantity"
)

// Source says where a row comes from.
type Source struct {
	Document string `json:"document"`
	Edition  string `json:"edition"`
	Clause   string `json:"clause"`
	line     string // the whole, written once
}

// NewSource makes a source of its parts; all but the document may be empty.
func NewSource(document, edition, clause string) Source {
	parts := []string{document}
	for _, p := range []string{edition, clause} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return Source{document, edition, clause, strings.Join(parts, ", ")}
}

// UnmarshalJSON reads a source of rule data.
func (s *Source) UnmarshalJSON(text []byte) error {
	type plain Source
	var p plain
	if err := json.Unmarshal(text, &p); err != nil {
		return err
	}
	*s = NewSource(p.Document, p.Edition, p.Clause)
	return nil
}

// String writes the source as one line.
func (s Source) String() string { return s.line }

// Basis says what kind of authority stands behind a row.
type Basis string

// The bases, strongest first.
const (
	ByMaker        Basis = "maker"
	ByStandard     Basis = "standard"
	ByHandbook     Basis = "handbook"
	ByMeasurement  Basis = "measured"
	CommonPractice Basis = "common-practice"
	FromMemory     Basis = "from-memory"
)

// Authority says the basis in the words of a verdict.
func (b Basis) Authority() string {
	switch b {
	case ByMaker:
		return "maker's figure"
	case CommonPractice:
		return "common practice"
	case FromMemory:
		return "published, quoted from memory"
	default:
		return "published"
	}
}

func (b Basis) known() bool {
	switch b {
	case ByMaker, ByStandard, ByHandbook, ByMeasurement, CommonPractice, FromMemory:
		return true
	}
	return false
}

// Provenance is what every row carries to be believed.
type Provenance struct {
	Source Source `json:"source"`
	Basis  Basis  `json:"basis"`
}

func (b Provenance) missing() string {
	switch {
	case b.Source.Document == "":
		return "it has no source"
	case !b.Basis.known():
		return fmt.Sprintf("its basis %q is not known", b.Basis)
	}
	return ""
}

// Row is one row of a table.
type Row struct {
	ID     string `json:"id"`
	Pick   string `json:"pick"` // what people choose; several rows may share it, each with its own Valid
	Name   string `json:"name"`
	Valid  Valid  `json:"valid"`
	Values Values `json:"values"`
	Note   string `json:"note"`
	// Decides is false on rows of the least sure kind: they start a
	// calculation but never stand behind a verdict.
	Decides bool `json:"decides"`
	Provenance
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
