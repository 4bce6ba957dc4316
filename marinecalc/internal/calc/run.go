package calc

import (
	"errors"
	"sync"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// Run works one calculation out. missing names the inputs that no origin
// gave, when that is all that is wrong. A panic of it is a problem of the kind
// failed: it takes down neither the host, on whatever goroutine, nor other sheets.
func (s *Session) Run(c Calculation, typed map[string]any) (out *inputs.Outcome, missing []*contract.Property, problems problem.List) {
	was := s.inHand
	defer func() {
		s.inHand = was
		if thrown := recover(); thrown != nil {
			out, missing, problems = nil, nil, problem.Panicked(c.ID, thrown)
		}
	}()
	if stopped := s.Cancelled(); len(stopped) > 0 {
		return nil, nil, stopped
	}
	k, err := c.Form()
	if err != nil {
		return nil, nil, problem.List{{What: err.Error()}}
	}
	call := c.open(k, s)
	buf := scratches.Get().(*scratch)
	in := inputs.Fill(&s.Request, k, &call.Call, typed, &buf.inputs)
	out, missing, problems = s.runOn(k, call, in, buf)
	buf.takeBack(in) // not after a panic, which may have left it halfway
	return out, missing, problems
}

// runOn is Run on inputs that were gathered, with memory to work in.
func (s *Session) runOn(k *binding.Form, call *call, in *inputs.Inputs, buf *scratch) (out *inputs.Outcome, missing []*contract.Property, problems problem.List) {
	if len(in.Problems) > 0 {
		if stopped := s.Cancelled(); len(stopped) > 0 { // then earlier results may be all that is missing
			return nil, nil, stopped
		}
		return nil, in.Missing, in.Problems
	}
	s.inHand = in
	if err := call.Run(); err != nil {
		var l Lacking
		if errors.As(err, &l) {
			return nil, []*contract.Property{k.Input.Child(l.Input)}, problem.List{l.problem()}
		}
		list := problem.Of(err)
		in.Relocate(list)
		return nil, in.NotGiven(list), in.Problems
	}
	r := &results.Run{In: in, Buf: &buf.results, Notes: in.Notes}
	if problems := r.Read(); len(problems) > 0 {
		return nil, nil, problems
	}
	if problems := r.TraceUnverified(); len(problems) > 0 {
		return nil, nil, problems
	}
	j := verdict.Against(r, &buf.verdict)
	space := spread.Borrow()
	j.TryOut(space)
	if problems = s.Cancelled(); len(problems) == 0 {
		r.DropUntried()
		w := &writing{Judgement: j, session: s, call: call, buf: buf}
		out = w.write()
	}
	space.Return() // the sheet keeps nothing of it
	return out, nil, problems
}

// brackets finds the brackets of results of a calculation on the boat alone,
// each only when asked for, and as a rule once.
func (s *Session) brackets(c Calculation, e *entry) func(string) *inputs.Bracket {
	return func(result string) *inputs.Bracket {
		if b, done := e.brackets.Load(result); done {
			return b.(*inputs.Bracket)
		}
		found := s.bracket(c, result)
		for name, b := range found {
			e.brackets.Store(name, b)
		}
		e.brackets.Store(result, found[result])
		return found[result]
	}
}

// bracket runs the calculation again, as far as the bracket of one of its
// results needs it, and gives those that come with it; none where that has none.
func (s *Session) bracket(c Calculation, result string) map[string]*inputs.Bracket {
	k, err := c.Form()
	if err != nil {
		return nil
	}
	call := c.open(k, s)
	buf := scratches.Get().(*scratch)
	in := inputs.Fill(&s.Request, k, &call.Call, map[string]any{}, &buf.inputs)
	was := s.inHand
	s.inHand = in
	var found map[string]*inputs.Bracket
	if len(in.Problems) == 0 && call.Run() == nil {
		if r := (&results.Run{In: in, Buf: &buf.results}); len(r.Read()) == 0 && len(r.TraceUnverified()) == 0 {
			found = verdict.Against(r, &buf.verdict).Brackets(result)
		}
	}
	s.inHand = was
	buf.takeBack(in)
	return found
}

// scratch is the memory that a run works in until its sheet is written. The
// sheet keeps nothing of it, so that the next run can have it.
type scratch struct {
	inputs  inputs.Buffer
	results results.Buffer
	verdict verdict.Buffer
	advice  []*rules.Advice // that fits
	chosen  []*rules.Advice // of the advice
	sources []string
	formula []byte
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// takeBack takes the memory back. What was in it stays until the next run or
// the pool drops it: clearing it here took a twentieth of a plain sheet.
func (b *scratch) takeBack(in *inputs.Inputs) {
	b.inputs.TakeBack(in)
	b.results.Empty()
	b.verdict.Clear()
	b.sources, b.advice, b.chosen = b.sources[:0], b.advice[:0], b.chosen[:0]
	scratches.Put(b)
}
