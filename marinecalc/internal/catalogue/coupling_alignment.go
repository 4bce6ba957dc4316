package catalogue

import (
	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/joints"
)

// couplingAlignment finds what the readings say, and in the trials how the
// coupling may truly stand about that.
func couplingAlignment(*calc.Session) calc.PerRun[align.CouplingInput, align.CouplingResult] {
	var trials align.Trials
	return calc.PerRun[align.CouplingInput, align.CouplingResult]{Compute: func(in align.CouplingInput) (align.CouplingResult, error) {
		if trials.Best != nil {
			return trials.Run(in)
		}
		out, err := align.Coupling(in)
		if err == nil {
			trials.Best = &out
		}
		return out, err
	}, Draw: joints.CouplingAlignment}
}

// dialAlignment does likewise.
func dialAlignment(*calc.Session) calc.PerRun[align.DialInput, align.DialResult] {
	var trials align.DialTrials
	return calc.PerRun[align.DialInput, align.DialResult]{Compute: trials.Run, Draw: joints.DialAlignment}
}

// alignmentChange finds how the coupling moved between two readings, and in the trials
// how it may truly have moved about that.
func alignmentChange(*calc.Session) calc.PerRun[align.ChangeInput, align.ChangeResult] {
	var trials align.ChangeTrials
	return calc.PerRun[align.ChangeInput, align.ChangeResult]{Compute: trials.Run, Draw: joints.AlignmentChange}
}
