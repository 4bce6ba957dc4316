package marinecalc

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawSettling draws, on two scales of powers of ten, the largest particle of
// which anything is left where the stick reads, and anywhere in the sump,
// against the time of standing.
func drawSettling(in fluid.Settling, out fluid.Sediment, b brush) []sheet.Drawing {
	const title = "Particle size against time of standing"
	length, _ := quantity.Lookup("length")
	clock, _ := quantity.Lookup("time")
	description := "After " + clock.Print(float64(in.StandingTime), b.units, "h", "h") + " nothing larger than " +
		length.Print(float64(out.LargestInDip), b.units, "µm", "thou") + " is left where the stick reads."
	const day, micron = 86400.0, 1e-6
	c := chart{picture: begin(360, 280, title, description), left: 48, top: 30, width: 296, height: 196,
		x0: math.Log10(60), x1: math.Log10(100 * day), y0: math.Log10(micron), y1: math.Log10(1000 * micron)}
	c.line(faint, c.left, c.top, c.left, c.top+c.height)
	c.line(faint, c.left, c.top+c.height, c.left+c.width, c.top+c.height)
	for _, mark := range []struct {
		seconds float64
		name    string
	}{{60, "1 min"}, {3600, "1 h"}, {day, "1 day"}, {7 * day, "1 wk"}, {91 * day, "3 mo"}} {
		x := c.atX(math.Log10(mark.seconds))
		c.line(faint, x, c.top, x, c.top+c.height+4)
		c.text(ink, "middle", x, c.top+c.height+18, mark.name)
	}
	for _, size := range []float64{1, 5, 14, 50, 100, 500} {
		y := c.atY(math.Log10(size * micron))
		c.line(faint, c.left-4, y, c.left+c.width, y)
		c.text(ink, "end", c.left-7, y+4, strconv.FormatFloat(size, 'g', -1, 64))
	}
	c.text(ink, "middle", c.left+c.width/2, c.top+c.height+38, "time of standing")
	c.text(ink, "start", 4, c.top-12, "size, µm")
	// Both lines fall by half a power of ten in one of time: size² is depth over time.
	unit := float64(out.LargestInDip) * float64(out.LargestInDip) * float64(in.StandingTime)
	if _, _, x, y, drawn := drawSinking(&c, accent, unit); drawn {
		c.text(ink, "end", x-14, y-6, "gone from the stick")
	}
	if x, y, _, _, drawn := drawSinking(&c, ink, unit*float64(in.SumpDepth)/float64(in.DipDepth)); drawn {
		c.text(ink, "start", x+10, y-2, "all on the bottom")
	}
	if in.VisibleSize > 0 {
		y := c.atY(math.Log10(float64(in.VisibleSize)))
		c.line(warn, c.left, y, c.left+c.width, y)
		c.text(ink, "end", c.left+c.width, y-4, "an eye sees above this")
	}
	if t := math.Log10(float64(in.StandingTime)); t > c.x0 && t < c.x1 {
		c.line(warn, c.atX(t), c.top, c.atX(t), c.top+c.height)
		if y := math.Log10(float64(out.LargestInDip)); y > c.y0 && y < c.y1 {
			c.circle(accent, c.atX(t), c.atY(y), 5)
		}
	}
	return []sheet.Drawing{{Name: "settling", Title: title, Description: description, SVG: c.end()}}
}

// drawSinking draws the line size² = unit/time, cut to the chart, and gives its
// ends.
func drawSinking(c *chart, class string, unit float64) (x0, y0, x1, y1 float64, drawn bool) {
	from := max(c.x0, math.Log10(unit)-2*c.y1)
	to := min(c.x1, math.Log10(unit)-2*c.y0)
	if from >= to {
		return 0, 0, 0, 0, false
	}
	size := func(t float64) float64 { return c.atY((math.Log10(unit) - t) / 2) }
	x0, y0, x1, y1 = c.atX(from), size(from), c.atX(to), size(to)
	c.line(class, x0, y0, x1, y1)
	return x0, y0, x1, y1, true
}
