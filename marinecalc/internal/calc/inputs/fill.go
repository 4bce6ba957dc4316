package inputs

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
func (in *Inputs) read() {
	for i, p := range in.Form.Input.Properties {
		k := &in.Values[i]
		if !k.Known || k.Raw == nil {
			continue
		}
		in.readValue(p, k)
	}
}

func (in *Inputs) readValue(p *contract.Property, k *Known) {
	switch v := k.Raw.(type) {
	case []any:
		switch len(v) {
		case 0:
			k.Text = "none"
		case 1:
			k.Text = "1 entry"
		default:
			k.Text = fmt.Sprintf("%d entries", len(v))
		}
	case bool:
		k.Text = map[bool]string{true: "yes", false: "no"}[v]
		k.Word = k.Text
	case string:
		if p.Kind == nil {
			k.Word, k.Text = v, v
			if i := slices.Index(p.Enum, v); i >= 0 && i < len(p.EnumTitles) {
				k.Text = p.EnumTitles[i]
			}
			return
		}
		in.readNumber(p, k)
	default:
		in.readNumber(p, k)
	}
}

func (in *Inputs) readNumber(p *contract.Property, k *Known) {
	si, accuracy, err := Numeric(p, k.Raw)
	if err != nil {
		in.Problems.Add(k.blameAt, p.Title+": "+err.Error(), "", "")
		return
	}
	k.Si = si
	k.Factor = plusMinus(si, accuracy)
	in.sameCurrency(p, k)
}

// write puts every known input into the typed struct, and collects the
// numbers that trials will change.
func (in *Inputs) write() {
	for i, p := range in.Form.Input.Properties {
		k := &in.Values[i]
		if !k.Known {
			continue
		}
		if p.Kind != nil {
			in.readGauge(p, k)
		}
		if p.CountedIn != "" && k.Si >= 0 {
			k.Factor = in.counted(p, k.Si)
		}
		in.dress(p, k)
		to, ok := in.Form.Inputs.Field(in.Call.Input, p)
		if !ok {
			continue // a pick that only fills other inputs
		}
		if list, ok := k.Raw.([]any); ok {
			in.writeList(p, k, to, list)
			continue
		}
		factor := k.Factor
		if p.Setting && k.Origin != sheet.UsualValue { // what was set is known, and what is only usual is not
			factor = spread.Factor{Estimate: k.Si, Low: k.Si, High: k.Si}
		}
		in.writeValue(p, k.Si, k.Word, factor, to, i)
		if uncertainty := in.Form.Inputs.Spread(in.Call.Input, p); uncertainty != nil {
			*uncertainty = factor.StdDev()
		}
		if !k.OnlyUsual() {
			in.Form.Inputs.Read(in.Call.Input, p)
		}
		if below, above := in.Form.Inputs.Sides(in.Call.Input, p); below != nil {
			*below, *above = factor.Sides()
		}
	}
}

// dress writes the value and its range as people read them.
func (in *Inputs) dress(p *contract.Property, k *Known) {
	if p.OfReading && k.Text == k.Word {
		if of, ok := in.Request.Boat.Describe(k.Word); ok {
			k.Text = of.Title
		}
	}
	if k.Text == "" {
		k.Text = k.Word
		switch half := (k.Factor.High - k.Factor.Low) / 2; {
		case p.Kind == nil && k.Word != "":
		case k.Origin == sheet.Earlier && half > 0: // to the digits that its own sheet shows
			k.Text = in.ShowTo(p, k.Si, half)
		case k.Origin == sheet.Earlier:
			k.Text = in.ShowBare(p, k.Si)
		default:
			k.Text = in.Show(p, k.Si)
		}
	}
	if k.Factor.Shape == spread.Exact || p.Kind == nil {
		return
	}
	k.RangeText = in.ShowSpan(p, k.Factor.Low, k.Factor.High)
}

// writeList writes a list of readings, each entry a struct of its own.
func (in *Inputs) writeList(p *contract.Property, k *Known, to reflect.Value, list []any) {
	to.Set(reflect.MakeSlice(to.Type(), len(list), len(list)))
	shape := in.Form.Inputs.Places[p.Index].Entry
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
			one := Known{Known: true, Raw: raw}
			before := len(in.Problems)
			in.readValue(part, &one)
			for i := before; i < len(in.Problems); i++ {
				in.Problems[i].Where = fmt.Sprintf("%s/%d/%s", k.blameAt, n, part.Name)
			}
			if part.Kind != nil {
				in.readGauge(part, &one)
			}
			in.writeValue(part, one.Si, one.Word, one.Factor, slot, p.Index)
			if uncertainty := shape.Spread(to.Index(n), part); uncertainty != nil {
				*uncertainty = one.Factor.StdDev()
			}
		}
	}
}

func (in *Inputs) writeValue(p *contract.Property, si float64, word string, factor spread.Factor, to reflect.Value, input int) {
	switch kind := to.Kind(); {
	case kind == reflect.Float64:
		n := binding.Number(to)
		*n = si
		if factor.Shape != spread.Exact {
			in.Variates = append(in.Variates, Variate{To: n, Factor: factor, Input: input})
		}
	case kind == reflect.String:
		to.SetString(word)
	case kind == reflect.Bool:
		to.SetBool(word == "yes")
	case to.CanInt():
		if si != math.Trunc(si) {
			in.Problems.Add(p.Pointer, p.Title+" is not a whole number", "a whole number", "")
			return
		}
		to.SetInt(int64(si))
	}
}
