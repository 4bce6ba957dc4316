package align

import (
	"fmt"
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

func TestEdgesOfCoupling(t *testing.T) {
	in := faces(truth{mean: 1e-3, fixed: vector{1e-4, 0}}.read(round(4), []float64{0}))
	in.ShaftEnd, in.DroopSlope, in.DroopSag = HangingFree, 0.001, 0.0005
	for _, r := range in.Readings {
		in.RimReadings = append(in.RimReadings, RimReading{Clock: r.Clock})
	}
	turn := fmt.Sprintf("[-0.2, %v]", 2*math.Pi+0.2)
	parttest.Edges(t, in, Coupling, map[string]string{
		"/couplingDiameter":    "[0.03, 0.8]",
		"/readings/0/clock":    turn,
		"/readings/0/turn":     turn,
		"/rimReadings/0/clock": turn,
		"/rimReadings/0/turn":  turn,
		"/readings/0/gap":      "[-0.0001, 0.05]",
		"/rimReadings/0/step":  "[-0.05, 0.05]",
		"/droopSlope":          "[-0.1, 0.25]",
		"/droopSag":            "[-0.02, 0.06]",
		"/gapAllowance":        "any",
		"/pilotDepth":          "NaN or [-0.0001, 0.2]",
		"/freeLength":          "NaN or [-0.0001, 10]",
		"/hiddenOffset":        "NaN or [-0.0001, 0.01]",
		"/knownFaceRunOut":     "NaN or [-0.0001, 0.01]",
		"/knownRimRunOut":      "NaN or [-0.0001, 0.01]",

		"/readings/0/gapUncertainty":     "any",
		"/rimReadings/0/stepUncertainty": "any",
	})
}

// One step of the rim is too few to use, and is looked at all the same: what
// cannot be is named at its place.
func TestALoneStepIsLookedAt(t *testing.T) {
	in := faces(truth{mean: 1e-3}.read(round(4), []float64{0}))
	in.RimReadings = []RimReading{{Step: 0.06}}
	_, err := Coupling(in)
	parttest.RefusedAt(t, err, "/rimReadings/0/step")
}
