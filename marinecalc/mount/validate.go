// Checks of an engine on its mounts.

package mount

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
)

// narrowest is how far mounts must lie from one line, root mean square as
// seen from above, to hold the engine upright.
const narrowest = 0.01 // m

// validate collects everything that makes the engine unfit to work with.
func (in *LoadInput) validate() problem.List {
	var bad problem.List
	validate(&bad, in.Mounts, 3)
	given := in.InertiaRoll > 0 && in.InertiaPitch > 0 && in.InertiaYaw > 0
	c := checks{bad: bad}
	c.within("engineMass", float64(in.EngineMass), 20, 50000, "20 kg to 50 t")
	c.within("centreForward", float64(in.CentreForward), -2, 8, "-2 m to 8 m")
	c.within("centreStarboard", float64(in.CentreStarboard), -1, 1, "-1 m to 1 m")
	c.within("centreUp", float64(in.CentreUp), -1, 3, "-1 m to 3 m")
	c.unless(given, "engineLength", float64(in.EngineLength), 0.2, 10, "0.2 m to 10 m")
	c.unless(given, "engineWidth", float64(in.EngineWidth), 0.1, 5, "0.1 m to 5 m")
	c.unless(given, "engineHeight", float64(in.EngineHeight), 0.1, 5, "0.1 m to 5 m")
	c.unless(given, "boxFactor", float64(in.BoxFactor), 0.1, 3, "0.1 to 3")
	c.orNone("inertiaRoll", float64(in.InertiaRoll), 0.05, 1e6, "0.05 kg·m² to 1e6 kg·m²")
	c.orNone("inertiaPitch", float64(in.InertiaPitch), 0.05, 1e6, "0.05 kg·m² to 1e6 kg·m²")
	c.orNone("inertiaYaw", float64(in.InertiaYaw), 0.05, 1e6, "0.05 kg·m² to 1e6 kg·m²")
	c.unless(in.stiffnessKnown(), "usualDeflection", float64(in.UsualDeflection), 0.05e-3, 0.1, "0.05 mm to 100 mm")
	c.within("sidewaysRatio", float64(in.SidewaysRatio), 0.01, 10, "0.01 to 10")
	c.within("alongRatio", float64(in.AlongRatio), 0.01, 10, "0.01 to 10")
	c.within("dynamicRatio", float64(in.DynamicRatio), 1, 5, "1 to 5")
	c.within("dampingRatio", float64(in.DampingRatio), 0.001, 0.5, "0.001 to 0.5")
	c.orNone("creepPerDecade", float64(in.CreepPerDecade), 0.001, 0.5, "0.1 % to 50 %")
	c.orNone("mountAge", float64(in.MountAge), day, 100*365*day, "1 day to 100 years")
	c.orNone("cylinders", float64(in.Cylinders), 1, 24, "1 to 24")
	c.orNone("idleSpeed", float64(in.IdleSpeed), 20, 400, "20 rad/s to 400 rad/s (190 rpm to 3820 rpm)")
	c.orNone("engineSpeed", float64(in.EngineSpeed), 2, 1500, "2 rad/s to 1500 rad/s (19 rpm to 14 300 rpm)")
	c.orNone("shaftTorque", float64(in.ShaftTorque), 0.1, 1e6, "0.1 N·m to 1 MN·m")
	c.orNone("asternTorque", float64(in.AsternTorque), 0.1, 1e6, "0.1 N·m to 1 MN·m")
	c.orNone("thrust", float64(in.Thrust), 1, 1e6, "1 N to 1 MN")
	c.within("asternThrust", float64(in.AsternThrust), 0, 2, "0 to 2")
	c.within("thrustOnMounts", float64(in.ThrustOnMounts), 0, 1, "0 to 1")
	c.orNone("couplingDiameter", float64(in.CouplingDiameter), 0.03, 0.8, "30 mm to 800 mm")
	bad = c.bad
	if in.Strokes != FourStroke && in.Strokes != TwoStroke && in.Cylinders > 0 {
		bad.Add("/strokes", fmt.Sprintf("%q is not a number of strokes", in.Strokes), FourStroke+", "+TwoStroke, "")
	}
	if in.ShaftTurns != Right && in.ShaftTurns != Left {
		bad.Add("/shaftTurns", fmt.Sprintf("%q is no way to turn", in.ShaftTurns), Right+", "+Left, "")
	}
	if len(bad) > 0 {
		return bad
	}
	if off := offLine(in.Mounts); off < narrowest {
		bad.Add("/mounts", fmt.Sprintf("seen from above the mounts lie within %.3g mm of one line: nothing keeps the engine from rolling over it", 1000*off), fmt.Sprintf("three mounts or more, %.3g mm or more off one line, root mean square", 1000*narrowest), "check the distances to starboard and forward; minus is port, or aft")
	}
	return bad
}

// stiffnessKnown tells whether every mount says how stiff it is.
func (in *LoadInput) stiffnessKnown() bool {
	for i := range in.Mounts {
		if m := &in.Mounts[i]; m.Stiffness == 0 && m.DeflectionNew == 0 && !(m.DeflectionNow > 0) {
			return false
		}
	}
	return true
}

// offLine is how far the mounts lie from the straight line that fits them
// best as seen from above, root mean square.
func offLine(mounts []Mount) float64 {
	n := float64(len(mounts))
	var x, y, xx, xy, yy float64
	for i := range mounts {
		x += float64(mounts[i].Forward) / n
		y += float64(mounts[i].Starboard) / n
	}
	for i := range mounts {
		dx, dy := float64(mounts[i].Forward)-x, float64(mounts[i].Starboard)-y
		xx, xy, yy = xx+dx*dx/n, xy+dx*dy/n, yy+dy*dy/n
	}
	least := (xx+yy)/2 - math.Hypot((xx-yy)/2, xy)
	return math.Sqrt(max(least, 0))
}
