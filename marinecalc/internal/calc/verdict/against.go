package verdict

import (
	"slices"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
)

// Against finds what the results of a run are held against: other ways to them,
// what they cannot be under, and the limits that apply.
func Against(r *results.Run, b *Buffer) *Judgement {
	j := &Judgement{Finder: conflict.Finder{Run: r}, Ruled: ruledBy(r.In.Request.Book, r.In.Form), room: b}
	j.CompareWays()
	j.CompareOrders()
	j.holdLimits()
	r.Judged = len(j.limits)
	return j
}

// TryOut runs the trials, and those of the limits that move with their values.
func (r *Judgement) TryOut(space *spread.Workspace) {
	var moving []*held
	var limits []spread.Limit
	var m results.Margins
	for i := range r.limits {
		if h := &r.limits[i]; h.bound != nil && h.value != nil {
			limit, _, _ := r.limit(h.Limit, h.on)
			moving, limits = append(moving, h), append(limits, limit)
			m.Places = append(m.Places, &h.margin)
		}
	}
	m.Move = func() {
		for i, h := range moving {
			h.move(limits[i])
		}
	}
	m.Explain = func(p *contract.Property) bool {
		return slices.ContainsFunc(r.limits, func(h held) bool { return h.On == p.Name })
	}
	m.Enough = func(margins []spread.Range) bool {
		for i, h := range moving {
			var span *spread.Range
			if margins != nil {
				span = &margins[i]
			}
			if !spread.AmplyMet(h.move(limits[i]), span, spread.AtLeast(0)) {
				return false
			}
		}
		for i := range r.limits {
			h := &r.limits[i]
			limit, _, ok := r.limit(h.Limit, h.on)
			if j, _ := r.value(h.On); ok && j.number && !slices.Contains(moving, h) && !spread.AmplyMet(j.si, j.span, limit) {
				return false
			}
		}
		return true
	}
	spans := r.Ranges(space, m)
	for i := range spans {
		moving[i].span = &spans[i]
	}
}

// holdLimits finds the limits that apply, the maker's figures and those of the
// owner among them, and where the trials leave what they are on.
func (r *Judgement) holdLimits() {
	list := r.room.limits
	for i := range r.Ruled.limits {
		row := &r.Ruled.limits[i]
		l := r.applying(&row.Limit)
		if l == nil {
			continue
		}
		list = append(list, held{})
		h := &list[len(list)-1]
		r.takeFigure(h, l)
		if h.Limit == &row.Limit {
			h.shown = row.shown[r.In.Request.Units]
		}
		h.on, h.value = r.Property(h.On), r.Place(h.On)
		if of := h.boundOf(); of != "" {
			h.bound = r.Place(of)
		}
	}
	list = r.holdOwn(list)
	r.room.limits, r.limits = list, list
}

// ruledBy is what a book says of a calculation.
func ruledBy(book *rules.Book, k *binding.Form) *ruled {
	id := k.ID
	return book.Derived(ruledKey(id), func() any {
		out := new(ruled)
		for _, l := range book.Limits(id).All() {
			out.limits = append(out.limits, ruledLimit{l, shownByRow(k, &l)})
		}
		for _, a := range book.Advice(id).All() {
			out.Advice = append(out.Advice, a)
		}
		for _, c := range book.Cautions(id).All() {
			out.Cautions = append(out.Cautions, caution{c.Said(), c.Valid})
		}
		return out
	}).(*ruled)
}

// ruledKey is the calculation's id.
type ruledKey string
