package diagnosis

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// judgement is the figure of a row of the table of judgements.
func judgement(book *rules.Book, id string) float64 {
	row := book.Table("fault-judgement").Find(id, func(string) (float64, string, bool) { return 0, "", false })
	if row == nil {
		return math.NaN() // a test finds every row that is asked for
	}
	return row.Values.Of("figure").SI
}

func (f *finder) figure(id string) float64 { return judgement(f.book, id) }

// rounded keeps three decimals, which is more than such figures are worth.
func rounded(v float64) float64 { return math.Round(v*1000) / 1000 }

// shown is a probability as it goes on the sheet: to a thousandth, and never
// quite sure.
func shown(p float64) quantity.Ratio { return quantity.Ratio(min(max(rounded(p), 0.001), 0.999)) }

func percent(p float64) string { return fmt.Sprintf("%.0f %%", 100*p) }

func oddsText(p float64) string {
	o := bayes.Odds(p)
	write := func(o float64) string {
		if o >= 1000 {
			return "over 1000"
		}
		return fmt.Sprintf("%.*f", map[bool]int{true: 0, false: 1}[o >= 10], o)
	}
	if o >= 1 {
		return write(o) + " to 1"
	}
	return "1 to " + write(1/o)
}

// NothingPoints stands in the place of the first cause where there is none.
const NothingPoints = "nothing points anywhere"

// pointsNowhere tells whether no cause is worth a name: nothing was answered
// with yes, and the others together are likelier than the first one.
func (f *finder) pointsNowhere(p float64) bool {
	return p < f.figure("points-nowhere") && !slices.Contains(f.answers, bayes.Yes)
}

func (f *finder) howSure(p float64, answered int) string {
	if answered == 0 {
		return "Nothing is answered yet: the order is only how common each cause is."
	}
	if f.pointsNowhere(p) {
		return fmt.Sprintf("Nothing points anywhere: no answer is a yes, and none of the listed causes has more than %s.", percent(p))
	}
	words := "Open: none of the causes is more likely than all the others together"
	switch {
	case p >= f.figure("sure-nearly"):
		words = "Nearly sure"
	case p >= f.figure("sure-likely"):
		words = "Likely"
	case p >= f.figure("sure-open"):
		words = "More likely than all the others together"
	}
	return fmt.Sprintf("%s (%s), if one of the listed causes is at work alone.", words, percent(p))
}

func (f *finder) confirm(c rules.Cause) string {
	q, ok := f.question[c.Confirm]
	if !ok {
		return ""
	}
	e := f.evidence.At(q)
	words := e.Title + " " + e.Help
	if a := f.answers[q]; a != bayes.Unknown {
		words += " (Answered: " + answerWord(a) + ".)"
	}
	return words
}

func (f *finder) remedies(c rules.Cause) string {
	var titles []string
	for _, id := range c.Remedies.All() {
		for _, r := range f.book.Remedies().All() {
			if r.ID == id {
				titles = append(titles, r.Title)
			}
		}
	}
	return strings.Join(titles, "; or: ")
}

// contradiction says when no listed cause explains the answers, and which two
// go together worst.
func (f *finder) contradiction(answered int) (words string, surprise float64) {
	surprise = math.NaN()
	lines := slices.Clone(f.disagree)
	if answered >= 2 {
		s := f.model.Surprise(f.answers)
		surprise = rounded(s.Best)
		if s.Best > f.figure("surprise") {
			lines = append(lines, fmt.Sprintf("No listed cause alone explains these answers. Least in harmony: %s to “%s” and %s to “%s”. One of them may be a slip, or two troubles are at work at once.",
				answerWord(f.answers[s.First]), f.evidence.At(s.First).Title, answerWord(f.answers[s.Second]), f.evidence.At(s.Second).Title))
		}
	}
	return strings.Join(lines, " "), surprise
}

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
		return "none"
	default:
		return "weak " + side
	}
}
