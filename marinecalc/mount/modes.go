// The six natural modes of the engine.

package mount

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// swing finds the six natural modes, and what of the vibration comes through.
func (in *LoadInput) swing(on *hung, out *LoadResult) {
	m := float64(in.EngineMass)
	l, w, h := float64(in.EngineLength), float64(in.EngineWidth), float64(in.EngineHeight)
	box := func(given quantity.Inertia, a, b float64) quantity.Inertia {
		if given > 0 {
			return given
		}
		return quantity.Inertia(float64(in.BoxFactor) * m * (a*a + b*b) / 12)
	}
	out.RollInertia, out.PitchInertia, out.YawInertia = box(in.InertiaRoll, w, h), box(in.InertiaPitch, l, h), box(in.InertiaYaw, l, w)
	mass := motion{m, m, m, float64(out.RollInertia), float64(out.PitchInertia), float64(out.YawInertia)}
	var root motion
	for i := range mass {
		root[i] = math.Sqrt(mass[i])
	}
	scaled := on.stiffness
	for i := range scaled {
		for j := range i + 1 {
			scaled[i][j] *= float64(in.DynamicRatio) / (root[i] * root[j])
			scaled[j][i] = scaled[i][j]
		}
	}
	values, vectors := scaled.eigen()
	order := values.ascending()
	for n, at := range order {
		to := &out.Modes[n]
		to.Frequency = quantity.Frequency(math.Sqrt(max(values[at], 0)) / (2 * math.Pi))
		for j := range freedoms {
			if share := quantity.Ratio(vectors[at][j] * vectors[at][j]); share > to.MotionShare {
				to.Motion, to.MotionShare = motions[j], share
			}
		}
		to.RollShare = quantity.Ratio(vectors[at][roll] * vectors[at][roll])
		to.BounceShare = quantity.Ratio(vectors[at][heave] * vectors[at][heave])
		to.Meets = in.firesAt(to.Frequency)
	}
	out.LowestFrequency, out.HighestFrequency = out.Modes[0].Frequency, out.Modes[5].Frequency
	out.isolate(in)
}

// ascending gives the order of the values, lowest first.
func (v *motion) ascending() (order [freedoms]int) {
	for i := range order {
		at := i
		for at > 0 && v[order[at-1]] > v[i] {
			order[at] = order[at-1]
			at--
		}
		order[at] = i
	}
	return order
}

// perTurn is how many cylinders fire in one turn of the engine.
func (in *LoadInput) perTurn() float64 {
	if in.Strokes == TwoStroke {
		return float64(in.Cylinders)
	}
	return float64(in.Cylinders) / 2
}

// firesAt is the engine speed at which firing has that frequency.
func (in *LoadInput) firesAt(f quantity.Frequency) quantity.RotationSpeed {
	if in.Cylinders == 0 {
		return quantity.RotationSpeed(math.NaN())
	}
	return quantity.RotationSpeed(2 * math.Pi * float64(f) / in.perTurn())
}

// firing is the firing frequency at an engine speed: f = rpm·cylinders/120
// for a four-stroke engine (engine dynamics).
func (in *LoadInput) firing(speed quantity.RotationSpeed) quantity.Frequency {
	if in.Cylinders == 0 || speed == 0 {
		return quantity.Frequency(math.NaN())
	}
	return quantity.Frequency(float64(speed) / (2 * math.Pi) * in.perTurn())
}

// isolate writes what of the vibration comes through.
func (out *LoadResult) isolate(in *LoadInput) {
	idle := in.IdleSpeed
	if in.EngineSpeed > 0 && idle > in.EngineSpeed {
		idle = 0 // one of the two is wrong, and of an idle that is none nothing is said
	}
	out.FiringIdle, out.FiringFull = in.firing(idle), in.firing(in.EngineSpeed)
	out.PassedIdle, out.BouncePassedIdle = Passed(&out.Modes, out.FiringIdle, in.DampingRatio)
	out.PassedFull, out.BouncePassedFull = Passed(&out.Modes, out.FiringFull, in.DampingRatio)
	out.IsolatedFull = 1 - out.PassedFull
}
