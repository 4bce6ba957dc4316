package series

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
)

// Student's distribution on both sides of nought against gonum's, and the chance
// of falling short by it: the line stands so many half-widths off the level.
func TestSharesOnBothSides(t *testing.T) {
	for _, freedom := range []int{1, 2, 3, 7, 30} {
		for _, at := range []float64{-40, -2.5, -0.3, 0, 0.3, 2.5, 40} {
			want := distuv.StudentsT{Sigma: 1, Nu: float64(freedom)}.CDF(at)
			parttest.Near(t, "share", studentShare(at, freedom), want, 1e-9)
		}
	}
	if studentShare(math.NaN(), 3) != 0.5 {
		t.Error("of nothing known no half is told")
	}
	r := rand.New(rand.NewPCG(44, 3))
	for range 100 {
		f, x, _ := randomLine(r)
		at := x[len(x)-1] + 20
		level := f.At(at) + 3*(r.Float64()-0.5)*f.Half(at)
		want := distuv.StudentsT{Sigma: 1, Nu: float64(f.freedom)}.CDF((level - f.At(at)) * f.Factor / f.Half(at))
		parttest.Near(t, "rising", f.short(level, at, true), want, 1e-6)
		parttest.Near(t, "falling", f.short(level, at, false), 1-want, 1e-6)
	}
}

// Readings all alike, of a gauge without error, have no band: a level above is
// surely not reached, one below surely is, and at the level it is a toss. Of a
// scatter that nobody knows it always is, and the level is met at once or never.
func TestLineWithoutABand(t *testing.T) {
	f := Lay([]float64{0, 1, 2, 3}, []float64{5, 5, 5, 5}, 0)
	for level, want := range map[float64]float64{5.5: 1, 5.001: 1, 5: 0.5, 4.999: 0, 4: 0} {
		if got := f.short(level, 10, true); got != want {
			t.Errorf("rising to %g: %g, want %g", level, got, want)
		}
		if got := f.short(level, 10, false); got != 1-want {
			t.Errorf("falling to %g: %g, want %g", level, got, 1-want)
		}
	}
	f.Factor = math.Inf(1)
	if got := f.short(9, 10, true); got != 0.5 {
		t.Errorf("of an unknown scatter: %g", got)
	}
	f.Slope = 1
	if at, earliest, latest := f.Reaches(20, 3, true); at != 16.5 || earliest != 3 || !math.IsInf(latest, 1) {
		t.Errorf("of an unknown scatter: %g, from %g to %g", at, earliest, latest)
	}
	// Three readings leave one degree of freedom: 12.706 of the tables.
	f = Lay([]float64{0, 1, 2}, []float64{5, 6.5, 7}, 0)
	parttest.Near(t, "factor", f.Factor, 12.706, 0.001)
	// On a line drawn exactly the scatter is the gauge's own, of even chance
	// over its accuracy: a/√3 (JCGM 100:2008, 4.3.7), of the curves too.
	x, y := []float64{0, 1, 2, 3, 4}, []float64{1, 2, 3, 4, 5}
	parttest.Within(t, "scatter of the line", Lay(x, y, 0.6).Scatter, 0.6/math.Sqrt(3), 1e-12)
	parttest.Within(t, "scatter of the straight curve", layCurves(x, y, 0.6).of[0].scatter, 0.6/math.Sqrt(3), 1e-12)
}

// Whether millimetres or microns are written down changes no chance, of
// readings that scatter and of such as lie on a line.
func TestCurvesDoNotKnowTheUnit(t *testing.T) {
	for _, rough := range []float64{0, 0.1} {
		var x, y, small []float64
		for i := range 8 {
			x, y = append(x, float64(i)), append(y, 3+0.5*float64(i)+rough*float64(i%3))
			small = append(small, 1e-15*y[i])
		}
		a, b := layCurves(x, y, 0), layCurves(x, small, 0)
		for _, level := range []float64{6.4, 6.5, 6.6, 7} {
			parttest.Near(t, "below", b.below(1e-15*level, 7), a.below(level, 7), 0.001)
		}
		parttest.Near(t, "bending", b.bending(true), a.bending(true), 1e-9)
		bent := 0.0 // every curve but the straight one, of readings that rise
		for _, f := range a.of[1:] {
			bent += f.weight
		}
		parttest.Near(t, "bent toward a limit above", a.bending(true), bent, 1e-12)
		parttest.Near(t, "bent toward one below", a.bending(false), 0, 0)
	}
	flat := layCurves([]float64{0, 1, 2, 3, 4}, []float64{2, 2, 2, 2, 2}, 0.1)
	if flat.bending(true) != 0 || flat.bending(false) != 0 {
		t.Errorf("readings all alike bend by %g", flat.bending(true))
	}
}

// The newest reading is so many half-widths of the others' band off their line;
// of three readings two are no line, and of alike ones a last digit is nothing.
func TestDeviationByItsDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for range 50 {
		_, x, y := randomLine(r)
		n := len(x) - 1
		if n < 3 {
			continue
		}
		before := Lay(x[:n], y[:n], 0)
		parttest.Within(t, "deviation", deviation(x, y, 0), math.Abs(y[n]-before.At(x[n]))/before.Half(x[n]), 1e-9)
	}
	if d := deviation([]float64{0, 1, 2}, []float64{1, 2, 3}, 0.1); !math.IsNaN(d) {
		t.Errorf("of three readings: %g", d)
	}
	if d := deviation([]float64{1, 1, 1, 2}, []float64{1, 2, 3, 4}, 0.1); !math.IsNaN(d) {
		t.Errorf("all but one of one day: %g", d)
	}
	if d := deviation([]float64{0, 1, 2, 3}, []float64{1e6, 1e6, 1e6, 1e6 + 5e-7}, 0); d != 0 {
		t.Errorf("off by the last digit: %g", d)
	}
	if d := deviation([]float64{0, 1, 2, 3}, []float64{1e6, 1e6, 1e6, 1e6 + 5e-5}, 0); !(d > 1) {
		t.Errorf("off by more than that: %g", d)
	}
}

// Readings of one day stand in the order of their time; today's place is that of
// today's newest reading; a reading of a coming day moves it nowhere.
func TestPlacesOnTheAxis(t *testing.T) {
	s := lineOf([]int{0, 10, 20, 30, 30}, func(d int) float64 { return float64(d) / 10 })
	s.Points[3].Time, s.Points[4].Time, s.Points[3].Value = 0.75, 0.25, 3.05
	f := follow(t, s)
	if f.Run[3] != 4 || f.Run[4] != 3 || f.Place != 30.75 {
		t.Errorf("run %v, today at %g", f.Run, f.Place)
	}
	for i := range s.Points {
		s.Points[i].Hours = 100 + 2*s.Points[i].at()
	}
	for today, want := range map[int]float64{20: 161.5, 30: 161.5, 31: 162, 40: 180} {
		s.Today = today
		if f = follow(t, s); math.Abs(f.Place-want) > 1e-9 {
			t.Errorf("today %d: at %g h, want %g", today, f.Place, want)
		}
	}
	// Two meter readings tell how much she is run.
	s = lineOf([]int{0, 10, 20, 30}, func(d int) float64 { return float64(d) / 10 })
	s.Points[0].Hours, s.Points[3].Hours = 100, 160
	if f = follow(t, s); f.ByHours || f.HoursPerDay != 2 {
		t.Errorf("by hours %v, %g a day", f.ByHours, f.HoursPerDay)
	}
}

// A chance of half and the ends of 95 % are met where they say, by the bent
// lines where the pace grows and by the band where it does not.
func TestWhenByItsChance(t *testing.T) {
	s := lineOf([]int{0, 14, 28, 42, 56, 70}, func(d int) float64 { return math.Round(math.Exp2(float64(d) / 14)) })
	s.Limit, s.Accuracy = 60, 1
	f := follow(t, s)
	parttest.Near(t, "expected", f.bent.short(60, f.Place+f.Days.Expected, true), 0.5, 1e-6)
	parttest.Near(t, "latest", f.bent.short(60, f.Place+f.Days.Latest, true), 0.025, 1e-6)
	low, now, high := f.At(f.Place)
	for level, want := range map[float64]float64{low: 0.025, now: 0.5, high: 0.975} {
		parttest.Near(t, "level now", f.bent.below(level, f.Place), want, 1e-6)
	}
	s = lineOf(weekly, func(d int) float64 { return 1 + float64(d)/10 })
	s.Accuracy = 0.1
	f = follow(t, s)
	low, now, high = f.At(50)
	parttest.Near(t, "line", now, 6, 1e-9)
	parttest.Near(t, "below it", now-low, f.Fit.Half(50), 1e-9)
	parttest.Near(t, "above it", high-now, f.Fit.Half(50), 1e-9)
}

// What was reached leaves no time; a line over the limit is past it though the
// newest reading is not; half a day to go is still toward it.
func TestOutlooksAtTheirEdges(t *testing.T) {
	s := lineOf(weekly, func(d int) float64 { return 1 + float64(d)/10 })
	s.Limit, s.Accuracy = 4.5, 0.1
	if f := follow(t, s); f.Outlook != Reached || f.SteadyDays != 0 || f.SureDays != 0 {
		t.Errorf("reached: %+v", f)
	}
	s.Limit, s.Points[5].Value = 4.45, 4.3
	if f := follow(t, s); f.Outlook != Passed || f.Days.Expected != 0 {
		t.Errorf("the line stands at %g: %+v", f.Fit.At(f.Place), f.Outlook)
	}
	s = lineOf(weekly, func(d int) float64 { return 1 + float64(d)/10 })
	s.Limit, s.Accuracy = 4.55, 0.1
	if f := follow(t, s); f.Outlook != Toward || math.Abs(f.Days.Expected-0.5) > 1e-9 {
		t.Errorf("half a day to go: %v in %g", f.Outlook, f.Days.Expected)
	}
	// A thousand is met to a billionth of it, no nearer and no farther.
	for off, reached := range map[float64]bool{5e-7: true, 1.05e-6: false, 5e-6: false} {
		s := lineOf(weekly, func(d int) float64 { return 900 })
		s.Points[5].Value, s.Limit = 1000-off, 1000
		if f := follow(t, s); (f.Outlook == Reached) != reached {
			t.Errorf("%g short of 1000: %v", off, f.Outlook)
		}
	}
}

// An engine that stands wears nothing by its hours: no days are told, and over
// days no hours.
func TestAnEngineThatStands(t *testing.T) {
	s := lineOf([]int{0, 10, 20, 30, 40, 50}, func(d int) float64 { return 1 + float64(d)/10 })
	for i := range s.Points {
		s.Points[i].Hours = 100
	}
	s.Limit, s.Accuracy = 11, 0.1
	f := follow(t, s)
	if f.ByHours || math.IsNaN(f.Days.Expected) || !math.IsNaN(f.Hours.Expected) {
		t.Errorf("by hours %v, %g days, %g hours", f.ByHours, f.Days.Expected, f.Hours.Expected)
	}
	s.Points[5].Hours, s.Points[5].Value = 100.5, 1.5
	f = follow(t, s)
	if !f.ByHours || f.HoursPerDay != 0 || !math.IsNaN(f.Days.Expected) {
		t.Errorf("by hours %v, %g a day, %g days", f.ByHours, f.HoursPerDay, f.Days.Expected)
	}
	// As long by hours as by days.
	s = lineOf(weekly, func(d int) float64 { return 3 + 0.05*float64(d) + 0.02*float64(d%2) })
	s.Limit = 8
	days := follow(t, s)
	until := days.Days.Expected
	byDays := days.Lasts(&s, until)
	for i := range s.Points {
		s.Points[i].Hours = 100 + 5*float64(s.Points[i].Day)
	}
	hours := follow(t, s)
	parttest.Near(t, "lasts", hours.Lasts(&s, until), byDays, 1e-6)
	if !(byDays > 0.01 && byDays < 0.99) {
		t.Errorf("%g days tell nothing: %g", until, byDays)
	}
}

// flags are those of a trend, by place.
func flags(f Trend) map[int][]Kind {
	all := map[int][]Kind{}
	last := -1
	for _, g := range f.Flags {
		all[g.Place] = append(all[g.Place], g.Kind)
		if g.Place < last {
			all[-1] = append(all[-1], "not in order")
		}
		last = g.Place
	}
	return all
}

// The first two readings are looked at like all others; readings of one moment
// are not out of order, and a meter that stood still did not run backward.
func TestFlagsAtTheirEdges(t *testing.T) {
	s := lineOf([]int{7, 0, 14, 21, 28, 28}, func(d int) float64 { return 10 + 0.1*float64(d) })
	s.Accuracy = 0.5
	for i, h := range []float64{110, 110, 120, 130, 140, 140} {
		s.Points[i].Hours = h
	}
	got := flags(follow(t, s))
	if len(got) != 2 || len(got[1]) != 1 || got[1][0] != OutOfOrder || len(got[5]) != 1 || got[5][0] != SameDate {
		t.Errorf("%v", got)
	}
	s = lineOf([]int{0, 0, 7, 14, 21}, func(d int) float64 { return 10 })
	s.Accuracy = 0.5
	if got = flags(follow(t, s)); len(got) != 1 || len(got[1]) != 1 || got[1][0] != SameDate {
		t.Errorf("twice on the first day: %v", got)
	}
	// In the order of the readings, whatever was found first.
	s = lineOf(weekly, func(d int) float64 { return 10 + 0.02*float64(d%3) })
	s.Accuracy, s.Today, s.Points[1].Value, s.Points[4].Day = 0.5, 30, 254, 21
	if got = flags(follow(t, s)); len(got[-1]) > 0 || len(got) != 3 {
		t.Errorf("%v", got)
	}
}

// Four readings are too few for a band, and no line through three of them is held
// against the fourth; from five on what is off the band is told. Where the others
// are all of one day nothing is told.
func TestSlipsOfFewReadings(t *testing.T) {
	of := func(values ...float64) map[int][]Kind {
		var days []int
		for i := range values {
			days = append(days, 10*i)
		}
		s := lineOf(days, func(d int) float64 { return values[d/10] })
		s.Accuracy = 0.05
		return flags(follow(t, s))
	}
	if got := of(10, 10.1, 9.9, 30); len(got) != 0 {
		t.Errorf("of four: %v", got)
	}
	if got := of(10, 10.1, 9.9, 10, 30); len(got[4]) != 1 || got[4][0] != OutsideBand {
		t.Errorf("of five: %v", got)
	}
	if got := of(10, 10.1, 9.9, 254); len(got[3]) != 1 || got[3][0] != Slip25 {
		t.Errorf("a slip among four: %v", got)
	}
	if got := of(1, 2, 3, 4*25.4); len(got[3]) != 0 { // 50 times the middle of the others
		t.Errorf("of four that rise: %v", got)
	}
	s := lineOf([]int{5, 5, 10}, func(d int) float64 { return float64(d) })
	for place, kinds := range flags(follow(t, s)) {
		for _, k := range kinds {
			if k != SameDate {
				t.Errorf("reading %d of two days: %q", place, k)
			}
		}
	}
	// A third more or less than the factor, to half a thousandth.
	for factor, slip := range map[float64]bool{1349.5: true, 1350.5: false, 1 / 1.3495 * 1000: true, 1 / 1.3505 * 1000: false} {
		got := of(10, 10, 10, 10, 10, 10, 10, 10*factor)
		if (got[7][0] == Slip1000) != slip {
			t.Errorf("by %g: %v", factor, got)
		}
	}
}

func TestRunsTooShort(t *testing.T) {
	for n, says := range map[int]string{1: "is one reading", 2: "are 2 readings"} {
		var days []int
		for i := range n {
			days = append(days, i)
		}
		_, err := Follow(lineOf(days, func(int) float64 { return 1 }))
		parttest.Says(t, err, says)
	}
	_, err := Follow(Series{Limit: math.NaN()})
	parttest.Says(t, err, "is no reading")
}

// Three readings of one moment have no line between the outer two; one far off
// elsewhere is still left out.
func TestLoneBesideReadingsOfOneMoment(t *testing.T) {
	x := []float64{0, 1, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}
	y := []float64{0, 1.1, 1, 0.9, 2, 60, 4.1, 5, 6.1, 7, 8.1, 9, 10.1}
	if fx, fy := withoutLone(x, y); len(fx) != 12 || len(fy) != 12 || fy[5] != 4.1 {
		t.Errorf("%v, %v are left", fx, fy)
	}
}
