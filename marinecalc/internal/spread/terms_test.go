package spread

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// Trials that the model refused count where it ends, those without a value
// against either word: counted one by one.
func TestCountedOneByOne(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 4))
	for range 2000 {
		v := Range{Usable: true, StdDev: 1, lost: r.IntN(8)}
		for range 2 + r.IntN(40) {
			v.trials = append(v.trials, math.Round(10*r.Float64()))
		}
		for range r.IntN(8) {
			v.edge = append(v.edge, math.Round(10*r.Float64()))
		}
		low, high := math.Round(6*r.Float64()), 4+math.Round(6*r.Float64())
		if r.IntN(3) == 0 {
			low = math.Inf(-1)
		}
		meet, all := 0, 0
		for _, x := range append(append([]float64(nil), v.trials...), v.edge...) {
			if all++; low <= x && x <= high {
				meet++
			}
		}
		of := 0
		for _, x := range v.trials {
			if low <= x && x <= high {
				of++
			}
		}
		p := float64(of) / float64(len(v.trials))
		least, most := v.surelyBetween(low, high)
		agree(t, "least", least, min(p, float64(meet)/float64(all+v.lost)), 1e-12)
		agree(t, "most", most, max(p, float64(meet+v.lost)/float64(all+v.lost)), 1e-12)
	}
	// One value that stands for all trials weighs as much as those that failed.
	one := Range{Usable: true, trials: []float64{1}, edge: []float64{5, 5}, lost: 1}
	least, most := one.surelyBetween(0, 2)
	agree(t, "least of one", least, 0.5, 1e-12)
	agree(t, "most of one", most, 1, 1e-12)
}

// The probability told is the less sure one, on either side of a half; a result
// just sure and near its limit is near it.
func TestTheLessSureIsTold(t *testing.T) {
	for _, c := range []struct {
		meet int
		want float64
	}{{52, 52. / 110}, {60, 60. / 110}, {48, 58. / 110}, {40, 50. / 110}} {
		r := Range{Usable: true, StdDev: 1, lost: 10}
		for i := range 100 {
			r.trials = append(r.trials, map[bool]float64{true: 1, false: 3}[i < c.meet])
		}
		if j := Judge(1, &r, AtMost(2)); math.Abs(j.Probability-c.want) > 1e-12 || j.Word != sheet.CannotTell {
			t.Errorf("%d of 100 and 10 without a value: %+v, want %g", c.meet, j, c.want)
		}
	}
	r := Range{Usable: true, StdDev: 1, trials: []float64{3}}
	for range 39 {
		r.trials = append(r.trials, 1.95)
	}
	if j := Judge(1.95, &r, AtMost(2)); j.Word != sheet.NearLimit || j.Probability != 0.975 {
		t.Errorf("39 of 40, near the limit: %+v", j)
	}
}
