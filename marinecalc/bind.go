package marinecalc

import (
	"reflect"
	"sync"

	"example.org/driveline/marinecalc/sheet"
)

// calculation binds a name and its schema to a typed function.
type calculation struct {
	id   string
	form func() (*form, error) // read once, when first needed
	open func(*form, *session) *call
}

// call is one use of a typed function. Its input and output stay where they
// are, so that trials write and read them through pointers.
type call struct {
	input, output reflect.Value
	run           func() error
	draw          func(brush) []sheet.Drawing
}

// bind is the registration line of a calculation.
func bind[In, Out any](id string, compute func(In) (Out, error)) calculation {
	return bindDrawn(id, compute, nil)
}

// bindDrawn binds a calculation that also draws.
func bindDrawn[In, Out any](id string, compute func(In) (Out, error), draw func(In, Out, brush) []sheet.Drawing) calculation {
	return bindOpened(id, func(*session) opened[In, Out] { return opened[In, Out]{compute, draw} })
}

// bindInSession binds a calculation of the job around the arithmetic, which
// needs rule data, the boat or other sheets. draw may be nil.
func bindInSession[In, Out any](id string, compute func(*session, In) (Out, error), draw func(In, Out, brush) []sheet.Drawing) calculation {
	return bindOpened(id, func(s *session) opened[In, Out] {
		return opened[In, Out]{func(in In) (Out, error) { return compute(s, in) }, draw}
	})
}

// opened is the typed function for one run, and how its answer is drawn, or
// nil. The first call of compute is on the estimates, those after it are
// trials: what must stay between them lives in its closure.
type opened[In, Out any] struct {
	compute func(In) (Out, error)
	draw    func(In, Out, brush) []sheet.Drawing
}

// bindOpened binds what each run opens anew. Where nothing of the session is
// needed compute is the function itself, since every step between costs in
// every trial.
func bindOpened[In, Out any](id string, open func(*session) opened[In, Out]) calculation {
	return calculation{
		id: id,
		form: sync.OnceValues(func() (*form, error) {
			return bindForm(id, reflect.TypeFor[In](), reflect.TypeFor[Out]())
		}),
		open: func(f *form, s *session) *call {
			var in In
			var out Out
			c := &call{input: reflect.ValueOf(&in).Elem(), output: reflect.ValueOf(&out).Elem()}
			f.inputs.clear(c.input)
			o := open(s)
			c.run = func() (err error) {
				out, err = o.compute(in)
				return err
			}
			if o.draw != nil {
				c.draw = func(b brush) []sheet.Drawing { return o.draw(in, out, b) }
			}
			return c
		},
	}
}
