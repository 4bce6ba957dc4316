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
	"example.org/driveline/marinecalc/quantity"
)

// Input is what fault-finding takes.
type Input struct {
	Answers     []Symptom
	Lies        string // "afloat" or "ashore"
	MinutesLeft int    // for the next checks; 0 when it does not matter
}

// Symptom is one answer.
type Symptom struct {
	Evidence string // id of a question
	Answer   string // "yes", "no" or "unknown"
	By       string // way of looking; "" where nobody says
}

// Result is what fault-finding gives: what was found, what is suspected, what
// made it fail, and what to look at next.
type Result struct {
	Cause           string // id of the first cause; "" where nothing points anywhere
	LeadingCause    string
	Known           string         // "found", "suspected", or "" where nothing points anywhere
	Probability     quantity.Ratio // of a suspected first cause; NaN when it was found
	HowSure         string
	Found           string // every cause that a look showed to be there
	MadeBy          string // what made the first cause fail
	CannotPart      string // empty when the first two suspected causes are parted
	Contradiction   string // empty when the answers fit together
	SaysNothing     string // answers that how it was looked at makes worthless
	ConfirmBy       string
	ConfirmEvidence string // id of that question
	Remedies        string
	HeldBack        string // why nothing that runs the shaft is proposed; empty when it may be
	Answered        int
	ByVerdict       int     // answered by the boat's own looks and verdicts
	Doubt           float64 // entropy of what may be at work, bits
	Surprise        float64 // standard deviations; NaN with fewer than two answers
	Ranking         [12]RankedCause
	CureOrder       [8]CureStep
	NextChecks      [6]NextCheck
	QuickQuestions  [5]QuickQuestion
	Holds           [12]Hold
	Weights         [80]Weighed
	procedures      []string // ids of the cures: of the first cause, then of all in their order
	hazards         []string // ids of cautions: of what is proposed first, and what is dangerous now
}

// Hazards are the cautions of the checks that are proposed first and of what
// is dangerous now. Those of later checks stand with each of them.
func (r Result) Hazards() []string { return r.hazards }

// Procedures are the cures of the first cause and the first ones of all that is
// to be cured.
func (r Result) Procedures() []string { return r.procedures }

// RankedCause is one line of the ranking.
type RankedCause struct {
	Name, Part      string
	Known           string         // by what it was found; empty when it is suspected
	Probability     quantity.Ratio // NaN when it was found
	EvidenceFor     string
	EvidenceAgainst string
	Cause           string // id
	State           string // "found" or "suspected"
}

// NextCheck is a look or a reading worth making next.
type NextCheck struct {
	Question    string
	How         string
	Needs       string
	Minutes     quantity.Time
	Place       string
	IfYes, IfNo string
	Hazard      string
	Bits        float64
	PerMinute   float64
	Evidence    string // id
}

// QuickQuestion is a question that needs no work.
type QuickQuestion struct {
	Question    string
	How         string
	IfYes, IfNo string
	Bits        float64
	Evidence    string // id
}

// Weighed is one answer with its weight for the first cause.
type Weighed struct {
	Question string
	Answer   string
	From     string
	By       string
	Weight   string
	Decibans float64
	Evidence string // id
	Limit    string // id, of an answer that a verdict gave
}

// Find ranks the causes of trouble by the answers typed or in the boat
// file and by the verdicts of the boat's other sheets.
func Find(s *calc.Session, in Input) (Result, error) {
	f := newFinder(s.Book)
	if err := f.take(in.Answers); err != nil {
		return Result{}, err
	}
	byVerdict := f.takeVerdicts(s)
	f.stops = s.Stops()
	if f.fault != nil {
		return Result{}, f.fault
	}
	return f.findings(in, byVerdict), nil
}

func (f *finder) findings(in Input, byVerdict int) Result {
	f.believe()
	order := f.order()
	first := order[0]
	p := f.belief.Cause[first]
	out := Result{ByVerdict: byVerdict, Doubt: rounded(f.belief.Doubt()), Found: f.foundWords()}
	for q, a := range f.answers {
		if a != bayes.Unknown && f.from[q] != byBoat { // what she has is no look
			out.Answered++
		}
	}
	out.HowSure = f.howSure(first, out.Answered)
	if f.pointsNowhere(p) {
		out.LeadingCause, out.Probability = NothingPoints, quantity.Ratio(math.NaN())
	} else {
		cause := f.causes.At(first)
		out.Cause, out.LeadingCause, out.Known, out.Probability = cause.ID, cause.Title, f.known(first), f.shown(first)
		out.ConfirmBy, out.ConfirmEvidence = f.confirm(cause)
		if f.belief.Cause[first] >= f.figure("sure-open") {
			out.Remedies, out.procedures = f.remedies(cause)
		} else { // under even odds it is to be looked at, not cured
			out.LeadingCause = notClear + "“" + cause.Title + "”"
		}
		out.CannotPart = f.cannotPart(order, in.Lies)
		out.MadeBy = f.madeBy(first, in.Lies)
		f.cureOrder(first, &out)
	}
	out.Contradiction, out.Surprise = f.contradiction(out.Answered)
	out.SaysNothing = strings.Join(f.saysNothing, " ")
	f.rank(order, &out)
	if out.Answered == 0 || !f.pointsNowhere(p) {
		f.next(in, &out)
	}
	f.weigh(first, &out)
	return out
}

// isFound tells whether a look showed the cause to be there.
func (f *finder) isFound(c int) bool { return slices.Contains(f.belief.Found, c) }

// ofOneLook is how probable what was found is by all answers, its own look
// taken at the rate at which looks are wrong.
func (f *finder) ofOneLook(c int) float64 {
	return f.belief.Looks[slices.Index(f.belief.Found, c)]
}

// known is the word for how a cause is known.
func (f *finder) known(c int) string {
	if f.isFound(c) {
		return found
	}
	return suspected
}

// The words of Result.Known.
const (
	found     = "found"
	suspected = "suspected"
)

// order lists the causes: those found first, by what they explain, then those
// suspected. What was found and explains nothing does not lead where something
// likely does.
func (f *finder) order() []int {
	explains := map[int]float64{}
	for _, c := range f.belief.Found {
		explains[c] = f.explains(c)
	}
	found, order := slices.Clone(f.belief.Found), f.suspects()
	slices.SortStableFunc(found, func(a, b int) int { return cmp.Compare(explains[b], explains[a]) })
	if len(found) > 0 && len(order) > 0 && explains[found[0]] <= 0 {
		if c := order[0]; f.leads(order) && f.explains(c) > 0 {
			return slices.Concat([]int{c}, found, order[1:])
		}
	}
	return slices.Concat(found, order)
}

// explains is what all answers but its own settling look say for a cause, in
// decibans; what others explain anyway does not count.
func (f *finder) explains(c int) float64 {
	sum := 0.0
	for q, a := range f.answers {
		if q != f.settler[c] {
			sum += f.belief.Weight(c, q, a)
		}
	}
	return sum
}

// shown is the probability of a suspected cause as it goes on the sheet: to a
// hundredth, as such judgements are worth, and never quite sure. What was found
// has none.
func (f *finder) shown(c int) quantity.Ratio {
	if f.isFound(c) {
		return quantity.Ratio(math.NaN())
	}
	return quantity.Ratio(min(max(math.Round(100*f.belief.Cause[c])/100, 0.01), 0.99))
}

// foundBy says which look showed a cause to be there.
func (f *finder) foundBy(c int) string {
	if !f.isFound(c) {
		return ""
	}
	if from := f.from[f.settler[c]]; from != byPerson {
		return found + ", " + from
	}
	return found
}

func (f *finder) foundWords() string {
	var list []string
	for _, c := range f.belief.Found {
		list = append(list, strings.TrimSuffix(f.causes.At(c).Title+" ("+strings.TrimPrefix(f.foundBy(c), found+", ")+")", " ("+found+")"))
	}
	return strings.Join(list, "; ")
}

// rank lists what was found, what is suspected at even odds or more, the first
// three of the others, and what is to be cured: a longer list helps nobody.
func (f *finder) rank(order []int, out *Result) {
	n, suspects := 0, 0
	for _, c := range order {
		is := f.isFound(c) || f.belief.Cause[c] >= f.figure("sure-open") ||
			slices.ContainsFunc(out.CureOrder[:], func(s CureStep) bool { return s.Cause == f.causes.At(c).ID })
		if !f.isFound(c) {
			suspects++
			is = is || suspects <= leaders
		}
		if is && n < len(out.Ranking) {
			out.Ranking[n] = f.ranked(c)
			n++
		}
	}
}

func (f *finder) ranked(c int) RankedCause {
	cause := f.causes.At(c)
	r := RankedCause{Name: cause.Title, Part: cause.Part, Known: f.foundBy(c), Probability: f.shown(c), Cause: cause.ID, State: f.known(c)}
	var most, least float64
	evidenceFor, against := -1, -1
	for q, a := range f.answers {
		w := f.belief.Weight(c, q, a)
		if w > most && f.from[q] != byBoat { // what she has is no evidence for a trouble
			most, evidenceFor = w, q
		}
		if w < least {
			least, against = w, q
		}
	}
	words := func(q int, w float64) string {
		if q < 0 || math.Abs(w) < f.figure("weight-meaningful") {
			return ""
		}
		return fmt.Sprintf("%s %s (%s)", f.evidence.At(q).Title, answerWord(f.answers[q]), f.strength(w))
	}
	r.EvidenceFor, r.EvidenceAgainst = words(evidenceFor, most), words(against, least)
	return r
}

// weigh lists the answers, the weightiest first.
func (f *finder) weigh(first int, out *Result) {
	var lines []Weighed
	for q, a := range f.answers {
		if a == bayes.Unknown {
			continue
		}
		w := f.belief.Weight(first, q, a)
		lines = append(lines, Weighed{Question: f.evidence.At(q).Title, Answer: answerWord(a), From: f.from[q], By: f.by(q), Weight: f.strength(w),
			Decibans: math.Round(w*10) / 10, Evidence: f.evidence.At(q).ID, Limit: f.limits[q]})
	}
	sort.SliceStable(lines, func(i, j int) bool { return math.Abs(lines[i].Decibans) > math.Abs(lines[j].Decibans) })
	copy(out.Weights[:], lines)
}
