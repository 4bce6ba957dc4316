package debris

import (
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

func TestEdgesOfWear(t *testing.T) {
	thick := tooth
	thick.PartThickness = 2 // as thick as may be, so that no wear goes through
	parttest.Edges(t, thick, Wear, map[string]string{
		"/wearDepth":     "[1e-09, 0.5]",
		"/wearLength":    "[1e-06, 10]",
		"/wearWidth":     "[1e-06, 10]",
		"/wearFullness":  "[0.001, 1]",
		"/wearOutline":   "0 or [0.001, 1]",
		"/wornPlaces":    "[1, 1000]",
		"/metalDensity":  "[500, 25000]",
		"/fluidVolume":   "0 or [1e-06, 100]",
		"/fluidDensity":  "0 or [500, 2000]",
		"/partThickness": "0 or [1e-05, 2]",
		"/wornSides":     "0 or [1, 2]",
		"/strengthPower": "0 or [1, 3]",
		"/wearLimit":     "0 or [1e-06, 0.5]",
		"/caseDepth":     "0 or [1e-06, 0.1]",
		"/contactArea":   "0 or [1e-09, 100]",
		"/serviceTime":   "0 or [1, 1e+10]",
	})
}
