// Package binding ties the contract of a calculation to its typed function:
// where in the structs each property lies, and the words that every sheet has
// of it.
package binding

import (
	"math"
	"reflect"
	"slices"
	"unicode"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// Form is the contract of a calculation bound to its typed function.
type Form struct {
	*contract.Calculation
	Inputs, Results *Shape
	named           map[string]named
}

// named is what goes by a name, either of which may be nil.
type named struct{ input, result *contract.Property }

// Named is the input and the result of that name, or nil.
func (f *Form) Named(name string) (input, result *contract.Property) {
	n := f.named[name]
	return n.input, n.result
}

// Bind binds the contract of that id to the structs of its function.
func Bind(id string, input, output reflect.Type) (*Form, error) {
	c, err := contract.OpenCalculation(id)
	if err != nil {
		return nil, err
	}
	f := &Form{Calculation: c, Inputs: shapeOf(c.Input, input), Results: shapeOf(c.Result, output), named: map[string]named{}}
	for _, p := range c.Input.Properties {
		f.named[p.Name] = named{input: p}
	}
	for _, p := range c.Result.Properties {
		f.named[p.Name] = named{input: f.named[p.Name].input, result: p}
	}
	return f, nil
}

// Call is one use of a typed function. Its input and output stay where they
// are, so that trials write and read them through pointers.
type Call struct {
	Input, Output reflect.Value
	Run           func() error
	Parts         []Part
}

// Part is a run that gives some of the results alone, in less time.
type Part struct {
	Gives func(result string) bool
	Run   func() error
}

// For is the run that gives these results at least.
func (c *Call) For(results []string) func() error {
	for _, p := range c.Parts {
		if !slices.ContainsFunc(results, func(r string) bool { return !p.Gives(r) }) {
			return p.Run
		}
	}
	return c.Run
}

// Shape is how the properties of an object lie in a struct.
type Shape struct {
	Type   reflect.Type // the struct
	Places []Place      // by the property's index
	spread []companion  // of the properties whose uncertainty has a field too
	sides  []companion  // of those whose range has a field for both its sides
	read   []companion  // of those of which a field tells whether somebody read them
	unset  []int        // the fields for which 0 has a meaning of its own, with the tag `unset:"NaN"`
}

// companion is the field that takes the standard uncertainty of a property,
// with the tag `spreadOf:"name"`, or how far its 95 % range goes below and above
// it, a struct of these two, with `sidesOf:"name"`, or whether it was read on this boat
// or typed and is not only usual, a bool, with `readOf:"name"`.
type companion struct{ property, field int }

// Place is what is known of one property beforehand.
type Place struct {
	field int    // of the struct; -1 where it has none, as a pick that only fills other inputs
	Entry *Shape // of the entries of a list, or nil
	Term  sheet.Term
	Way   sheet.Way // of a result
}

func shapeOf(p *contract.Property, structure reflect.Type) *Shape {
	fields := make(map[string]int, structure.NumField())
	s := &Shape{Type: structure, Places: make([]Place, len(p.Properties))}
	for i := range structure.NumField() {
		f := structure.Field(i)
		fields[JSONName(f.Name)] = i
		if f.Tag.Get("unset") == "NaN" {
			s.unset = append(s.unset, i)
		}
	}
	for i := range structure.NumField() {
		if of := p.Child(structure.Field(i).Tag.Get("spreadOf")); of != nil {
			s.spread = append(s.spread, companion{of.Index, i})
		}
		if of := p.Child(structure.Field(i).Tag.Get("sidesOf")); of != nil {
			s.sides = append(s.sides, companion{of.Index, i})
		}
		if of := p.Child(structure.Field(i).Tag.Get("readOf")); of != nil {
			s.read = append(s.read, companion{of.Index, i})
		}
	}
	for i, child := range p.Properties {
		at := Place{field: -1, Term: termOf(child)}
		if child.IsResult {
			at.Way = wayOf(child)
		}
		if n, ok := fields[child.Name]; ok {
			at.field = n
			if child.Items != nil {
				at.Entry = shapeOf(child.Items, structure.Field(n).Type.Elem())
			}
		}
		s.Places[i] = at
	}
	return s
}

func termOf(p *contract.Property) sheet.Term {
	t := sheet.Term{Name: p.Name, Title: p.Title, Symbol: p.Symbol, Level: p.Level}
	if p.Kind != nil {
		t.Kind = sheet.Kind(p.Kind.Name)
	}
	if p.IsResult {
		t.Help = p.Description
	}
	return t
}

func wayOf(p *contract.Property) sheet.Way {
	return sheet.Way{Result: p.Name, Formula: contract.AsPrinted(p.Formula), Method: p.Method, Source: p.Source, Basis: p.Basis}
}

// Field returns the field in which a property lies.
func (s *Shape) Field(structure reflect.Value, p *contract.Property) (reflect.Value, bool) {
	n := s.Places[p.Index].field
	if n < 0 {
		return reflect.Value{}, false
	}
	return structure.Field(n), true
}

// Spread returns the field that takes the standard uncertainty of a property,
// or nil where the function does not ask for it.
func (s *Shape) Spread(structure reflect.Value, p *contract.Property) *float64 {
	for _, c := range s.spread {
		if c.property == p.Index {
			return Number(structure.Field(c.field))
		}
	}
	return nil
}

// Sides returns the fields that take how far the range of a property goes below
// and above it, or nil where the function does not ask for them.
func (s *Shape) Sides(structure reflect.Value, p *contract.Property) (below, above *float64) {
	for _, c := range s.sides {
		if c.property == p.Index {
			f := structure.Field(c.field)
			return Number(f.Field(0)), Number(f.Field(1))
		}
	}
	return nil, nil
}

// Read notes that a property was read, and is not only usual, where the function
// asks for that.
func (s *Shape) Read(structure reflect.Value, p *contract.Property) {
	for _, c := range s.read {
		if c.property == p.Index {
			structure.Field(c.field).SetBool(true)
		}
	}
}

// Clear marks the inputs for which 0 has a meaning of its own as not given.
func (s *Shape) Clear(structure reflect.Value) {
	for _, i := range s.unset {
		structure.Field(i).SetFloat(math.NaN())
	}
}

// NotGiven is what an input that is a number holds where nobody gave it.
func (s *Shape) NotGiven(p *contract.Property) float64 {
	if slices.Contains(s.unset, s.Places[p.Index].field) {
		return math.NaN()
	}
	return 0
}

// JSONName writes a Go field name as JSON has it.
func JSONName(goName string) string {
	r := []rune(goName)
	r[0] = unicode.ToLower(r[0])
	return string(r)
}

// Number points to a float field, or is nil where the field is none.
func Number(f reflect.Value) *float64 {
	if f.Kind() != reflect.Float64 {
		return nil
	}
	return (*float64)(f.Addr().UnsafePointer()) // every unit type is a plain float64
}
