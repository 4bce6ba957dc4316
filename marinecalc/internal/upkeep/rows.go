package upkeep

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// urgency is the order of the list: what was found at fault first, then what is
// overdue, then what nobody has looked at.
var urgency = map[due.State]int{due.Fault: 0, due.Overdue: 1, due.Never: 2, due.Soon: 3, due.Later: 4, due.Open: 5}

// list makes the list of care, most pressing first.
func (k *keeper) list() {
	table := k.session.Book.Table("service-intervals")
	seen := map[string]bool{}
	for _, row := range table.Rows.All() {
		aboard := !slices.ContainsFunc(k.in.Without, func(w NotAboard) bool { return w.Item == row.Pick })
		if seen[row.Pick] || !aboard || !row.Valid.Meets(k.known) || len(k.cares) == mostCare {
			continue
		}
		seen[row.Pick] = true
		k.cares = append(k.cares, k.careOf(row))
	}
	k.afterWork()
	k.ownLimits()
	k.cares = k.cares[:min(len(k.cares), mostCare)]
	sort.SliceStable(k.cares, func(i, j int) bool {
		a, b := &k.cares[i], &k.cares[j]
		if ua, ub := urgency[a.state], urgency[b.state]; ua != ub {
			return ua < ub
		}
		return a.when.Day < b.when.Day
	})
	for i := range k.cares {
		c := &k.cares[i]
		k.out.Schedule[i] = k.line(c)
		if k.atOnce(i) {
			k.out.hazards = append(k.out.hazards, c.row.Hazards()...)
		}
	}
}

// atHand is how many things of the list are in hand: the cautions of these stand
// in front, those of the others beside each.
const atHand = 2

// atOnce tells whether a thing of the list is to be done now: the first few of
// what is overdue, or else of what is due next.
func (k *keeper) atOnce(i int) bool {
	first, state := k.cares[0].state, k.cares[i].state
	return i < atHand && state != due.Later && (first != due.Overdue && first != due.Fault || state == due.Overdue || state == due.Fault)
}

// underWay is the caution of what is read while the shaft runs.
const underWay = "turning-shaft"

// heldBack lets what is read under way wait, and says in front that the shaft
// stands.
func (k *keeper) heldBack() {
	k.out.hazards = []string{rules.StopNow}
	for i := range k.cares {
		switch hazards := k.cares[i].row.Hazards(); {
		case slices.Contains(hazards, underWay):
			line := &k.out.Schedule[i]
			line.How = "It waits until the shaft may turn. " + line.How
		case k.atOnce(i):
			k.out.hazards = append(k.out.hazards, hazards...)
		}
	}
}

// hazardWords are the cautions of a care in short.
func (k *keeper) hazardWords(c *care) string {
	var words []string
	hazards := c.row.Hazards()
	for _, known := range k.session.Book.AllCautions().All() {
		if slices.Contains(hazards, known.ID) {
			words = append(words, string(known.Signal)+": "+known.InShort()+".")
		}
	}
	return strings.Join(words, " ")
}

// careOf finds when one row was last done, how often it is to be done, and when
// it is due.
func (k *keeper) careOf(row rules.Row) care {
	c := care{row: row, Care: due.Care{EveryHours: math.NaN(), EveryDays: math.NaN(), Hours: math.NaN(), Wear: math.NaN()},
		authority: row.Basis.Authority(), guide: row.Basis.Guides(), kind: row.Values.Of("kind").Text, how: row.Values.Of("how").Text, part: row.Values.Of("part").Text}
	if row.Note != "" {
		c.how += " " + row.Note
	}
	if v, has := row.Values.Find("hours"); has {
		c.EveryHours = v.SI / secondsPerHour
	}
	if v, has := row.Values.Find("within"); has {
		c.EveryDays = v.SI / secondsPerDay
	}
	for _, m := range k.in.Intervals {
		if m.Item == row.Pick {
			c.EveryHours, c.EveryDays = float64(m.Hours)/secondsPerHour, float64(m.Within)/secondsPerDay
			c.authority, c.guide = rules.ByMaker.Authority()+": "+m.Document, false
		}
	}
	k.lastDone(&c)
	if c.fresh {
		c.soonAfterWork()
	}
	for _, reading := range strings.Fields(row.Values.Of("trend").Text) {
		if from, reached := k.wear(reading); !math.IsNaN(from) && !(c.Wear <= from) { // the soonest, of those there are
			c.Wear, c.reached = from, reached
		}
	}
	k.dueOf(&c)
	if c.fault != "" {
		c.state, c.when = due.Fault, due.When{Day: math.NaN(), HoursLeft: math.NaN()}
	}
	var every []string
	if !math.IsNaN(c.EveryHours) {
		every = append(every, fmt.Sprintf("%.0f h", c.EveryHours))
	}
	if !math.IsNaN(c.EveryDays) {
		every = append(every, spanOf(c.EveryDays))
	}
	c.every = strings.Join(every, " or ")
	if c.fresh && len(every) > 0 && c.beds() {
		c.every += ", the first time after work"
	}
	return c
}

// dueOf finds when a care is due, and how pressing it is.
func (k *keeper) dueOf(c *care) {
	c.when = c.Next(k.use)
	c.state = c.StateOf(c.when, k.use, float64(k.in.Horizon)/secondsPerDay)
	if c.state == due.Overdue && c.when.By == due.ByHours {
		if then := k.log.DayOf(c.Hours+c.EveryHours, k.use.PerDay); then < c.when.Day {
			c.when.Day = then // the day on which the hours were run
		}
	}
}

// spanOf writes a time between two days as people say it.
func spanOf(days float64) string {
	switch months := days / (daysPerYear / 12); {
	case days < 60:
		return fmt.Sprintf("%.0f days", days)
	case months < 23:
		return fmt.Sprintf("%.0f months", months)
	}
	return fmt.Sprintf("%.3g years", math.Round(days/daysPerYear*2)/2)
}

// lastDone finds the newest of what was written down as done and of the
// readings that count as having looked.
func (k *keeper) lastDone(c *care) {
	take := func(date string, seconds float64) {
		d, err := day.Parse(date)
		if err != nil || c.Done && d < c.Day {
			return
		}
		c.Done, c.Day, c.Hours = true, d, k.metered(d, seconds)
	}
	for _, d := range k.in.Done {
		if d.Item == c.row.Pick {
			take(d.Date, float64(d.EngineHours))
		}
	}
	names, first := strings.Fields(c.row.Values.Of("readings").Text), ""
	ways, questions := strings.Fields(c.row.Values.Of("ways").Text), strings.Fields(c.row.Values.Of("questions").Text)
	if e := k.looked(names, ways, questions); e != nil {
		seconds := math.NaN()
		if read, ok := e.EngineHours(); ok {
			seconds = read
		}
		take(e.Date, seconds)
		first = e.Date
		c.fresh = c.Day == dayOf(first) && k.firstAfterWork(e, names)
	}
	if date := k.trial(names); date != "" {
		take(date, math.NaN())
		c.fresh = c.fresh && date <= first || date >= first && k.workedOn(date)
	}
	if date, title := k.faulty(questions); title != "" && !slices.ContainsFunc(k.in.Done, func(d DoneCare) bool { return d.Item == c.row.Pick && d.Date >= date }) {
		c.fault, c.last = title, date+", found at fault"
		return
	}
	c.last = "nobody, as far as the boat file tells"
	if c.Done {
		c.last = day.Text(c.Day)
		if c.Hours >= 0 {
			c.last += fmt.Sprintf(", %.0f h", c.Hours)
		}
		c.last += k.voids(names)
		return
	}
	c.last += k.voids(names)
	if e := k.perhaps(strings.Fields(c.row.Values.Of("run").Text)); e.What != "" {
		c.last += fmt.Sprintf("; was it “%s” on %s? Then write it down as done", e.What, e.Date)
	}
}

// beds tells whether the row has an interval for what was just worked on.
func (c *care) beds() bool {
	_, hours := c.row.Values.Find("newHours")
	_, within := c.row.Values.Find("newWithin")
	return hours || within
}

// soonAfterWork shortens the interval to that of what was just worked on: it
// beds in, settles or works loose in its first hours. A maker's interval that
// is shorter stays.
func (c *care) soonAfterWork() {
	shorter := func(every *float64, column string, unit float64) {
		if v, has := c.row.Values.Find(column); has && !(*every <= v.SI/unit) {
			*every = v.SI / unit
		}
	}
	shorter(&c.EveryHours, "newHours", secondsPerHour)
	shorter(&c.EveryDays, "newWithin", secondsPerDay)
}

// wear is the day from which the readings of a name may be at their limit, by
// their trend, and whether they are; NaN where there is none.
func (k *keeper) wear(reading string) (from float64, reached bool) {
	if reading == "" || k.session.Boat == nil {
		return math.NaN(), false
	}
	c, err := k.session.Find("reading-trend")
	if err != nil {
		return math.NaN(), false
	}
	out, _, problems := k.session.Run(c, map[string]any{"reading": reading, "today": day.Text(k.today)})
	if out == nil || len(problems) > 0 {
		return math.NaN(), false // too few readings, or none
	}
	return wearDay(out, k.today)
}

func wearDay(out *inputs.Outcome, today int) (from float64, reached bool) {
	if v := out.Sheet.Verdict("trend-not-reached"); v != nil && v.Word.Plain() == sheet.Beyond {
		return float64(today), true
	}
	if sure := out.Sheet.Result("sureDate"); sure != nil {
		if d, err := day.Parse(sure.Text); err == nil {
			return float64(d), false
		}
	}
	return math.NaN(), false
}

// worn tells whether what is to be read is overdue by where its readings lead.
func (c *care) worn() bool {
	return c.kind == "read" && c.state == due.Overdue && c.when.By == due.ByWear
}

// spoken tells whether what is to be read has been, and is at its limit.
func (c *care) spoken() bool { return c.worn() && c.reached }

func (k *keeper) line(c *care) CareLine {
	l := CareLine{What: c.row.Name, State: string(c.state), HoursLeft: quantity.Time(math.NaN()), By: string(c.when.By), LastDone: c.last,
		Kind: c.kind, How: c.how, Hazard: k.hazardWords(c), Every: c.every, Authority: c.authority, Part: c.part}
	if c.fault != "" {
		l.How = "“" + c.fault + "” yes: cure it by the fault finding and the work plan, then write it down as done."
	}
	if c.spoken() {
		l.How = "Its readings are at their limit: find the cause, by the reading trend and the fault finding, before she is used further. Another reading alone settles nothing. It is read: " + problem.MidSentence(c.how)
	}
	if !math.IsNaN(c.when.HoursLeft) && !c.worn() {
		l.HoursLeft = quantity.Time(math.Round(c.when.HoursLeft) * secondsPerHour)
	}
	if !math.IsNaN(c.when.Day) {
		l.Due = day.Text(int(math.Floor(c.when.Day)))
	}
	return l
}
