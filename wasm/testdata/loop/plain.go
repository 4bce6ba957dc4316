package main

import (
	"math"
	"slices"
)

// plain is Monte Carlo as anyone would write it down: it draws four factors a
// trial, hands them to a model, keeps the result, and sorts all results for
// their 95 % interval, whose width it gives.
func plain(seed, trials int) float64 {
	state := uint64(seed) << 32
	x, results := make([]float64, 4), make([]float64, 0, trials)
	model := formula
	for range trials {
		for i := range x {
			state += 0x9e3779b97f4a7c15
			z := (state ^ state>>30) * 0xbf58476d1ce4e5b9
			z = (z ^ z>>27) * 0x94d049bb133111eb
			x[i] = 1 + float64(int64((z^z>>31)>>11))*0x1p-53
		}
		results = append(results, model(x))
	}
	slices.Sort(results)
	return results[trials-trials/40] - results[trials/40]
}

//go:noinline
func formula(x []float64) float64 { return x[0]*x[1]/x[2] + math.Sqrt(x[3]) }
