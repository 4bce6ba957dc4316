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
	"sync"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// finder is one run of the fault finding: what the book knows, and the answers
// by the number of the question.
type finder struct {
	*knowledge
	answers  []bayes.Answer
	unsure   []bool   // answered with don't know
	from     []string // who answered
	disagree []string // verdicts that say otherwise than the person
	belief   *bayes.Belief
}

func newFinder(book *rules.Book) *finder {
	f := &finder{knowledge: know(book)}
	questions := f.evidence.Len()
	f.answers, f.from, f.unsure = make([]bayes.Answer, questions), make([]string, questions), make([]bool, questions)
	return f
}

// knowledge is the rows of a book as a model. It is made once for a book, and
// nobody changes it.
type knowledge struct {
	book     *rules.Book
	causes   rules.List[rules.Cause]
	evidence rules.List[rules.Evidence]
	question map[string]int // by id
	model    bayes.Model
	fault    error              // what is wrong with the model; only an overlay's rows can lead there
	settler  []int              // by cause: the question that settles it, −1 for none
	figures  map[string]float64 // of the table of judgements
	before   func() []float64   // probability of each cause without answers
}

type knowledgeKey struct{}

func know(book *rules.Book) *knowledge {
	return book.Derived(knowledgeKey{}, func() any { return newKnowledge(book) }).(*knowledge)
}

func newKnowledge(book *rules.Book) *knowledge {
	k := &knowledge{book: book, causes: book.Causes(), evidence: book.Evidence(), question: map[string]int{}, figures: judgements(book)}
	told, look := k.figure("wrong-told"), k.figure("wrong-look")
	for q, e := range k.evidence.All() {
		k.question[e.ID] = q
		k.model.Leak, k.model.Absence = append(k.model.Leak, e.Otherwise), append(k.model.Absence, e.Absence)
		k.model.Settles = append(k.model.Settles, -1)
		k.model.Wrong = append(k.model.Wrong, map[bool]float64{true: look, false: told}[e.Kind == check])
	}
	k.takeCauses()
	k.fault = k.model.Check()
	k.before = sync.OnceValue(func() []float64 { return k.model.Believe(make([]bayes.Answer, k.evidence.Len())).Cause })
	return k
}

// check is the kind of a question that is work of its own.
const check = "check"

// takeCauses makes the model of causes, signs and chains. A check that
// confirms one cause alone settles it.
func (k *knowledge) takeCauses() {
	shared := map[int]bool{}
	number, all := make(map[string]int, k.causes.Len()), 0.0
	for _, cause := range k.causes.All() {
		all += cause.Prior
	}
	for c, cause := range k.causes.All() {
		number[cause.ID] = c
		k.model.Arises = append(k.model.Arises, k.figure("arises")*cause.Prior/all)
		k.model.Brings = append(k.model.Brings, make([]float64, k.causes.Len()))
		k.model.Yes = append(k.model.Yes, slices.Clone(k.model.Leak))
		k.settler = append(k.settler, -1)
		q, ok := k.question[cause.Confirm]
		if !ok || k.evidence.At(q).Kind != check {
			continue
		}
		if k.model.Settles[q] >= 0 { // two causes share it: a yes settles neither
			k.settler[k.model.Settles[q]], k.model.Settles[q] = -1, -1
			shared[q] = true
		}
		if shared[q] {
			continue
		}
		k.model.Settles[q], k.settler[c] = c, q
	}
	for i := k.book.Signs().Len() - 1; i >= 0; i-- { // rows of an overlay stand first, and win
		sign := k.book.Signs().At(i)
		k.model.Yes[number[sign.Cause]][k.question[sign.Evidence]] = sign.Yes
	}
	for _, c := range k.book.Chains().All() {
		from, isFrom := number[c.From]
		if to, isTo := number[c.To]; isFrom && isTo && c.Rate != "" {
			k.model.Brings[from][to] = k.figure("brings-" + c.Rate)
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
