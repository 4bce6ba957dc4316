package marinecalc

import (
	"math"

	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawDripCurve draws the gland's temperature rise against the drip rate,
// with the rate as it is and the rise that is wanted.
func drawDripCurve(in gland.Running, out gland.Warmth, b brush) []sheet.Drawing {
	const minute = 1.0 / 60
	most := 20 * minute
	for _, rate := range []float64{1.5 * float64(in.DripRate), 1.2 * float64(out.DripRateForRise)} {
		if rate > most && rate <= 20 {
			most = rate
		}
	}
	const points = 41
	rates, rises := make([]quantity.DripRate, points), make([]quantity.TemperatureDifference, points)
	for i := range rates {
		rates[i] = quantity.DripRate(most * float64(i) / (points - 1))
	}
	if gland.Curve(in, rates, rises) != nil {
		return nil
	}
	degree, unit := 1.0, "K"
	if b.units == quantity.US {
		degree, unit = 5.0/9, "°F"
	}
	const title = "Drip curve"
	description := "Computed temperature rise of the gland against drips a minute. It falls from " +
		temperatureText(float64(rises[0]), b.units) + " without drips to " + temperatureText(float64(rises[points-1]), b.units) + " at the right edge."
	c := chart{picture: begin(360, 260, title, description), left: 48, top: 28, width: 296, height: 184,
		x1: most, y1: 1.1 * math.Max(float64(rises[0]), float64(in.WantedRise))}
	c.axes("drips a minute", "rise, "+unit, minute, degree)
	x, y := make([]float64, points), make([]float64, points)
	for i := range rates {
		x[i], y[i] = c.atX(float64(rates[i])), c.atY(float64(rises[i]))
	}
	if in.WantedRise > 0 {
		level := c.atY(float64(in.WantedRise))
		c.line(warn, c.left, level, c.left+c.width, level)
		c.text(ink, "end", c.left+c.width, level-5, "wanted")
	}
	c.curve(accent, x, y)
	c.circle(accent, c.atX(float64(in.DripRate)), c.atY(float64(out.TemperatureRise)), 5)
	c.text(ink, "start", c.atX(float64(in.DripRate))+8, c.atY(float64(out.TemperatureRise))-8, "now")
	if out.MeasuredRise >= 0 && float64(out.MeasuredRise) <= c.y1 {
		c.rect(ink, c.atX(float64(in.DripRate))-4, c.atY(float64(out.MeasuredRise))-4, 8, 8)
		c.text(ink, "start", c.atX(float64(in.DripRate))+8, c.atY(float64(out.MeasuredRise))+14, "measured")
	}
	return []sheet.Drawing{{Name: "drip-curve", Title: title, Description: description, SVG: c.end()}}
}

func temperatureText(kelvin float64, units quantity.System) string {
	kind, _ := quantity.Lookup("temperature-difference")
	return kind.Print(kelvin, units, "", "")
}
