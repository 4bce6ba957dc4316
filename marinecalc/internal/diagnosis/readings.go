// What the readings of the boat file answer by themselves.

package diagnosis

import (
	"encoding/json"
	"fmt"
	"math"
	"sort"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// noted is one reading, and the entry that it stands in.
type noted struct {
	value any
	entry *boat.Entry
}

// takeReadings lets the newest looks and figures noted in the boat file answer
// what the person did not, and returns how many questions they answered. One
// that shows trouble stands against a no that is not dated after it.
func (f *finder) takeReadings(b *boat.Boat) int {
	count := 0
	for q, e := range f.evidence.All() {
		for _, by := range e.Readings.All() {
			said := f.answers[q]
			if said == bayes.Yes || said == bayes.No && (answerOf[by.Answer] != bayes.Yes || f.from[q] != byPerson) {
				continue
			}
			list := readingsOf(b, by.Reading)
			if len(list) == 0 || !holds(by, list) {
				continue
			}
			a, way := answerOf[by.Answer], by.Way
			if by, ok := list[0].entry.Value(by.Reading + "By"); ok {
				way, _ = by.(string)
			}
			if !rules.Contains(e.WaysToLook(), way) {
				way = ""
			}
			noted := "reading of " + list[0].entry.Date
			switch {
			case blind(e, a, way):
			case said == bayes.No && saidAfter(b, e.ID, "no", list[0].entry.Date):
				f.disagree = append(f.disagree, fmt.Sprintf("To “%s” the answer is no, but the %s shows it; the answer is newer and was counted.", e.Title, noted))
			case said == bayes.No:
				f.overrule(q, "the "+noted+" shows it", noted, way)
				count++
			default:
				f.put(q, a, noted, way)
				count++
			}
		}
	}
	return count
}

// saidAfter tells whether the boat file has an answer to a question from a day after
// another, by who looked. One without a day is after none.
func saidAfter(b *boat.Boat, id, answer, date string) bool {
	day := saidOn(b, id, answer)
	return day != "" && day > date
}

// saidBefore tells whether the boat file has an answer to a question from a day before
// another.
func saidBefore(b *boat.Boat, id, answer, date string) bool {
	day := saidOn(b, id, answer)
	return day != "" && day < date
}

// saidOn is the day of an answer among the newest of the boat file, by who looked; ""
// where there is none.
func saidOn(b *boat.Boat, id, answer string) string {
	list, _, day, _ := b.Find(boat.PlaceOfAnswers)
	for a := range boat.Answers(list) {
		if a.Question == id && a.Answer == answer && a.By != rules.Hearsay {
			return day
		}
	}
	return ""
}

// surely is the share of wrong answers where the boat has no such thing.
const surely = 1e-6

// takeBoat lets what the boat file says she has answer what she cannot have:
// a rigid coupling has no element to tear, a face seal no packing. What kind she is
// stands from whatever day it was told; what follows from it comes after. It returns
// nothing to count, since none of it is a look. The boat may be nil.
func (f *finder) takeBoat(b *boat.Boat) {
	told := func(id string) string {
		if q := f.question[id]; f.answers[q] != bayes.Unknown {
			return map[bool]string{true: "", false: answerWord(f.answers[q])}[f.onlyTold(q)]
		}
		return calc.Told(f.book, b, id)
	}
	put := func(q int, word string) {
		if a := answerOf[word]; a != bayes.Unknown && f.answers[q] == bayes.Unknown {
			f.put(q, a, byBoat, "")
			f.model.Wrong[q] = surely
		}
	}
	for _, e := range f.evidence.All() {
		for _, by := range e.Boat.All() {
			if by.Question != "" {
				put(f.question[by.Question], told(by.Question))
			}
		}
	}
	for q, e := range f.evidence.All() {
		word, _ := calc.ByWhatSheHas(b, e, told)
		put(q, word)
	}
}

// readingsOf are the readings of a name, the newest first.
func readingsOf(b *boat.Boat, name string) []noted {
	var list []noted
	for e := range b.Readings() {
		if v, ok := e.Value(name); ok {
			list = append([]noted{{v, e}}, list...)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].entry.Date > list[j].entry.Date })
	return list
}

// holds tells whether all that a row asks is so of the newest reading. Where
// the one before counts and there is none, it does not hold.
func holds(by rules.ReadingAnswers, list []noted) bool {
	if by.Words.Len() > 0 {
		word, _ := list[0].value.(string)
		said, _ := list[0].entry.Value(by.Reading + "By")
		way, _ := said.(string)
		if !rules.Contains(by.Words, word) || by.By.Len() > 0 && !rules.Contains(by.By, way) {
			return false
		}
	}
	if by.AtLeast == 0 && by.Under == 0 && !by.Rises() {
		return true
	}
	x := figureOf(by.Reading, list[0].value)
	if math.IsNaN(x) || x < by.AtLeast || by.Under > 0 && x >= by.Under {
		return false
	}
	if !by.Rises() {
		return true
	}
	if len(list) < 2 {
		return false
	}
	before := figureOf(by.Reading, list[1].value)
	if by.PerHour {
		now, then := hoursOn(list[0].entry), hoursOn(list[1].entry)
		if now > 0 && then > 0 {
			x, before = x/now, before/then
		}
	}
	rise := x / before
	return !math.IsNaN(rise) && rise >= by.RiseAtLeast && (by.RiseUnder == 0 || rise < by.RiseUnder)
}

// figureOf is a reading in SI, NaN where it is no figure.
func figureOf(name string, value any) float64 {
	form, err := boat.Contract()
	if err != nil {
		return math.NaN() // a test opens the boat's schema
	}
	p := form.Root.Child("readings").Items.Child(name)
	if p == nil || p.Kind == nil {
		return math.NaN()
	}
	return figure(p.Kind, value)
}

func figure(kind *quantity.Kind, value any) float64 {
	switch v := value.(type) {
	case string:
		if r, err := kind.Parse(v); err == nil {
			return r.SI
		}
	case json.Number:
		if x, err := v.Float64(); err == nil {
			return x
		}
	}
	return math.NaN()
}

// hoursOn is how long the fluid had run when an entry was read, 0 where
// nobody noted it.
func hoursOn(e *boat.Entry) float64 {
	v, ok := e.Value("fluidHours")
	if !ok {
		return 0
	}
	kind, _ := quantity.Lookup("time")
	if x := figure(kind, v); x > 0 {
		return x
	}
	return 0
}
