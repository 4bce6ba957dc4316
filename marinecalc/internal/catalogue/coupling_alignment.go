package catalogue

import (
	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing"
)

// couplingAlignment finds what the readings say, and in the trials how the
// coupling may truly stand about that.
func couplingAlignment(*calc.Session) calc.PerRun[align.CouplingInput, align.CouplingResult] {
	var best *align.CouplingResult
	return calc.PerRun[align.CouplingInput, align.CouplingResult]{Compute: func(in align.CouplingInput) (align.CouplingResult, error) {
		if best != nil {
			return align.Trial(in, best)
		}
		out, err := align.Coupling(in)
		if err == nil {
			best = &out
		}
		return out, err
	}, Draw: drawing.CouplingAlignment}
}
