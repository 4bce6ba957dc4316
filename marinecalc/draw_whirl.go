package marinecalc

import (
	"math"
	"strconv"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/sheet"
)

// drawWhirl draws, over the shaft's speed, the range in use and the band
// between the low and the high estimate of the critical speed.
func drawWhirl(in shaft.Line, out shaft.Whipping, b brush) []sheet.Drawing {
	const rpm = math.Pi / 30
	speed, _ := quantity.Lookup("rotation-speed")
	show := func(v quantity.RotationSpeed) string { return speed.Print(float64(v), b.units, "rpm", "rpm") }
	low, high := float64(out.CriticalLower), float64(out.CriticalUpper)
	if math.IsNaN(low) || math.IsNaN(high) {
		return nil
	}
	idle := 0.0
	if v := float64(out.ShaftSpeedIdle); v > 0 && v < float64(in.ShaftSpeed) {
		idle = v
	}
	const title = "Running range and critical speed"
	description := "In use from " + show(quantity.RotationSpeed(idle)) + " to " + show(in.ShaftSpeed) +
		"; critical speed between " + show(out.CriticalLower) + " and " + show(out.CriticalUpper) + "."
	most := 1.15 * math.Max(high, float64(in.ShaftSpeed))
	c := chart{picture: begin(360, 170, title, description), left: 16, top: 20, width: 328, height: 100, x1: most, y1: 1}
	bottom := c.top + c.height
	c.line(faint, c.left, bottom, c.left+c.width, bottom)
	for _, v := range steps(0, most/rpm) {
		x := c.atX(v * rpm)
		c.line(faint, x, bottom, x, bottom+4)
		c.text(ink, "middle", x, bottom+18, strconv.Itoa(int(v)))
	}
	c.text(ink, "middle", c.left+c.width/2, bottom+38, "shaft speed, rpm")
	c.rect(body, c.atX(idle), c.top+60, c.atX(float64(in.ShaftSpeed))-c.atX(idle), 22)
	c.text(ink, "start", c.atX(idle)+2, c.top+54, "in use")
	c.rect(band, c.atX(low), c.top+14, math.Max(2, c.atX(high)-c.atX(low)), c.height-14)
	c.line(warn, c.atX(low), c.top+14, c.atX(low), bottom)
	c.line(warn, c.atX(high), c.top+14, c.atX(high), bottom)
	anchor, at := "middle", c.atX((low+high)/2)
	if at > c.left+c.width-60 {
		anchor, at = "end", c.left+c.width
	}
	c.text(ink, anchor, at, c.top+8, "whips here")
	return []sheet.Drawing{{Name: "whirl-margin", Title: title, Description: description, SVG: c.end()}}
}
