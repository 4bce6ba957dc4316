package spread

import (
	"math"
	"slices"
	"testing"
)

// The array has strength two, by its definition (Hedayat, Sloane and Stufken,
// Orthogonal Arrays, 1999, 1.1, from memory): in any two columns each pair of
// groups stands once. Each column has one draw in each stratum.
func TestArraysHaveStrengthTwo(t *testing.T) {
	for _, n := range []int{256, 1024, 4096} {
		side := arraySide(n)
		d := &dealer{seed: 3, n: n, groups: groupsFor(n)}
		columns := make([]*deck, arrayColumns(side))
		for place := range columns {
			columns[place] = d.deal(place)
			seen := make([]bool, n)
			for trial, at := range columns[place].at {
				s := int(at)
				if seen[s] || at == float64(s) || int(columns[place].group[trial]) != s/side || !columns[place].even {
					t.Fatalf("%d trials, column %d: %g is the second of its stratum, on its edge or in the wrong group", n, place, at)
				}
				seen[s] = true
			}
		}
		for i, a := range columns {
			for j, b := range columns[:i] {
				if n == 4096 && (i+j)%7 > 0 { // some of 2080 pairs
					continue
				}
				seen := make([]bool, n)
				for trial := range n {
					pair := int(a.group[trial])*side + int(b.group[trial])
					if seen[pair] {
						t.Fatalf("%d trials, columns %d and %d: the groups %d and %d come twice", n, i, j, a.group[trial], b.group[trial])
					}
					seen[pair] = true
				}
			}
		}
		if d.deal(len(columns)).even {
			t.Errorf("%d trials: column %d is one too many", n, len(columns))
		}
	}
	if arraySide(1023) != 0 || arraySide(2048) != 0 || arraySide(1<<14) != 0 {
		t.Error("an array for another number of trials")
	}
}

// A product of log-normal factors is log-normal, with the quantiles of its
// closed form. Where one factor does most, as on a sheet, 1024 trials of an
// array miss the ends of the interval by three quarters of what as many miss
// that are shuffled; of eight alike, the worst there is, by as much. The mean
// they find better than 4096.
func TestWhatAnArrayIsWorth(t *testing.T) {
	alike := make([]Factor, 8)
	for i := range alike {
		alike[i] = normal(0, 0.1)
	}
	worth(t, "one leads", []Factor{normal(0, 0.3), normal(0, 0.1), normal(0, 0.1), normal(0, 0.05)}, 0.85)
	worth(t, "all alike", alike, 1.1)
}

func worth(t *testing.T, name string, f []Factor, most float64) {
	variance := 0.0
	for _, f := range f {
		variance += f.StdDev() * f.StdDev()
	}
	sd := math.Sqrt(variance)
	model := func(x, y []float64) bool {
		y[0] = 0
		for _, x := range x {
			y[0] += x
		}
		y[0] = math.Exp(y[0])
		return true
	}
	off := func(trials int, shuffled bool) (mean, ends float64) {
		const seeds = 40
		for seed := range uint64(seeds) {
			m := model
			list := slices.Clone(f)
			if shuffled { // behind the last column of the array
				list = append(make([]Factor, 65), list...)
				m = func(x, y []float64) bool { return model(x[65:], y) }
			}
			r := mustPropagate(t, list, 1, Plan{Trials: trials, Seed: seed + 1, Shares: 1}, m).Results[0]
			mean += math.Pow(r.Mean/math.Exp(variance/2)-1, 2) / seeds
			ends += (math.Pow(r.Low/math.Exp(-z95*sd)-1, 2) + math.Pow(r.High/math.Exp(z95*sd)-1, 2)) / seeds
		}
		return math.Sqrt(mean), math.Sqrt(ends)
	}
	mean, ends := off(1024, false)
	mean4, ends4 := off(4096, true)
	meanFew, endsFew := off(1024, true)
	t.Logf("%s: mean %.5f, ends %.5f; shuffled, four times as many %.5f and %.5f, as many %.5f and %.5f", name, mean, ends, mean4, ends4, meanFew, endsFew)
	if mean > mean4 || ends > most*endsFew {
		t.Errorf("%s: an array is worth less than that", name)
	}
}
