// Package trend follows a reading over time to its limit. The arithmetic is
// package series below it; this one takes the readings from the boat file or
// as typed, says where they lead, and draws them.
package trend

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// Input is what is asked of a series of readings.
type Input struct {
	Reading      string
	Limit        string // with its unit; "" for none
	LimitSide    string // "most" or "least"
	Today        string // "" is the day of the newest reading
	Horizon      quantity.Time
	ReadingGauge string
	Readings     []writtenReading // "" in place of the boat's
}

// writtenReading is one reading as a person writes it down.
type writtenReading struct {
	Date        string
	Value       string        // with its unit
	EngineHours quantity.Time `unset:"NaN"`
	Changed     bool
}

// mostFlags is how many odd readings are listed.
const mostFlags = 12

// Result is where the readings lead. A time that is NaN is not known, or never.
type Result struct {
	Says            string
	LimitDate       string
	EarliestDate    string
	LatestDate      string
	HoursLeft       quantity.Time
	TimeLeft        quantity.Time
	Now             string
	NextReading     string
	Pace            string
	ChanceItLasts   quantity.Ratio
	NewestDeviation quantity.Ratio
	Flags           [mostFlags]oddReading
	Basis           string
	Outlook         string
	EarliestLeft    quantity.Time
	LatestLeft      quantity.Time
	HoursEarliest   quantity.Time
	HoursLatest     quantity.Time
	HoursPerWeek    quantity.Time
}

type oddReading struct{ Reading, What string }

// follower is a series of readings with the line through it.
type follower struct {
	session  *calc.Session
	property *contract.Property // of the reading, in the boat file
	series   series.Series
	found    series.Trend
	out      Result
}

// Follow follows a reading. It is worked out once for a sheet: nothing
// in it is drawn in trials.
func Follow(s *calc.Session) calc.PerRun[Input, Result] {
	t := &follower{session: s}
	done := false
	compute := func(in Input) (Result, error) {
		if done {
			return t.out, nil
		}
		if err := t.gather(&in); err != nil {
			return Result{}, err
		}
		var err error
		if t.found, err = series.Follow(t.series); err != nil {
			return Result{}, err
		}
		t.out.ChanceItLasts = quantity.Ratio(t.found.Lasts(&t.series, float64(in.Horizon)/86400))
		t.write()
		done = true
		return t.out, nil
	}
	return calc.PerRun[Input, Result]{Compute: compute, Draw: func(_ Input, _ Result, b picture.Brush) []sheet.Drawing { return t.draw(b) }}
}

// gather reads the series, the limit and the gauge.
func (t *follower) gather(in *Input) error {
	boat, err := boat.Contract()
	if err != nil {
		return err
	}
	t.property = boat.Root.Child("readings").Items.Child(in.Reading)
	if t.property == nil || t.property.Kind == nil {
		return problem.List{{Where: "/reading", What: fmt.Sprintf("the boat file has no reading %q that is one number", in.Reading), Allowed: "a reading of the list", Hint: ""}}.Err()
	}
	kind := t.property.Kind
	t.series = series.Series{Limit: math.NaN(), Rising: in.LimitSide != "least", Shifted: kind.Name == "temperature"}
	var bad problem.List
	if len(in.Readings) > 0 {
		t.typed(in.Readings, &bad)
	} else {
		t.fromBoat(in.Reading, &bad)
	}
	if in.Limit != "" {
		r, err := kind.Parse(in.Limit)
		if err != nil {
			contract.Refuse(&bad, t.property, "/limit", t.property.Title+": "+err.Error(), "", "")
		}
		t.series.Limit = r.SI
	}
	newest := math.MinInt
	for _, p := range t.series.Points {
		newest = max(newest, p.Day)
	}
	if t.series.Today = newest; in.Today != "" {
		if t.series.Today, err = day.Parse(in.Today); err != nil {
			bad.Add("/today", err.Error(), "year-month-day", "")
		}
	}
	t.series.Accuracy = t.accuracy(in.ReadingGauge, &bad)
	return bad.Err()
}

func (t *follower) typed(list []writtenReading, bad *problem.List) {
	for i, w := range list {
		where := "/readings/" + strconv.Itoa(i)
		on, err := day.Parse(w.Date)
		if err != nil {
			bad.Add(where+"/date", err.Error(), "year-month-day", "")
		}
		r, err := t.property.Kind.Parse(w.Value)
		if err != nil {
			contract.Refuse(bad, t.property, where+"/value", t.property.Title+": "+err.Error(), "", "")
		}
		t.series.Points = append(t.series.Points, series.Point{Day: on, Hours: float64(w.EngineHours) / 3600, Value: r.SI, Changed: w.Changed})
	}
}

// fromBoat takes the dated readings of that name, and the events that begin a
// new run of it. The boat file was held against its schema before.
func (t *follower) fromBoat(name string, bad *problem.List) {
	if t.session.Boat == nil {
		return
	}
	for e := range t.session.Boat.Readings() {
		raw, has := e.Value(name)
		if !has {
			continue
		}
		p := series.Point{Hours: math.NaN(), Day: dayOf(e.Date), Changed: e.Changed()}
		var err error
		if p.Value, _, err = calc.Numeric(t.property, raw); err != nil {
			bad.Add(fmt.Sprintf("/boat/readings/%d/%s", e.Index, name), err.Error(), "", "")
		}
		if seconds, ok := e.EngineHours(); ok {
			p.Hours = seconds / 3600
		}
		t.series.Points = append(t.series.Points, p)
	}
	for e := range t.session.Boat.Events() {
		if e.Renews == name {
			t.series.Renewed = append(t.series.Renewed, dayOf(e.Date))
		}
	}
}

// accuracy is the half-width of the gauge at the newest reading; 0 where none
// was named.
func (t *follower) accuracy(gauge string, bad *problem.List) float64 {
	if gauge == "" || len(t.series.Points) == 0 {
		return 0
	}
	row := t.session.Book.Table(calc.Gauges).Find(gauge, func(string) (float64, string, bool) { return 0, "", false })
	if row == nil {
		return 0
	}
	a, err := t.property.Kind.ParseAccuracy(row.Values.Of("accuracy").Text, t.series.Points[len(t.series.Points)-1].Value)
	if err != nil {
		bad.Add("/readingGauge", t.property.Title+" cannot be read with a "+row.Name, "a gauge for a "+strings.ReplaceAll(t.property.Kind.Name, "-", " "), "choose the gauge that was used")
	}
	return a
}

// write puts the trend in words and numbers.
func (t *follower) write() {
	f, out := &t.found, &t.out
	never := func(days float64) quantity.Time {
		if math.IsInf(days, 0) {
			days = math.NaN()
		}
		return quantity.Time(86400 * days)
	}
	out.TimeLeft, out.EarliestLeft, out.LatestLeft = never(f.Days.Expected), never(f.Days.Earliest), never(f.Days.Latest)
	out.HoursLeft, out.HoursEarliest, out.HoursLatest = never(f.Hours.Expected/24), never(f.Hours.Earliest/24), never(f.Hours.Latest/24)
	out.HoursPerWeek = quantity.Time(7 * 3600 * f.HoursPerDay)
	out.LimitDate, out.EarliestDate, out.LatestDate = t.date(f.Days.Expected), t.date(f.Days.Earliest), t.date(f.Days.Latest)
	out.Outlook = string(f.Outlook)
	out.NewestDeviation = quantity.Ratio(f.Deviation)
	here := f.Fit.At(f.Place)
	out.Now = t.show(here)
	if half := f.Fit.Half(f.Place); !math.IsInf(half, 0) && !math.IsNaN(half) {
		out.NextReading = t.property.Shown.PrintSpan(here-half, here+half, t.session.Units)
	}
	out.Pace = t.pace()
	axis := "days"
	if f.ByHours {
		axis = "engine hours"
	}
	out.Basis = fmt.Sprintf("%d readings since %s, over %s", len(f.Run), day.Text(f.Since), axis)
	out.Says = t.says()
	for i, flag := range f.Flags {
		if i == mostFlags-1 && len(f.Flags) > mostFlags {
			out.Flags[i] = oddReading{fmt.Sprintf("%d more", len(f.Flags)-i), "more"}
			break
		}
		p := t.series.Points[flag.Place]
		out.Flags[i] = oddReading{fmt.Sprintf("no. %d, %s, %s", flag.Place+1, day.Text(p.Day), t.show(p.Value)), string(flag.Kind)}
	}
}

func (t *follower) says() string {
	f := &t.found
	limit := t.show(t.series.Limit)
	switch f.Outlook {
	case series.NoLimit:
		return "No limit was given: the pace alone."
	case series.Passed:
		return "By the line of the readings the limit of " + limit + " is reached or passed."
	case series.Away:
		if math.IsInf(f.Days.Earliest, 1) || math.IsNaN(f.Days.Earliest) {
			return "It does not move toward the limit of " + limit + "."
		}
		return "By the line it does not move toward the limit of " + limit + ", but the scatter of the readings would allow it from " + t.out.EarliestDate + " on."
	}
	text := "It comes to the limit of " + limit
	if t.out.LimitDate != "" {
		text += " about " + t.out.LimitDate
	}
	if h := f.Hours.Expected; h >= 0 {
		text += fmt.Sprintf(", %.0f engine hours from now", h)
	}
	return text + "."
}

// show prints a value of the reading.
func (t *follower) show(si float64) string {
	return t.property.Shown.Print(si, t.session.Units)
}

// pace is the slope for a handy stretch of the axis.
func (t *follower) pace() string {
	kind, stretch, words := t.property.Kind, 30.0, "in 30 days"
	if t.found.ByHours {
		stretch, words = 100, "in 100 engine hours"
	}
	metric, us := t.property.Units[0], t.property.Units[1]
	if kind.Name == "temperature" {
		kind, _ = quantity.Lookup("temperature-difference")
	}
	rise, sign := t.found.Fit.Slope*stretch, "+"
	if rise < 0 {
		sign = ""
	}
	return sign + kind.Print(rise, t.session.Units, metric, us) + " " + words
}

// farthest is the farthest ahead, in days, that a date is given for.
const farthest = 36525

func (t *follower) date(ahead float64) string {
	switch {
	case math.IsNaN(ahead):
		return ""
	case ahead > farthest:
		return "not in a hundred years"
	}
	return day.Text(t.series.Today + int(math.Floor(ahead)))
}

// dayOf reads a date that a schema has let through.
func dayOf(date string) int {
	d, _ := day.Parse(date)
	return d
}
