package verdict

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// settle says which gauge, or how many readings, would settle a verdict. All
// readings taken with one gauge count as one. What to read, and with which
// gauge, is also told for programs.
func (r *Judgement) settle(h *held, j judged, limit spread.Limit, v *sheet.Verdict) string {
	p := h.on
	low, high, about := r.about(h)
	switch {
	case j.span == nil:
		return ""
	case about && j.high > low && j.low < high:
		return "To settle it, type the maker's figure: what is usual differs by more than the readings."
	case r.In.At(p.Name) != nil && r.In.At(p.Name).Factor.Shape == spread.Counted:
		v.SettleBy = &sheet.SettleBy{Input: p.Name, Title: p.Title, Gauge: "a count of five minutes"}
		return "To settle it, count longer: for five minutes."
	}
	byInput, own := *j.span, false
	byInput.Shares = make([]float64, len(r.In.Values))
	if len(j.span.Shares) == len(r.In.Variates) {
		for i, l := range r.In.Variates {
			byInput.Shares[l.Input] += j.span.Shares[i]
		}
	} else {
		byInput.Shares[p.Index], own = 1, true // the input itself is what is judged
	}
	measured, gauges := r.measurables()
	if mixed(r.In.Form.Input.Properties) {
		return finestGauge
	}
	if j.si < j.span.Low && !own { // a size near nothing: whose part in its spread is largest cannot be told
		return finestGauge
	}
	if !own && math.Abs(j.si-j.span.Mean) > lopsided*j.span.StdDev { // as of a blade that did not go in: no mean of readings tells
		return r.leading(byInput.Shares)
	}
	s := spread.Settle(&byInput, limit, measured)
	var ways []string
	if s.GaugeFactor >= 0 {
		for i, m := range measured {
			if m.Factor == s.GaugeFactor {
				if v.SettleBy == nil {
					in := r.In.Form.Input.Properties[m.Factor]
					v.SettleBy = &sheet.SettleBy{Input: in.Name, Title: in.Title, Gauge: gauges[i][s.Gauge]}
				}
				ways = append(ways, fmt.Sprintf("read %s with this gauge: %s", r.called(m.Factor), strings.ToLower(gauges[i][s.Gauge])))
			}
		}
	}
	if s.RepeatFactor >= 0 && !r.In.Form.Input.Properties[s.RepeatFactor].Once {
		if v.SettleBy == nil {
			in := r.In.Form.Input.Properties[s.RepeatFactor]
			v.SettleBy = &sheet.SettleBy{Input: in.Name, Title: in.Title, Readings: s.Readings}
		}
		ways = append(ways, r.repeated(s.RepeatFactor, s.Readings))
	}
	switch {
	case len(ways) > 0:
		return "To settle it, " + strings.Join(ways, "; or ") + "."
	case s.Together:
		return finestGauge
	case s.Blocker >= 0 && r.In.Form.Input.Properties[s.Blocker].ReadBy != "" || s.Blocker >= 0 && r.In.Form.Input.Properties[s.Blocker].Items != nil:
		return "It lies so close to the limit that none of the gauges known here can settle it."
	case own && p.ReadBy == "" && p.Kind != nil && p.Kind.Name != "temperature" && !math.IsNaN(narrower(j.si, limit)):
		return "To settle it, find it more surely than to ± " + r.In.Show(p, narrower(j.si, limit)) + " and type its ±."
	case s.Blocker >= 0:
		return "No gauge settles it: most of what is left of the spread comes from " + r.called(s.Blocker) + r.replaceable(s.Blocker) + "."
	}
	return r.leading(byInput.Shares)
}

// narrower is how far a value lies from the side of its limit that it is nearest
// to: within a smaller ± it lies on one side. It is NaN of one right on it.
func narrower(si float64, limit spread.Limit) float64 {
	away := math.Inf(1)
	for _, bound := range []float64{limit.Min, limit.Max} {
		if !math.IsNaN(bound) {
			away = min(away, math.Abs(si-bound))
		}
	}
	if away == 0 || math.IsInf(away, 0) {
		return math.NaN()
	}
	return away
}

// lopsided is by how much of its standard deviation a range may lie off its
// estimate before what Settle supposes, that readings spread evenly round it,
// no longer holds.
const lopsided = 0.4

// leads is the share of a spread from which an input is named as its cause.
const leads = 0.1

// leading says which input a doubt comes from most, where it comes from several
// together: one that nobody typed is to be measured, and of one that was read
// the way of reading it is not up to the limit.
func (r *Judgement) leading(shares []float64) string {
	most := 0
	for i, share := range shares {
		if share > shares[most] {
			most = i
		}
	}
	if len(shares) == 0 || shares[most] < leads {
		return "It lies too close to the limit for what is known here: no better gauge alone settles it."
	}
	if mend := r.replaceable(most); mend != "" {
		return "The doubt comes most from " + r.called(most) + mend + "."
	}
	if m, _, ok := r.measurable(most, r.In.Form.Input.Properties[most]); ok && slices.ContainsFunc(m.Gauges, func(sd float64) bool { return sd < m.InHand/2 }) {
		return "The doubt comes most from " + r.called(most) + ": read with a finer gauge."
	}
	if r.In.Values[most].Factor.Shape == spread.Counted {
		return "The doubt comes most from " + r.called(most) + ", a count of few: count longer, or more of it."
	}
	return "The doubt comes most from " + r.called(most) + ", and no finer gauge known here settles it: find it in another way."
}

// replaceable says how an input is made surer that nobody typed or
// chose.
func (r *Judgement) replaceable(input int) string {
	if origin := r.In.Values[input].Origin; origin == sheet.UsualValue || origin == sheet.Default {
		return ", a usual value here: type or choose what is true of yours"
	}
	return ""
}

// mixed tells whether a list holds readings of several gauges, so that its part
// in a spread is no one gauge's.
func mixed(inputs []*contract.Property) bool {
	for _, p := range inputs {
		gauge := ""
		if p.Items == nil {
			continue
		}
		for _, part := range p.Items.Properties {
			if part.ReadBy != "" && gauge != "" && part.ReadBy != gauge {
				return true
			}
			gauge = cmp.Or(part.ReadBy, gauge)
		}
	}
	return false
}

func (r *Judgement) called(input int) string {
	return "“" + r.In.Form.Input.Properties[input].Title + "”"
}

// repeated says how often an input is to be read: of a difference both of what it
// is the difference of, which is what a hand reads.
func (r *Judgement) repeated(input, readings int) string {
	if r.In.Form.Input.Properties[input].Between > 0 {
		return fmt.Sprintf("take both readings of which %s is the difference %d times, and use their means", r.called(input), readings)
	}
	return fmt.Sprintf("read %s %d times and use the mean", r.called(input), readings)
}

// gaugesKey is a kind of quantity.
type gaugesKey struct{ *quantity.Kind }

// gaugesOf are a book's gauges for a kind of quantity.
func gaugesOf(book *rules.Book, kind *quantity.Kind) []*rules.Row {
	return book.Derived(gaugesKey{kind}, func() any {
		var list []*rules.Row
		for _, row := range book.Table(inputs.Gauges).Rows.All() {
			if inputs.ReadsKind(row, kind) {
				list = append(list, &row)
			}
		}
		return list
	}).([]*rules.Row)
}

// measurables are the inputs that are read with a gauge, and the names of the
// gauges of each. They are the same for all verdicts of a run.
func (r *Judgement) measurables() ([]spread.Measured, [][]string) {
	if r.measured == nil {
		r.measured = []spread.Measured{}
		for i, p := range r.In.Form.Input.Properties {
			if m, names, ok := r.measurable(i, p); ok {
				r.measured, r.gauges = append(r.measured, m), append(r.gauges, names)
			}
		}
	}
	return r.measured, r.gauges
}

// measurable gives an input's standard uncertainty with the gauge in hand,
// and the gauges that read its kind of quantity.
func (r *Judgement) measurable(i int, p *contract.Property) (m spread.Measured, names []string, ok bool) {
	kind, readBy, si := p.Kind, p.ReadBy, r.In.Values[i].Si
	in := r.In.Values[i].Factor
	if p.Items != nil {
		for _, part := range p.Items.Properties {
			if part.ReadBy != "" {
				kind, readBy = part.Kind, part.ReadBy
			}
		}
		for _, l := range r.In.Variates {
			if l.Input == i {
				in, si = l.Factor, l.Factor.Estimate
			}
		}
	}
	if readBy == "" || kind == nil || in.Shape == spread.Exact {
		return spread.Measured{}, nil, false
	}
	m = spread.Measured{Factor: i, InHand: in.StdDev()}
	gauges := r.In.Request.Book.Table(inputs.Gauges)
	var inHand *rules.Row
	if k := r.In.At(readBy); k != nil {
		inHand = gauges.Find(k.Word, r.In.Lookup)
	}
	for _, row := range gaugesOf(r.In.Request.Book, kind) {
		if inHand != nil && (!inputs.ReadsAlike(row, inHand) || row.Values.Of("between") != inHand.Values.Of("between")) {
			continue // no dial indicator reads the size of a shaft
		}
		if f, err := inputs.WithGauge(kind, row, si, p.Between); err == nil && f.Shape != spread.Exact {
			m.Gauges = append(m.Gauges, f.StdDev())
			names = append(names, row.Name)
		}
	}
	return m, names, true
}

const finestGauge = "To settle it, take every reading with the finest gauge available."
