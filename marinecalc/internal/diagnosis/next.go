// What to look at next: what may be asked where the boat lies, what it costs,
// and what would part the first two causes. The order is package bayes's.

package diagnosis

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
)

// next lists the checks that can be made where the boat lies and in the time
// there is.
func (f *finder) next(p []float64, in Input) []bayes.Check {
	cost := make([]float64, f.evidence.Len())
	for q, e := range f.evidence.All() {
		switch {
		case e.Place != "either" && e.Place != in.Lies:
		case in.MinutesLeft > 0 && e.Minutes > float64(in.MinutesLeft):
		default:
			hazard := "none"
			if worst, ok := f.worst(e); ok {
				hazard = strings.ToLower(string(worst.Signal))
			}
			cost[q] = e.Minutes * f.figure(fmt.Sprintf("access-%d", e.Access)) * f.figure("hazard-"+hazard)
		}
	}
	list := f.model.Next(p, f.answers, cost)
	return slices.DeleteFunc(list, func(c bayes.Check) bool { return c.Bits < 5e-4 }) // would show as 0.000
}

// worst is the gravest caution of a question. ok is false where it has none.
func (f *finder) worst(e rules.Evidence) (worst rules.Caution, ok bool) {
	for _, c := range f.book.AllCautions().All() {
		if rules.Contains(e.Hazards, c.ID) && (!ok || c.Signal.Gravity() < worst.Signal.Gravity()) {
			worst, ok = c, true
		}
	}
	return worst, ok
}

// cannotPart says plainly when the first two causes are not told apart, and
// what would part them.
func (f *finder) cannotPart(p []float64, order []int, lies string) string {
	if len(order) < 2 || p[order[0]] >= f.figure("part-odds")*p[order[1]] {
		return ""
	}
	c, d := order[0], order[1]
	words := fmt.Sprintf("“%s” and “%s” cannot be told apart by these answers (%.1f to 1). ", f.causes.At(c).Title, f.causes.At(d).Title, p[c]/p[d])
	here, anywhere := make([]bool, f.evidence.Len()), make([]bool, f.evidence.Len())
	for q, e := range f.evidence.All() {
		here[q], anywhere[q] = e.Place == "either" || e.Place == lies, true
	}
	enough := f.figure("part-information")
	if q, bits := f.model.Part(p, f.answers, here, c, d); q >= 0 && bits >= enough {
		return words + "This would part them best: " + f.evidence.At(q).Title
	}
	if q, bits := f.model.Part(p, f.answers, anywhere, c, d); q >= 0 && bits >= enough {
		return words + "Nothing " + lies + " parts them; " + f.evidence.At(q).Place + " this would: " + f.evidence.At(q).Title
	}
	return words + "No question left parts them: have both looked at."
}
