// Weights that nobody knows exactly.

package bayes

import "math"

// strays are points of a standard normal and their weights: Gauss-Hermite of
// seven points.
//
// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table
// 25.10, n = 7, turned to the standard normal (x·√2, w/√π); from memory, and
// held against moments of the normal by a test.
var strays = [...]struct{ at, weight float64 }{
	{0, 16.0 / 35},
	{1.154405394739968, 0.2401231786050127}, {-1.154405394739968, 0.2401231786050127},
	{2.366759410734541, 0.03075712396758651}, {-2.366759410734541, 0.03075712396758651},
	{3.750439717725742, 0.0005482688559722184}, {-3.750439717725742, 0.0005482688559722184},
}

// stray is what a probability comes to on the average when its log odds lie
// off by a normal of that standard deviation: nearer to a half. An answer is
// given once, so that the average is all that counts of it.
func stray(p, deviation float64) float64 {
	if deviation == 0 {
		return p
	}
	odds, sum := math.Log(p/(1-p)), 0.0
	for _, s := range strays {
		sum += s.weight / (1 + math.Exp(-odds-deviation*s.at))
	}
	return sum
}

// Strayed is the model of somebody who knows that the probabilities of signs,
// as they are written down, are off on the boat at hand.
func (m *Model) Strayed(deviation float64) Model {
	known := map[float64]float64{}
	all := func(row []float64) []float64 {
		out := make([]float64, len(row))
		for q, p := range row {
			if _, ok := known[p]; !ok {
				known[p] = stray(p, deviation)
			}
			out[q] = known[p]
		}
		return out
	}
	s := *m
	s.Leak, s.Yes = all(m.Leak), nil
	for _, row := range m.Yes {
		s.Yes = append(s.Yes, all(row))
	}
	return s
}
