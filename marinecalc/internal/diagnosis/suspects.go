// Who is suspected, in which order, and which looks go first.

package diagnosis

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
)

// suspects are the causes that no look has found and that she can have, in the
// order in which they are worth looking at. A trouble that makes none of the signs that were noticed
// is no explanation, however common it is: it comes after those that do, unless
// it is among the leaders by what brings it on, or has likely made fail what
// was found.
func (f *finder) suspects() []int {
	if f.inOrder == nil {
		f.inOrder = slices.DeleteFunc(bayes.Rank(f.belief.Cause), func(c int) bool { return f.isFound(c) || f.isNotHers(c) })
		made := f.makersOpen()
		f.isBehind = make([]bool, len(f.belief.Cause))
		for _, c := range f.inOrder {
			f.isBehind[c] = f.belief.Cause[c] < f.figure("leads") && f.signsOf(c) < f.figure("weight-meaningful") && !slices.Contains(made, c)
		}
		slices.SortStableFunc(f.inOrder, func(a, b int) int {
			if f.isBehind[a] == f.isBehind[b] {
				return 0
			}
			return map[bool]int{true: 1, false: -1}[f.isBehind[a]]
		})
	}
	return slices.Clone(f.inOrder)
}

// isNotHers tells whether a cause cannot be on the boat, by what she has.
func (f *finder) isNotHers(c int) bool {
	q := f.settler[c]
	return q >= 0 && f.answers[q] == bayes.No && f.from[q] == byBoat
}

// believe works out what the answers leave.
func (f *finder) believe() {
	f.belief, f.taken, f.inOrder = f.model.Believe(f.answers), nil, nil
}

// signsOf is what the signs that were noticed say for a cause alone, in
// decibans: how much likelier each yes is with it than with none. What went
// before is no sign of trouble: it counts only where nothing else was noticed.
func (f *finder) signsOf(c int) float64 {
	signs, history := 0.0, 0.0
	noticed := false
	for q, a := range f.answers {
		if a != bayes.Yes || f.from[q] == byBoat || f.model.Settles[q] >= 0 {
			continue
		}
		w := f.model.Wrong[q]
		said := func(yes float64) float64 { return w + (1-2*w)*yes }
		says := max(0, 10*math.Log10(said(f.model.Yes[c][q])/said(f.model.Leak[q])))
		if f.evidence.At(q).Group == "history" {
			history += says
			continue
		}
		noticed = true
		signs += says
	}
	if !noticed {
		return history
	}
	return signs
}

// firstLooks are the looks that go before all others, in their order.
//
// Once one suspected cause leads, the look that settles it is the first,
// whatever it costs. Where several are about as probable, those that settle
// them come by the chance of finding it for the work: the order in which a row
// of looks finds a single fault soonest (Bellman, Dynamic Programming, 1957,
// chapter III, exercises; from memory). A look that can show what made a part
// fail that was found comes before both: a new part on the old cause fails. Of
// causes about as probable those that keep the shaft still come first, the
// likeliest before the others: only their looks let her go on.
func (f *finder) firstLooks(cost []float64) (list []int) {
	order := f.suspects()
	add := func(c int) {
		q := f.settler[c]
		if q >= 0 && cost[q] > 0 && !slices.Contains(list, q) && (f.answers[q] == bayes.Unknown || f.onlyTold(q)) {
			list = append(list, q)
		}
	}
	for _, c := range f.makersOpen() {
		add(c)
	}
	if len(order) == 0 {
		return list
	}
	p := f.belief.Cause
	leader := p[order[0]]
	if f.leads(order) {
		add(order[0])
		return list
	}
	var near []int
	for _, c := range order[:min(len(order), leaders)] {
		if !f.isBehind[c] && p[c] >= f.figure("worth-naming") && p[c] >= leader/f.figure("near-odds") && f.settler[c] >= 0 {
			near = append(near, c)
		}
	}
	worth := func(c int) float64 { return p[c] / max(cost[f.settler[c]], 1) }
	var still []string // causes that keep the shaft still
	for _, h := range f.holds() {
		still = append(still, strings.Fields(h.Causes)...)
	}
	slices.SortStableFunc(near, func(a, b int) int {
		holds := func(c int) bool { return slices.Contains(still, f.causes.At(c).ID) }
		switch {
		case holds(a) && holds(b):
			return 0 // the likelier first
		case holds(a):
			return -1
		case holds(b):
			return 1
		}
		return cmp.Compare(worth(b), worth(a))
	})
	for _, c := range near {
		add(c)
	}
	return list
}

// makersOpen are the causes that nobody has looked for and that may well have
// made fail what was found, the likeliest first.
func (f *finder) makersOpen() (list []int) {
	given := f.given()
	for _, p := range bayes.Rank(given) {
		if f.isFound(p) || given[p] < f.figure("leads") {
			continue
		}
		if slices.ContainsFunc(f.belief.Found, func(c int) bool { return f.makes(p, c) }) {
			list = append(list, p)
		}
	}
	return list
}

// given is the probability of each cause with all that was found taken at its
// look's word: what to look for when it is so.
func (f *finder) given() []float64 {
	if f.taken == nil {
		f.taken = f.belief
		if slices.ContainsFunc(f.belief.Looks, func(p float64) bool { return p < f.model.Trust }) {
			f.taken = f.model.BelieveFound(f.answers)
		}
	}
	return f.taken.Cause
}
