package diagnosis

import (
	"testing"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
)

// BenchmarkEverySet is the enumeration of one to three causes over the rows of
// the book, for a usual number of answers.
func BenchmarkEverySet(b *testing.B) {
	f := newFinder(rules.Standard())
	for i, id := range []string{"knock-into-gear", "red-dust", "gone-in-neutral", "shake-grows", "came-suddenly", "after-touching", "gearbox-whine", "fluid-metal", "mounts-old", "late-engage", "rumble-aft", "gland-hot"} {
		f.answers[f.question[id]] = []bayes.Answer{bayes.Yes, bayes.No}[i%2]
	}
	for b.Loop() {
		f.model.Believe(f.answers)
	}
}
