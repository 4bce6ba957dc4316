package marinecalc

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"time"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/workplan/schedule"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// Job is what work-plan takes.
type Job struct {
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

// WorkPlan is what work-plan gives.
type WorkPlan struct {
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
	session  *session
	in       *Job
	today    int
	remedies []rules.Remedy
	steps    []rules.Step
	forWhat  []string // by step: titles of the remedies that need it
	tasks    []schedule.Task
	calendar schedule.Calendar
	needs    []partNeed
	cut      []string // lists too long for the sheet
}

// planWork lays the steps of the chosen remedies, or else of the first remedy
// of the most probable cause, on the person's calendar.
func planWork(s *session, in Job) (WorkPlan, error) {
	p := &planner{session: s, in: &in}
	var list problem.List
	p.readCalendar(&list)
	p.choose(&list)
	if len(list) > 0 {
		return WorkPlan{}, list
	}
	if in.Remedies != nil && len(in.Remedies) == 0 {
		return nothingToDo(), nil
	}
	if len(p.remedies) == 0 {
		return WorkPlan{}, lacking{"remedies", "it is not known which work is to be planned",
			"choose what is to be done, or answer the questions of the fault finding in the boat file"}
	}
	p.gatherSteps()
	if len(p.steps) > mostSteps {
		list.Add("/remedies", fmt.Sprintf("this is work of %d steps", len(p.steps)), fmt.Sprintf("at most %d steps in one plan", mostSteps), "plan it in two parts")
		return WorkPlan{}, list
	}
	p.gatherParts(&list)
	if len(list) > 0 {
		return WorkPlan{}, list
	}
	made, err := schedule.Make(p.tasks, p.calendar)
	if err != nil {
		return WorkPlan{}, inRemedies(err)
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
		return WorkPlan{}, err
	}
	return p.write(&made, &late), nil
}

// nothingToDo is the plan of a list of work that is there and empty.
func nothingToDo() WorkPlan {
	return WorkPlan{Planned: "nothing is to be done", HoursTotal: quantity.Time(math.NaN())}
}

// inRemedies gives problems without a place that of the remedies.
func inRemedies(err error) error {
	if list, ok := err.(problem.List); ok {
		for i := range list {
			if list[i].Where == "" {
				list[i].Where = "/remedies"
			}
		}
	}
	return err
}

func minutes(hours float64) int { return max(1, int(math.Ceil(60*hours-1e-9))) }

const dayForm = "2006-01-02" // year-month-day, ISO 8601

// dayNumber reads a date as days since 1970-01-01.
func dayNumber(date string) (int, error) {
	t, err := time.Parse(dayForm, date)
	return int(t.Unix() / 86400), err
}

func dayText(day int) string { return time.Unix(int64(day)*86400, 0).UTC().Format(dayForm) }

var (
	placeOf  = map[string]schedule.Place{"afloat": schedule.Afloat, "ashore": schedule.Ashore, "either": schedule.Anywhere}
	windowOf = map[string]schedule.WindowKind{"afloat": schedule.AfloatDays, "ashore": schedule.AshoreDays, "haul-out": schedule.LiftedDays, "not": schedule.Closed}
)

func placeWords(place string) string {
	if place == "either" {
		return "afloat or ashore"
	}
	return place
}

// readCalendar reads dates, windows and people.
func (p *planner) readCalendar(list *problem.List) {
	read := func(where, date string) int {
		day, err := dayNumber(date)
		if err != nil {
			list.Add(where, fmt.Sprintf("%q is no day of the calendar", date), "year-month-day, such as 2026-03-14", "")
		}
		return day
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
	book := p.session.book
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
	out := p.session.earlier("fault-finding")
	if out == nil {
		return ""
	}
	cause := out.sheet.Result("cause")
	if cause == nil {
		return ""
	}
	for _, c := range p.session.book.Causes().All() {
		if c.ID == cause.Text && c.Remedies.Len() > 0 {
			return c.Remedies.At(0)
		}
	}
	return ""
}

// gatherSteps lists every step once, and what it comes after of the others.
func (p *planner) gatherSteps() {
	all := p.session.book.Steps()
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
func (p *planner) write(made, late *schedule.Plan) WorkPlan {
	out := WorkPlan{StepsPlanned: len(p.steps)}
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
		out.Start = dayText(made.FirstDay(made.Tasks[made.Order[0]].Start))
	}
	out.Finish, out.FinishLong = finishText(made), finishText(late)
	out.InTime = p.inTime(made, late)
	return out
}

// finishText is the day on which everything is done.
func finishText(made *schedule.Plan) string {
	if len(made.Order) < len(made.Tasks) {
		return "cannot be given: some steps have no date"
	}
	return dayText(made.LastDay(made.Finish))
}

func (p *planner) line(made *schedule.Plan, i int, dangers string) ScheduledStep {
	t, s := made.Tasks[i], p.steps[i]
	l := ScheduledStep{Step: s.Title, Hours: quantity.Time(float64(p.tasks[i].Minutes) * 60), Place: placeWords(s.Place), Critical: "no",
		Slack: quantity.Time(math.NaN()), Dangers: dangers, How: s.Text, For: p.forWhat[i]}
	switch t.Why {
	case schedule.Dated:
		l.Start, l.End = dayText(made.FirstDay(t.Start)), dayText(made.LastDay(t.End))
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
func (p *planner) dangers(order []int, out *WorkPlan) []string {
	steps := make([]string, len(p.steps))
	var all []rules.Caution
	for _, c := range p.session.book.AllCautions().All() {
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
			out.Dangers[n] = DangerLine{Danger: itoa(n + 1), Signal: string(c.Signal), Text: c.Text, AtSteps: strings.Join(at, "; ")}
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

func (p *planner) tools(order []int, out *WorkPlan) {
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
func (p *planner) whereSheLies(out *WorkPlan) {
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

func listed(items []string) string {
	if len(items) == 0 {
		return "nothing"
	}
	return strings.Join(items, "; ")
}

// trouble says plainly what stands in the way.
func (p *planner) trouble(made *schedule.Plan, out *WorkPlan) {
	var lines []string
	for i, w := range p.calendar.Windows {
		if w.To < p.today {
			lines = append(lines, fmt.Sprintf("The window %s to %s (%s) ended before %s and is not counted.", p.in.Windows[i].From, p.in.Windows[i].To, windowWords(p.in.Windows[i]), p.in.Today))
		}
	}
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
	for _, list := range p.cut {
		lines = append(lines, "The list of "+list+" is longer than the sheet shows: plan the work in two parts.")
	}
	out.Trouble = strings.Join(lines, " ")
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
	want, err := dayNumber(p.in.ReadyBy)
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
	return itoa(n) + " days"
}
