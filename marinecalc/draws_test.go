package marinecalc_test

import (
	"math"
	"os"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// TestDrawsHit is a long check: how far the ends of intervals, the shares and
// the probabilities of verdicts lie off what sixteen runs of 65536 trials say
// together, over eight seeds, for draws of an array and for shuffled ones, which
// other numbers of trials than 4ⁿ have. A quarter of the trials in an array may
// miss by half as much again at the most.
func TestDrawsHit(t *testing.T) {
	if os.Getenv("MARINECALC_DRAWS") == "" {
		t.Skip("set MARINECALC_DRAWS=1 to measure")
	}
	ids := []string{"bolt-preload", "coupling-alignment", "gland-heat", "gland-drip", "bearing-clearance", "bearing-life", "shaft-strength", "key-strength", "coupling-grip", "shaft-droop", "mount-load", "shaft-whirl"}
	ends := map[int]float64{}
	for _, name := range []string{"kittiwake", "juniper"} {
		boat := testboat.Demo(t, name)
		for _, id := range ids {
			run := func(trials, seed int) *marinecalc.Sheet {
				s, err := marinecalc.Run(id, []byte("{}"), marinecalc.Options{Boat: boat, Trials: trials, Seed: uint64(seed), Brief: true})
				if err != nil {
					return nil
				}
				return s
			}
			if run(100, 1) == nil {
				continue
			}
			want := figuresOf(run(65536, 100))
			for seed := 101; seed < 116; seed++ {
				want.add(figuresOf(run(65536, seed)))
			}
			want.divide(16)
			for _, n := range []int{1023, 4095, 1024} {
				var off [3]meanSquare
				for seed := range 8 {
					figuresOf(run(n, seed+1)).compare(want, &off)
				}
				t.Logf("%-10s %-20s %5d ends %5.2f %% of the half width, shares %.4f, probabilities %.4f", name, id, n, 100*off[0].root(), off[1].root(), off[2].root())
				ends[n] += off[0].root()
			}
		}
	}
	if ends[1024] > 1.5*ends[4095] || ends[1024] > ends[1023] {
		t.Errorf("ends miss by %v", ends)
	}
}

type meanSquare struct{ sum, n float64 }

func (m *meanSquare) add(off float64) { m.sum, m.n = m.sum+off*off, m.n+1 }
func (m *meanSquare) root() float64   { return math.Sqrt(m.sum / math.Max(m.n, 1)) }

// figures are the numbers of a sheet that come of its trials, by name.
type figures struct{ low, high, share, probability map[string]float64 }

func figuresOf(s *marinecalc.Sheet) figures {
	f := figures{map[string]float64{}, map[string]float64{}, map[string]float64{}, map[string]float64{}}
	for _, r := range s.Results {
		low, high, ok := r.Range()
		if !ok || r.SI == nil || low == *r.SI || high == *r.SI { // widened to hold what was read
			continue
		}
		f.low[r.Name], f.high[r.Name] = low, high
		for _, x := range r.Shares {
			f.share[r.Name+x.Input] = x.Share
		}
	}
	for _, v := range s.Verdicts {
		if v.Probability != nil && *v.Probability > 0.001 && *v.Probability < 0.999 && len(v.Awaits) == 0 && v.Over == "" {
			f.probability[v.Limit] = *v.Probability
		}
	}
	return f
}

func (f figures) add(g figures) {
	for i, to := range []map[string]float64{f.low, f.high, f.share, f.probability} {
		for name, v := range []map[string]float64{g.low, g.high, g.share, g.probability}[i] {
			to[name] += v
		}
	}
}

func (f figures) divide(by float64) {
	for _, list := range []map[string]float64{f.low, f.high, f.share, f.probability} {
		for name := range list {
			list[name] /= by
		}
	}
}

func (f figures) compare(want figures, off *[3]meanSquare) {
	for name, low := range f.low {
		if _, known := want.low[name]; known {
			half := (want.high[name] - want.low[name]) / 2
			off[0].add((low - want.low[name]) / half)
			off[0].add((f.high[name] - want.high[name]) / half)
		}
	}
	for name, share := range want.share {
		off[1].add(f.share[name] - share)
	}
	for name, p := range want.probability {
		if got, known := f.probability[name]; known {
			off[2].add(got - p)
		}
	}
}
