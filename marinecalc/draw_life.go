package marinecalc

import (
	"math"

	"example.org/driveline/marinecalc/bearing"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawLife draws the life of the bearing against the load that misalignment
// adds, with the life now and the one that is wanted.
func drawLife(in bearing.Rolling, out bearing.Life, b brush) []sheet.Drawing {
	const points = 41
	most := max(2*float64(out.MisalignmentLoad), float64(out.EquivalentLoad))
	try := in // the same bearing, with the whole of what misalignment adds typed in
	try.Offset, try.Angle = 0, 0
	loads, lives := make([]float64, points), make([]float64, points)
	for i := range loads {
		loads[i] = most * float64(i) / (points - 1)
		try.AddedLoad = quantity.Force(loads[i])
		life, err := bearing.Last(try)
		if err != nil || math.IsInf(float64(life.AdjustedLife), 0) {
			return nil
		}
		lives[i] = float64(life.AdjustedLife)
	}
	hours, _ := quantity.Lookup("time")
	forces, _ := quantity.Lookup("force")
	const title = "What misalignment takes"
	description := "Life against the load that misalignment adds: " + hours.Print(lives[0], b.units, "h", "h") + " without, " +
		hours.Print(float64(out.AdjustedLife), b.units, "h", "h") + " with the " + forces.Print(float64(out.MisalignmentLoad), b.units, "kN", "lbf") + " there are now."
	unit, words := 1000.0, "load added by misalignment, kN"
	if b.units == quantity.US {
		unit, words = 4.4482216152605, "load added by misalignment, lbf"
	}
	top := max(lives[0], float64(out.AdjustedLife))
	if wanted := float64(in.WantedLife); wanted > top && wanted < 3*top {
		top = wanted
	}
	c := chart{picture: begin(360, 260, title, description), left: 64, top: 28, width: 280, height: 184, x1: most, y1: 1.1 * top}
	c.axes(words, "life, h", unit, 3600)
	if wanted := float64(in.WantedLife); wanted > 0 && wanted <= c.y1 {
		level := c.atY(wanted)
		c.line(warn, c.left, level, c.left+c.width, level)
		c.text(ink, "end", c.left+c.width, level-5, "wanted")
	}
	x, y := make([]float64, points), make([]float64, points)
	for i := range loads {
		x[i], y[i] = c.atX(loads[i]), c.atY(lives[i])
	}
	c.curve(accent, x, y)
	nowX, nowY := c.atX(float64(out.MisalignmentLoad)), c.atY(float64(out.AdjustedLife))
	c.circle(accent, nowX, nowY, 5)
	c.text(ink, "start", nowX+8, nowY-8, "now")
	return []sheet.Drawing{{Name: "bearing-life", Title: title, Description: description, SVG: c.end()}}
}
