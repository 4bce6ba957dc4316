package mount

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

func TestEdgesOfLoad(t *testing.T) {
	parttest.Edges(t, engine(), Load, map[string]string{
		"/engineMass":                 "[20, 50000]",
		"/centreForward":              "[-2, 8]",
		"/centreStarboard":            "[-1, 1]",
		"/centreUp":                   "[-1, 3]",
		"/engineLength":               "[0.2, 10]",
		"/engineWidth":                "[0.1, 5]",
		"/engineHeight":               "[0.1, 5]",
		"/boxFactor":                  "[0.1, 3]",
		"/inertiaRoll":                "0 or NaN or [0.05, 1e+06]",
		"/inertiaPitch":               "0 or NaN or [0.05, 1e+06]",
		"/inertiaYaw":                 "0 or NaN or [0.05, 1e+06]",
		"/usualDeflection":            "0 or NaN or [5e-05, 0.1]",
		"/sidewaysRatio":              "[0.01, 10]",
		"/alongRatio":                 "[0.01, 10]",
		"/dynamicRatio":               "[1, 5]",
		"/dampingRatio":               "[0.001, 0.5]",
		"/creepPerDecade":             "0 or NaN or [0.001, 0.5]",
		"/mountAge":                   "0 or NaN or [86400, 3.1536e+09]",
		"/cylinders":                  "0 or [1, 24]",
		"/idleSpeed":                  "0 or NaN or [20, 400]",
		"/engineSpeed":                "0 or NaN or [2, 1500]",
		"/shaftTorque":                "0 or NaN or [0.1, 1e+06]",
		"/asternTorque":               "0 or NaN or [0.1, 1e+06]",
		"/thrust":                     "0 or NaN or [1, 1e+06]",
		"/asternThrust":               "[0, 2]",
		"/thrustOnMounts":             "[0, 1]",
		"/couplingDiameter":           "0 or NaN or [0.03, 0.8]",
		"/mounts/0/forward":           "[-3, 10]",
		"/mounts/0/starboard":         "[-3, 3]",
		"/mounts/0/up":                "[-2, 2]",
		"/mounts/0/threadPitch":       "0 or NaN or [0.0002, 0.01]",
		"/mounts/0/travelUp":          "NaN or [-0.002, 0.2]",
		"/mounts/0/travelDown":        "NaN or [-0.002, 0.2]",
		"/mounts/0/sidewaysSlack":     "NaN or [-0.002, 0.2]",
		"/mounts/0/footGap":           "NaN or [-0.002, 0.02]",
		"/mounts/0/stiffness":         "0 or NaN or [1000, 1e+09]",
		"/mounts/0/stiffnessSideways": "0 or NaN or [100, 1e+09]",
		"/mounts/0/stiffnessAlong":    "0 or NaN or [100, 1e+09]",
		"/mounts/0/inclination":       fmt.Sprintf("NaN or [-0.05, %v]", math.Pi/3),
		"/mounts/0/deflectionNew":     "0 or NaN or [5e-05, 0.1]",
		"/mounts/0/deflectionNow":     "NaN or [-0.05, 0.1]",
		"/mounts/0/rubberHeight":      "0 or NaN or [0.001, 0.5]",
		"/mounts/0/ratedLoad":         "0 or NaN or [1, 1e+06]",
		"/mounts/0/ratedThrust":       "0 or NaN or [1, 1e+06]",
	})
}

func TestEdgesOfMoves(t *testing.T) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 1e-4}
	parttest.Edges(t, in, Moves, map[string]string{
		"/couplingDiameter":           "[0.03, 0.8]",
		"/meanGap":                    "[-0.0001, 0.05]",
		"/gapVertical":                "[-0.0051, 0.0051]",
		"/gapHorizontal":              "[-0.0051, 0.0051]",
		"/wantedGapVertical":          "[-0.0051, 0.0051]",
		"/wantedGapHorizontal":        "[-0.0051, 0.0051]",
		"/wantedOffsetVertical":       "[-0.0051, 0.0051]",
		"/wantedOffsetHorizontal":     "[-0.0051, 0.0051]",
		"/droopGapTaken":              "[-0.0051, 0.0051]",
		"/offsetVertical":             "NaN or [-0.0051, 0.0051]",
		"/offsetHorizontal":           "NaN or [-0.0051, 0.0051]",
		"/gapRunOut":                  "NaN or [-0.0051, 0.0051]",
		"/offsetRunOut":               "NaN or [-0.0051, 0.0051]",
		"/pilotOffset":                "NaN or [-0.0051, 0.0051]",
		"/sidewaysRatio":              "0 or [0.01, 10]",
		"/mounts/0/forward":           "[-3, 10]",
		"/mounts/0/starboard":         "[-3, 3]",
		"/mounts/0/up":                "[-2, 2]",
		"/mounts/0/threadPitch":       "0 or NaN or [0.0002, 0.01]",
		"/mounts/0/travelUp":          "NaN or [-0.002, 0.2]",
		"/mounts/0/travelDown":        "NaN or [-0.002, 0.2]",
		"/mounts/0/sidewaysSlack":     "NaN or [-0.002, 0.2]",
		"/mounts/0/footGap":           "NaN or [-0.002, 0.02]",
		"/mounts/0/stiffness":         "0 or NaN or [1000, 1e+09]",
		"/mounts/0/stiffnessSideways": "0 or NaN or [100, 1e+09]",
		"/mounts/0/stiffnessAlong":    "0 or NaN or [100, 1e+09]",
		"/mounts/0/inclination":       fmt.Sprintf("NaN or [-0.05, %v]", math.Pi/3),
		"/mounts/0/deflectionNew":     "0 or NaN or [5e-05, 0.1]",
		"/mounts/0/deflectionNow":     "NaN or [-0.05, 0.1]",
		"/mounts/0/rubberHeight":      "0 or NaN or [0.001, 0.5]",
		"/mounts/0/ratedLoad":         "0 or NaN or [1, 1e+06]",
		"/mounts/0/ratedThrust":       "0 or NaN or [1, 1e+06]",
	})
}

// A mount that stands at an end of its travel and is not moved is taken to no
// stop.
func TestStopsOfAMove(t *testing.T) {
	atBottom, free := stud{least: 0, most: 0.010}, stud{least: -0.005, most: 0.005}
	for _, c := range []struct {
		raise, shift float64
		upright      stud
		want         string
	}{
		{0, 0, atBottom, ""}, {0.001, 0, atBottom, ""}, {0.010, 0, atBottom, upperStop}, {-0.001, 0, atBottom, lowerStop},
		{0, 0.005, atBottom, sideStop}, {0, -0.005, atBottom, sideStop}, {0.010, 0.005, atBottom, twoStops}, {-0.001, -0.005, atBottom, twoStops},
		{-0.004, 0.004, free, ""}, {-0.005, 0, free, lowerStop},
	} {
		if got := stop(c.raise, c.shift, c.upright, free, 0.0001); got != c.want {
			t.Errorf("raised %g and shifted %g: %q, want %q", c.raise, c.shift, got, c.want)
		}
	}
}

// What is not given of a mount's stiffness sideways and along is its ratio.
func TestStiffnessByItsRatio(t *testing.T) {
	in := engine()
	in.AlongRatio = 1.3
	want := parttest.Must(t, Load, in)
	in.Mounts = slices.Clone(in.Mounts)
	for i := range in.Mounts {
		in.Mounts[i].StiffnessSideways, in.Mounts[i].StiffnessAlong = 0, 0
	}
	got := parttest.Must(t, Load, in)
	for i := range want.Modes {
		parttest.Within(t, "frequency", got.Modes[i].Frequency, float64(want.Modes[i].Frequency), 1e-12)
	}
}

func TestRefusalsSayTheirFigures(t *testing.T) {
	in := MovesInput{Mounts: fourMounts(), CouplingDiameter: 0.1, GapVertical: 0.0062, MeanGap: 0.061}
	_, err := Moves(in)
	parttest.Says(t, err, "6.2 mm is over 5 % of the coupling diameter", "up to 5 mm either way", "a mean gap of 61 mm")
}

// By hand: four mounts as far to one side of a line as to the other lie that
// far off it, root mean square. They are refused as nearly in line just up to
// where the refusal says.
func TestMountsNearlyInLine(t *testing.T) {
	abreast := func(half quantity.Length) error {
		in := engine()
		in.Mounts = slices.Clone(in.Mounts)
		for i := range in.Mounts {
			in.Mounts[i].Forward = quantity.Length(0.3 * float64(i/2))
			in.Mounts[i].Starboard = half * quantity.Length(1-2*(i%2))
		}
		_, err := Load(in)
		return err
	}
	parttest.Says(t, abreast(0.00995), "within 9.95 mm of one line", "10 mm or more off one line")
	if err := abreast(0.01005); err != nil {
		t.Error(err)
	}
}
