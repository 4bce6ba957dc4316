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
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// gathered is one reading as it was written, beside its place in the series.
type gathered struct {
	text     string  // of its number, for the digits that were read
	accuracy float64 // written with it; 0 for none
	sea      float64 // temperature of the sea at the time; NaN: not written down
}

// gather reads the series, the limit and the gauge.
func (t *follower) gather(in *Input) error {
	form, err := boat.Contract()
	if err != nil {
		return err
	}
	reading := form.Root.Child("readings").Items
	t.property, t.sea = reading.Child(in.Reading), reading.Child(in.SurroundedBy)
	if t.property == nil || t.property.Kind == nil {
		return problem.List{{Where: "/reading", What: fmt.Sprintf("the boat file has no reading %q that is one number", in.Reading), Allowed: "a reading of the list", Hint: ""}}.Err()
	}
	t.series = series.Series{Limit: math.NaN(), Rising: in.LimitSide != "least", Shifted: t.property.Kind.Name == "temperature"}
	var bad problem.List
	if len(in.Readings) > 0 {
		t.typed(in.Readings, &bad)
	} else {
		t.fromBoat(in.Reading, &bad)
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
	t.toWarmestSea()
	t.limit(in, &bad)
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
		t.read = append(t.read, gathered{w.Value, r.Accuracy, float64(w.WaterTemperature)})
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
		g := gathered{text: fmt.Sprint(raw), sea: math.NaN()}
		var err error
		if p.Value, g.accuracy, err = calc.Numeric(t.property, raw); err != nil {
			bad.Add(fmt.Sprintf("/boat/readings/%d/%s", e.Index, name), err.Error(), "", "")
		}
		if t.sea != nil {
			if raw, has := e.Value(t.sea.Name); has {
				if si, _, err := calc.Numeric(t.sea, raw); err == nil {
					g.sea = si
				}
			}
		}
		if seconds, ok := e.EngineHours(); ok {
			p.Hours = seconds / 3600
		}
		t.series.Points, t.read = append(t.series.Points, p), append(t.read, g)
	}
	for e := range t.session.Boat.Events() {
		if e.Renews == name {
			t.series.Renewed = append(t.series.Renewed, dayOf(e.Date))
		}
	}
}

// toWarmestSea brings every reading of the run to the warmest sea of the run:
// what follows the sea is no wear. It takes the temperature of the sea beside
// each of them.
func (t *follower) toWarmestSea() {
	if t.sea == nil {
		return
	}
	run := series.Run(&t.series)
	t.warmest = math.Inf(-1)
	for _, place := range run {
		if t.warmest = max(t.warmest, t.read[place].sea); math.IsNaN(t.warmest) {
			return // max gives NaN where one is
		}
	}
	if len(run) == 0 {
		t.warmest = math.NaN()
		return
	}
	for _, place := range run {
		p := &t.series.Points[place]
		p.Over = t.warmest - t.read[place].sea
		p.Value += p.Over
	}
	t.series.Accuracy *= math.Sqrt2 // two thermometers
}

// limit reads what the reading is held against: as typed, or as the boat file
// has it for this reading. A difference is a rise above the sea.
func (t *follower) limit(in *Input, bad *problem.List) {
	text, from := in.Limit, ""
	if text == "" {
		text, from = t.limitOfBoat(in.Reading)
	}
	if text == "" {
		return
	}
	blame := "/limit"
	if from != "" {
		blame = "/boat" + from
	}
	kind := t.property.Kind
	if t.series.Shifted {
		difference, _ := quantity.Lookup("temperature-difference")
		if r, err := difference.Parse(text); err == nil && r.Unit == "K" && r.SI < 150 {
			if math.IsNaN(t.warmest) {
				bad.Add(blame, "a rise above the sea is the limit, and not every reading has the temperature of the sea beside it", "a temperature such as 60 °C, or the water temperature beside each reading", "")
				return
			}
			t.series.Limit = t.warmest + r.SI
			t.out.LimitHeld = t.show(t.series.Limit) + ", " + text + " above that sea"
			return
		}
	}
	r, err := kind.Parse(text)
	if err != nil {
		contract.Refuse(bad, t.property, blame, t.property.Title+": "+err.Error(), "", "")
		return
	}
	t.series.Limit = r.SI
	t.out.LimitHeld = t.show(r.SI)
	if from != "" {
		t.out.LimitHeld += ", from the boat file"
	}
}

// limitOfBoat is the limit that the boat file gives for a reading, and where.
func (t *follower) limitOfBoat(reading string) (text, where string) {
	list, _, _, _ := t.session.Boat.Find("/follow/limits")
	entries, _ := list.([]any)
	for i, e := range entries {
		if m, _ := e.(map[string]any); m["reading"] == reading {
			text, _ = m["limit"].(string)
			return text, fmt.Sprintf("/follow/limits/%d/limit", i)
		}
	}
	if followed, _, _, _ := t.session.Boat.Find("/follow/reading"); followed == reading {
		limit, _, _, _ := t.session.Boat.Find("/follow/limit")
		text, _ = limit.(string)
		return text, "/follow/limit"
	}
	return "", ""
}

// accuracy is the half-width of one reading: as written with the readings, or
// that of the gauge at the newest one, and never less than half a step of the
// digits that were read.
func (t *follower) accuracy(gauge string, bad *problem.List) float64 {
	written := 0.0
	for i := range t.read {
		written = max(written, t.read[i].accuracy)
	}
	floor := t.step() / 2
	if written > 0 {
		return max(written, floor)
	}
	if gauge == "" || len(t.series.Points) == 0 {
		return floor
	}
	row := t.session.Book.Table(calc.Gauges).Find(gauge, func(string) (float64, string, bool) { return 0, "", false })
	if row == nil {
		return floor
	}
	a, err := t.property.Kind.ParseAccuracy(row.Values.Of("accuracy").Text, t.series.Points[len(t.series.Points)-1].Value)
	if err != nil {
		bad.Add("/readingGauge", t.property.Title+" cannot be read with a "+row.Name, "a gauge for a "+strings.ReplaceAll(t.property.Kind.Name, "-", " "), "choose the gauge that was used")
	}
	return max(a, floor)
}

// dayOf reads a date that a schema has let through.
func dayOf(date string) int {
	d, _ := day.Parse(date)
	return d
}
