package calc

import (
	"reflect"
	"sync"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// Calculation binds a name and its schema to a typed function.
type Calculation struct {
	ID   string
	Form func() (*binding.Form, error) // read once, when first needed
	open func(*binding.Form, *Session) *call
}

// call is one use of a typed function, and what is made of its answer.
type call struct {
	binding.Call
	draw    func(picture.Brush) []sheet.Drawing
	hazards func() []string
	work    func() []string
}

// Hazardous is a result that proposes work and names what can hurt in it, by
// the ids of cautions. Its sheet shows those beside the cautions that the
// calculation always has; what belongs to work that is not proposed stays with
// that work.
type Hazardous interface{ Hazards() []string }

// Choosing is a result that chooses or weighs work: the ids of the remedies, in
// its order.
type Choosing interface{ Procedures() []string }

// Bind is the registration line of a calculation.
func Bind[In, Out any](id string, compute func(In) (Out, error)) Calculation {
	return BindDrawn(id, compute, nil)
}

// BindDrawn binds a calculation that also draws.
func BindDrawn[In, Out any](id string, compute func(In) (Out, error), draw func(In, Out, picture.Brush) []sheet.Drawing) Calculation {
	return BindPerRun(id, func(*Session) PerRun[In, Out] { return PerRun[In, Out]{Compute: compute, Draw: draw} })
}

// BindInSession binds a calculation of the job around the arithmetic, which
// needs rule data, the boat or other sheets. draw may be nil.
func BindInSession[In, Out any](id string, compute func(*Session, In) (Out, error), draw func(In, Out, picture.Brush) []sheet.Drawing) Calculation {
	return BindPerRun(id, func(s *Session) PerRun[In, Out] {
		return PerRun[In, Out]{Compute: func(in In) (Out, error) { return compute(s, in) }, Draw: draw}
	})
}

// PerRun is the typed function for one run, and how its answer is drawn, or
// nil. The first call of compute is on the estimates, those after it are
// trials: what must stay between them lives in its closure.
type PerRun[In, Out any] struct {
	Compute func(In) (Out, error)
	Draw    func(In, Out, picture.Brush) []sheet.Drawing
	Parts   []Part[In, Out] // for trials that look at few results
}

// Part does what compute does for some of the results, in less time.
type Part[In, Out any] struct {
	Gives   func(result string) bool
	Compute func(In) (Out, error)
}

// BindPerRun binds what each run opens anew. Where nothing of the session is
// needed compute is the function itself, since every step between costs in
// every trial.
func BindPerRun[In, Out any](id string, open func(*Session) PerRun[In, Out]) Calculation {
	return Calculation{
		ID: id,
		Form: sync.OnceValues(func() (*binding.Form, error) {
			return binding.Bind(id, reflect.TypeFor[In](), reflect.TypeFor[Out]())
		}),
		open: func(f *binding.Form, s *Session) *call {
			var in In
			var out Out
			c := &call{Call: binding.Call{Input: reflect.ValueOf(&in).Elem(), Output: reflect.ValueOf(&out).Elem()}}
			f.Inputs.Clear(c.Input)
			o := open(s)
			c.Run = func() (err error) {
				out, err = o.Compute(in)
				return err
			}
			for _, p := range o.Parts {
				c.Parts = append(c.Parts, binding.Part{Gives: p.Gives, Run: func() (err error) {
					out, err = p.Compute(in)
					return err
				}})
			}
			if _, ok := any(out).(Hazardous); ok {
				c.hazards = func() []string { return any(out).(Hazardous).Hazards() }
			}
			if _, ok := any(out).(Choosing); ok {
				c.work = func() []string { return any(out).(Choosing).Procedures() }
			}
			if o.Draw != nil {
				c.draw = func(b picture.Brush) []sheet.Drawing { return o.Draw(in, out, b) }
			}
			return c
		},
	}
}
