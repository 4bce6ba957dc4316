package series

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/problem"
)

// On points of a line Theil-Sen is that line, as least squares by a general
// statistics library is; one wild point in five does not move it, and it
// moves least squares.
func TestTheilSenAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for range 200 {
		n := 3 + r.IntN(30)
		a, b := r.NormFloat64(), r.NormFloat64()
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i] = float64(i) + r.Float64()/2
			y[i] = a + b*x[i]
		}
		intercept, slope := stat.LinearRegression(x, y, nil, false)
		ts, ti := TheilSen(x, y)
		parttest.Near(t, "slope", ts, slope, 1e-9)
		parttest.Near(t, "intercept", ti, intercept, 1e-8)
		if n < 5 {
			continue
		}
		y[r.IntN(n)] += 1000
		ts, _ = TheilSen(x, y)
		parttest.Near(t, "slope with one wild point", ts, b, 1e-9)
	}
}

// Closed form: of 0, 1, 5 at 0, 1, 2 the slopes are 1, 4 and 2.5; the median
// is 2.5, and of what is left (0, -1.5, 0) it is 0.
func TestTheilSenByHand(t *testing.T) {
	slope, intercept := TheilSen([]float64{0, 1, 2}, []float64{0, 1, 5})
	parttest.Near(t, "slope", slope, 2.5, 0)
	parttest.Near(t, "intercept", intercept, 0, 0)
}

// With many readings of normal scatter, line and interval come near to those
// of least squares worked out with a general statistics library.
func TestIntervalAgainstLeastSquares(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	const n = 300
	x, y := make([]float64, n), make([]float64, n)
	for i := range x {
		x[i] = float64(i)
		y[i] = 2 + 0.1*x[i] + 0.5*r.NormFloat64()
	}
	f := Lay(x, y, 0)
	a, b := stat.LinearRegression(x, y, nil, false)
	rest := 0.0
	for i := range x {
		rest += (y[i] - a - b*x[i]) * (y[i] - a - b*x[i])
	}
	sx := stat.Variance(x, nil) * (n - 1)
	for _, at := range []float64{0, 150, 400} {
		u := at - stat.Mean(x, nil)
		half := Student(0.975, n-2) * math.Sqrt(rest/(n-2)*(1+1.0/n+u*u/sx))
		parttest.Near(t, "line", f.At(at), a+b*at, 0.1)
		parttest.Near(t, "half-width", f.Half(at), half, 0.06*half)
	}
}

func lineOf(days []int, at func(day int) float64) Series {
	s := Series{Today: days[len(days)-1], Limit: math.NaN(), Rising: true}
	for _, d := range days {
		s.Points = append(s.Points, Point{Day: d, Hours: math.NaN(), Value: at(d)})
	}
	return s
}

func follow(t *testing.T, s Series) Trend {
	t.Helper()
	return parttest.Must(t, Follow, s)
}

var weekly = []int{0, 7, 14, 21, 28, 35}

// Closed form: a line of 1 + day/10 meets 11 on day 100.
func TestFollowALine(t *testing.T) {
	s := lineOf(weekly, func(d int) float64 { return 1 + float64(d)/10 })
	s.Limit, s.Accuracy = 11, 0.1
	out := follow(t, s)
	parttest.Near(t, "days", out.Days.Expected, 65, 1e-9)
	if out.Outlook != Toward || !(out.Days.Earliest < 65 && out.Days.Latest > 65) || len(out.Flags) > 0 {
		t.Errorf("%+v", out)
	}
	for _, x := range []float64{out.Place + out.Days.Earliest} { // the bound meets the limit there
		parttest.Near(t, "bound", out.Fit.At(x)+out.Fit.Half(x), 11, 1e-9)
	}
	x := out.Place + out.Days.Latest
	parttest.Near(t, "bound", out.Fit.At(x)-out.Fit.Half(x), 11, 1e-9)

	s.Limit, s.Rising = 0.5, false
	if out := follow(t, s); out.Outlook != Away || !math.IsInf(out.Days.Expected, 1) || !math.IsInf(out.Days.Latest, 1) {
		t.Errorf("a slope away from the limit: %+v", out.Days)
	}
	s.Limit, s.Rising = 3, true
	if out := follow(t, s); out.Outlook != Reached || out.Days.Expected != 0 {
		t.Errorf("a limit already passed: %+v", out)
	}
	s.Limit, s.Points[5].Value = 4, 3.9 // the line stands above it
	if out := follow(t, s); out.Outlook != Passed && out.Outlook != Toward || out.NotReached > 0.5 {
		t.Errorf("a newest reading below the line: %+v", out)
	}
	falling := lineOf(weekly, func(d int) float64 { return 9 - float64(d)/10 })
	falling.Limit, falling.Rising = 1, false
	parttest.Near(t, "falling to a limit", follow(t, falling).Days.Expected, 45, 1e-9)
}

// Property: mirrored values and limit give the same times; readings written
// down in another order give the same line.
func TestFollowProperty(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 2))
	for range 300 {
		s := lineOf([]int{0, 9, 21, 30, 44, 52, 70}, func(d int) float64 { return 5 + 0.05*float64(d) + 0.2*r.NormFloat64() })
		s.Limit, s.Accuracy = 12, 0.1
		a := follow(t, s)
		if !(a.Days.Earliest <= a.Days.Expected && a.Days.Expected <= a.Days.Latest && a.Days.Earliest >= 0) {
			t.Fatalf("%+v", a.Days)
		}
		mirrored := s
		mirrored.Points = append([]Point(nil), s.Points...)
		for i := range mirrored.Points {
			mirrored.Points[i].Value *= -1
		}
		mirrored.Limit, mirrored.Rising = -12, false
		if b := follow(t, mirrored); math.Abs(b.Days.Expected-a.Days.Expected) > 1e-6*a.Days.Expected {
			t.Fatalf("%+v mirrored %+v", a.Days, b.Days)
		}
		shuffled := s
		shuffled.Points = append([]Point(nil), s.Points...)
		r.Shuffle(len(shuffled.Points), func(i, j int) {
			shuffled.Points[i], shuffled.Points[j] = shuffled.Points[j], shuffled.Points[i]
		})
		if b := follow(t, shuffled); math.Abs(b.Fit.Slope-a.Fit.Slope) > 1e-12 {
			t.Fatal("the order of writing down moves the line")
		}
	}
}

// A changed part starts a new run, whether a reading or an event says so.
func TestRunBeginsWithAChange(t *testing.T) {
	s := lineOf([]int{0, 10, 20, 30, 40, 50}, func(d int) float64 { return float64(d % 30) })
	s.Points[3].Changed = true
	if out := follow(t, s); out.Since != 30 || len(out.Run) != 3 || math.Abs(out.Fit.Slope-1) > 1e-12 {
		t.Errorf("%+v", out)
	}
	s.Points[3].Changed, s.Renewed = false, []int{25}
	if out := follow(t, s); out.Since != 30 || len(out.Run) != 3 {
		t.Errorf("%+v", out)
	}
	s.Renewed = []int{45}
	_, err := Follow(s)
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/readings" {
		t.Errorf("a run of one reading: %v", err)
	}
}

// By engine hours: 0.01 an hour meets 12 after 700 h more; at 5 h a day that
// is 140 days.
func TestFollowByHours(t *testing.T) {
	s := lineOf(weekly, func(d int) float64 { return 3 + 0.05*float64(d) })
	for i := range s.Points {
		s.Points[i].Hours = 100 + 5*float64(s.Points[i].Day)
	}
	s.Limit = 3 + 0.01*(175+700)
	out := follow(t, s)
	if !out.ByHours {
		t.Fatal("not by hours")
	}
	parttest.Near(t, "hours", out.Hours.Expected, 700, 1e-6)
	parttest.Near(t, "days", out.Days.Expected, 140, 1e-6)
	s.Today += 10
	parttest.Near(t, "hours ten days later", follow(t, s).Hours.Expected, 650, 1e-6)
}

// What looks wrong is named and kept.
func TestFlags(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Series)
		place int
		kind  Kind
	}{
		{"a slip of 25.4", func(s *Series) { s.Points[2].Value *= 25.4 }, 2, Slip25},
		{"a slip of 1/25.4", func(s *Series) { s.Points[4].Value /= 25.4 }, 4, Slip25Low},
		{"a slip of 1000", func(s *Series) { s.Points[0].Value *= 1000 }, 0, Slip1000},
		{"a slip of 1/1000", func(s *Series) { s.Points[5].Value /= 1000 }, 5, Slip1000Low},
		{"twice on one date", func(s *Series) { s.Points[3].Day = s.Points[2].Day }, 3, SameDate},
		{"out of order", func(s *Series) { s.Points[1], s.Points[2] = s.Points[2], s.Points[1] }, 2, OutOfOrder},
		{"after today", func(s *Series) { s.Today = 30 }, 5, AfterToday},
		{"hours backward", func(s *Series) {
			for i := range s.Points {
				s.Points[i].Hours = float64(10 * i)
			}
			s.Points[4].Hours = 5
		}, 4, HoursBackward},
	} {
		s := lineOf(weekly, func(d int) float64 { return 10 + 0.01*float64(d) + 0.02*float64(d%3) })
		s.Accuracy = 0.5
		c.spoil(&s)
		out := follow(t, s)
		found := false
		for _, f := range out.Flags {
			found = found || f.Place == c.place && f.Kind == c.kind
		}
		if !found || len(out.Run) != len(s.Points) {
			t.Errorf("%s: flags %v, %d readings kept", c.name, out.Flags, len(out.Run))
		}
	}
	s := lineOf(weekly, func(d int) float64 { return 300 })
	s.Points[2].Value, s.Shifted, s.Accuracy = 300*25.4, true, 1
	if out := follow(t, s); len(out.Flags) != 1 || out.Flags[0].Kind != OutsideBand {
		t.Errorf("of a temperature factors say nothing: %v", out.Flags)
	}
}

// The newest reading is held against the band of those before it.
func TestDeviation(t *testing.T) {
	s := lineOf(weekly, func(d int) float64 { return 1 + float64(d)/10 })
	s.Accuracy = 0.1
	if d := follow(t, s).Deviation; !(d < 1e-9) {
		t.Errorf("on the line: %g", d)
	}
	s.Points[5].Value += 3
	if d := follow(t, s).Deviation; !(d > 1) {
		t.Errorf("off the line: %g", d)
	}
}

func TestFollowRefuses(t *testing.T) {
	for name, s := range map[string]Series{
		"two readings": lineOf([]int{1, 2}, func(int) float64 { return 1 }),
		"one day":      lineOf([]int{1, 1, 1}, func(int) float64 { return 1 }),
	} {
		_, err := Follow(s)
		if list := problem.Of(err); len(list) != 1 || list[0].Allowed == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func BenchmarkFollow(b *testing.B) {
	s := lineOf([]int{0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 110}, func(d int) float64 { return float64(d) + float64(d%20)/10 })
	s.Limit = 300
	for b.Loop() {
		_, _ = Follow(s)
	}
}

// Drips that double every fortnight, 1, 2, 4 … 32, come to 60 when
// 2^(day/14) = 60; a straight line through them would take much longer.
func TestQuickens(t *testing.T) {
	s := lineOf([]int{0, 14, 28, 42, 56, 70}, func(d int) float64 { return math.Round(math.Exp2(float64(d) / 14)) })
	s.Limit, s.Accuracy = 60, 1
	f := follow(t, s)
	want := 14*math.Log2(60) - 70
	if !f.Quickens || math.Abs(f.Days.Expected-want) > 2 || !(f.SteadyDays > 2*want) || !(f.SureDays < want) {
		t.Errorf("%+v: expected in %g, steadily %g, sure for %g; by the law %g", f.Quickens, f.Days.Expected, f.SteadyDays, f.SureDays, want)
	}
	if got := f.Lasts(&s, 30); got > 0.05 {
		t.Errorf("thirty days: %g", got)
	}
	if low, now, high := f.At(f.Place); !(low < now && now < high) {
		t.Errorf("%g is not between %g and %g", now, low, high)
	}
	falling := s
	falling.Points = append([]Point(nil), s.Points...)
	for i := range falling.Points {
		falling.Points[i].Value = 100 - falling.Points[i].Value
	}
	falling.Limit, falling.Rising = 40, false
	if g := follow(t, falling); !g.Quickens || math.Abs(g.Days.Expected-f.Days.Expected) > 1e-6 {
		t.Errorf("mirrored: %+v", g.Days)
	} else {
		low, _, high := f.At(f.Place)
		l, _, h := g.At(g.Place)
		if math.Abs(l-(100-high)) > 1e-3*(high-low) || math.Abs(h-(100-low)) > 1e-3*(high-low) {
			t.Errorf("mirrored band: %g to %g, of %g to %g", l, h, low, high)
		}
	}
	if g := follow(t, lineOf(weekly, func(d int) float64 { return 6 - math.Exp(float64(d)/20) })); g.Quickens {
		t.Error("away from the limit")
	}
}
