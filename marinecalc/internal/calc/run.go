package calc

import (
	"errors"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
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
	r := &run{in: in, notes: in.notes}
	if problems := r.results(); len(problems) > 0 {
		return nil, nil, problems
	}
	if problems := r.traceUnverified(); len(problems) > 0 {
		return nil, nil, problems
	}
	r.compareWays()
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
