// Package inputs gathers what a calculation takes, each input from the first
// origin that has it, and writes it into the typed struct: request.go is what
// all runs of a request go by, gather.go the order of the origins (known.go is
// what is known of one input), rows.go picked rows and usual values, gauges.go
// the accuracies, fill.go the struct, show.go figures as people read them.
package inputs

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Inputs is the input of one run, from what was typed to what the typed
// function takes.
type Inputs struct {
	Request  *Request
	Form     *binding.Form
	Call     *binding.Call
	Values   []Known // by the property's index
	Variates []Variate
	Missing  []*contract.Property
	Problems problem.List
	Notes    []string // for the sheet
	Currency string   // of all money in the run; "" when there is none
	Texts    texts
	isRead   bool // what was gathered meets the schema, and was read
}

// Buffer is the memory for the inputs of a run.
type Buffer struct {
	inputs   []Known
	variates []Variate
}

// lend gives the inputs of a run their memory.
func (b *Buffer) lend(in *Inputs, inputs int) {
	if cap(b.inputs) < inputs {
		b.inputs = make([]Known, inputs)
	}
	in.Values, in.Variates = b.inputs[:inputs], b.variates[:0]
	clear(in.Values)
}

// TakeBack takes the memory back, with what it has grown to.
func (b *Buffer) TakeBack(in *Inputs) { b.variates = in.Variates[:0] }

// Fill gathers every input from the first origin that has it (typed, maker's
// figure, boat, earlier result, handbook row, usual value, default), holds
// the whole against the schema, and writes it into the typed struct.
func Fill(q *Request, k *binding.Form, call *binding.Call, typed map[string]any, buf *Buffer) *Inputs {
	in := &Inputs{Request: q, Form: k, Call: call}
	buf.lend(in, len(k.Input.Properties))
	in.gather(typed)
	in.checkGathered(typed)
	if len(in.Problems) > 0 {
		return in
	}
	in.read()
	in.isRead = true
	in.pickRows()
	in.takeUsual()
	in.needs()
	in.write()
	return in
}

func (in *Inputs) At(name string) *Known {
	if p := in.Form.Input.Child(name); p != nil && in.Values[p.Index].Known {
		return &in.Values[p.Index]
	}
	return nil
}

// gather takes what was typed, the maker's figures, the boat and earlier
// results, in this order; for words also the default.
func (in *Inputs) gather(typed map[string]any) {
	for i, p := range in.Form.Input.Properties {
		k := &in.Values[i]
		if raw, ok := typed[p.Name]; ok {
			*k = Known{Known: true, Raw: raw, Origin: sheet.Typed, blameAt: p.Pointer, Confirmed: true}
		} else if in.givenElsewhere(p, k) {
		} else if word, ok := p.Default.(string); ok && p.Kind == nil {
			*k = Known{Known: true, Raw: word, Origin: sheet.Default, blameAt: p.Pointer, Confirmed: true}
		}
	}
}

// givenElsewhere takes an input that nobody typed: the maker's figure, what the
// boat file holds, or an earlier result.
func (in *Inputs) givenElsewhere(p *contract.Property, k *Known) bool {
	boat := in.Request.Boat
	if fig, ok := boat.FigureOf(p.Path); ok {
		*k = Known{Known: true, Raw: fig.Value, Origin: sheet.MakersFigure, Source: fig.Source, blameAt: fmt.Sprintf("/boat/makersFigures/%d/value", fig.Index), Confirmed: true}
		return true
	}
	if raw, where, date, ok := boat.Find(p.Boat); ok {
		*k = Known{Known: true, Raw: raw, Origin: sheet.FromBoat, blameAt: where, Confirmed: true}
		if date != "" {
			k.Source, k.Date = "reading of "+date, date
		}
		return true
	}
	if t := boat.OnlyTorqueAt(p.Boat); t != nil {
		*k = Known{Known: true, Raw: t.Text, Origin: sheet.MakersFigure, Source: t.Source, blameAt: "/boat" + t.Where, Confirmed: true}
		return true
	}
	return in.TakeEarlier(p, k)
}

// TakeEarlier takes the result of another calculation, with its interval.
func (in *Inputs) TakeEarlier(p *contract.Property, k *Known) bool {
	if p.After == "" || in.Request.Boat == nil {
		return false
	}
	var o *Outcome
	var r *sheet.Result
	var result, after, newest string
	for one := range strings.SplitSeq(p.After, "|") {
		id, name, _ := strings.Cut(one, "/")
		other := in.Request.OtherSheet(id)
		if other == nil {
			continue
		}
		if o == nil || other.Newest > newest { // all from one sheet, not an older one's what it leaves open
			o, r, result, after, newest = other, other.Sheet.Result(name), name, one, other.Newest
		}
	}
	if r == nil {
		return false
	}
	if _, _, makers := r.Stands(); makers { // with the accuracy that was typed
		if fig, ok := in.Request.Boat.FigureOf(after); ok {
			*k = Known{Known: true, Raw: fig.Value, Origin: sheet.MakersFigure, Source: fig.Source, blameAt: fmt.Sprintf("/boat/makersFigures/%d/value", fig.Index), Confirmed: true}
			return true
		}
	}
	*k = Known{Known: true, Word: cmp.Or(r.Word, r.Text), Origin: sheet.Earlier, Source: o.Sheet.Title, blameAt: p.Pointer, Confirmed: true}
	if i := slices.IndexFunc(o.Unverified, func(u Unverified) bool { return u.Result == result }); i >= 0 {
		k.Confirmed, k.Roots = false, o.Unverified[i].RestsOn
	}
	if r.SI != nil {
		k.Si = *r.SI
		k.Factor = spread.Factor{Estimate: *r.SI, Low: *r.SI, High: *r.SI}
		if low, high, ok := r.Range(); ok && low < high {
			// Both sides of the interval are kept; how the trials lie inside it is where no bell stands for them.
			k.Factor = spread.Factor{Estimate: min(max(*r.SI, low), high), Low: low, High: high, Shape: spread.Normal}
			if list := o.Lists[result]; list != nil {
				k.Factor.Shape, k.Factor.List = spread.Listed, list
			}
		}
		if !k.Confirmed && o.Bracket != nil { // what one sheet leaves open the next one must not settle
			k.Bracket = o.Bracket(result)
		}
	}
	return true
}

// checkGathered holds everything gathered so far against the schema. What
// came from the boat is blamed on the boat file.
func (in *Inputs) checkGathered(typed map[string]any) {
	whole := typed
	for i, p := range in.Form.Input.Properties {
		k := &in.Values[i]
		if !k.Known || k.Raw == nil || k.Origin == sheet.Typed || k.Origin == sheet.Default { // a test holds the defaults against their schemas
			continue
		}
		if len(whole) == len(typed) {
			whole = maps.Clone(typed)
		}
		whole[p.Name] = k.Raw
	}
	in.Relocate(in.Form.CheckInput(whole))
}

// Relocate adds problems whose places are in the input, each moved to where the
// input came from.
func (in *Inputs) Relocate(list problem.List) {
	for _, p := range list {
		tokens := contract.Tokens(p.Where)
		if len(tokens) > 0 {
			if k := in.At(tokens[0]); k != nil && k.blameAt != "" {
				p.Where = k.blameAt + contract.Pointer(tokens[1:])
			}
		}
		in.Problems = append(in.Problems, p)
	}
}

// needs notes every input without which the calculation cannot be done, or
// what it can be had by choosing.
func (in *Inputs) needs() {
	for _, name := range in.Form.Input.Needs {
		p := in.Form.Input.Child(name)
		if p == nil || in.Values[p.Index].Known {
			continue
		}
		from, wanted := "", p
		for _, other := range in.Form.Input.Properties {
			if other.Rows != "" && !in.Values[other.Index].Known && in.fills(other, in.Request.Book.Table(other.Rows), name) {
				from, wanted = ", or choose "+problem.MidSentence(other.Title), other
			}
		}
		in.Missing = append(in.Missing, wanted)
		hint := "type it" + from
		if why := in.Request.WhyWithheld(p); why != "" {
			hint = "put that right first (" + strings.TrimSuffix(why, ".") + ")"
		}
		contract.Refuse(&in.Problems, p, "/"+name, p.Title+": not known", hint, problem.Missing)
		if wanted != p {
			in.Problems[len(in.Problems)-1].Choose = wanted.Name
		}
	}
}

// NotGiven picks, of the places that a calculation complains of, the inputs
// that nobody gave: the calculation lacks them and has no fault. The run's
// problems, which are these in the same order, say so too.
func (in *Inputs) NotGiven(list problem.List) []*contract.Property {
	var missing []*contract.Property
	for i, p := range list {
		if tokens := contract.Tokens(p.Where); len(tokens) > 0 && in.At(tokens[0]) == nil {
			if property := in.Form.Input.Child(tokens[0]); property != nil {
				missing = append(missing, property)
				in.Problems[i].Kind = problem.Missing
			}
		}
	}
	return missing
}

// fills tells whether a row picked at p gives that input.
func (in *Inputs) fills(p *contract.Property, t *rules.Table, input string) bool {
	column, ok := p.ColumnFor(input)
	if t == nil || !ok {
		return false
	}
	_, has := t.Kind(column)
	return has
}

// Lookup gives the number or word of a known input.
func (in *Inputs) Lookup(name string) (si float64, word string, ok bool) {
	k := in.At(name)
	if k == nil {
		return 0, "", false
	}
	return k.Si, k.Word, true
}

// Elsewhere finds an input where it would have come from, had nobody typed it.
func (in *Inputs) Elsewhere(p *contract.Property, k *Known) bool {
	if !in.givenElsewhere(p, k) {
		return false
	}
	if k.Raw == nil {
		k.Text = k.Word
		return true
	}
	if len(in.Form.CheckInput(map[string]any{p.Name: k.Raw})) > 0 {
		return false // it is told where it is used
	}
	in.readValue(p, k)
	if p.Kind != nil {
		in.readGauge(p, k)
	}
	in.dress(p, k)
	return true
}
