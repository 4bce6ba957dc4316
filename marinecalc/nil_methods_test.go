package marinecalc_test

import (
	"reflect"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// What a look-up did not find is nil, and whoever asks it goes on: no method of what is
// handed out panics on it.
func TestNoMethodPanicsOnNothing(t *testing.T) {
	tried := 0
	for _, none := range []any{
		(*sheet.Sheet)(nil), (*sheet.Result)(nil), (*sheet.Spread)(nil), (*sheet.Table)(nil), (*sheet.Cell)(nil), (*sheet.Verdict)(nil), (*sheet.Input)(nil),
		(*rules.Table)(nil), (*rules.Row)(nil), (*rules.Book)(nil), (*problem.Error)(nil), (*quantity.Kind)(nil), (*marinecalc.Boat)(nil), (*marinecalc.Survey)(nil), (*marinecalc.TorqueJoint)(nil),
	} {
		v := reflect.ValueOf(none)
		for i := range v.NumMethod() {
			m := v.Type().Method(i)
			if _, byValue := v.Type().Elem().MethodByName(m.Name); byValue || strings.HasPrefix(m.Name, "Unmarshal") || m.Name == "Derived" {
				continue // Go itself refuses these; what is read into nothing, or made by no function, is a mistake
			}
			tried++
			func() {
				defer func() {
					if p := recover(); p != nil {
						t.Errorf("%s.%s: %v", v.Type(), m.Name, p)
					}
				}()
				var in []reflect.Value
				for k := range v.Method(i).Type().NumIn() {
					in = append(in, reflect.Zero(v.Method(i).Type().In(k)))
				}
				if v.Method(i).Type().IsVariadic() {
					v.Method(i).CallSlice(in)
				} else {
					v.Method(i).Call(in)
				}
			}()
		}
	}
	if tried < 40 {
		t.Errorf("%d methods tried", tried)
	}
}

// A row with fewer cells than the table has columns, as another program may write it, has
// no cell there.
func TestShortRows(t *testing.T) {
	table := sheet.Table{Name: "t", Columns: []sheet.Column{{Name: "a"}, {Name: "b"}}, Rows: []sheet.Row{{Cells: []sheet.Cell{{Text: "1"}}}, {}}}
	s := sheet.Sheet{Tables: []sheet.Table{table}}
	if c := s.Cell("t", 0, "a"); c == nil || c.Text != "1" || s.Cell("t", 0, "b") != nil || s.Cell("t", 1, "a") != nil {
		t.Error("cells of short rows")
	}
	if read := table.Reader(table.Rows[0]); read("a") != "1" || read("b") != "" {
		t.Error("texts of short rows")
	}
}
