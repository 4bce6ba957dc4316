package gland

import (
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

func TestEdgesOfHeat(t *testing.T) {
	in := sloop()
	parttest.Edges(t, in, Heat, map[string]string{
		"/shaftDiameter":            "0 or [0.01, 0.2]",
		"/boxBore":                  "0 or [0.027, 0.3]",
		"/packedLength":             "0 or [0.003, 0.6]",
		"/shaftSpeed":               "0 or [1, 600]",
		"/dripRate":                 "NaN or [-0.05, 20]",
		"/dripRateAtRest":           "NaN or [-0.05, 20]",
		"/mostDrips":                "[0.02, 20]",
		"/waterTemperature":         "[273.15, 313.15]",
		"/salinity":                 "[0, 0.04]",
		"/airTemperature":           "0 or [253.15, 353.15]",
		"/wantedRise":               "0 or [0.5, 100]",
		"/measuredGlandTemperature": "0 or [286.15, 423.15]",
		"/frictionCoefficient":      "0 or [0.005, 0.6]",
		"/lateralRatio":             "0 or [0.1, 1]",
		"/glandStress":              "[2000, 5e+06]",
		"/dropVolume":               "[1e-08, 3e-07]",
		"/conductivity":             "0 or [5, 420]",
		"/waterFilm":                "[20, 20000]",
		"/airFilm":                  "[1, 100]",
		"/boxAreaRatio":             "[0, 30]",
		"/boxWetRatio":              "[0, 10]",
	})
}

func TestEdgesOfDrip(t *testing.T) {
	parttest.Edges(t, moored(), Drip, map[string]string{
		"/dripRate":         "[-0.05, 20.05]",
		"/dripRateAtRest":   "[-0.05, 20.05]",
		"/dropVolume":       "[1e-08, 3e-07]",
		"/timeUnderWay":     "[0, 604800]",
		"/otherInflow":      "[0, 0.01]",
		"/switchVolume":     "[0, 100]",
		"/cycleVolume":      "[0, 100]",
		"/floodVolume":      "0 or [0.02, 1000]",
		"/pumpFlow":         "[0, 0.1]",
		"/pumpPower":        "[0, 10000]",
		"/standingPower":    "[0, 10000]",
		"/batteryEnergy":    "[0, 1e+10]",
		"/usableShare":      "[0.001, 1]",
		"/timeAway":         "[0, 1e+09]",
		"/waterTemperature": "0 or [273.15, 313.15]",
		"/warmestWater":     "0 or [273.15, 313.15]",
	})
}

func TestEdgesOfPacking(t *testing.T) {
	parttest.Edges(t, small(), Packing, map[string]string{
		"/shaftDiameter":  "[0.0099, 0.201]",
		"/boxBore":        "(0.0268, 0.301]",
		"/boxDepth":       "[0.018, 0.602]",
		"/followerDepth":  "[-0.002, 0.202]",
		"/grooveDiameter": "0 or [0.0125, 0.02525]",
		"/mostOver":       "[0, 0.01]",
		"/mostUnder":      "[0, 0.01]",
		"/skiveAllowance": "[-0.002, 0.05]",
		"/spareRings":     "[0, 20]",
	})
}

func TestRefusalsSayTheirFigures(t *testing.T) {
	for says, change := range map[string]func(*PackingInput){
		"not one ring of 8 mm goes in: the follower leaves 3 mm": func(in *PackingInput) { in.FollowerDepth = 0.045 },
		"21 spare rings":                                  func(in *PackingInput) { in.SpareRings = 21 },
		"leaves 0.5 mm on each side":                      func(in *PackingInput) { in.BoxBore = 0.026 },
		"a groove of 12 mm cannot be in a shaft of 25 mm": func(in *PackingInput) { in.GrooveDiameter = 0.012 },
	} {
		in := small()
		change(&in)
		_, err := Packing(in)
		parttest.Says(t, err, says)
	}
	in := moored()
	in.SwitchVolume, in.FloodVolume = 0.020, 0.015
	_, err := Drip(in)
	parttest.Says(t, err, "harm begins at 15 L, before the pump starts at 20 L")
}
