package trend

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/trend/series"
)

// What was read to is seen in the digits, or in what the readings keep to.
func TestStepOfTheDigits(t *testing.T) {
	form, err := boat.Contract()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		reading string
		texts   []string
		want    float64
	}{
		{"dripRate", []string{"6 drips/min", "7 drips/min", "9 drips/min"}, 1.0 / 60},
		{"bearingClearance", []string{"0.30 mm", "0.30 mm", "0.35 mm", "0.40 mm"}, 0.05e-3},
		{"bearingClearance", []string{"0.31 mm", "0.34 mm", "0.38 mm"}, 0.01e-3},
		{"bearingClearance", []string{"0,31 mm", "0,312 mm"}, 1e-6 * 2},
		{"bearingClearance", []string{"1/64 in", "1/32 in"}, 0.0254 / 64},
		{"bearingClearance", []string{"12 thou", "13 thou"}, 0.0254e-3},
		{"glandTemperature", []string{"40 °C", "41.5 °C", "43 °C"}, 0.5},
		{"glandTemperature", []string{"104 °F", "105 °F"}, 5.0 / 9},
		{"glandTemperature", []string{"313.15", "313.17"}, 0.02},
		{"dripRate", []string{"6 ± 2 drips/min", "6 drips/min"}, 1.0 / 60},
	} {
		f := follower{property: form.Root.Child("readings").Items.Child(c.reading)}
		for _, text := range c.texts {
			var si float64
			if r, err := f.property.Kind.Parse(text); err == nil {
				si = r.SI
			} else {
				si = map[string]float64{"313.15": 313.15, "313.17": 313.17}[text]
			}
			f.read = append(f.read, gathered{text: text})
			f.series.Points = append(f.series.Points, series.Point{Value: si})
		}
		if got := f.step(); math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("%v: %g, want %g", c.texts, got, c.want)
		}
	}
}
