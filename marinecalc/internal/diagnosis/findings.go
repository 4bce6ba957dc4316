package diagnosis

import (
	"fmt"
	"math"
	"sort"

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
}

// Result is what fault-finding gives: the causes by probability, and the
// checks by what they are expected to tell.
type Result struct {
	Cause         string // id of the first cause; "" where nothing points anywhere
	LeadingCause  string
	Probability   quantity.Ratio
	HowSure       string
	CannotPart    string // empty when the first two causes are parted
	Contradiction string // empty when the answers fit one cause
	ConfirmBy     string
	Remedies      string
	Answered      int
	ByVerdict     int     // answered by the boat's own looks and verdicts
	Doubt         float64 // entropy of the causes, bits
	Surprise      float64 // standard deviations; NaN with fewer than two answers
	Ranking       [12]RankedCause
	NextChecks    [10]NextCheck
	Weights       [80]Weighed
}

// RankedCause is one line of the ranking.
type RankedCause struct {
	Name, Part      string
	Probability     quantity.Ratio
	Odds            string
	EvidenceFor     string
	EvidenceAgainst string
}

// NextCheck is a question worth answering next.
type NextCheck struct {
	Question  string
	How       string
	Bits      float64
	PerMinute float64
	Minutes   quantity.Time
	Place     string
	Hazard    string
}

// Weighed is one answer with its weight for the first cause.
type Weighed struct {
	Question string
	Answer   string
	From     string
	Weight   string
	Decibans float64
	Second   float64 // decibans against the second cause alone
}

// Find ranks the causes of trouble by the answers typed or in the boat
// file and by the verdicts of the boat's other sheets.
func Find(s *calc.Session, in Input) (Result, error) {
	f := newFinder(s.Book)
	if err := f.take(in.Answers); err != nil {
		return Result{}, err
	}
	byVerdict := f.takeVerdicts(s)
	if err := f.model.Check(); err != nil {
		return Result{}, err // only an overlay's rows can lead here
	}
	return f.findings(in, byVerdict), nil
}

func (f *finder) findings(in Input, byVerdict int) Result {
	p := f.model.Posterior(f.answers)
	order := bayes.Rank(p)
	first := order[0]
	out := Result{ByVerdict: byVerdict, Doubt: rounded(entropy(p))}
	for _, a := range f.answers {
		if a != bayes.Unknown {
			out.Answered++
		}
	}
	out.HowSure = f.howSure(p[first], out.Answered)
	if f.pointsNowhere(p[first]) {
		out.LeadingCause, out.Probability = NothingPoints, quantity.Ratio(math.NaN())
	} else {
		cause := f.causes.At(first)
		out.Cause, out.LeadingCause, out.Probability = cause.ID, cause.Title, shown(p[first])
		out.ConfirmBy, out.Remedies = f.confirm(cause), f.remedies(cause)
		out.CannotPart = f.cannotPart(p, order, in.Lies)
	}
	out.Contradiction, out.Surprise = f.contradiction(out.Answered)
	for i, c := range order[:min(len(order), len(out.Ranking))] {
		out.Ranking[i] = f.ranked(c, p[c])
	}
	for i, check := range f.next(p, in) {
		if i == len(out.NextChecks) {
			break
		}
		out.NextChecks[i] = f.nextCheck(check)
	}
	f.weigh(order, &out)
	return out
}

func entropy(p []float64) float64 {
	sum := 0.0
	for _, v := range p {
		if v > 0 {
			sum -= v * math.Log2(v)
		}
	}
	return sum
}

func (f *finder) ranked(c int, p float64) RankedCause {
	r := RankedCause{Name: f.causes.At(c).Title, Part: f.causes.At(c).Part, Probability: shown(p), Odds: oddsText(p)}
	var most, least float64
	evidenceFor, against := -1, -1
	for q, a := range f.answers {
		w := f.model.Against(c, q, a)
		if w > most {
			most, evidenceFor = w, q
		}
		if w < least {
			least, against = w, q
		}
	}
	words := func(q int, w float64) string {
		if q < 0 {
			return ""
		}
		return fmt.Sprintf("%s %s (%s)", f.evidence.At(q).Title, answerWord(f.answers[q]), f.strength(w))
	}
	r.EvidenceFor, r.EvidenceAgainst = words(evidenceFor, most), words(against, least)
	return r
}

func (f *finder) nextCheck(c bayes.Check) NextCheck {
	e := f.evidence.At(c.Question)
	n := NextCheck{Question: e.Title, How: e.Help, Bits: rounded(c.Bits), PerMinute: math.Round(c.Rate*1e5) / 1e5,
		Minutes: quantity.Time(e.Minutes * 60), Place: e.Place}
	if e.Place == "either" {
		n.Place = "afloat or ashore"
	}
	if w, ok := f.worst(e); ok {
		n.Hazard = string(w.Signal) + ": " + w.Text
	}
	return n
}

// weigh lists the answers, the weightiest first.
func (f *finder) weigh(order []int, out *Result) {
	var lines []Weighed
	for q, a := range f.answers {
		if a == bayes.Unknown {
			continue
		}
		w := f.model.Against(order[0], q, a)
		line := Weighed{Question: f.evidence.At(q).Title, Answer: answerWord(a), From: f.from[q], Weight: f.strength(w),
			Decibans: math.Round(w*10) / 10, Second: math.NaN()}
		if len(order) > 1 {
			line.Second = math.Round(f.model.Between(order[0], order[1], q, a)*10) / 10
		}
		lines = append(lines, line)
	}
	sort.SliceStable(lines, func(i, j int) bool { return math.Abs(lines[i].Decibans) > math.Abs(lines[j].Decibans) })
	copy(out.Weights[:], lines)
}
