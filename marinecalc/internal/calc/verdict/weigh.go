package verdict

import (
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// weigh says how a value stands to a limit. Where that cannot be told for want
// of something, doubt says of what, and remedy how to mend it.
func (r *Judgement) weigh(h *held, j *judged, limit spread.Limit, v *sheet.Verdict) (judgement spread.Judgement, doubt, remedy string) {
	if h.unread != "" {
		return untold, h.unread, "Mend it in the boat file."
	}
	if c := r.contested(h); c != nil {
		if missed, is := r.missedByEach(h, j, limit); is {
			return missed, "", ""
		}
		return untold, c.Doubt, c.Remedy
	}
	return r.weighAgreed(h, j, limit, v)
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
		return untold, restsOn(v.Awaits) + ", for which no confirmed figure is published", typeThem(v.Awaits)
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
	if within := j.short(limit); (within || j.past(limit)) && (v.Turns == nil || !v.Turns.Past) {
		far = "; the range is of the likeliest figures, one that nobody confirmed here never decides, and at an end of what is usual the limit is met"
		if within {
			far = "; the range is of the likeliest figures, and at an end of what is usual the limit may be passed"
		}
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

// short tells whether the range that people read keeps the limit wholly.
func (j *judged) short(limit spread.Limit) bool {
	return j.low < j.high && !(j.high > limit.Max) && !(j.low < limit.Min)
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
	side := string(t.Side)
	switch {
	case t.Strict && t.Side == sheet.AtLeast:
		side = "more than"
	case t.Strict:
		side = "less than"
	}
	is := " while " + problem.MidSentence(t.Title) + " is " + side + " " + t.Text
	if t.Past { // no usual figure makes it so
		return word.Reads(v.Side) + " only" + is + ", outside the usual " + t.Usual
	}
	return word.Reads(v.Side) + is + "; " + t.Usual + " is usual"
}

// weighAgreed is weigh of a value that nothing contradicts.
func (r *Judgement) weighAgreed(h *held, j *judged, limit spread.Limit, v *sheet.Verdict) (judgement spread.Judgement, doubt, remedy string) {
	if len(j.unverified) > 0 {
		return r.weighBrackets(h, j, limit, v)
	}
	if r.Untried && j.span == nil && j.number || j.span != nil && !j.span.Usable {
		return untold, "too many of the trial values inside the stated accuracies lie where this calculation does not apply", finestGauge
	}
	if h.Chance {
		return spread.JudgeChance(j.si, limit.Min), "", ""
	}
	return r.byTrials(h, j, limit), "", ""
}

// missedByEach tells whether a limit that is contested is missed by each of the
// ways by itself: by the one that the results go by, with its own trials, and by
// every other with trials of its own and over the brackets of all that nobody
// confirmed. Of ways that cannot be taken one by one, such as a figure that is
// less than it can be, it tells nothing.
func (r *Judgement) missedByEach(h *held, j *judged, limit spread.Limit) (spread.Judgement, bool) {
	if h.value == nil || h.Chance || h.unread != "" {
		return untold, false
	}
	if spread.Judge(j.si, nil, limit).Word != sheet.Beyond { // nor is it then by any trials
		return untold, false
	}
	var aside sheet.Verdict // what it awaits by the first way is not asked
	own, doubt, _ := r.weighAgreed(h, j, limit, &aside)
	if own.Word != sheet.Beyond || doubt != "" {
		return untold, false
	}
	for i := range r.Twice {
		if t := &r.Twice[i]; r.concerns(t, h) && (len(t.Before) == 0 || !r.missedWithout(h, limit, t.Before)) {
			return untold, false
		}
	}
	return own, true
}
