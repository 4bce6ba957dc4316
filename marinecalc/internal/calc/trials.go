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

// margins are figures that trials work out beside the results: how far values
// are from those limits that move with them.
type margins struct {
	places  []*float64
	move    func()                        // works them out anew, from what the run has left in its places
	explain func(*contract.Property) bool // whose spread is explained, beside that of the main results
}

// ranges runs the trials: every number with a spread is drawn, the typed
// function is run, every numeric result is kept. It returns the ranges of the
// margins, if any trials were run.
func (r *run) ranges(space *spread.Workspace, beside margins) (spans []spread.Range) {
	if r.in.request.trials == 0 || len(r.in.variates) == 0 {
		return nil
	}
	factors := make([]spread.Factor, len(r.in.variates))
	for i, l := range r.in.variates {
		factors[i] = l.factor
	}
	outputs, explained := r.numbers(beside.explain)
	if len(outputs) == 0 {
		return nil
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
	if len(beside.places) > 0 {
		run := model.Run
		model.Results = append(from, beside.places...)
		model.Run = func() bool {
			if !run() {
				return false
			}
			beside.move()
			return true
		}
	}
	out, err := space.Run(factors, spread.Plan{Trials: r.in.request.trials, Seed: r.in.request.seed, Shares: explained}, model)
	for _, l := range r.in.variates {
		*l.to = l.factor.Estimate
	}
	if r.in.call.Run() != nil || err != nil || !out.Usable {
		r.untried = true
		r.notes = append(r.notes, "No ranges: too many of the trial values inside the stated accuracies lie where this calculation does not apply.")
		return nil
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
	return out.Results[len(outputs):]
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
	run := r.in.request.untilCancelled(r.in.call.Run)
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

// dropUntried variates out the chances, which nobody knows without trials.
func (r *run) dropUntried() {
	if r.trials == 0 {
		r.measures = slices.DeleteFunc(r.measures, func(m measure) bool { return m.property.Chance })
		r.index()
	}
}

// numbers lists every numeric result, first those whose spread is explained:
// the main results and those that a limit is on. Those in tables come last.
func (r *run) numbers(besides func(*contract.Property) bool) (list []*measure, explained int) {
	add := func(measures []measure, wanted func(*contract.Property) bool) {
		for i := range measures {
			if m := &measures[i]; m.number != nil && m.text != "" && wanted(m.property) {
				list = append(list, m)
			}
		}
	}
	explain := func(p *contract.Property) bool { return p.Level == sheet.Main || besides(p) }
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
