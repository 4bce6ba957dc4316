// Package verdict holds inputs and results against limits. held.go finds the
// limits that apply, makers.go what took the place of which; judge.go judges,
// bracket.go over the whole of what nobody confirmed; conflicts.go and orders.go
// find what does not agree, on which no verdict rests; settle.go says what would
// settle a doubt, sentence.go and bound.go what people read.
package verdict

import (
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Verdicts holds the results and readings against every limit that applies.
func (r *Judgement) Verdicts() []sheet.Verdict {
	out := make([]sheet.Verdict, len(r.limits))
	for i := range r.limits {
		r.judge(&r.limits[i], &out[i])
	}
	mostUrgentFirst(out)
	return out
}

// mostUrgentFirst sorts verdicts by their words; those alike stay in their order.
func mostUrgentFirst(list []sheet.Verdict) {
	for i := range list {
		at, rank := i, list[i].Word.Rank()
		for at > 0 && list[at-1].Word.Rank() > rank {
			at--
		}
		if at < i {
			v := list[i]
			copy(list[at+1:i+1], list[at:i])
			list[at] = v
		}
	}
}

// judged is the value that a limit is on, as it is judged.
type judged struct {
	si, low, high float64 // low and high are its 95 % interval
	text          string
	span          *spread.Range
	unverified    []*contract.Property
	number        bool // a number of the typed function, which trials may move
	open          bool // what it is held against is unverified itself
}

// value finds what a limit is on: a result, or an input with its own accuracy.
func (r *Judgement) value(on string) (judged, bool) {
	input, result := r.In.Form.Named(on)
	if m := r.Of(result); m != nil {
		j := judged{si: m.Si, low: m.Si, high: m.Si, text: m.Text, span: m.Span, unverified: m.Unverified, number: m.Number != nil}
		if m.Span != nil && m.Span.Usable {
			j.low, j.high = m.Low, m.High
		}
		return j, true
	}
	if input == nil {
		return judged{}, false
	}
	if k := &r.In.Values[input.Index]; k.Known {
		j := judged{si: k.Si, low: k.Factor.Low, high: k.Factor.High, text: k.Text, span: r.ownRange(k)}
		if half := (j.high - j.low) / 2; half > 0 && input.Kind != nil && !math.IsInf(half, 0) { // converted from what was typed it has no more digits
			if text := r.In.ShowTo(input, k.Si, half); len(text) < len(j.text) {
				j.text = text
			}
		}
		if !k.Confirmed {
			j.unverified = []*contract.Property{input}
		}
		return j, true
	}
	return judged{}, false
}

// onlyUsual tells whether a limit is on an input that nobody read on this boat:
// what is usual of others is a bracket for what follows from it, and no reading.
func (r *Judgement) onlyUsual(on string) bool {
	input, result := r.In.Form.Named(on)
	return r.Of(result) == nil && input != nil && r.In.Values[input.Index].OnlyUsual()
}

// ownRange is the range of an input that is judged as it was read.
func (r *Judgement) ownRange(k *inputs.Known) *spread.Range {
	if k.Factor.Shape == spread.Exact || r.In.Request.Trials == 0 {
		return nil
	}
	out, err := new(spread.Workspace).Propagate([]spread.Factor{k.Factor}, 1,
		spread.Plan{Trials: r.In.Request.Trials, Seed: r.In.Request.Seed},
		func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		return &spread.Range{} // not usable
	}
	return &out.Results[0]
}

// judge holds what a limit is on against it.
func (r *Judgement) judge(h *held, v *sheet.Verdict) {
	l, p := h.Limit, h.on
	v.Limit, v.Title, v.On, v.Authority, v.Source, v.Guide = l.ID, l.Title, l.On, l.Basis.Authority(), l.Source.String(), r.guides(h)
	limit, behind, ok := r.limit(l, p)
	v.Bound, v.Side = r.boundText(h, limit, ok), SideOf(l)
	if p != nil && p.Kind != nil {
		v.Kind, v.Unit = sheet.Kind(p.Kind.Name), p.Kind.SIUnit()
	}
	if ok {
		v.BoundSI = r.Keep(limit.Max)
		if v.Side == sheet.AtLeast {
			*v.BoundSI = limit.Min
		}
	}
	j, measured := r.value(l.On)
	measured = measured && !r.onlyUsual(l.On)
	if measured && p != nil && len(p.Enum) == 0 {
		v.SI = r.Keep(j.si)
	}
	if measured {
		v.Value = j.text
	}
	if !ok || !measured {
		r.nothing(h, v)
		return
	}
	j.open = len(behind) > 0
	for _, p := range behind {
		if !v.Guide && !slices.Contains(j.unverified, p) { // a guide is itself no more than usual
			j.unverified = append(slices.Clip(j.unverified), p)
		}
	}
	judgement, doubt, remedy := r.weigh(h, &j, limit, v)
	if h.Past != nil && h.unread == "" && r.contested(h) == nil && h.Past.Meets(r.LookupAny) {
		judgement.Word, doubt, remedy, v.Awaits, v.Turns = sheet.Beyond, "", "", nil, nil
	}
	if judgement.Word == sheet.Within || judgement.Word == sheet.NearLimit {
		if hangs := r.passedElsewhere(h, h.While); hangs != "" {
			judgement, doubt, v.Over = untold, "OK "+hangs, ""
		}
	}
	if judgement.Word != sheet.Beyond && h.Each.Len() > 0 {
		if silent := r.unreadEntries(h.Each); silent != "" {
			judgement, doubt, remedy = untold, silent, h.How
			v.Over, v.Awaits, v.Turns = "", nil, nil
		}
	}
	if judgement.Word == sheet.Within || judgement.Word == sheet.NearLimit {
		if part := r.leftOut(h); part != nil {
			judgement, doubt, remedy, v.Over = untold, part.Part, part.Text, ""
		}
	}
	if h.Void.Len() > 0 {
		if void := r.passedElsewhere(h, h.Void); void != "" {
			judgement, doubt, v.Over = untold, "told "+void, ""
		}
	}
	if v.Word = judgement.Word; v.Guide {
		v.Word = v.Word.ByGuide()
	}
	v.Reads = v.Word.Reads(v.Side)
	if l.Chance && v.Word.Plain() == sheet.Beyond { // the least is of the chance, not of what was read
		v.Reads = "past the limit"
		if judgement.Probability >= evens { // by its gauge it may be either side
			v.Reads = atTheLimit
		}
	}
	if v.Word == sheet.CannotTell && doubt == "" && limit.At(j.si) {
		v.Reads = atTheLimit
	}
	if !math.IsNaN(judgement.Probability) {
		v.Probability = r.Keep(judgement.Probability)
	}
	v.Sentence = r.sentence(h, j, v, limit, doubt, remedy)
	r.tellReplaced(h, v)
	if judgement.Word == sheet.CannotTell && doubt == "" && !l.Chance {
		if v.Settle = r.settle(h, j, limit, v); v.Settle != "" && v.SettleBy == nil && l.Finer != "" {
			v.Settle = "To settle it, " + l.Finer
		}
	}
}

// atTheLimit is what people read of a value that stands at its limit, where its
// gauge leaves open on which side.
const atTheLimit = "at the limit"

// evens is the chance from which on a reading that has reached its limit is as
// good as at it: that of the rate behind a count at the limit is a little under a
// half.
const evens = 0.4

// weigh says how a value stands to a limit. Where that cannot be told for want
// of something, doubt says of what, and remedy how to mend it.
func (r *Judgement) weigh(h *held, j *judged, limit spread.Limit, v *sheet.Verdict) (judgement spread.Judgement, doubt, remedy string) {
	none := spread.Judgement{Word: sheet.CannotTell, Probability: math.NaN()}
	if h.unread != "" {
		return none, h.unread, "Mend it in the boat file."
	}
	if c := r.contested(h); c != nil {
		return none, c.doubt, c.remedy
	}
	if len(j.unverified) > 0 {
		return r.weighBrackets(h, j, limit, v)
	}
	if r.Untried && j.span == nil && j.number || j.span != nil && !j.span.Usable {
		return none, "too many of the trial values inside the stated accuracies lie where this calculation does not apply", finestGauge
	}
	if h.Chance {
		return spread.JudgeChance(j.si, limit.Min), "", ""
	}
	return r.byTrials(h, j, limit), "", ""
}

// byTrials judges by the trials as they lie. Where these draw from the trials of
// an earlier sheet twice as sure is asked: two rounds of trials give two chances
// of one thing, and the next sheet must not tell what the one before does not.
func (r *Judgement) byTrials(h *held, j *judged, limit spread.Limit) spread.Judgement {
	if h.span == nil {
		return r.noSurer(spread.Judge(j.si, j.span, limit))
	}
	judgement := r.noSurer(spread.Judge(h.move(limit), h.span, spread.AtLeast(0)))
	if judgement.Word == sheet.Within {
		judgement.Word = spread.Judge(j.si, nil, limit).Word // close or not
	}
	return judgement
}

func (r *Judgement) noSurer(j spread.Judgement) spread.Judgement {
	listed := slices.ContainsFunc(r.In.Variates, func(v inputs.Variate) bool { return v.Factor.Shape == spread.Listed })
	if doubt := min(j.Probability, 1-j.Probability); listed && doubt > spread.Lost/2 {
		j.Word = sheet.CannotTell
	}
	return j
}

// weighBrackets is weigh of a value that rests on unverified figures.
func (r *Judgement) weighBrackets(h *held, j *judged, limit spread.Limit, v *sheet.Verdict) (judgement spread.Judgement, doubt, remedy string) {
	figures, all := r.brackets(j.unverified)
	if !all || h.value == nil || h.Chance {
		v.Awaits = r.Roots(j.unverified)
		return spread.Judgement{Word: sheet.CannotTell, Probability: math.NaN()}, restsOn(v.Awaits) + ", for which no confirmed figure is published", typeThem(v.Awaits)
	}
	judgement, v.Turns = r.overBracket(h, limit, figures)
	if judgement.Word != sheet.CannotTell {
		inside := r.byTrials(h, j, limit)
		past := judgement.Word == sheet.Beyond && inside.Probability <= spread.Lost     // skewed, and past it everywhere
		if j.span != nil && j.span.Usable && inside.Word == sheet.CannotTell && !past { // as of a resonance, where the ends are not what is farthest apart
			v.Awaits, v.Turns = r.Roots(j.unverified), nil
			return inside, restsOn(v.Awaits) + ", and turns between the ends of what is usual", typeThem(v.Awaits)
		}
		v.Over = overTexts(r, figures)
		return judgement, "", ""
	}
	if j.span != nil && j.span.Usable && !j.open { // a limit that itself is a bracket stays in question
		handed := slices.ContainsFunc(figures, func(f figure) bool { return f.handed != nil })                                 // how that leans in its interval is not kept: twice as sure is asked
		if inside := r.byTrials(h, j, limit); inside.Word == sheet.Beyond && !(handed && inside.Probability > spread.Lost/2) { // only the far corner of all the brackets meets it
			v.Turns = nil
			return inside, "", ""
		}
	}
	v.Awaits = r.Roots(j.unverified)
	far := ""
	if j.past(limit) && (v.Turns == nil || !v.Turns.Past) {
		far = "; the range is about the likeliest, and at the far ends of what is usual it is met"
	}
	if v.Turns != nil && v.Turns.Past && r.gaugeLeads(j) { // no usual figure settles it, and the readings are what is not known
		if inside := r.byTrials(h, j, limit); inside.Word == sheet.CannotTell {
			v.Awaits, v.Turns = nil, nil
			return inside, "", ""
		}
	}
	if v.Turns != nil {
		return judgement, r.turning(v) + far, typeThem(v.Awaits[:1])
	}
	return judgement, restsOn(v.Awaits) + ", and no value of one of these alone decides" + far, typeThem(v.Awaits)
}

// gaugeLeads tells whether most of a value's spread comes from what was read with
// gauges.
func (r *Judgement) gaugeLeads(j *judged) bool {
	if j.span == nil || !j.span.Usable || len(j.span.Shares) != len(r.In.Variates) {
		return false
	}
	read := 0.0
	for i, v := range r.In.Variates {
		if p := r.In.Form.Input.Properties[v.Input]; p.ReadBy != "" || p.Items != nil {
			read += j.span.Shares[i]
		}
	}
	return read > 0.5
}

// past tells whether the range that people read lies wholly past a limit.
func (j *judged) past(limit spread.Limit) bool {
	return j.low < j.high && (j.low > limit.Max || j.high < limit.Min)
}

// Roots names the unverified figures behind others, by title: of an earlier
// result those that it rests on itself.
func (r *Judgement) Roots(behind []*contract.Property) []string {
	var titles []string
	add := func(title string) {
		if !slices.Contains(titles, title) {
			titles = append(titles, title)
		}
	}
	for _, p := range behind {
		own := r.In.Values[p.Index].Roots
		for _, title := range own {
			add(title)
		}
		if len(own) == 0 {
			add(p.Title)
		}
	}
	return titles
}

func restsOn(titles []string) string { return "it rests on " + strings.Join(lower(titles), ", ") }

// lower writes titles as they stand inside a sentence.
func lower(titles []string) []string {
	out := make([]string, len(titles))
	for i, t := range titles {
		out[i] = problem.MidSentence(t)
	}
	return out
}

func typeThem(titles []string) string {
	if len(titles) > 1 {
		return "Type your own figures to get a verdict."
	}
	return "Type your own figure to get a verdict."
}

// overTexts says over which brackets a verdict holds.
func overTexts(r *Judgement, figures []figure) string {
	texts := make([]string, len(figures))
	for i := range figures {
		f := &figures[i]
		texts[i] = problem.MidSentence(f.input.Title) + " " + r.In.ShowBracket(f.input, f.low, f.high)
	}
	return strings.Join(texts, "; ")
}

// turning says at which value of a figure a verdict turns: "OK while thrust is
// at most 7.4 kN; 4 to 9 kN is usual".
func (r *Judgement) turning(v *sheet.Verdict) string {
	t, word := v.Turns, v.Turns.Word
	if v.Guide {
		word = word.ByGuide()
	}
	if t.Past { // no usual figure makes it so
		return word.Reads(v.Side) + " only while " + problem.MidSentence(t.Title) + " is " + string(t.Side) + " " + t.Text + ", outside the usual " + t.Usual
	}
	return word.Reads(v.Side) + " while " + problem.MidSentence(t.Title) + " is " + string(t.Side) + " " + t.Text + "; " + t.Usual + " is usual"
}

// usualSea is what the share of a temperature's limit is counted from where the
// sea's is not known: 15 °C (common practice, no source).
const usualSea = 288.15

// limit turns a limit's row into numbers. behind are the unverified figures that
// the limit itself rests on.
func (r *Judgement) limit(l *rules.Limit, p *contract.Property) (limit spread.Limit, behind []*contract.Property, ok bool) {
	limit = spread.Limit{Max: math.NaN(), Min: math.NaN(), Near: l.Near}
	bound := boundOf(l)
	si := bound.SI
	if p != nil && p.Kind != nil && bound.Kind != nil && bound.Kind != p.Kind {
		if r, err := p.Kind.Parse(bound.Text); err == nil {
			si = r.SI // the unit alone would take 20 °C for a temperature where a difference is meant
		}
	}
	if bound.Of != "" {
		of, known := r.value(bound.Of)
		if !known || math.IsNaN(of.si) {
			return limit, nil, false
		}
		si, behind = of.si, of.unverified
	}
	if l.Min.Given() {
		limit.Min = si
	} else {
		limit.Max = si
	}
	if p != nil && p.Kind != nil && p.Kind.Name == quantity.KindTemperature {
		limit.Zero = usualSea
		if sea, known := r.value("waterTemperature"); known && !math.IsNaN(sea.si) {
			limit.Zero = sea.si
		}
	}
	if limit.Scale = l.Scale.SI; l.Scale.Of != "" {
		if of, known := r.value(l.Scale.Of); known {
			limit.Scale = of.si
		}
	}
	return limit, behind, true
}

// Chances words the results that limits on a probability are on.
func (r *Judgement) Chances() {
	for i := range r.limits {
		if m := r.Result(r.limits[i].On); m != nil && r.limits[i].Chance {
			m.Text = inputs.Percent(m.Si)
		}
	}
}
