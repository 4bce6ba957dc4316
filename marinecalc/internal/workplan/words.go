package workplan

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
)

func placeWords(place string) string {
	if place == "either" {
		return "afloat or ashore"
	}
	return place
}

// finishText is the day on which everything is done.
func finishText(made *schedule.Plan) string {
	if len(made.Order) < len(made.Tasks) {
		return "cannot be given: some steps have no date"
	}
	return day.Text(made.LastDay(made.Finish))
}

func listed(items []string) string {
	if len(items) == 0 {
		return "nothing"
	}
	return strings.Join(items, "; ")
}

// trouble says plainly what stands in the way.
func (p *planner) trouble(made, late *schedule.Plan, out *Result) {
	var lines []string
	for i, w := range p.calendar.Windows {
		if w.To < p.today {
			lines = append(lines, fmt.Sprintf("The window %s to %s (%s) ended before %s and is not counted.", p.in.Windows[i].From, p.in.Windows[i].To, windowWords(p.in.Windows[i]), p.in.Today))
		}
	}
	lines = append(lines, p.undated(made)...)
	if slow := p.undated(late); len(made.Order) == len(made.Tasks) && len(slow) > 0 {
		text := strings.Join(slow, " ")
		lines = append(lines, "When every step takes its long time: "+strings.ToLower(text[:1])+text[1:])
	}
	for _, list := range p.cut {
		lines = append(lines, "The list of "+list+" is longer than the sheet shows: plan the work in two parts.")
	}
	out.Trouble = strings.Join(lines, " ")
}

// undated says which steps of a plan have no date, and why.
func (p *planner) undated(made *schedule.Plan) (lines []string) {
	never := map[string][]string{}
	short := map[string][]string{}
	follow := 0
	for i, t := range made.Tasks {
		switch t.Why {
		case schedule.NoWindow:
			never[p.steps[i].Place] = append(never[p.steps[i].Place], p.steps[i].Title)
		case schedule.TooShort:
			short[p.steps[i].Place] = append(short[p.steps[i].Place], p.steps[i].Title)
		case schedule.AfterAnother, schedule.ForNothing:
			follow++
		}
	}
	for _, place := range []string{"afloat", "ashore", "either"} {
		if steps := never[place]; steps != nil {
			need := "with work allowed"
			if place != "either" {
				need = place
			}
			lines = append(lines, fmt.Sprintf("No day %s is left on this calendar after what comes before: %s. Enter a window for it.", need, strings.Join(steps, "; ")))
		}
		if steps := short[place]; steps != nil {
			lines = append(lines, fmt.Sprintf("No window is long enough for: %s. Ask for more days, more people or longer days.", strings.Join(steps, "; ")))
		}
	}
	if follow > 0 {
		lines = append(lines, fmt.Sprintf("%d more steps hang on these and have no date either.", follow))
	}
	return lines
}

func windowWords(w WorkWindow) string {
	words := map[string]string{"afloat": "afloat", "ashore": "ashore", "haul-out": "lifted out", "not": "no work"}[w.Kind]
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
	case len(made.Order) < len(made.Tasks):
		return "Not by any date: some steps have no date."
	}
	spare, spareLong := want-made.LastDay(made.Finish), 0
	if len(late.Order) == len(late.Tasks) {
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
