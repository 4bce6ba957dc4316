// Package trend follows a reading over time to its limit. The arithmetic is
// package series below it; this one takes the readings from the boat file or
// as typed, says where they lead, and draws them.
package trend

import (
	"fmt"
	"math"

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
	Limit        string          // with its unit; "" for that of the boat file, or none
	LimitSide    string          // "most" or "least"
	SurroundedBy string          // another reading of the same time, which is taken off it; "" for none
	CarriedBy    string          // "fluid" for what is in the fluid; "" for all else
	FluidVolume  quantity.Volume `unset:"NaN"`
	LeftVolume   quantity.Volume `unset:"NaN"` // of the fluid that no change takes out
	AtReading    string          // the reading that must have stood at AtValue; "" for none
	AtValue      string          // with its unit; "" is what it was at the newest reading
	AtWithin     quantity.Ratio
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
	// WaterTemperature is that of the sea, beside a temperature.
	WaterTemperature quantity.Temperature `unset:"NaN"`

	Time         string // hour:minute
	Beside       string // the other reading of the same time, with its unit
	Baseline     bool
	FluidAdded   quantity.Volume
	FluidChanged bool
}

// farOff is the most that is said of a newest reading off the others.
const farOff = 1000

// surest is the highest chance that is given: no readings promise more.
const surest = 0.999

// mostFlags is how many odd readings are listed.
const mostFlags = 12

// Result is where the readings lead. A time that is NaN is not known, or never.
type Result struct {
	Says             string
	LimitHeld        string // what the reading is held against; "" for no limit
	LimitDate        string
	EarliestDate     string
	LatestDate       string
	SureDate         string // up to which it is sure not to be reached
	HoursLeft        quantity.Time
	TimeLeft         quantity.Time
	Now              string
	NextReading      string
	Pace             string
	ChanceNotReached quantity.Ratio
	ChanceItLasts    quantity.Ratio
	NewestDeviation  quantity.Ratio
	Flags            [mostFlags]oddReading
	Basis            string
	Outlook          string
	EarliestLeft     quantity.Time
	LatestLeft       quantity.Time
	HoursEarliest    quantity.Time
	HoursLatest      quantity.Time
	HoursPerWeek     quantity.Time

	FloorSays        string // of a reading that nears the other side
	FloorOutlook     string // "reached" or "toward"; "" for neither
	ChanceAboveFloor quantity.Ratio

	BaselineSays string // how it stands to when all was well
	OffBaseline  quantity.Ratio
	HeldSays     string // whether the last work on it held
	LostAgain    quantity.Ratio
	ChanceHeld   quantity.Ratio
	FollowUp     [5]stage
	PerHour      string // what the fluid takes up, of the filling that is in
	AddedBack    string // what top-ups thinned
	RateGrowth   quantity.Ratio
	Fillings     [8]filling
}

// stage is a reading before or after work on the part.
type stage struct{ When, Reading, Lost string }

// filling is one filling of fluid.
type filling struct{ Since, Hours, Samples, PerHour string }

type oddReading struct{ Reading, What string }

// follower is a series of readings with the line through it.
type follower struct {
	session    *calc.Session
	property   *contract.Property // of the reading
	sea        *contract.Property // of the reading of the same time that is taken off it; nil for none
	warmest    float64            // sea of the run, to which the readings are brought; NaN where they stand as read
	lessOther  bool               // the points are differences of two readings
	series     series.Series
	read       []gathered // beside the points of the series
	carried    carriage   // of what the fluid carries
	works      []work     // on the part, as the events have it
	floor      float64    // under which a reading is no better for being far from its limit; NaN for none
	notes      []string   // what was left out or not corrected
	found      series.Trend
	newestVoid string // why the newest reading tells nothing; "" where it does
	doubted    string // why it is not looked ahead by; "" for a sound trend
	why        string // the same in words
	out        Result
}

// Follow follows a reading. It is worked out once for a sheet: nothing
// in it is drawn in trials.
func Follow(s *calc.Session) calc.PerRun[Input, Result] {
	t := &follower{session: s, warmest: math.NaN()}
	done := false
	compute := func(in Input) (Result, error) {
		if done {
			return t.out, nil
		}
		if err := t.gather(&in); err != nil {
			return Result{}, err
		}
		var err error
		t.series.Few = t.newestVoid != "" || t.ranDry()
		if t.found, err = series.Follow(t.series); err != nil {
			return Result{}, err
		}
		t.out.ChanceItLasts = quantity.Ratio(min(t.found.Lasts(&t.series, float64(in.Horizon)/86400), surest))
		t.out.ChanceNotReached = quantity.Ratio(min(t.found.NotReached, surest))
		if t.doubted = t.doubt(in.Reading); t.doubted != "" {
			t.withhold()
		}
		t.falls(float64(in.Horizon) / 86400)
		t.write()
		if t.baseline(); t.doubted != voided {
			t.held()
		}
		t.perFilling()
		done = true
		return t.out, nil
	}
	return calc.PerRun[Input, Result]{Compute: compute, Draw: func(_ Input, _ Result, b picture.Brush) []sheet.Drawing { return t.draw(b) }}
}

// led tells whether there is a line that leads somewhere.
func (t *follower) led() bool { return t.doubted == "" && !math.IsNaN(t.found.Fit.Slope) }

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
	out.SureDate = t.date(f.SureDays)
	out.Outlook = string(f.Outlook)
	out.NewestDeviation = quantity.Ratio(min(f.Deviation, farOff))
	low, here, high := t.at(f.Place)
	half := (high - low) / 2
	if math.IsInf(half, 0) || math.IsNaN(half) {
		half = 0
	}
	if t.led() {
		out.Now = t.property.Shown.PrintTo(here, half, t.session.Units)
		if !math.IsInf(high-low, 0) && !math.IsNaN(high-low) {
			out.NextReading = t.property.Shown.PrintSpan(low, high, t.session.Units)
		}
		out.Pace = t.pace()
	}
	axis := "days"
	if f.ByHours {
		axis = "engine hours"
	}
	out.Basis = fmt.Sprintf("%d readings since %s, over %s", len(f.Run), day.Text(f.Since), axis)
	if few := t.little(); few != "" && f.Outlook != series.NoLimit { // where none was given it is said there
		out.Basis += "; " + few
	}
	switch {
	case !math.IsNaN(t.warmest):
		out.Basis += ", each brought by its rise above " + t.around() + " to " + t.aAround() + " of " + t.sea.Shown.Print(t.warmest, t.session.Units)
	case t.sea != nil && t.lessOther:
	case t.sea != nil:
		out.Basis += ", as read: " + t.notBeside()
	}
	if off := f.MeterOff; off >= 0 {
		t.notes = append(t.notes, "engine hours left out, as the hour meter was renewed or misread by "+day.Text(t.series.Points[off].Day)+": mend them in the log, those of an old meter added to all since")
	}
	for _, note := range t.notes {
		out.Basis += "; " + note
	}
	out.Says = t.says()
	if floor := out.FloorSays; floor != "" {
		out.Says = problem.Capital(floor) + ". " + out.Says
	}
	if t.doubted != "" {
		out.EarliestDate, out.LatestDate = "", ""
	}
	if out.FloorOutlook == string(series.Reached) { // what is past one side is not far from the other
		out.LimitDate, out.EarliestDate, out.LatestDate, out.SureDate = "", "", "", ""
	}
	for i, flag := range f.Flags {
		if i == mostFlags-1 && len(f.Flags) > mostFlags {
			out.Flags[i] = oddReading{fmt.Sprintf("%d more", len(f.Flags)-i), "more"}
			break
		}
		p := t.series.Points[flag.Place]
		out.Flags[i] = oddReading{fmt.Sprintf("no. %d, %s, %s", flag.Place+1, day.Text(p.Day), t.show(p.Value-p.Over)), string(flag.Kind)}
	}
}

// around is what a temperature is followed above, with its article.
func (t *follower) around() string {
	if t.sea.Name == "waterTemperature" {
		return "the sea"
	}
	return "“" + t.sea.Title + "”"
}

func (t *follower) aAround() string {
	if t.sea.Name == "waterTemperature" {
		return "a sea"
	}
	return "one"
}

func (t *follower) notBeside() string {
	if t.sea.Name == "waterTemperature" {
		return "it follows the sea, whose temperature is not beside every one of them"
	}
	return "“" + t.sea.Title + "” is not beside every one of them"
}

func (t *follower) says() string {
	f := &t.found
	limit := "the limit of " + t.show(t.series.Limit)
	if t.doubted != "" {
		if f.Outlook == series.Reached {
			return "The newest reading has reached " + limit + ". " + t.why
		}
		return t.why
	}
	switch f.Outlook {
	case series.NoLimit:
		text := t.worsened() + "No limit was given: the pace alone."
		if guide := t.guide(); guide != "" {
			text += " The guide is " + guide + ": type it as the limit, or the maker's figure, to see where this leads."
		}
		if few := t.little(); few != "" {
			text += " " + problem.Capital(few) + "."
		}
		return text
	case series.Reached:
		newest := &t.series.Points[f.Run[len(f.Run)-1]]
		return "The newest reading, " + t.show(newest.Value-newest.Over) + ", has reached " + limit + "."
	case series.TooFew:
		return t.worsened() + fmt.Sprintf("%d readings do not look ahead: that takes %d of one run.", len(f.Run), series.FewestAhead)
	case series.Passed:
		return "By the line of the readings " + limit + " is reached or passed."
	}
	off := ""
	if f.Deviation > 1 {
		off = " The newest reading has left the band of the others: read again before you count on a date."
	} else if len(f.Flags) > 0 {
		off = " A reading named below is odd: was it a slip, mend it in the log, since it moves date and chances."
	}
	if f.Quickens {
		steady := t.date(f.SteadyDays)
		if f.SteadyDays <= farthest {
			steady = "about " + steady
		}
		return "It speeds up: at the pace of late it comes to " + limit + ", about " + t.out.LimitDate + ", at a steady pace " + steady + "." + off
	}
	if f.Outlook == series.Away {
		if math.IsInf(f.Days.Earliest, 1) || math.IsNaN(f.Days.Earliest) {
			return "It does not move toward " + limit + "." + off
		}
		return "By the line it does not move toward " + limit + ", but the scatter of the readings would allow it from " + t.out.EarliestDate + " on." + off
	}
	first, newest := &t.series.Points[f.Run[0]], &t.series.Points[f.Run[len(f.Run)-1]]
	date, hours := t.out.LimitDate, f.Hours.Expected
	if f.Days.Expected > float64(newest.Day-first.Day) {
		off = " That is farther ahead than the readings go back: no more than a guess." + off
		date, hours = roughly(date, f.Days.Expected), digits(hours, 2)
	}
	text := "At a steady pace it comes to " + limit
	if date != "" {
		text += ", about " + date
	}
	if hours >= 0 {
		text += fmt.Sprintf(", %.0f engine hours from now", hours)
	}
	return text + "." + off
}

// little says that the readings reach over too few days for a pace that counts, if
// they do.
func (t *follower) little() string {
	const enough = 30 // days, for which the pace is told: common practice, no source
	run := t.found.Run
	if len(run) == 0 {
		return ""
	}
	days := t.series.Points[run[len(run)-1]].Day - t.series.Points[run[0]].Day
	if days >= enough || t.found.Outlook == series.TooFew {
		return ""
	}
	return fmt.Sprintf("they reach over %s only, which tells little of a pace", counted(int(days), "day"))
}

// guide is what common practice holds the reading against, where a limit of the
// gland or one of its usual values does; "" for none.
func (t *follower) guide() string {
	row := t.session.Book.Table("trend-readings").Find(t.property.Name, nil)
	if row == nil {
		return ""
	}
	name := row.Values.Of("guide").Text
	if usual := t.session.Book.Usual("gland-heat").Named(name, nil); usual != nil {
		for _, v := range usual.Values.All() {
			return "at most " + t.show(v.SI)
		}
	}
	l, _ := t.session.LimitOf("gland-heat", name)
	return l.Text
}

// show prints a value of the reading.
func (t *follower) show(si float64) string {
	return t.property.Shown.Print(si, t.session.Units)
}

// pace is the slope for a handy stretch of the axis.
func (t *follower) pace() string {
	kind, stretch, words := t.property.Kind, 30.0, "over 30 days"
	if t.found.ByHours {
		stretch, words = 100, "over 100 engine hours"
	}
	metric, us := t.property.Units[0], t.property.Units[1]
	if kind.Name == "temperature" {
		kind, _ = quantity.Lookup("temperature-difference")
	}
	rise, sign := t.found.Fit.Slope*stretch, "+"
	half := t.found.Fit.SlopeHalf() * stretch
	if math.IsInf(half, 0) {
		half = 0
	}
	if rise < 0 {
		sign = ""
	}
	if half > math.Abs(rise) { // rounded to its half-width it would read as none
		return kind.In(metric, us).PrintSpan(rise-half, rise+half, t.session.Units) + " " + words
	}
	return sign + kind.In(metric, us).PrintTo(rise, half, t.session.Units) + " " + words
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
