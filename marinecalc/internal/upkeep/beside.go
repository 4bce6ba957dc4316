package upkeep

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/rules"
)

// afterWork lists what work that was done still asks to be looked at again,
// until its step is ticked off: of work in hand once its trial is ticked, and
// of work that was ended.
func (k *keeper) afterWork() {
	rows := map[string]rules.Step{}
	for _, s := range k.session.Book.Steps().All() {
		rows[s.ID] = s
	}
	kept := k.session.Boat.KeptSteps()
	ticked := func(id string, after string, remedies []string) bool {
		return slices.ContainsFunc(kept, func(s boat.KeptStep) bool {
			return s.Step == id && s.Done >= after && s.Done != "" && s.Belongs(remedies)
		})
	}
	asked := map[string]bool{}
	ask := func(c boat.Recheck) {
		s, is := rows[c.Step]
		if !is || s.DueHours == 0 && s.DueDays == 0 || asked[c.Step] || ticked(c.Step, c.After, c.Remedies) || dayOf(c.After) > k.today {
			return
		}
		asked[c.Step] = true
		k.cares = append(k.cares, k.recheck(&s, &c))
	}
	for _, c := range k.inHand(rows, kept) {
		ask(c)
	}
	for _, c := range k.session.Boat.Rechecks() {
		ask(c)
	}
}

// inHand is what work asks for whose trial is ticked off and that nobody ended.
func (k *keeper) inHand(rows map[string]rules.Step, kept []boat.KeptStep) (list []boat.Recheck) {
	for _, r := range k.session.Book.Remedies().All() {
		own := []string{r.ID}
		done := func(id string) string {
			for i := range kept {
				if s := &kept[i]; s.Step == id && slices.Contains(s.Remedies, r.ID) {
					return s.Done
				}
			}
			return ""
		}
		after, whole := "", true
		for _, id := range r.Steps.All() {
			if rows[id].Phase == "trial" {
				on := done(id)
				after, whole = max(after, on), whole && on != ""
			}
		}
		if after == "" || !whole {
			continue
		}
		for _, id := range r.Steps.All() {
			if rows[id].Phase == "afterwards" {
				list = append(list, boat.Recheck{Step: id, Remedies: own, After: after})
			}
		}
	}
	return list
}

// recheck is a look after work as a line of the list: due once, so many hours
// and days after the trial.
func (k *keeper) recheck(s *rules.Step, r *boat.Recheck) care {
	nan := math.NaN()
	c := care{row: rules.Row{Name: s.Title}, kind: "look", how: s.Text, authority: s.Basis.Authority(), guide: s.Basis.Guides(),
		Care: due.Care{EveryHours: nan, EveryDays: nan, Done: true, Day: dayOf(r.After), Hours: nan, Wear: nan}}
	c.Hours = k.hoursOn(c.Day)
	var every []string
	if s.DueHours > 0 {
		c.EveryHours = s.DueHours
		every = append(every, fmt.Sprintf("%.4g h", s.DueHours))
	}
	if s.DueDays > 0 {
		c.EveryDays = float64(s.DueDays)
		every = append(every, spanOf(c.EveryDays))
	}
	c.every = "once, " + strings.Join(every, " or ") + " after the trial"
	c.last = "not yet; trial on " + r.After
	if !math.IsNaN(c.Hours) {
		c.last += fmt.Sprintf(", %.0f h", c.Hours)
	}
	k.dueOf(&c)
	return c
}

// ownLimits lists readings with a limit in the boat file that no row follows,
// where they lead to it.
func (k *keeper) ownLimits() {
	followed := map[string]bool{}
	for _, row := range k.session.Book.Table("service-intervals").Rows.All() {
		for _, name := range strings.Fields(row.Values.Of("trend").Text) {
			followed[name] = true
		}
	}
	for _, f := range k.session.Boat.Follows() {
		name := f.Reading
		if followed[name] || f.Limit == "" {
			continue
		}
		followed[name] = true
		series := k.session.Boat.Series(name)
		reads, known := k.session.Boat.Describe(name)
		wear, reached := k.wear(name)
		if len(series) == 0 || !known || math.IsNaN(wear) {
			continue
		}
		newest := ""
		for _, p := range series {
			newest = max(newest, p.Date)
		}
		c := care{row: rules.Row{Name: reads.Title}, kind: "read", how: "As before, at the same place and speed.", authority: "limit of the boat file", last: newest, reached: reached,
			Care: due.Care{EveryHours: math.NaN(), EveryDays: math.NaN(), Done: true, Day: dayOf(newest), Hours: math.NaN(), Wear: wear}}
		k.dueOf(&c)
		k.cares = append(k.cares, c)
	}
}

// dayOf is a day of the boat file, which its schema has let through.
func dayOf(date string) int {
	d, _ := day.Parse(date)
	return d
}
