package series

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// What is worked out in closed form or at a few places, held against the same
// found plainly.

// randomLine is a line laid through random readings.
func randomLine(r *rand.Rand) (f Fit, x, y []float64) {
	n := 4 + r.IntN(12)
	slope, scatter := r.NormFloat64(), math.Exp(r.NormFloat64()-2)
	for i := range n {
		x = append(x, 10*float64(i)+3*r.Float64())
		y = append(y, 20+slope*x[i]+scatter*r.NormFloat64())
	}
	if r.IntN(3) == 0 {
		y[r.IntN(n)] += 40 * scatter
	}
	return Lay(x, y, 0), x, y
}

// The scatter is that of the readings that are not wild, by the definition.
func TestScatterByItsDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	cut := 0
	for range 400 {
		f, x, y := randomLine(r)
		var off []float64
		for i := range x {
			off = append(off, math.Abs(y[i]-(f.Height+f.Slope*(x[i]-f.Middle))))
		}
		slices.Sort(off)
		rest := off[2:]
		middle := rest[len(rest)/2]
		if len(rest)%2 == 0 {
			middle = (middle + rest[len(rest)/2-1]) / 2
		}
		sum, kept := 0.0, 0.0
		for _, o := range off {
			if o <= 4.5*(1+2/float64(len(x)-2))*1.4826*middle {
				sum += o * o
				kept++
			}
		}
		if kept < float64(len(x)) {
			cut++
		}
		if want := math.Sqrt(sum / (kept - 2)); math.Abs(f.Scatter-want) > 1e-9*want || f.freedom != int(kept)-2 {
			t.Errorf("%v: scatter %v of %d, want %v", y, f.Scatter, f.freedom+2, want)
		}
		if want := (distuv.StudentsT{Sigma: 1, Nu: kept - 2}).Quantile(0.975); math.Abs(f.Factor-want) > 1e-3*want {
			t.Errorf("factor %v, want %v", f.Factor, want)
		}
	}
	if cut < 40 || cut > 360 {
		t.Errorf("%d of 400 had a wild reading", cut)
	}
}

// Where the line and the bounds of its band meet a level is where they are
// first found to do so, in small steps.
func TestReachesByLooking(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	met := 0
	for range 300 {
		f, x, _ := randomLine(r)
		rising := r.IntN(2) == 0
		from := x[len(x)-1]
		level := f.At(from) + (r.Float64()-0.3)*30*map[bool]float64{true: 1, false: -1}[rising]
		sign := map[bool]float64{true: 1, false: -1}[rising]
		const step, steps = 0.05, 20000
		look := func(halves float64) float64 {
			for k := range steps {
				at := from + float64(k)*step
				if sign*(f.At(at)-level)+halves*f.Half(at) >= 0 {
					return at
				}
			}
			return math.Inf(1)
		}
		at, earliest, latest := f.Reaches(level, from, rising)
		for k, got := range []float64{at, earliest, latest} {
			want := look([]float64{0, 1, -1}[k])
			switch {
			case math.IsInf(want, 1):
				if got < from+step*steps {
					t.Errorf("%+v to %v: %d at %v, and not met by then", f, level, k, got)
				}
			case math.Abs(got-want) > step*1.01:
				t.Errorf("%+v to %v: %d at %v, want %v", f, level, k, got, want)
			default:
				met++
			}
		}
	}
	if met < 200 {
		t.Errorf("only %d were met", met)
	}
}

// What one more reading lies below with a chance, and until when it falls short
// with one, are where the chance is that.
func TestLevelsOfTheCurvesHoldTheirChance(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 21))
	told := 0
	for range 60 {
		var x, y []float64
		for i := range 5 + r.IntN(8) {
			x = append(x, 100*float64(i))
			y = append(y, 3+0.5*float64(i)*(1+0.2*float64(i)*r.Float64())+0.1*r.NormFloat64())
		}
		c := layCurves(x, y, 0.05)
		total := 0.0
		for _, f := range c.of {
			total += f.weight
		}
		if math.Abs(total-1) > 1e-9 {
			t.Errorf("weights add up to %v", total)
		}
		end := x[len(x)-1]
		for _, chance := range []float64{0.025, 0.5, 0.9, 0.975} {
			at := end + 150
			if got := c.below(c.level(chance, at), at); math.Abs(got-chance) > 1e-6 {
				t.Errorf("below the level of %g: %v", chance, got)
			}
		}
		limit := y[len(y)-1] + 3
		for _, chance := range []float64{0.975, 0.5, 0.025} {
			until := c.until(limit, end, chance, true)
			switch {
			case until == end:
				if c.short(limit, end, true) > chance {
					t.Errorf("reached at once, and short with %v", c.short(limit, end, true))
				}
			case !math.IsInf(until, 1):
				told++
				if got := c.short(limit, until, true); math.Abs(got-chance) > 1e-4 {
					t.Errorf("short until then with %v, want %v", got, chance)
				}
				if mirror := mirrored(x, y); math.Abs(mirror.until(-limit, end, chance, false)-until) > 1e-6*until {
					t.Errorf("falling: %v, rising %v", mirror.until(-limit, end, chance, false), until)
				}
			}
		}
	}
	if told < 60 {
		t.Errorf("only %d were told", told)
	}
}

// mirrored is the same readings the other way up.
func mirrored(x, y []float64) *curves {
	down := slices.Clone(y)
	for i := range down {
		down[i] = -down[i]
	}
	c := layCurves(x, down, 0.05)
	return &c
}

// A reading far off its neighbours is left out of the curves, one of seven at
// most, none of six, and none where the others do not scatter.
func TestLoneReadingsLeftOut(t *testing.T) {
	readings := func(n int, wild ...int) (x, y []float64) {
		for i := range n {
			x, y = append(x, float64(i)), append(y, 2*float64(i)+0.1*float64(i%2))
		}
		for _, at := range wild {
			y[at] += 50
		}
		return x, y
	}
	for _, c := range []struct {
		n     int
		wild  []int
		left  int
		about string
	}{
		{6, []int{3}, 6, "six"}, {9, []int{4}, 8, "nine"}, {9, nil, 9, "none wild"}, {16, []int{5, 11}, 14, "two of sixteen"},
		{13, []int{4, 6}, 12, "of thirteen one"}, {24, []int{3, 10, 17}, 21, "three"},
	} {
		x, y := readings(c.n, c.wild...)
		fx, fy := withoutLone(x, y)
		if len(fx) != c.left || len(fy) != c.left {
			t.Errorf("%s: %d are left, want %d", c.about, len(fx), c.left)
		}
		if len(fx) < len(x) && slices.Max(fy) > 60 && c.left == c.n-len(c.wild) {
			t.Errorf("%s: the wild one is kept: %v", c.about, fy)
		}
	}
	x, y := readings(8, 4)
	for i := range y {
		if i != 4 {
			y[i] = 2 * x[i]
		}
	}
	if fx, _ := withoutLone(x, y); len(fx) != 8 { // all others are on one line: nothing to say how far off is far
		t.Errorf("%d are left of those without scatter", len(fx))
	}
}

// A slip of the unit is told within a third of its factor, and no farther.
func TestSlipsAtTheirEdges(t *testing.T) {
	base := []float64{10, 10.2, 9.9, 10.1, 10, 9.8, 10.2, 10}
	for _, c := range []struct {
		factor float64
		kind   Kind
	}{
		{25.4, Slip25}, {25.4 * 1.3, Slip25}, {25.4 / 1.3, Slip25}, {25.4 * 1.4, OutsideBand}, {25.4 / 1.4, OutsideBand},
		{1 / 25.4, Slip25Low}, {1.3 / 25.4, Slip25Low}, {1 / 1.3 / 25.4, Slip25Low}, {1.4 / 25.4, OutsideBand}, {1000, Slip1000}, {1000 * 1.3, Slip1000}, {1000 * 1.4, OutsideBand}, {1. / 1000, Slip1000Low}, {1.3 / 1000, Slip1000Low}, {1 / 1.3 / 1000, Slip1000Low}, {1.4 / 1000, OutsideBand}, {-25.4, OutsideBand},
	} {
		for _, shifted := range []bool{false, true} {
			s := Series{Limit: math.NaN(), Rising: true, Today: 200, Shifted: shifted}
			for i, v := range base {
				if i == 4 {
					v = 10 * c.factor
				}
				s.Points = append(s.Points, Point{Day: 20 * i, Hours: math.NaN(), Value: v})
			}
			want := c.kind
			if shifted {
				want = OutsideBand // a temperature's zero is arbitrary
			}
			f := follow(t, s)
			if !slices.Contains(f.Flags, Flag{4, want}) {
				t.Errorf("by %g, shifted %v: %v, want %s", c.factor, shifted, f.Flags, want)
			}
		}
	}
}

// Engine hours and days are turned into one another by how much she is run.
func TestHoursAndDaysOfOneTrend(t *testing.T) {
	for _, perDay := range []float64{0.5, 3} {
		s := Series{Limit: 30, Rising: true, Today: 130}
		for i := range 10 {
			s.Points = append(s.Points, Point{Day: 10 * i, Hours: 100 + perDay*10*float64(i), Value: 10 + float64(i) + 0.05*float64(i%3)})
		}
		f := follow(t, s)
		if !f.ByHours || math.Abs(f.HoursPerDay-perDay) > 1e-9 {
			t.Fatalf("by hours %v, %v a day", f.ByHours, f.HoursPerDay)
		}
		if want := 100 + perDay*130; math.Abs(f.Place-want) > 1e-9 { // the newest reading is of day 90, today forty on
			t.Errorf("today at %v h, want %v", f.Place, want)
		}
		for _, pair := range [][2]float64{{f.Days.Expected, f.Hours.Expected}, {f.Days.Earliest, f.Hours.Earliest}, {f.Days.Latest, f.Hours.Latest}} {
			if math.Abs(pair[0]*perDay-pair[1]) > 1e-9*pair[1] {
				t.Errorf("%v days and %v hours at %v a day", pair[0], pair[1], perDay)
			}
		}
		if math.Abs(f.SteadyDays-f.Days.Expected) > 1e-9 || !(f.SureDays <= f.Days.Earliest) {
			t.Errorf("steady %v, sure %v, days %+v", f.SteadyDays, f.SureDays, f.Days)
		}
		for i := range s.Points { // over days alone it is the same line
			s.Points[i].Hours = math.NaN()
		}
		if d := follow(t, s); d.ByHours || math.Abs(d.Days.Expected-f.Days.Expected) > 1e-6*f.Days.Expected || !math.IsNaN(d.Hours.Expected) {
			t.Errorf("over days %+v and %+v, over hours %+v", d.Days, d.Hours, f.Days)
		}
	}
}

// By its gauge alone the newest reading is short of the limit surely from the
// whole accuracy on, evenly before that, a half at the limit, and not at all past
// the whole accuracy; of
// two on one day the worse counts.
func TestNewestByItsGauge(t *testing.T) {
	chance := func(rising bool, values ...float64) float64 {
		s := Series{Limit: 20, Rising: rising, Accuracy: 2}
		var f Trend
		for i, v := range values {
			day := 5
			if i == 0 {
				day = 1
			}
			s.Points = append(s.Points, Point{Day: day, Value: v, Over: 1})
			f.Run = append(f.Run, i)
		}
		return f.newestShort(&s)
	}
	for v, want := range map[float64]float64{10: 1, 19: 1, 19.5: 0.875, 20: 0.75, 20.9: 0.525, 21: 0.5, 22: 0.25, 23: 0, 25: 0} { // read one less, as it stood in other surroundings
		if got := chance(true, 0, v); math.Abs(got-want) > 1e-9 {
			t.Errorf("rising, %g: %v, want %v", v, got, want)
		}
		if got := chance(true, 30, v); math.Abs(got-want) > 1e-9 {
			t.Errorf("after one over the limit, %g: %v, want %v", v, got, want)
		}
		if got := chance(true, 0, 10, v); math.Abs(got-min(want, 1)) > 1e-9 {
			t.Errorf("two of one day, %g: %v, want %v", v, got, want)
		}
		if got := chance(false, 0, 42-v); math.Abs(got-want) > 1e-9 {
			t.Errorf("falling, %g: %v, want %v", 42-v, got, want)
		}
	}
}

// A change on a day belongs to the readings of that day and after it; of two
// readings on the day of the change, to the first.
func TestARunBeginsOnTheDayOfTheWork(t *testing.T) {
	s := Series{Points: []Point{{Day: 1}, {Day: 5}, {Day: 5}, {Day: 9}, {Day: 12}}}
	for day, first := range map[int]int{0: 0, 1: 0, 2: 1, 5: 1, 6: 3, 9: 3, 12: 4, 13: 0} {
		s.Renewed = []int{day}
		if got := Run(&s); got[0] != first {
			t.Errorf("changed on day %d: the run begins with reading %d, want %d", day, got[0], first)
		}
	}
	s.Renewed = []int{5, 9}
	if got := Run(&s); got[0] != 3 {
		t.Errorf("changed twice: the run begins with reading %d", got[0])
	}
	s.Renewed, s.Points[1].Changed = nil, true
	if got := Run(&s); got[0] != 1 {
		t.Errorf("changed just before: the run begins with reading %d", got[0])
	}
	long := Series{Points: make([]Point, 405)}
	for i := range long.Points {
		long.Points[i].Day = i
	}
	if got := Run(&long); len(got) != 400 || got[0] != 5 {
		t.Errorf("a long run: %d from %d", len(got), got[0])
	}
}

// The interval of the slope is that of least squares widened by the robust
// line's loss: t·s·√(π/3/Σ(x − x̄)²) (Sen 1968).
func TestSlopeIntervalByItsDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(34, 55))
	for range 50 {
		f, x, _ := randomLine(r)
		middle, spread := 0.0, 0.0
		for _, v := range x {
			middle += v / float64(len(x))
		}
		for _, v := range x {
			spread += (v - middle) * (v - middle)
		}
		want := (distuv.StudentsT{Sigma: 1, Nu: float64(f.freedom)}).Quantile(0.975) * f.Scatter * math.Sqrt(math.Pi/3/spread)
		if math.Abs(f.SlopeHalf()-want) > 1e-3*want {
			t.Errorf("half %v, want %v", f.SlopeHalf(), want)
		}
		at := middle + 70
		half := (distuv.StudentsT{Sigma: 1, Nu: float64(f.freedom)}).Quantile(0.975) * f.Scatter * math.Sqrt(1+math.Pi/2/float64(len(x))+math.Pi/3*70*70/spread)
		if math.Abs(f.Half(at)-half) > 1e-3*half {
			t.Errorf("half of the band %v, want %v", f.Half(at), half)
		}
	}
}
