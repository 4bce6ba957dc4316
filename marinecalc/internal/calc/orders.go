package calc

import (
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// What cannot stand in that order: a peak under the steady torque, an idle over
// the full speed, a groove deeper than when new. One of the two is wrong, so
// that no verdict rests on either.

// compareOrders holds every input and result against those that it cannot be
// less than.
func (r *judgement) compareOrders() {
	for _, list := range [...][]*contract.Property{r.in.form.Input.Properties, r.in.form.Result.Properties} {
		for _, p := range list {
			for _, name := range p.NotUnder {
				if q := r.property(name); q != nil && r.told(p) && r.told(q) {
					r.compareOrder(p, q)
				}
			}
		}
	}
}

// told tells whether a figure is this boat's own, and none that is only usual.
func (r *judgement) told(p *contract.Property) bool {
	if p.IsResult {
		m := r.of(p)
		return m != nil && m.number != nil && !math.IsNaN(m.si)
	}
	return r.place(p.Name) != nil && (r.givenByHand(p) || r.in.values[p.Index].origin == sheet.Earlier)
}

// compareOrder tells where p is less than q by more than their accuracies
// explain, and by more than two figures may differ of which none is known.
func (r *judgement) compareOrder(p, q *contract.Property) {
	under, over := r.place(p.Name), r.place(q.Name)
	first, least := *under, *over
	if first >= least-1e-9*math.Abs(least) {
		return
	}
	variance := 0.0
	for i := range r.in.variates {
		v := &r.in.variates[i]
		*v.to = v.factor.Estimate + v.factor.StdDev()
		if r.in.call.Run() == nil {
			change := (*over - *under) - (least - first)
			variance += change * change
		}
		*v.to = v.factor.Estimate
	}
	r.again()
	reach := 2 * math.Sqrt(variance)
	if variance == 0 {
		reach = math.Abs(least) * loosely
	}
	if least-first <= reach {
		return
	}
	t := twoWays{moved: r.restingOn(p, q), remedy: "One of the two is wrong, or not of this boat as she is: measure again."}
	values := []sheet.ConflictValue{r.figureOf(p, first), r.figureOf(q, least)}
	t.doubt = midSentence(p.Title) + " " + values[0].Text + " is less than " + midSentence(q.Title) + " " + values[1].Text + ", which cannot be"
	r.twice = append(r.twice, t)
	r.conflicts = append(r.conflicts, sheet.Conflict{Code: sheet.TwoFigures, On: p.Name, Title: p.Title,
		Text: strings.ToUpper(t.doubt[:1]) + t.doubt[1:] + ". " + t.remedy, Values: values})
}

// figureOf is an input or a result as a value of a conflict.
func (r *judgement) figureOf(p *contract.Property, si float64) sheet.ConflictValue {
	if !p.IsResult {
		return r.valueBy(p, si, p)
	}
	return sheet.ConflictValue{Title: p.Title, Text: r.in.show(p, si), SI: si}
}

// restingOn are two figures and the results that rest on one of them: those
// that move when the first is put in the place of the second. Two results
// cannot be put; of these it is the results in whose formulas they stand, and
// those in their own.
func (r *judgement) restingOn(p, q *contract.Property) []*contract.Property {
	list := []*contract.Property{p, q}
	if to := r.place(p.Name); !p.IsResult {
		was := *to
		*to = *r.place(q.Name)
		if r.in.call.Run() == nil {
			for _, result := range r.in.form.Result.Properties {
				from, ok := r.in.form.Results.Field(r.in.call.Output, result)
				if !ok || binding.Number(from) == nil {
					continue
				}
				now, before := *binding.Number(from), math.NaN()
				if m := r.of(result); m != nil {
					before = m.si
				}
				if !(math.Abs(now-before) <= 1e-9*math.Abs(before)) && !math.IsNaN(now) {
					list = append(list, result)
				}
			}
		}
		*to = was
		r.again()
		return list
	}
	for _, other := range r.in.form.Result.Properties {
		if slices.Contains(other.DependsOn, q.Name) || slices.Contains(q.DependsOn, other.Name) {
			list = append(list, other)
		}
	}
	return list
}
