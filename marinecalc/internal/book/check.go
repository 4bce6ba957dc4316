package book

import (
	"context"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Check is a row computed.
type Check struct {
	ID      string  `json:"id"`
	Source  string  `json:"source"`
	Note    string  `json:"note,omitempty"`
	Values  []Value `json:"values,omitempty"`
	Problem string  `json:"problem,omitempty"` // why it cannot be computed
}

// Value is one published figure beside the computed one.
type Value struct {
	Name       string  `json:"name"`
	Title      string  `json:"title"`
	Published  string  `json:"published"`
	Computed   string  `json:"computed"`
	Difference string  `json:"difference,omitempty"` // of the computed from the published; "" for words
	Allowed    string  `json:"allowed,omitempty"`
	Share      float64 `json:"share"` // the difference by what is allowed
	Holds      bool    `json:"holds"`
}

// Holds tells whether everything that is published is met.
func (c *Check) Holds() bool {
	return c.Problem == "" && len(c.Values) > 0 && !slices.ContainsFunc(c.Values, func(v Value) bool { return !v.Holds })
}

// maker computes one row.
type maker struct {
	*Row
	ctx context.Context
	out Check
}

// Compute computes a row.
func Compute(ctx context.Context, row Row) Check {
	m := &maker{&row, ctx, Check{ID: row.ID, Source: row.Source, Note: row.Note}}
	if fault := row.fault(); fault != "" {
		m.out.Problem = fault
		return m.out
	}
	way, is := ways[row.Check]
	if !is {
		m.out.Problem = fmt.Sprintf("there is no check %q", row.Check)
		return m.out
	}
	if err := way(m); err != nil {
		m.out.Problem = problem.Of(err).String()
	}
	if m.out.Problem == "" && len(m.out.Values) == 0 {
		m.out.Problem = "nothing was compared"
	}
	return m.out
}

// ways are how rows are computed, by their member check.
var ways = map[string]func(*maker) error{
	"": (*maker).calculation, "rule": (*maker).rule, "limit": (*maker).limit,
	"spread": (*maker).spread, "conformity": (*maker).conformity, "count": (*maker).count,
	"student": (*maker).student, "theil-sen": (*maker).theilSen,
	"water-density": (*maker).seaWater, "water-specific-heat": (*maker).seaWater, "fresh-water": (*maker).freshWater,
	"transmissibility": (*maker).transmissibility,
}

// expected are the names that the row has values for, in order.
func (m *maker) expected() []string { return slices.Sorted(maps.Keys(m.Expect)) }

// digits is what the last digits of a number may be off by: no difference.
const digits = 1e-12

// number holds a computed number against what is published.
func (m *maker) number(name, title string, got float64, published any, kind *quantity.Kind) error {
	want, err := read(published, kind)
	if err != nil {
		return err
	}
	allowed, relative := m.Tolerance*math.Abs(want.si), true
	if m.Absolute != nil {
		absolute, err := read(m.Absolute, nil)
		if err != nil {
			return err
		}
		if absolute.si > allowed {
			allowed, relative = absolute.si, false
		}
	}
	off := got - want.si
	v := Value{Name: name, Title: title, Published: want.text, Computed: want.print(got), Share: math.Abs(off) / allowed, Holds: math.Abs(off) <= allowed}
	if !(v.Share < math.MaxFloat64) { // NaN, or nothing allowed: JSON has neither
		v.Share = math.MaxFloat64
	}
	if relative {
		v.Difference, v.Allowed = signed(100*off/math.Abs(want.si), 2)+" %", strings.TrimPrefix(signed(100*m.Tolerance, 3), "+")+" %"
	} else {
		v.Difference, v.Allowed = want.width(off), strings.TrimPrefix(want.width(allowed), "+")
	}
	if math.Abs(off) <= digits*math.Abs(want.si) {
		v.Difference, v.Share = "0", 0
	}
	m.out.Values = append(m.out.Values, v)
	return nil
}

// word holds a computed word against the published one.
func (m *maker) word(name, title, got string, published any) {
	want, _ := published.(string)
	m.out.Values = append(m.out.Values, Value{Name: name, Title: title, Published: want, Computed: got, Holds: got == want})
}

// print is a number as the figure is written, to six figures.
func (f figure) print(si float64) string {
	if value, is := f.kind.Convert(si, f.unit); is {
		return withUnit(strconv.FormatFloat(value, 'g', 6, 64), f.unit)
	}
	return strconv.FormatFloat(si, 'g', 6, 64)
}

// width is a difference as the figure is written, with its sign.
func (f figure) width(si float64) string {
	kind := f.kind
	if kind != nil && kind.Name == quantity.KindTemperature {
		kind, _ = quantity.Lookup(quantity.KindTemperatureDifference) // a width has no zero of its own
	}
	if value, is := kind.Convert(si, f.unit); is {
		return withUnit(signed(value, 2), f.unit)
	}
	return signed(si, 2)
}

func withUnit(text, unit string) string {
	if unit == "" {
		return text
	}
	return quantity.WithUnit(text, unit)
}

// signed is a number with its sign, where it has one.
func signed(v float64, digits int) string {
	text := strconv.FormatFloat(v, 'g', digits, 64)
	if v > 0 {
		text = "+" + text
	}
	return text
}
