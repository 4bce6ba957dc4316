package verdict

import (
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc/conflict"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Judgement is a run held against its limits.
type Judgement struct {
	conflict.Finder
	Ruled    *ruled
	room     *Buffer
	limits   []held
	absent   []*float64        // what trials leave as it is, see missedWithout
	measured []spread.Measured // see measurables
	gauges   [][]string
}

// Buffer is the memory for the verdicts of a run.
type Buffer struct {
	limits  []held
	figures []figure        // behind a verdict
	factors []spread.Factor // of the trials at one end of a bracket
	places  []*float64
}

// Clear makes the memory ready for the next run.
func (b *Buffer) Clear() { b.limits = b.limits[:0] }

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
			if !spread.AmplyMet(h.move(limits[i]), &margins[i], spread.AtLeast(0)) {
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

// held is a limit that applies, with what the run holds against it.
type held struct {
	*rules.Limit
	on     *contract.Property // what it is on; nil where the rules name what there is not
	value  *float64           // where the trials leave its value; nil for what they do not move
	bound  *float64           // the same of a limit that is another input or result
	margin float64            // how far the value is from it, below nothing where it is not met
	span   *spread.Range      // of the margin, where the bound moves with the value
	was    *rules.Limit       // the one that this takes the place of, or nil
	unread string             // why the maker's figure for it cannot be read
	shown  string             // what the limit is, where its row alone says so
	told   *sheet.Verdict     // once it was judged, which may be for one that hangs on it
}

// holdLimits finds the limits that apply, the maker's figures among them, and
// where the trials leave what they are on.
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
	r.room.limits, r.limits = list, list
}

// boundOf is the input or result that the limit is, or "".
func (h *held) boundOf() string { return boundOf(h.Limit).Of }

// boundOf is the side on which a limit's row has its bound.
func boundOf(l *rules.Limit) *rules.Bound {
	if l.Min.Given() {
		return &l.Min
	}
	return &l.Max
}

// move works the margin out anew, from what the run has left in its places. A
// bound that is met to the last digit is met (see spread.Judge).
func (h *held) move(limit spread.Limit) float64 {
	value, low, high := *h.value, limit.Min, limit.Max
	if h.bound != nil && math.IsNaN(low) {
		high = *h.bound
	} else if h.bound != nil {
		low = *h.bound
	}
	h.margin = high - value
	if math.IsNaN(high) {
		h.margin = value - low
		high = low
	}
	h.margin += 1e-9 * math.Abs(high)
	return h.margin
}

// SideOf is the side on which a limit's row bounds its value.
func SideOf(l *rules.Limit) sheet.Side {
	if l.Min.Given() {
		return sheet.AtLeast
	}
	return sheet.AtMost
}

// guides tells whether nothing is over the limit: by its authority, or because
// the figure that it holds a value against is nobody's own but only usual.
func (r *Judgement) guides(h *held) bool {
	if h.Basis.Guides() {
		return true
	}
	if h.Basis != rules.AsEntered || h.boundOf() == "" {
		return false
	}
	k := r.In.At(h.boundOf())
	return k != nil && k.OnlyUsual()
}

// ruled is what a book says of one calculation, taken out of it once, so that a
// run need not copy row after row. Nobody changes it.
type ruled struct {
	limits   []ruledLimit
	Advice   []rules.Advice
	Cautions []caution
}

// ruledLimit is a limit, and what it is in each system of units; that is empty
// where the run must say it.
type ruledLimit struct {
	rules.Limit
	shown [3]string
}

// caution is one as it stands on a sheet, and when.
type caution struct {
	sheet.Caution
	Valid rules.Valid
}

// ruledKey is the calculation's id.
type ruledKey string

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
