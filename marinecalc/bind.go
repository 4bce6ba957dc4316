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
	return bindOpened(id, func(*session) func(In) (Out, error) { return compute }, draw)
}

// bindInSession binds a calculation of the job around the arithmetic, which
// needs rule data, the boat or other sheets. draw may be nil.
func bindInSession[In, Out any](id string, compute func(*session, In) (Out, error), draw func(In, Out, brush) []sheet.Drawing) calculation {
	return bindOpened(id, func(s *session) func(In) (Out, error) {
		return func(in In) (Out, error) { return compute(s, in) }
	}, draw)
}

// bindOpened binds what a session opens: the function itself where it needs
// nothing of the session, since every step between costs in every trial.
func bindOpened[In, Out any](id string, open func(*session) func(In) (Out, error), draw func(In, Out, brush) []sheet.Drawing) calculation {
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
			compute := open(s)
			c.run = func() (err error) {
				out, err = compute(in)
				return err
			}
			if draw != nil {
				c.draw = func(b brush) []sheet.Drawing { return draw(in, out, b) }
			}
			return c
		},
	}
}
