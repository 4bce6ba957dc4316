package workplan

import (
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/rules"
)

// hazards lists the cautions of the steps, gravest first, and gives each step
// what can hurt in it, in words.
func (p *planner) hazards(order []int, out *Result) []string {
	steps := make([][]string, len(p.steps))
	var all []rules.Caution
	for _, c := range p.session.Book.AllCautions().All() {
		all = append(all, c)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Signal.Gravity() < all[j].Signal.Gravity() })
	n := 0
	for _, c := range all {
		var at []string
		for _, i := range order {
			if rules.Contains(p.steps[i].Hazards, c.ID) {
				at = append(at, p.steps[i].Title)
				steps[i] = append(steps[i], string(c.Signal)+": "+c.InShort())
			}
		}
		switch {
		case at == nil:
		case n == len(out.Dangers): // the gravest are there
			if !slices.Contains(p.cut, "dangers") {
				p.cut = append(p.cut, "dangers")
			}
		default:
			out.Dangers[n] = DangerLine{Signal: string(c.Signal), Text: c.Text, AtSteps: strings.Join(at, "; ")}
			n++
		}
	}
	words := make([]string, len(p.steps))
	for i := range steps {
		if words[i] = strings.Join(steps[i], "; "); words[i] == "" {
			words[i] = "none: " + p.steps[i].Safe
		}
	}
	return words
}
