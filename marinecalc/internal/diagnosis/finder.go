// Package diagnosis finds the cause of trouble from signs, looks and the
// verdicts of the boat's other sheets. The arithmetic is package bayes below
// it: finder.go makes its model of the rows of rule data, findings.go takes
// the answers to what was found and what is suspected, next.go says what to
// look at next, cure.go what made it fail and what is cured first, words.go
// how sure it is, chains.go how one trouble leads to another, questions.go
// what can be asked.
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
	settler  []int // by cause: the question that settles it, −1 for none
	answers  []bayes.Answer
	unsure   []bool   // answered with don't know
	from     []string // who answered
	disagree []string // verdicts that say otherwise than the person
	belief   *bayes.Belief
	before   []float64          // probability of each cause without answers; made when first asked for
	figures  map[string]float64 // of the table of judgements, those asked for
}

func newFinder(book *rules.Book) *finder {
	f := &finder{book: book, causes: book.Causes(), evidence: book.Evidence(), question: map[string]int{}, figures: map[string]float64{}}
	questions := f.evidence.Len()
	f.answers, f.from, f.unsure = make([]bayes.Answer, questions), make([]string, questions), make([]bool, questions)
	told, look := f.figure("wrong-told"), f.figure("wrong-look")
	for q, e := range f.evidence.All() {
		f.question[e.ID] = q
		f.model.Leak, f.model.Absence = append(f.model.Leak, e.Otherwise), append(f.model.Absence, e.Absence)
		f.model.Settles = append(f.model.Settles, -1)
		f.model.Wrong = append(f.model.Wrong, map[bool]float64{true: look, false: told}[e.Kind == check])
	}
	f.takeCauses()
	return f
}

// check is the kind of a question that is work of its own.
const check = "check"

// takeCauses makes the model of causes, signs and chains. A check that
// confirms one cause alone settles it.
func (f *finder) takeCauses() {
	shared := map[int]bool{}
	number, all := make(map[string]int, f.causes.Len()), 0.0
	for _, cause := range f.causes.All() {
		all += cause.Prior
	}
	for c, cause := range f.causes.All() {
		number[cause.ID] = c
		f.model.Arises = append(f.model.Arises, f.figure("arises")*cause.Prior/all)
		f.model.Brings = append(f.model.Brings, make([]float64, f.causes.Len()))
		f.model.Yes = append(f.model.Yes, slices.Clone(f.model.Leak))
		f.settler = append(f.settler, -1)
		q, ok := f.question[cause.Confirm]
		if !ok || f.evidence.At(q).Kind != check {
			continue
		}
		if f.model.Settles[q] >= 0 { // two causes share it: a yes settles neither
			f.settler[f.model.Settles[q]], f.model.Settles[q] = -1, -1
			shared[q] = true
		}
		if shared[q] {
			continue
		}
		f.model.Settles[q], f.settler[c] = c, q
	}
	for i := f.book.Signs().Len() - 1; i >= 0; i-- { // rows of an overlay stand first, and win
		sign := f.book.Signs().At(i)
		f.model.Yes[number[sign.Cause]][f.question[sign.Evidence]] = sign.Yes
	}
	for _, c := range f.book.Chains().All() {
		from, isFrom := number[c.From]
		if to, isTo := number[c.To]; isFrom && isTo && c.Rate != "" {
			f.model.Brings[from][to] = f.figure("brings-" + c.Rate)
		}
	}
}

var answerOf = map[string]bayes.Answer{"yes": bayes.Yes, "no": bayes.No, "unknown": bayes.Unknown}

func answerWord(a bayes.Answer) string {
	return map[bayes.Answer]string{bayes.Yes: "yes", bayes.No: "no", bayes.Unknown: "don't know"}[a]
}

// byPerson marks what a person answered.
const byPerson = "answer"

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
			f.unsure[q] = true
		case f.answers[q] == -a:
			list.Add(where, fmt.Sprintf("“%s” is answered both with yes and with no", f.evidence.At(q).Title), "one answer", "leave one out, or answer don't know")
		default:
			f.answers[q], f.from[q] = a, byPerson
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
			if f.answers[q] == bayes.Unknown && rules.Contains(by.Words, word) && lookedAtBy(b, by, date) {
				f.answers[q], f.from[q] = answerOf[by.Answer], "reading of "+date
				count++
			}
		}
	}
	return count
}

// lookedAtBy tells whether it was looked at, that day, in a way that counts:
// what a dipstick shows clean says nothing about metal.
func lookedAtBy(b *boat.Boat, by rules.ReadingAnswers, date string) bool {
	if by.By.Len() == 0 {
		return true
	}
	value, _, day, _ := b.Find(boat.LatestReading + by.Reading + "By")
	word, _ := value.(string)
	return day == date && rules.Contains(by.By, word)
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
