package verdict

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// What people read for a verdict.

// nothing words a verdict of which there is no value: for want of a reading, or
// because of how things are, which no reading mends; or one of which there is a
// value, and no limit to hold it against.
func (r *Judgement) nothing(h *held, v *sheet.Verdict) {
	v.Word = sheet.NotMeasured
	v.Reads = v.Word.Reads(v.Side)
	moot, says := "nothing to judge", r.how(h)
	if c := r.contested(h); c != nil {
		v.Moot, says = true, problem.MidSentence(c.Doubt)+". "+c.Remedy
	}
	for _, s := range h.States.All() {
		if v.Moot || !s.Valid.Meets(r.LookupAny) {
			continue
		}
		if p := r.Property(s.Tell); p != nil {
			r.untold(h, v, p.Title, s.Text)
			return
		}
		v.Moot, v.State, says, moot = true, s.Text, s.Text, cmp.Or(s.Reads, moot)
	}
	if v.Moot {
		v.Reads = moot
		v.Sentence = h.Title + ": " + moot + ", " + says
		return
	}
	if v.Value != "" {
		v.Reads = noBound
		if v.Stops { // what was read may keep the shaft still: no OK goes before that
			v.Word = sheet.CannotTell
		}
		v.Sentence = strings.TrimSpace(h.Title + ": " + v.Value + ", with nothing to hold it against yet. " + says)
		return
	}
	v.Sentence = strings.TrimSpace(h.Title + ": not measured. " + says)
}

// untold words a verdict of which there is no value because something is not
// told that could turn it either way.
func (r *Judgement) untold(h *held, v *sheet.Verdict, title, says string) {
	if v.Word = sheet.CannotTell; v.Guide {
		v.Word = v.Word.ByGuide()
	}
	v.Reads, v.Awaits, v.State = v.Word.Reads(v.Side), []string{title}, says
	v.Sentence = h.Title + ": " + v.Reads + ", " + says
}

// how is what to do for a value that is missing: of several things those that
// are not known, where the row has them apart. What the sheet that gives one of them
// has in its way, as things are, is said in its place.
func (r *Judgement) how(h *held) string {
	says := ""
	for _, one := range h.Lacks.All() {
		if r.lacking(one.Of) && one.Valid.Meets(r.LookupAny) {
			text := one.Text
			if p, _ := r.In.Form.Named(one.Of); p != nil && r.In.Request.Boat != nil {
				text = cmp.Or(r.In.Request.WhyNone(p), text)
			}
			says += " " + text
		}
	}
	if says == "" {
		return h.How
	}
	return says[1:]
}

// why is what it means to be past the limit.
func (r *Judgement) why(h *held) string {
	for _, m := range h.Meanings.All() {
		if m.Valid.Meets(r.LookupAny) {
			return m.Text
		}
	}
	return h.Why
}

// sentence says a verdict: "Safety at proof load: 2.26, needs at least 2: OK."
func (r *Judgement) sentence(h *held, j judged, v *sheet.Verdict, limit spread.Limit, doubt, remedy string) string {
	l, p := h.Limit, h.on
	if l.Chance {
		return chanceSentence(l, j.si, v.Word.Plain(), doubt)
	}
	var room [512]byte
	text := joined(room[:0], l.Title, ": ", j.text)
	if j.low < j.high && p != nil {
		if span := r.In.ShowBeside(p, j.si, j.low, j.high); span != "" {
			text = joined(text, " (", span, ")")
		}
	}
	if named, ok := r.value(l.Names); ok && l.Names != "" && named.text != "" {
		text = joined(text, " (", named.text, ")")
	}
	text = joined(text, ", ", asks(v), v.Bound, r.inAll(h, limit), ": ", v.Reads)
	if l.Stops.Len() > 0 && v.Word == sheet.Beyond {
		v.Says = string(text)
	}
	if doubt != "" {
		return r.In.Texts.Keep(bytes.TrimSpace(joined(text, "; ", doubt, ". ", remedy)))
	}
	if v.Word == sheet.NearLimit && v.Over == "" {
		of := ""
		if p := r.Property(h.Scale.Of); p != nil {
			of = p.Title
		}
		text = joined(text, nearness(j.si, limit, of))
	}
	if v.Probability != nil && *v.Probability > 0.0005 && *v.Probability < 0.9995 {
		if v.Word.Plain() == sheet.CannotTell {
			if *v.Probability <= spread.Lost || *v.Probability >= spread.Sure {
				return r.In.Texts.Keep(joined(text, ".")) // the reading itself lies the other way, or nearly so
			}
			text = joined(text, "; it is met with a probability of ", inputs.Percent(*v.Probability))
			if state, is := h.StateOf(r.LookupAny); is && j.span.Lost() >= 0.01 { // in these trials there is nothing to judge
				text = joined(text, ", and with one of ", inputs.Percent(j.span.Lost()), " ", strings.TrimSuffix(state.Text, "."))
			}
		} else if v.Word.Plain() == sheet.Beyond && *v.Probability > spread.Lost {
			text = joined(text, ", by its gauge alone met with a probability of ", inputs.Percent(*v.Probability))
		} else {
			text = joined(text, ", met with a probability of ", inputs.Percent(*v.Probability))
		}
	}
	switch {
	case v.Over == "":
	case v.Word == sheet.NearLimit: // close at the worst of the bracket, and maybe far from it here
		text = joined(text, " at the worst of what is usual (", v.Over, ")")
	default:
		text = joined(text, " for all of what is usual (", v.Over, ")")
	}
	if v.Word.Plain() == sheet.Beyond {
		return r.In.Texts.Keep(bytes.TrimSpace(joined(text, ". ", r.why(h))))
	}
	return r.In.Texts.Keep(joined(text, "."))
}

// joined writes parts of a sentence behind it.
func joined(text []byte, parts ...string) []byte {
	for _, part := range parts {
		text = append(text, part...)
	}
	return text
}

// asks words how a limit asks for its bound, "at most 20 °C" or "at least 2".
func asks(v *sheet.Verdict) string {
	switch {
	case v.Guide:
		return "guide "
	case v.Side == sheet.AtLeast:
		return "needs "
	}
	return "allowed "
}

// nearness says how near to its limit a value is that is called near to it;
// scale names what there is on the right side of a limit of 0.
func nearness(si float64, l spread.Limit, scale string) string {
	if l.Zero != 0 {
		if l.Max > l.Zero && math.IsNaN(l.Min) && si > l.Zero {
			return fmt.Sprintf(", %.0f %% of the rise from the sea to the limit is taken up", 100*(si-l.Zero)/(l.Max-l.Zero))
		}
		return ""
	}
	if l.Max > 0 && l.Max != 1 && math.IsNaN(l.Min) && si > 0 { // what is held against 1 is such a part itself
		return fmt.Sprintf(", %.0f %% of the limit is taken up", 100*si/l.Max)
	}
	if scale != "" && l.Scale > 0 {
		return fmt.Sprintf(", %.2g %% of %s", 100*math.Abs(si/l.Scale), problem.MidSentence(scale))
	}
	return ""
}

// unweighed is the chance that stands where the readings weigh nothing either way, as
// where the newest is off the others: no figure that anybody calculated.
const unweighed = 0.5

// almostNo is the chance up to which people read a no.
const almostNo = 0.12

// chanceSentence words the verdict on a chance that all is well.
func chanceSentence(l *rules.Limit, chance float64, word sheet.Word, doubt string) string {
	text := "the chance is " + inputs.Percent(chance)
	if doubt != "" {
		return l.Title + ": " + text + "; " + doubt + "."
	}
	if chance == unweighed && word == sheet.CannotTell {
		return l.Title + ": not enough to tell, the readings say neither yes nor no."
	}
	switch word {
	case sheet.Within:
		return l.Title + ": yes, " + text + "."
	case sheet.Beyond:
		if chance > spread.MostLost(l.Min.SI) {
			text = "though by its gauge " + text
		}
		return strings.TrimSpace(l.Title + ": no, " + text + ". " + l.Why)
	}
	switch { // Kent, Words of Estimative Probability (1964), from memory: almost certainly not, 7 % give or take 5
	case chance <= almostNo:
		return strings.TrimSpace(l.Title + ": almost certainly no, " + text + ": act as on a no. " + l.Why)
	case chance >= 1-almostNo:
		return l.Title + ": almost certainly yes, " + text + ", too little to count on."
	}
	return l.Title + ": " + text + ", which is neither a yes nor a no."
}

// inAll says of a quotient and its limit what they come to with the input that
// it is for: of a gap for each inch of a flange the gap.
func (r *Judgement) inAll(h *held, limit spread.Limit) string {
	p := h.on
	if p == nil || len(p.QuotientOf) < 2 {
		return ""
	}
	whole, of := r.Property(p.QuotientOf[0]), p.QuotientOf[1]
	read, ok := r.value(p.QuotientOf[0])
	size, _, known := r.LookupAny(of)
	if _, _, about := r.about(h); about || whole == nil || !ok || read.text == "" || !known {
		return ""
	}
	here := "here "
	if len(p.QuotientOf) > 2 {
		if plain, ok := r.value(p.QuotientOf[2]); ok && plain.text != "" && plain.text != read.text {
			here = plain.text + " as read, at worst "
		}
	}
	return " (" + here + read.text + ", and at most " + r.In.ShowTo(whole, limit.Max*size, limit.Max*size/50) + ")"
}
