package mounts

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/picture"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawIsolation draws the share of the firing torque, and of vibration up and
// down, that reaches the boat from idle to full speed.
func drawIsolation(in mount.LoadInput, out mount.LoadResult) sheet.Drawing {
	const (
		rpm    = math.Pi / 30
		points = 81
		most   = 4 // times what the engine gives; a peak above is cut off
	)
	percent := picture.Brush{}.Percent
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
	c := picture.Chart{Picture: picture.Begin(360, 260, title, description), Left: 48, Top: 28, Width: 296, Height: 184,
		X0: x[0], X1: x[points-1], Y1: top}
	c.Axes("engine speed, rpm", "passed, %", rpm, 0.01)
	c.Line(picture.Warn, c.Left, c.AtY(1), c.Left+c.Width, c.AtY(1))
	for i := range points {
		x[i], firing[i], bounce[i] = c.AtX(x[i]), c.AtY(firing[i]), c.AtY(bounce[i])
	}
	c.Curve(picture.Faint, x, bounce)
	c.Curve(picture.Accent, x, firing)
	c.Text(picture.Ink, "end", c.Left+c.Width, c.AtY(1)-5, "no better than bolted down")
	c.Line(picture.Accent, c.Left+86, 14, c.Left+106, 14)
	c.Text(picture.Ink, "start", c.Left+110, 18, "firing")
	c.Line(picture.Faint, c.Left+168, 14, c.Left+188, 14)
	c.Text(picture.Ink, "start", c.Left+192, 18, "up and down")
	return sheet.Drawing{Name: "mount-isolation", Title: title, Description: description, SVG: c.End()}
}

// MountLoad draws what each mount carries and where the coupling goes,
// and, where idle and full speed are known, what of the firing comes through.
func MountLoad(in mount.LoadInput, out mount.LoadResult, b picture.Brush) []sheet.Drawing {
	drawings := []sheet.Drawing{drawLoads(in, out, b)}
	if in.Cylinders > 0 && in.IdleSpeed > 0 && in.EngineSpeed > in.IdleSpeed {
		drawings = append(drawings, drawIsolation(in, out))
	}
	return drawings
}

// drawLoads draws the engine on its mounts with what each carries, its centre
// of gravity, and the way the coupling goes ahead and astern.
func drawLoads(in mount.LoadInput, out mount.LoadResult, b picture.Brush) sheet.Drawing {
	const title = "What each mount carries"
	var words []string
	for i, m := range in.Mounts {
		words = append(words, m.Name+" "+b.Force(out.Loads[i].AtRest))
	}
	description := "At rest: " + strings.Join(words, ", ") + "."
	for _, move := range out.FaceMoves {
		if move.Name != "" {
			description += " Driving " + move.Name + " the coupling face moves off by " + b.Print("length", float64(move.Offset), "mm", "thou") + "."
		}
	}
	v := planMounts(picture.Begin(360, 352, title, description), in.Mounts)
	v.engine()
	for i := range in.Mounts {
		m := &in.Mounts[i]
		x, y := v.atX(m), v.atY(m)
		v.Rect(picture.Ink, x-6, v.shaft+14, 12, 8)
		v.Rect(picture.Ink, x-5, y-5, 10, 10)
		below := y + 22
		if m.Starboard < 0 {
			below = y - 10
		}
		v.Text(picture.Ink, "middle", x, below, b.Force(out.Loads[i].AtRest))
	}
	centre := mount.Mount{Forward: in.CentreForward, Starboard: in.CentreStarboard}
	x, y := v.atX(&centre), v.atY(&centre)
	for _, at := range []float64{y, v.shaft - 20} {
		v.Circle(picture.Ink, x, at, 4)
		v.Line(picture.Ink, x-7, at, x+7, at)
		v.Line(picture.Ink, x, at-7, x, at+7)
	}
	v.coupling(&out)
	return sheet.Drawing{Name: "mount-load", Title: title, Description: description, SVG: v.End()}
}

// coupling draws which way the coupling face goes, much enlarged: the longest
// arrow always as long.
func (v *mountPlan) coupling(out *mount.LoadResult) {
	const reach = 30
	largest := 0.0
	for _, move := range out.FaceMoves {
		if move.Name != "" {
			largest = max(largest, float64(move.Offset))
		}
	}
	if largest == 0 {
		return
	}
	x := v.left - v.aft/math.Max(v.fore-v.aft, 1e-3)*v.width
	for i, move := range out.FaceMoves {
		if move.Name == "" {
			continue
		}
		up, right := reach*float64(move.Up)/largest, reach*float64(move.Starboard)/largest
		class, at := [2]string{picture.Accent, picture.Ink}[i], x-12-16*float64(i)
		v.Arrow(class, at, v.shaft, at, v.shaft-up)
		v.Arrow(class, at, v.middle, at, v.middle+right)
		v.Arrow(class, 242+58*float64(i), 20, 242+58*float64(i), 6)
		v.Text(picture.Ink, "start", 250+58*float64(i), 18, move.Name)
	}
}
