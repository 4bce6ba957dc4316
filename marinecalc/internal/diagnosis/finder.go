// Package diagnosis finds the cause of trouble from signs, looks and the
// verdicts of the boat's other sheets. The arithmetic is package bayes below
// it: finder.go makes its model of the rows of rule data, findings.go takes
// the answers to a ranking and the next checks, words.go says how sure it is,
// chains.go says how one trouble leads to another, questions.go lists what
// can be asked.
package diagnosis

import (
	"fmt"
	"slices"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// finder is one run of the fault finding: the rows of the book as a model,
// and the answers by the number of the question.
type finder struct {
	book     *rules.Book
	causes   rules.List[rules.Cause]
	evidence rules.List[rules.Evidence]
	question map[string]int // by id
	model    bayes.Model
	answers  []bayes.Answer
	from     []string // who answered
	disagree []string // verdicts that say otherwise than the person
}

func newFinder(book *rules.Book) *finder {
	f := &finder{book: book, causes: book.Causes(), evidence: book.Evidence(), question: map[string]int{}}
	otherwise := make([]float64, f.evidence.Len())
	for q, e := range f.evidence.All() {
		f.question[e.ID] = q
		otherwise[q] = e.Otherwise
	}
	number := make(map[string]int, f.causes.Len())
	for c, cause := range f.causes.All() {
		number[cause.ID] = c
		f.model.Prior = append(f.model.Prior, cause.Prior)
		f.model.Yes = append(f.model.Yes, slices.Clone(otherwise))
	}
	for i := book.Signs().Len() - 1; i >= 0; i-- { // rows of an overlay stand first, and win
		sign := book.Signs().At(i)
		f.model.Yes[number[sign.Cause]][f.question[sign.Evidence]] = sign.Yes
	}
	f.answers = make([]bayes.Answer, f.evidence.Len())
	f.from = make([]string, f.evidence.Len())
	return f
}

var answerOf = map[string]bayes.Answer{"yes": bayes.Yes, "no": bayes.No, "unknown": bayes.Unknown}

func answerWord(a bayes.Answer) string {
	return map[bayes.Answer]string{bayes.Yes: "yes", bayes.No: "no", bayes.Unknown: "don't know"}[a]
}

// take takes the person's answers. A question answered both ways is refused.
func (f *finder) take(answers []Symptom) error {
	var list problem.List
	for i, one := range answers {
		where := fmt.Sprintf("/answers/%d", i)
		q, ok := f.question[one.Evidence]
		if !ok {
			list.Add(where+"/evidence", fmt.Sprintf("there is no question %q", one.Evidence), "an id of the rows of evidence", "")
			continue
		}
		a := answerOf[one.Answer]
		switch {
		case a == bayes.Unknown:
		case f.answers[q] == -a:
			list.Add(where, fmt.Sprintf("“%s” is answered both with yes and with no", f.evidence.At(q).Title), "one answer", "leave one out, or answer don't know")
		default:
			f.answers[q], f.from[q] = a, "answer"
		}
	}
	return list.Err()
}

// takeVerdicts lets the boat's own verdicts answer what the person did not,
// and what was noted of looks, and returns how many questions they answered.
// What the person said wins.
func (f *finder) takeVerdicts(s *calc.Session) int {
	if s.Boat == nil {
		return 0
	}
	owner := map[string]string{}
	for _, l := range f.book.AllLimits().All() {
		owner[l.ID] = l.Calculation
	}
	count := f.takeReadings(s.Boat)
	for q, e := range f.evidence.All() {
		a, v := answerByVerdict(e, func(limit string) *sheet.Verdict {
			if out := s.Earlier(owner[limit]); out != nil {
				return out.Sheet.Verdict(limit)
			}
			return nil
		})
		switch f.answers[q] {
		case bayes.Unknown:
			if a != bayes.Unknown {
				f.answers[q], f.from[q] = a, "verdict: "+v.Title+": "+v.Reads
				count++
			}
		case -a:
			f.disagree = append(f.disagree, fmt.Sprintf("To “%s” the answer is %s, but the verdict on “%s” is “%s”; the answer was counted.",
				e.Title, answerWord(f.answers[q]), v.Title, v.Reads))
		}
	}
	return count
}

// takeReadings lets the newest looks noted in the boat file answer what the
// person did not, and returns how many questions they answered.
func (f *finder) takeReadings(b *boat.Boat) int {
	count := 0
	for q, e := range f.evidence.All() {
		for _, by := range e.Readings.All() {
			value, _, date, _ := b.Find(boat.LatestReading + by.Reading)
			word, _ := value.(string)
			if f.answers[q] == bayes.Unknown && rules.Contains(by.Words, word) {
				f.answers[q], f.from[q] = answerOf[by.Answer], "reading of "+date
				count++
			}
		}
	}
	return count
}

// answerByVerdict is what the boat's verdicts answer to a question, and the
// verdict that does; the first line of the row that fits counts.
func answerByVerdict(e rules.Evidence, verdict func(limit string) *sheet.Verdict) (bayes.Answer, *sheet.Verdict) {
	for _, by := range e.Verdicts.All() {
		for _, limit := range by.Limits.All() {
			if v := verdict(limit); v != nil && rules.Contains(by.Words, v.Word.Plain()) {
				return answerOf[by.Answer], v
			}
		}
	}
	return bayes.Unknown, nil
}
