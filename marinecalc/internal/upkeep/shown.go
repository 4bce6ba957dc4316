package upkeep

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/upkeep/due"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

// farthest is the farthest ahead, in days, that a date is given for.
const farthest = 3652

// shown says when each way of looking for metal would first have shown the wear
// that was measured, or will.
func (k *keeper) shown() {
	k.out.WearRate = quantity.Ratio(math.NaN())
	out := k.session.Earlier("wear-debris")
	if out == nil || math.IsNaN(k.use.Hours) {
		return
	}
	share, service := out.Sheet.Result("debrisShare"), out.Sheet.Input("serviceTime")
	if share == nil || share.SI == nil || service == nil || service.SI == nil || !(*share.SI > 0) || !(*service.SI > 0) {
		return
	}
	hours := *service.SI / secondsPerHour
	rate := *share.SI / hours
	k.out.WearRate = quantity.Ratio(100 * rate)
	metal := ""
	if i := out.Sheet.Input("metal"); i != nil {
		metal = i.Word
	}
	iron := metal == "" || strings.Contains(metal, "steel") || strings.Contains(metal, "iron")
	type line struct {
		ShownLine
		at float64
	}
	var lines []line
	for _, row := range k.session.Book.Table("debris-methods").Rows.All() {
		l := line{ShownLine{Method: row.Name, Remark: row.Bracket}, math.Inf(1)}
		if row.Values.Of("of").Text == "iron" && !iron {
			l.First = "never: it does not see this metal"
		} else {
			l.First, l.After, l.at = k.first(&row, rate, k.use.Hours-hours)
		}
		lines = append(lines, l)
	}
	sort.SliceStable(lines, func(i, j int) bool { return lines[i].at < lines[j].at })
	for i := range min(len(lines), mostMethods) {
		k.out.ShownBy[i] = lines[i].ShownLine
	}
}

// first is the day on which a method first would have told, with the earliest
// and latest of its bracket; and after how many hours on one fluid it does.
func (k *keeper) first(row *rules.Row, rate, from float64) (words, after string, at float64) {
	t, s := row.Values.Of("threshold"), row.Values.Of("sees")
	early, usual, late := due.Method{Threshold: t.Low, Sees: s.High}, due.Method{Threshold: t.SI, Sees: s.SI}, due.Method{Threshold: t.High, Sees: s.Low}
	after = fmt.Sprintf("%s h (%s to %s h)", figure(usual.ShowsAfter(rate)), figure(early.ShowsAfter(rate)), figure(late.ShowsAfter(rate)))
	changes := k.fluidChanges()
	on := func(m due.Method) (string, float64) {
		hours := m.FirstShown(rate, from, changes)
		d := k.log.DayOf(hours, k.use.PerDay)
		switch {
		case math.IsNaN(d):
			return notKnown, hours
		case d < float64(k.log[0].Day):
			return "at " + figure(hours) + onMeter, hours
		case d > float64(k.today+farthest):
			return "not in ten years", hours
		}
		return day.Text(int(math.Floor(d))), hours
	}
	first, hours := on(usual)
	low, _ := on(early)
	high, _ := on(late)
	return between(first, low, high), after, hours
}

// between writes a day, or hours on the meter, with the earliest and the latest
// where they tell more.
func between(at, low, high string) string {
	from, metered := strings.CutSuffix(low, onMeter)
	switch {
	case low == at && high == at || low == notKnown || high == notKnown:
		return at
	case metered && strings.HasSuffix(high, onMeter):
		return at + " (" + strings.TrimPrefix(from, "at ") + " to " + strings.TrimPrefix(strings.TrimSuffix(high, onMeter), "at ") + " h)"
	case metered:
		low = strings.TrimPrefix(low, "at ")
	}
	return at + " (from " + low + " to " + high + ")"
}

// How hours and what cannot be told are written.
const onMeter, notKnown = " h on the meter", "not known"

// figure writes hours to two figures.
func figure(hours float64) string {
	if hours >= 100 {
		step := math.Pow(10, math.Floor(math.Log10(hours))-1)
		return fmt.Sprintf("%.0f", math.Round(hours/step)*step)
	}
	return fmt.Sprintf("%.2g", hours)
}

// fluidChanges are the hours on the meter at which the fluid was changed, in
// order.
func (k *keeper) fluidChanges() []float64 {
	var list []float64
	add := func(date string, seconds float64) {
		if d, err := day.Parse(date); err == nil && d <= k.today {
			if hours := k.metered(d, seconds); !math.IsNaN(hours) {
				list = append(list, hours)
			}
		}
	}
	for _, d := range k.in.Done {
		if d.Item == fluidChange {
			add(d.Date, float64(d.EngineHours))
		}
	}
	for e := range k.session.Boat.Readings() {
		if changed, _ := e.Value("fluidChanged"); changed == true {
			seconds := math.NaN()
			if read, ok := e.EngineHours(); ok {
				seconds = read
			}
			add(e.Date, seconds)
		}
	}
	slices.Sort(list)
	return list
}

// fluidChange is the row of care that changes the gearbox fluid.
const fluidChange = "fluid-change"
