package survey

import (
	"context"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// Comparison is two dated states of one boat side by side.
type Comparison struct {
	Boat   string   `json:"boat"`
	Before string   `json:"before"` // the last day that counts for the first state
	After  string   `json:"after"`
	Dates  []string `json:"dates"` // every day with a reading, oldest first
	Moved  []Moved  `json:"moved"` // what moved by more than the gauges explain, largest first
	Still  []Moved  `json:"still"` // what moved no more than they do
	Turned []Turned `json:"turned"`
	Came   []Found  `json:"came"` // what is found in the second state and was not in the first
	Gone   []Found  `json:"gone"` // what was found in the first and is not in the second

	Warnings problem.List `json:"warnings,omitempty"` // what of the boat file is kept and not used
}

// Moved is one result in both states.
type Moved struct {
	Calculation string  `json:"calculation"`
	Sheet       string  `json:"sheet"`
	Result      string  `json:"result"`
	Title       string  `json:"title"`
	Before      string  `json:"before"`
	After       string  `json:"after"`
	Change      string  `json:"change"`
	Times       float64 `json:"times"` // the change over what the gauges can explain at 95 %; 0 where they explain nothing
	Sentence    string  `json:"sentence"`
}

// Turned is a verdict that is another word in the second state.
type Turned struct {
	Calculation string     `json:"calculation"`
	Sheet       string     `json:"sheet"`
	Title       string     `json:"title"`
	Before      sheet.Word `json:"before"`
	BeforeReads string     `json:"beforeReads"` // as people read it
	After       sheet.Word `json:"after"`
	AfterReads  string     `json:"afterReads"`
	Value       string     `json:"value"`
	Bound       string     `json:"bound"`
}

// Compare works the boat out as it was read up to each of two days (ISO 8601,
// year-month-day, the day itself included) and says what moved, and by how
// much more than the gauges can explain: the change counts as real when it is
// larger than the root of the sum of the squares of both half intervals
// (JCGM 100:2008, 5.1.2: independent readings add in squares).
func Compare(ctx context.Context, b *boat.Boat, before, after string, o calc.Options) (*Comparison, error) {
	var problems problem.List
	dates := b.Dates()
	for _, d := range []struct{ where, day string }{{"/before", before}, {"/after", after}} {
		if d.day == "" {
			problems = append(problems, problem.Problem{Where: d.where, What: "the day is missing", Allowed: "year-month-day, such as 2026-04-11", Kind: problem.Missing})
		} else if !day.Valid(d.day) {
			problems.Add(d.where, fmt.Sprintf("%q is not a date", d.day), "year-month-day, such as 2026-04-11", "")
		} else if len(dates) == 0 || d.day < dates[0] {
			problems.Add(d.where, "there is no reading up to "+d.day, strings.Join(dates, ", "), "choose the day of a reading or a later one")
		}
	}
	if before >= after && len(problems) == 0 {
		problems.Add("/after", "the second day is not after the first", "a day after "+before, "")
	}
	if len(problems) > 0 {
		return nil, problems.Err()
	}
	first, err := Check(ctx, b.AsOf(before), o)
	if err != nil {
		return nil, err
	}
	second, err := Check(ctx, b.AsOf(after), o)
	if err != nil {
		return nil, err
	}
	c := &Comparison{Boat: b.Name(), Before: before, After: after, Dates: dates, Moved: []Moved{}, Still: []Moved{}, Turned: []Turned{}, Warnings: second.Warnings}
	c.hold(first, second, o)
	c.Came, c.Gone = notIn(second.Found, first.Found), notIn(first.Found, second.Found)
	return c, nil
}

// notIn are the findings that another list does not have.
func notIn(list, other []Found) []Found {
	rest := []Found{}
	for _, f := range list {
		if !slices.ContainsFunc(other, func(o Found) bool {
			return o.Calculation == f.Calculation && o.Limit == f.Limit && (f.Limit != "" || o.Title == f.Title)
		}) {
			rest = append(rest, f)
		}
	}
	return rest
}

// hold puts the sheets of both states side by side.
func (c *Comparison) hold(first, second *Survey, o calc.Options) {
	for _, was := range first.Sheets {
		at := slices.IndexFunc(second.Sheets, func(s *sheet.Sheet) bool { return s.Calculation == was.Calculation })
		if at < 0 {
			continue
		}
		is := second.Sheets[at]
		for i := range was.Results {
			r := is.Result(was.Results[i].Name)
			if r == nil || r.SI == nil || was.Results[i].SI == nil {
				continue
			}
			if !meansSomething(was, is, r) {
				continue
			}
			if m, moved := move(was, &was.Results[i], r); m.Before != "" {
				if moved {
					c.Moved = append(c.Moved, m)
				} else {
					c.Still = append(c.Still, m)
				}
			}
		}
		for _, v := range was.Verdicts {
			if w := is.Verdict(v.Limit); w != nil && w.Word != v.Word {
				c.Turned = append(c.Turned, Turned{Calculation: was.Calculation, Sheet: was.Title, Title: v.Title, Before: v.Word, BeforeReads: v.Reads, After: w.Word, AfterReads: w.Reads, Value: w.Value, Bound: w.Bound})
			}
		}
	}
	sort.SliceStable(c.Moved, func(i, j int) bool { return c.Moved[i].Times > c.Moved[j].Times })
}

// meansSomething tells whether a difference of a result between two states
// says anything: not where the schema opts it out, and for a direction only
// where its size is more in both states than the gauges can explain.
func meansSomething(was, is *sheet.Sheet, r *sheet.Result) bool {
	c, err := calc.Find(catalogue.Calculations, is.Calculation)
	if err != nil {
		return false
	}
	k, err := c.Form()
	if err != nil {
		return false
	}
	p := k.Result.Child(r.Name)
	if p == nil || p.SizedBy == "" {
		return p != nil && !p.NoCompare
	}
	for _, s := range []*sheet.Sheet{was, is} {
		size := s.Result(p.SizedBy)
		if size == nil || size.SI == nil || math.Abs(*size.SI) <= max(size.Half(), 1e-9) {
			return false
		}
	}
	return true
}

// move compares one result. Before is empty when the result is the same in
// both states, as it is written there.
func move(s *sheet.Sheet, was, is *sheet.Result) (m Moved, moved bool) {
	change := *is.SI - *was.SI
	if is.Kind == quantity.KindDirection {
		change = math.Remainder(change, 2*math.Pi) // by the shorter way round
	}
	if was.Text == is.Text || math.Abs(change) <= 1e-9*math.Max(math.Abs(*was.SI), math.Abs(*is.SI)) {
		return m, false
	}
	explained := math.Hypot(was.Half(), is.Half())
	m = Moved{Calculation: s.Calculation, Sheet: s.Title, Result: was.Name, Title: was.Title, Before: was.Text, After: is.Text, Change: "up"}
	if change < 0 {
		m.Change = "down"
	}
	if is.Kind == quantity.KindDirection {
		m.Change = "round"
	}
	if explained == 0 {
		m.Sentence = fmt.Sprintf("%s went %s from %s to %s.", m.Title, m.Change, m.Before, m.After)
		return m, true
	}
	m.Times = math.Abs(change) / explained
	if m.Times <= 1 {
		m.Sentence = fmt.Sprintf("%s went %s from %s to %s, no more than the gauges explain.", m.Title, m.Change, m.Before, m.After)
		return m, false
	}
	m.Sentence = fmt.Sprintf("%s went %s from %s to %s, %.1f times what the gauges explain.", m.Title, m.Change, m.Before, m.After, m.Times)
	return m, true
}
