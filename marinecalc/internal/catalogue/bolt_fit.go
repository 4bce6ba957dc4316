package catalogue

import (
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/joints"
)

// boltFit chooses the lengths by the stack as it was measured; in the trials
// the stack is as it may truly be, and the bolt that was bought stays. Were one
// chosen anew in each trial, every bolt would show its threads.
func boltFit(*calc.Session) calc.PerRun[fastener.FitInput, fastener.FitResult] {
	var bought *fastener.FitResult
	return calc.PerRun[fastener.FitInput, fastener.FitResult]{Compute: func(in fastener.FitInput) (fastener.FitResult, error) {
		if bought != nil {
			return fastener.FitAt(in, *bought)
		}
		out, err := fastener.Fit(in)
		if err == nil {
			first := out
			bought = &first
		}
		return out, err
	}, Draw: joints.BoltFit}
}
