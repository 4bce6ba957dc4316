package calc

import (
	"fmt"
	"math"
	"reflect"
	"slices"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/sheet"
)

// read gives every gathered value its number or word.
func (in *inputs) read() {
	for i, p := range in.form.Input.Properties {
		k := &in.values[i]
		if !k.known || k.raw == nil {
			continue
		}
		in.readValue(p, k)
	}
}

func (in *inputs) readValue(p *contract.Property, k *known) {
	switch v := k.raw.(type) {
	case []any:
		if k.text = fmt.Sprintf("%d entries", len(v)); len(v) == 1 {
			k.text = "1 entry"
		}
	case bool:
		k.text = map[bool]string{true: "yes", false: "no"}[v]
		k.word = k.text
	case string:
		if p.Kind == nil {
			k.word, k.text = v, v
			if i := slices.Index(p.Enum, v); i >= 0 && i < len(p.EnumTitles) {
				k.text = p.EnumTitles[i]
			}
			return
		}
		in.readNumber(p, k)
	default:
		in.readNumber(p, k)
	}
}

func (in *inputs) readNumber(p *contract.Property, k *known) {
	si, accuracy, err := Numeric(p, k.raw)
	if err != nil {
		in.problems.Add(k.blameAt, p.Title+": "+err.Error(), "", "")
		return
	}
	k.si = si
	k.factor = plusMinus(si, accuracy)
	in.sameCurrency(p, k)
}

// write puts every known input into the typed struct, and collects the
// numbers that trials will change.
func (in *inputs) write() {
	for i, p := range in.form.Input.Properties {
		k := &in.values[i]
		if !k.known {
			continue
		}
		if p.Kind != nil {
			in.readGauge(p, k)
		}
		if p.CountedIn != "" && k.si >= 0 {
			k.factor = in.counted(p, k.si)
		}
		in.dress(p, k)
		to, ok := in.form.Inputs.Field(in.call.Input, p)
		if !ok {
			continue // a pick that only fills other inputs
		}
		if list, ok := k.raw.([]any); ok {
			in.writeList(p, k, to, list)
			continue
		}
		factor := k.factor
		if p.Setting && k.origin != sheet.UsualValue { // what was set is known, and what is only usual is not
			factor = spread.Factor{Estimate: k.si, Low: k.si, High: k.si}
		}
		in.writeValue(p, k.si, k.word, factor, to, i)
		if uncertainty := in.form.Inputs.Spread(in.call.Input, p); uncertainty != nil {
			*uncertainty = factor.StdDev()
		}
	}
}

// dress writes the value and its range as people read them.
func (in *inputs) dress(p *contract.Property, k *known) {
	if k.text == "" {
		k.text = k.word
		switch half := (k.factor.High - k.factor.Low) / 2; {
		case p.Kind == nil && k.word != "":
		case k.origin == sheet.Earlier && half > 0: // to the digits that its own sheet shows
			k.text = in.showTo(p, k.si, half)
		case k.origin == sheet.Earlier:
			k.text = in.showBare(p, k.si)
		default:
			k.text = in.show(p, k.si)
		}
	}
	if k.factor.Shape == spread.Exact || p.Kind == nil {
		return
	}
	k.rangeText = in.showSpan(p, k.factor.Low, k.factor.High)
}

// writeList writes a list of readings, each entry a struct of its own.
func (in *inputs) writeList(p *contract.Property, k *known, to reflect.Value, list []any) {
	to.Set(reflect.MakeSlice(to.Type(), len(list), len(list)))
	shape := in.form.Inputs.Places[p.Index].Entry
	for n, item := range list {
		entry, _ := item.(map[string]any)
		shape.Clear(to.Index(n))
		for _, part := range p.Items.Properties {
			raw, ok := entry[part.Name]
			if !ok {
				continue
			}
			slot, ok := shape.Field(to.Index(n), part)
			if !ok {
				continue
			}
			one := known{known: true, raw: raw}
			before := len(in.problems)
			in.readValue(part, &one)
			for i := before; i < len(in.problems); i++ {
				in.problems[i].Where = fmt.Sprintf("%s/%d/%s", k.blameAt, n, part.Name)
			}
			if part.Kind != nil {
				in.readGauge(part, &one)
			}
			in.writeValue(part, one.si, one.word, one.factor, slot, p.Index)
			if uncertainty := shape.Spread(to.Index(n), part); uncertainty != nil {
				*uncertainty = one.factor.StdDev()
			}
		}
	}
}

func (in *inputs) writeValue(p *contract.Property, si float64, word string, factor spread.Factor, to reflect.Value, input int) {
	switch kind := to.Kind(); {
	case kind == reflect.Float64:
		n := binding.Number(to)
		*n = si
		if factor.Shape != spread.Exact {
			in.variates = append(in.variates, variate{to: n, factor: factor, input: input})
		}
	case kind == reflect.String:
		to.SetString(word)
	case kind == reflect.Bool:
		to.SetBool(word == "yes")
	case to.CanInt():
		if si != math.Trunc(si) {
			in.problems.Add(p.Pointer, p.Title+" is not a whole number", "a whole number", "")
			return
		}
		to.SetInt(int64(si))
	}
}
