package marinecalc

import (
	"slices"
	"strconv"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// writing is a run on its way to its sheet.
type writing struct {
	*filling
	measures []measure
	tables   []table
	trials   int
	notes    []string
	kept     []float64 // those that the sheet's lines point to
}

// keep gives a number a place that stays.
func (w *writing) keep(v float64) *float64 {
	if len(w.kept) == cap(w.kept) {
		w.kept = make([]float64, 0, len(w.inputs)+len(w.measures))
	}
	w.kept = append(w.kept, v)
	return &w.kept[len(w.kept)-1]
}

func (w *writing) write() *outcome {
	s := &sheet.Sheet{
		Calculation: w.form.ID, Title: w.form.Title, Answers: w.form.Answers,
		Inputs: w.inputLines(), Results: w.resultLines(), Tables: w.tableLines(), Work: []sheet.Work{},
		Trials: w.trials, Notes: w.notes,
	}
	if !w.session.brief {
		s.Work = w.tableWork(w.workLines())
	}
	s.Verdicts = w.verdicts()
	s.Cautions = w.cautions()
	s.Next = w.next(s.Verdicts)
	s.Drawings = []sheet.Drawing{}
	if w.call.draw != nil && !w.session.brief {
		s.Drawings = append(s.Drawings, w.call.draw(brush{units: w.session.units, currency: w.currency})...)
	}
	w.room.sources = appendSources(w.room.sources, s)
	s.Sources = slices.Clone(w.room.sources)
	for _, title := range w.session.book.Overlays() {
		s.Notes = append(s.Notes, "Rules laid over the standard ones: "+title+".")
	}
	out := &outcome{sheet: s}
	for i := range w.measures {
		if m := &w.measures[i]; len(m.doubtful) > 0 {
			if out.doubtful == nil {
				out.doubtful = make([]string, 0, len(w.measures)-i)
			}
			out.doubtful = append(out.doubtful, m.property.Name)
		}
	}
	return out
}

func (w *writing) inputLines() []sheet.Input {
	count := 0
	for i := range w.inputs {
		if w.inputs[i].is {
			count++
		}
	}
	lines := make([]sheet.Input, 0, count)
	for i, p := range w.form.Input.Properties {
		k := &w.inputs[i]
		if !k.is {
			continue
		}
		lines = append(lines, sheet.Input{})
		line := &lines[len(lines)-1] // filled in its place: it is long
		line.Term, line.Text, line.Range, line.Origin, line.Source = w.form.inputs.places[i].term, k.text, k.about, k.origin, k.source
		if p.Kind != nil {
			line.SI = w.keep(k.si)
		} else if line.Word = k.word; k.word == "" && k.raw != nil {
			if _, list := k.raw.([]any); !list {
				line.SI = w.keep(k.si)
			}
		}
	}
	return lines
}

func (w *writing) resultLines() []sheet.Result {
	lines := make([]sheet.Result, 0, len(w.measures))
	for i := range w.measures {
		m := &w.measures[i]
		p := m.property
		lines = append(lines, sheet.Result{})
		line := &lines[len(lines)-1] // filled in its place: it is long
		line.Term, line.Text = w.form.results.places[p.Index].term, m.text
		if m.word == "" {
			line.SI = w.keep(m.si)
		}
		w.addRange(line, m)
		w.addMaker(line, p)
	}
	return lines
}

// addRange writes the 95 % interval and who has the largest part in it.
func (w *writing) addRange(line *sheet.Result, m *measure) {
	if m.span == nil || m.span.StdDev == 0 {
		return
	}
	line.Spread = &sheet.Spread{Low: m.low, High: m.high, Interval: w.showBeside(m.property, m.si, m.low, m.high)}
	byInput := make([]float64, len(w.inputs))
	for i, l := range w.leaves {
		byInput[l.input] += m.span.Shares[i]
	}
	for i, share := range byInput {
		if share >= leastShare {
			p := w.form.Input.Properties[i]
			line.Shares = append(line.Shares, sheet.Share{Input: p.Name, Title: p.Title, Share: share})
		}
	}
	slices.SortStableFunc(line.Shares, func(a, b sheet.Share) int {
		switch {
		case a.Share > b.Share:
			return -1
		case a.Share < b.Share:
			return 1
		}
		return 0
	})
}

// leastShare is the smallest part of a spread that is worth a line.
const leastShare = 0.01

// addMaker sets the maker's own figure beside a result.
func (w *writing) addMaker(line *sheet.Result, p *contract.Property) {
	fig := w.session.boat.figureOf(p.Path)
	if fig == nil {
		return
	}
	si, _, err := numeric(p, fig.value)
	if err != nil {
		w.notes = append(w.notes, "The maker's figure for "+p.Title+" cannot be read: "+err.Error())
		return
	}
	line.Maker = &sheet.Maker{Text: w.show(p, si), SI: si, Source: fig.source}
}

func (w *writing) workLines() []sheet.Work {
	lines := make([]sheet.Work, 0, len(w.measures))
	units := w.session.units
	if units == quantity.Both {
		units = quantity.Metric // a line of formula holds one system
	}
	print := func(p *contract.Property, si float64, text string) string {
		if units == w.session.units {
			return text
		}
		return w.showIn(p, si, units)
	}
	text := func(p *contract.Property) string {
		if p.IsResult {
			if m := w.room.results[p.Index]; m != nil {
				return print(p, m.si, m.text)
			}
			return ""
		}
		switch k := &w.inputs[p.Index]; {
		case !k.is:
			return ""
		case p.Kind == nil && k.word != "":
			return strconv.Quote(k.word)
		default:
			return print(p, k.si, k.text)
		}
	}
	for _, m := range w.measures {
		p := m.property
		line := sheet.Work{Way: w.form.results.places[p.Index].way, Answer: m.text}
		if p.Formula != "" {
			w.room.formula = w.form.Formulas.AppendFilled(w.room.formula[:0], p, text)
			line.Filled = string(w.room.formula)
		}
		lines = append(lines, line)
	}
	return lines
}

func (w *writing) cautions() []sheet.Caution {
	all := w.session.book.Cautions(w.form.ID)
	out := make([]sheet.Caution, 0, all.Len())
	for _, c := range all.All() {
		if c.Valid.Meets(w.lookupAny) {
			out = append(out, sheet.Caution{Signal: string(c.Signal), Text: c.Text, Source: c.Source.String()})
		}
	}
	return out
}

// next is the advice that fits: first what the verdicts ask for, most urgent
// first as they are, then what always holds.
func (w *writing) next(verdicts []sheet.Verdict) []sheet.Next {
	all, chosen := w.room.advice, w.room.chosen
	for _, a := range w.session.book.Advice(w.form.ID).All() {
		if a.Valid.Meets(w.lookupAny) {
			all = append(all, a)
		}
	}
	word := func(limit string) string {
		for i := range verdicts {
			if verdicts[i].Limit == limit {
				return verdicts[i].Word
			}
		}
		return ""
	}
	add := func(fits func(*rules.Advice) bool) {
		for i := range all {
			a := &all[i]
			said := func(b *rules.Advice) bool { return a.Text == b.Text && a.Source.String() == b.Source.String() }
			if fits(a) && a.OtherVerdicts.Agree(word) && !slices.ContainsFunc(chosen, said) {
				chosen = append(chosen, a)
			}
		}
	}
	for i := range verdicts {
		v := &verdicts[i]
		add(func(a *rules.Advice) bool { return v.Limit == a.Limit && rules.Contains(a.Words, v.Word) })
	}
	add(func(a *rules.Advice) bool { return a.Limit == "" })
	w.room.advice, w.room.chosen = all, chosen
	out := make([]sheet.Next, len(chosen))
	for i, a := range chosen {
		out[i] = sheet.Next{Text: a.Text, Source: a.Source.String()}
	}
	return out
}

// result is what came out under that name, or nil.
func (w *writing) result(name string) *measure {
	if p := w.form.Result.Child(name); p != nil {
		return w.room.results[p.Index]
	}
	return nil
}

// lookupAny gives the number or word of a known input or result.
func (w *writing) lookupAny(name string) (si float64, word string, ok bool) {
	if m := w.result(name); m != nil {
		return m.si, m.word, true
	}
	return w.lookup(name)
}

// appendSources writes every source of the sheet once behind list, which is
// empty.
func appendSources(list []string, s *sheet.Sheet) []string {
	add := func(text string) {
		if text != "" && !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	for _, i := range s.Inputs {
		if i.Origin != sheet.Earlier {
			add(i.Source)
		}
	}
	for _, l := range s.Work {
		add(l.Source)
	}
	for _, v := range s.Verdicts {
		add(v.Source)
	}
	for _, c := range s.Cautions {
		add(c.Source)
	}
	return list
}
