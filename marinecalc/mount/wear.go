// What the mounts' settling since new does.

package mount

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// wear writes what the mounts' deflection since they were new does.
func (out *LoadResult) wear(in *LoadInput, worn bool, ahead, astern *push) {
	nan := math.NaN()
	out.NewGapPerDiameter, out.NewOffset, out.TiredFactor = quantity.Ratio(nan), length(nan), quantity.Ratio(nan)
	out.DeflectionRatio, out.LeastRatio, out.CreepRatio = quantity.Ratio(nan), quantity.Ratio(nan), quantity.Ratio(nan)
	if in.MountAge >= day && in.CreepPerDecade > 0 {
		out.CreepRatio = 1 + in.CreepPerDecade*quantity.Ratio(math.Log10(float64(in.MountAge/day)))
	}
	for i := range in.Mounts {
		m := &in.Mounts[i]
		if m.DeflectionNew == 0 || math.IsNaN(float64(m.DeflectionNow)) {
			continue
		}
		r := quantity.Ratio(m.DeflectionNow / m.DeflectionNew)
		if !(out.DeflectionRatio >= r) {
			out.DeflectionRatio, out.DeflectionRatioAt = r, m.Name
		}
		if !(out.LeastRatio <= r) {
			out.LeastRatio, out.LeastRatioAt = r, m.Name
		}
	}
	if !worn {
		return
	}
	var fresh springs
	in.hang(&fresh, out, false)
	stiffness := fresh.stiffness()
	factor, ok := stiffness.factor()
	if !ok {
		return
	}
	for _, push := range [2]*push{ahead, astern} {
		if push.known {
			by := factor.solve(push.load)
			face := in.face(&by, push.name)
			out.NewGapPerDiameter = greater(out.NewGapPerDiameter, face.GapPerDiameter)
			out.NewOffset = greater(out.NewOffset, face.Offset)
		}
	}
	if out.NewGapPerDiameter > 0 {
		out.TiredFactor = out.MovedGapPerDiameter / out.NewGapPerDiameter
	}
}
