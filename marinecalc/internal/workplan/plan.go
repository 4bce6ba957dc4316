// Package workplan lays the steps of the chosen work on the person's calendar
// and lists what has to be bought by when. The arithmetic is package schedule
// below it: plan.go makes its tasks of the rows of rule data, shopping.go the
// list of parts, words.go says what came out, draw.go draws it.
package workplan

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Input is what work-plan takes.
type Input struct {
	Today       string         // year-month-day, as all dates here
	Remedies    []ChosenRemedy // nil: as the fault finding says; empty: nothing is to be done
	Windows     []WorkWindow
	Lies        string        // "afloat" or "ashore", on days that no window names
	HoursPerDay quantity.Time // of one person
	Hands       int
	ReadyBy     string // "" when no date is set
	PartsInHand []PartInHand
}

// ChosenRemedy is one piece of work that is to be done.
type ChosenRemedy struct{ Remedy string }

// WorkWindow is a run of days.
type WorkWindow struct{ From, To, Kind, Note string }

// PartInHand is what the person knows of a part better than the rules.
type PartInHand struct {
	Part     string
	OnBoard  bool
	LeadTime quantity.Time `unset:"NaN"` // from order to arrival; NaN: as usual
}

// Result is what work-plan gives.
type Result struct {
	Finish       string // day on which the last dated step ends
	FinishLong   string // the same when every step takes its long time
	InTime       string
	FirstOrder   string
	Now          string
	Elsewhere    string
	WaitsForPart string
	Trouble      string
	CriticalPath string
	Planned      string // the remedies by their titles
	Start        string
	HoursTotal   quantity.Time
	StepsPlanned int
	Schedule     [mostSteps]ScheduledStep
	Shopping     [48]ShoppingLine
	Tools        [96]ToolLine
	Dangers      [40]DangerLine
}

const mostSteps = 64

// ScheduledStep is one line of the schedule.
type ScheduledStep struct {
	Step     string
	Start    string
	End      string
	Hours    quantity.Time
	Place    string
	Slack    quantity.Time
	Critical string
	Dangers  string // signal words, with the numbers in the list of dangers
	Waits    string // why it has no date
	How      string
	For      string
}

// ToolLine is a tool with what it is for.
type ToolLine struct{ Tool, ForSteps string }

// DangerLine is what can hurt, and in which steps.
type DangerLine struct{ Danger, Signal, Text, AtSteps string }

// planner is one plan under way: the steps as rows and as tasks.
type planner struct {
	session  *calc.Session
	in       *Input
	today    int
	remedies []rules.Remedy
	steps    []rules.Step
	forWhat  []string // by step: titles of the remedies that need it
	tasks    []schedule.Task
	calendar schedule.Calendar
	needs    []partNeed
	cut      []string // lists too long for the sheet
}

// Make lays the steps of the chosen remedies, or else of the first remedy
// of the most probable cause, on the person's calendar.
func Make(s *calc.Session, in Input) (Result, error) {
	p := &planner{session: s, in: &in}
	var list problem.List
	p.readCalendar(&list)
	p.choose(&list)
	if len(list) > 0 {
		return Result{}, list.Err()
	}
	if in.Remedies != nil && len(in.Remedies) == 0 {
		return nothingToDo(), nil
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
	late, err := schedule.Make(long, p.calendar)
	if err != nil {
		return Result{}, err
	}
	return p.write(&made, &late), nil
}

// nothingToDo is the plan of a list of work that is there and empty.
func nothingToDo() Result {
	return Result{Planned: "nothing is to be done", HoursTotal: quantity.Time(math.NaN())}
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

func minutes(hours float64) int { return max(1, int(math.Ceil(60*hours-1e-9))) }

var (
	placeOf  = map[string]schedule.Place{"afloat": schedule.Afloat, "ashore": schedule.Ashore, "either": schedule.Anywhere}
	windowOf = map[string]schedule.WindowKind{"afloat": schedule.AfloatDays, "ashore": schedule.AshoreDays, "haul-out": schedule.LiftedDays, "not": schedule.Closed}
)

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
	p.calendar = schedule.Calendar{Today: p.today, Lies: placeOf[p.in.Lies], MinutesPerDay: int(math.Round(float64(p.in.HoursPerDay) / 60)), Hands: p.in.Hands}
	for i, w := range p.in.Windows {
		p.calendar.Windows = append(p.calendar.Windows, schedule.Window{
			From: read(fmt.Sprintf("/windows/%d/from", i), w.From), To: read(fmt.Sprintf("/windows/%d/to", i), w.To), Kind: windowOf[w.Kind]})
	}
	if p.in.ReadyBy != "" {
		read("/readyBy", p.in.ReadyBy)
	}
}

// choose finds the remedies: those picked, or the first one of the most
// probable cause.
func (p *planner) choose(list *problem.List) {
	book := p.session.Book
	byID := make(map[string]rules.Remedy, book.Remedies().Len())
	for _, r := range book.Remedies().All() {
		byID[r.ID] = r
	}
	for i, c := range p.in.Remedies {
		r, ok := byID[c.Remedy]
		if !ok {
			noSuch(list, fmt.Sprintf("/remedies/%d/remedy", i), "remedy", c.Remedy, slices.Sorted(maps.Keys(byID)))
			continue
		}
		p.remedies = append(p.remedies, r)
	}
	if p.in.Remedies != nil {
		return
	}
	if r, ok := byID[p.firstCure()]; ok {
		p.remedies = append(p.remedies, r)
	}
}

// noSuch refuses an id that no row has.
func noSuch(list *problem.List, where, what, id string, known []string) {
	hint := ""
	if best, ok := contract.Closest(id, known); ok {
		hint = fmt.Sprintf("did you mean %q?", best)
	}
	list.Add(where, fmt.Sprintf("there is no %s %q", what, id), strings.Join(known, ", "), hint)
}

// firstCure is the remedy with the least work for the most probable cause.
func (p *planner) firstCure() string {
	out := p.session.Earlier("fault-finding")
	if out == nil {
		return ""
	}
	cause := out.Sheet.Result("cause")
	if cause == nil {
		return ""
	}
	for _, c := range p.session.Book.Causes().All() {
		if c.ID == cause.Text && c.Remedies.Len() > 0 {
			return c.Remedies.At(0)
		}
	}
	return ""
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
			if !has {
				i = len(p.steps)
				number[id] = i
				p.steps = append(p.steps, all.At(byID[id]))
				p.forWhat = append(p.forWhat, r.Title)
			} else if !strings.Contains(p.forWhat[i], r.Title) {
				p.forWhat[i] += "; " + r.Title
			}
		}
	}
	for _, s := range p.steps {
		t := schedule.Task{Name: s.Title, Minutes: minutes(s.Hours), Wait: s.WaitDays, Place: placeOf[s.Place], LaysUp: s.LaysUp}
		for _, id := range s.After.All() {
			if i, has := number[id]; has {
				t.After = append(t.After, i)
			}
		}
		p.tasks = append(p.tasks, t)
	}
}

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
	p.trouble(made, &out)
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
	slices.SortStableFunc(all, func(a, b rules.Caution) int { return a.Signal.Gravity() - b.Signal.Gravity() })
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
