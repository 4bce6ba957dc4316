package fluid

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

func TestEdgesOfSettling(t *testing.T) {
	parttest.Edges(t, sump, Settling, map[string]string{
		"/particleSize":       "[1e-08, 0.01]",
		"/metalDensity":       "(870, 25000]",
		"/fluidDensity":       "[500, 2000]",
		"/standingTime":       "[0.1, 4e+08]",
		"/dipDepth":           "[0.0001, 0.0945]",
		"/sumpDepth":          "[0.001, 5]",
		"/fluidTemperature":   "[243, 423.2]",
		"/densityPoint":       "0 or NaN or [243, 423.2]",
		"/coolPoint":          "[243, 423.2]",
		"/hotPoint":           "[243, 423.2]",
		"/runningTemperature": "0 or NaN or [243, 423.2]",
		"/coolViscosity":      "[1.99e-06, 1]",
		"/hotViscosity":       "[1.99e-06, 3.2e-05)",
		"/fluidViscosity":     "0 or NaN or [1e-07, 1]",
		"/visibleSize":        "0 or NaN or [1e-06, 0.01]",
		"/sizes/0/size":       "any",
	})
}

func TestEdgesOfFlush(t *testing.T) {
	in := FlushInput{FluidVolume: 2.2e-3, LeftVolume: 0.7e-3, WantedShare: 0.05, PlannedChanges: 1}
	parttest.Edges(t, in, Flush, map[string]string{
		"/fluidVolume":    "[1e-06, 100]",
		"/leftVolume":     "NaN or [-0.001, 0.0022)",
		"/filterVolume":   "NaN or [-0.001, 0.000701]",
		"/filterCatch":    "NaN or [-0.01, 0.999]",
		"/wantedShare":    "[1e-09, 0.999]",
		"/plannedChanges": "0 or [1, 50]",
		"/debrisShare":    "NaN or [0, 1]",
	})
}

// The counts are whole numbers, each of which holds the larger particles:
// other tests try them.
func TestEdgesOfCleanliness(t *testing.T) {
	in := CleanlinessInput{Count4: math.NaN(), Count6: 8000, Count14: 15, SampleVolume: 100e-6}
	parttest.Edges(t, in, func(in CleanlinessInput) (CleanlinessResult, error) {
		return Cleanliness(in, []Step{{Code: 28, Most: 1e12}})
	}, map[string]string{
		"/sampleVolume":  "[1e-07, 0.01]",
		"/countedVolume": "0 or NaN or [1e-08, 0.01]",
		"/count4":        "any",
		"/count6":        "any",
		"/count14":       "any",
		"/wantedCode4":   "any",
		"/wantedCode6":   "any",
		"/wantedCode14":  "any",
	})
}

func TestEdgesOfWater(t *testing.T) {
	type sea struct{ WaterTemperature, Salinity float64 }
	parttest.Edges(t, sea{288, 0.035}, func(in sea) (Water, error) {
		return Sea(quantity.Temperature(in.WaterTemperature), quantity.Ratio(in.Salinity))
	}, map[string]string{"/waterTemperature": "[273.15, 313.15]", "/salinity": "[0, 0.04]"})

	type fresh struct{ WaterTemperature, Pressure float64 }
	parttest.Edges(t, fresh{288, 1e5}, func(in fresh) (Water, error) {
		return Fresh(quantity.Temperature(in.WaterTemperature), quantity.Pressure(in.Pressure))
	}, map[string]string{"/waterTemperature": "[273.15, 623.15]", "/pressure": fmt.Sprintf("[%v, 1e+08]", saturation(288))})
}

// The sizes of a table of settling are refused as one list.
func TestEdgesOfSizes(t *testing.T) {
	for size, refused := range map[quantity.Length]bool{1e-8: false, 0.01: false, 0.999e-8: true, 0.01001: true, 0: true, -1: true} {
		in := sump
		in.Sizes = []Size{{"fine", 5e-6}, {"tried", size}}
		if _, err := Settling(in); refused {
			parttest.RefusedAt(t, err, "/sizes")
		} else if err != nil {
			t.Errorf("%g: %v", float64(size), err)
		}
	}
	in := sump
	in.Sizes = slices.Repeat([]Size{{"fine", 5e-6}}, MostSizes)
	if _, err := Settling(in); err != nil {
		t.Errorf("%d sizes: %v", MostSizes, err)
	}
	in.Sizes = append(in.Sizes, Size{"fine", 5e-6})
	_, err := Settling(in)
	parttest.RefusedAt(t, err, "/sizes")
}
