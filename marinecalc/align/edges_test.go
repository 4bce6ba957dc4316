package align

import (
	"fmt"
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
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

// One place read twice, 0.3 mm apart at the most, and no more than 96 readings of each.
func TestOnePlaceTwiceAndTooMany(t *testing.T) {
	for apart, refused := range map[float64]bool{0.29e-3: false, 0.31e-3: true} {
		in := faces(truth{mean: 1e-3}.read(append(round(4), 0), []float64{0}))
		in.Readings[4].Gap += quantity.Length(apart)
		if _, err := Coupling(in); refused {
			parttest.RefusedAt(t, err, "/readings/4/gap")
		} else if err != nil {
			t.Errorf("%g m apart: %v", apart, err)
		}
	}
	for n, refused := range map[int]bool{96: false, 97: true} {
		in := faces(truth{mean: 1e-3}.read(round(n), []float64{0}))
		if _, err := Coupling(in); refused != (err != nil) {
			t.Errorf("%d gaps: %v", n, err)
		}
		in = faces(truth{mean: 1e-3}.read(round(4), []float64{0}))
		for _, clock := range round(n) {
			in.RimReadings = append(in.RimReadings, RimReading{Clock: quantity.Direction(clock)})
		}
		if _, err := Coupling(in); refused != (err != nil) {
			t.Errorf("%d steps: %v", n, err)
		}
	}
}
