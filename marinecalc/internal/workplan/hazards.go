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
	rank := func(c rules.Caution) int {
		if c.ID == rules.StopNow {
			return -1
		}
		return c.Signal.Gravity()
	}
	sort.SliceStable(all, func(i, j int) bool { return rank(all[i]) < rank(all[j]) })
	n := 0
	for _, c := range all {
		var at []string
		for _, i := range order {
			if rules.Contains(p.steps[i].Hazards, c.ID) || c.ID == rules.StopNow && p.held[i] != "" && runs(p.steps[i]) {
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

// wholeHazards are the cautions of the plan as a whole.
func (p *planner) wholeHazards() (ids []string) {
	if p.still.Why != "" {
		ids = append(ids, rules.StopNow)
	}
	if slices.ContainsFunc(p.steps, func(s rules.Step) bool { return s.LaysUp }) {
		ids = append(ids, "boat-without-drive")
	}
	return ids
}
