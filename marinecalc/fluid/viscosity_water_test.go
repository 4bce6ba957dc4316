package fluid

import (
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

func TestWaterViscosityRefuses(t *testing.T) {
	for where, in := range map[string][2]float64{"/waterTemperature": {380, 0}, "/salinity": {300, 0.2}} {
		_, err := WaterViscosity(quantity.Temperature(in[0]), quantity.Ratio(in[1]))
		parttest.RefusedAt(t, err, where)
	}
	_, err := WaterViscosity(260, -1)
	parttest.RefusedAt(t, err, "/waterTemperature", "/salinity")
}
