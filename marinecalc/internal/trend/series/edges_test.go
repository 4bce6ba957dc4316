package series

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
)

// The chance of lasting is never more than the straight line's, which is a
// half where the line meets the limit and 97.5 % where the band's edge does;
// as long as is sure it is 97.5 %.
func TestLastsGoesWithTheBand(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 200 {
		var days []int
		for i := range 6 + r.IntN(6) {
			days = append(days, 20000+10*i+r.IntN(8))
		}
		s := lineOf(days, func(day int) float64 { return 0.02*float64(day-20000) + 0.02*r.NormFloat64() })
		s.Limit = 5
		f := follow(t, s)
		if f.Outlook != Toward {
			t.Fatal(f.Outlook)
		}
		parttest.Near(t, "where the line is", f.Fit.short(5, f.Place+f.SteadyDays, true), 0.5, 1e-6)
		if got := f.Lasts(&s, f.Days.Expected); !(got <= 0.5+1e-6) {
			t.Errorf("%g where the limit is expected", got)
		}
		if far := f.Lasts(&s, 10*f.Days.Expected); !(far < 0.01) {
			t.Errorf("%g long after", far)
		}
		if f.Deviation > 1 {
			if got := f.Lasts(&s, 1); got > 0.5 || !math.IsNaN(f.SureDays) {
				t.Errorf("%g, sure for %g days, with the newest reading off the band", got, f.SureDays)
			}
			continue
		}
		parttest.Near(t, "as long as is sure", f.Lasts(&s, f.SureDays), 0.975, 1e-6)
		if f.SureDays > f.Days.Earliest {
			t.Errorf("sure for %g days, at the earliest in %g", f.SureDays, f.Days.Earliest)
		}
	}
	s := lineOf([]int{0, 10, 20, 30, 40}, func(int) float64 { return 1 })
	f := follow(t, s)
	if got := f.Lasts(&s, 10); !math.IsNaN(got) {
		t.Errorf("without a limit: %g", got)
	}
}

// A newest reading at or over the limit is over it, whatever the line says:
// few readings or many, alike before or not, the limit from above or below.
func TestNewestReadingOverTheLimit(t *testing.T) {
	for _, c := range []struct {
		values []float64
		limit  float64
		rising bool
	}{
		{[]float64{40, 40, 40, 40, 75}, 60, true},
		{[]float64{6, 6, 6, 6, 6, 25}, 20, true},
		{[]float64{40, 41, 40, 42, 41, 40, 75}, 60, true},
		{[]float64{6, 6, 7, 6, 7, 22, 24}, 20, true},
		{[]float64{2, 2, 2, 2, 2, 7.5}, 4.5, true},
		{[]float64{9, 9, 20}, 20, true},
		{[]float64{12, 11, 5}, 6, false},
	} {
		var days []int
		for i := range c.values {
			days = append(days, 14*i)
		}
		s := lineOf(days, func(d int) float64 { return c.values[d/14] })
		s.Limit, s.Rising, s.Accuracy = c.limit, c.rising, 0.5
		f := follow(t, s)
		chance := 0.0
		if c.values[len(c.values)-1] == c.limit { // the gauge leaves it open
			chance = 0.5
		}
		if f.Outlook != Reached || f.NotReached != chance || f.Lasts(&s, 1) > chance || f.Days.Expected != 0 {
			t.Errorf("%v against %g: %+v", c.values, c.limit, f)
		}
		// Just short of the limit nothing is said to be sure.
		s.Points[len(s.Points)-1].Value = c.limit - 0.01
		if !c.rising {
			s.Points[len(s.Points)-1].Value = c.limit + 0.01
		}
		if f := follow(t, s); f.NotReached == 0 || f.NotReached > 0.52 {
			t.Errorf("%v a hair short of %g: %g", c.values, c.limit, f.NotReached)
		}
	}
}

// Alike readings have no band of their own: a newest one that differs is off it.
func TestNewestOffABandWithoutWidth(t *testing.T) {
	s := lineOf(weekly, func(d int) float64 { return 6 })
	s.Points[5].Value, s.Limit = 8, 20
	f := follow(t, s)
	if !math.IsInf(f.Deviation, 1) || f.NotReached > 0.5 || f.Lasts(&s, 1) > 0.5 {
		t.Errorf("%g, %g", f.Deviation, f.NotReached)
	}
}

// With fewer than five readings nothing is said of the time to come. Whether the
// limit is reached today goes by the line and its scatter all the same: with one
// degree of freedom Student's t is the arc tangent, P = 1/2 + atan(t)/π; the
// room is 12, and one more reading has the standard deviation 1/√3 of the gauge
// times √(1 + (π/2)/3 + (π/3)·14²/392).
func TestFewReadingsDoNotLookAhead(t *testing.T) {
	s := lineOf([]int{0, 14, 28}, func(d int) float64 { return 6 + float64(d)/14 })
	s.Limit, s.Accuracy = 20, 1
	f := follow(t, s)
	if f.Outlook != TooFew || !math.IsNaN(f.Lasts(&s, 30)) || !math.IsNaN(f.Days.Expected) || !math.IsNaN(f.Days.Earliest) {
		t.Errorf("%+v", f)
	}
	width := math.Sqrt((1 + math.Pi/6 + math.Pi/6) / 3)
	if want := 0.5 + math.Atan(12/width)/math.Pi; math.Abs(f.NotReached-want) > 1e-9 {
		t.Errorf("%g, want %g", f.NotReached, want)
	}
}

// Five readings are enough to look ahead; an engine that was not run is at its
// hours, and a reading brought to other surroundings counts as it was read.
func TestEdgesOfWhatIsFollowed(t *testing.T) {
	s := lineOf([]int{0, 10, 20, 30, 40}, func(d int) float64 { return 1 + float64(d)/10 })
	s.Limit, s.Accuracy = 11, 0.1
	if f := follow(t, s); f.Outlook != Toward {
		t.Errorf("five readings: %v", f.Outlook)
	}
	for i := range s.Points {
		s.Points[i].Hours = 100
	}
	if f := follow(t, s); f.HoursPerDay != 0 {
		t.Errorf("an engine that stood: %g hours a day", f.HoursPerDay)
	}
	s.Points[4].Value, s.Points[4].Over = 12, 3 // 9 was read, in a colder sea
	if f := follow(t, s); f.Outlook == Reached || f.NotReached == 0 {
		t.Errorf("9 was read against 11: %v", f.Outlook)
	}
}

// Of many readings the forty about a place are kept, as far as there are so
// many on either side.
func TestTheNearReadings(t *testing.T) {
	x := make([]float64, 100)
	for i := range x {
		x[i] = float64(i)
	}
	for i, first := range map[int]float64{0: 0, 19: 0, 50: 30, 99: 60} {
		if nx, ny := near(x, x, i); len(nx) != 40 || len(ny) != 40 || nx[0] != first {
			t.Errorf("about %d: %d from %g, want from %g", i, len(nx), nx[0], first)
		}
	}
}

// However few the readings, a newest one at the limit or over it has reached it;
// short of it they are refused.
func TestFewReadingsOverTheLimit(t *testing.T) {
	for _, values := range [][]float64{{25}, {5, 25}, {20}, {19, 20}} {
		s := Series{Limit: 20, Rising: true, Accuracy: 0.5, Today: 30}
		for i, v := range values {
			s.Points = append(s.Points, Point{Day: 10 * i, Hours: math.NaN(), Value: v})
		}
		f, err := Follow(s)
		if err != nil || f.Outlook != Reached || f.NotReached > 0.5 || !math.IsNaN(f.Fit.At(30)) || !math.IsNaN(f.Deviation) {
			t.Errorf("%v: %v, %+v", values, err, f)
		}
		s.Points[len(values)-1].Value = 19.9
		if _, err := Follow(s); err == nil {
			t.Errorf("%v, the newest short: no error", values)
		}
	}
	oneDay := Series{Limit: 20, Rising: true, Today: 30, Points: []Point{{Value: 1, Hours: math.NaN()}, {Value: 2, Hours: math.NaN()}, {Value: 21, Hours: math.NaN()}}}
	if f, err := Follow(oneDay); err != nil || f.Outlook != Reached {
		t.Errorf("of one day: %v, %+v", err, f)
	}
	if _, err := Follow(Series{Limit: 20, Few: true}); err == nil {
		t.Error("no reading: no error")
	}
}

// An engine may run all of each day of a reading, so that the meter goes on by 24 hours
// within one day and by 72 from one day to the day after the next, and no more.
func TestWhatTheMeterCanShow(t *testing.T) {
	for _, c := range []struct {
		days, hours float64
		want        Kind
	}{{0, 24, ""}, {0, 24.1, HoursTooFast}, {2, 72, ""}, {2, 72.1, HoursTooFast}, {2, 0, ""}, {2, -0.1, HoursBackward}, {0.5, 36, ""}, {0.5, 36.1, HoursTooFast}} {
		if got := MeterOff(10, 500, 10+c.days, 500+c.hours); got != c.want {
			t.Errorf("%g hours in %g days: %q", c.hours, c.days, got)
		}
	}
	in := lineOf([]int{0, 10, 20, 30}, func(day int) float64 { return float64(day) })
	for i := range in.Points {
		in.Points[i].Hours = 100 + 2*float64(in.Points[i].Day)
	}
	if f := follow(t, in); f.MeterOff != -1 || f.HoursPerDay != 2 {
		t.Errorf("two hours a day: %g, meter off at %d", f.HoursPerDay, f.MeterOff)
	}
	in.Points[0].Hours = 900 // renewed before the second reading
	if f := follow(t, in); f.MeterOff != 1 || !math.IsNaN(f.HoursPerDay) || f.ByHours {
		t.Errorf("a meter that was renewed: %g hours a day, off at %d", f.HoursPerDay, f.MeterOff)
	}
}

// The rate behind a count, of a Gamma distribution of the count and a half (Jeffreys,
// by gonum): a count that has reached its limit, or stands at it, may have a rate that
// has not. Of several readings of one day the one that leaves least counts.
func TestNewestCountByItsRate(t *testing.T) {
	below := func(rate, one, level float64) float64 {
		return distuv.Gamma{Alpha: rate/one + 0.5, Beta: 1 / one}.CDF(level)
	}
	for _, c := range []struct {
		rising bool
		counts []float64
		over   float64
		want   float64
	}{
		{true, []float64{7}, 0, below(7, 2, 5)}, {true, []float64{5}, 0, below(5, 2, 5)}, {true, []float64{7, 9}, 0, below(9, 2, 5)}, {true, []float64{7}, 1, below(6, 2, 5)},
		{false, []float64{3}, 0, 1 - below(3, 2, 5)}, {false, []float64{3, 1}, 0, 1 - below(1, 2, 5)}, {false, []float64{0.5}, 1, 1 - below(0, 2, 5)},
	} {
		in := Series{Today: 4, Limit: 5, Rising: c.rising, Counted: 2, CountBelow: below, Few: true}
		for _, count := range c.counts {
			in.Points = append(in.Points, Point{Day: 4, Hours: math.NaN(), Value: count, Over: c.over})
		}
		if f := follow(t, in); f.Outlook != Reached || math.Abs(f.NotReached-c.want) > 1e-12 {
			t.Errorf("%+v: %s, not reached %g, want %g", c, f.Outlook, f.NotReached, c.want)
		}
	}
}
