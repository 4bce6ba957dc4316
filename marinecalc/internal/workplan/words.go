package workplan

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
)

// finishText is the day on which everything is done, or why there is none.
func (p *planner) finishText(made *schedule.Plan) string {
	if !made.Whole() {
		return "cannot be given: " + strings.Join(p.undated(made), " ")
	}
	if p.runsHeld() {
		return day.Text(made.LastDay(made.Finish)) + " without first start and trial, which wait for another cure"
	}
	return day.Text(made.LastDay(made.Finish))
}

// openWords says how long she lies open.
func (p *planner) openWords(made *schedule.Plan) string {
	if open := made.Open; open.Any && open.Why == schedule.Dated {
		return spanWords(made.FirstDay(open.Start), made.LastDay(open.End))
	}
	return ""
}

// openWaits says which waits keep her open.
func (p *planner) openWaits(made *schedule.Plan) string {
	open := made.Open
	if !open.Any || open.Why != schedule.Dated {
		return ""
	}
	var words []string
	for i := range p.tasks {
		if t := made.Tasks[i]; p.tasks[i].Wait > 1 && t.Why == schedule.Dated && open.Start <= t.Start && t.End < open.End {
			words = append(words, fmt.Sprintf("%s after “%s”", inDays(p.tasks[i].Wait), p.steps[i].Title))
		}
	}
	if words == nil {
		return ""
	}
	return strings.Join(words, "; ") + ". Ask for a date before she is opened, or have the new part on board instead."
}

// spanWords writes a run of days: "4 days, 28 March to 2 April 2026".
func spanWords(first, last int) string {
	from, to := dayTime(first), dayTime(last)
	words := from.Format("2")
	switch {
	case first == last:
		return "1 day, " + from.Format("2 January 2006")
	case from.Year() != to.Year():
		words = from.Format("2 January 2006")
	case from.Month() != to.Month():
		words = from.Format("2 January")
	}
	return fmt.Sprintf("%s, %s to %s", inDays(last-first+1), words, to.Format("2 January 2006"))
}

func dayTime(n int) time.Time { return time.Unix(int64(n)*86400, 0).UTC() }

// haulOut says when she runs to the lift: under her own power, before anything
// is opened.
func (p *planner) haulOut(made *schedule.Plan) (words, on string) {
	open := made.Open
	if !open.Any || open.Why != schedule.Dated || made.Lies(made.FirstDay(open.Start)) != schedule.Ashore {
		return "", ""
	}
	lifted := made.FirstDay(open.Start)
	for lifted > p.today && made.Lies(lifted-1) == schedule.Ashore {
		lifted--
	}
	if lifted == p.today {
		return "none: she lies ashore already", ""
	}
	how := "under her own power"
	if p.still.Why != "" {
		how = "in tow (" + p.still.by + ")"
	}
	return fmt.Sprintf("by %s %s, before “%s”", dayTime(lifted).Format("2 January 2006"), how, p.steps[p.firstOpened(made)].Title), day.Text(lifted)
}

// firstOpened is the step with which she is opened.
func (p *planner) firstOpened(made *schedule.Plan) int {
	for _, i := range made.Order {
		if made.Tasks[i].Start == made.Open.Start {
			return i
		}
	}
	return 0
}

func listed(items []string) string {
	if len(items) == 0 {
		return "nothing"
	}
	return strings.Join(items, "; ")
}

func windowWords(w WorkWindow) string {
	words := map[string]string{"afloat": "afloat", "ashore": "ashore", "haul-out": "lifted out", "booked": "haul-out booked", "not": "no work", "ready": "ready to run", "no-lift": "no lift"}[w.Kind]
	if w.Note != "" {
		words += ", " + w.Note
	}
	return words
}

// inTime holds the end against the date that is wanted.
func (p *planner) inTime(made, late *schedule.Plan) string {
	if p.in.ReadyBy == "" {
		return ""
	}
	want, err := day.Parse(p.in.ReadyBy)
	if err != nil {
		return "" // refused before
	}
	switch {
	case want < p.today:
		return fmt.Sprintf("The date wanted, %s, has already passed.", p.in.ReadyBy)
	case !made.Whole():
		return "Not by any date: some steps have no date."
	case p.runsHeld():
		return "Not by any date: this work leaves standing what keeps the shaft still."
	}
	spare, spareLong := want-made.LastDay(made.Finish), 0
	if late.Whole() {
		spareLong = want - late.LastDay(late.Finish)
	} else {
		spareLong = -1
	}
	switch {
	case spareLong >= 0:
		return fmt.Sprintf("Yes, with %s to spare when it goes smoothly and %s when every step takes its long time.", inDays(spare), inDays(spareLong))
	case spare >= 0:
		return fmt.Sprintf("Only when it goes smoothly: then with %s to spare.", inDays(spare))
	}
	return fmt.Sprintf("No: it ends %s after %s.", inDays(-spare), p.in.ReadyBy)
}

func inDays(n int) string {
	if n == 1 {
		return "1 day"
	}
	return strconv.Itoa(n) + " days"
}
