package marinecalc

import (
	"math"
	"strings"

	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
)

// drawMountLoad draws what each mount carries and where the coupling goes,
// and, where idle and full speed are known, what of the firing comes through.
func drawMountLoad(in mount.Engine, out mount.Standing, b brush) []sheet.Drawing {
	drawings := []sheet.Drawing{drawLoads(in, out, b)}
	if in.Cylinders > 0 && in.IdleSpeed > 0 && in.EngineSpeed > in.IdleSpeed {
		drawings = append(drawings, drawIsolation(in, out))
	}
	return drawings
}

// drawLoads draws the engine on its mounts with what each carries, its centre
// of gravity, and the way the coupling goes ahead and astern.
func drawLoads(in mount.Engine, out mount.Standing, b brush) sheet.Drawing {
	force, _ := quantity.Lookup("force")
	length, _ := quantity.Lookup("length")
	show := func(v quantity.Force) string { return force.Print(float64(v), b.units, "N", "lbf") }
	const title = "What each mount carries"
	var words []string
	for i, m := range in.Mounts {
		words = append(words, m.Name+" "+show(out.Loads[i].AtRest))
	}
	description := "At rest: " + strings.Join(words, ", ") + "."
	for _, move := range out.FaceMoves {
		if move.Name != "" {
			description += " Driving " + move.Name + " the coupling face moves off by " + length.Print(float64(move.Offset), b.units, "mm", "thou") + "."
		}
	}
	v := planMounts(begin(360, 352, title, description), in.Mounts)
	v.engine()
	for i := range in.Mounts {
		m := &in.Mounts[i]
		x, y := v.atX(m), v.atY(m)
		v.rect(ink, x-6, v.shaft+14, 12, 8)
		v.rect(ink, x-5, y-5, 10, 10)
		below := y + 22
		if m.Starboard < 0 {
			below = y - 10
		}
		v.text(ink, "middle", x, below, show(out.Loads[i].AtRest))
	}
	centre := mount.Mount{Forward: in.CentreForward, Starboard: in.CentreStarboard}
	x, y := v.atX(&centre), v.atY(&centre)
	for _, at := range []float64{y, v.shaft - 20} {
		v.circle(ink, x, at, 4)
		v.line(ink, x-7, at, x+7, at)
		v.line(ink, x, at-7, x, at+7)
	}
	v.coupling(&out)
	return sheet.Drawing{Name: "mount-load", Title: title, Description: description, SVG: v.end()}
}

// coupling draws which way the coupling face goes, much enlarged: the longest
// arrow always as long.
func (v *mountPlan) coupling(out *mount.Standing) {
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
		class, at := [2]string{accent, ink}[i], x-12-16*float64(i)
		v.arrow(class, at, v.shaft, at, v.shaft-up)
		v.arrow(class, at, v.middle, at, v.middle+right)
		v.arrow(class, 242+58*float64(i), 20, 242+58*float64(i), 6)
		v.text(ink, "start", 250+58*float64(i), 18, move.Name)
	}
}
