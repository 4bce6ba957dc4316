// What made it fail, and what is cured before the new part runs.

package diagnosis

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// CureStep is one line of what to cure, in order.
type CureStep struct {
	Name, Known string
	Because     string // the link to what comes after it
	Remedies    string
	Cause       string // id
	Cure        string // id of the remedy that is proposed first
	State       string // "found" or "suspected"
}

// told tells whether a cause is found or among the leaders.
func (f *finder) told(c int) bool {
	return f.isFound(c) || f.belief.Cause[c] >= f.figure("leads")
}

// makes tells whether a chain leads from cause p to c. Where chains lead both
// ways only the likelier one counts: burnt packing scores the shaft more often
// than a scored shaft burns its packing.
func (f *finder) makes(p, c int) bool {
	m := &f.model
	there, back := m.Arises[p]*m.Brings[p][c], m.Arises[c]*m.Brings[c][p]
	return there > 0 && there >= back
}

// mostLikely is the cause not yet taken that most likely stands above c in a
// chain, −1 for none that is found or more likely than not.
func (f *finder) mostLikely(c int, taken []int) int {
	best := -1
	for p := range f.model.Brings {
		if given := f.given(); f.makes(p, c) && given[p] >= f.figure("sure-open") && !slices.Contains(taken, p) && (best < 0 || given[p] > given[best]) {
			best = p
		}
	}
	return best
}

// named is a cause with how it is known. What is likely only if a look that is
// in doubt holds has no figure.
func (f *finder) named(c int) string {
	switch {
	case f.isFound(c):
		return f.causes.At(c).Title + " (found)"
	case f.onlyIf(c):
		return f.causes.At(c).Title
	}
	return fmt.Sprintf("%s (%s)", f.causes.At(c).Title, percent(f.belief.Cause[c]))
}

// onlyIf tells whether a cause owes its probability to a look that is in doubt.
func (f *finder) onlyIf(c int) bool { return f.given()[c]-f.belief.Cause[c] > 0.05 }

// madeBy walks up the chains from a cause to what made it fail.
func (f *finder) madeBy(first int, lies string) string {
	if !f.told(first) {
		return ""
	}
	path := []int{first}
	for c := f.mostLikely(first, path); c >= 0; c = f.mostLikely(c, path) {
		path = append(path, c)
	}
	happened := f.happened(path[len(path)-1])
	if len(path) > 1 {
		var words []string
		for _, c := range slices.Backward(path) {
			said := f.named(c)
			if !f.isFound(c) && f.onlyIf(c) {
				said += " (suspected)"
			}
			words = append(words, said)
		}
		first := "cured"
		if top := path[len(path)-1]; !f.isFound(top) {
			first = "looked for" + f.lookedAt(top, lies) + ", and cured"
		}
		return strings.Join(words, " → ") + ". What stands first is " + first + " before a new part runs." + happened
	}
	var open, later []string // later is what runs the engine while that is held back
	for _, p := range bayes.Rank(f.given()) {
		if by, ok := f.above(p, first); ok && len(open)+len(later) < mostOpen {
			look := f.evidence.At(f.settler[p])
			if at := f.lookedAt(p, lies); at != "" {
				by += ", looked at" + at
			}
			if look.Runs() && f.heldBack() != "" {
				later = append(later, f.named(p)+by)
				continue
			}
			open = append(open, f.named(p)+by)
		}
	}
	says := ""
	if len(open) > 0 {
		says += " Look, before a new part runs, for: " + strings.Join(open, "; ") + "."
	}
	if len(later) > 0 {
		says += " At the first start after the cure, see to: " + strings.Join(later, "; ") + "."
	}
	switch {
	case happened != "":
		return strings.TrimSpace(happened + says)
	case says == "":
		return ""
	}
	return "Not known." + says
}

// lookedAt is where the look is made that settles a cause, " afloat" or " ashore"; ""
// where she lies for it, or nothing settles it.
func (f *finder) lookedAt(c int, lies string) string {
	if q := f.settler[c]; q >= 0 {
		if place := f.evidence.At(q).Place; place != "either" && place != lies {
			return " " + place
		}
	}
	return ""
}

// happened is what was told of the boat that by itself can have made a cause, with
// how: a blow, a rope; "" where nothing was.
func (f *finder) happened(c int) string {
	says := ""
	for _, sign := range f.book.Signs().All() {
		q := f.question[sign.Evidence]
		if e := f.evidence.At(q); e.Happened && sign.Cause == f.causes.At(c).ID && f.answers[q] == bayes.Yes && sign.Makes() {
			says += fmt.Sprintf(" By what was told: %s (“%s” yes).", problem.MidSentence(strings.TrimSuffix(sign.Because, ".")), e.Title)
		}
	}
	return says
}

// mostOpen is how many looks are proposed for what made a part fail.
const mostOpen = 5

// above tells how a cause that nobody has looked for may have made another one
// fail: "" by itself, " by way of" one that is not found. ok is false where it
// may not, or is all but ruled out.
func (f *finder) above(p, first int) (by string, ok bool) {
	q := f.settler[p]
	if p == first || f.isFound(p) || q < 0 || f.answers[q] != bayes.Unknown || f.given()[p] < f.figure("worth-naming") {
		return "", false
	}
	if f.makes(p, first) {
		return "", true
	}
	for _, between := range bayes.Rank(f.belief.Cause) {
		if f.makes(p, between) && f.makes(between, first) && !f.isFound(between) && f.given()[between] >= f.figure("look-among") {
			return ", by way of " + problem.MidSentence(f.causes.At(between).Title), true
		}
	}
	return "", false
}

// cureOrder lists what is to be cured: all that was found, the first cause,
// and what made them fail by a chain, or while nothing is likely there what is
// among the leaders; in the order in which the work goes.
func (f *finder) cureOrder(first int, out *Result) {
	list := slices.Clone(f.belief.Found)
	if !slices.Contains(list, first) && f.told(first) {
		list = append(list, first)
	}
	for i := 0; i < len(list); i++ {
		least := f.figure("leads")
		for p := range f.model.Brings {
			if f.makes(p, list[i]) && f.given()[p] >= f.figure("sure-open") {
				least = f.figure("sure-open") // what made it fail is known: no need to guess
			}
		}
		for p := range f.model.Brings {
			if f.makes(p, list[i]) && f.given()[p] >= least && !slices.Contains(list, p) {
				list = append(list, p)
			}
		}
	}
	ordered := f.chained(list)
	for i, c := range ordered[:min(len(ordered), len(out.CureOrder))] {
		cause := f.causes.At(c)
		cures, ids := f.remedies(cause)
		for _, id := range ids {
			if !slices.Contains(out.procedures, id) {
				out.procedures = append(out.procedures, id)
			}
		}
		out.CureOrder[i] = CureStep{Name: cause.Title, Known: f.known(c), Because: f.link(c, ordered), Remedies: cures, Cause: cause.ID, Cure: f.firstCure(cause), State: f.known(c)}
		switch p := f.belief.Cause[c]; {
		case f.isFound(c):
		case f.onlyIf(c):
			out.CureOrder[i].Known += ", if the find holds: look first"
		case p < f.figure("sure-open"):
			out.CureOrder[i].Known += ", " + percent(p) + ": look first"
		default:
			out.CureOrder[i].Known += ", " + percent(p)
		}
	}
}

// link says what a cause brings on among those to be cured.
func (f *finder) link(c int, all []int) string {
	var words []string
	for _, d := range all {
		if f.model.Brings[c][d] == 0 {
			continue
		}
		for _, row := range f.book.Chains().All() {
			if row.From == f.causes.At(c).ID && row.To == f.causes.At(d).ID {
				words = append(words, f.causes.At(d).Title+": "+strings.TrimSpace(row.Because))
				break
			}
		}
	}
	return strings.Join(words, " ")
}

// cures are the remedies of a cause in the order in which they are proposed:
// what was seen can put one before the others.
func (f *finder) cures(c rules.Cause) []rules.Remedy {
	var list []rules.Remedy
	for _, id := range c.Remedies.All() {
		for _, r := range f.book.Remedies().All() {
			if r.ID == id {
				list = append(list, r)
			}
		}
	}
	sort.SliceStable(list, func(a, b int) bool { return f.seen(list[b]) < f.seen(list[a]) })
	return list
}

// seen is 1 where something was seen that puts a remedy first, or else 0.
func (f *finder) seen(r rules.Remedy) int {
	for q, e := range f.evidence.All() {
		if f.answers[q] == bayes.Yes && rules.Contains(r.OnceSeen, e.ID) {
			return 1
		}
	}
	return 0
}

// remedies are the cures of a cause, in words.
func (f *finder) remedies(c rules.Cause) (words string, ids []string) {
	var titles []string
	for _, r := range f.cures(c) {
		titles, ids = append(titles, r.Title), append(ids, r.ID)
	}
	return strings.Join(titles, "; or: "), ids
}

// firstCure is the id of the cure that is proposed first; "" for none.
func (f *finder) firstCure(c rules.Cause) string {
	if list := f.cures(c); len(list) > 0 {
		return list[0].ID
	}
	return ""
}
