// Package diagnosis finds the cause of trouble from signs, looks and the
// verdicts of the boat's other sheets. The arithmetic is package bayes below
// it: finder.go makes its model of the rows of rule data, answers.go takes what
// was said, and verdicts and readings of the boat, findings.go takes
// the answers to what was found and what is suspected, next.go says what to
// look at next and proposal.go what is said of it, cure.go what made it fail
// and what is to be cured, order.go in which order, words.go
// how sure it is, chains.go how one trouble leads to another, questions.go
// what can be asked.
package diagnosis

import (
	"slices"
	"sync"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
)

// finder is one run of the fault finding: what the book knows, and the answers
// by the number of the question.
type finder struct {
	*knowledge
	answers  []bayes.Answer
	model    bayes.Model // of the knowledge, with how the answers were come by
	unsure   []bool      // answered with don't know
	from     []string    // who answered
	limits   []string    // the limit whose verdict answered, by its id, else ""
	gauged   []string    // the figure that a verdict answered by, and its day, else ""
	ways     [][]string  // how it was looked at, "" where nobody said
	disagree []string    // verdicts that say otherwise than the person
	stops    []calc.Stop // verdicts of the boat that forbid power
	// saysNothing tells which answers were not counted for how it was looked.
	saysNothing []string
	belief      *bayes.Belief
	first       []int         // the looks that go before all others
	inOrder     []int         // the suspected causes, as suspects has them
	isBehind    []bool        // by cause: it explains nothing of what was noticed
	taken       *bayes.Belief // with all that was found taken at its word; nil until asked for
}

func newFinder(book *rules.Book) *finder {
	f := &finder{knowledge: know(book)}
	questions := f.evidence.Len()
	f.answers, f.unsure = make([]bayes.Answer, questions), make([]bool, questions)
	f.from, f.ways, f.limits, f.gauged = make([]string, questions), make([][]string, questions), make([]string, questions), make([]string, questions)
	f.model = f.knowledge.model
	f.model.Trust = f.figure("sure-nearly")
	f.model.Wrong, f.model.Settles = slices.Clone(f.model.Wrong), slices.Clone(f.model.Settles)
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
	written  bayes.Model        // the same with the rows taken at their word
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
	k := asWritten(book)
	k.written = k.model
	k.model = k.model.Strayed(k.figure("weights-stray"))
	k.fault = k.model.Check()
	k.before = sync.OnceValue(func() []float64 { return k.model.Believe(make([]bayes.Answer, k.evidence.Len())).Cause })
	return k
}

// asWritten is what the rows say, taken at their word.
func asWritten(book *rules.Book) *knowledge {
	k := &knowledge{book: book, causes: book.Causes(), evidence: book.Evidence(), question: map[string]int{}, figures: judgements(book)}
	for q, e := range k.evidence.All() {
		k.question[e.ID] = q
		k.model.Leak, k.model.Absence = append(k.model.Leak, e.Otherwise), append(k.model.Absence, e.Absence)
		k.model.Settles = append(k.model.Settles, -1)
		k.model.Wrong = append(k.model.Wrong, book.WrongBy(e.Unsaid()))
	}
	k.takeCauses()
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
		q := k.question[sign.Evidence]
		k.model.Yes[number[sign.Cause]][q] = k.book.SignYes(sign, k.model.Leak[q])
	}
	for _, c := range k.book.Chains().All() {
		from, isFrom := number[c.From]
		if to, isTo := number[c.To]; isFrom && isTo && c.Rate != "" {
			k.model.Brings[from][to] = k.figure("brings-" + c.Rate)
		}
	}
}
