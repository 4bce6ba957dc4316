package calc

import (
	"errors"
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// Run works one calculation out. missing names the inputs that no origin
// gave, when that is all that is wrong.
func (s *Session) Run(c Calculation, typed map[string]any) (out *Outcome, missing []*contract.Property, problems problem.List) {
	if stopped := s.Cancelled(); len(stopped) > 0 {
		return nil, nil, stopped
	}
	k, err := c.Form()
	if err != nil {
		return nil, nil, problem.List{{What: err.Error()}}
	}
	call := c.open(k, s)
	buf := scratches.Get().(*scratch)
	in := s.fill(k, call, typed, buf)
	defer buf.takeBack(in)
	if len(in.problems) > 0 {
		if stopped := s.Cancelled(); len(stopped) > 0 { // then earlier results may be all that is missing
			return nil, nil, stopped
		}
		return nil, in.missing, in.problems
	}
	was := s.inHand
	s.inHand = in
	defer func() { s.inHand = was }()
	if err := call.run(); err != nil {
		var l Lacking
		if errors.As(err, &l) {
			return nil, []*contract.Property{k.Input.Child(l.Input)}, problem.List{l.problem()}
		}
		list := problem.Of(err)
		in.relocate(list)
		return nil, in.notGiven(list), in.problems
	}
	r := &run{in: in, ruled: s.ruled(k), notes: in.notes}
	if problems := r.results(); len(problems) > 0 {
		return nil, nil, problems
	}
	if problems := r.traceUnverified(); len(problems) > 0 {
		return nil, nil, problems
	}
	r.compareWays()
	r.compareOrders()
	r.holdLimits()
	space := spread.Borrow()
	defer space.Return() // the sheet keeps nothing of it
	r.ranges(space)
	if stopped := s.Cancelled(); len(stopped) > 0 {
		return nil, nil, stopped
	}
	r.dropUntried()
	return r.write(), nil, nil
}

// scratch is the memory that a run works in until its sheet is written. The
// sheet keeps nothing of it, so that the next run can have it.
type scratch struct {
	inputs     []known
	variates   []variate
	measures   []measure
	results    []*measure           // by the property's index
	unverified []*contract.Property // of the results, one after the other
	limits     []held
	advice     []*rules.Advice // that fits
	chosen     []*rules.Advice // of the advice
	sources    []string
	formula    []byte
	figures    []figure        // behind a verdict
	factors    []spread.Factor // of the trials at one end of a bracket
	places     []*float64
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// lend gives the inputs of a run their memory.
func (b *scratch) lend(in *inputs, inputs int) {
	if cap(b.inputs) < inputs {
		b.inputs = make([]known, inputs)
	}
	in.buf, in.values, in.variates = b, b.inputs[:inputs], b.variates[:0]
	clear(in.values)
}

// takeBack takes the memory back. What was in it stays until the next run or
// the pool drops it: clearing it here took a twentieth of a plain sheet.
func (b *scratch) takeBack(in *inputs) {
	b.variates, b.measures, b.results = in.variates[:0], b.measures[:0], b.results[:0]
	b.limits, b.sources = b.limits[:0], b.sources[:0]
	b.advice, b.chosen = b.advice[:0], b.chosen[:0]
	scratches.Put(b)
}
