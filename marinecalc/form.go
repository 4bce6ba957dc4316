package marinecalc

import (
	"math"
	"reflect"
	"unicode"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// form is the contract of a calculation bound to its typed function: where in
// the structs each property lies, and the words that every sheet has of it.
type form struct {
	*contract.Calculation
	inputs, results *shape
}

// bindForm binds the contract of that id to the structs of its function.
func bindForm(id string, input, output reflect.Type) (*form, error) {
	c, err := contract.OpenCalculation(id)
	if err != nil {
		return nil, err
	}
	return &form{Calculation: c, inputs: shapeOf(c.Input, input), results: shapeOf(c.Result, output)}, nil
}

// shape is how the properties of an object lie in a struct.
type shape struct {
	places []place // by the property's index
	unset  []int   // the fields for which 0 has a meaning of its own, with the tag `unset:"NaN"`
}

// place is what is known of one property beforehand.
type place struct {
	field int    // of the struct; -1 where it has none, as a pick that only fills other inputs
	entry *shape // of the entries of a list, or nil
	term  *sheet.Term
	way   *sheet.Way // of a result
}

func shapeOf(p *contract.Property, structure reflect.Type) *shape {
	fields := make(map[string]int, structure.NumField())
	s := &shape{places: make([]place, len(p.Properties))}
	for i := range structure.NumField() {
		f := structure.Field(i)
		fields[jsonName(f.Name)] = i
		if f.Tag.Get("unset") == "NaN" {
			s.unset = append(s.unset, i)
		}
	}
	for i, child := range p.Properties {
		at := place{field: -1, term: termOf(child)}
		if child.IsResult {
			at.way = wayOf(child)
		}
		if n, ok := fields[child.Name]; ok {
			at.field = n
			if child.Items != nil {
				at.entry = shapeOf(child.Items, structure.Field(n).Type.Elem())
			}
		}
		s.places[i] = at
	}
	return s
}

func termOf(p *contract.Property) *sheet.Term {
	t := &sheet.Term{Name: p.Name, Title: p.Title, Symbol: p.Symbol, Level: string(p.Level)}
	if p.Kind != nil {
		t.Kind = p.Kind.Name
	}
	if p.IsResult {
		t.Help = p.Description
	}
	return t
}

func wayOf(p *contract.Property) *sheet.Way {
	return &sheet.Way{Result: p.Name, Formula: p.Formula, Method: p.Method, Source: p.Source, Basis: p.Basis}
}

// field returns the field in which a property lies.
func (s *shape) field(structure reflect.Value, p *contract.Property) (reflect.Value, bool) {
	n := s.places[p.Index].field
	if n < 0 {
		return reflect.Value{}, false
	}
	return structure.Field(n), true
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
