package marinecalc

import (
	"math"

	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawBilge draws how the bilge fills while the boat is left alone: the pump
// throws it out until the battery is down, then it rises to where harm begins.
func drawBilge(in gland.Bilge, out gland.Burden, b brush) []sheet.Drawing {
	const day = 86400.0
	flat, flood := float64(out.TimeToFlat), float64(out.TimeToFlood)
	if in.FloodVolume == 0 || !(out.Inflow > 0) || flood >= gland.Never {
		return nil
	}
	pumping := !math.IsNaN(flat) && in.SwitchVolume > 0
	if !pumping {
		flat = 0
	}
	flat = min(flat, 3*flood) // a battery that lasts much longer needs no drawing to scale
	times, _ := quantity.Lookup("time")
	volumes, _ := quantity.Lookup("volume")
	const title = "The bilge, boat left alone"
	description := "With a dead pump the bilge reaches " + volumes.Print(float64(in.FloodVolume), b.units, "L", "US gal") + " in " + times.Print(flood, b.units, "day", "day") + "."
	if pumping {
		description += " With the pump it is kept down until the battery is down after " + times.Print(float64(out.TimeToFlat), b.units, "day", "day") + "."
	}
	unit, words := 0.001, "water, L"
	if b.units == quantity.US {
		unit, words = 0.003785411784, "water, US gal"
	}
	c := chart{picture: begin(360, 260, title, description), left: 48, top: 28, width: 296, height: 184,
		x1: max(1.05*(flat+flood), float64(in.TimeAway)), y1: 1.15 * float64(in.FloodVolume)}
	c.axes("days", words, day, unit)
	level := c.atY(float64(in.FloodVolume))
	c.line(warn, c.left, level, c.left+c.width, level)
	c.text(ink, "end", c.left+c.width, level-5, "harm begins")
	c.curve(band, []float64{c.left, c.atX(min(flood, c.x1))}, []float64{c.atY(0), c.atY(float64(out.Inflow) * min(flood, c.x1))})
	c.text(ink, "start", c.atX(flood/2)+6, c.atY(float64(in.FloodVolume)/2), "dead pump")
	if pumping {
		held := min(float64(in.SwitchVolume), float64(in.FloodVolume))
		rise := held / float64(out.Inflow)
		if rise >= flat {
			rise, held = flat, float64(out.Inflow)*flat
		}
		end := flat + (float64(in.FloodVolume)-held)/float64(out.Inflow)
		c.curve(accent, []float64{c.left, c.atX(rise), c.atX(flat), c.atX(end)}, []float64{c.atY(0), c.atY(held), c.atY(held), level})
	}
	if in.TimeAway > 0 {
		at := c.atX(float64(in.TimeAway))
		c.line(faint, at, c.top, at, c.top+c.height)
		c.text(ink, "end", at-4, c.top+c.height-6, "back")
	}
	return []sheet.Drawing{{Name: "bilge", Title: title, Description: description, SVG: c.end()}}
}
