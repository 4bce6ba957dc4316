package picture_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
)

// Letters in a drawing that have no space for two systems have one.
func TestSingleIsOneSystem(t *testing.T) {
	for units, want := range map[quantity.System]quantity.System{quantity.Metric: quantity.Metric, quantity.US: quantity.US, quantity.Both: quantity.Metric} {
		if got := (picture.Brush{Units: units, Currency: "EUR"}).Single(); got.Units != want || got.Currency != "EUR" {
			t.Errorf("%v: %+v", units, got)
		}
	}
}

// Each quantity is printed in the unit of drawings, in either system and in
// both.
func TestBrushPrintsInItsUnits(t *testing.T) {
	for name, c := range map[string]struct {
		print      func(picture.Brush) string
		metric, us string
	}{
		"length":       {func(b picture.Brush) string { return b.Length(0.0254) }, "25.4 mm", "1 in"},
		"of a gauge":   {func(b picture.Brush) string { return b.Length(0.00048481) }, "0.485 mm", "0.0191 in"},
		"small length": {func(b picture.Brush) string { return b.SmallLength(0.000254) }, "0.25 mm", "10 thou"},
		"smaller":      {func(b picture.Brush) string { return b.SmallLength(0.00007716) }, "0.077 mm", "3 thou"},
		"hardly there": {func(b picture.Brush) string { return b.SmallLength(0.0000056) }, "0.006 mm", "0.2 thou"},
		"set by hand":  {func(b picture.Brush) string { return b.SetLength(0.0000624) }, "0.06 mm", "2.5 thou"},
		"of a mm":      {func(b picture.Brush) string { return b.SmallLength(0.0009994) }, "1 mm", "39 thou"},
		"over a mm":    {func(b picture.Brush) string { return b.SmallLength(0.0012345) }, "1.23 mm", "48.6 thou"},
		"torque":       {func(b picture.Brush) string { return b.Torque(100) }, "100 N·m", "lbf·ft"},
		"force":        {func(b picture.Brush) string { return b.Force(1000) }, "1000 N", "lbf"},
		"share":        {func(b picture.Brush) string { return b.Percent(0.25) }, "25 %", "25 %"},
		"rotation speed": {func(b picture.Brush) string {
			return b.RotationSpeed(quantity.RotationSpeed(100 * 6.283185307179586 / 60))
		}, "100 rpm", "100 rpm"},
		"frequency": {func(b picture.Brush) string { return b.Frequency(50) }, "50 Hz", "50 Hz"},
		"money":     {func(b picture.Brush) string { return b.Money(120) }, "120 EUR", "120 EUR"},
	} {
		for units, want := range map[quantity.System][]string{quantity.Metric: {c.metric}, quantity.US: {c.us}, quantity.Both: {c.metric, c.us}} {
			text := c.print(picture.Brush{Units: units, Currency: "EUR"})
			for _, w := range want {
				if !strings.Contains(text, w) {
					t.Errorf("%s in %v: %q has no %q", name, units, text, w)
				}
			}
		}
	}
}
