package calc

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// figureFaults names the maker's figures of the boat file that cannot be read
// as what they are for, and those written a second time.
func (s *Session) figureFaults() (list problem.List) {
	for i, name := range s.Boat.FiguresFor() {
		where := fmt.Sprintf("/makersFigures/%d", i)
		fig, _ := s.Boat.FigureOf(name)
		if fig.Index != i {
			list = append(list, problem.Problem{Where: where + "/of", What: fmt.Sprintf("%q stands in figure %d already, which is the one that is used", name, fig.Index), Hint: "leave one of them out"})
			continue
		}
		l, p := s.limitNamed(name)
		var fault *problem.Problem
		switch {
		case l != nil:
			var si float64
			if si, fault = verdict.FigureFor(l, p, fig); fault == nil {
				if far := farOff(l, p, si); far != nil {
					far.Where = where + "/value"
					list = append(list, *far)
				}
			}
		case p != nil && p.IsResult && len(p.Enum) == 0:
			_, fault = verdict.ReadFigure(p, fig)
		}
		if fault != nil {
			told := *fault
			told.Where, told.What = where+"/value", "the maker's figure for "+name+" cannot be read: "+told.What
			list = append(list, told)
		}
	}
	return list
}

// farOff tells of a maker's figure that is many times, or a small part of, the
// limit whose place it takes: so far off are slips of the unit, as 70 for 70 %.
func farOff(l *rules.Limit, p *contract.Property, si float64) *problem.Problem {
	const far = 20
	bound := l.Max
	if !bound.Given() {
		bound = l.Min
	}
	if bound.Of != "" || !(bound.SI > 0) || si > bound.SI/far && si < bound.SI*far {
		return nil
	}
	text := func(si float64) string { return p.Shown.Print(si, quantity.Both) }
	hint := "it is used as it stands; look whether its unit is right"
	if p.Kind != nil && p.Kind.Name == "ratio" {
		hint += ": a share is written \"70 %\""
	}
	return &problem.Problem{What: fmt.Sprintf("the maker's figure for %s is %s, where %s is usual", l.ID, text(si), text(bound.SI)), Allowed: "any figure of the maker's", Hint: hint}
}

// limitNamed is the limit of that id with what it is on, or the input or
// result of that name alone.
func (s *Session) limitNamed(name string) (*rules.Limit, *contract.Property) {
	for _, l := range s.Book.AllLimits().All() {
		if l.ID == name {
			l := l // of the loop's own nothing is to outlive it
			return &l, s.Property(l.Calculation + "/" + l.On)
		}
	}
	return nil, s.Property(name)
}
