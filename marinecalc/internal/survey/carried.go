// What another calculation gives is not typed: what that one lacks is.

package survey

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// throughCarried puts in place of each figure that another calculation gives
// what that calculation lacks for it, unless it can be measured itself or that
// would all be chosen too.
func (s *Survey) throughCarried(g *gatherer, session *calc.Session) {
	for _, m := range slices.Clone(g.list) {
		if m.after == "" || m.what() == DoMeasure {
			continue
		}
		if m.withheld {
			g.drop(m)
			continue
		}
		for source := range strings.SplitSeq(m.after, "|") {
			id, result, _ := strings.Cut(source, "/")
			lacking := s.lackedFor(session, id, result)
			got := make([]*group, 0, len(lacking))
			for _, p := range lacking {
				got = append(got, g.made(keyOf(p), id, p))
			}
			if !slices.ContainsFunc(got, func(one *group) bool { return one.what() != DoChoose }) {
				continue
			}
			g.list = slices.DeleteFunc(g.list, func(one *group) bool { return one == m })
			for _, one := range g.list {
				if at := slices.Index(one.With, m.Title); at >= 0 {
					one.With = slices.Delete(one.With, at, at+1)
					for _, p := range lacking {
						if p.Title != one.Title && !slices.Contains(one.With, p.Title) {
							one.With = append(one.With, p.Title)
						}
					}
				}
			}
			for i, p := range lacking {
				var others []string
				for j, other := range lacking {
					if j != i {
						others = append(others, other.Title)
					}
				}
				one := g.at(keyOf(p), id, p)
				for _, waits := range m.Settles {
					one.add(waits, others)
				}
				for _, waits := range m.Helps {
					one.add(waits, slices.Concat(others, m.With))
				}
			}
			break
		}
	}
}

// drop leaves out a figure that cannot be had as things are, and the verdicts
// that wait for it, which no other figure settles.
func (g *gatherer) drop(m *group) {
	waits := func(w Settled) bool { return slices.Contains(m.Settles, w) || slices.Contains(m.Helps, w) }
	for _, one := range g.list {
		if one != m {
			one.Settles, one.Helps = slices.DeleteFunc(one.Settles, waits), slices.DeleteFunc(one.Helps, waits)
		}
	}
	g.list = slices.DeleteFunc(g.list, func(one *group) bool { return one == m || len(one.Settles)+len(one.Helps) == 0 })
}

// lackedFor are the inputs without which a calculation does not give a result;
// nil where it gives it, or where examples of them all do not make it.
func (s *Survey) lackedFor(session *calc.Session, id, result string) []*contract.Property {
	c, err := session.Find(id)
	if err != nil {
		return nil
	}
	form, err := c.Form()
	if err != nil {
		return nil
	}
	out := s.sheet(id)
	if out != nil && out.Result(result) != nil {
		return nil
	}
	typed := map[string]any{}
	var needed []*contract.Property
	behind := restsOn(form.Calculation, result)
	for _, m := range s.Missing {
		if m.Calculation != id {
			continue
		}
		behind = nil // what it cannot be worked out without is enough
		for _, n := range m.Needs {
			if p := form.Input.Child(n.Input); p != nil {
				behind = append(behind, p)
			}
		}
	}
	for _, p := range behind {
		value, can := example(p)
		if !can || out != nil && out.Input(p.Name) != nil {
			continue
		}
		typed[p.Name], needed = value, append(needed, p)
	}
	gives := func() bool {
		var is *sheet.Result
		if try, _, _ := session.Run(c, typed); try != nil {
			is = try.Sheet.Result(result)
		}
		return is != nil
	}
	if len(needed) == 0 || !gives() {
		return nil
	}
	return slices.DeleteFunc(needed, func(p *contract.Property) bool {
		value := typed[p.Name]
		delete(typed, p.Name)
		if gives() {
			return true
		}
		typed[p.Name] = value
		return false
	})
}
