package marinecalc

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// filling is the input of one run on its way from what was typed to what the
// typed function takes.
type filling struct {
	session  *session
	form     *form
	call     *call
	room     *scratch
	inputs   []known // by the property's index
	leaves   []leaf
	missing  []*contract.Property
	problems problem.List
	currency string // of all money in the run; "" when there is none
}

// fill gathers every input from the first origin that has it (typed, maker's
// figure, boat, earlier result, handbook row, usual value, default), holds
// the whole against the schema, and writes it into the typed struct.
func (s *session) fill(k *form, call *call, typed map[string]any, room *scratch) *filling {
	f := &filling{session: s, form: k, call: call}
	room.lend(f, len(k.Input.Properties))
	f.gather(typed)
	f.checkGathered(typed)
	if len(f.problems) > 0 {
		return f
	}
	f.read()
	f.pickRows()
	f.takeUsual()
	f.needs()
	f.write()
	return f
}

func (f *filling) at(name string) *known {
	if p := f.form.Input.Child(name); p != nil && f.inputs[p.Index].is {
		return &f.inputs[p.Index]
	}
	return nil
}

// gather takes what was typed, the maker's figures, the boat and earlier
// results, in this order; for words also the default.
func (f *filling) gather(typed map[string]any) {
	boat := f.session.boat
	for i, p := range f.form.Input.Properties {
		k := &f.inputs[i]
		if raw, ok := typed[p.Name]; ok {
			*k = known{is: true, raw: raw, origin: sheet.Typed, where: p.Pointer, sure: true}
		} else if fig := boat.figureOf(p.Path); fig != nil {
			*k = known{is: true, raw: fig.value, origin: sheet.MakersFigure, source: fig.source, where: fmt.Sprintf("/boat/makersFigures/%d/value", fig.index), sure: true}
		} else if raw, where, date, ok := boat.find(p.Boat); ok {
			*k = known{is: true, raw: raw, origin: sheet.FromBoat, where: where, sure: true}
			if date != "" {
				k.source = "reading of " + date
			}
		} else if f.takeEarlier(p, k) {
		} else if word, ok := p.Default.(string); ok && p.Kind == nil {
			*k = known{is: true, raw: word, origin: sheet.Default, where: p.Pointer, sure: true}
		}
	}
}

// takeEarlier takes the result of another calculation, with its interval.
func (f *filling) takeEarlier(p *contract.Property, k *known) bool {
	if p.After == "" || f.session.boat == nil {
		return false
	}
	id, result, _ := strings.Cut(p.After, "/")
	o := f.session.earlier(id)
	if o == nil {
		return false
	}
	r := o.sheet.Result(result)
	if r == nil {
		return false
	}
	*k = known{is: true, word: r.Text, origin: sheet.Earlier, source: o.sheet.Title, where: p.Pointer, sure: !slices.Contains(o.doubtful, result)}
	if r.SI != nil {
		k.si = *r.SI
		k.factor = spread.Factor{Estimate: *r.SI, Low: *r.SI, High: *r.SI}
		if r.Spread != nil && r.Low < r.High {
			// The interval is kept; how the earlier result leans inside it is not.
			k.factor = spread.Factor{Estimate: min(max(*r.SI, r.Low), r.High), Low: r.Low, High: r.High, Shape: spread.Normal}
		}
	}
	return true
}

// checkGathered holds everything gathered so far against the schema. What
// came from the boat is blamed on the boat file.
func (f *filling) checkGathered(typed map[string]any) {
	whole := typed
	for i, p := range f.form.Input.Properties {
		k := &f.inputs[i]
		if !k.is || k.raw == nil || k.origin == sheet.Typed || k.origin == sheet.Default { // a test holds the defaults against their schemas
			continue
		}
		if len(whole) == len(typed) {
			whole = maps.Clone(typed)
		}
		whole[p.Name] = k.raw
	}
	f.blame(f.form.CheckInput(whole))
}

// blame adds problems whose places are in the input, each moved to where the
// input came from.
func (f *filling) blame(list problem.List) {
	for _, p := range list {
		tokens := contract.Tokens(p.Where)
		if len(tokens) > 0 {
			if k := f.at(tokens[0]); k != nil && k.where != "" {
				p.Where = k.where + contract.Pointer(tokens[1:])
			}
		}
		f.problems = append(f.problems, p)
	}
}

// read gives every gathered value its number or word.
func (f *filling) read() {
	for i, p := range f.form.Input.Properties {
		k := &f.inputs[i]
		if !k.is || k.raw == nil {
			continue
		}
		f.readValue(p, k)
	}
}

func (f *filling) readValue(p *contract.Property, k *known) {
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
		f.readNumber(p, k)
	default:
		f.readNumber(p, k)
	}
}

func (f *filling) readNumber(p *contract.Property, k *known) {
	si, accuracy, err := numeric(p, k.raw)
	if err != nil {
		f.problems.Add(k.where, p.Title+": "+err.Error(), "", "")
		return
	}
	k.si = si
	k.factor = plusMinus(si, accuracy)
	f.sameCurrency(p, k)
}

// pickRows looks up every picked row, in the order of the schema, and lets
// its values stand in for inputs that nobody gave.
func (f *filling) pickRows() {
	for i, p := range f.form.Input.Properties {
		k := &f.inputs[i]
		if p.Rows == "" || !k.is {
			continue
		}
		table := f.session.book.Table(p.Rows)
		if table == nil {
			f.problems.Add(k.where, "there is no table "+p.Rows, strings.Join(f.session.book.Tables(), ", "), "")
			continue
		}
		row := table.Find(k.word, f.lookup)
		if row == nil {
			f.noRow(p, k, table)
			continue
		}
		k.text = row.Name
		if k.source == "" {
			k.source = row.Source.String()
		}
		for _, v := range row.Values {
			f.standIn(v.Column, v.Value, row, sheet.HandbookRow)
		}
	}
}

// noRow says why a pick finds no row; where only a size is not known yet,
// the missing size is named instead, by needs.
func (f *filling) noRow(p *contract.Property, k *known, table *rules.Table) {
	picks, _ := table.Picks()
	if !slices.Contains(picks, k.word) {
		hint := ""
		if best, ok := contract.Closest(k.word, picks); ok {
			hint = fmt.Sprintf("did you mean %q?", best)
		}
		f.problems.Add(k.where, fmt.Sprintf("%s: %q is not in the table of %s", p.Title, k.word, table.Title), strings.Join(picks, ", "), hint)
		return
	}
	for _, row := range table.Rows {
		if row.Pick != k.word {
			continue
		}
		for _, term := range row.Valid {
			if _, _, ok := f.lookup(term.Of); !ok {
				return
			}
		}
	}
	f.problems.Add(k.where, fmt.Sprintf("%s: no row of %q covers this size or use", p.Title, k.word), "see the table of "+table.Title, "choose another, or type the figures themselves")
}

// standIn lets a row's value stand for an input that is not known yet.
func (f *filling) standIn(name string, v rules.Value, row *rules.Row, origin sheet.Origin) {
	p := f.form.Input.Child(name)
	if p == nil || f.inputs[p.Index].is {
		return
	}
	k := known{is: true, origin: origin, source: row.Source.String(), where: p.Pointer, sure: row.Decides}
	if v.IsText {
		k.word, k.text = v.Text, v.Text
	} else {
		k.si = v.SI
		k.factor = spread.Factor{Estimate: v.SI, Low: v.SI, High: v.SI}
		if v.Ranged() {
			k.factor.Low, k.factor.High, k.factor.Shape = v.Low, v.High, shapes[v.Shape]
		}
	}
	f.inputs[p.Index] = k
}

// takeUsual takes usual values and number defaults for what is still open.
func (f *filling) takeUsual() {
	for i, p := range f.form.Input.Properties {
		if f.inputs[i].is {
			continue
		}
		if p.Typical != "" {
			if row := f.session.book.Table("usual-values").Find(p.Typical, f.lookup); row != nil {
				if v, ok := row.Values.Find(p.Name); ok {
					f.standIn(p.Name, v, row, sheet.UsualValue)
					continue
				}
			}
		}
		if p.Default != nil {
			k := &f.inputs[i]
			*k = known{is: true, raw: p.Default, origin: sheet.Default, where: p.Pointer, sure: true}
			f.readValue(p, k)
		}
	}
}

// needs notes every input without which the calculation cannot be done, or
// what it can be had by choosing.
func (f *filling) needs() {
	for _, name := range f.form.Input.Needs {
		p := f.form.Input.Child(name)
		if p == nil || f.inputs[p.Index].is {
			continue
		}
		from, wanted := "", p
		for _, other := range f.form.Input.Properties {
			if other.Rows != "" && !f.inputs[other.Index].is && f.fills(other.Rows, name) {
				from, wanted = ", or choose "+strings.ToLower(other.Title), other
			}
		}
		f.missing = append(f.missing, wanted)
		f.problems.Add("/"+name, p.Title+" is not known", contract.AllowedTypes(p), "type it"+from)
	}
}

// notGiven picks, of the places that a calculation complains of, the inputs
// that nobody gave: the calculation lacks them and has no fault.
func (f *filling) notGiven(list problem.List) []*contract.Property {
	var missing []*contract.Property
	for _, p := range list {
		if tokens := contract.Tokens(p.Where); len(tokens) > 0 && f.at(tokens[0]) == nil {
			if property := f.form.Input.Child(tokens[0]); property != nil {
				missing = append(missing, property)
			}
		}
	}
	return missing
}

func (f *filling) fills(table, input string) bool {
	t := f.session.book.Table(table)
	if t == nil {
		return false
	}
	_, has := t.Columns[input]
	return has
}

// lookup gives the number or word of a known input.
func (f *filling) lookup(name string) (si float64, word string, ok bool) {
	k := f.at(name)
	if k == nil {
		return 0, "", false
	}
	return k.si, k.word, true
}

// write puts every known input into the typed struct, and collects the
// numbers that trials will change.
func (f *filling) write() {
	for i, p := range f.form.Input.Properties {
		k := &f.inputs[i]
		if !k.is {
			continue
		}
		if p.Kind != nil {
			f.readGauge(p, k)
		}
		f.dress(p, k)
		to, ok := f.form.inputs.field(f.call.input, p)
		if !ok {
			continue // a pick that only fills other inputs
		}
		if list, ok := k.raw.([]any); ok {
			f.writeList(p, k, to, list)
			continue
		}
		f.writeValue(p, k.si, k.word, k.factor, to, i)
	}
}

// readGauge gives a bare reading the accuracy of the gauge it was read with.
func (f *filling) readGauge(p *contract.Property, k *known) {
	if p.ReadBy == "" || k.factor.Shape != spread.Exact || k.raw == nil {
		return
	}
	if a := f.gaugeAccuracy(p, k.si); a > 0 {
		k.factor = plusMinus(k.si, a)
	}
}

// gaugeAccuracy is the half-width of the gauge that the input's readBy names.
func (f *filling) gaugeAccuracy(p *contract.Property, si float64) float64 {
	gauge := f.at(p.ReadBy)
	if gauge == nil {
		return 0
	}
	row := f.session.book.Table(gauges).Find(gauge.word, f.lookup)
	if row == nil {
		return 0
	}
	a, err := p.Kind.ParseAccuracy(row.Values.Of("accuracy").Text, si)
	if err != nil {
		f.problems.Add(gauge.where, fmt.Sprintf("%s cannot be read with a %s", p.Title, row.Name), "a gauge for a "+strings.ReplaceAll(p.Kind.Name, "-", " "), "choose the gauge that was used")
		return 0
	}
	return a
}

// dress writes the value and its range as people read them.
func (f *filling) dress(p *contract.Property, k *known) {
	if k.text == "" {
		k.text = k.word
		if p.Kind != nil || k.word == "" {
			k.text = f.show(p, k.si)
		}
	}
	if k.factor.Shape == spread.Exact || p.Kind == nil {
		return
	}
	k.about = f.showSpan(p, k.factor.Low, k.factor.High)
}

// writeList writes a list of readings, each entry a struct of its own.
func (f *filling) writeList(p *contract.Property, k *known, to reflect.Value, list []any) {
	to.Set(reflect.MakeSlice(to.Type(), len(list), len(list)))
	shape := f.form.inputs.places[p.Index].entry
	for n, item := range list {
		entry, _ := item.(map[string]any)
		shape.clear(to.Index(n))
		for _, part := range p.Items.Properties {
			raw, ok := entry[part.Name]
			if !ok {
				continue
			}
			slot, ok := shape.field(to.Index(n), part)
			if !ok {
				continue
			}
			one := known{is: true, raw: raw}
			before := len(f.problems)
			f.readValue(part, &one)
			for i := before; i < len(f.problems); i++ {
				f.problems[i].Where = fmt.Sprintf("%s/%d/%s", k.where, n, part.Name)
			}
			if part.Kind != nil {
				f.readGauge(part, &one)
			}
			f.writeValue(part, one.si, one.word, one.factor, slot, p.Index)
		}
	}
}

func (f *filling) writeValue(p *contract.Property, si float64, word string, factor spread.Factor, to reflect.Value, input int) {
	switch kind := to.Kind(); {
	case kind == reflect.Float64:
		n := number(to)
		*n = si
		if factor.Shape != spread.Exact {
			f.leaves = append(f.leaves, leaf{to: n, factor: factor, input: input})
		}
	case kind == reflect.String:
		to.SetString(word)
	case kind == reflect.Bool:
		to.SetBool(word == "yes")
	case to.CanInt():
		if si != math.Trunc(si) {
			f.problems.Add(p.Pointer, p.Title+" is not a whole number", "a whole number", "")
			return
		}
		to.SetInt(int64(si))
	}
}
