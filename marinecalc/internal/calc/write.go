package calc

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/calc/results"
	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// writing is a run whose results are judged, on its way to a sheet.
type writing struct {
	*verdict.Judgement
	session *Session
	call    *call
	buf     *scratch
}

func (r *writing) write() *inputs.Outcome {
	r.Chances()
	s := &sheet.Sheet{
		Calculation: r.In.Form.ID, Title: r.In.Form.Title, Answers: r.In.Form.Answers,
		Inputs: r.inputLines(), Results: r.resultLines(), Tables: r.tableLines(), Work: []sheet.Work{},
		Trials: r.Trials, Notes: r.Notes, Made: r.session.Made(),
	}
	if !r.session.brief {
		s.Work = r.tableWork(r.workLines())
	}
	r.ByTwoGauges()
	s.Verdicts = r.Verdicts()
	r.OverTyped()
	r.IdleFigures()
	s.Conflicts = r.Conflicts
	s.Cautions = r.cautions()
	s.Next = r.next(s.Verdicts)
	if r.call.work != nil {
		s.Procedures = r.call.work()
	}
	s.Drawings = []sheet.Drawing{}
	if r.call.draw != nil && !r.session.brief {
		s.Drawings = append(s.Drawings, r.call.draw(picture.Brush{Units: r.session.Units, Currency: r.In.Currency,
			Titles: func(result, code string) string { return r.In.Form.Result.Child(result).Words(code) }, Open: func(result string) bool { return !r.Tells(result) }})...)
	}
	r.buf.sources = appendSources(r.buf.sources, s)
	s.Sources = slices.Clone(r.buf.sources)
	for _, o := range s.Made.Overlays {
		s.Notes = append(s.Notes, "Overlay applied to the standard rules: "+o.Title+".")
	}
	out := &inputs.Outcome{Sheet: s}
	for i := range r.In.Values {
		day := r.In.Values[i].Date
		out.Newest = max(out.Newest, day)
		if strings.HasPrefix(r.In.Form.Input.Properties[i].Boat, boat.LatestReading) && day != "" && (out.Oldest == "" || day < out.Oldest) {
			out.Oldest = day
		}
	}
	for i := range r.Measures {
		m := &r.Measures[i]
		if !contract.HandedOn(m.Property.Path) {
			continue
		}
		if list := m.Span.List(m.Si, m.Low, m.High); list != nil {
			if out.Lists == nil {
				out.Lists = map[string]*spread.List{}
			}
			out.Lists[m.Property.Name] = list
		}
	}
	var last []*contract.Property
	var titles []string // that results rest on; most rest on the same
	for i := range r.Measures {
		if m := &r.Measures[i]; len(m.Unverified) > 0 {
			if out.Unverified == nil {
				out.Unverified = make([]inputs.Unverified, 0, len(r.Measures)-i)
			}
			if !slices.Equal(m.Unverified, last) {
				last, titles = m.Unverified, r.Roots(m.Unverified)
			}
			out.Unverified = append(out.Unverified, inputs.Unverified{Result: m.Property.Name, RestsOn: titles})
		}
	}
	return out
}

func (r *writing) inputLines() []sheet.Input {
	count := 0
	for i := range r.In.Values {
		if r.In.Values[i].Known {
			count++
		}
	}
	lines := make([]sheet.Input, 0, count)
	for i, p := range r.In.Form.Input.Properties {
		k := &r.In.Values[i]
		if !k.Known {
			continue
		}
		lines = lines[:len(lines)+1]
		line := &lines[len(lines)-1] // filled in its place: it is long
		line.Term, line.Text, line.Range, line.Origin, line.Source = r.In.Form.Inputs.Places[i].Term, k.Text, k.RangeText, k.Origin, k.Source
		line.Authority, line.Unverified = k.Authority, !k.Confirmed
		if p.Kind != nil {
			line.SI = r.Keep(k.Si)
		} else if line.Word = k.Word; k.Word == "" && k.Raw != nil {
			if _, list := k.Raw.([]any); !list {
				line.SI = r.Keep(k.Si)
			}
		}
	}
	return lines
}

func (r *writing) resultLines() []sheet.Result {
	lines := make([]sheet.Result, len(r.Measures))
	for i := range r.Measures {
		m := &r.Measures[i]
		p := m.Property
		line := &lines[i] // filled in its place: it is long
		line.Term, line.Text, line.Word, line.Sequence = r.In.Form.Results.Places[p.Index].Term, m.Text, codeOf(m), m.Sequence
		if m.Word == "" {
			line.SI = r.Keep(m.Si)
		}
		r.addRange(line, m)
		r.addMaker(line, p)
	}
	return lines
}

// codeOf is the code of a result that people read in other words, "" of any other.
func codeOf(m *results.Measure) string {
	if m.Word == m.Text || !slices.Contains(m.Property.Enum, m.Word) {
		return ""
	}
	return m.Word
}

// addRange writes the 95 % interval and who has the largest part in it.
func (r *writing) addRange(line *sheet.Result, m *results.Measure) {
	if m.Span == nil || !m.Span.Usable || m.Span.StdDev == 0 {
		return
	}
	line.Spread = r.spreadOf(m)
	byInput := make([]float64, len(r.In.Values))
	for i, l := range r.In.Variates {
		byInput[l.Input] += m.Span.Shares[i]
	}
	for i, share := range byInput {
		if share >= leastShare {
			p := r.In.Form.Input.Properties[i]
			line.Shares = append(line.Shares, sheet.Share{Input: p.Name, Title: p.Title, Share: share})
		}
	}
	sort.SliceStable(line.Shares, func(i, j int) bool { return line.Shares[i].Share > line.Shares[j].Share })
}

// spreadOf is the 95 % interval of a number that has one.
func (r *writing) spreadOf(m *results.Measure) sheet.Spread {
	return sheet.Spread{Low: r.Keep(m.Low), High: r.Keep(m.High), Interval: r.In.ShowBeside(m.Property, m.Si, m.Low, m.High)}
}

// leastShare is the smallest part of a spread that is worth a line.
const leastShare = 0.01

// addMaker sets the maker's own figure beside a result.
func (r *writing) addMaker(line *sheet.Result, p *contract.Property) {
	fig, ok := r.session.Boat.FigureOf(p.Path)
	if !ok {
		return
	}
	si, _, err := inputs.Numeric(p, fig.Value)
	if err != nil {
		r.Notes = append(r.Notes, "The maker's figure for "+p.Title+" cannot be read: "+err.Error())
		return
	}
	line.Maker = &sheet.Maker{Text: r.In.Show(p, si), SI: si, Source: fig.Source}
}

// numberOf is an input or a result in SI units; ok is false where it is not known.
func (r *writing) numberOf(p *contract.Property) (si float64, ok bool) {
	if !p.IsResult {
		k := &r.In.Values[p.Index]
		return k.Si, k.Known
	}
	if m := r.Run.Buf.ByProperty[p.Index]; m != nil {
		return m.Si, true
	}
	return 0, false
}

func (r *writing) workLines() []sheet.Work {
	lines := make([]sheet.Work, len(r.Measures), len(r.Measures)+len(r.Tables))
	units := r.session.Units
	if units == quantity.Both {
		units = quantity.Metric // a line of formula holds one system
	}
	print := func(p *contract.Property, si float64, text string) string {
		if units == r.session.Units {
			return text
		}
		return r.In.ShowIn(p, si, units)
	}
	text := func(p *contract.Property, absolute bool) string {
		if absolute {
			if si, ok := r.numberOf(p); ok {
				return strconv.FormatFloat(si, 'f', 1, 64) + " K"
			}
		}
		if p.IsResult {
			if m := r.Run.Buf.ByProperty[p.Index]; m != nil {
				if units != r.session.Units && m.Span != nil && m.Span.Usable {
					return r.In.ShowToIn(p, m.Si, m.Half(), units)
				}
				return print(p, m.Si, m.Text)
			}
			return ""
		}
		switch k := &r.In.Values[p.Index]; {
		case !k.Known:
			return ""
		case p.Kind == nil && k.Word != "":
			return strconv.Quote(k.Word)
		default:
			return print(p, k.Si, k.Text)
		}
	}
	for i := range r.Measures {
		m := &r.Measures[i]
		p := m.Property
		line := &lines[i] // filled in its place: it is long
		line.Way, line.Answer = r.In.Form.Results.Places[p.Index].Way, m.Text
		if p.Formula != "" {
			r.buf.formula = r.In.Form.Formulas.AppendFilled(r.buf.formula[:0], p, text)
			line.Filled = r.In.Texts.Keep(r.buf.formula)
		}
	}
	return lines
}

func (r *writing) cautions() []sheet.Caution {
	out := make([]sheet.Caution, 0, len(r.Ruled.Cautions))
	for i := range r.Ruled.Cautions {
		if c := &r.Ruled.Cautions[i]; c.Valid.Meets(r.LookupAny) {
			out = append(out, c.Caution)
		}
	}
	if r.call.hazards == nil {
		return out
	}
	for _, id := range r.call.hazards() { // what is at hand, in its own order
		for _, c := range r.session.Book.AllCautions().All() {
			if c.ID == id && !rules.Contains(c.Calculations, r.In.Form.ID) && c.Valid.Meets(r.LookupAny) {
				out = append(out, c.Said())
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
	for i := range r.Ruled.Advice {
		if a := &r.Ruled.Advice[i]; a.Valid.Meets(r.LookupAny) {
			all = append(all, a)
		}
	}
	word := func(limit string) sheet.Word { return r.wordOf(verdicts, limit) }
	follows := func(a *rules.Advice) bool { return a.Limit == "" || rules.Contains(a.Words, word(a.Limit)) }
	add := func(fits func(*rules.Advice) bool) {
		for _, a := range all {
			said := func(b *rules.Advice) bool { return a.Text == b.Text && a.Source.String() == b.Source.String() }
			if fits(a) && a.OtherVerdicts.Agree(word) && !slices.ContainsFunc(chosen, said) {
				chosen = append(chosen, a)
			}
		}
	}
	add(func(a *rules.Advice) bool { // what another sheet of the boat says goes first
		return strings.Contains(a.Limit, "/") && rules.Contains(a.Words, word(a.Limit))
	})
	add(func(a *rules.Advice) bool { return a.Stops.Len() > 0 && follows(a) })
	add(func(a *rules.Advice) bool { return a.Before && follows(a) })
	for i := range verdicts {
		v := &verdicts[i]
		if !v.Hangs { // what it hangs on has the advice
			add(func(a *rules.Advice) bool { return v.Limit == a.Limit && rules.Contains(a.Words, v.Word.Plain()) })
		}
	}
	add(func(a *rules.Advice) bool { return a.Limit == "" })
	r.buf.advice, r.buf.chosen = all, chosen
	out := make([]sheet.Next, len(chosen))
	for i, a := range chosen {
		out[i] = sheet.Next{Text: quantity.Either(a.Text, r.session.Units), Source: a.Source.String(), Runs: a.Runs, Stops: rules.Join(nil, a.Stops)}
	}
	return out
}

// wordOf is the word on a limit of this sheet, or "calculation/limit" of another
// sheet of the boat; "" where it does not apply, or the boat does not allow that
// sheet.
func (r *writing) wordOf(verdicts []sheet.Verdict, limit string) sheet.Word {
	if id, other, is := strings.Cut(limit, "/"); is {
		if r.session.Boat == nil {
			return ""
		}
		if made := r.session.Earlier(id); made != nil {
			if v := made.Sheet.Verdict(other); v != nil {
				return v.Word.Plain()
			}
		}
		return ""
	}
	for i := range verdicts {
		if verdicts[i].Limit == limit {
			return verdicts[i].Word.Plain()
		}
	}
	return ""
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
