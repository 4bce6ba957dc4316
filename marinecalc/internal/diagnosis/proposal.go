// What is said of a check that is proposed.

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

func (f *finder) nextCheck(c bayes.Check, inFront []string) NextCheck {
	e := f.evidence.At(c.Question)
	n := NextCheck{Question: e.Title, Evidence: e.ID, How: e.Help, Bits: rounded(c.Bits), PerMinute: math.Round(c.Rate*1e5) / 1e5,
		Minutes: quantity.Time(e.Minutes * 60), Place: e.Place, Needs: needs(e),
		IfYes: f.outcome(c.Question, bayes.Yes), IfNo: f.outcome(c.Question, bayes.No)}
	n.Hazard = f.hazardWords(e, inFront)
	return n
}

// hazardWords are the cautions of a check, gravest first: in short where the
// sheet has them in front, in full where not.
func (f *finder) hazardWords(e rules.Evidence, inFront []string) string {
	var words []string
	for _, c := range f.byGravity(e.Hazards) {
		text := c.Text
		if slices.Contains(inFront, c.ID) {
			text = c.InShort() + "."
		}
		words = append(words, string(c.Signal)+": "+text)
	}
	return strings.Join(words, " ")
}

// needs lists the tools and people of a check.
func needs(e rules.Evidence) string {
	var list []string
	for _, n := range e.Needs.All() {
		list = append(list, n)
	}
	return strings.Join(list, ", ")
}

// outcome says what an answer would do: which cause would lead those suspected,
// and what would become of the one that leads them now. A cause is not suspected
// that is as probable as on any boat of which nothing was noticed.
func (f *finder) outcome(q int, a bayes.Answer) string {
	if c := f.model.Settles[q]; c >= 0 && a == bayes.Yes {
		return "found: " + f.causes.At(c).Title
	}
	after, _ := f.belief.After(q, a)
	before := f.before()
	lead := func(p []float64) int {
		for _, c := range bayes.Rank(p) {
			if !f.isFound(c) && !f.isBehind[c] && p[c] >= f.figure("alive-rise")*before[c] {
				return c
			}
		}
		return -1
	}
	now, then := lead(f.belief.Cause), lead(after)
	var words []string
	for _, c := range slices.Compact([]int{then, now}) {
		if c >= 0 {
			words = append(words, fmt.Sprintf("%s %s", f.causes.At(c).Title, percent(after[c])))
		}
	}
	return strings.Join(words, "; ")
}
