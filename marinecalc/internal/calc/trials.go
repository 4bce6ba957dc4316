package calc

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// ranges runs the trials: every number with a spread is drawn, the typed
// function is run, every numeric result is kept.
func (r *run) ranges(space *spread.Workspace) {
	if r.in.session.trials == 0 || len(r.in.variates) == 0 {
		return
	}
	factors := make([]spread.Factor, len(r.in.variates))
	for i, l := range r.in.variates {
		factors[i] = l.factor
	}
	outputs, explained := r.numbers()
	if len(outputs) == 0 {
		return
	}
	// Trials take most of the time: what they touch is looked up beforehand.
	to, from := make([]*float64, len(r.in.variates)), make([]*float64, len(outputs))
	for i, l := range r.in.variates {
		to[i] = l.to
	}
	var directions []int
	for i, m := range outputs {
		from[i] = m.number
		if k := m.property.Kind; k != nil && k.Name == "direction" {
			directions = append(directions, i)
		}
	}
	model := spread.Model{Factors: to, Results: from, Run: r.trial(outputs, directions)}
	model.Results = r.holdMargins(&model)
	out, err := space.Run(factors, spread.Plan{Trials: r.in.session.trials, Seed: r.in.session.seed, Shares: explained}, model)
	for _, l := range r.in.variates {
		*l.to = l.factor.Estimate
	}
	if r.in.call.run() != nil || err != nil || !out.Usable {
		r.untried = true
		r.notes = append(r.notes, "No ranges: too many of the trial values inside the stated accuracies lie where this calculation does not apply.")
		return
	}
	r.trials = out.Trials
	if part := float64(out.Failed) / float64(out.Trials); part >= 0.01 {
		r.notes = append(r.notes, fmt.Sprintf("%.0f %% of the trial values inside the stated accuracies lie where this calculation does not apply; the ranges are of the others, and each verdict holds with them counted at the edge.", 100*part))
	}
	for i, m := range outputs {
		m.span = &out.Results[i]
		r.takeSpan(m)
	}
	if len(r.widened) > 0 {
		r.notes = append(r.notes, "What is read near nothing scatters to one side only; widened to hold what was read: the range of "+strings.Join(r.widened, ", ")+".")
	}
	r.leaveOpen()
	for i, n := 0, len(outputs); i < len(r.limits); i++ {
		if h := &r.limits[i]; h.bound != nil && h.value != nil {
			h.span = &out.Results[n]
			n++
		}
	}
}

// takeSpan gives a result its range, and its words the digits that go with it.
func (r *run) takeSpan(m *measure) {
	switch {
	case m.property.Setting && m.span.StdDev == 0: // one figure is what is set
		m.span = nil
	case !m.span.Usable: // its verdict says so
	case m.property.Chance:
		m.si = m.span.Mean
		m.text, m.span = inTen(m.si, r.guessed()), nil
	default:
		// The trials of a size lie above it where it is near nothing; an
		// interval that excludes the estimate would deny what was read.
		m.low, m.high = min(m.span.Low, m.si), max(m.span.High, m.si)
		if m.property.Level == sheet.Main && max(m.span.Low-m.si, m.si-m.span.High) > 1e-9*math.Abs(m.si) { // and not by rounding
			r.widened = append(r.widened, "“"+m.property.Title+"”")
		}
		if !openFrom(m.property, m.si) && !m.property.Probability && m.half() > 1e-9*math.Abs(m.si) {
			m.text = r.in.showTo(m.property, m.si, m.half())
		}
	}
}

// noDirection stands for a direction whose trials point all ways.
const noDirection = "no direction can be told"

// leaveOpen says of a direction that may lie anywhere in more than half a turn
// that none can be told, and of what rests on it.
func (r *run) leaveOpen() {
	for i := range r.measures {
		m := &r.measures[i]
		if k := m.property.Kind; k != nil && k.Name == "direction" && m.span != nil && m.high-m.low > math.Pi {
			m.text, m.span = noDirection, nil
		}
	}
	for i := range r.measures {
		if m := &r.measures[i]; m.number == nil && slices.ContainsFunc(m.property.DependsOn, func(name string) bool { return !r.tells(name) }) {
			m.text = noDirection
		}
	}
}

// tells says whether a result tells anything.
func (r *run) tells(name string) bool {
	m := r.result(name)
	return m == nil || m.text != noDirection
}

// trial runs the function once, with directions counted from their estimates.
func (r *run) trial(outputs []*measure, directions []int) func() bool {
	run := r.in.session.untilCancelled(r.in.call.run)
	if len(directions) == 0 {
		return func() bool { return run() == nil }
	}
	return func() bool {
		err := run()
		for _, i := range directions {
			*outputs[i].number = nearest(*outputs[i].number, outputs[i].si)
		}
		return err == nil
	}
}

// holdMargins lets the trials work out how far values are from those limits
// that move with them, behind the other results, whose places are returned
// with theirs.
func (r *run) holdMargins(m *spread.Model) []*float64 {
	var moving []*held
	var limits []spread.Limit
	places := m.Results
	for i := range r.limits {
		if h := &r.limits[i]; h.bound != nil && h.value != nil {
			limit, _, _ := r.limit(h.Limit, h.on)
			moving, limits = append(moving, h), append(limits, limit)
			places = append(places, &h.margin)
		}
	}
	if len(moving) == 0 {
		return places
	}
	run := m.Run
	m.Run = func() bool {
		if !run() {
			return false
		}
		for i, h := range moving {
			h.move(limits[i])
		}
		return true
	}
	return places
}

// dropUntried variates out the chances, which nobody knows without trials.
func (r *run) dropUntried() {
	if r.trials == 0 {
		r.measures = slices.DeleteFunc(r.measures, func(m measure) bool { return m.property.Chance })
		r.index()
	}
}

// numbers lists every numeric result, first those whose spread is explained:
// the main results and those that a limit is on. Those in tables come last.
func (r *run) numbers() (list []*measure, explained int) {
	limited := map[string]bool{}
	for i := range r.limits {
		limited[r.limits[i].On] = true
	}
	add := func(measures []measure, wanted func(*contract.Property) bool) {
		for i := range measures {
			if m := &measures[i]; m.number != nil && m.text != "" && wanted(m.property) {
				list = append(list, m)
			}
		}
	}
	explain := func(p *contract.Property) bool { return p.Level == sheet.Main || limited[p.Name] }
	add(r.measures, explain)
	explained = len(list)
	add(r.measures, func(p *contract.Property) bool { return !explain(p) })
	for _, t := range r.tables {
		for _, row := range t.rows {
			add(row, func(*contract.Property) bool { return true })
		}
	}
	return list, explained
}

// nearest gives a direction as counted from another: directions have no
// beginning and no end, so trials are counted from the estimate.
func nearest(angle, to float64) float64 {
	if d := angle - to; -math.Pi <= d && d <= math.Pi {
		return angle // as nearly all are, without the costly remainder
	}
	return to + math.Remainder(angle-to, 2*math.Pi)
}

// untilCancelled stops calling a function of the trials once the context of
// the session has ended. What is left of the trials then costs next to
// nothing, and the run says that it was stopped.
func (s *Session) untilCancelled(run func() error) func() error {
	if s.ctx.Done() == nil {
		return run
	}
	const every = 64 // trials between two looks
	left, stopped := every, error(nil)
	return func() error {
		if left--; left == 0 {
			left, stopped = every, s.ctx.Err()
		}
		if stopped != nil {
			return stopped
		}
		return run()
	}
}
