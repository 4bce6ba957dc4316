package trend

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/problem"
)

// gathered is one reading as it was written, beside its place in the series.
type gathered struct {
	text     string  // of its number, for the digits that were read
	accuracy float64 // written with it; 0 for none
	beside   float64 // the other reading of the same time; NaN: not written down
	air      float64 // temperature of the air then; NaN: not written down
	at       float64 // what the reading stood at by which readings are picked; NaN: not written down
	gauge    string  // it was read with; "" for the usual one
	baseline bool    // all was well
	where    string  // in the boat file; "" for what was typed
}

// gather reads the series, the limit and the gauge.
func (t *follower) gather(in *Input) error {
	b := t.session.Boat
	of, known := b.Describe(in.Reading)
	if !known {
		var names []string
		for _, f := range b.Followable() {
			names = append(names, f.Name)
		}
		return problem.List{{Where: "/reading", What: fmt.Sprintf("the boat file has no reading %q that is one number", in.Reading), Allowed: strings.Join(names, ", "), Hint: problem.DidYouMean(in.Reading, names)}}.Err()
	}
	t.property = &of.Property
	t.series = series.Series{Limit: math.NaN(), Rising: t.side(in.LimitSide, of.Side) != "least", Shifted: t.property.Kind.Name == "temperature"}
	t.floor = t.least(in.Reading)
	var bad problem.List
	if in.SurroundedBy != "" {
		t.sea = t.another("/surroundedBy", in.SurroundedBy, t.property.Kind.Name, &bad)
	}
	var at *contract.Property
	if in.AtReading != "" {
		at = t.another("/atReading", in.AtReading, "", &bad)
	}
	if len(bad) > 0 {
		return bad.Err()
	}
	if len(in.Readings) > 0 {
		t.typed(in, &bad)
	} else {
		t.fromBoat(in.Reading, in.SurroundedBy, in.AtReading, &bad)
	}
	if at != nil && len(in.Readings) == 0 {
		t.onlyAt(in, at, &bad)
	}
	newest := math.MinInt
	for _, p := range t.series.Points {
		newest = max(newest, p.Day)
	}
	var err error
	if t.series.Today = newest; in.Today != "" {
		if t.series.Today, err = day.Parse(in.Today); err != nil {
			bad.Add("/today", err.Error(), "year-month-day", "")
		}
	}
	if newest > t.series.Today {
		bad.Add("/today", "the newest reading is of "+day.Text(newest)+", after today", "the day of the newest reading, or later", "is a year or a month wrong?")
	}
	gauge := in.ReadingGauge
	if gauge == "" {
		gauge = of.Gauge
	}
	t.series.Accuracy = t.accuracy(gauge, &bad)
	t.dropVoid(in.Reading, &bad)
	if in.CarriedBy != "" {
		t.addBack(in)
	}
	t.lessSurroundings()
	t.limit(in, &bad)
	if len(bad) == 0 {
		return t.renewedSince(newest, in.Today)
	}
	return bad.Err()
}

// renewedSince lacks a reading of what was renewed or set after the newest one, and
// not after today.
func (t *follower) renewedSince(newest int, today string) error {
	for _, on := range t.series.Renewed {
		if on > newest && (today == "" || on <= t.series.Today) {
			return calc.Lacking{Input: "readings", What: fmt.Sprintf("%s: what it is of was renewed or set on %s, and nothing was read of it since", t.property.Title, day.Text(on)),
				Hint: "read it again: the readings before that tell nothing of it"}
		}
	}
	return nil
}

// side is on which side of its limit a reading must stay: as it was given, or
// as the boat says of its own readings.
func (t *follower) side(given, own string) string {
	if given != "" {
		return given
	}
	return own
}

// another is the quantity of another reading, which must be of that kind where
// one is named.
func (t *follower) another(where, name, kind string, bad *problem.List) *contract.Property {
	of, known := t.session.Boat.Describe(name)
	switch {
	case !known:
		bad.Add(where, fmt.Sprintf("the boat file has no reading %q that is one number", name), "a reading of the boat", "")
	case kind != "" && of.Kind.Name != kind:
		bad.Add(where, of.Title+" is not the same kind of quantity", "a reading of "+strings.ReplaceAll(kind, "-", " "), "")
	default:
		of.Property.Name = of.Name
		return &of.Property
	}
	return nil
}

func (t *follower) typed(in *Input, bad *problem.List) {
	for i, w := range in.Readings {
		where := "/readings/" + strconv.Itoa(i)
		on, err := day.Parse(w.Date)
		if err != nil {
			bad.Add(where+"/date", err.Error(), "year-month-day", "")
		}
		r, err := t.property.Kind.Parse(w.Value)
		if err != nil {
			contract.NotRead(bad, t.property, where+"/value", err)
		} else if p := t.property; p.Minimum != nil && r.SI < *p.Minimum || p.Maximum != nil && r.SI > *p.Maximum {
			bad.Add(where+"/value", p.Title+" "+w.Value+" cannot be", contract.AllowedRange(p), "")
		}
		beside := math.NaN()
		if t.sea != nil && t.sea.Name == "waterTemperature" {
			beside = float64(w.WaterTemperature)
		}
		if w.Beside != "" && t.sea != nil {
			other, err := t.sea.Kind.Parse(w.Beside)
			if err != nil {
				contract.NotRead(bad, t.sea, where+"/beside", err)
			}
			beside = other.SI
		}
		t.series.Points = append(t.series.Points, series.Point{Day: on, Time: timeOf(w.Time), Hours: float64(w.EngineHours) / 3600, Value: r.SI, Changed: w.Changed})
		t.read = append(t.read, gathered{text: w.Value, accuracy: r.Accuracy, beside: beside, air: math.NaN(), at: math.NaN(), baseline: w.Baseline})
		t.carried.entries = append(t.carried.entries, flow{at: float64(on) + timeOf(w.Time), hours: float64(w.EngineHours) / 3600, fluidHours: math.NaN(), added: float64(w.FluidAdded), changed: w.FluidChanged, sample: i})
	}
}

// fromBoat takes the dated readings of that name, and the events that begin a
// new run of it. The boat file was held against its schema before.
func (t *follower) fromBoat(name, beside, at string, bad *problem.List) {
	b := t.session.Boat
	if b == nil {
		return
	}
	others := func(name string) map[string]float64 {
		list := map[string]float64{}
		if name == "" {
			return list
		}
		for _, p := range b.Series(name) {
			list[strconv.Itoa(p.Index)] = p.SI
			if _, twice := list[p.Date]; !twice {
				list[p.Date] = p.SI // of another entry of that day
			}
		}
		return list
	}
	pick := func(list map[string]float64, e *boat.Entry) float64 {
		if v, has := list[strconv.Itoa(e.Index)]; has {
			return v
		}
		if v, has := list[e.Date]; has {
			return v
		}
		return math.NaN()
	}
	besides, ats := others(beside), others(at)
	sample := map[int]int{} // entry to point
	for _, r := range b.Series(name) {
		p := series.Point{Hours: math.NaN(), Day: dayOf(r.Date), Time: timeOf(r.Time), Changed: r.Changed(), Value: r.SI}
		if seconds, ok := r.EngineHours(); ok {
			p.Hours = seconds / 3600
		}
		sample[r.Index] = len(t.series.Points)
		t.series.Points = append(t.series.Points, p)
		t.read = append(t.read, gathered{text: r.Text, accuracy: r.Accuracy, beside: pick(besides, r.Entry), air: airOf(r.Entry), at: pick(ats, r.Entry), gauge: r.GaugeOf(name), baseline: r.Baseline(), where: "/boat" + r.Where})
	}
	for e := range b.Readings() {
		at, has := sample[e.Index]
		if !has {
			at = -1
		}
		t.carried.take(e, at)
	}
	for e := range b.Events() {
		if e.Begins(name) {
			t.series.Renewed = append(t.series.Renewed, dayOf(e.Date))
			t.works = append(t.works, work{dayOf(e.Date), e.What})
		}
	}
}

// airOf is the temperature of the air of an entry.
func airOf(e *boat.Entry) float64 {
	if si, ok := e.Number("airTemperature", "temperature"); ok {
		return si
	}
	return math.NaN()
}

// timeOf is a time of day, hour:minute, as a part of the day.
func timeOf(text string) float64 {
	hour, minute, _ := strings.Cut(text, ":")
	h, _ := strconv.Atoi(hour)
	m, _ := strconv.Atoi(minute)
	return (float64(h) + float64(m)/60) / 24
}

// onlyAt leaves the readings out that were taken while another one stood
// elsewhere.
func (t *follower) onlyAt(in *Input, at *contract.Property, bad *problem.List) {
	want := math.NaN()
	if in.AtValue != "" {
		r, err := at.Kind.Parse(in.AtValue)
		if err != nil {
			contract.NotRead(bad, at, "/atValue", err)
			return
		}
		want = r.SI
	} else {
		newest := math.Inf(-1)
		for i := range t.read {
			if when := float64(t.series.Points[i].Day) + t.series.Points[i].Time; when >= newest && !math.IsNaN(t.read[i].at) {
				newest, want = when, t.read[i].at
			}
		}
		if math.IsNaN(want) {
			bad.Add("/atReading", at.Title+" stands beside none of the readings", "a reading that was taken at the same time", "")
			return
		}
	}
	all := len(t.read)
	var points []series.Point
	var read []gathered
	moved := map[int]int{}
	for i := range t.read {
		if math.Abs(t.read[i].at-want) <= float64(in.AtWithin)*math.Abs(want) {
			moved[i] = len(points)
			points, read = append(points, t.series.Points[i]), append(read, t.read[i])
		}
	}
	t.series.Points, t.read = points, read
	t.carried.renumber(moved)
	t.notes = append(t.notes, fmt.Sprintf("%d of %d were read at %s %s ± %.3g %%", len(points), all, problem.MidSentence(at.Title), at.Shown.Print(want, t.session.Units), 100*float64(in.AtWithin)))
}

// lessSurroundings takes another reading of the same time off the readings.
// Temperatures of the run are brought to the warmest surroundings of the run,
// since what follows the sea is no wear; of all else the difference is
// followed. Where the other is not beside every reading, temperatures stand as
// read and the rest is left out.
func (t *follower) lessSurroundings() {
	if t.sea == nil {
		return
	}
	if !t.series.Shifted {
		if !slices.ContainsFunc(t.read, func(r gathered) bool { return !math.IsNaN(r.beside) }) {
			return // as read, which is said
		}
		t.lessOther = true
		var points []series.Point
		var read []gathered
		moved := map[int]int{}
		for i, p := range t.series.Points {
			if math.IsNaN(t.read[i].beside) {
				continue
			}
			p.Over = -t.read[i].beside
			p.Value += p.Over
			moved[i] = len(points)
			points, read = append(points, p), append(read, t.read[i])
		}
		if left := len(t.read) - len(read); left > 0 {
			t.notes = append(t.notes, fmt.Sprintf("%d left out, without “%s” beside them", left, t.sea.Title))
		}
		t.notes = append(t.notes, "less “"+t.sea.Title+"” of the same time")
		t.series.Points, t.read = points, read
		t.carried.renumber(moved)
		t.series.Accuracy *= math.Sqrt2
		return
	}
	run := series.Run(&t.series)
	t.warmest = math.Inf(-1)
	for _, place := range run {
		if t.warmest = max(t.warmest, t.read[place].beside); math.IsNaN(t.warmest) {
			return // max gives NaN where one is
		}
	}
	if len(run) == 0 {
		t.warmest = math.NaN()
		return
	}
	for i := range t.series.Points { // those of earlier runs too, where they can be
		if p := &t.series.Points[i]; !math.IsNaN(t.read[i].beside) {
			p.Over = t.warmest - t.read[i].beside
			p.Value += p.Over
		}
	}
	t.series.Accuracy *= math.Sqrt2 // two thermometers
}

// accuracy is the half-width of one reading: as written with the readings, or
// that of the gauges, of several the coarsest, and never less than half a step
// of the digits that were read.
func (t *follower) accuracy(usual string, bad *problem.List) float64 {
	widest := t.step() / 2
	for i := range t.read {
		r := &t.read[i]
		a := r.accuracy
		if a == 0 {
			a = t.ofGauge(r, usual, t.series.Points[i].Value, bad)
		}
		widest = max(widest, a)
	}
	return widest
}

// ofGauge is the accuracy of a reading by what it was read with.
func (t *follower) ofGauge(r *gathered, usual string, value float64, bad *problem.List) float64 {
	gauge, where := r.gauge, r.where
	if gauge == "" {
		gauge, where = usual, "/readingGauge"
	}
	if gauge == "" {
		return 0
	}
	row := t.session.Book.Table(inputs.Gauges).Find(gauge, nil)
	if row == nil {
		return 0
	}
	a, err := t.property.Kind.ParseAccuracy(row.Values.Of("accuracy").Text, value)
	if row.Values.Of("shape").Text == spread.Counted.String() {
		t.series.Counted, t.series.CountBelow = max(t.series.Counted, a), spread.CountBelow
	}
	if err != nil && !slices.ContainsFunc(*bad, func(p problem.Problem) bool { return p.Where == where }) {
		bad.Add(where, t.property.Title+" cannot be read with a "+row.Name, "a gauge for a "+strings.ReplaceAll(t.property.Kind.Name, "-", " "), "choose the gauge that was used")
	}
	return a
}

// dayOf reads a date that a schema has let through.
func dayOf(date string) int {
	d, _ := day.Parse(date)
	return d
}
