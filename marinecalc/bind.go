package marinecalc

import (
	"math"
	"reflect"
	"sync"
	"unicode"

	"example.org/driveline/marinecalc/contract"
	"example.org/driveline/marinecalc/sheet"
)

// calculation binds a name and its schema to a typed function.
type calculation struct {
	id       string
	contract func() (*contract.Calculation, error) // read once, when first needed
	open     func(*session) *call
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
		id:       id,
		contract: sync.OnceValues(func() (*contract.Calculation, error) { return contract.OpenCalculation(id) }),
		open: func(s *session) *call {
			var in In
			var out Out
			c := &call{input: reflect.ValueOf(&in).Elem(), output: reflect.ValueOf(&out).Elem()}
			shapeOf(c.input.Type()).clear(c.input)
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

// shape is what is known of a struct type.
type shape struct {
	byName map[string]int // the index of the field of each JSON name: "ShaftDiameter" is "shaftDiameter"
	unset  []int          // the fields for which 0 has a meaning of its own, with the tag `unset:"NaN"`
}

var shapesOf sync.Map // reflect.Type -> *shape

func shapeOf(t reflect.Type) *shape {
	if known, ok := shapesOf.Load(t); ok {
		return known.(*shape)
	}
	s := &shape{byName: make(map[string]int, t.NumField())}
	for i := range t.NumField() {
		f := t.Field(i)
		s.byName[jsonName(f.Name)] = i
		if f.Tag.Get("unset") == "NaN" {
			s.unset = append(s.unset, i)
		}
	}
	known, _ := shapesOf.LoadOrStore(t, s)
	return known.(*shape)
}

// field returns a struct's field of a JSON name.
func (s *shape) field(structure reflect.Value, name string) (reflect.Value, bool) {
	i, ok := s.byName[name]
	if !ok {
		return reflect.Value{}, false
	}
	return structure.Field(i), true
}

// clear marks the inputs for which 0 has a meaning of its own as not given.
func (s *shape) clear(structure reflect.Value) {
	for _, i := range s.unset {
		structure.Field(i).SetFloat(math.NaN())
	}
}

// jsonName writes a Go field name as JSON has it.
func jsonName(goName string) string {
	r := []rune(goName)
	r[0] = unicode.ToLower(r[0])
	return string(r)
}

// number points to a float field, or is nil where the field is none.
func number(f reflect.Value) *float64 {
	if f.Kind() != reflect.Float64 {
		return nil
	}
	return (*float64)(f.Addr().UnsafePointer()) // every unit type is a plain float64
}
