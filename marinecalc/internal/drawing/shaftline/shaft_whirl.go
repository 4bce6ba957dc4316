package shaftline

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// ShaftWhirl draws, over the shaft's speed, the range in use and the band
// between the critical speed with the gearbox end free to turn and clamped, and
// the same for the blades.
func ShaftWhirl(in shaft.WhirlInput, out shaft.WhirlResult, b picture.Brush) []sheet.Drawing {
	const rpm = math.Pi / 30
	low, high := float64(out.Critical), float64(out.CriticalClamped)
	if math.IsNaN(low) || math.IsNaN(high) {
		return nil
	}
	idle := 0.0
	if v := float64(out.ShaftSpeedIdle); v > 0 && v < float64(in.ShaftSpeed) {
		idle = v
	}
	const title = "Running range and critical speed"
	description := "In use from " + b.RotationSpeed(quantity.RotationSpeed(idle)) + " to " + b.RotationSpeed(in.ShaftSpeed) +
		"; critical speed between " + b.RotationSpeed(out.Critical) + " and " + b.RotationSpeed(out.CriticalClamped) + " in stiff bearings."
	blades := out.Orders[1]
	if blades.Order != "" {
		description += " The blades excite it between " + b.RotationSpeed(blades.From) + " and " + b.RotationSpeed(blades.To) + "."
	}
	most := 1.15 * math.Max(high, float64(in.ShaftSpeed))
	c := picture.Chart{Picture: picture.Begin(360, 170, title, description), Left: 16, Top: 20, Width: 328, Height: 100, X1: most, Y1: 1}
	bottom := c.Top + c.Height
	c.Line(picture.Faint, c.Left, bottom, c.Left+c.Width, bottom)
	for _, v := range picture.Steps(0, most/rpm) {
		x := c.AtX(v * rpm)
		c.Line(picture.Faint, x, bottom, x, bottom+4)
		c.Text(picture.Ink, "middle", x, bottom+18, strconv.Itoa(int(v)))
	}
	c.Text(picture.Ink, "middle", c.Left+c.Width/2, bottom+38, "shaft speed, rpm")
	c.Rect(picture.Body, c.AtX(idle), c.Top+60, c.AtX(float64(in.ShaftSpeed))-c.AtX(idle), 22)
	c.Text(picture.Ink, "start", c.AtX(idle)+2, c.Top+54, "in use")
	c.Rect(picture.Band, c.AtX(low), c.Top+14, math.Max(2, c.AtX(high)-c.AtX(low)), c.Height-14)
	c.Line(picture.Warn, c.AtX(low), c.Top+14, c.AtX(low), bottom)
	c.Line(picture.Warn, c.AtX(high), c.Top+14, c.AtX(high), bottom)
	label := func(x, y float64, text string) {
		anchor, at := "middle", c.AtX(x)
		if at > c.Left+c.Width-60 {
			anchor, at = "end", c.Left+c.Width
		} else if at < c.Left+60 {
			anchor, at = "start", c.Left
		}
		c.Text(picture.Ink, anchor, at, y, text)
	}
	label((low+high)/2, c.Top+8, "whirls here")
	if blades.Order != "" {
		from, to := c.AtX(float64(blades.From)), c.AtX(float64(blades.To))
		c.Rect(picture.Band, from, c.Top+60, math.Max(2, to-from), 22)
		c.Line(picture.Accent, from, c.Top+60, from, c.Top+82)
		label(float64(blades.From+blades.To)/2, c.Top+97, "by the blades")
	}
	return []sheet.Drawing{{Name: "whirl-margin", Title: title, Description: description, SVG: c.End()}}
}
