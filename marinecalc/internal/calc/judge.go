package calc

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// verdicts holds the results and readings against every limit that applies.
func (r *run) verdicts() []sheet.Verdict {
	applying := r.in.buf.limits
	for _, l := range r.in.session.Book.Limits(r.in.form.ID).All() {
		if l.Valid.Meets(r.lookupAny) {
			applying = append(applying, l)
		}
	}
	r.in.buf.limits = applying
	out := make([]sheet.Verdict, len(applying))
	for i := range applying {
		r.judge(r.withMakersFigure(&applying[i]), &out[i])
	}
	slices.SortStableFunc(out, func(a, b sheet.Verdict) int { return a.Word.Rank() - b.Word.Rank() })
	return out
}

// withMakersFigure gives a limit with the maker's figure of the boat file, which always wins.
func (r *run) withMakersFigure(l *rules.Limit) *rules.Limit {
	fig, ok := r.in.session.Boat.FigureOf(l.ID)
	if !ok {
		return l
	}
	p := r.property(l.On)
	if p == nil {
		return l
	}
	si, _, err := Numeric(p, fig.Value)
	if err != nil {
		r.notes = append(r.notes, "The maker's figure for "+l.Title+" cannot be read: "+err.Error())
		return l
	}
	bound := rules.BoundAt(si)
	own := *l
	if l.Max.Given() {
		own.Max = bound
	} else {
		own.Min = bound
	}
	own.Provenance = rules.Provenance{Source: rules.NewSource(fig.Source, "", ""), Basis: rules.ByMaker}
	return &own
}

// property is the input or result of that name.
func (r *run) property(name string) *contract.Property {
	if p := r.in.form.Result.Child(name); p != nil {
		return p
	}
	return r.in.form.Input.Child(name)
}

// judged is the value that a limit is on, as it is judged.
type judged struct {
	si, low, high float64 // low and high are its 95 % interval
	text          string
	span          *spread.Range
	unverified    []*contract.Property
}

// value finds what a limit is on: a result, or an input with its own accuracy.
func (r *run) value(on string) (judged, bool) {
	if m := r.result(on); m != nil {
		j := judged{si: m.si, low: m.si, high: m.si, text: m.text, span: m.span, unverified: m.unverified}
		if m.span != nil {
			j.low, j.high = m.low, m.high
		}
		return j, true
	}
	if k := r.in.at(on); k != nil {
		return judged{si: k.si, low: k.factor.Low, high: k.factor.High, text: k.text, span: r.ownRange(k)}, true
	}
	return judged{}, false
}

// ownRange is the range of an input that is judged as it was read.
func (r *run) ownRange(k *known) *spread.Range {
	if k.factor.Shape == spread.Exact || r.in.session.trials == 0 {
		return nil
	}
	out, err := new(spread.Workspace).Propagate([]spread.Factor{k.factor}, 1,
		spread.Plan{Trials: r.in.session.trials, Seed: r.in.session.seed},
		func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		return nil
	}
	return &out.Results[0]
}

// judge holds what a limit is on against it.
func (r *run) judge(l *rules.Limit, v *sheet.Verdict) {
	p := r.property(l.On)
	v.Limit, v.Title, v.On, v.Authority, v.Source = l.ID, l.Title, l.On, l.Basis.Authority(), l.Source.String()
	limit, text, ok := r.limit(l, p)
	v.Bound, v.Side = text, sideOf(l)
	if p != nil && p.Kind != nil {
		v.Kind, v.Unit = sheet.Kind(p.Kind.Name), p.Kind.SIUnit()
	}
	defer func() { v.Reads = v.Word.Reads(v.Side) }()
	if ok {
		v.BoundSI = r.keep(limit.Max)
		if v.Side == sheet.AtLeast {
			*v.BoundSI = limit.Min
		}
	}
	j, measured := r.value(l.On)
	if measured && p != nil && len(p.Enum) == 0 {
		v.SI = r.keep(j.si)
	}
	if !ok || !measured {
		v.Word = sheet.NotMeasured
		v.Sentence = strings.TrimSpace(l.Title + ": not measured. " + l.How)
		return
	}
	v.Value = j.text
	judgement := spread.Judge(j.si, j.span, limit)
	if l.Chance {
		judgement = spread.JudgeChance(j.si)
	}
	if doubt, remedy := r.doubt(l, j); doubt != "" {
		v.Word = sheet.CannotTell
		v.Sentence = l.Title + ": " + j.text + ", " + asks(text) + ": not enough to tell; " + doubt + ". " + remedy
		for _, p := range j.unverified {
			v.Awaits = append(v.Awaits, p.Title)
		}
		return
	}
	v.Word = judgement.Word
	if !math.IsNaN(judgement.Probability) {
		v.Probability = &judgement.Probability
	}
	v.Sentence = r.sentence(l, p, j, v, limit)
	if judgement.Word == sheet.CannotTell && !l.Chance {
		v.Settle = r.settle(p, j, limit)
	}
}

// sideOf is the side on which a limit's row bounds its value.
func sideOf(l *rules.Limit) sheet.Side {
	if l.Min.Given() {
		return sheet.AtLeast
	}
	return sheet.AtMost
}

// limit turns a limit's row into numbers and words.
func (r *run) limit(l *rules.Limit, p *contract.Property) (spread.Limit, string, bool) {
	bound, side, limit := &l.Max, string(sideOf(l))+" ", spread.Limit{Max: math.NaN(), Min: math.NaN(), Near: l.Near}
	if l.Min.Given() {
		bound = &l.Min
	}
	si := bound.SI
	if p != nil && p.Kind != nil && bound.Kind != nil && bound.Kind != p.Kind {
		if r, err := p.Kind.Parse(bound.Text); err == nil {
			si = r.SI // the unit alone would take 20 °C for a temperature where a difference is meant
		}
	}
	if bound.Of != "" {
		of, ok := r.value(bound.Of)
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
	return limit, side + r.in.show(p, si), true
}

// doubt says why a value may not be judged, and what would mend that: a figure
// behind it, or the limit itself, is of the kind that no source confirms.
func (r *run) doubt(l *rules.Limit, j judged) (why, remedy string) {
	if !l.Decides {
		return "the limit is not confirmed by a source, so no verdict is drawn from it", l.How
	}
	if len(j.unverified) == 0 {
		return "", ""
	}
	titles := make([]string, len(j.unverified))
	for i, p := range j.unverified {
		titles[i] = strings.ToLower(p.Title)
	}
	remedy = "Type it as the maker gives it, or as you measured it, to get a verdict."
	if len(titles) > 1 {
		remedy = "Type them as the maker gives them, or as you measured them, to get a verdict."
	}
	return "it rests on " + strings.Join(titles, ", ") + ", for which no confirmed figure is published, so no verdict is drawn from it", remedy
}

const finestGauge = "To settle it, take every reading with the finest gauge available."

// sentence says a verdict: "Safety at proof load: 2.26, needs at least 2: OK."
func (r *run) sentence(l *rules.Limit, p *contract.Property, j judged, v *sheet.Verdict, limit spread.Limit) string {
	value := j.text
	if j.low < j.high && p != nil {
		if span := r.in.showBeside(p, j.si, j.low, j.high); span != "" {
			value += " (" + span + ")"
		}
	}
	if l.Chance {
		return chanceSentence(l, j.text, v.Word)
	}
	text := l.Title + ": " + value + ", " + asks(v.Bound) + ": " + v.Word.Reads(v.Side)
	switch v.Word {
	case sheet.NearLimit:
		return text + nearness(j.si, limit) + "."
	case sheet.Beyond:
		return strings.TrimSpace(text + ". " + l.Why)
	}
	return text + "."
}

// asks words what a limit asks for: its bound is "at most 20 °C" or "at least
// 2".
func asks(bound string) string {
	if strings.HasPrefix(bound, string(sheet.AtLeast)) {
		return "needs " + bound
	}
	return "allowed " + bound
}

// nearness says how near to its limit a value is that is called near to it.
func nearness(si float64, l spread.Limit) string {
	if l.Max > 0 && l.Max != 1 && math.IsNaN(l.Min) && si > 0 { // what is held against 1 is such a part itself
		return fmt.Sprintf(", %.0f %% of the limit is taken up", 100*si/l.Max)
	}
	return ""
}

// chanceSentence words the verdict on a chance that all is well.
func chanceSentence(l *rules.Limit, chance string, word sheet.Word) string {
	switch word {
	case sheet.Within:
		return fmt.Sprintf("%s: yes, with a chance of %s.", l.Title, chance)
	case sheet.Beyond:
		return strings.TrimSpace(fmt.Sprintf("%s: hardly, with a chance of %s. %s", l.Title, chance, l.Why))
	}
	return fmt.Sprintf("%s: the chance is %s, which is neither a yes nor a no.", l.Title, chance)
}
