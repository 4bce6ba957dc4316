package results

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// Margins are figures that trials work out beside the results: how far values
// are from those limits that move with them.
type Margins struct {
	Places  []*float64
	Move    func()                        // works them out anew, from what the run has left in its places
	Explain func(*contract.Property) bool // whose spread is explained, beside that of the main results
	Enough  func([]spread.Range) bool     // whether the spans of the results and these of the margins leave no verdict in doubt
}

// Ranges runs the trials: every number with a spread is drawn, the typed
// function is run, every numeric result is kept. It returns the ranges of the
// margins, if any trials were run.
func (r *Run) Ranges(space *spread.Workspace, beside Margins) (spans []spread.Range) {
	if r.In.Request.Trials == 0 || len(r.In.Variates) == 0 {
		return nil
	}
	factors := make([]spread.Factor, len(r.In.Variates))
	for i, l := range r.In.Variates {
		factors[i] = l.Factor
	}
	outputs, explained := r.numbers(beside.Explain)
	if len(outputs) == 0 {
		return nil
	}
	// Trials take most of the time: what they touch is looked up beforehand.
	to, from := make([]*float64, len(r.In.Variates)), make([]*float64, len(outputs))
	for i, l := range r.In.Variates {
		to[i] = l.To
	}
	var directions []int
	for i, m := range outputs {
		from[i] = m.Number
		if k := m.Property.Kind; k != nil && k.Name == "direction" {
			directions = append(directions, i)
		}
	}
	model := spread.Model{Factors: to, Results: from, Run: r.trial(outputs, directions)}
	if len(beside.Places) > 0 {
		run := model.Run
		model.Results = append(from, beside.Places...)
		model.Run = func() bool {
			if !run() {
				return false
			}
			beside.Move()
			return true
		}
	}
	plan := spread.Plan{Trials: r.In.Request.Trials, Seed: r.In.Request.Seed, Stopped: r.In.Request.Stopped, Shares: explained}
	few := 0 < r.In.Request.Few && r.In.Request.Few < plan.Trials && !slices.ContainsFunc(outputs, func(m *Measure) bool { return m.Property.Chance })
	few = few && r.enough(outputs, nil, beside.Enough)
	if few {
		plan.Trials = r.In.Request.Few
	}
	out, err := space.Run(factors, plan, model)
	again := r.onEstimates()
	if few && !(err == nil && again == nil && out.Failed == 0 && r.enough(outputs, out.Results, beside.Enough)) {
		plan.Trials = r.In.Request.Trials
		out, err = space.Run(factors, plan, model)
		again = r.onEstimates()
	}
	if again != nil || err != nil || !out.Usable {
		r.Untried = true
		r.Notes = append(r.Notes, "No ranges: too many of the trial values inside the stated accuracies lie where this calculation does not apply.")
		return nil
	}
	r.Trials = out.Trials
	if part := float64(out.Failed) / float64(out.Trials); part >= 0.01 {
		r.Notes = append(r.Notes, fmt.Sprintf("%.0f %% of the trial values inside the stated accuracies lie where this calculation does not apply; the ranges are of the others, and each verdict holds with them counted at the edge.", 100*part))
	}
	for i, m := range outputs {
		m.Span = &out.Results[i]
		r.takeSpan(m)
	}
	if len(r.widened) > 0 {
		r.Notes = append(r.Notes, "Trials lie to one side of what is read near nothing, and of the greatest or least of several; widened to hold the figure itself: the range of "+strings.Join(r.widened, ", ")+".")
	}
	r.leaveOpen()
	return out.Results[len(outputs):]
}

// onEstimates runs on the estimates again, after trials.
func (r *Run) onEstimates() error {
	for _, l := range r.In.Variates {
		*l.To = l.Factor.Estimate
	}
	return r.In.Call.Run()
}

// enough tells whether a few trials leave no verdict in doubt; without their spans,
// whether any could: a limit that the estimate does not meet is not amply met.
func (r *Run) enough(outputs []*Measure, spans []spread.Range, settled func([]spread.Range) bool) bool {
	if spans == nil {
		return settled(nil)
	}
	for i, m := range outputs {
		m.Span = &spans[i]
	}
	yes := settled(spans[len(outputs):])
	for _, m := range outputs {
		m.Span = nil
	}
	return yes
}

// takeSpan gives a result its range, and its words the digits that go with it.
func (r *Run) takeSpan(m *Measure) {
	switch {
	case m.Property.Setting && m.Span.StdDev == 0: // one figure is what is set
		m.Span = nil
	case !m.Span.Usable: // its verdict says so
	case m.Property.Chance:
		m.Si = m.Span.Mean
		m.Text, m.Span = inTen(m.Si, r.guessed()), nil
	default:
		// The trials of a size lie above it where it is near nothing; an
		// interval that excludes the estimate would deny what was read.
		m.Low, m.High = min(m.Span.Low, m.Si), max(m.Span.High, m.Si)
		if least := m.Property.Minimum; least != nil && m.High > *least { // what cannot be less is not said to be; wholly below it the readings contradict each other
			m.Low = max(m.Low, min(*least, m.Si))
		}
		if m.Property.Level == sheet.Main && max(m.Span.Low-m.Si, m.Si-m.Span.High) > 1e-9*math.Abs(m.Si) { // and not by rounding
			r.widened = append(r.widened, "“"+m.Property.Title+"”")
		}
		if !inputs.OpenFrom(m.Property, m.Si) && !m.Property.Probability && m.Half() > 1e-9*math.Abs(m.Si) {
			m.Text = r.In.ShowTo(m.Property, m.Si, m.Half())
		}
	}
}

// noDirection stands for a direction whose trials point all ways.
const noDirection = "no direction can be told"

// leaveOpen says of a direction that may lie anywhere in more than half a turn
// that none can be told, and of what rests on it.
func (r *Run) leaveOpen() {
	for i := range r.Measures {
		m := &r.Measures[i]
		if k := m.Property.Kind; k != nil && k.Name == "direction" && m.Span != nil && m.High-m.Low > math.Pi {
			m.Text, m.Span = noDirection, nil
		}
	}
	for i := range r.Measures {
		if m := &r.Measures[i]; m.Number == nil && slices.ContainsFunc(m.Property.DependsOn, func(name string) bool { return !r.Tells(name) }) {
			m.Text = noDirection
		}
	}
}

// Tells says whether a result tells anything.
func (r *Run) Tells(name string) bool {
	m := r.Result(name)
	return m == nil || m.Text != noDirection
}

// trial runs the function once, with directions counted from their estimates.
func (r *Run) trial(outputs []*Measure, directions []int) func() bool {
	run := r.In.Request.UntilCancelled(r.In.Call.Run)
	if len(directions) == 0 {
		return func() bool { return run() == nil }
	}
	return func() bool {
		err := run()
		for _, i := range directions {
			*outputs[i].Number = nearest(*outputs[i].Number, outputs[i].Si)
		}
		return err == nil
	}
}

// DropUntried leaves out the chances, which nobody knows without trials.
func (r *Run) DropUntried() {
	if r.Trials == 0 {
		r.Measures = slices.DeleteFunc(r.Measures, func(m Measure) bool { return m.Property.Chance })
		r.index()
	}
}

// numbers lists every numeric result, first those whose spread is explained:
// the main results and those that a limit is on. Those in tables come last.
func (r *Run) numbers(besides func(*contract.Property) bool) (list []*Measure, explained int) {
	add := func(measures []Measure, wanted func(*contract.Property) bool) {
		for i := range measures {
			if m := &measures[i]; m.Number != nil && m.Text != "" && wanted(m.Property) {
				list = append(list, m)
			}
		}
	}
	explain := func(p *contract.Property) bool { return p.Level == sheet.Main || besides(p) }
	add(r.Measures, explain)
	explained = len(list)
	add(r.Measures, func(p *contract.Property) bool { return !explain(p) })
	for _, t := range r.Tables {
		for _, row := range t.Rows {
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
