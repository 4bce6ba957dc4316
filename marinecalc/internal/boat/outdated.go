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
	nutLoosened:      "outputFaceWear",
	"backlashFlange": "outputFaceWear", "backlashShaft": "outputFaceWear", "backlashPropeller": "outputFaceWear",
}

// nutLoosened is the torque at which the nut of the output flange moved.
const nutLoosened = "outputNutLoosened"

// closedAgain is when the newest reading of a name was taken and the later day on
// which its joint was apart or closed again, by a reading that only then can be taken,
// or on which what it is of was renewed or set, by an event. "" where the reading is of
// the boat as she is.
func (b *Boat) closedAgain(name string) (read, again string) {
	if len(b.dated[name]) == 0 {
		return "", ""
	}
	entry := b.dated[name][0].entry
	if newer := b.dated[outdatedBy[name]]; len(newer) > 0 && newer[0].entry.When() > entry.When() {
		return entry.Date, newer[0].entry.Date
	}
	if on := b.renewals[name]; on > entry.Date {
		return entry.Date, on
	}
	return entry.Date, ""
}

// readRenewals finds the last day on which each reading began afresh by an event.
func (b *Boat) readRenewals() {
	b.renewals = map[string]string{}
	for e := range b.Events() {
		for _, name := range append([]string{e.Renews}, alike(e.Renews)...) {
			b.renewals[name] = max(b.renewals[name], e.Date)
		}
	}
	delete(b.renewals, "")
}

// stillSo tells whether the newest reading of a name is of what it is of as that is.
func (b *Boat) stillSo(name string) bool {
	_, again := b.closedAgain(name)
	return again == ""
}

// Outdated names every newest reading of what was apart, closed again, renewed or set
// since: it is kept, and counts no more.
func (b *Boat) Outdated() (list problem.List) {
	if b == nil {
		return nil
	}
	for _, name := range slices.Sorted(maps.Keys(b.dated)) {
		read, again := b.closedAgain(name)
		if again == "" {
			continue
		}
		why, hint := "what it is of was renewed or set on "+again, "read it anew, as it was read before"
		if _, joint := outdatedBy[name]; joint {
			why, hint = "its joint was apart or closed again on "+again, "read it again before she runs under power"
		}
		if name == nutLoosened {
			hint = "it is read when the nut is next loosened"
		}
		list.Add(fmt.Sprintf("/readings/%d/%s", b.dated[name][0].entry.Index, name), "it was read on "+read+", and "+why+": it is kept, and not used",
			"", hint)
	}
	return list
}
