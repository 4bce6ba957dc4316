package boat

import (
	"fmt"
	"maps"
	"slices"

	"example.org/driveline/marinecalc/problem"
)

// outdatedBy are readings of a joint as it was: a newer reading of the other name is
// taken with the joint apart, so that they are of one that was closed again since. The
// play at each place counts that of every joint before it.
var outdatedBy = map[string]string{
	"outputNutLoosened": "outputFaceWear",
	"backlashFlange":    "outputFaceWear", "backlashShaft": "outputFaceWear", "backlashPropeller": "outputFaceWear",
}

// closedAgain is when the newest reading of a name was taken and the later day on
// which its joint was apart or closed again: by a reading that only then can be taken,
// or an event that renews the name. "" where the reading is of the joint as it is, or
// of no joint.
func (b *Boat) closedAgain(name string) (read, again string) {
	other, is := outdatedBy[name]
	if !is || len(b.dated[name]) == 0 {
		return "", ""
	}
	entry := b.dated[name][0].entry
	if newer := b.dated[other]; len(newer) > 0 && newer[0].entry.When() > entry.When() {
		return entry.Date, newer[0].entry.Date
	}
	for e := range b.Events() {
		if e.Renews == name && e.Date > entry.Date {
			again = max(again, e.Date)
		}
	}
	return entry.Date, again
}

// stillSo tells whether the newest reading of a name is of its joint as it is.
func (b *Boat) stillSo(name string) bool {
	_, again := b.closedAgain(name)
	return again == ""
}

// Outdated names every newest reading of a joint that was closed again since: it is
// kept, and counts no more.
func (b *Boat) Outdated() (list problem.List) {
	if b == nil {
		return nil
	}
	for _, name := range slices.Sorted(maps.Keys(outdatedBy)) {
		if read, again := b.closedAgain(name); again != "" {
			list.Add(fmt.Sprintf("/readings/%d/%s", b.dated[name][0].entry.Index, name), "it was read on "+read+", and its joint was apart or closed again on "+again+": it is kept, and not used",
				"", "read it again before she runs under power")
		}
	}
	return list
}
