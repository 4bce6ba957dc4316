package stern

import (
	"math"

	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// GlandDrip draws how the bilge fills while the boat is left alone: the pump
// throws it out until the battery is down, then it rises to where harm begins.
func GlandDrip(in gland.DripInput, out gland.DripResult, b picture.Brush) []sheet.Drawing {
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
	const title = "The bilge, boat left alone"
	description := "With a dead pump the bilge reaches " + b.Print("volume", float64(in.FloodVolume), "L", "US gal") + " in " + b.Print("time", flood, "day", "day") + "."
	if pumping {
		description += " With the pump it is kept down until the battery is down after " + b.Print("time", float64(out.TimeToFlat), "day", "day") + "."
	}
	unit, words := 0.001, "water, L"
	if b.Units == quantity.US {
		unit, words = 0.003785411784, "water, US gal"
	}
	c := picture.Chart{Picture: picture.Begin(360, 260, title, description), Left: 48, Top: 28, Width: 296, Height: 184,
		X1: max(1.05*(flat+flood), float64(in.TimeAway)), Y1: 1.15 * float64(in.FloodVolume)}
	c.Axes("days", words, day, unit)
	level := c.AtY(float64(in.FloodVolume))
	c.Line(picture.Warn, c.Left, level, c.Left+c.Width, level)
	c.Text(picture.Ink, "end", c.Left+c.Width, level-5, "harm begins")
	c.Curve(picture.Band, []float64{c.Left, c.AtX(min(flood, c.X1))}, []float64{c.AtY(0), c.AtY(float64(out.Inflow) * min(flood, c.X1))})
	c.Text(picture.Ink, "start", c.AtX(flood/2)+6, c.AtY(float64(in.FloodVolume)/2), "dead pump")
	if pumping {
		held := min(float64(in.SwitchVolume), float64(in.FloodVolume))
		rise := held / float64(out.Inflow)
		if rise >= flat {
			rise, held = flat, float64(out.Inflow)*flat
		}
		end := flat + (float64(in.FloodVolume)-held)/float64(out.Inflow)
		c.Curve(picture.Accent, []float64{c.Left, c.AtX(rise), c.AtX(flat), c.AtX(end)}, []float64{c.AtY(0), c.AtY(held), c.AtY(held), level})
	}
	if in.TimeAway > 0 {
		at := c.AtX(float64(in.TimeAway))
		c.Line(picture.Faint, at, c.Top, at, c.Top+c.Height)
		anchor, aside := "end", -4.0
		if at < c.Left+50 {
			anchor, aside = "start", 4
		}
		c.Text(picture.Ink, anchor, at+aside, c.Top+14, "back on board")
	}
	return []sheet.Drawing{{Name: "bilge", Title: title, Description: description, SVG: c.End()}}
}
