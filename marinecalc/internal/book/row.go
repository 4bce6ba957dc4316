// Package book is the book of checks: every published value that marinecalc is
// held against, computed anew beside what is published, by calculation. The
// rows come from files (testdata/published); what is computed comes from the
// same functions and standard rules that make the sheets.
package book

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Row is one published value, or several of one source, and how close what is
// computed must come.
type Row struct {
	ID          string
	Calculation string
	Check       string // how it is computed where that is not by a calculation's sheet
	Table       string
	Pick        string
	On          string
	Model       string
	At          map[string]any
	Input       map[string]any
	Expect      map[string]any
	Tolerance   float64 // relative
	Absolute    any     // where a relative one has no sense
	By          string  // what it rests on: a table or an example in print, another method, worked by hand, or from memory; "" for not said
	Source      string
	Note        string
}

// Read reads a file of published values: {"rows": […]}. The error is a
// [problem.Error] with the first fault.
func Read(text []byte) ([]Row, error) {
	value, problems := contract.Decode(text)
	if len(problems) > 0 {
		return nil, problems.Err()
	}
	file, _ := value.(map[string]any)
	list, is := file["rows"].([]any)
	if !is {
		return nil, problem.List{{Where: "/rows", What: "a file of published values has a list of rows, and this has none", Allowed: `{"rows": […]}`, Hint: asPublished}}.Err()
	}
	for name := range file {
		if !slices.Contains([]string{"topic", "about", "rows"}, name) {
			problems.Add("/"+name, fmt.Sprintf("%q is not a name known here", name), "topic, about, rows", "")
		}
	}
	rows, more := Rows("/rows", list)
	return rows, append(problems, more...).Sorted().Err()
}

const asPublished = "write it as the files of testdata/published are"

// Rows reads rows that stand at a place, decoded already, and says what cannot be.
func Rows(where string, list []any) (rows []Row, problems problem.List) {
	for i := range list {
		text, err := json.Marshal(list[i])
		var row Row
		if err == nil {
			d := json.NewDecoder(bytes.NewReader(text))
			d.UseNumber()
			d.DisallowUnknownFields()
			err = d.Decode(&row)
		}
		if err != nil {
			problems.Add(fmt.Sprintf("%s/%d", where, i), "it is no published value: "+strings.TrimPrefix(err.Error(), "json: "),
				"id, calculation, check, table, pick, on, model, at, input, expect, tolerance, absolute, by, source, note", asPublished)
		}
		rows = append(rows, row)
	}
	return rows, problems
}

// fault says what a row lacks to be a check at all.
func (row *Row) fault() string {
	switch {
	case row.Source == "":
		return "it names no source"
	case len(row.Expect) == 0:
		return "it expects nothing"
	case !(row.Tolerance > 0 && row.Tolerance < 1) && row.Absolute == nil:
		return "it does not say how close is close enough"
	}
	return ""
}

// figure is a number of a row, with the unit that it is written in.
type figure struct {
	text string
	si   float64
	unit string
	kind *quantity.Kind
}

// read reads a number in SI, or a quantity of the kind; nil is any kind.
func read(v any, kind *quantity.Kind) (figure, error) {
	switch v := v.(type) {
	case json.Number:
		f, err := v.Float64()
		return figure{withUnit(v.String(), kind.SIUnit()), f, kind.SIUnit(), kind}, err
	case string:
		var r quantity.Reading
		var err error
		if kind == nil {
			r, kind, err = quantity.Infer(v)
		} else {
			r, err = kind.Parse(v)
		}
		return figure{v, r.SI, r.Unit, kind}, err
	}
	return figure{}, fmt.Errorf("%v is no number", v)
}

func number(v any) float64 {
	n, is := v.(json.Number)
	if !is {
		return math.NaN()
	}
	f, err := n.Float64()
	if err != nil {
		return math.NaN()
	}
	return f
}

func numbers(v any) []float64 {
	items, _ := v.([]any)
	list := make([]float64, len(items))
	for i := range items {
		list[i] = number(items[i])
	}
	return list
}
