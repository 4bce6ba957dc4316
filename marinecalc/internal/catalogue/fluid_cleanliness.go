package catalogue

import (
	"math"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/gearing"
)

// fluidCleanliness gives a sample its code by the scale of the rule data.
func fluidCleanliness(s *calc.Session) calc.PerRun[fluid.CleanlinessInput, fluid.CleanlinessResult] {
	var scale []fluid.Step
	return calc.PerRun[fluid.CleanlinessInput, fluid.CleanlinessResult]{Compute: func(in fluid.CleanlinessInput) (fluid.CleanlinessResult, error) {
		if scale == nil {
			rows := s.Book.Table("cleanliness-codes").Rows
			scale = make([]fluid.Step, rows.Len())
			for i, row := range rows.All() {
				scale[i] = fluid.Step{Code: int(row.Values.Of("code").SI), Most: row.Values.Of("most").SI}
			}
		} else {
			nest(&in)
		}
		return fluid.Cleanliness(in, scale)
	}, Draw: gearing.FluidCleanliness}
}

// nest lifts the counts of a trial, each drawn by itself, so that each holds
// the larger particles too.
func nest(in *fluid.CleanlinessInput) {
	larger := 0.0
	for _, n := range [...]*float64{&in.Count14, &in.Count6, &in.Count4} {
		if !math.IsNaN(*n) {
			*n = max(*n, larger)
			larger = *n
		}
	}
}
