package torque

import (
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

func TestEdgesOfShaft(t *testing.T) {
	parttest.Edges(t, sample(), Shaft, map[string]string{
		"/enginePower":          "(0, inf)",
		"/engineSpeed":          "(0, inf)",
		"/gearRatioAhead":       "(0, inf)",
		"/waterDensity":         "(0, inf)",
		"/gearRatioAstern":      "[0, inf)",
		"/boatSpeed":            "[0, inf)",
		"/propellerDiameter":    "[0, inf)",
		"/gearboxEfficiency":    "(0, 1]",
		"/asternPowerShare":     "(0, 1]",
		"/propulsiveEfficiency": "(0, 1]",
		"/thrustDeduction":      "[0, 1)",
		"/shockFactor":          "[1, inf)",
	})
}
