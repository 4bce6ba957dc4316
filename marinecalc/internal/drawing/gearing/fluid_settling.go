package gearing

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/sheet"
)

// FluidSettling draws, on two scales of powers of ten, the largest particle of
// which anything is left where the stick reads, and anywhere in the sump,
// against the time of standing.
func FluidSettling(in fluid.SettlingInput, out fluid.SettlingResult, b picture.Brush) []sheet.Drawing {
	const title = "Particle size against time of standing"
	description := "After " + b.Print("time", float64(in.StandingTime), "h", "h") + " nothing larger than " +
		b.Print("length", float64(out.LargestInDip), "µm", "thou") + " is left where the stick reads."
	const day, micron = 86400.0, 1e-6
	c := picture.Chart{Picture: picture.Begin(360, 280, title, description), Left: 48, Top: 30, Width: 296, Height: 196,
		X0: math.Log10(60), X1: math.Log10(100 * day), Y0: math.Log10(micron), Y1: math.Log10(1000 * micron)}
	c.Line(picture.Faint, c.Left, c.Top, c.Left, c.Top+c.Height)
	c.Line(picture.Faint, c.Left, c.Top+c.Height, c.Left+c.Width, c.Top+c.Height)
	for _, mark := range []struct {
		seconds float64
		name    string
	}{{60, "1 min"}, {3600, "1 h"}, {day, "1 day"}, {7 * day, "1 wk"}, {91 * day, "3 mo"}} {
		x := c.AtX(math.Log10(mark.seconds))
		c.Line(picture.Faint, x, c.Top, x, c.Top+c.Height+4)
		c.Text(picture.Ink, "middle", x, c.Top+c.Height+18, mark.name)
	}
	for _, size := range []float64{1, 5, 14, 50, 100, 500} {
		y := c.AtY(math.Log10(size * micron))
		c.Line(picture.Faint, c.Left-4, y, c.Left+c.Width, y)
		c.Text(picture.Ink, "end", c.Left-7, y+4, strconv.FormatFloat(size, 'g', -1, 64))
	}
	c.Text(picture.Ink, "middle", c.Left+c.Width/2, c.Top+c.Height+38, "time of standing")
	c.Text(picture.Ink, "start", 4, c.Top-12, "size, µm")
	// Both lines fall by half a power of ten in one of time: size² is depth over time.
	unit := float64(out.LargestInDip) * float64(out.LargestInDip) * float64(in.StandingTime)
	if _, _, x, y, drawn := drawSinking(&c, picture.Accent, unit); drawn {
		c.Text(picture.Ink, "end", x-14, y-6, "gone from the stick")
	}
	if x, y, _, _, drawn := drawSinking(&c, picture.Ink, unit*float64(in.SumpDepth)/float64(in.DipDepth)); drawn {
		c.Text(picture.Ink, "start", x+10, y-2, "all on the bottom")
	}
	if in.VisibleSize > 0 {
		y := c.AtY(math.Log10(float64(in.VisibleSize)))
		c.Line(picture.Warn, c.Left, y, c.Left+c.Width, y)
		c.Text(picture.Ink, "end", c.Left+c.Width, y-4, "an eye sees above this")
	}
	if t := math.Log10(float64(in.StandingTime)); t > c.X0 && t < c.X1 {
		c.Line(picture.Warn, c.AtX(t), c.Top, c.AtX(t), c.Top+c.Height)
		if y := math.Log10(float64(out.LargestInDip)); y > c.Y0 && y < c.Y1 {
			c.Circle(picture.Accent, c.AtX(t), c.AtY(y), 5)
		}
	}
	return []sheet.Drawing{{Name: "settling", Title: title, Description: description, SVG: c.End()}}
}

// drawSinking draws the line size² = unit/time, cut to the chart, and gives its
// ends.
func drawSinking(c *picture.Chart, class string, unit float64) (x0, y0, x1, y1 float64, drawn bool) {
	from := max(c.X0, math.Log10(unit)-2*c.Y1)
	to := min(c.X1, math.Log10(unit)-2*c.Y0)
	if from >= to {
		return 0, 0, 0, 0, false
	}
	size := func(t float64) float64 { return c.AtY((math.Log10(unit) - t) / 2) }
	x0, y0, x1, y1 = c.AtX(from), size(from), c.AtX(to), size(to)
	c.Line(class, x0, y0, x1, y1)
	return x0, y0, x1, y1, true
}
