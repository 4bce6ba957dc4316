package catalogue

import (
	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/joints"
	"example.org/driveline/marinecalc/propeller"
)

// propellerTaper finds what holds a propeller, and in the trials how much that may
// be on either side of what is told.
func propellerTaper(*calc.Session) calc.PerRun[propeller.TaperInput, propeller.TaperResult] {
	return calc.PerRun[propeller.TaperInput, propeller.TaperResult]{Compute: aboutFirst(propeller.Taper, propeller.TaperTrial), Draw: joints.PropellerTaper}
}

// couplingBore does likewise.
func couplingBore(*calc.Session) calc.PerRun[coupling.BoreInput, coupling.BoreResult] {
	return calc.PerRun[coupling.BoreInput, coupling.BoreResult]{Compute: aboutFirst(coupling.Bore, coupling.BoreTrial), Draw: joints.CouplingBore}
}

// aboutFirst computes the estimates, and from then on trials about what they came to.
func aboutFirst[In, Out any](estimates func(In) (Out, error), trial func(In, *Out) (Out, error)) func(In) (Out, error) {
	var best *Out
	return func(in In) (Out, error) {
		if best != nil {
			return trial(in, best)
		}
		out, err := estimates(in)
		if err == nil {
			best = &out
		}
		return out, err
	}
}
