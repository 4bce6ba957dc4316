package conflict

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// What cannot stand in that order: a peak under the steady torque, an idle over
// the full speed, a groove deeper than when new. One of the two is wrong, so
// that no verdict rests on either.

// CompareOrders holds every input and result against those that it cannot be
// less than.
func (r *Finder) CompareOrders() {
	for _, list := range [...][]*contract.Property{r.In.Form.Input.Properties, r.In.Form.Result.Properties} {
		for _, p := range list {
			for _, name := range p.NotUnder {
				if q := r.Property(name); q != nil && r.told(p) && r.told(q) {
					r.compareOrder(p, q)
				}
			}
			for _, name := range p.AgreesWith {
				if q := r.Property(name); q != nil && r.told(p) && (r.told(q) || r.picked(q)) {
					r.compareSame(p, q, 0, "One of the two is wrong, or not of this boat as she is: measure again, or choose what it is.")
				}
			}
			for _, near := range p.NearTo {
				if q := r.In.Form.Input.Child(near.Input); q != nil && r.told(p) && r.Place(near.Input) != nil && r.givenByHand(q) {
					r.compareSame(p, q, near.Share, "They do not belong together: leave out what is not of this part as it is.")
				}
			}
		}
	}
}

// told tells whether a figure is this boat's own, and none that is only usual.
func (r *Finder) told(p *contract.Property) bool {
	if p.IsResult {
		m := r.Of(p)
		return m != nil && m.Number != nil && !math.IsNaN(m.Si)
	}
	return r.Place(p.Name) != nil && (r.givenByHand(p) || r.In.Values[p.Index].Origin == sheet.Earlier)
}

// compareOrder tells where p is less than q by more than their accuracies
// explain, and by more than two figures may differ of which none is known.
func (r *Finder) compareOrder(p, q *contract.Property) {
	under, over := r.Place(p.Name), r.Place(q.Name)
	first, least := *under, *over
	if first >= least-1e-9*math.Abs(least) {
		return
	}
	if least-first <= r.reach(under, over) {
		return
	}
	t := Twice{Moved: r.restingOn(p, q), Remedy: "One of the two is wrong, or not of this boat as she is: measure again."}
	values := []sheet.ConflictValue{r.figureOf(p, first), r.figureOf(q, least)}
	t.Doubt = problem.MidSentence(p.Title) + " " + values[0].Text + " is less than " + problem.MidSentence(q.Title) + " " + values[1].Text + ", which cannot be"
	r.contradict(sheet.TwoFigures, p, t, values)
}

// reach is how far apart two figures may be by their accuracies, twice the
// standard deviation of their difference; and loosely where none is known.
func (r *Finder) reach(a, b *float64) float64 {
	first, second := *a, *b
	variance := 0.0
	for i := range r.In.Variates {
		v := &r.In.Variates[i]
		*v.To = v.Factor.Estimate + v.Factor.StdDev()
		if r.In.Call.Run() == nil {
			change := (*b - *a) - (second - first)
			variance += change * change
		}
		*v.To = v.Factor.Estimate
	}
	r.Again()
	if variance == 0 {
		return math.Abs(second) * loosely
	}
	return 2 * math.Sqrt(variance)
}

// figureOf is an input or a result as a value of a conflict.
func (r *Finder) figureOf(p *contract.Property, si float64) sheet.ConflictValue {
	if !p.IsResult {
		return r.valueBy(p, si, p)
	}
	return sheet.ConflictValue{Title: p.Title, Text: r.In.Show(p, si), SI: si}
}

// restingOn are two figures and the results that rest on one of them: those
// that move when the first is put in the place of the second. Two results
// cannot be put; of these it is the results that rest on them, those that the
// second is worked out from, and what has one of these in its formula.
func (r *Finder) restingOn(p, q *contract.Property) []*contract.Property {
	list := []*contract.Property{p, q}
	if to := r.Place(p.Name); !p.IsResult {
		was := *to
		*to = *r.Place(q.Name)
		if r.In.Call.Run() == nil {
			for _, result := range r.In.Form.Result.Properties {
				from, ok := r.In.Form.Results.Field(r.In.Call.Output, result)
				if !ok || binding.Number(from) == nil {
					continue
				}
				now, before := *binding.Number(from), math.NaN()
				if m := r.Of(result); m != nil {
					before = m.Si
				}
				if !(math.Abs(now-before) <= 1e-9*math.Abs(before)) && !math.IsNaN(now) {
					list = append(list, result)
				}
			}
		}
		*to = was
		r.Again()
		return list
	}
	results := r.In.Form.Result.Properties
	resting := r.upon(p, q)
	under := func(other *contract.Property, names []string) bool {
		return slices.ContainsFunc(r.In.Form.Formulas.Under(other), func(n string) bool { return slices.Contains(names, n) })
	}
	made := []string{q.Name}
	for i := 0; i < len(made); i++ {
		for _, n := range r.In.Form.Formulas.Under(r.Property(made[i])) {
			if other := r.In.Form.Result.Child(n); other != nil && !slices.Contains(made, n) {
				made = append(made, n)
			}
		}
	}
	for _, other := range results {
		if slices.Contains(made, other.Name) || slices.Contains(resting, other.Name) || under(other, made) {
			list = append(list, other)
		}
	}
	return list
}

// upon are the names of two figures and of every result that rests on one of them.
func (r *Finder) upon(p, q *contract.Property) []string {
	var left []*contract.Property // results that are not known to rest on one
	for _, other := range r.In.Form.Result.Properties {
		if other != p && other != q {
			left = append(left, other)
		}
	}
	names := []string{p.Name, q.Name}
	for grown := true; grown; { // each may rest on one that stands behind it
		grown = false
		left = slices.DeleteFunc(left, func(other *contract.Property) bool {
			if !slices.ContainsFunc(r.In.Form.Formulas.Under(other), func(n string) bool { return slices.Contains(names, n) }) {
				return false
			}
			names, grown = append(names, other.Name), true
			return true
		})
	}
	return names
}
