// What to look at next: what may be asked where the boat lies, what it costs,
// what either answer would do, and what would part the first two causes. The
// information is package bayes's.

package diagnosis

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
)

// next fills in the checks and the quick questions that are worth it now.
func (f *finder) next(in Input, out *Result) {
	out.HeldBack = f.heldBack()
	copy(out.Holds[:], f.holds())
	list := f.ordered(in, out.HeldBack != "")
	best := 0.0
	for _, c := range list {
		best = max(best, c.Bits)
	}
	list = slices.DeleteFunc(list, func(c bayes.Check) bool {
		return f.evidence.At(c.Question).Kind == check && c.Bits < f.figure("least-information") && !slices.Contains(f.first, c.Question)
	})
	first := slices.IndexFunc(list, func(c bayes.Check) bool { return f.evidence.At(c.Question).Kind == check })
	var atHand rules.List[string]
	if first >= 0 {
		atHand = f.evidence.At(list[first].Question).Hazards
	}
	out.hazards = f.inFront(f.dangers(out.HeldBack != ""), atHand)
	checks, quick, said := 0, 0, slices.Clone(out.hazards)
	for _, c := range list {
		if checks >= leaders && c.Bits < f.figure("worth-proposing")*best {
			continue // beside the matter
		}
		switch e := f.evidence.At(c.Question); {
		case e.Kind == check && checks < len(out.NextChecks):
			out.NextChecks[checks] = f.nextCheck(c, said)
			said = rules.Join(said, e.Hazards)
			checks++
		case e.Kind != check && quick < len(out.QuickQuestions):
			out.QuickQuestions[quick] = QuickQuestion{Question: e.Title, Evidence: e.ID, How: e.Help, Bits: rounded(c.Bits),
				IfYes: f.outcome(c.Question, bayes.Yes), IfNo: f.outcome(c.Question, bayes.No)}
			quick++
		}
	}
}

const (
	leaders     = 3 // suspected causes, and looks, that count as the first
	mostInFront = 4 // cautions before the answer, beside the one that always stands there
)

// inFront are the cautions before the answer: what is dangerous now, then of
// the first look the gravest. What does not fit there, and those of the other
// looks, stand beside each of them, in full the first time.
func (f *finder) inFront(now []string, look rules.List[string]) []string {
	list := slices.Clone(now)
	for _, c := range f.byGravity(look) {
		if len(list) >= mostInFront {
			break
		}
		if slices.Contains(list, c.ID) || c.ID == stopTheEngine && slices.Contains(list, rules.StopNow) {
			continue // said already
		}
		list = append(list, c.ID)
	}
	return list
}

// stopTheEngine is the id of the caution that StopNow has in its words.
const stopTheEngine = "stop-the-engine"

// byGravity are the cautions of a list of ids, gravest first.
func (f *finder) byGravity(ids rules.List[string]) (list []rules.Caution) {
	for _, c := range f.book.AllCautions().All() {
		if rules.Contains(ids, c.ID) {
			list = append(list, c)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Signal.Gravity() < list[j].Signal.Gravity() })
	return list
}

// dangers are the cautions of what is dangerous before anything is looked at.
func (f *finder) dangers(heldBack bool) (ids []string) {
	if heldBack {
		ids = append(ids, rules.StopNow)
	}
	for c, cause := range f.causes.All() {
		if cause.Dangers.Len() > 0 && f.told(c) {
			ids = rules.Join(ids, cause.Dangers)
		}
	}
	for q, e := range f.evidence.All() {
		if f.answers[q] == bayes.Yes {
			ids = rules.Join(ids, e.Dangers)
		}
	}
	return ids
}

// ordered lists the open questions that can be answered where the boat lies,
// in the time there is, and without harm.
//
// The looks of firstLooks come first. Then the most information for its cost,
// but the looks at the first two suspected causes are among the first three.
// What was answered with don't know goes last.
func (f *finder) ordered(in Input, heldBack bool) []bayes.Check {
	cost := make([]float64, f.evidence.Len())
	for q, e := range f.evidence.All() {
		if f.possible(e, in, heldBack) {
			cost[q] = f.cost(e)
		}
	}
	first := f.firstLooks(cost)
	f.first = first
	list := slices.DeleteFunc(f.belief.Next(cost, f.alive()), func(c bayes.Check) bool {
		return c.Bits < 5e-4 && !slices.Contains(first, c.Question) // would show as 0.000
	})
	for _, q := range first { // told by somebody else: look yourself
		if f.answers[q] != bayes.Unknown {
			list = append(list, bayes.Check{Question: q})
		}
	}
	rank := func(c bayes.Check) int {
		at := slices.Index(first, c.Question)
		if at < 0 {
			at = len(first)
		}
		if f.unsure[c.Question] {
			at += len(first) + 1
		}
		return at
	}
	sort.SliceStable(list, func(a, b int) bool { return rank(list[a]) < rank(list[b]) })
	return f.withLooks(list)
}

// withLooks brings the looks at the first two suspected causes forward, to the
// second and third place among the looks at the latest.
func (f *finder) withLooks(list []bayes.Check) []bayes.Check {
	suspected := f.suspects()
	for i, c := range suspected[:min(2, len(suspected))] {
		if f.belief.Cause[c] < f.figure("look-among") {
			break
		}
		from := slices.IndexFunc(list, func(l bayes.Check) bool { return l.Question == f.settler[c] })
		if from < 0 {
			continue
		}
		to, looks := 0, 0
		for ; to < from && looks < i+1; to++ {
			if f.evidence.At(list[to].Question).Kind == check {
				looks++
			}
		}
		look := list[from]
		if f.unsure[look.Question] && !f.unsure[list[to].Question] {
			continue
		}
		list = slices.Insert(slices.Delete(list, from, from+1), to, look)
	}
	return list
}

// alive lists the causes that the answers have made more probable than they
// were and that explain something of what was noticed, and those found that the
// other answers leave in doubt: what a check tells of the others is beside the
// matter. Where there is none, all are alive.
func (f *finder) alive() []int {
	var list []int
	before := f.before()
	for _, c := range f.suspects() {
		p := f.belief.Cause[c]
		if !f.isBehind[c] && p >= f.figure("alive") && p >= f.figure("alive-rise")*before[c] {
			list = append(list, c)
		}
	}
	for i, c := range f.belief.Found {
		if f.belief.Looks[i] < f.model.Trust {
			list = append(list, c)
		}
	}
	if len(list) == 0 {
		return bayes.Rank(f.belief.Cause)
	}
	return list
}

// possible tells whether a question can be answered now.
func (f *finder) possible(e rules.Evidence, in Input, heldBack bool) bool {
	return (e.Place == "either" || e.Place == in.Lies) &&
		(in.MinutesLeft == 0 || e.Minutes <= float64(in.MinutesLeft)) &&
		!(heldBack && e.Runs() && !f.ends(e))
}

// ends tells whether a question settles the one thing that keeps the shaft
// still, so that it may run for it as the question says: a dry face seal is
// vented first, and that is its cure.
func (f *finder) ends(e rules.Evidence) bool {
	c := f.model.Settles[f.question[e.ID]]
	if c < 0 || f.causes.At(c).KeepStill == "" {
		return false
	}
	id := f.causes.At(c).ID
	return !slices.ContainsFunc(f.holds(), func(h Hold) bool { return !slices.Contains(strings.Fields(h.Causes), id) }) &&
		!slices.ContainsFunc(f.stops, func(stop calc.Stop) bool { return !stop.EndsBy([]string{id}) })
}

// cost is the work of a question in minutes, more for poor access and for
// hazards that no precaution takes away.
func (f *finder) cost(e rules.Evidence) float64 {
	hazard := "none"
	if worst, ok := f.worst(e); ok {
		hazard = strings.ToLower(string(worst.Signal))
	}
	return f.figure("getting-ready") + e.Minutes*f.figure(fmt.Sprintf("access-%d", e.Access))*f.figure("hazard-"+hazard)
}

// leads tells whether the first of the suspected causes is more likely than
// not, or among the leaders and well before the second.
func (f *finder) leads(order []int) bool {
	p := f.belief.Cause[order[0]]
	return p >= f.figure("sure-open") || p >= f.figure("leads") && (len(order) < 2 || p >= f.figure("part-odds")*f.belief.Cause[order[1]])
}

// heldBack says why the shaft must not run now, by what was noticed and found
// and by the verdicts that forbid power; "" when it may.
func (f *finder) heldBack() string {
	var words []string
	for _, h := range f.holds() {
		words = append(words, h.Why)
	}
	for _, stop := range f.stops {
		if stop.Advised && slices.ContainsFunc(f.holds(), func(h Hold) bool { return stop.EndsBy(strings.Fields(h.Causes)) }) {
			continue // an answer has said it
		}
		words = append(words, stop.Why)
	}
	return strings.Join(words, " ")
}

// Hold is a reason to keep the shaft still, and the ids of the causes of which
// one cured takes it away.
type Hold struct{ Why, Causes string }

// holds are the reasons to keep the shaft still: a cause that forbids running
// it is among the leaders, or an answer does, until what it points to was
// looked at.
func (f *finder) holds() (list []Hold) {
	var parts []string
	told := map[int]bool{} // causes that a reason already stands for
	cause := func(c int) {
		cause := f.causes.At(c)
		if cause.KeepStill == "" || !f.told(c) || told[c] || slices.Contains(parts, cause.Part) {
			return
		}
		told[c] = true
		parts = append(parts, cause.Part)
		list = append(list, Hold{keepStill(cause.KeepStill, "“"+cause.Title+"” "+cmp.Or(f.foundBy(c), suspected)), cause.ID})
	}
	for _, c := range f.belief.Found {
		cause(c)
	}
	for q, e := range f.evidence.All() {
		if e.KeepStill == "" || f.answers[q] != bayes.Yes || !f.pointsToUnseen(q) {
			continue
		}
		repeats := false
		for c := range f.written.Yes {
			repeats = repeats || told[c] && f.isFound(c) && f.strongly(q, c)
		}
		if repeats {
			continue
		}
		var ids []string
		for c := range f.written.Yes {
			if f.strongly(q, c) {
				told[c] = true
				ids = append(ids, f.causes.At(c).ID)
			}
		}
		list = append(list, Hold{keepStill(e.KeepStill, "“"+e.Title+"” yes"+f.shownBy(q)), strings.Join(ids, " ")})
	}
	for _, c := range bayes.Rank(f.belief.Cause) {
		cause(c)
	}
	return list
}

// shownBy is what answered a question, behind the answer: a figure or a reading; ""
// where a person did.
func (f *finder) shownBy(q int) string {
	switch {
	case f.gauged[q] != "":
		return ": " + f.gauged[q]
	case f.from[q] != byPerson:
		return ", " + f.from[q]
	}
	return ""
}

// keepStill puts the reason before what it rests on.
func keepStill(why, by string) string { return strings.TrimSuffix(why, ".") + " (" + by + ")." }

// pointsToUnseen tells whether a yes is strong evidence for a cause that nobody has looked
// for and not found.
func (f *finder) pointsToUnseen(q int) bool {
	for c := range f.written.Yes {
		if s := f.settler[c]; f.strongly(q, c) && s >= 0 && f.answers[s] != bayes.No {
			return true
		}
	}
	return false
}

// strongly tells whether a yes is strong evidence for a cause by itself.
func (f *finder) strongly(q, c int) bool {
	return 10*math.Log10(f.written.Yes[c][q]/f.written.Leak[q]) >= f.figure("weight-strong")
}

// worst is the gravest caution of a question that no precaution takes away.
// ok is false where it has none.
func (f *finder) worst(e rules.Evidence) (worst rules.Caution, ok bool) {
	for _, c := range f.book.AllCautions().All() {
		if rules.Contains(e.Hazards, c.ID) && !c.Precaution && (!ok || c.Signal.Gravity() < worst.Signal.Gravity()) {
			worst, ok = c, true
		}
	}
	return worst, ok
}

// cannotPart says plainly when the first two suspected causes are not told
// apart, and what would part them. Two that may well be at work together, or
// of which one is found, need no parting.
func (f *finder) cannotPart(order []int, lies string) string {
	if len(order) < 2 || f.isFound(order[0]) || f.isFound(order[1]) {
		return ""
	}
	c, d := order[0], order[1]
	p := f.belief.Cause
	onlyC, onlyD, both := f.belief.Apart(c, d)
	if p[c] < f.figure("leads") || p[c] >= f.figure("part-odds")*p[d] || both >= max(onlyC, onlyD) {
		return ""
	}
	words := fmt.Sprintf("“%s” and “%s” cannot be told apart by these answers (%s and %s). ", f.causes.At(c).Title, f.causes.At(d).Title, percent(p[c]), percent(p[d]))
	here, anywhere := make([]bool, f.evidence.Len()), make([]bool, f.evidence.Len())
	for q, e := range f.evidence.All() {
		here[q], anywhere[q] = f.possible(e, Input{Lies: lies}, f.heldBack() != ""), true
	}
	enough := f.figure("part-information")
	if q, bits := f.belief.Part(here, c, d); q >= 0 && bits >= enough {
		return words + "This would part them best: " + f.evidence.At(q).Title
	}
	if q, bits := f.belief.Part(anywhere, c, d); q >= 0 && bits >= enough {
		if place := f.evidence.At(q).Place; place != "either" && place != lies {
			return words + "Nothing " + lies + " parts them; " + place + " this would: " + f.evidence.At(q).Title
		}
		return words + "Only with the engine running would this part them: " + f.evidence.At(q).Title
	}
	return words + "No question left parts them: have both looked at."
}
