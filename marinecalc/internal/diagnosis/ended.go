// Answers that work has put an end to: what they were of is not as it was.

package diagnosis

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
)

// Ended are the questions of a boat, by their ids, whose yes is over once these causes are
// cured: those that settle one of them, and those that are strong evidence for none
// but them and causes that were looked for and not found. The others stand: what they
// tell of may have more than one cause. looks leaves out what is noticed and not looked at.
func Ended(book *rules.Book, b *boat.Boat, cured []string, looks bool) []string {
	f := newFinder(book)
	list, _, _, _ := b.Find(boat.PlaceOfAnswers)
	for a := range boat.Answers(list) {
		if q, ok := f.question[a.Question]; ok {
			f.answers[q] = answerOf[a.Answer]
		}
	}
	f.takeBoat(b)
	cures := map[string]string{}
	for _, cause := range cured {
		cures[cause] = cause
	}
	var ids []string
	for q, e := range f.evidence.All() {
		if f.answers[q] == bayes.Yes && f.over(q, cures) != "" && (!looks || e.Kind == check) {
			ids = append(ids, e.ID)
		}
	}
	return ids
}

// over is by which cure a yes to a question is over, of cures by the id of their
// cause; "" where it stands.
func (f *finder) over(q int, cures map[string]string) (by string) {
	for c, cause := range f.causes.All() {
		s := f.settler[c]
		if s != q && (f.settles(q) || !f.strongly(q, c)) {
			continue
		}
		if cure := cures[cause.ID]; cure != "" {
			by = cure
		} else if s < 0 || f.answers[s] != bayes.No {
			return ""
		}
	}
	return by
}

// settles tells whether a question settles a cause.
func (f *finder) settles(q int) bool { return f.knowledge.model.Settles[q] >= 0 }

// takeCare puts an end to what was answered with yes before care that cures it was
// noted, by a later day: the packing that was hard is not in the gland any more.
func (f *finder) takeCare(b *boat.Boat) {
	list, _, said, _ := b.Find(boat.PlaceOfAnswers)
	if said == "" {
		return // nobody knows from when the answers are
	}
	cures, over := caresAfter(f.book, b, said), map[int]string{}
	for q := range f.answers { // all before one is taken away
		over[q] = f.over(q, cures)
	}
	for a := range boat.Answers(list) {
		q, asked := f.question[a.Question]
		by := over[q]
		if !asked || by == "" || a.Answer != "yes" || f.from[q] != byPerson {
			continue
		}
		f.answers[q], f.from[q], f.ways[q] = bayes.Unknown, "", nil
		f.model.Wrong[q], f.model.Settles[q] = f.knowledge.model.Wrong[q], f.knowledge.model.Settles[q]
		f.disagree = append(f.disagree, fmt.Sprintf("To “%s” the answer of %s is yes, but %s: it was not counted. Look again and answer anew.",
			f.evidence.At(q).Title, said, by))
	}
}

// caresAfter is what the boat's care after a day cured, by the id of the cause: what
// was done, and when.
func caresAfter(book *rules.Book, b *boat.Boat, day string) map[string]string {
	cures := map[string]string{}
	for _, done := range b.ServiceDone() {
		for _, row := range book.Table("service-intervals").Rows.All() {
			if row.Pick != done.Item || done.Date <= day {
				continue
			}
			for _, cause := range strings.Fields(row.Values.Of("cures").Text) {
				cures[cause] = fmt.Sprintf("“%s” was done on %s", row.Name, done.Date)
			}
		}
	}
	return cures
}
