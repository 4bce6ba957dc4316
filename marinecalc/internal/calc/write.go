package calc

import (
	"slices"
	"sort"
	"strconv"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// writing is a run whose results are judged, on its way to a sheet.
type writing struct {
	*judgement
	session *Session
	call    *call
	buf     *scratch
}

func (r *writing) write() *Outcome {
	r.chances()
	s := &sheet.Sheet{
		Calculation: r.in.form.ID, Title: r.in.form.Title, Answers: r.in.form.Answers,
		Inputs: r.inputLines(), Results: r.resultLines(), Tables: r.tableLines(), Work: []sheet.Work{},
		Trials: r.trials, Notes: r.notes, Made: r.session.Made(),
	}
	if !r.session.brief {
		s.Work = r.tableWork(r.workLines())
	}
	s.Verdicts = r.verdicts()
	r.overTyped()
	r.idleFigures()
	s.Conflicts = r.conflicts
	s.Cautions = r.cautions()
	s.Next = r.next(s.Verdicts)
	s.Drawings = []sheet.Drawing{}
	if r.call.draw != nil && !r.session.brief {
		s.Drawings = append(s.Drawings, r.call.draw(picture.Brush{Units: r.session.Units, Currency: r.in.currency,
			Titles: func(result, code string) string { return r.in.form.Result.Child(result).Words(code) }, Open: func(result string) bool { return !r.tells(result) }})...)
	}
	r.buf.sources = appendSources(r.buf.sources, s)
	s.Sources = slices.Clone(r.buf.sources)
	for _, o := range s.Made.Overlays {
		s.Notes = append(s.Notes, "Overlay applied to the standard rules: "+o.Title+".")
	}
	out := &Outcome{Sheet: s}
	for i := range r.in.values {
		out.newest = max(out.newest, r.in.values[i].date)
	}
	var last []*contract.Property
	var titles []string // that results rest on; most rest on the same
	for i := range r.measures {
		if m := &r.measures[i]; len(m.unverified) > 0 {
			if out.Unverified == nil {
				out.Unverified = make([]Unverified, 0, len(r.measures)-i)
			}
			if !slices.Equal(m.unverified, last) {
				last, titles = m.unverified, r.roots(m.unverified)
			}
			out.Unverified = append(out.Unverified, Unverified{m.property.Name, titles})
		}
	}
	return out
}

func (r *writing) inputLines() []sheet.Input {
	count := 0
	for i := range r.in.values {
		if r.in.values[i].known {
			count++
		}
	}
	lines := make([]sheet.Input, 0, count)
	for i, p := range r.in.form.Input.Properties {
		k := &r.in.values[i]
		if !k.known {
			continue
		}
		lines = lines[:len(lines)+1]
		line := &lines[len(lines)-1] // filled in its place: it is long
		line.Term, line.Text, line.Range, line.Origin, line.Source = r.in.form.Inputs.Places[i].Term, k.text, k.rangeText, k.origin, k.source
		line.Authority, line.Unverified = k.authority, !k.confirmed
		if p.Kind != nil {
			line.SI = r.keep(k.si)
		} else if line.Word = k.word; k.word == "" && k.raw != nil {
			if _, list := k.raw.([]any); !list {
				line.SI = r.keep(k.si)
			}
		}
	}
	return lines
}

func (r *writing) resultLines() []sheet.Result {
	lines := make([]sheet.Result, len(r.measures))
	for i := range r.measures {
		m := &r.measures[i]
		p := m.property
		line := &lines[i] // filled in its place: it is long
		line.Term, line.Text = r.in.form.Results.Places[p.Index].Term, m.text
		if m.word == "" {
			line.SI = r.keep(m.si)
		}
		r.addRange(line, m)
		r.addMaker(line, p)
	}
	return lines
}

// addRange writes the 95 % interval and who has the largest part in it.
func (r *writing) addRange(line *sheet.Result, m *measure) {
	if m.span == nil || !m.span.Usable || m.span.StdDev == 0 {
		return
	}
	line.Spread = r.spreadOf(m)
	byInput := make([]float64, len(r.in.values))
	for i, l := range r.in.variates {
		byInput[l.input] += m.span.Shares[i]
	}
	for i, share := range byInput {
		if share >= leastShare {
			p := r.in.form.Input.Properties[i]
			line.Shares = append(line.Shares, sheet.Share{Input: p.Name, Title: p.Title, Share: share})
		}
	}
	sort.SliceStable(line.Shares, func(i, j int) bool { return line.Shares[i].Share > line.Shares[j].Share })
}

// spreadOf is the 95 % interval of a number that has one.
func (r *writing) spreadOf(m *measure) sheet.Spread {
	return sheet.Spread{Low: r.keep(m.low), High: r.keep(m.high), Interval: r.in.showBeside(m.property, m.si, m.low, m.high)}
}

// leastShare is the smallest part of a spread that is worth a line.
const leastShare = 0.01

// addMaker sets the maker's own figure beside a result.
func (r *writing) addMaker(line *sheet.Result, p *contract.Property) {
	fig, ok := r.session.Boat.FigureOf(p.Path)
	if !ok {
		return
	}
	si, _, err := Numeric(p, fig.Value)
	if err != nil {
		r.notes = append(r.notes, "The maker's figure for "+p.Title+" cannot be read: "+err.Error())
		return
	}
	line.Maker = &sheet.Maker{Text: r.in.show(p, si), SI: si, Source: fig.Source}
}

func (r *writing) workLines() []sheet.Work {
	lines := make([]sheet.Work, len(r.measures), len(r.measures)+len(r.tables))
	units := r.session.Units
	if units == quantity.Both {
		units = quantity.Metric // a line of formula holds one system
	}
	print := func(p *contract.Property, si float64, text string) string {
		if units == r.session.Units {
			return text
		}
		return r.in.showIn(p, si, units)
	}
	text := func(p *contract.Property) string {
		if p.IsResult {
			if m := r.run.buf.byProperty[p.Index]; m != nil {
				if units != r.session.Units && m.span != nil && m.span.Usable {
					return r.in.showToIn(p, m.si, m.half(), units)
				}
				return print(p, m.si, m.text)
			}
			return ""
		}
		switch k := &r.in.values[p.Index]; {
		case !k.known:
			return ""
		case p.Kind == nil && k.word != "":
			return strconv.Quote(k.word)
		default:
			return print(p, k.si, k.text)
		}
	}
	for i := range r.measures {
		m := &r.measures[i]
		p := m.property
		line := &lines[i] // filled in its place: it is long
		line.Way, line.Answer = r.in.form.Results.Places[p.Index].Way, m.text
		if p.Formula != "" {
			r.buf.formula = r.in.form.Formulas.AppendFilled(r.buf.formula[:0], p, text)
			line.Filled = r.in.texts.keep(r.buf.formula)
		}
	}
	return lines
}

func (r *writing) cautions() []sheet.Caution {
	out := make([]sheet.Caution, 0, len(r.ruled.cautions))
	for i := range r.ruled.cautions {
		if c := &r.ruled.cautions[i]; c.valid.Meets(r.lookupAny) {
			out = append(out, c.Caution)
		}
	}
	if r.call.hazards == nil {
		return out
	}
	for _, id := range r.call.hazards() { // what is at hand, in its own order
		for _, c := range r.session.Book.AllCautions().All() {
			if c.ID == id && !rules.Contains(c.Calculations, r.in.form.ID) && c.Valid.Meets(r.lookupAny) {
				out = append(out, sheet.Caution{Signal: c.Signal, Text: c.Text, Source: c.Source.String()})
			}
		}
	}
	r.session.Book.SortCautions(out)
	return out
}

// next is the advice that fits: first what the verdicts ask for, most urgent
// first as they are, then what always holds.
func (r *writing) next(verdicts []sheet.Verdict) []sheet.Next {
	all, chosen := r.buf.advice, r.buf.chosen
	for i := range r.ruled.advice {
		if a := &r.ruled.advice[i]; a.Valid.Meets(r.lookupAny) {
			all = append(all, a)
		}
	}
	word := func(limit string) sheet.Word {
		for i := range verdicts {
			if verdicts[i].Limit == limit {
				return verdicts[i].Word.Plain()
			}
		}
		return ""
	}
	add := func(fits func(*rules.Advice) bool) {
		for _, a := range all {
			said := func(b *rules.Advice) bool { return a.Text == b.Text && a.Source.String() == b.Source.String() }
			if fits(a) && a.OtherVerdicts.Agree(word) && !slices.ContainsFunc(chosen, said) {
				chosen = append(chosen, a)
			}
		}
	}
	for i := range verdicts {
		v := &verdicts[i]
		add(func(a *rules.Advice) bool { return v.Limit == a.Limit && rules.Contains(a.Words, v.Word.Plain()) })
	}
	add(func(a *rules.Advice) bool { return a.Limit == "" })
	r.buf.advice, r.buf.chosen = all, chosen
	out := make([]sheet.Next, len(chosen))
	for i, a := range chosen {
		out[i] = sheet.Next{Text: a.Text, Source: a.Source.String()}
	}
	return out
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
