// Where the boat file holds what a schema asks for: the newest of what was
// read, section by section.

package boat

import (
	"encoding/json"
	"slices"
	"sort"
	"strconv"
	"strings"
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
)

// reading is one thing that was read on a day.
type reading struct {
	name  string
	value any
	entry *Entry // all that was read that day
}

// sortReadings sorts the readings of each name, the newest first; of two on
// one day that with the later time, or the one written later. Dates are
// written year-month-day (ISO 8601) and times hour:minute, so that their texts
// sort as they do.
func (b *Boat) sortReadings() {
	b.dated = map[string][]reading{}
	b.readRenewals()
	b.series = sync.OnceValue(b.readSeries)
	for i, m := range Objects(b.document["readings"]) {
		date, _ := m["date"].(string)
		time, _ := m["time"].(string)
		b.entries = append(b.entries, &Entry{Index: i, Date: date, Time: time, values: m})
	}
	for _, e := range slices.Backward(b.entries) {
		for name, value := range e.values {
			b.dated[name] = append(b.dated[name], reading{name: name, value: value, entry: e})
		}
	}
	for _, of := range b.dated {
		sort.SliceStable(of, func(i, j int) bool { return of[i].entry.When() > of[j].entry.When() })
	}
}

// Pointers of a schema's keyword "boat" that look among the dated readings:
// the newest of a name, the first one of its run, and the engine hours from
// that to the newest. The newest date is that of the newest reading, or of care
// that was taken later: that day has been, at least.
const (
	LatestReading = "/readings/latest/"
	FirstReading  = "/readings/first-of-run/"
	hoursOfRun    = "/readings/hours-of-run/"
)

// SchemaPointer is where the schema of the boat file describes what a pointer
// of the keyword "boat" finds.
func SchemaPointer(pointer string) string {
	for _, prefix := range []string{LatestReading, FirstReading} {
		if name, is := strings.CutPrefix(pointer, prefix); is {
			return "/readings/0/" + name
		}
	}
	if strings.HasPrefix(pointer, hoursOfRun) {
		return "/readings/0/engineHours"
	}
	return pointer
}

// Find returns what the boat file holds at a pointer of a schema's keyword
// "boat", where it stands, and the date of the reading if it is one. A
// section of the boat that stands in a dated reading too holds from that day
// on, member by member: what it leaves out stays as it was. A list or a
// section is the boat's own, to be read and not changed.
func (b *Boat) Find(pointer string) (value any, where, date string, ok bool) {
	if b == nil || pointer == "" {
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, LatestReading); is {
		if on, where := b.lastCare(); name == "date" && on > b.NewestDay() {
			return on, where, on, true
		}
		if of := b.dated[name]; len(of) > 0 && b.stands(name) {
			return of[0].found(nil)
		}
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, FirstReading); is {
		if r, _ := b.run(name); r != nil && b.stillSo(name) {
			return r.found(nil)
		}
		return nil, "", "", false
	}
	if name, is := strings.CutPrefix(pointer, hoursOfRun); is {
		r, seconds := b.run(name)
		if r == nil || !b.stillSo(name) {
			return nil, "", "", false
		}
		_, where, date, ok = b.newest(name).found(nil)
		return json.Number(strconv.FormatFloat(seconds, 'g', -1, 64)), where, date, ok
	}
	tokens := contract.Tokens(pointer)
	for _, r := range b.dated[tokens[0]] {
		if value, where, date, ok = r.found(tokens[1:]); ok {
			if b.renewals[pointer[1:]] > date {
				return nil, "", "", false
			}
			return value, where, date, true
		}
	}
	value, ok = contract.Resolve(b.document, tokens)
	return value, "/boat" + pointer, "", ok
}

// sameQuantity are readings of one quantity by different gauges. Only those of
// the newest day are the boat as she is, and a run goes to that day.
var sameQuantity = []string{"bearingClearance", "bearingLift", "bearingWireIn", "bearingMark"}

// alike are all readings of the quantity of one that is read by several gauges.
func alike(name string) []string {
	if slices.Contains(sameQuantity, name) {
		return sameQuantity
	}
	return nil
}

// ReadTwice tells whether an entry has a reading's quantity by another gauge too.
func (b *Boat) ReadTwice(name string, e *Entry) bool {
	return slices.Contains(sameQuantity, name) && slices.ContainsFunc(sameQuantity, func(other string) bool {
		_, has := e.values[other]
		return has && other != name
	})
}

// readWith are readings that say nothing but beside another one of their entry.
var readWith = map[string]string{
	"bearingLiftPull": "bearingLift", "bearingSecondLift": "bearingLift", "bearingSecondPull": "bearingLift", "bearingDialAft": "bearingLift",
	"bearingWireOut": "bearingWireIn",
}

// stands tells whether the newest reading of a name is the boat as she is.
func (b *Boat) stands(name string) bool {
	entry := b.dated[name][0].entry
	if !b.stillSo(name) {
		return false
	}
	if lead, is := readWith[name]; is {
		return len(b.dated[lead]) > 0 && b.dated[lead][0].entry == entry && b.stands(lead)
	}
	return b.newest(name).entry.Date == entry.Date
}

// newest is the newest reading of a name that was read, or of the same quantity by
// another gauge where that was a later day.
func (b *Boat) newest(name string) *reading {
	last := &b.dated[name][0]
	if slices.Contains(sameQuantity, name) {
		for _, other := range sameQuantity {
			if of := b.dated[other]; len(of) > 0 && of[0].entry.Date > last.entry.Date {
				last = &of[0]
			}
		}
	}
	return last
}

// found is what stands in a reading at a place inside it.
func (r *reading) found(inside []string) (value any, where, date string, ok bool) {
	value, ok = contract.Resolve(r.value, inside)
	pointer := append([]string{"boat", "readings", strconv.Itoa(r.entry.Index), r.name}, inside...)
	return value, contract.Pointer(pointer), r.entry.Date, ok
}

// run is the first reading of that name since the part was last renewed or
// adjusted, and how long the engine ran from it to the newest one, in
// seconds: nil where there is no such pair with an hour of running between, and
// where the hour meter was renewed or misread among them.
func (b *Boat) run(name string) (first *reading, seconds float64) {
	of := b.dated[name]
	if len(of) == 0 {
		return nil, 0
	}
	last := b.newest(name).entry
	until, known := last.EngineHours()
	renewed := b.renewed(name, last.Date)
	lowest := until
	for i := range of {
		r := &of[i]
		if r.entry.Date < renewed {
			break
		}
		since, ok := r.entry.EngineHours()
		if ok && known && since > lowest {
			return nil, 0 // how long it ran is not known
		}
		if ok && known {
			lowest = since
		}
		if ok && known && until-since >= 3600 {
			first, seconds = r, until-since
		}
		if r.entry.Changed() {
			break
		}
	}
	return first, seconds
}

// renewed is the day of the last event up to a day that began a new run of a
// reading; "" when there is none.
func (b *Boat) renewed(name, upTo string) (last string) {
	for e := range b.Events() {
		if e.Begins(name) && e.Date <= upTo {
			last = max(last, e.Date)
		}
	}
	return last
}
