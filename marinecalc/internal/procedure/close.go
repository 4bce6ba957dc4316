package procedure

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
)

// Close returns the boat with a job ended: what is kept of its steps is
// cleared, so that the work can be done anew another time; an event says what
// was done and on which day; what of it was care is written down as done, with
// the hours on the meter; and what it still asks to be looked at again goes to
// the schedule. The error is a *problem.Error.
func Close(book *rules.Book, b *boat.Boat, remedies []string, today string) (*boat.Boat, error) {
	book = calc.BookFor(book, b)
	rows, err := choose(book, remedies)
	if err != nil {
		return nil, err
	}
	steps, err := stepsOf(book, rows)
	if err != nil {
		return nil, err
	}
	if _, err := day.Parse(today); err != nil {
		return nil, problem.List{{Where: "/date", What: err.Error(), Allowed: "year-month-day"}}.Err()
	}
	ended := map[string]string{} // day on which each step was ticked off
	last := ""
	left := slices.DeleteFunc(stepsKept(b), func(s boatStep) bool {
		own := s.Belongs(remedies) && slices.ContainsFunc(steps, func(step rules.Step) bool { return step.ID == s.Step })
		if own && s.Done != "" {
			ended[s.Step] = s.Done
			last = max(last, s.Done)
		}
		return own
	})
	if len(ended) == 0 {
		return nil, problem.List{{Where: "/remedies", What: "no step of this work is ticked off", Hint: "tick off what was done first"}}.Err()
	}
	if b, err = keepSteps(b, left, today); err != nil {
		return nil, err
	}
	var titles []string
	for _, r := range rows {
		titles = append(titles, r.Title)
	}
	what := fmt.Sprintf(": %d of %d steps ticked off", len(ended), len(steps))
	if b, err = b.AddEvent(last, cut(strings.Join(titles, "; "), 200-len(what))+what, ""); err != nil {
		return nil, err
	}
	if b, err = keepService(book, b, ended, today); err != nil {
		return nil, err
	}
	if b, err = keepOutdated(b, steps, ended); err != nil {
		return nil, err
	}
	if b, err = keepAnswers(book, b, rows, ended, today); err != nil {
		return nil, err
	}
	return keepRechecks(b, rows, steps, ended, today)
}

// keepService writes down as done what care the steps were, and that readings
// start afresh with what was renewed.
func keepService(book *rules.Book, b *boat.Boat, ended map[string]string, today string) (*boat.Boat, error) {
	var care []boat.ServiceDone
	type renewal struct{ on, what, reading string }
	var renewed []renewal
	seen := map[string]bool{}
	for _, row := range book.Table("service-intervals").Rows.All() {
		on := ""
		for _, step := range strings.Fields(row.Values.Of("steps").Text) {
			on = max(on, ended[step])
		}
		if on == "" || seen[row.Pick] {
			continue
		}
		seen[row.Pick] = true
		care = append(care, boat.ServiceDone{Item: row.Pick, Date: on, EngineHours: hoursOn(b, on)})
		what, readings := boat.RenewedBy(row)
		for _, reading := range readings {
			if what != "" {
				renewed = append(renewed, renewal{on, what, reading})
			}
		}
	}
	if care == nil {
		return b, nil
	}
	b, err := b.AddService(care, today)
	for _, r := range renewed {
		if err != nil {
			return nil, err
		}
		b, err = b.AddEvent(r.on, r.what, r.reading)
	}
	return b, err
}

// keepOutdated writes down that a joint was closed again, for each reading of the boat
// of it as it was before.
func keepOutdated(b *boat.Boat, steps []rules.Step, ended map[string]string) (*boat.Boat, error) {
	by := map[string]rules.Step{}
	for _, s := range steps {
		for _, reading := range s.Outdates.All() {
			if ended[s.ID] > ended[by[reading].ID] {
				by[reading] = s
			}
		}
	}
	for _, reading := range slices.Sorted(maps.Keys(by)) {
		s := by[reading]
		if _, _, read, has := b.Find(boat.LatestReading + reading); has && read < ended[s.ID] {
			var err error
			if b, err = b.AddEvent(ended[s.ID], s.Title+": free play is to be read again", reading); err != nil {
				return nil, err
			}
		}
	}
	return b, nil
}

// keepAnswers leaves out of the newest answers of the fault finding those that the
// work has put an end to; those of the days before stay as they were written. What was
// noticed on the very day may have been noticed after it, and stays.
func keepAnswers(book *rules.Book, b *boat.Boat, rows []rules.Remedy, ended map[string]string, today string) (*boat.Boat, error) {
	var cured []string
	on := ""
	for _, r := range rows {
		steps := cureOf(book, r)
		if len(steps) == 0 || slices.ContainsFunc(steps, func(s rules.Step) bool { return ended[s.ID] == "" }) {
			continue
		}
		for _, cause := range r.Cures.All() {
			cured = append(cured, cause)
		}
		for _, s := range steps {
			on = max(on, ended[s.ID])
		}
	}
	list, _, said, _ := b.Find(boat.PlaceOfAnswers)
	over := diagnosis.Ended(book, b, cured, said == on)
	if len(over) == 0 || said > on {
		return b, nil
	}
	left := []any{}
	for _, m := range boat.Objects(list) {
		if id, _ := m["evidence"].(string); m["answer"] != "yes" || !slices.Contains(over, id) {
			left = append(left, m)
		}
	}
	return b.Keep([]boat.Typed{{Input: "answers", Pointer: boat.PlaceOfAnswers, Value: left}}, today)
}

// cureOf are the steps of a piece of work that cure: those of the work itself, or else
// the first with which the line is closed or started again. One that not every boat has
// is not asked for.
func cureOf(book *rules.Book, r rules.Remedy) (list []rules.Step) {
	var closing []rules.Step
	all, err := stepsOf(book, []rules.Remedy{r})
	if err != nil {
		return nil
	}
	for _, s := range all {
		switch {
		case s.Phase == "work" && s.Unless.Of == "":
			list = append(list, s)
		case s.Phase == "close" || s.Phase == "first-start":
			closing = append(closing, s)
		}
	}
	if len(list) == 0 && len(closing) > 0 {
		list = closing[:1]
	}
	return list
}

// hoursOn is what the hour meter read on a day, nil where it was not read then.
func hoursOn(b *boat.Boat, on string) (hours any) {
	for e := range b.Readings() {
		if seconds, has := e.EngineHours(); has && e.Date == on {
			hours = strconv.FormatFloat(seconds/3600, 'f', -1, 64) + " h"
		}
	}
	return hours
}

// keepRechecks hands what is to be looked at again after the work, and was not
// yet, to the schedule, and takes off it what was.
func keepRechecks(b *boat.Boat, rows []rules.Remedy, steps []rules.Step, ended map[string]string, today string) (*boat.Boat, error) {
	old := b.Rechecks()
	list := slices.DeleteFunc(slices.Clone(old), func(c boat.Recheck) bool {
		return slices.ContainsFunc(steps, func(s rules.Step) bool { return s.ID == c.Step })
	})
	after := ""
	for _, s := range steps {
		if s.Phase == "trial" {
			after = max(after, ended[s.ID])
		}
	}
	for _, s := range steps {
		if s.Phase != "afterwards" || ended[s.ID] != "" {
			continue
		}
		at := slices.IndexFunc(old, func(c boat.Recheck) bool { return c.Step == s.ID })
		switch {
		case after != "":
			c := boat.Recheck{Step: s.ID, After: after, EngineHours: hoursOn(b, after)}
			for _, r := range rows {
				if rules.Contains(r.Steps, s.ID) {
					c.Remedies = append(c.Remedies, r.ID)
				}
			}
			list = append(list, c)
		case at >= 0: // asked for by work that ended before
			list = append(list, old[at])
		}
	}
	if len(list) == 0 && len(old) == 0 {
		return b, nil
	}
	return b.Keep([]boat.Typed{{Input: "rechecks", Pointer: boat.PlaceOfRechecks, Value: list}}, today)
}

// cut shortens a text to so many bytes, whole letters kept.
func cut(text string, most int) string {
	if len(text) <= most {
		return text
	}
	short := ""
	for i, r := range text {
		if i+len(string(r)) > most-len("…") {
			break
		}
		short += string(r)
	}
	return short + "…"
}
