package bearing

import (
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

func TestEdgesOfClearance(t *testing.T) {
	parttest.Edges(t, used(), Clearance, map[string]string{
		"/shaftDiameter":    "(0, inf)",
		"/runningTime":      "(0, inf)",
		"/grooveDepthNew":   "(0, inf)",
		"/bearingClearance": "[-0.0003, 0.015]",
		"/newClearance":     "NaN or [-0.0003, 0.015]",
		"/earlierClearance": "NaN or [-0.0003, 0.015]",
		"/bladeWidth":       "[0, 0.03]",
		"/shellBore":        "0 or [0.0297, 0.045]",
		"/wornLimit":        "[0, inf)",
		"/bearingLength":    "[0, inf)",
		"/grooveDepth":      "NaN or [0, 0.0038]",
		"/liftTravel":       "NaN or [-0.0003, 0.03]",
		"/liftPull":         "[0, inf)",
		"/secondTravel":     "any",
		"/secondPull":       "[0, inf)",
		"/elasticShare":     "NaN or [-1, 0.95]",
		"/dialAft":          "any",
		"/spanAhead":        "[0, inf)",
		"/tiltFactor":       "any",
		"/wireIn":           "any",
		"/wireOut":          "any",
		"/wireShare":        "[0, 1]",
		"/markDistance":     "[0, inf)",
		"/markFirst":        "[0, inf)",
		"/markClearance":    "NaN or [-0.0003, 0.015]",
	})
	in := lifted()
	in.WireIn, in.WireOut, in.WireShare = 0.0004, 0.0005, 0.5
	in.MarkDistance, in.MarkFirst, in.MarkClearance = 0.042, 0.0417, 0.0002
	in.DialAft, in.SpanAhead, in.TiltFactor, in.ElasticShare = 0.1, 1, 1.2, 0.1
	in.NewClearance, in.EarlierClearance, in.GrooveDepth = 0.0001, unreadLength, unreadLength
	parttest.Edges(t, in, Clearance, map[string]string{
		"/shaftDiameter":    "(0, inf)",
		"/runningTime":      "[0, inf)",
		"/grooveDepthNew":   "[0, inf)",
		"/bearingClearance": "NaN or [-0.0003, 0.015]",
		"/newClearance":     "NaN or [-0.0003, 0.015]",
		"/earlierClearance": "any",
		"/bladeWidth":       "[0, 0.03]",
		"/shellBore":        "0 or [0.0297, 0.045]",
		"/wornLimit":        "[0, inf)",
		"/bearingLength":    "[0, inf)",
		"/grooveDepth":      "any",
		"/liftTravel":       "any",
		"/liftPull":         "any",
		"/secondTravel":     "about NaN or (0.00016, 0.00092)",
		"/secondPull":       "about (0, 272.72727272727275)",
		"/elasticShare":     "NaN or [-1, 0.95]",
		"/dialAft":          "[-0.4166666666666667, 2]",
		"/spanAhead":        "[0, inf)",
		"/tiltFactor":       "[1, 1.5]",
		"/wireIn":           "any",
		"/wireOut":          "about (0.0001, 0.0153)",
		"/wireShare":        "[0, 1]",
		"/markDistance":     "about 0 or (0.0342, 0.0567)",
		"/markFirst":        "any",
		"/markClearance":    "NaN or [-0.0003, 0.015]",
	})
}

func TestEdgesOfLife(t *testing.T) {
	in := output()
	in.BearingBore, in.SeatDiameter, in.BoreDiameter = 0.030, 0.030, 0.030
	parttest.Edges(t, in, Life, map[string]string{
		"/dynamicRating":      "(0, inf)",
		"/shaftSpeed":         "(0, inf)",
		"/staticRating":       "[0, inf)",
		"/radialLoad":         "[0, inf)",
		"/thrust":             "[0, inf)",
		"/axialFactor":        "[0, inf)",
		"/loadLimit":          "[0, inf)",
		"/addedLoad":          "NaN or [0, inf)",
		"/shaftDiameter":      "[0, inf)",
		"/elasticModulus":     "[0, inf)",
		"/overhang":           "[0, inf)",
		"/bearingSpan":        "[0, inf)",
		"/wantedLife":         "[0, inf)",
		"/bearingBore":        "[0, inf)",
		"/radialFactor":       "[1e-06, 1]",
		"/reliabilityFactor":  "[1e-06, 1]",
		"/loadFactor":         "[1, 10]",
		"/offset":             "NaN or [-0.05, 0.05]",
		"/angle":              "NaN or [-0.2, 0.2]",
		"/staticRadialFactor": "NaN or [1e-06, 1]",
		"/staticAxialFactor":  "NaN or [0, inf)",
		"/freeLength":         "0 or [0.025, inf)",
		"/rigidShare":         "[0, 1]",
		"/seatUpper":          "NaN or [-0.001, 0.001]",
		"/seatLower":          "NaN or [-0.001, 1.5e-05]",
		"/boreUpper":          "NaN or [-0.001, 0.001]",
		"/boreLower":          "NaN or [-0.001, 0]",
		"/seatDiameter":       "about 0 or (0.029, 0.031)",
		"/boreDiameter":       "about 0 or (0.029, 0.031)",
		"/axialRow":           "any",
	})
}

func TestRefusalsSayTheirFigures(t *testing.T) {
	in := output()
	in.BearingBore, in.SeatDiameter, in.BoreDiameter = 0.030, 0.0285, 0.0312
	_, err := Life(in)
	parttest.Says(t, err, "a seat of 28.5 mm is not that of a bore of 30 mm", "a bore of 31.2 mm is not one of 30 mm")
}

// Ten years of 365.25 days.
func TestNeverIsTenYears(t *testing.T) {
	parttest.Within(t, "never", float64(Never), 3652.5*24*3600, 0)
}
