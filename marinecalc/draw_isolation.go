package marinecalc

import (
	"math"

	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawIsolation draws the share of the firing torque, and of shaking up and
// down, that reaches the boat from idle to full speed.
func drawIsolation(in mount.Engine, out mount.Standing) sheet.Drawing {
	const (
		rpm    = math.Pi / 30
		points = 81
		most   = 4 // times what the engine gives; a peak above is cut off
	)
	ratio, _ := quantity.Lookup("ratio")
	percent := func(v quantity.Ratio) string { return ratio.Print(float64(v), quantity.Metric, "%", "%") }
	const title = "What of the firing reaches the boat"
	description := "Share of the firing torque passed by the mounts: " + percent(out.PassedIdle) + " at idle, " + percent(out.PassedFull) +
		" at full speed. Over 100 % the mounts make it worse."
	x, firing, bounce := make([]float64, points), make([]float64, points), make([]float64, points)
	perSpeed := float64(out.FiringFull) / float64(in.EngineSpeed)
	top := 1.2
	for i := range points {
		x[i] = float64(in.IdleSpeed) + (float64(in.EngineSpeed-in.IdleSpeed))*float64(i)/(points-1)
		f, b := mount.Passed(&out.Modes, quantity.Frequency(perSpeed*x[i]), in.DampingRatio)
		firing[i], bounce[i] = min(float64(f), most), min(float64(b), most)
		top = max(top, firing[i], bounce[i])
	}
	c := chart{picture: begin(360, 260, title, description), left: 48, top: 28, width: 296, height: 184,
		x0: x[0], x1: x[points-1], y1: top}
	c.axes("engine speed, rpm", "passed, %", rpm, 0.01)
	c.line(warn, c.left, c.atY(1), c.left+c.width, c.atY(1))
	for i := range points {
		x[i], firing[i], bounce[i] = c.atX(x[i]), c.atY(firing[i]), c.atY(bounce[i])
	}
	c.curve(faint, x, bounce)
	c.curve(accent, x, firing)
	c.text(ink, "end", c.left+c.width, c.atY(1)-5, "no better than bolted down")
	c.line(accent, c.left+130, 14, c.left+150, 14)
	c.text(ink, "start", c.left+154, 18, "firing")
	c.line(faint, c.left+206, 14, c.left+226, 14)
	c.text(ink, "start", c.left+230, 18, "up and down")
	return sheet.Drawing{Name: "mount-isolation", Title: title, Description: description, SVG: c.end()}
}
