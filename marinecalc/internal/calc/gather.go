package calc

import (
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

// inputs is the input of one run, from what was typed to what the typed
// function takes.
type inputs struct {
	request  *Request
	form     *binding.Form
	call     *binding.Call
	values   []known // by the property's index
	variates []variate
	missing  []*contract.Property
	problems problem.List
	notes    []string // for the sheet
	currency string   // of all money in the run; "" when there is none
	texts    texts
}

// Buffer is the memory for the inputs of a run.
type Buffer struct {
	inputs   []known
	variates []variate
}

// lend gives the inputs of a run their memory.
func (b *Buffer) lend(in *inputs, inputs int) {
	if cap(b.inputs) < inputs {
		b.inputs = make([]known, inputs)
	}
	in.values, in.variates = b.inputs[:inputs], b.variates[:0]
	clear(in.values)
}

// takeBack takes the memory back, with what it has grown to.
func (b *Buffer) takeBack(in *inputs) { b.variates = in.variates[:0] }

// fill gathers every input from the first origin that has it (typed, maker's
// figure, boat, earlier result, handbook row, usual value, default), holds
// the whole against the schema, and writes it into the typed struct.
func fill(q *Request, k *binding.Form, call *binding.Call, typed map[string]any, buf *Buffer) *inputs {
	in := &inputs{request: q, form: k, call: call}
	buf.lend(in, len(k.Input.Properties))
	in.gather(typed)
	in.checkGathered(typed)
	if len(in.problems) > 0 {
		return in
	}
	in.read()
	in.pickRows()
	in.takeUsual()
	in.needs()
	in.write()
	return in
}

func (in *inputs) at(name string) *known {
	if p := in.form.Input.Child(name); p != nil && in.values[p.Index].known {
		return &in.values[p.Index]
	}
	return nil
}

// gather takes what was typed, the maker's figures, the boat and earlier
// results, in this order; for words also the default.
func (in *inputs) gather(typed map[string]any) {
	for i, p := range in.form.Input.Properties {
		k := &in.values[i]
		if raw, ok := typed[p.Name]; ok {
			*k = known{known: true, raw: raw, origin: sheet.Typed, blameAt: p.Pointer, confirmed: true}
		} else if in.givenElsewhere(p, k) {
		} else if word, ok := p.Default.(string); ok && p.Kind == nil {
			*k = known{known: true, raw: word, origin: sheet.Default, blameAt: p.Pointer, confirmed: true}
		}
	}
}

// givenElsewhere takes an input that nobody typed: the maker's figure, what the
// boat file holds, or an earlier result.
func (in *inputs) givenElsewhere(p *contract.Property, k *known) bool {
	boat := in.request.Boat
	if fig, ok := boat.FigureOf(p.Path); ok {
		*k = known{known: true, raw: fig.Value, origin: sheet.MakersFigure, source: fig.Source, blameAt: fmt.Sprintf("/boat/makersFigures/%d/value", fig.Index), confirmed: true}
		return true
	}
	if raw, where, date, ok := boat.Find(p.Boat); ok {
		*k = known{known: true, raw: raw, origin: sheet.FromBoat, blameAt: where, confirmed: true}
		if date != "" {
			k.source, k.date = "reading of "+date, date
		}
		return true
	}
	return in.takeEarlier(p, k)
}

// takeEarlier takes the result of another calculation, with its interval.
func (in *inputs) takeEarlier(p *contract.Property, k *known) bool {
	if p.After == "" || in.request.Boat == nil {
		return false
	}
	var o *Outcome
	var r *sheet.Result
	var result, after, newest string
	for one := range strings.SplitSeq(p.After, "|") {
		id, name, _ := strings.Cut(one, "/")
		other := in.request.earlier(id)
		if other == nil {
			continue
		}
		if o == nil || other.newest > newest { // all from one sheet, not an older one's what it leaves open
			o, r, result, after, newest = other, other.Sheet.Result(name), name, one, other.newest
		}
	}
	if r == nil {
		return false
	}
	if _, _, makers := r.Stands(); makers { // with the accuracy that was typed
		if fig, ok := in.request.Boat.FigureOf(after); ok {
			*k = known{known: true, raw: fig.Value, origin: sheet.MakersFigure, source: fig.Source, blameAt: fmt.Sprintf("/boat/makersFigures/%d/value", fig.Index), confirmed: true}
			return true
		}
	}
	*k = known{known: true, word: r.Text, origin: sheet.Earlier, source: o.Sheet.Title, blameAt: p.Pointer, confirmed: true}
	if i := slices.IndexFunc(o.Unverified, func(u Unverified) bool { return u.Result == result }); i >= 0 {
		k.confirmed, k.roots = false, o.Unverified[i].RestsOn
	}
	if r.SI != nil {
		k.si = *r.SI
		k.factor = spread.Factor{Estimate: *r.SI, Low: *r.SI, High: *r.SI}
		if low, high, ok := r.Range(); ok && low < high {
			// The interval is kept; how the earlier result leans inside it is not.
			k.factor = spread.Factor{Estimate: min(max(*r.SI, low), high), Low: low, High: high, Shape: spread.Normal}
		}
	}
	return true
}

// checkGathered holds everything gathered so far against the schema. What
// came from the boat is blamed on the boat file.
func (in *inputs) checkGathered(typed map[string]any) {
	whole := typed
	for i, p := range in.form.Input.Properties {
		k := &in.values[i]
		if !k.known || k.raw == nil || k.origin == sheet.Typed || k.origin == sheet.Default { // a test holds the defaults against their schemas
			continue
		}
		if len(whole) == len(typed) {
			whole = maps.Clone(typed)
		}
		whole[p.Name] = k.raw
	}
	in.relocate(in.form.CheckInput(whole))
}

// relocate adds problems whose places are in the input, each moved to where the
// input came from.
func (in *inputs) relocate(list problem.List) {
	for _, p := range list {
		tokens := contract.Tokens(p.Where)
		if len(tokens) > 0 {
			if k := in.at(tokens[0]); k != nil && k.blameAt != "" {
				p.Where = k.blameAt + contract.Pointer(tokens[1:])
			}
		}
		in.problems = append(in.problems, p)
	}
}

// needs notes every input without which the calculation cannot be done, or
// what it can be had by choosing.
func (in *inputs) needs() {
	for _, name := range in.form.Input.Needs {
		p := in.form.Input.Child(name)
		if p == nil || in.values[p.Index].known {
			continue
		}
		from, wanted := "", p
		for _, other := range in.form.Input.Properties {
			if other.Rows != "" && !in.values[other.Index].known && in.fills(other, in.request.Book.Table(other.Rows), name) {
				from, wanted = ", or choose "+strings.ToLower(other.Title), other
			}
		}
		in.missing = append(in.missing, wanted)
		hint := "type it" + from
		if why := in.session.Withheld(p); why != "" {
			hint = "put that right first (" + strings.TrimSuffix(why, ".") + ")"
		}
		contract.Refuse(&in.problems, p, "/"+name, p.Title+" is not known", hint, problem.Missing)
		if wanted != p {
			in.problems[len(in.problems)-1].Choose = wanted.Name
		}
	}
}

// notGiven picks, of the places that a calculation complains of, the inputs
// that nobody gave: the calculation lacks them and has no fault. The run's
// problems, which are these in the same order, say so too.
func (in *inputs) notGiven(list problem.List) []*contract.Property {
	var missing []*contract.Property
	for i, p := range list {
		if tokens := contract.Tokens(p.Where); len(tokens) > 0 && in.at(tokens[0]) == nil {
			if property := in.form.Input.Child(tokens[0]); property != nil {
				missing = append(missing, property)
				in.problems[i].Kind = problem.Missing
			}
		}
	}
	return missing
}

// fills tells whether a row picked at p gives that input.
func (in *inputs) fills(p *contract.Property, t *rules.Table, input string) bool {
	column, ok := p.ColumnFor(input)
	if t == nil || !ok {
		return false
	}
	_, has := t.Kind(column)
	return has
}

// lookup gives the number or word of a known input.
func (in *inputs) lookup(name string) (si float64, word string, ok bool) {
	k := in.at(name)
	if k == nil {
		return 0, "", false
	}
	return k.si, k.word, true
}

// elsewhere finds an input where it would have come from, had nobody typed it.
func (in *inputs) elsewhere(p *contract.Property, k *known) bool {
	if !in.givenElsewhere(p, k) {
		return false
	}
	if k.raw == nil {
		k.text = k.word
		return true
	}
	if len(in.form.CheckInput(map[string]any{p.Name: k.raw})) > 0 {
		return false // it is told where it is used
	}
	in.readValue(p, k)
	if p.Kind != nil {
		in.readGauge(p, k)
	}
	in.dress(p, k)
	return true
}
