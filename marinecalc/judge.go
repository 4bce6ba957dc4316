package marinecalc

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// verdicts holds the results and readings against every limit that applies.
func (w *writing) verdicts() []sheet.Verdict {
	applying := w.room.limits
	for _, l := range w.session.book.Limits(w.form.ID).All() {
		if l.Valid.Meets(w.lookupAny) {
			applying = append(applying, l)
		}
	}
	w.room.limits = applying
	out := make([]sheet.Verdict, len(applying))
	for i := range applying {
		w.judge(w.ours(&applying[i]), &out[i])
	}
	slices.SortStableFunc(out, func(a, b sheet.Verdict) int { return urgency[a.Word] - urgency[b.Word] })
	return out
}

// urgency orders the words of verdicts, most urgent first.
var urgency = map[string]int{
	string(spread.Beyond): 0, string(spread.CannotTell): 1, string(spread.NearLimit): 2,
	string(spread.Within): 3, string(spread.NotMeasured): 4,
}

// ours lays the maker's figure of the boat file over a limit; it always wins.
func (w *writing) ours(l *rules.Limit) *rules.Limit {
	fig := w.session.boat.figureOf(l.ID)
	if fig == nil {
		return l
	}
	p := w.property(l.On)
	if p == nil {
		return l
	}
	si, _, err := numeric(p, fig.value)
	if err != nil {
		w.notes = append(w.notes, "The maker's figure for "+l.Title+" cannot be read: "+err.Error())
		return l
	}
	bound := rules.BoundAt(si)
	own := *l
	if l.Max.Given() {
		own.Max = bound
	} else {
		own.Min = bound
	}
	own.Provenance = rules.Provenance{Source: rules.NewSource(fig.source, "", ""), Basis: rules.ByMaker}
	return &own
}

// property is the input or result of that name.
func (w *writing) property(name string) *contract.Property {
	if p := w.form.Result.Child(name); p != nil {
		return p
	}
	return w.form.Input.Child(name)
}

// judged is the value that a limit is on, as it is judged.
type judged struct {
	si, low, high float64 // low and high are its 95 % interval
	text          string
	span          *spread.Range
	doubtful      []*contract.Property
}

// value finds what a limit is on: a result, or an input with its own accuracy.
func (w *writing) value(on string) (judged, bool) {
	if m := w.result(on); m != nil {
		j := judged{si: m.si, low: m.si, high: m.si, text: m.text, span: m.span, doubtful: m.doubtful}
		if m.span != nil {
			j.low, j.high = m.low, m.high
		}
		return j, true
	}
	if k := w.at(on); k != nil {
		return judged{si: k.si, low: k.factor.Low, high: k.factor.High, text: k.text, span: w.ownRange(k)}, true
	}
	return judged{}, false
}

// ownRange is the range of an input that is judged as it was read.
func (w *writing) ownRange(k *known) *spread.Range {
	if k.factor.Shape == spread.Exact || w.session.trials < 0 {
		return nil
	}
	out, err := new(spread.Workspace).Propagate([]spread.Factor{k.factor}, 1,
		spread.Plan{Trials: w.session.trials, Seed: w.session.seed},
		func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		return nil
	}
	return &out.Results[0]
}

// judge holds what a limit is on against it.
func (w *writing) judge(l *rules.Limit, v *sheet.Verdict) {
	p := w.property(l.On)
	v.Limit, v.Title, v.On, v.Authority, v.Source = l.ID, l.Title, l.On, l.Basis.Authority(), l.Source.String()
	limit, text, ok := w.limit(l, p)
	v.Bound = text
	j, measured := w.value(l.On)
	if !ok || !measured {
		v.Word = string(spread.NotMeasured)
		v.Sentence = strings.TrimSpace(l.Title + ": not measured. " + l.How)
		return
	}
	v.Value = j.text
	judgement := spread.Judge(j.si, j.span, limit)
	if l.Chance {
		judgement = spread.JudgeChance(j.si)
	}
	if doubt, remedy := w.doubt(l, j); doubt != "" {
		v.Word = string(spread.CannotTell)
		v.Sentence = l.Title + ": " + j.text + "; " + doubt + ". " + remedy
		for _, p := range j.doubtful {
			v.Awaits = append(v.Awaits, p.Title)
		}
		return
	}
	v.Word = string(judgement.Word)
	if !math.IsNaN(judgement.Probability) {
		v.Probability = &judgement.Probability
	}
	v.Sentence = w.sentence(l, p, j, judgement, limit, text)
	if judgement.Word == spread.CannotTell && !l.Chance {
		v.Settle = w.settle(p, j, limit)
	}
}

// limit turns a limit's row into numbers and words.
func (w *writing) limit(l *rules.Limit, p *contract.Property) (spread.Limit, string, bool) {
	bound, side, limit := &l.Max, "at most ", spread.Limit{Max: math.NaN(), Min: math.NaN(), Near: l.Near}
	if l.Min.Given() {
		bound, side = &l.Min, "at least "
	}
	si := bound.SI
	if p != nil && p.Kind != nil && bound.Kind != nil && bound.Kind != p.Kind {
		if r, err := p.Kind.Parse(bound.Text); err == nil {
			si = r.SI // the unit alone would take 20 °C for a temperature where a difference is meant
		}
	}
	if bound.Of != "" {
		of, ok := w.value(bound.Of)
		if !ok {
			return limit, side + "a figure that is not known", false
		}
		si = of.si
	}
	if l.Min.Given() {
		limit.Min = si
	} else {
		limit.Max = si
	}
	if p == nil {
		return limit, side + bound.Text, true
	}
	return limit, side + w.show(p, si), true
}

// doubt says why a value may not be judged, and what would mend that: a figure
// behind it, or the limit itself, is of the kind that no source confirms.
func (w *writing) doubt(l *rules.Limit, j judged) (why, remedy string) {
	if !l.Decides {
		return "the limit is not confirmed by a source, so no verdict is drawn from it", l.How
	}
	if len(j.doubtful) == 0 {
		return "", ""
	}
	titles := make([]string, len(j.doubtful))
	for i, p := range j.doubtful {
		titles[i] = strings.ToLower(p.Title)
	}
	remedy = "Type it as the maker gives it, or as you measured it, and it can be told."
	if len(titles) > 1 {
		remedy = "Type them as the maker gives them, or as you measured them, and it can be told."
	}
	return "it rests on " + strings.Join(titles, ", ") + ", for which no confirmed figure is published, so no verdict is drawn from it", remedy
}

func (w *writing) sentence(l *rules.Limit, p *contract.Property, j judged, judgement spread.Judgement, limit spread.Limit, bound string) string {
	value := j.text
	if j.low < j.high && p != nil {
		if span := w.showBeside(p, j.si, j.low, j.high); span != "" {
			value += " (" + span + ")"
		}
	}
	if l.Chance {
		return chanceSentence(l, j.text, judgement.Word)
	}
	switch judgement.Word {
	case spread.Within:
		return l.Title + ": " + value + ", within " + bound + "."
	case spread.NearLimit:
		return l.Title + ": " + value + ", within " + bound + nearness(j.si, limit) + "."
	case spread.Beyond:
		return strings.TrimSpace(l.Title + ": " + value + ", beyond " + bound + ". " + l.Why)
	default:
		return l.Title + ": " + value + "; whether it is " + bound + " cannot be told from this."
	}
}

// nearness says how near to its limit a value is that is called near to it.
func nearness(si float64, l spread.Limit) string {
	if l.Max > 0 && l.Max != 1 && math.IsNaN(l.Min) && si > 0 { // what is held against 1 is such a part itself
		return fmt.Sprintf(", of which it takes up %.0f %%", 100*si/l.Max)
	}
	return " but close to it"
}

// chanceSentence words the verdict on a chance that all is well.
func chanceSentence(l *rules.Limit, chance string, word spread.Word) string {
	switch word {
	case spread.Within:
		return fmt.Sprintf("%s: yes, with a chance of %s.", l.Title, chance)
	case spread.Beyond:
		return strings.TrimSpace(fmt.Sprintf("%s: hardly, with a chance of %s. %s", l.Title, chance, l.Why))
	}
	return fmt.Sprintf("%s: the chance is %s, which is neither a yes nor a no.", l.Title, chance)
}

// settle says which gauge, or how many readings, would settle a verdict. All
// readings taken with one gauge count as one.
func (w *writing) settle(p *contract.Property, j judged, limit spread.Limit) string {
	switch {
	case j.span == nil:
		return ""
	case j.si < j.span.Low: // a size near nothing: whose part in its spread is largest cannot be told
		return finestGauge
	}
	byInput := *j.span
	byInput.Shares = make([]float64, len(w.inputs))
	if len(j.span.Shares) == len(w.leaves) {
		for i, l := range w.leaves {
			byInput.Shares[l.input] += j.span.Shares[i]
		}
	} else {
		byInput.Shares[p.Index] = 1 // the input itself is what is judged
	}
	var measured []spread.Measured
	var gauges [][]rules.Row
	for i, p := range w.form.Input.Properties {
		m, rows, ok := w.measurable(i, p)
		if ok {
			measured, gauges = append(measured, m), append(gauges, rows)
		}
	}
	s := spread.Settle(&byInput, limit, measured)
	var ways []string
	if s.GaugeFactor >= 0 {
		for i, m := range measured {
			if m.Factor == s.GaugeFactor {
				ways = append(ways, fmt.Sprintf("read %s with a %s", w.called(m.Factor), strings.ToLower(gauges[i][s.Gauge].Name)))
			}
		}
	}
	if s.RepeatFactor >= 0 {
		ways = append(ways, fmt.Sprintf("take the mean of %d readings of %s", s.Readings, w.called(s.RepeatFactor)))
	}
	switch {
	case len(ways) > 0:
		return "To settle it, " + strings.Join(ways, ", or ") + "."
	case s.Together:
		return finestGauge
	case s.Blocker >= 0 && w.form.Input.Properties[s.Blocker].ReadBy != "" || s.Blocker >= 0 && w.form.Input.Properties[s.Blocker].Items != nil:
		return "It lies so close to the limit that none of the gauges known here can settle it."
	case s.Blocker >= 0:
		return "No gauge settles it: most of what is left of the spread comes from " + w.called(s.Blocker) + "."
	}
	return "No single gauge settles it."
}

const finestGauge = "To settle it, take every reading with the finest gauge to be had."

func (w *writing) called(input int) string {
	return strings.ToLower(w.form.Input.Properties[input].Title)
}

// measurable gives an input's standard uncertainty with the gauge in hand,
// and the gauges that read its kind of quantity.
func (w *writing) measurable(i int, p *contract.Property) (spread.Measured, []rules.Row, bool) {
	kind, readBy, si := p.Kind, p.ReadBy, w.inputs[i].si
	in := w.inputs[i].factor
	if p.Items != nil {
		for _, part := range p.Items.Properties {
			if part.ReadBy != "" {
				kind, readBy = part.Kind, part.ReadBy
			}
		}
		for _, l := range w.leaves {
			if l.input == i {
				in, si = l.factor, l.factor.Estimate
			}
		}
	}
	if readBy == "" || kind == nil || in.Shape == spread.Exact {
		return spread.Measured{}, nil, false
	}
	m := spread.Measured{Factor: i, InHand: in.StdDev()}
	var rows []rules.Row
	for _, row := range w.session.book.Table(gauges).Rows.All() {
		if !readsKind(row, kind) {
			continue
		}
		a, err := kind.ParseAccuracy(row.Values.Of("accuracy").Text, si)
		if err == nil && a > 0 {
			m.Gauges = append(m.Gauges, spread.Factor{Estimate: si, Low: si - a, High: si + a, Shape: spread.Rectangular}.StdDev())
			rows = append(rows, row)
		}
	}
	return m, rows, true
}

// readsKind tells whether a gauge reads that kind of quantity.
func readsKind(gauge rules.Row, kind *quantity.Kind) bool {
	return strings.Contains(gauge.Values.Of("reads").Text, strings.ReplaceAll(kind.Name, "-", " "))
}
