package schedule

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"

	"example.org/driveline/marinecalc/problem"
)

func always(hands int) Calendar {
	return Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 1, Hands: hands}
}

func mustMake(t *testing.T, tasks []Task, c Calendar) Plan {
	t.Helper()
	p, err := Make(tasks, c)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Heizer and Render, Operations Management, project management chapter: the
// Milwaukee Paper network, in weeks; figures from memory. 15 weeks, critical
// path A-C-E-G-H, slack of B, D and F 1, 1 and 6.
func TestTextbookNetwork(t *testing.T) {
	const a, b, c, d, e, f, g, h = 0, 1, 2, 3, 4, 5, 6, 7
	tasks := []Task{
		a: {Name: "A", Minutes: 2}, b: {Name: "B", Minutes: 3},
		c: {Name: "C", Minutes: 2, After: []int{a}}, d: {Name: "D", Minutes: 4, After: []int{a, b}},
		e: {Name: "E", Minutes: 4, After: []int{c}}, f: {Name: "F", Minutes: 3, After: []int{c}},
		g: {Name: "G", Minutes: 5, After: []int{d, e}}, h: {Name: "H", Minutes: 2, After: []int{f, g}},
	}
	p := mustMake(t, tasks, always(len(tasks)))
	if p.Finish != 15 {
		t.Errorf("it takes %d weeks, published 15", p.Finish)
	}
	earliest := []Moment{0, 0, 2, 3, 4, 4, 8, 13}
	latest := []Moment{0, 1, 2, 4, 4, 10, 8, 13}
	for i := range tasks {
		if p.Tasks[i].Start != earliest[i] || p.Tasks[i].LateStart != latest[i] {
			t.Errorf("%s starts at %d to %d, published %d to %d", tasks[i].Name, p.Tasks[i].Start, p.Tasks[i].LateStart, earliest[i], latest[i])
		}
		if p.Slack(i) != int(latest[i]-earliest[i]) || p.Tasks[i].Critical != (latest[i] == earliest[i]) {
			t.Errorf("%s has slack %d, critical %v", tasks[i].Name, p.Slack(i), p.Tasks[i].Critical)
		}
	}
}

// randomTasks makes tasks that come after some of those before them, with some
// days of waiting.
func randomTasks(r *rand.Rand, n int) []Task {
	tasks := make([]Task, n)
	for i := range tasks {
		tasks[i] = Task{Name: string(rune('A' + i)), Minutes: 1 + r.IntN(9)}
		for b := range i {
			if r.IntN(4) == 0 {
				tasks[i].After = append(tasks[i].After, b)
			}
		}
	}
	return tasks
}

// With people enough and no windows the end is the longest path, found by
// gonum (Bellman-Ford on negated lengths).
func TestLongestPathAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		tasks := randomTasks(r, 2+r.IntN(14))
		for i := range tasks {
			tasks[i].Wait = r.IntN(3)
		}
		g := simple.NewWeightedDirectedGraph(0, 0)
		const source = 1000
		for i := range tasks {
			g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(source), simple.Node(i), 0))
			g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(i), simple.Node(500+i), -float64(tasks[i].Minutes)))
			for _, b := range tasks[i].After {
				g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(500+b), simple.Node(i), -float64(tasks[b].Wait)))
			}
		}
		shortest, ok := path.BellmanFordFrom(simple.Node(source), g)
		if !ok {
			t.Fatal("gonum finds a circle")
		}
		p := mustMake(t, tasks, always(len(tasks)))
		finish := 0.0
		for i := range tasks {
			want := -shortest.WeightTo(int64(500 + i))
			if float64(p.Tasks[i].End) != want {
				t.Fatalf("task %d ends at %d, gonum says %g", i, p.Tasks[i].End, want)
			}
			finish = max(finish, want)
		}
		if float64(p.Finish) != finish {
			t.Fatalf("finish %d, gonum says %g", p.Finish, finish)
		}
	}
}

func randomCalendar(r *rand.Rand) Calendar {
	c := Calendar{Today: 100 + r.IntN(50), Lies: []Place{Afloat, Ashore}[r.IntN(2)], MinutesPerDay: 1 + r.IntN(5), Hands: 1 + r.IntN(3)}
	for range r.IntN(6) {
		from := 90 + r.IntN(80)
		c.Windows = append(c.Windows, Window{From: from, To: from + r.IntN(15), Kind: WindowKind(r.IntN(4))})
	}
	return c
}

// work walks a step minute by minute from its start by the rules of the
// calendar, and says when it ends.
func work(d *days, start, length Moment, place Place, struck ...func(*days, int, Place) bool) (end Moment, ok bool) {
	left := length
	for m := start; ; m++ {
		day := int((m - d.first) / d.perDay)
		if day >= Horizon || !d.fits(day, need{place: place}) || place != Anywhere && struck != nil && struck[0](d, day, place) {
			return 0, false
		}
		if d.stopped[day] {
			if m == start {
				return 0, false
			}
			continue
		}
		if left--; left == 0 {
			end = m + 1
			break
		}
	}
	first, last := int((start-d.first)/d.perDay), int((end-1-d.first)/d.perDay)
	return end, length > d.perDay || first == last
}

// Both searches of the calendar against trying every minute.
func TestSearchesAgainstEveryMinute(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 400 {
		c := randomCalendar(r)
		d := c.layOut()
		length, place := Moment(1+r.IntN(9)), Place(r.IntN(3))
		from := d.first + Moment(r.IntN(60*c.MinutesPerDay))
		var want, wantEnd Moment
		found := false
		for m := from; m < from+90*d.perDay && !found; m++ {
			if end, ok := work(d, m, length, place); ok {
				want, wantEnd, found = m, end, true
			}
		}
		start, end, ok := d.earliest(from, length, need{place: place})
		if found && (!ok || start != want || end != wantEnd) || !found && ok && start < from+90*d.perDay {
			t.Fatalf("%+v: earliest of %d from %d is %d to %d, %v; want %d to %d, %v", c, length, from, start, end, ok, want, wantEnd, found)
		}
		found = false
		for m := from - 1; m >= d.first && !found; m-- {
			if end, ok := work(d, m, length, place); ok && end <= from {
				want, found = m, true
			}
		}
		start, _, ok = d.latest(from, length, need{place: place})
		if ok != found || found && start != want {
			t.Fatalf("%+v: latest of %d at %d by %d is %d, %v; want %d, %v", c, length, place, from, start, ok, want, found)
		}
	}
}

func TestOnePersonDoesOneThingAtATime(t *testing.T) {
	p := mustMake(t, []Task{{Name: "a", Minutes: 1}, {Name: "b", Minutes: 1}, {Name: "c", Minutes: 1}}, always(1))
	if p.Finish != 3 {
		t.Errorf("three days of work by one person take %d", p.Finish)
	}
	for i := range p.Tasks {
		if !p.Tasks[i].Critical {
			t.Errorf("task %d is not critical, though there is no other hand", i)
		}
	}
}

func TestWindowsThatNeverOpen(t *testing.T) {
	tasks := []Task{
		{Name: "lift", Minutes: 3, Place: Ashore},
		{Name: "after", Minutes: 1, After: []int{0}},
		{Name: "alone", Minutes: 1, Place: Afloat},
	}
	p := mustMake(t, tasks, always(1))
	if p.Tasks[0].Why != NoWindow || p.Tasks[1].Why != AfterAnother || p.Tasks[2].Why != Dated {
		t.Errorf("%+v", p.Tasks)
	}
	c := always(1)
	c.Windows = []Window{{From: 5, To: 6, Kind: LiftedDays}}
	if p := mustMake(t, tasks, c); p.Tasks[0].Why != TooShort {
		t.Errorf("three days of work in two days: %+v", p.Tasks[0])
	}
	c.Today = 10
	if p := mustMake(t, tasks, c); p.Tasks[0].Why != NoWindow {
		t.Errorf("a window that is over: %+v", p.Tasks[0])
	}
}

func TestCirclesAreNamed(t *testing.T) {
	_, err := Make([]Task{
		{Name: "first", Minutes: 1},
		{Name: "hen", Minutes: 1, After: []int{0, 3}},
		{Name: "chick", Minutes: 1, After: []int{1}},
		{Name: "egg", Minutes: 1, After: []int{2}},
		{Name: "last", Minutes: 1, After: []int{3}},
	}, always(1))
	if err == nil {
		t.Fatal("a circle is planned")
	}
	list := problem.Of(err)
	text := list[0].What
	if len(list) != 1 || strings.Contains(text, "first") || strings.Contains(text, "last") || strings.Count(text, "then") != 3 {
		t.Errorf("got %v", err)
	}
	h, c, e := strings.Index(text, "hen”"), strings.Index(text, "chick"), strings.Index(text, "egg")
	if h < 0 || c < 0 || e < 0 {
		t.Errorf("got %v", err)
	}
}

func TestRefusals(t *testing.T) {
	good := []Task{{Name: "a", Minutes: 1}}
	for where, change := range map[string]func(*Calendar){
		"/hoursPerDay":  func(c *Calendar) { c.MinutesPerDay = 0 },
		"/hands":        func(c *Calendar) { c.Hands = 0 },
		"/lies":         func(c *Calendar) { c.Lies = Anywhere },
		"/windows/0/to": func(c *Calendar) { c.Windows = []Window{{From: 5, To: 4}} },
	} {
		c := always(1)
		change(&c)
		_, err := Make(good, c)
		list := problem.Of(err)
		if len(list) != 1 || list[0].Where != where {
			t.Errorf("%s: %v", where, err)
		}
	}
	if _, err := Make([]Task{{Name: "nothing"}}, always(1)); err == nil {
		t.Error("a step without length is planned")
	}
}

func BenchmarkMake(b *testing.B) {
	r := rand.New(rand.NewPCG(7, 8))
	tasks := randomTasks(r, 24)
	c := Calendar{Today: 20000, Lies: Afloat, MinutesPerDay: 300, Hands: 1}
	for b.Loop() {
		_, _ = Make(tasks, c)
	}
}

// A person takes what can begin first, and of several what has the longest chain behind
// it; what waits for parts goes before nothing that is ready.
func TestWhatIsTakenFirst(t *testing.T) {
	for name, c := range map[string]struct {
		tasks []Task
		order []int
	}{
		"longest chain":        {[]Task{{Name: "a", Minutes: 2}, {Name: "b", Minutes: 1}, {Name: "c", Minutes: 9, After: []int{1}}}, []int{1, 2, 0}},
		"shorter chain last":   {[]Task{{Name: "a", Minutes: 1}, {Name: "b", Minutes: 9, After: []int{0}}, {Name: "c", Minutes: 2}}, []int{0, 1, 2}},
		"ready before a chain": {[]Task{{Name: "a", Minutes: 1}, {Name: "b", Minutes: 9, Ready: 1}}, []int{0, 1}},
		"ready after a chain":  {[]Task{{Name: "a", Minutes: 9, Ready: 1}, {Name: "b", Minutes: 1}}, []int{1, 0}},
	} {
		p := mustMake(t, c.tasks, Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 1})
		if !slices.Equal(p.Order, c.order) || p.Tasks[c.order[0]].Start != 0 {
			t.Errorf("%s: %v", name, p.Order)
		}
	}
}

// Slack in days, the days that a task is worked at, and those with work up to another.
func TestDaysOfAPlan(t *testing.T) {
	p := mustMake(t, []Task{{Name: "long", Minutes: 35}, {Name: "short", Minutes: 5}}, Calendar{Today: 100, Lies: Afloat, MinutesPerDay: 10, Hands: 2, Windows: []Window{{From: 101, To: 101, Kind: Closed}}})
	if got := p.Sittings(0); !slices.Equal(got, []Sitting{{100, 0, 10}, {102, 0, 10}, {103, 0, 10}, {104, 0, 5}}) {
		t.Errorf("worked at on %v", got)
	}
	if p.Slack(0) != 0 || p.Slack(1) != 4 || p.Open.Any {
		t.Errorf("slack of %d and %d days", p.Slack(0), p.Slack(1))
	}
	for _, c := range [][3]int{{100, 104, 3}, {98, 101, 1}, {100 + Horizon - 1, 100 + Horizon + 5, 1}, {104, 104, 0}} {
		if got := p.WorkDays(c[0], c[1]); got != c[2] {
			t.Errorf("from day %d to %d: %d days with work, want %d", c[0], c[1], got, c[2])
		}
	}
	// One minute ashore is a window, and too short for two.
	short := Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 1, Hands: 1, Windows: []Window{{From: 5, To: 5, Kind: AshoreDays}}}
	if p := mustMake(t, []Task{{Name: "paint", Minutes: 2, Place: Ashore}}, short); p.Tasks[0].Why != TooShort {
		t.Errorf("two minutes in one: %d", p.Tasks[0].Why)
	}
}

// What waits for a glue to set may begin later by what the rest leaves of its days. A
// plan that opens nothing has no window in its way. A day has 24 hours at the most.
func TestSlackBesideAWait(t *testing.T) {
	tasks := []Task{{Name: "long", Minutes: 50}, {Name: "glue", Minutes: 5, Wait: 2}, {Name: "fit", Minutes: 5, After: []int{1}}}
	p := mustMake(t, tasks, Calendar{Today: 0, Lies: Afloat, MinutesPerDay: 10, Hands: 2})
	if p.Slack(0) != 0 || p.Slack(1) != 2 || p.Tasks[1].LateStart != 20 || p.Tasks[2].LateStart != 45 {
		t.Errorf("glued at %d, fitted at %d at the latest", p.Tasks[1].LateStart, p.Tasks[2].LateStart)
	}
	if p.Open.Any || p.Open.Window != -1 {
		t.Errorf("nothing is opened: %+v", p.Open)
	}
	for minutes, refused := range map[int]bool{0: true, 1: false, 1440: false, 1441: true} {
		if _, err := Make(tasks[:1], Calendar{MinutesPerDay: minutes, Hands: 1, Lies: Afloat}); refused != (err != nil) {
			t.Errorf("%d minutes a day: %v", minutes, err)
		}
	}
}
