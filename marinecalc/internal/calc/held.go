package calc

import (
	"math"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

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
}

// holdLimits finds the limits that apply, the maker's figures among them, and
// where the trials leave what they are on.
func (r *run) holdLimits() {
	list := r.in.buf.limits
	for i := range r.ruled.limits {
		row := &r.ruled.limits[i]
		l := r.applying(&row.Limit)
		if l == nil {
			continue
		}
		list = append(list, held{})
		h := &list[len(list)-1]
		r.takeFigure(h, l)
		if h.Limit == &row.Limit {
			h.shown = row.shown[r.in.session.Units]
		}
		h.on, h.value = r.property(h.On), r.place(h.On)
		if of := h.boundOf(); of != "" {
			h.bound = r.place(of)
		}
	}
	r.in.buf.limits, r.limits = list, list
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

// property is the input or result of that name.
func (r *run) property(name string) *contract.Property {
	input, result := r.in.form.Named(name)
	if result != nil {
		return result
	}
	return input
}

// place is where trials leave the input or result of that name, or nil.
func (r *run) place(name string) *float64 {
	input, result := r.in.form.Named(name)
	if m := r.of(result); m != nil {
		return m.number
	}
	if input != nil && r.in.values[input.Index].known {
		return r.field(input)
	}
	return nil
}

// field is where the typed struct has an input that is a number, or nil. One
// that limits alone go by has its place in what is known of it.
func (r *run) field(p *contract.Property) *float64 {
	if p.JudgedOnly && p.Kind != nil {
		return &r.in.values[p.Index].si
	}
	if to, ok := r.in.form.Inputs.Field(r.in.call.input, p); ok {
		return binding.Number(to)
	}
	return nil
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

// sideOf is the side on which a limit's row bounds its value.
func sideOf(l *rules.Limit) sheet.Side {
	if l.Min.Given() {
		return sheet.AtLeast
	}
	return sheet.AtMost
}

// guides tells whether nothing is over the limit: by its authority, or because
// the figure that it holds a value against is nobody's own but only usual.
func (r *run) guides(h *held) bool {
	if h.Basis.Guides() {
		return true
	}
	if h.Basis != rules.AsEntered || h.boundOf() == "" {
		return false
	}
	k := r.in.at(h.boundOf())
	return k != nil && (k.origin == sheet.UsualValue || k.origin == sheet.Default || k.origin == sheet.HandbookRow && !k.confirmed)
}

// ruled is what a book says of one calculation, taken out of it once, so that a
// run need not copy row after row. Nobody changes it.
type ruled struct {
	limits   []ruledLimit
	advice   []rules.Advice
	cautions []caution
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
	valid rules.Valid
}

// ruledKey is the calculation's id.
type ruledKey string

// ruled is what the session's book says of a calculation.
func (s *Session) ruled(k *binding.Form) *ruled {
	id := k.ID
	return s.Book.Derived(ruledKey(id), func() any {
		out := new(ruled)
		for _, l := range s.Book.Limits(id).All() {
			out.limits = append(out.limits, ruledLimit{l, shownByRow(k, &l)})
		}
		for _, a := range s.Book.Advice(id).All() {
			out.advice = append(out.advice, a)
		}
		for _, c := range s.Book.Cautions(id).All() {
			out.cautions = append(out.cautions, caution{sheet.Caution{Signal: c.Signal, Text: c.Text, Source: c.Source.String()}, c.Valid})
		}
		return out
	}).(*ruled)
}
