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
	for _, p := range restsOn(form.Calculation, result) {
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
