package stern

import (
	"math"

	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// GlandHeat draws the gland's temperature rise against the drip rate,
// with the rate as it is and the rise that is wanted. Where the gland was
// measured, the curve is that of the measured heat, and the computed rise
// stands beside it.
func GlandHeat(in gland.HeatInput, out gland.HeatResult, b picture.Brush) []sheet.Drawing {
	const minute = 1.0 / 60
	most := 20 * minute
	for _, rate := range []float64{1.5 * float64(in.DripRate), 1.2 * float64(out.DripRateForRise)} {
		if rate > most && rate <= 90*minute { // more is no drip
			most = rate
		}
	}
	most = max(most, float64(in.DripRate))
	const points = 41
	rates, rises := make([]quantity.DripRate, points), make([]quantity.TemperatureDifference, points)
	for i := range rates {
		rates[i] = quantity.DripRate(most * float64(i) / (points - 1))
	}
	if gland.Curve(in, rates, rises) != nil {
		return nil
	}
	degree, unit := 1.0, "°C"
	if b.Units == quantity.US {
		degree, unit = 5.0/9, "°F"
	}
	const title = "Drip curve"
	measured := !math.IsNaN(float64(out.MeasuredRise))
	now, beside, how, label := out.TemperatureRise, out.MeasuredRise, "Computed", "now"
	if measured {
		now, beside, how, label = out.MeasuredRise, out.TemperatureRise, "Measured", "now, measured"
	}
	description := how + " temperature rise of the gland against drips a minute. It falls from " +
		b.Print("temperature-difference", float64(rises[0]), "", "") + " without drips to " + b.Print("temperature-difference", float64(rises[points-1]), "", "") + " at the right edge."
	if measured {
		description += " It goes through the measured rise, " + b.Print("temperature-difference", float64(now), "", "") + "; " + b.Print("temperature-difference", float64(beside), "", "") + " were computed."
	}
	c := picture.Chart{Picture: picture.Begin(360, 260, title, description), Left: 48, Top: 28, Width: 296, Height: 184,
		X1: most, Y1: 1.1 * max(float64(rises[0]), float64(in.WantedRise), float64(out.TemperatureRise))}
	c.Axes("drips a minute", "rise, "+unit, minute, degree)
	x, y := make([]float64, points), make([]float64, points)
	for i := range rates {
		x[i], y[i] = c.AtX(float64(rates[i])), c.AtY(float64(rises[i]))
	}
	if in.WantedRise > 0 {
		level := c.AtY(float64(in.WantedRise))
		c.Line(picture.Warn, c.Left, level, c.Left+c.Width, level)
		c.Text(picture.Ink, "end", c.Left+c.Width, level-5, "wanted")
	}
	c.Curve(picture.Accent, x, y)
	rate := c.AtX(float64(in.DripRate))
	if measured && beside >= 0 {
		c.Rect(picture.Ink, rate-4, c.AtY(float64(beside))-4, 8, 8)
		c.Text(picture.Ink, "start", rate+8, c.AtY(float64(beside))+14, "computed")
	}
	if now >= 0 {
		c.Circle(picture.Accent, rate, c.AtY(float64(now)), 5)
		c.Text(picture.Ink, "start", rate+8, c.AtY(float64(now))-8, label)
	}
	return []sheet.Drawing{{Name: "drip-curve", Title: title, Description: description, SVG: c.End()}}
}
