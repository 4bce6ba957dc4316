package survey

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// idleFigures names the maker's figures of the boat file that no sheet of the
// survey goes by: their calculation cannot be worked out yet, or the limit does
// not apply. told are the warnings that there are of them already.
func (s *Survey) idleFigures(b *boat.Boat, session *calc.Session, told problem.List) (list problem.List) {
	for i, name := range b.FiguresFor() {
		where := fmt.Sprintf("/makersFigures/%d/of", i)
		if slices.ContainsFunc(told, func(p problem.Problem) bool { return strings.HasPrefix(p.Where, strings.TrimSuffix(where, "of")) }) {
			continue
		}
		var of, made []string // the calculations that it is for, and those of them with a sheet
		used := false
		for _, c := range session.Calculations {
			id, _, ofOne := strings.Cut(name, "/")
			for _, l := range session.Book.Limits(c.ID).All() {
				ofOne = ofOne || l.ID == name
			}
			if !ofOne || strings.Contains(name, "/") && id != c.ID {
				continue
			}
			of = append(of, c.ID)
			for _, one := range s.Sheets {
				if one.Calculation == c.ID {
					made = append(made, one.Title)
					used = used || strings.Contains(name, "/") || one.Verdict(name) != nil
				}
			}
		}
		p := problem.Problem{Where: where}
		switch {
		case used:
			continue
		case len(made) == 0:
			p.What = fmt.Sprintf("the maker's figure for %s is not used yet: %s cannot be worked out of this boat file", name, strings.Join(of, ", "))
			p.Hint = "the survey says what that still needs"
		default:
			p.What = fmt.Sprintf("the maker's figure for %s is not used: that limit does not apply to this boat (%s)", name, strings.Join(made, ", "))
			p.Hint = "look whether another limit was meant"
		}
		list = append(list, p)
	}
	return list
}

// Conflicts are all that does not agree, each once, with the title of its
// sheet, or "The boat file".
func (s *Survey) Conflicts() (titles []string, conflicts []sheet.Conflict) {
	if s == nil {
		return nil, nil
	}
	for _, d := range s.Disagree {
		titles, conflicts = append(titles, cmp.Or(d.Sheet, "The boat file")), append(conflicts, d.Conflict)
	}
	return titles, conflicts
}
