package diagnosis

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
)

// Judgement is the figure of a row of the table of judgements.
func Judgement(book *rules.Book, id string) float64 {
	row := book.Table("fault-judgement").Find(id, nil)
	if row == nil {
		return math.NaN() // a test finds every row that is asked for
	}
	return row.Values.Of("figure").SI
}

// judgements are all figures of that table.
func judgements(book *rules.Book) map[string]float64 {
	figures := map[string]float64{}
	ids, _ := book.Table("fault-judgement").Picks()
	for _, id := range ids {
		figures[id] = Judgement(book, id)
	}
	return figures
}

func (k *knowledge) figure(id string) float64 {
	if v, ok := k.figures[id]; ok {
		return v
	}
	return math.NaN()
}

// rounded keeps three decimals, which is more than such figures are worth.
func rounded(v float64) float64 { return math.Round(v*1000) / 1000 }

func percent(p float64) string { return fmt.Sprintf("%.0f %%", 100*p) }

// NothingPoints stands in the place of the first cause where there is none.
const NothingPoints = "nothing points anywhere"

// notClear stands before the name of the first cause while it is less likely
// than not.
const notClear = "not clear yet; to look at first: "

// pointsNowhere tells whether no cause is worth a name: nothing was answered
// with yes but of what kind she is, and the others together are likelier than the
// first one.
func (f *finder) pointsNowhere(p float64) bool {
	for q, a := range f.answers {
		if a == bayes.Yes && f.from[q] != byBoat {
			return false
		}
	}
	return p < f.figure("points-nowhere")
}

// faint tells whether no cause is likely enough to be called suspected, though
// something was noticed.
func (f *finder) faint(first int) bool {
	return !f.isFound(first) && f.belief.Cause[first] < f.figure("worth-suspecting")
}

func (f *finder) howSure(first, answered int) string {
	p := f.belief.Cause[first]
	switch {
	case answered == 0:
		return "Nothing is answered yet: the order is only how common each cause is."
	case f.pointsNowhere(p):
		return fmt.Sprintf("Nothing points anywhere: no answer is a yes, and none of the listed causes has more than %s.", percent(p))
	case f.faint(first):
		return fmt.Sprintf("Nothing is suspected yet: none of the listed causes has more than %s. Look in the order given, and buy no part before.", percent(p))
	case f.isFound(first):
		if p := f.ofOneLook(first); p < f.figure("sure-nearly") {
			return fmt.Sprintf("Found by one look. About %s of such looks are wrong, and the other answers do not make up for that: look a second time, best by another's eyes, before a part is bought.", percent(f.model.Wrong[f.settler[first]]))
		}
		return "Found: looked at and there, and the other answers agree."
	}
	words := ""
	switch {
	case p >= f.figure("sure-nearly"):
		words = "Nearly sure"
	case p >= f.figure("sure-likely"):
		words = "Likely"
	case p >= f.figure("sure-open"):
		words = "More likely than not"
		if percent(p) == percent(0.5) {
			words = "As likely as not"
		}
	default:
		return fmt.Sprintf("Suspected. Not clear yet (%s): nothing is more likely than not. Look in the order given, and buy no part before.", percent(p))
	}
	return fmt.Sprintf("Suspected. %s (%s).", words, percent(p))
}

// confirm is the look that settles a cause, in words and by its id.
func (f *finder) confirm(c rules.Cause) (words, evidence string) {
	q, ok := f.question[c.Confirm]
	if !ok {
		return "", ""
	}
	e := f.evidence.At(q)
	words = e.Title + " " + e.Help
	if e.Place != "either" {
		words += " (Only " + e.Place + ".)"
	}
	if e.Runs() && !f.ends(e) && f.heldBack() != "" {
		words += " (Not while the shaft must stand.)"
	}
	if a := f.answers[q]; a != bayes.Unknown {
		words += " (Answered: " + answerWord(a) + f.hearsay(q) + ")"
	}
	return words, e.ID
}

// contradiction says when no listed causes explain the answers, and which two
// answers are the least likely.
func (f *finder) contradiction(answered int) (words string, surprise float64) {
	surprise = math.NaN()
	lines := slices.Clone(f.disagree)
	if answered >= 2 {
		deviations, first, second := f.belief.Surprise()
		surprise = rounded(deviations)
		if deviations > f.figure("surprise") {
			lines = append(lines, fmt.Sprintf("No listed causes together explain these answers. The least likely: %s to “%s” and %s to “%s”. One of them may be a slip.",
				answerWord(f.answers[first]), f.evidence.At(first).Title, answerWord(f.answers[second]), f.evidence.At(second).Title))
		}
	}
	return strings.Join(lines, " "), surprise
}

// noWeight is the word for an answer that says nothing of a cause.
const noWeight = "none"

// strength names a weight.
func (f *finder) strength(decibans float64) string {
	side := "for"
	if decibans < 0 {
		side = "against"
	}
	switch w := math.Abs(decibans); {
	case w >= f.figure("weight-strong"):
		return "strong " + side
	case w >= f.figure("weight-moderate"):
		return "moderate " + side
	case w < 0.05:
		return noWeight
	default:
		return "weak " + side
	}
}

// hearsay ends the answer to a settling question: one that somebody else told
// is to be looked at.
func (f *finder) hearsay(q int) string {
	if f.onlyTold(q) {
		return ", by hearsay: look yourself."
	}
	return "."
}

// by names how a question was looked at, "" where nobody said.
func (f *finder) by(q int) string {
	var words []string
	for _, way := range f.ways[q] {
		if way != "" {
			words = append(words, f.wayWords(way))
		}
	}
	return strings.Join(words, "; ")
}
