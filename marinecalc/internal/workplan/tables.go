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

// write puts the plan into words and tables.
func (p *planner) write(made, late *schedule.Plan) Result {
	out := Result{StepsPlanned: len(p.steps)}
	var titles []string
	for _, r := range p.remedies {
		titles = append(titles, r.Title)
	}
	out.Planned = strings.Join(titles, "; ")
	order := slices.Clone(made.Order)
	for i := range p.steps {
		out.HoursTotal += quantity.Time(p.steps[i].Hours * 3600)
		if made.Tasks[i].Why != schedule.Dated {
			order = append(order, i)
		}
	}
	dangers := p.dangers(order, &out)
	var critical []string
	for n, i := range order {
		out.Schedule[n] = p.line(made, i, dangers[i])
		if made.Tasks[i].Critical {
			critical = append(critical, p.steps[i].Title)
		}
	}
	out.CriticalPath = strings.Join(critical, " → ")
	p.tools(order, &out)
	p.shop(made, &out)
	p.whereSheLies(&out)
	p.trouble(made, late, &out)
	if len(made.Order) > 0 {
		out.Start = day.Text(made.FirstDay(made.Tasks[made.Order[0]].Start))
	}
	out.Finish, out.FinishLong = finishText(made), finishText(late)
	out.InTime = p.inTime(made, late)
	return out
}

func (p *planner) line(made *schedule.Plan, i int, dangers string) ScheduledStep {
	t, s := made.Tasks[i], p.steps[i]
	l := ScheduledStep{Step: s.Title, Hours: quantity.Time(float64(p.tasks[i].Minutes) * 60), Place: placeWords(s.Place), Critical: "no",
		Slack: quantity.Time(math.NaN()), Dangers: dangers, How: s.Text, For: p.forWhat[i]}
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
	}
	return l
}

// dangers numbers the cautions of the steps, gravest first, and gives each
// step its own.
func (p *planner) dangers(order []int, out *Result) []string {
	steps := make([]string, len(p.steps))
	var all []rules.Caution
	for _, c := range p.session.Book.AllCautions().All() {
		all = append(all, c)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Signal.Gravity() < all[j].Signal.Gravity() })
	n := 0
	for _, c := range all {
		var at []string
		for _, i := range order {
			if rules.Contains(p.steps[i].Hazards, c.ID) {
				at = append(at, p.steps[i].Title)
				if steps[i] != "" {
					steps[i] += ", "
				}
				steps[i] += fmt.Sprintf("%s %d", c.Signal, n+1)
			}
		}
		if at != nil && n == len(out.Dangers) {
			p.cut = append(p.cut, "dangers") // the gravest are there
			break
		}
		if at != nil {
			out.Dangers[n] = DangerLine{Danger: strconv.Itoa(n + 1), Signal: string(c.Signal), Text: c.Text, AtSteps: strings.Join(at, "; ")}
			n++
		}
	}
	for _, i := range order {
		if steps[i] == "" {
			steps[i] = "none: " + p.steps[i].Safe
		}
	}
	return steps
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
// for such steps alone.
func (p *planner) whereSheLies(out *Result) {
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
	for changed := true; changed; {
		changed = false
		for i, t := range p.tasks {
			if waits[i] {
				continue
			}
			idle := t.LaysUp && after[i] != nil && !slices.ContainsFunc(after[i], isNot)
			if t.Place != schedule.Anywhere && t.Place != here || idle || slices.ContainsFunc(t.After, isWaiting) {
				waits[i], changed = true, true
			}
		}
	}
	for i, w := range waits {
		if w {
			later = append(later, p.steps[i].Title)
		} else {
			now = append(now, p.steps[i].Title)
		}
	}
	out.Now, out.Elsewhere = listed(now), listed(later)
}

// placeToday is where she lies today, in both forms.
func (p *planner) placeToday() (schedule.Place, string) {
	lies := p.in.Lies
	for _, kinds := range [][]string{{"afloat"}, {"ashore", "haul-out"}} {
		for i, w := range p.in.Windows {
			if span := p.calendar.Windows[i]; slices.Contains(kinds, w.Kind) && span.From <= p.today && p.today <= span.To {
				lies = kinds[0]
			}
		}
	}
	return placeOf[lies], lies
}
