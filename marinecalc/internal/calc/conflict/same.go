package conflict

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// What is measured and is not what was picked, such as a taper: no verdict rests
// on either.

// picked tells whether an input comes with a row that a person picked.
func (r *Finder) picked(p *contract.Property) bool {
	return !p.IsResult && r.Place(p.Name) != nil && r.In.Values[p.Index].Origin == sheet.HandbookRow
}

// compareSame tells where p is not q by more than their accuracies explain, and by
// more than a share of q, and which standard's it is.
func (r *Finder) compareSame(p, q *contract.Property, share float64, remedy string) {
	one, other := r.Place(p.Name), r.Place(q.Name)
	found, chosen := *one, *other
	if math.Abs(found-chosen) <= 1e-9*math.Abs(chosen) {
		return
	}
	reach := max(r.reach(one, other), share*math.Abs(chosen))
	if math.Abs(found-chosen) <= reach {
		return
	}
	values := []sheet.ConflictValue{r.figureOf(p, found), r.figureOf(q, chosen)}
	standing := func(v *sheet.ConflictValue, reach float64) string {
		name := ""
		if share == 0 { // what need only be near is no standard's
			name = r.standard(q, v.SI, reach)
		}
		if name == "" {
			return " " + v.Text
		}
		return " “" + v.Text + ", " + name + "”"
	}
	var moved []*contract.Property
	if p.IsResult && q.IsResult { // two readings of one thing: what is set or known beside them stands
		for _, name := range r.upon(p, q) {
			moved = append(moved, r.Property(name))
		}
	} else {
		moved = append(r.restingOn(q, p), r.movedWithout(p)...)
	}
	t := Twice{Moved: moved, Remedy: remedy}
	t.Doubt = problem.MidSentence(p.Title) + standing(&values[0], reach) + " does not agree with " + problem.MidSentence(q.Title) + standing(&values[1], 1e-6*math.Abs(chosen))
	r.contradict(sheet.TwoFigures, p, t, values)
}

// movedWithout are the results that another figure stands in for where one that p is
// found from, or all of these, are taken as not given: they went by it, and it is in
// doubt with p.
func (r *Finder) movedWithout(p *contract.Property) (moved []*contract.Property) {
	var each [][]*contract.Property
	var all []*contract.Property
	for _, name := range r.In.Form.Formulas.Under(p) {
		if q := r.In.Form.Input.Child(name); q != nil && r.givenByHand(q) && r.Field(q) != nil {
			each, all = append(each, []*contract.Property{q}), append(all, q)
		}
	}
	for _, inputs := range append(each, all) {
		r.Without(inputs, func() float64 {
			moved = r.moved(moved)
			return 0
		})
		r.Again()
	}
	return moved
}

// standard is the name of the row nearest to a value of an input, no further
// than the reach, of a table that gives nothing but that input; or "".
func (r *Finder) standard(q *contract.Property, value, reach float64) (name string) {
	for _, p := range r.In.Form.Input.Properties {
		if p.Rows == "" {
			continue
		}
		table := r.In.Request.Book.Table(p.Rows)
		column, fills := p.ColumnFor(q.Name)
		if table == nil || !fills || slices.ContainsFunc(r.In.Form.Input.Properties, func(other *contract.Property) bool {
			column, fills := p.ColumnFor(other.Name)
			_, has := table.Kind(column)
			return other != q && fills && has
		}) {
			continue
		}
		for _, row := range table.Rows.All() {
			if v, has := row.Values.Find(column); has {
				if off := math.Abs(v.SI - value); off <= reach && (name == "" || off < reach) {
					name, reach = row.Name, off
				}
			}
		}
	}
	return name
}
