// Package gearing draws the gearbox: its bearings, backlash, wear and fluid.
package gearing

import (
	"math"

	"example.org/driveline/marinecalc/bearing"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// BearingLife draws the life of the bearing against the load that misalignment
// adds, with the life now and the one that is wanted.
func BearingLife(in bearing.LifeInput, out bearing.LifeResult, b picture.Brush) []sheet.Drawing {
	const points = 41
	most := max(2*float64(out.MisalignmentLoad), float64(out.EquivalentLoad))
	try := in // the same bearing, with the whole of what misalignment adds typed in
	try.Offset, try.Angle = 0, 0
	loads, lives := make([]float64, points), make([]float64, points)
	for i := range loads {
		loads[i] = most * float64(i) / (points - 1)
		try.AddedLoad = quantity.Force(loads[i])
		life, err := bearing.Life(try)
		if err != nil || math.IsInf(float64(life.AdjustedLife), 0) {
			return nil
		}
		lives[i] = float64(life.AdjustedLife)
	}
	const title = "What misalignment takes"
	description := "Life against the load that misalignment adds: " + b.Print("time", lives[0], "h", "h") + " without, " +
		b.Print("time", float64(out.AdjustedLife), "h", "h") + " with the " + b.Force(out.MisalignmentLoad) + " there are now."
	unit, words := 1000.0, "load added by misalignment, kN"
	if b.Units == quantity.US {
		unit, words = 4.4482216152605, "load added by misalignment, lbf"
	}
	top := max(lives[0], float64(out.AdjustedLife))
	if wanted := float64(in.WantedLife); wanted > top && wanted < 3*top {
		top = wanted
	}
	c := picture.Chart{Picture: picture.Begin(360, 260, title, description), Left: 64, Top: 28, Width: 280, Height: 184, X1: most, Y1: 1.1 * top}
	c.Axes(words, "life, h", unit, 3600)
	if wanted := float64(in.WantedLife); wanted > 0 && wanted <= c.Y1 {
		level := c.AtY(wanted)
		c.Line(picture.Warn, c.Left, level, c.Left+c.Width, level)
		c.Text(picture.Ink, "end", c.Left+c.Width, level-5, "wanted")
	}
	x, y := make([]float64, points), make([]float64, points)
	for i := range loads {
		x[i], y[i] = c.AtX(loads[i]), c.AtY(lives[i])
	}
	c.Curve(picture.Accent, x, y)
	nowX, nowY := c.AtX(float64(out.MisalignmentLoad)), c.AtY(float64(out.AdjustedLife))
	c.Circle(picture.Accent, nowX, nowY, 5)
	c.Text(picture.Ink, "start", nowX+8, nowY-8, "now")
	return []sheet.Drawing{{Name: "bearing-life", Title: title, Description: description, SVG: c.End()}}
}
