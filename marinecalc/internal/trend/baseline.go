// The boat beside itself: when all was well, and before and after work on it.

package trend

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/trend/series"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// work is something that was done to the part.
type work struct {
	day  int
	what string
}

// worse is by how much a reading is nearer to its limit than another.
func (t *follower) worse(value, than float64) float64 {
	if t.series.Rising {
		return value - than
	}
	return than - value
}

// least is what a reading must not fall under, by another limit than that which
// it is followed to; NaN for none.
func (t *follower) least(reading string) float64 {
	for _, row := range t.session.Book.Table("trend-readings").Rows.All() {
		if row.Pick != reading || t.session.Boat.FaceSealed() { // which needs no drips
			continue
		}
		for _, limit := range strings.Fields(row.Values.Of("floor").Text) {
			if l, ok := t.session.LimitOf("gland-heat", limit); ok {
				return l.SI
			}
		}
	}
	return math.NaN()
}

// newest is the place of the newest reading of the run.
func (t *follower) newest() int { return t.found.Run[len(t.found.Run)-1] }

// baseline holds the newest reading against those that were read while all was
// well: their mean, and the 95 % prediction interval of one more of them,
// t·s·√(1 + 1/n), s at least that of the gauge (ISO 16269-8:2004, from memory).
// Of one or two alone the gauge says how far apart two readings may be.
func (t *follower) baseline() {
	out := &t.out
	out.OffBaseline = quantity.Ratio(math.NaN())
	var well []float64
	newest := t.newest()
	for i := range t.read {
		if t.read[i].baseline && i != newest {
			well = append(well, t.series.Points[i].Value)
		}
	}
	if len(well) == 0 || t.doubted == voided || t.carried.fillings != nil { // what the fluid carries grows by itself: its pace is told instead
		return
	}
	mean, squares := 0.0, 0.0
	for _, v := range well {
		mean += v / float64(len(well))
	}
	for _, v := range well {
		squares += (v - mean) * (v - mean)
	}
	n := float64(len(well))
	s, factor := t.series.Accuracy/math.Sqrt(3), 1.96
	if len(well) > 2 {
		s, factor = max(s, math.Sqrt(squares/(n-1))), series.Student(0.975, len(well)-1)
	}
	half := factor * s * math.Sqrt(1+1/n)
	off := t.worse(t.series.Points[newest].Value, mean)
	out.OffBaseline = quantity.Ratio(math.Inf(1))
	switch {
	case math.Abs(off) <= 1e-9*math.Abs(mean):
		out.OffBaseline = 0
	case half > 0:
		out.OffBaseline = quantity.Ratio(digits(min(off/half, farOff), 3))
	default:
		out.OffBaseline = quantity.Ratio(math.Copysign(farOff, off))
	}
	says := "as when all was well"
	switch {
	case out.OffBaseline > 1:
		says = "worse than when all was well by more than the readings of then explain"
	case out.OffBaseline < -1:
		says = "better than when all was well"
	}
	out.BaselineSays = fmt.Sprintf("%s; all well: %s, as the mean of %s, so that up to %s is as ever", says, t.showTo(mean, half), counted(len(well), "reading"), t.showTo(mean+math.Copysign(half, t.worse(1, 0)), half))
	if !t.series.Rising {
		out.BaselineSays = strings.Replace(out.BaselineSays, "up to", "down to", 1)
	}
}

// digits rounds to so many significant ones.
func digits(x float64, n int) float64 {
	text := strconv.FormatFloat(x, 'g', n, 64)
	rounded, _ := strconv.ParseFloat(text, 64)
	return rounded
}

func counted(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// held tells whether the last work on the part held: how much of what it
// gained is lost again. Before it counts the mean of the last three readings at
// most, after it the first one.
func (t *follower) held() {
	out, points := &t.out, t.series.Points
	out.LostAgain, out.ChanceHeld = quantity.Ratio(math.NaN()), quantity.Ratio(math.NaN())
	run := t.found.Run
	var before []int
	for i := range points {
		if earlier(&points[i], &points[run[0]]) {
			before = append(before, i)
		}
	}
	if len(before) == 0 || len(run) < 2 || t.carried.fillings != nil {
		return
	}
	slices.SortStableFunc(before, func(a, b int) int {
		if earlier(&points[a], &points[b]) {
			return -1
		}
		return 1
	})
	before = before[max(0, len(before)-3):]
	old := 0.0
	for _, i := range before {
		old += points[i].Value / float64(len(before))
	}
	first, newest := points[run[0]].Value, points[t.newest()].Value
	sigma := max(t.series.Accuracy/math.Sqrt(3), t.found.Fit.Scatter)
	n := float64(len(before))
	gained := t.worse(old, first)
	done := "The work before " + day.Text(points[run[0]].Day)
	for _, w := range t.works {
		if w.day <= points[run[0]].Day && w.day >= points[before[len(before)-1]].Day {
			done = problem.Capital(w.what) + " (" + day.Text(w.day) + ")"
		}
	}
	told := fmt.Sprintf("%s: from %s before to %s after it, now %s", done, t.show(old), t.show(first), t.show(newest))
	switch reach := 1.96 * sigma * math.Sqrt(1+1/n); {
	case gained < -reach && old < t.floor:
		out.HeldSays = told + ". Before it there was less than is needed, at least " + t.show(t.floor) + ": nearer to the limit is where it belongs."
	case gained < -reach:
		out.HeldSays = told + ". After it the reading stood nearer to its limit than before: no cure, unless it was meant to be brought there."
	case gained <= reach:
		out.HeldSays = told + ". Whether it moved anything cannot be told: the difference is no more than the readings scatter."
	default:
		lost := t.worse(newest, first) / gained
		out.LostAgain = quantity.Ratio(digits(lost, 2))
		// newest − first against half of what was gained, each with its scatter
		width := sigma * math.Sqrt(1+0.25+0.25/n)
		out.ChanceHeld = quantity.Ratio(0.5 * math.Erfc((lost-0.5)*gained/width/math.Sqrt2))
		switch {
		case out.ChanceHeld >= 0.95 && lost <= 0:
			out.HeldSays = told + ". It holds, and nothing is lost again."
		case out.ChanceHeld >= 0.95:
			out.HeldSays = told + fmt.Sprintf(". It holds: %.0f %% of what it gained is lost again.", 100*lost)
		case out.ChanceHeld <= 0.05:
			out.HeldSays = told + fmt.Sprintf(". It did not hold: %.0f %% of what it gained is lost again.", 100*lost)
		default:
			out.HeldSays = told + ". Whether it holds cannot be told yet."
		}
	}
	t.followUp(old, gained, before)
}

func earlier(a, b *series.Point) bool { return float64(a.Day)+a.Time < float64(b.Day)+b.Time }

// followUp lists the stages: before the work, right after it, after the first
// ten hours of running or a fortnight, and newest.
func (t *follower) followUp(old, gained float64, before []int) {
	points, run := t.series.Points, t.found.Run
	lost := func(i int) string {
		if !(math.Abs(gained) > 0) {
			return ""
		}
		return fmt.Sprintf("%.0f %%", 100*t.worse(points[i].Value, points[run[0]].Value)/gained)
	}
	list := []stage{{When: "before, up to " + day.Text(points[before[len(before)-1]].Day), Reading: t.show(old)},
		{When: "after it, " + day.Text(points[run[0]].Day), Reading: t.show(points[run[0]].Value), Lost: "0 %"}}
	first := &points[run[0]]
	since := func(p *series.Point) string {
		if h := p.Hours - first.Hours; h > 0 {
			return fmt.Sprintf("%.0f h later, ", h)
		}
		return fmt.Sprintf("%d days later, ", p.Day-first.Day)
	}
	for _, i := range run[1:max(1, len(run)-1)] {
		if p := &points[i]; p.Hours-first.Hours >= 10 || math.IsNaN(p.Hours-first.Hours) && p.Day-first.Day >= 14 {
			list = append(list, stage{When: since(p) + day.Text(p.Day), Reading: t.show(p.Value), Lost: lost(i)})
			break
		}
	}
	last := t.newest()
	list = append(list, stage{When: since(&points[last]) + day.Text(points[last].Day), Reading: t.show(points[last].Value), Lost: lost(last)})
	copy(t.out.FollowUp[:], list)
}

// showTo is [follower.show] of what is known to ± half.
func (t *follower) showTo(si, half float64) string {
	return t.property.Shown.PrintTo(si, half, t.session.Units)
}

// roughly is what a guessed date is worth: its month, or so many years ahead its year.
func roughly(date string, ahead float64) string {
	d, err := time.Parse(time.DateOnly, date)
	switch {
	case err != nil:
		return date
	case ahead > 3*365:
		return d.Format("2006")
	}
	return d.Format("January 2006")
}
