package rules

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/problem"
)

// DanglingIDs names every id in the rows of the job that leads to no row. marinecalc
// brings none; an overlay may not bring any.
func (b *Book) DanglingIDs() problem.List {
	b = b.filled()
	var list problem.List
	all := b.job()
	ids := func(each func(add func(string))) map[string]bool {
		m := map[string]bool{}
		each(func(id string) { m[id] = true })
		return m
	}
	causes := ids(func(add func(string)) { each(all.Causes, func(c Cause) { add(c.ID) }) })
	evidence := ids(func(add func(string)) { each(all.Evidence, func(e Evidence) { add(e.ID) }) })
	remedies := ids(func(add func(string)) { each(all.Remedies, func(r Remedy) { add(r.ID) }) })
	steps := ids(func(add func(string)) { each(all.Steps, func(s Step) { add(s.ID) }) })
	parts := ids(func(add func(string)) { each(all.Parts, func(p Part) { add(p.ID) }) })
	cautions := ids(func(add func(string)) { each(b.all().cautions, func(c Caution) { add(c.ID) }) })
	limits := ids(func(add func(string)) { each(b.all().limits, func(l Limit) { add(l.ID) }) })

	ways := ids(func(add func(string)) { each(b.Table("ways-of-looking").Rows.items, func(r Row) { add(r.ID) }) })

	lead := func(kind, id, what string, known map[string]bool, to ...string) {
		for _, t := range to {
			if !known[t] {
				list.Add("/"+kind, fmt.Sprintf("row %s: there is no %s %q", id, what, t), "an id of its rows", "add the row, or mend the id")
			}
		}
	}
	for _, c := range all.Causes {
		lead("causes", c.ID, "evidence", evidence, c.Confirm)
		lead("causes", c.ID, "remedy", remedies, c.Remedies.items...)
		lead("causes", c.ID, "caution", cautions, c.Dangers.items...)
	}
	for _, e := range all.Evidence {
		lead("evidence", e.ID, "caution", cautions, append(e.Hazards.items[:e.Hazards.Len():e.Hazards.Len()], e.Dangers.items...)...)
		lead("evidence", e.ID, "way of looking", ways, append(e.Ways.items[:e.Ways.Len():e.Ways.Len()], e.Blind.items...)...)
		for _, r := range e.Readings.items {
			if r.Way != "" {
				lead("evidence", e.ID, "way of looking", ways, r.Way)
			}
		}
		for _, by := range e.Boat.items {
			if by.Question != "" {
				lead("evidence", e.ID, "evidence", evidence, by.Question)
			}
		}
		for _, v := range e.Verdicts.items {
			lead("evidence", e.ID, "limit", limits, v.Limits.items...)
		}
	}
	for _, s := range all.Signs {
		lead("signs", s.ID, "cause", causes, s.Cause)
		lead("signs", s.ID, "evidence", evidence, s.Evidence)
	}
	for _, c := range all.Chains {
		for _, end := range []string{c.From, c.To} {
			if !causes[end] {
				lead("chains", c.ID, "cause or limit", limits, end)
			}
		}
	}
	for _, r := range all.Remedies {
		lead("remedies", r.ID, "cause", causes, r.Cures.items...)
		lead("remedies", r.ID, "evidence", evidence, r.OnceSeen.items...)
		lead("remedies", r.ID, "step", steps, r.Steps.items...)
	}
	for _, s := range all.Steps {
		lead("steps", s.ID, "step", steps, s.After.items...)
		lead("steps", s.ID, "caution", cautions, s.Hazards.items...)
		for _, c := range s.Cases.items {
			lead("steps", s.ID, "caution", cautions, c.Hazards.items...)
		}
		lead("steps", s.ID, "remedy", remedies, s.Bares.items...)
		for _, n := range s.Parts.items {
			lead("steps", s.ID, "part", parts, n.Part)
		}
	}
	for _, r := range b.Table("service-intervals").Rows.items {
		for _, of := range []struct {
			column, what string
			known        map[string]bool
		}{{"steps", "step", steps}, {"questions", "evidence", evidence}, {"cures", "cause", causes}, {"hazards", "caution", cautions}} {
			lead("tables/service-intervals", r.ID, of.what, of.known, strings.Fields(r.Values.Of(of.column).Text)...)
		}
	}
	return list
}

func each[T any](rows []T, do func(T)) {
	for _, r := range rows {
		do(r)
	}
}
