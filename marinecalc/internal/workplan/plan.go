// Package workplan lays the steps of the chosen work on the person's calendar
// and lists what has to be bought by when. The arithmetic is package schedule
// below it: job.go is what goes in and comes out, planner.go a plan under way,
// choose.go finds the work,
// plan.go makes the tasks of the rows of rule data, tables.go writes what came
// out, days.go the hours of each day and what is due after the trial, hazards.go
// what can hurt, still.go what is left out while the shaft is kept still,
// shopping.go the list of parts, quotes.go prices and the old
// unit that goes back, words.go says what came out, reserve.go the days left before a launch,
// trouble.go what stands in the way, draw.go draws it.
package workplan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Make lays the steps of the chosen work, or else of all that the fault
// finding says is to be cured, on the person's calendar.
func Make(s *calc.Session, in Input) (Result, error) {
	p := &planner{session: s, in: &in, still: StillOf(s)}
	var list problem.List
	p.readCalendar(&list)
	p.choose(&list)
	if len(list) > 0 {
		return Result{}, list.Err()
	}
	if in.Remedies != nil && len(in.Remedies) == 0 {
		out := p.nothingToDo("no work is chosen")
		out.Trouble = strings.Join(p.left, " ")
		return out, nil
	}
	if len(p.remedies) == 0 && len(p.left) > 0 {
		out := p.nothingToDo("nothing is planned")
		out.Trouble = strings.Join(p.left, " ")
		return out, nil
	}
	if len(p.remedies) == 0 && len(p.guessed) > 0 {
		out := p.nothingToDo("nothing yet: what is suspected is looked for first")
		out.Suspected = strings.Join(p.guessed, " ")
		return out, nil
	}
	if len(p.remedies) == 0 {
		return Result{}, calc.Lacking{Input: "remedies", What: "it is not known which work is to be planned",
			Hint: "choose what is to be done, or answer the questions of the fault finding in the boat file"}
	}
	p.gatherSteps()
	if len(p.steps) > mostSteps {
		list.Add("/remedies", fmt.Sprintf("this is work of %d steps", len(p.steps)), fmt.Sprintf("at most %d steps in one plan", mostSteps), "plan it in two parts")
		return Result{}, list.Err()
	}
	p.gatherParts(&list)
	if len(list) > 0 {
		return Result{}, list.Err()
	}
	made, err := schedule.Make(p.tasks, p.calendar)
	if err != nil {
		return Result{}, inRemedies(err)
	}
	long := slices.Clone(p.tasks)
	for i, step := range p.steps {
		hours := step.LongHours
		if hours == 0 {
			hours = 2 * step.Hours
		}
		long[i].Minutes = minutes(hours)
	}
	anyDay := p.calendar
	anyDay.Reserve = 0 // what is kept free is for what takes long
	late, err := schedule.Make(long, anyDay)
	if err != nil {
		return Result{}, err
	}
	return p.write(&made, &late), nil
}

// nothingToDo is a plan without work.
func (p *planner) nothingToDo(planned string) Result {
	return Result{Planned: planned, HoursTotal: quantity.Time(math.NaN()), Quoted: quantity.Money(math.NaN()), hazards: p.wholeHazards()}
}

// inRemedies gives problems without a place that of the remedies.
func inRemedies(err error) error {
	list := problem.Of(err)
	for i := range list {
		if list[i].Where == "" {
			list[i].Where = "/remedies"
		}
	}
	return list.Err()
}

// readCalendar reads dates, windows and people.
func (p *planner) readCalendar(list *problem.List) {
	read := func(where, date string) int {
		n, err := day.Parse(date)
		if err != nil {
			list.Add(where, err.Error(), "year-month-day, such as 2026-03-14", "")
		}
		return n
	}
	p.today = read("/today", p.in.Today)
	p.calendar = schedule.Calendar{Today: p.today, Lies: placeOf[p.in.Lies], MinutesPerDay: int(math.Round(float64(p.in.HoursPerDay) / 60)), Hands: p.in.Hands,
		Reserve: int(math.Ceil(float64(p.in.Reserve)/86400 - 1e-9))}
	for i, w := range p.in.Windows {
		p.calendar.Windows = append(p.calendar.Windows, schedule.Window{
			From: read(fmt.Sprintf("/windows/%d/from", i), w.From), To: read(fmt.Sprintf("/windows/%d/to", i), w.To), Kind: windowOf[w.Kind], Most: w.MostDays})
	}
	var hour, minute int
	if _, err := fmt.Sscanf(p.in.DayBegins, "%d:%d", &hour, &minute); err == nil {
		p.begins = 60*hour + minute
	}
	if p.begins+p.calendar.MinutesPerDay > 24*60 {
		list.Add("/dayBegins", fmt.Sprintf("a day of %s that begins at %s ends after midnight", clock(p.calendar.MinutesPerDay), p.in.DayBegins), "a day's work that ends by 24:00", "begin earlier, or take fewer hours a day")
	}
	if p.in.ReadyBy != "" {
		read("/readyBy", p.in.ReadyBy)
	}
}

// gatherSteps lists every step once, and what it comes after of the others.
func (p *planner) gatherSteps() {
	all := p.session.Book.Steps()
	byID := make(map[string]int, all.Len())
	for i, s := range all.All() {
		byID[s.ID] = i
	}
	number := map[string]int{}
	for _, r := range p.remedies {
		for _, id := range r.Steps.All() {
			i, has := number[id]
			s, leftOut := p.still.StepOn(p.session, all.At(byID[id]))
			if !has && leftOut != "" {
				p.leaveOut(leftOut)
				continue
			}
			if !has {
				i = len(p.steps)
				number[id] = i
				p.steps = append(p.steps, s)
				p.forWhat = append(p.forWhat, []string{r.Title})
			} else if !slices.Contains(p.forWhat[i], r.Title) {
				p.forWhat[i] = append(p.forWhat[i], r.Title)
			}
		}
	}
	for _, s := range p.steps {
		t := schedule.Task{Name: s.Title, Minutes: minutes(s.Hours), Wait: s.WaitDays, Place: placeOf[s.Place], Stage: stage(s), LaysUp: s.LaysUp, Lift: s.Lift}
		for _, id := range s.After.All() {
			if i, has := number[id]; has {
				t.After = append(t.After, i)
			}
		}
		p.tasks = append(p.tasks, t)
	}
	p.startLast()
	p.hold()
}

// startLast lets the engine run only once hands are off: after all that is looked at,
// opened, mended and closed, whichever work of the plan that belongs to.
func (p *planner) startLast() {
	for i, s := range p.steps {
		if !runs(s) || s.Phase != "first-start" && s.Phase != "trial" {
			continue
		}
		for j, before := range p.steps {
			early := before.Phase != "first-start" && before.Phase != "trial" && before.Phase != "afterwards"
			if early && !runs(before) && !slices.Contains(p.tasks[i].After, j) {
				p.tasks[i].After = append(p.tasks[i].After, j)
			}
		}
	}
}

// hold keeps off the calendar what runs the shaft while this work leaves standing what
// keeps it still, and what comes after that: what is forbidden has no day.
func (p *planner) hold() {
	p.held = make([]string, len(p.steps))
	for i, s := range p.steps {
		p.held[i] = p.still.Holds(s, p.remedies)
	}
	for changed := true; changed; {
		changed = false
		for i, t := range p.tasks {
			if p.held[i] == "" && t.Stage != schedule.Afterwards && slices.ContainsFunc(t.After, func(b int) bool { return p.held[b] != "" }) {
				p.held[i], changed = "for a step that must wait", true
			}
		}
	}
	for i := range p.tasks {
		if p.held[i] != "" {
			p.tasks[i].Stage = schedule.Afterwards
		}
	}
}

// leaveOut says, once, that a step is not planned.
func (p *planner) leaveOut(words string) {
	if !slices.Contains(p.left, words) {
		p.left = append(p.left, words)
	}
}
