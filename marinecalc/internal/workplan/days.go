package workplan

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// clock writes minutes after midnight.
func clock(minutes int) string { return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60) }

// byDay writes what is done on each day, with its hours by the clock.
func (p *planner) byDay(made *schedule.Plan, out *Result) {
	var lines []DayLine
	for _, i := range made.Order {
		for _, s := range made.Sittings(i) {
			place := "afloat"
			if made.Lies(s.Day) == schedule.Ashore {
				place = "ashore"
			}
			lines = append(lines, DayLine{Date: day.Text(s.Day), From: clock(p.begins + s.From), To: clock(p.begins + s.To), Step: p.steps[i].Title, Place: place})
		}
	}
	sort.SliceStable(lines, func(i, j int) bool {
		a, b := &lines[i], &lines[j]
		return a.Date < b.Date || a.Date == b.Date && a.From < b.From
	})
	if copy(out.DayByDay[:], lines) < len(lines) {
		p.cut = append(p.cut, "days")
	}
}

// dueAfterwards puts what is held, and then re-checks, the first due first, after all
// other steps.
func (p *planner) dueAfterwards(order []int) []int {
	later := func(i int) bool { return p.tasks[i].Stage == schedule.Afterwards }
	var due []int
	for _, i := range order {
		if later(i) {
			due = append(due, i)
		}
	}
	from := func(i int) float64 {
		if p.steps[i].Phase != "afterwards" {
			return math.Inf(-1)
		}
		return p.daysAfter(i)
	}
	sort.SliceStable(due, func(a, b int) bool { return from(due[a]) < from(due[b]) })
	return append(slices.DeleteFunc(order, later), due...)
}

// daysAfter is how many days after the trial a re-check is due at the latest:
// by its days, or by its engine hours as the boat makes them, whichever comes
// first; infinite where neither says.
func (p *planner) daysAfter(i int) float64 {
	days := math.Inf(1)
	s := &p.steps[i]
	if s.DueDays > 0 {
		days = float64(s.DueDays)
	}
	if s.DueHours > 0 && p.in.HoursPerSeason > 0 {
		days = min(days, math.Ceil(s.DueHours*3600/float64(p.in.HoursPerSeason)*365))
	}
	return days
}

// due dates a re-check from the end of the trial.
func (p *planner) due(made *schedule.Plan, i int, l *ScheduledStep) {
	s := &p.steps[i]
	var when []string
	if s.DueHours > 0 {
		when = append(when, strconv.FormatFloat(s.DueHours, 'g', 4, 64)+" engine hours")
	}
	if s.DueDays > 0 {
		when = append(when, inDays(s.DueDays))
	}
	l.Waits = "due " + strings.Join(when, " or ") + " after the trial"
	if len(when) == 2 {
		l.Waits += ", whichever comes first"
	}
	if days := p.daysAfter(i); !math.IsInf(days, 1) && made.Whole() && !p.runsHeld() {
		by := made.LastDay(made.Finish) + int(days)
		l.Start, l.End = day.Text(by), day.Text(by)
	}
}

// bared lists work that lies bare at a step of the plan and is not planned.
func (p *planner) bared(out *Result) {
	book := p.session.Book
	has := func(id string) bool {
		return slices.ContainsFunc(p.steps, func(s rules.Step) bool { return s.ID == id })
	}
	byID := map[string]rules.Step{}
	for _, s := range book.Steps().All() {
		byID[s.ID] = s
	}
	at := map[string]int{}
	n := 0
	for _, s := range p.steps {
		for _, r := range book.Remedies().All() {
			if !rules.Contains(s.Bares, r.ID) || slices.ContainsFunc(p.remedies, func(had rules.Remedy) bool { return had.ID == r.ID }) {
				continue
			}
			if line, listed := at[r.ID]; listed {
				out.WhileOpen[line].AtStep += "; " + s.Title
				continue
			}
			if n == len(out.WhileOpen) {
				p.cut = append(p.cut, "what lies bare")
				return
			}
			b := BaredWork{Work: r.Title, AtStep: s.Title}
			var parts []string
			for _, id := range r.Steps.All() {
				if has(id) {
					continue
				}
				b.More += quantity.Time(byID[id].Hours * 3600)
				for _, need := range byID[id].Parts.All() {
					for _, part := range book.Parts().All() {
						if part.ID == need.Part && !part.Asked && !slices.Contains(parts, part.Title) {
							parts = append(parts, part.Title)
						}
					}
				}
			}
			b.Parts = strings.Join(parts, "; ")
			at[r.ID], out.WhileOpen[n] = n, b
			n++
		}
	}
}
