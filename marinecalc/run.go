package marinecalc

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Options say how a calculation is run. The zero value runs it without a
// boat, in metric units, with 4096 trials, by the standard rules.
type Options struct {
	Boat   *Boat
	Units  string      // "metric", "us" or "both"; "" is the boat's choice, or metric
	Trials int         // 0 is DefaultTrials; less than 0 gives no ranges
	Seed   uint64      // of the trials; 0 is 1
	Rules  *rules.Book // nil is rules.Standard()
	Brief  bool        // the sheet without its worked lines and drawings, for a host that shows neither
}

// session is what the calculations of one request share: earlier results are
// worked out once.
type session struct {
	boat   *Boat
	book   *rules.Book
	units  quantity.System
	trials int
	seed   uint64
	brief  bool
	done   map[string]*outcome // nil while being worked out, or when it cannot be
	kept   any                 // what the calculation under way keeps from its run on the estimates for its trials
}

// outcome is a sheet and what later calculations must know of it.
type outcome struct {
	sheet    *sheet.Sheet
	doubtful []string // the results that rest on a figure of the least sure kind
}

func (o Options) session() (*session, error) {
	s := &session{boat: o.Boat, book: o.Rules, trials: o.Trials, seed: o.Seed, brief: o.Brief, done: map[string]*outcome{}}
	if s.book == nil {
		s.book = rules.Standard()
	}
	if s.trials == 0 {
		s.trials = DefaultTrials
	}
	if s.trials > 0 && (s.trials < spread.MinTrials || s.trials > spread.MaxTrials) {
		return nil, problem.List{{Where: "/trials", What: fmt.Sprintf("%d trials", s.trials),
			Allowed: fmt.Sprintf("%d to %d, or 0 for no ranges", spread.MinTrials, spread.MaxTrials), Hint: fmt.Sprintf("leave it out for %d", DefaultTrials)}}
	}
	word := o.Units
	if word == "" {
		word = s.boat.units()
	}
	if word == "" {
		return s, nil
	}
	units, err := quantity.ParseSystem(word)
	if err != nil {
		return nil, problem.List{{Where: "/units", What: fmt.Sprintf("%q is no choice of units", word), Allowed: "metric, us, both"}}
	}
	s.units = units
	return s, nil
}

// Run runs one calculation on an input written as a JSON object and returns
// its sheet. The error, when there is one, is a problem.List with every
// fault at its place.
func Run(id string, input []byte, o Options) (*sheet.Sheet, error) {
	typed, problems := contract.Decode(input)
	if len(problems) > 0 {
		return nil, problems
	}
	return runDecoded(id, typed, o)
}

func runDecoded(id string, typed any, o Options) (*sheet.Sheet, error) {
	s, err := o.session()
	if err != nil {
		return nil, err
	}
	c, err := find(id)
	if err != nil {
		return nil, err
	}
	object, ok := typed.(map[string]any)
	if !ok {
		return nil, problem.List{{What: "the input is not an object", Allowed: `an object such as {"name": "value"}`, Hint: "put the inputs between braces"}}
	}
	out, _, problems := s.run(c, object)
	if len(problems) > 0 {
		return nil, problems.Sorted()
	}
	return out.sheet, nil
}

// earlier is the outcome of another calculation on the boat alone, or nil
// when the boat does not allow it.
func (s *session) earlier(id string) *outcome {
	if out, done := s.done[id]; done {
		return out
	}
	c, err := find(id)
	if err != nil {
		return nil
	}
	out, _, _ := s.outcome(c)
	return out
}

// outcome works a calculation out on the boat alone and keeps the answer.
func (s *session) outcome(c calculation) (*outcome, []*contract.Property, problem.List) {
	if out := s.done[c.id]; out != nil {
		return out, nil, nil
	}
	s.done[c.id] = nil // while it runs, it cannot lead to itself
	out, missing, problems := s.run(c, map[string]any{})
	s.done[c.id] = out
	return out, missing, problems
}

// run works one calculation out. missing names the inputs that no origin
// gave, when that is all that is wrong.
func (s *session) run(c calculation, typed map[string]any) (out *outcome, missing []*contract.Property, problems problem.List) {
	k, err := c.form()
	if err != nil {
		return nil, nil, problem.List{{What: err.Error()}}
	}
	call := c.open(k, s)
	room := scratches.Get().(*scratch)
	f := s.fill(k, call, typed, room)
	defer room.takeBack(f)
	if len(f.problems) > 0 {
		return nil, f.missing, f.problems
	}
	s.kept = nil
	if err := call.run(); err != nil {
		var l lacking
		if errors.As(err, &l) {
			return nil, []*contract.Property{k.Input.Child(l.input)}, problem.List{l.problem()}
		}
		var list problem.List
		if !errors.As(err, &list) {
			list = problem.List{{What: err.Error()}}
		}
		f.blame(list)
		return nil, f.notGiven(list), f.problems
	}
	w := &writing{filling: f}
	if problems := w.results(); len(problems) > 0 {
		return nil, nil, problems
	}
	w.doubts()
	space := spaces.Get().(*spread.Workspace)
	defer spaces.Put(space) // the sheet keeps nothing of it
	w.ranges(space)
	w.dropUntried()
	return w.write(), nil, nil
}

// lacking is the error of a calculation that misses an input which it would
// have taken from elsewhere too.
type lacking struct{ input, what, hint string }

func (l lacking) problem() problem.Problem {
	return problem.Problem{Where: "/" + l.input, What: l.what, Hint: l.hint}
}

// Error says what is missing.
func (l lacking) Error() string { return l.what }

// measure is one result of a run.
type measure struct {
	property *contract.Property
	number   *float64 // nil for words
	si       float64
	word     string
	text     string
	span     *spread.Range // nil when it has no range
	low      float64       // of its 95 % interval, extended to the estimate where that lies outside
	high     float64
	doubtful []*contract.Property // figures of the least sure kind that it rests on
}

// results reads the typed output. A number that is not a number was not asked
// for, and what never comes is no figure; an infinite one is a fault.
func (w *writing) results() problem.List {
	var problems problem.List
	w.measures = w.room.measures
	for _, p := range w.form.Result.Properties {
		from, ok := w.form.results.field(w.call.output, p)
		if !ok {
			continue
		}
		if p.Items != nil {
			w.readTable(p, from, &problems)
			continue
		}
		if m := w.measured(p, from, &problems); m.text != "" {
			w.measures = append(w.measures, m)
		}
	}
	w.room.measures = w.measures
	w.index()
	return problems
}

// index notes which result of the run is which property's.
func (w *writing) index() {
	w.room.results = append(w.room.results[:0], make([]*measure, len(w.form.Result.Properties))...)
	for i := range w.measures {
		w.room.results[w.measures[i].property.Index] = &w.measures[i]
	}
}

// measured reads one field of the typed output; its text stays empty where
// it was not asked for.
func (w *writing) measured(p *contract.Property, from reflect.Value, problems *problem.List) measure {
	m := measure{property: p}
	if n := number(from); n != nil {
		m.number, m.si = n, *n
		if math.IsInf(m.si, 0) {
			problems.Add("", p.Title+" grows without bound", "", "look for a zero or a slip of the unit among the inputs")
		}
		if !math.IsNaN(m.si) && !neverComes(p, m.si) {
			m.text = w.show(p, m.si)
		}
	} else if from.CanInt() {
		m.si = float64(from.Int())
		m.text = itoa(int(from.Int()))
	} else {
		m.word = fmt.Sprint(from.Interface())
		m.text = m.word
	}
	return m
}

// neverComes tells whether a result stands for what does not come.
func neverComes(p *contract.Property, si float64) bool {
	return p.InfiniteFrom != nil && si >= *p.InfiniteFrom
}

// doubts finds, for every result, the figures of the least sure kind that it
// rests on: each such figure is moved by a hundredth, and what moves with it
// by more than a ten-thousandth rests on it.
func (w *writing) doubts() {
	w.roomForDoubts()
	for i, p := range w.form.Input.Properties {
		if k := &w.inputs[i]; !k.is || k.sure {
			continue
		}
		to, ok := w.form.inputs.field(w.call.input, p)
		if !ok || number(to) == nil {
			continue
		}
		n := number(to)
		was := *n
		if *n *= 1.01; was == 0 {
			*n = 1e-3
		}
		failed := w.call.run() != nil
		for j := range w.measures {
			m := &w.measures[j]
			if m.number != nil && (failed || math.Abs(*m.number-m.si) > 1e-4*math.Abs(m.si)) {
				m.doubtful = append(m.doubtful, p)
			}
		}
		*n = was
	}
	if w.call.run() != nil { // it ran on these very numbers before
		panic("marinecalc: a calculation gives another answer the second time")
	}
}

// roomForDoubts gives every result room for all figures it may rest on.
func (w *writing) roomForDoubts() {
	unsure := 0
	for i := range w.inputs {
		if w.inputs[i].is && !w.inputs[i].sure {
			unsure++
		}
	}
	room := slices.Grow(w.room.doubtful[:0], unsure*len(w.measures))[:unsure*len(w.measures)]
	w.room.doubtful = room
	for j := range w.measures {
		w.measures[j].doubtful = room[j*unsure : j*unsure : (j+1)*unsure]
	}
}

// ranges runs the trials: every number with a spread is drawn, the typed
// function is run, every numeric result is kept.
func (w *writing) ranges(space *spread.Workspace) {
	if w.session.trials < 0 || len(w.leaves) == 0 {
		return
	}
	factors := make([]spread.Factor, len(w.leaves))
	for i, l := range w.leaves {
		factors[i] = l.factor
	}
	outputs, explained := w.numbers()
	if len(outputs) == 0 {
		return
	}
	// Trials take most of the time: what they touch is looked up beforehand.
	to, from := make([]*float64, len(w.leaves)), make([]*float64, len(outputs))
	for i, l := range w.leaves {
		to[i] = l.to
	}
	var directions []int
	for i, m := range outputs {
		from[i] = m.number
		if k := m.property.Kind; k != nil && k.Name == "direction" {
			directions = append(directions, i)
		}
	}
	run := w.call.run
	model := spread.Model{Factors: to, Results: from, Run: func() bool { return run() == nil }}
	if len(directions) > 0 {
		model.Run = func() bool {
			err := run()
			for _, i := range directions {
				*from[i] = nearest(*from[i], outputs[i].si)
			}
			return err == nil
		}
	}
	out, err := space.Run(factors, spread.Plan{Trials: w.session.trials, Seed: w.session.seed, Shares: explained}, model)
	for _, l := range w.leaves {
		*l.to = l.factor.Estimate
	}
	if w.call.run() != nil || err != nil || !out.Usable {
		w.notes = append(w.notes, "No ranges: too many of the trial values inside the stated accuracies lie where this calculation does not apply.")
		return
	}
	w.trials = out.Trials
	for i, m := range outputs {
		// The trials of a size lie above it where it is near nothing; an
		// interval that excludes the estimate would deny what was read.
		m.span, m.low, m.high = &out.Results[i], min(out.Results[i].Low, m.si), max(out.Results[i].High, m.si)
		if m.property.Chance {
			m.si = m.span.Mean
			m.text, m.span = w.show(m.property, m.si), nil
		}
	}
}

// dropUntried leaves out the chances, which nobody knows without trials.
func (w *writing) dropUntried() {
	if w.trials == 0 {
		w.measures = slices.DeleteFunc(w.measures, func(m measure) bool { return m.property.Chance })
		w.index()
	}
}

// numbers lists every numeric result, first those whose spread is explained:
// the main results and those that a limit is on. Those in tables come last.
func (w *writing) numbers() (list []*measure, explained int) {
	limited := map[string]bool{}
	for _, l := range w.session.book.Limits(w.form.ID) {
		limited[l.On] = true
	}
	add := func(measures []measure, wanted func(*contract.Property) bool) {
		for i := range measures {
			if m := &measures[i]; m.number != nil && m.text != "" && wanted(m.property) {
				list = append(list, m)
			}
		}
	}
	explain := func(p *contract.Property) bool { return p.Level == contract.Main || limited[p.Name] }
	add(w.measures, explain)
	explained = len(list)
	add(w.measures, func(p *contract.Property) bool { return !explain(p) })
	for _, t := range w.tables {
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

// find returns the calculation of that id.
func find(id string) (calculation, error) {
	for _, c := range catalogue {
		if c.id == id {
			return c, nil
		}
	}
	ids := make([]string, len(catalogue))
	for i, c := range catalogue {
		ids[i] = c.id
	}
	hint := ""
	if best, ok := contract.Closest(id, ids); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	return calculation{}, problem.List{{Where: "/calculation", What: fmt.Sprintf("there is no calculation %q", id), Allowed: strings.Join(ids, ", "), Hint: hint}}
}

// Overlay lays rule files over the standard rules, one after the other. The
// error is Problems; their places begin with the number of the file.
func Overlay(files ...[]byte) (*rules.Book, error) {
	book := rules.Standard()
	var problems problem.List
	for i, text := range files {
		next, faults := book.Overlay(text)
		for _, f := range faults {
			f.Where = fmt.Sprintf("/%d%s", i, f.Where)
			problems = append(problems, f)
		}
		if len(faults) == 0 {
			book = next
		}
	}
	return book, problems.Err()
}
