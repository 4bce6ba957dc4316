package book

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// calculation holds a sheet, made by the standard rules.
func (m *maker) calculation() error {
	session, err := calc.Options{NoRanges: true}.Session(m.ctx, catalogue.Calculations)
	if err != nil {
		return err
	}
	c, err := session.Find(m.Calculation)
	if err != nil {
		return err
	}
	out, _, problems := session.Run(c, m.Input)
	if len(problems) > 0 {
		return problems.Sorted().Err()
	}
	s := out.Sheet
	for _, name := range m.expected() {
		want := m.Expect[name]
		if place := strings.Split(name, "/"); len(place) == 3 {
			if err := m.cell(s, name, place, want); err != nil {
				return err
			}
			continue
		}
		if id, is := strings.CutPrefix(name, "limit/"); is { // the bound that a limit has here
			v := s.Verdict(id)
			if v == nil || v.BoundSI == nil {
				return fmt.Errorf("there is no bound of %s", id)
			}
			if err := m.number(name, v.Title, *v.BoundSI, want, nil); err != nil {
				return err
			}
			continue
		}
		r := s.Result(name)
		if r == nil {
			return fmt.Errorf("there is no result %s", name)
		}
		if _, is := want.(string); is && r.Kind == "" || r.SI == nil {
			m.word(name, r.Title, r.Text, want)
			continue
		}
		kind, _ := quantity.Lookup(string(r.Kind))
		if err := m.number(name, r.Title, *r.SI, want, kind); err != nil {
			return err
		}
	}
	return nil
}

// cell holds one cell of a table: "moves/0/raise" is the raise of the first
// row of moves.
func (m *maker) cell(s *sheet.Sheet, name string, place []string, want any) error {
	n, err := strconv.Atoi(place[1])
	if err != nil || n < 0 {
		return fmt.Errorf("%s names no row", name)
	}
	cell := s.Cell(place[0], n, place[2])
	if cell == nil || cell.Text == "" {
		return fmt.Errorf("there is no %s", name)
	}
	title := place[2]
	for _, column := range s.Table(place[0]).Columns {
		if column.Name == place[2] {
			title = column.Title
		}
	}
	title = fmt.Sprintf("%s, row %d", title, n+1)
	if cell.SI == nil {
		m.word(name, title, cell.Text, want)
		return nil
	}
	return m.number(name, title, *cell.SI, want, nil)
}

// known gives what the row says about the case.
func (m *maker) known(name string) (float64, string, bool) {
	v, has := m.At[name]
	if !has {
		return 0, "", false
	}
	if text, is := v.(string); is {
		if r, _, err := quantity.Infer(text); err == nil {
			return r.SI, text, true
		}
		return 0, text, true
	}
	f := number(v)
	return f, "", f == f
}

// rule holds a row of a table of the rules.
func (m *maker) rule() error {
	table := rules.Standard().Table(m.Table)
	if table == nil {
		return fmt.Errorf("there is no table %q", m.Table)
	}
	row := table.Find(m.Pick, m.known)
	if row == nil {
		return fmt.Errorf("table %s has no row %q here", m.Table, m.Pick)
	}
	for _, column := range m.expected() {
		want := m.Expect[column]
		v, ok := row.Values.Find(column)
		if !ok {
			return fmt.Errorf("row %s has no %s", row.ID, column)
		}
		title := row.Name + ", " + column
		if v.IsText {
			m.word(column, title, v.Text, want)
			continue
		}
		name, _ := table.Kind(column)
		kind, _ := quantity.Lookup(name)
		ranged, is := want.(map[string]any)
		if !is {
			if err := m.number(column, title, v.SI, want, kind); err != nil {
				return err
			}
			continue
		}
		for _, part := range []struct {
			name string
			si   float64
		}{{"low", v.Low}, {"typical", v.SI}, {"high", v.High}} {
			if w, has := ranged[part.name]; has {
				if err := m.number(column+" "+part.name, title+" "+part.name, part.si, w, kind); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// limit holds the bound that the rules hold a result against in a case.
func (m *maker) limit() error {
	for _, l := range rules.Standard().Limits(m.Calculation).All() {
		if l.On != m.On || !l.Valid.Meets(m.known) {
			continue
		}
		for _, side := range []struct {
			name  string
			bound rules.Bound
		}{{"max", l.Max}, {"min", l.Min}} {
			if want, has := m.Expect[side.name]; has && side.bound.Given() && side.bound.Of == "" {
				if err := m.number(l.ID, l.Title, side.bound.SI, want, nil); err != nil {
					return err
				}
			}
		}
	}
	if len(m.out.Values) == 0 {
		return fmt.Errorf("no limit on %s of %s applies here", m.On, m.Calculation)
	}
	return nil
}
