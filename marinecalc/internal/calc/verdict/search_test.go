package verdict

import (
	"math"
	"testing"
)

// The edge is found from the side on which the word is told, to a 128th of the
// way, whatever is known of what is spare; where what the trials take off the
// limit is much the same all along, in a few tries, and never in many more than
// halving would take.
func TestEdgeOfASearch(t *testing.T) {
	for _, c := range []struct {
		name  string
		left  func(at float64) float64
		taken func(at float64) float64 // by the trials
		most  int
	}{
		{"without trials", nil, func(float64) float64 { return 0 }, 7},
		{"as much all along", func(at float64) float64 { return 3 - at*at }, func(float64) float64 { return 0.3 }, 4},
		{"less and less", func(at float64) float64 { return 3 - at }, func(at float64) float64 { return 2 - at/2 }, 11},
		{"not known", func(at float64) float64 { return 3 - at }, func(float64) float64 { return math.NaN() }, 12},
	} {
		for _, far := range []float64{2.9, 5, 40} {
			tries, edge := 0, 1.2
			spare := func(at float64) float64 { return edge - at }
			if c.left != nil && !math.IsNaN(c.taken(0)) {
				spare = func(at float64) float64 { return c.left(at) - c.taken(at) }
				for edge = 0; spare(edge) > 0; {
					edge += 1e-5
				}
			}
			told := func(at float64) (bool, float64) {
				tries++
				if s := spare(at); !math.IsNaN(c.taken(0)) {
					return s > 0, s
				}
				return spare(at) > 0, math.NaN()
			}
			s := search{in: point{0, spare(0)}, out: point{at: far}, left: c.left}
			if math.IsNaN(c.taken(0)) {
				s.in.spare = math.NaN()
			}
			got := s.edge(told)
			if got > edge || got < edge-1.01*far/128 {
				t.Errorf("%s, as far as %g: %g, want %g", c.name, far, got, edge)
			}
			if tries > c.most {
				t.Errorf("%s, as far as %g: %d tries", c.name, far, tries)
			}
		}
	}
}

// A word may be told although the end of the interval shows nothing to spare, since
// the two count trials alike but for one; it turns there then, and the search looks
// beside it and does not halve all the way.
func TestEdgeBesideTheEndOfTheInterval(t *testing.T) {
	left := func(at float64) float64 { return 3 - at*at }
	edge := math.Sqrt(2.8)
	for _, far := range []float64{2.9, 5, 40} {
		tries := 0
		told := func(at float64) (bool, float64) {
			tries++
			return at < edge, left(at) - 0.3
		}
		s := search{in: point{1.66, left(1.66) - 0.3}, out: point{at: far}, left: left}
		if got := s.edge(told); got > edge || got < edge-1.01*far/128 {
			t.Errorf("as far as %g: %g, want %g", far, got, edge)
		}
		if tries > 3 {
			t.Errorf("as far as %g: %d tries", far, tries)
		}
	}
}
