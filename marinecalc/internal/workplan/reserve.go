package workplan

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
)

// stop is a day by which work has to be done, and the days left before it.
type stop struct {
	day  int
	what string
	left int
	why  string // no more is left
}

// stops are the moves within the plan, and the first thing after its end that
// waits for nobody: a date wanted, days without work, days to be ready.
func (p *planner) stops(made *schedule.Plan) (list []stop) {
	if len(made.Order) == 0 || !made.Whole() {
		return nil
	}
	end := made.LastDay(made.Finish)
	var after []stop
	for _, s := range made.Stops() {
		one := stop{day: s.Day, left: s.Left, what: "the launch", why: p.whyNoMore(made, s)}
		if s.From == schedule.Afloat {
			one.what = "the lift"
		}
		if p.endsBooked(s.Day) {
			one.what = "the end of the haul-out booked"
		}
		if s.Day <= end || p.endsBooked(s.Day) {
			list = append(list, one)
		} else {
			after = append(after, one)
		}
	}
	later := func(on int, what string) {
		if on > end {
			after = append(after, stop{day: on, left: made.WorkDays(end+1, on), what: what, why: p.whyNoSooner(made)})
		}
	}
	for i, w := range p.calendar.Windows {
		switch w.Kind {
		case schedule.Closed, schedule.Ready:
			later(w.From, windowWords(p.in.Windows[i]))
		}
	}
	if want, err := day.Parse(p.in.ReadyBy); err == nil {
		later(want, "the date wanted")
	}
	sort.SliceStable(after, func(a, b int) bool { return after[a].day < after[b].day })
	return append(list, after[:min(len(after), 1)]...)
}

// endsBooked tells whether a haul-out was booked up to the day before.
func (p *planner) endsBooked(on int) bool {
	return slices.ContainsFunc(p.calendar.Windows, func(w schedule.Window) bool { return w.Kind == schedule.Booked && w.To == on-1 })
}

// whyNoMore says what leaves no more days before a move.
func (p *planner) whyNoMore(made *schedule.Plan, s schedule.Stop) string {
	if s.From == schedule.Afloat {
		return "there are no more days afloat before it"
	}
	if late := p.whyNoSooner(made); late != "" {
		return late
	}
	return fmt.Sprintf("the work takes the days there are, up to “%s”", p.steps[s.Task].Title)
}

// whyNoSooner names the parts that come on the day she is opened.
func (p *planner) whyNoSooner(made *schedule.Plan) string {
	if !made.Open.Any {
		return ""
	}
	opened := made.FirstDay(made.Open.Start)
	var late []string
	for i := range p.needs {
		need := &p.needs[i]
		if opened > p.today && !need.hand.OnBoard && p.today+need.lead == opened {
			late = append(late, need.part.Title)
		}
	}
	if late == nil {
		return ""
	}
	return fmt.Sprintf("%s: on board on %s at the soonest", strings.Join(late, "; "), day.Text(opened))
}

// reserve says how many days are left before each stop.
func (p *planner) reserve(made *schedule.Plan) string {
	var words []string
	for _, s := range p.stops(made) {
		left := inDays(s.left)
		if s.left == 0 {
			left = "none"
		}
		words = append(words, fmt.Sprintf("%s before %s on %s", left, s.what, day.Text(s.day)))
	}
	return strings.Join(words, "; ")
}

// tight says which stops have less left before them than is to be kept, and
// why.
func (p *planner) tight(made *schedule.Plan) (lines []string) {
	for _, s := range p.stops(made) {
		if s.left >= p.calendar.Reserve {
			continue
		}
		line := fmt.Sprintf("Of %s to be kept before %s on %s %s left", inDays(p.calendar.Reserve), s.what, day.Text(s.day), map[bool]string{true: "none is", false: fmt.Sprintf("only %d is", s.left)}[s.left == 0])
		if s.why != "" {
			line += ": " + s.why
		}
		lines = append(lines, line+".")
	}
	return lines
}
