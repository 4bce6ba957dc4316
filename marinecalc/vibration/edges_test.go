package vibration

import (
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

func TestEdgesOfSource(t *testing.T) {
	in := line()
	in.ZoneAb, in.ZoneBc, in.ZoneCd = 0.0018, 0.0045, 0.0112
	parttest.Edges(t, in, func(in SourceInput) (SourceResult, error) { return Source(in, sources, &Ranking{}) }, map[string]string{
		"/engineSpeed":       "[1, 1500]",
		"/cylinders":         "0 or [1, 24]",
		"/gearRatioAhead":    "0 or [0.1, 40]",
		"/gearRatioAstern":   "0 or [0.1, 40]",
		"/inputTeeth":        "0 or [5, 200]",
		"/blades":            "0 or [1, 12]",
		"/balls":             "0 or [3, 15]",
		"/ballDiameter":      "(0, 0.0390398)",
		"/bearingPitch":      "[0.001, 5]",
		"/contactAngle":      "[-0.05, 1.06]",
		"/bearingSlip":       "[-0.01, 0.2]",
		"/mountFrequency":    "0 or [0.1, 200]",
		"/mountAccuracy":     "[0.0001, 0.5]",
		"/frequency":         "0 or [0.01, 100000]",
		"/frequencyAccuracy": "[0.0001, 10000]",
		"/speedAccuracy":     "[0, 0.5]",
		"/vibrationVelocity": "[0, 10]",
		"/vibrationBaseline": "[0, 10]",
		"/zoneAb":            "[0, 1]",
		"/zoneBc":            "[0.0018, 1]",
		"/zoneCd":            "0 or [0.0045, 1]",
	})
}
