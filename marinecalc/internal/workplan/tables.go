package workplan

import (
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// write puts the plan into words and tables.
func (p *planner) write(made, late *schedule.Plan) Result {
	out := Result{StepsPlanned: len(p.steps), hazards: p.wholeHazards()}
	var titles []string
	for _, r := range p.remedies {
		titles, out.procedures = append(titles, r.Title), append(out.procedures, r.ID)
	}
	out.Planned = strings.Join(titles, "; ")
	order := slices.Clone(made.Order)
	for i, r := range p.remedies[:min(len(p.remedies), len(out.Work))] {
		out.Work[i] = WorkLine{r.Title, strings.Join(p.because[i], "; ")}
	}
	for _, i := range p.inPhases() {
		out.HoursTotal += quantity.Time(p.steps[i].Hours * 3600)
		if made.Tasks[i].Why != schedule.Dated {
			order = append(order, i)
		}
	}
	order = p.dueAfterwards(order)
	hazards := p.hazards(order, &out)
	var critical []string
	for n, i := range order {
		out.Schedule[n] = p.line(made, i, hazards[i])
		if made.Tasks[i].Critical {
			critical = append(critical, p.steps[i].Title)
		}
	}
	out.CriticalPath = strings.Join(critical, " → ")
	p.tools(order, &out)
	p.shop(made, &out)
	p.quotes(made, &out)
	p.byDay(made, &out)
	p.bared(&out)
	if open := made.Open; open.Any && open.Why == schedule.Dated {
		out.OpenFrom, out.OpenTo = day.Text(made.FirstDay(open.Start)), day.Text(made.LastDay(open.End))
	}
	out.Open, out.OpenWaits = p.openWords(made), p.openWaits(made)
	out.HaulOut, out.LiftedOn = p.haulOut(made)
	p.whereSheLies(made, &out)
	p.trouble(made, late, &out)
	out.Suspected = strings.Join(p.guessed, " ")
	if len(made.Order) > 0 {
		out.Start = day.Text(made.FirstDay(made.Tasks[made.Order[0]].Start))
	}
	out.Finish, out.FinishLong = p.finishText(made), p.finishText(late)
	out.InTime, out.ReserveLeft = p.inTime(made, late), p.reserve(made)
	return out
}

// inPhases is the order of the steps without their dates: each after what comes
// before it, no phase backward.
func (p *planner) inPhases() []int {
	order, _, err := InSequence(p.steps, []string{"as-found", "open", "work", "close", "first-start", "trial", "afterwards"})
	if err != nil { // a ring, which the schedule has refused
		order = nil
		for i := range p.steps {
			order = append(order, i)
		}
	}
	return order
}

func (p *planner) line(made *schedule.Plan, i int, hazards string) ScheduledStep {
	t, s := made.Tasks[i], p.steps[i]
	l := ScheduledStep{Step: s.Title, Phase: s.Phase, Hours: quantity.Time(float64(p.tasks[i].Minutes) * 60), Place: s.Place, Critical: "no",
		Slack: quantity.Time(math.NaN()), Hazards: hazards, Once: p.still.Once(s, p.remedies), How: quantity.Either(s.Text, p.session.Units), For: strings.Join(p.forWhat[i], "; "), Row: s.ID}
	switch t.Why {
	case schedule.Dated:
		l.Start, l.End = day.Text(made.FirstDay(t.Start)), day.Text(made.LastDay(t.End))
		l.Slack = quantity.Time(made.Slack(i)) * 86400
		if t.Critical {
			l.Critical = "yes"
		}
	case schedule.NoWindow:
		l.Waits = "no day on which she lies " + s.Place
	case schedule.TooShort:
		l.Waits = "no time " + s.Place + " that is long enough"
	case schedule.AfterAnother:
		l.Waits = "for a step that has no date"
	case schedule.ForNothing:
		l.Waits = "until what it is done for has a date"
	case schedule.Missed:
		l.Waits = "she does not lie " + s.Place + " before the work: it cannot be read as found"
	case schedule.Due:
		if l.Waits = problem.MidSentence(p.held[i]); l.Waits == "" {
			p.due(made, i, &l)
		}
	}
	return l
}

func (p *planner) tools(order []int, out *Result) {
	at := map[string]int{}
	for _, i := range order {
		for _, tool := range p.steps[i].Tools.All() {
			n, has := at[tool]
			if !has {
				n = len(at)
				if n == len(out.Tools) {
					p.cut = append(p.cut, "tools")
					return
				}
				at[tool] = n
				out.Tools[n].Tool = tool
			} else {
				out.Tools[n].ForSteps += "; "
			}
			out.Tools[n].ForSteps += p.steps[i].Title
		}
	}
}

// whereSheLies parts what can be done where she lies today from what waits
// until she lies elsewhere: with all that comes after it, and what lays her up
// for such steps alone. What the schedule has waiting for a date is in neither.
func (p *planner) whereSheLies(made *schedule.Plan, out *Result) {
	here, _ := p.placeToday()
	waits := make([]bool, len(p.tasks))
	after := make([][]int, len(p.tasks))
	for i, t := range p.tasks {
		for _, b := range t.After {
			after[b] = append(after[b], i)
		}
	}
	isWaiting := func(i int) bool { return waits[i] }
	isNot := func(i int) bool { return !waits[i] }
	var now, later []string
	undated := false // something could be done here, had the work a date
	for changed := true; changed; {
		changed = false
		for i, t := range p.tasks {
			if waits[i] || t.Stage == schedule.Afterwards {
				continue
			}
			idle := (t.LaysUp || t.Stage == schedule.Opens) && after[i] != nil && !slices.ContainsFunc(after[i], isNot)
			if t.Place != schedule.Anywhere && t.Place != here || idle || slices.ContainsFunc(t.After, isWaiting) {
				waits[i], changed = true, true
			}
		}
	}
	for _, i := range p.inPhases() {
		switch {
		case p.tasks[i].Stage == schedule.Afterwards:
		case waits[i]:
			later = append(later, p.steps[i].Title)
		case made.Tasks[i].Why == schedule.Dated:
			now = append(now, p.steps[i].Title)
		default:
			undated = true
		}
	}
	out.Now, out.Elsewhere = listed(now), listed(later)
	if len(now) == 0 && undated {
		out.Now = "nothing yet: what could be done here is begun when the rest has a date"
	}
}

// placeToday is where she lies today, in both forms.
func (p *planner) placeToday() (schedule.Place, string) {
	lies := p.in.Lies
	for _, kinds := range [][]string{{"afloat"}, {"ashore", "haul-out", "booked"}} {
		for i, w := range p.in.Windows {
			if span := p.calendar.Windows[i]; slices.Contains(kinds, w.Kind) && span.From <= p.today && p.today <= span.To {
				lies = kinds[0]
			}
		}
	}
	return placeOf[lies], lies
}
