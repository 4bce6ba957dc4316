package boat

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
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
	entry := b.newestEntry(name)
	if entry == nil {
		return "", ""
	}
	if newer := b.dated[outdatedBy[name]]; len(newer) > 0 && newer[0].entry.When() > entry.When() {
		return entry.Date, newer[0].entry.Date
	}
	if on := b.renewals[name]; on > entry.Date {
		return entry.Date, on
	}
	return entry.Date, ""
}

// newestEntry is the newest entry with a reading, or with a figure of a section such as
// coupling/bolts/stretch; nil where there is none.
func (b *Boat) newestEntry(name string) *Entry {
	tokens := tokensOf(name)
	for _, r := range b.dated[tokens[0]] {
		if _, _, _, ok := r.found(tokens[1:]); ok {
			return r.entry
		}
	}
	return nil
}

// readRenewals finds the last day on which each reading began afresh by an event
// or by care.
func (b *Boat) readRenewals() {
	b.renewals = map[string]string{}
	for _, e := range b.events {
		for _, name := range append([]string{e.Renews}, alike(e.Renews)...) {
			b.renewals[name] = max(b.renewals[name], e.Date)
		}
	}
	delete(b.renewals, "")
}

// RenewedBy is what care of a row of the table service-intervals renews, in the words of
// an event, "" where it only sets something; and the readings that are of before it then.
func RenewedBy(row rules.Row) (what string, readings []string) {
	if row.Values.Of("kind").Text == "renew" {
		what = strings.TrimSuffix(row.Name, ", renewed") + ": renewed"
	}
	return what, strings.Fields(row.Values.Of("run").Text)
}

// Under is the boat with an event for all that care renewed by a book's rows, where the
// boat file has none of that day: such care sets old readings aside as the event does,
// and care that sets something likewise.
func (b *Boat) Under(book *rules.Book) *Boat {
	had := map[string]bool{}
	for e := range b.Events() {
		had[e.Date+e.Renews] = true
	}
	var care []Event
	for _, done := range b.ServiceDone() {
		for _, row := range book.Table("service-intervals").Rows.All() {
			if row.Pick != done.Item {
				continue
			}
			what, readings := RenewedBy(row)
			for _, name := range readings {
				if !had[done.Date+name] {
					had[done.Date+name] = true
					care = append(care, Event{done.Date, what, name})
				}
			}
		}
	}
	if care == nil {
		return b
	}
	cared := *b
	cared.events = append(b.events[:len(b.events):len(b.events)], care...)
	cared.readRenewals()
	cared.series = sync.OnceValue(cared.readSeries)
	return &cared
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
	names := slices.Sorted(maps.Keys(b.dated))
	for _, e := range b.events {
		if strings.Contains(e.Renews, "/") && !slices.Contains(names, e.Renews) {
			names = append(names, e.Renews)
		}
	}
	for _, name := range names {
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
		list.Add(fmt.Sprintf("/readings/%d/%s", b.newestEntry(name).Index, name), "it was read on "+read+", and "+why+": it is kept, and not used",
			"", hint)
	}
	return list
}
