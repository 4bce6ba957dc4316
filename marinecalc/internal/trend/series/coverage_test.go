package series

import (
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
)

// long tells whether the long tables are asked for: MARINECALC_COVERAGE=1.
func long() bool { return os.Getenv("MARINECALC_COVERAGE") != "" }

// shift moves the seeds of the long tables, by MARINECALC_SEED.
func shift() uint64 {
	n, _ := strconv.ParseUint(os.Getenv("MARINECALC_SEED"), 10, 64)
	return n
}

// sure is the chance from which on a verdict is said to hold: all above the
// lower end of a 95 % interval.
const sure = 0.95

// simulated is a run of readings as they come: dates a fifth of the interval
// off, normal scatter of 0.15 about a curve over u, 0 at the first date and 1
// at the last.
func simulated(r *rand.Rand, n int, curve func(u float64) float64) Series {
	const interval = 1000.0 // so that whole days round nothing
	s := Series{Limit: math.NaN(), Rising: true}
	for i := range n {
		day := int(interval * (float64(i) + 0.4*(r.Float64()-0.5)))
		s.Points = append(s.Points, Point{Day: day, Hours: math.NaN(), Value: curve(float64(day)/interval/float64(n-1)) + 0.15*r.NormFloat64()})
	}
	s.Today = s.Points[n-1].Day
	return s
}

// On simulated straight wear the band for the next reading holds 93 to 97 in
// 100 of them, and the limit is met before the earliest date or after the
// latest in no more than 7 in 100.
func TestBandsOfStraightWear(t *testing.T) {
	runs, counts := 1500, []int{5, 8, 12}
	if long() {
		runs, counts = 20000, []int{5, 6, 8, 12, 20, 40}
	}
	r := rand.New(rand.NewPCG(11, 4+shift()))
	for _, n := range counts {
		held, early, late, bent, ahead := 0, 0, 0, 0, 0
		for range runs {
			rise := []float64{0, 0.5, 1, 3}[r.IntN(4)]
			line := func(u float64) float64 { return 3 + rise*u }
			s := simulated(r, n, line)
			s.Limit = line(1 + 2*r.Float64())
			f := follow(t, s)
			if f.Quickens {
				bent++
			}
			v := line(float64(s.Today)/1000/float64(n-1)) + 0.15*r.NormFloat64()
			if low, _, high := f.At(f.Place); low <= v && v <= high {
				held++
			}
			if rise == 0 || f.Outlook == Reached {
				continue
			}
			ahead++
			cross := (s.Limit-3)/rise*1000*float64(n-1) - float64(s.Today)
			if cross < f.Days.Earliest {
				early++
			}
			if cross > f.Days.Latest {
				late++
			}
		}
		share := func(k, of int) float64 { return 100 * float64(k) / float64(of) }
		t.Logf("%2d readings: the band holds %.1f %%, %.1f %% before the earliest date, %.1f %% after the latest, called growing %.1f %%", n, share(held, runs), share(early, ahead), share(late, ahead), share(bent, runs))
		if h := share(held, runs); h < 93 || h > 97 {
			t.Errorf("%d readings: the band holds %.1f %% of the next ones", n, h)
		}
		if share(early+late, ahead) > 7 {
			t.Errorf("%d readings: %.1f %% of the crossings lie outside their dates", n, share(early+late, ahead))
		}
	}
}

// On simulated wear whose pace grows e-fold up to six times over the run, of
// all horizons that are said to be safe no more than 5 in 100 fail. The true
// limit is met within twice the horizon, so that half of all horizons fail.
func TestSafeHorizonsOfGrowingWear(t *testing.T) {
	runs, counts := 300, []int{6, 12}
	if long() {
		runs, counts = 20000, []int{5, 6, 8, 12, 20}
	}
	r := rand.New(rand.NewPCG(5, 17+shift()))
	for _, bend := range []float64{1, 2, 3, 4, 5, 6} {
		for _, n := range counts {
			safe, failed, straight := 0, 0, 0
			for range runs {
				rise := []float64{0.5, 1, 3}[r.IntN(3)]
				curve := func(u float64) float64 { return rise * math.Expm1(bend*u) / math.Expm1(bend) }
				s := simulated(r, n, curve)
				run := 1000 * float64(n-1)
				horizon := []float64{0.25, 0.5, 1}[r.IntN(3)]
				now := float64(s.Today) / run
				s.Limit = curve(now + 2*horizon*r.Float64())
				f := follow(t, s)
				if math.Min(f.Fit.short(s.Limit, f.Place, true), f.Fit.short(s.Limit, f.Place+horizon*run, true)) >= sure {
					straight++
				}
				if f.Lasts(&s, horizon*run) < sure {
					continue
				}
				safe++
				if curve(now+horizon) >= s.Limit {
					failed++
				}
			}
			t.Logf("e^%g, %2d readings: %.1f %% called safe (%.1f %% by a straight line), of these %.1f %% fail", bend, n, 100*float64(safe)/float64(runs), 100*float64(straight)/float64(runs), 100*float64(failed)/float64(max(safe, 1)))
			if float64(failed) > 0.05*float64(safe)+1.65*math.Sqrt(0.05*0.95*float64(safe)) {
				t.Errorf("e^%g, %d readings: %d of %d safe horizons fail", bend, n, failed, safe)
			}
		}
	}
}
