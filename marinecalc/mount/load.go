// How the mounts carry the engine at rest and under way: Load.

package mount

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

const (
	gravity = 9.80665 // m/s², standard
	day     = 86400   // s
)

// Load works out the engine's standing on its mounts.
//
// What a mount takes along its axis is held against the maker's rating, and
// what it takes fore and aft against that for thrust: a mount that leans is
// pressed by more than the weight it carries.
//
// The engine is one rigid body of six freedoms on linear springs, each with
// its own stiffness in three directions and its lean; movements are small.
// Statics: K·q = load, by Cholesky's method. The mounts share the weight by
// their stiffness and place, all nuts being set to the same height; a mount
// set high or low shifts the share. Natural modes: eigenvalues of
// M^-½·K·M^-½ times the dynamic ratio of the rubber. Isolation: see Passed.
//
// The reaction that rolls the engine is the torque at the gearbox's output,
// not the crankshaft's: gearbox and engine are one body (statics).
//
// The stiffness now is that when new times DeflectionNew over DeflectionNow: the same load
// on a softer spring. Where no stiffness is given, an even share of the
// weight over the mount's deflection, or over UsualDeflection.
//
// The error is a *problem.Error: values out of range, fewer than 3 or more
// than 8 mounts, mounts that lie nearly in one line as seen from above. A
// centre of gravity outside the mounts is not refused: a mount then carries
// less than nothing, and LowestLoad says so.
func Load(in LoadInput) (out LoadResult, err error) {
	h, err := in.hung(&out)
	if err != nil {
		return LoadResult{}, err
	}
	in.stand(&h, &out)
	in.swing(&h, &out)
	return out, nil
}

// Stand is Load without the natural modes and what passes by them, which take half
// of its time: those results stay 0.
func Stand(in LoadInput) (out LoadResult, err error) {
	h, err := in.hung(&out)
	if err != nil {
		return LoadResult{}, err
	}
	in.stand(&h, &out)
	return out, nil
}

// Swing is Load with hardly more than the natural modes and what passes by them: what
// the mounts carry and how the coupling moves stay 0.
func Swing(in LoadInput) (out LoadResult, err error) {
	h, err := in.hung(&out)
	if err != nil {
		return LoadResult{}, err
	}
	in.swing(&h, &out)
	return out, nil
}

// hung is an engine on its mounts.
type hung struct {
	springs   springs
	worn      bool // any deflection differs from when the mount was new
	stiffness matrix
	factor    cholesky
}

// hung checks the input and hangs the engine on its mounts as they are now.
func (in *LoadInput) hung(out *LoadResult) (h hung, err error) {
	if bad := in.validate(); len(bad) > 0 {
		return h, bad.Err()
	}
	out.Weight = quantity.Force(gravity * float64(in.EngineMass))
	h.worn = in.hang(&h.springs, out, true)
	h.stiffness = h.springs.stiffness()
	var ok bool
	if h.factor, ok = h.stiffness.factor(); !ok {
		return h, oneLine(in.Mounts).Err()
	}
	return h, nil
}

// stand writes what the mounts carry and how the coupling moves.
func (in *LoadInput) stand(h *hung, out *LoadResult) {
	rest := h.factor.solve(motion{heave: -float64(out.Weight)})
	ahead, astern := in.drive()
	var by [2]motion
	for i, push := range [2]*push{&ahead, &astern} {
		if push.known {
			by[i] = h.factor.solve(push.load)
			out.FaceMoves[i] = in.face(&by[i], push.name)
		} else {
			out.FaceMoves[i] = nothing
		}
	}
	out.bear(in, &h.springs, &rest, &by, ahead.known, astern.known)
	out.take(in)
	out.wear(in, h.worn, &ahead, &astern)
	out.BounceFrequency = quantity.Frequency(math.Sqrt(float64(in.DynamicRatio)*gravity/float64(out.MeanDeflection)) / (2 * math.Pi))
}

// hang places the springs about the centre of gravity; worn tells whether any
// deflection differs from when the mount was new. With now false the mounts are as
// new, and out is left alone.
func (in *LoadInput) hang(s *springs, out *LoadResult, now bool) (worn bool) {
	s.n = len(in.Mounts)
	share := gravity * float64(in.EngineMass) / float64(s.n)
	total, carried := 0.0, 0.0
	for i := range in.Mounts {
		m := &in.Mounts[i]
		k := float64(m.Stiffness)
		if k == 0 {
			deflection := m.DeflectionNew
			if deflection == 0 {
				deflection = m.DeflectionNow
			}
			if !(deflection > 0) {
				deflection = in.UsualDeflection
			}
			k = share / float64(deflection)
		}
		square, along := float64(m.StiffnessSideways), float64(m.StiffnessAlong)
		if square == 0 {
			square = k * float64(in.SidewaysRatio)
		}
		if along == 0 {
			along = k * float64(in.AlongRatio)
		}
		if m.DeflectionNew > 0 && m.DeflectionNow > 0 {
			worn = true
			if now {
				softer := float64(m.DeflectionNew / m.DeflectionNow)
				k, square, along = k*softer, square*softer, along*softer
			}
		}
		one := &s.all[i]
		*one = spring{x: float64(m.Forward - in.CentreForward), y: float64(in.CentreStarboard - m.Starboard), z: float64(m.Up - in.CentreUp), kx: along}
		one.leaning(k, square, float64(m.Inclination), -float64(m.Starboard))
		total += one.kz
		switch {
		case m.Stiffness == 0 || m.DeflectionNew == 0:
			carried = math.NaN()
		case m.DeflectionNow > 0:
			carried += one.kz * float64(m.DeflectionNow) // as much as when it was new and stiffer
		default:
			carried += one.kz * float64(m.DeflectionNew)
		}
		if now {
			out.Loads[i].Name, out.Loads[i].StiffnessNow = m.Name, quantity.Stiffness(k)
		}
	}
	if now {
		out.VerticalStiffness = quantity.Stiffness(total)
		out.MeanDeflection = quantity.Length(float64(out.Weight) / total)
		out.CarriedRatio = quantity.Ratio(carried / float64(out.Weight))
	}
	return worn
}

// push is what the propeller does to the engine at the coupling.
type push struct {
	name  string
	known bool
	load  motion
}

// drive gives the load ahead and astern about the centre of gravity.
func (in *LoadInput) drive() (ahead, astern push) {
	turn := 1.0
	if in.ShaftTurns == Left {
		turn = -1
	}
	thrust := float64(in.Thrust * quantity.Force(in.ThrustOnMounts))
	load := func(thrust, torque float64) motion {
		// At the coupling, seen from the centre of gravity.
		y, z := float64(in.CentreStarboard), -float64(in.CentreUp)
		return motion{surge: thrust, roll: torque, pitch: z * thrust, yaw: -y * thrust}
	}
	known := in.Thrust > 0 || in.ThrustOnMounts == 0
	ahead = push{name: "ahead", known: known && in.ShaftTorque > 0, load: load(thrust, -turn*float64(in.ShaftTorque))}
	back := thrust * float64(in.AsternThrust)
	astern = push{name: "astern", known: known && in.AsternTorque > 0, load: load(-back, turn*float64(in.AsternTorque))}
	return ahead, astern
}

// face is how the coupling face moves with the engine.
func (in *LoadInput) face(by *motion, name string) FaceMove {
	at := spring{x: -float64(in.CentreForward), y: float64(in.CentreStarboard), z: -float64(in.CentreUp)}
	x, y, z := at.moved(by)
	x, y, z = tidy(x), tidy(y), tidy(z)
	across, bearing := tidy(by[pitch]), tidy(by[yaw])
	return FaceMove{Name: name, Forward: quantity.Length(x), Starboard: quantity.Length(-y), Up: quantity.Length(z),
		Offset: quantity.Length(math.Hypot(y, z)), GapPerDiameter: quantity.Ratio(math.Hypot(across, bearing)),
		FrontUp: quantity.Angle(-across), FrontStarboard: quantity.Angle(-bearing), Roll: quantity.Angle(by[roll])}
}

// nothing is a face of which nothing is known.
var nothing = FaceMove{Up: length(math.NaN()), Starboard: length(math.NaN()), Forward: length(math.NaN()),
	GapPerDiameter: quantity.Ratio(math.NaN()), Offset: length(math.NaN()),
	FrontUp: quantity.Angle(math.NaN()), FrontStarboard: quantity.Angle(math.NaN()), Roll: quantity.Angle(math.NaN())}

type length = quantity.Length

// bear writes what every mount carries.
func (out *LoadResult) bear(in *LoadInput, s *springs, rest *motion, by *[2]motion, ahead, astern bool) {
	nan := math.NaN()
	lowest, driven := math.Inf(1), math.Inf(1)
	out.RestUse, out.LoadUse, out.ThrustUse, out.Compression = quantity.Ratio(nan), quantity.Ratio(nan), quantity.Ratio(nan), quantity.Ratio(nan)
	for i := range s.n {
		m, one, to := &in.Mounts[i], &s.all[i], &out.Loads[i]
		carried := one.lift(rest)
		_, _, z := one.moved(rest)
		to.AtRest, to.Share, to.Deflection = quantity.Force(carried), quantity.Ratio(carried/float64(out.Weight)), length(-z)
		axial, _ := one.pressed(rest)
		greatest, thrust := axial, nan
		loads := [2]*quantity.Force{&to.Ahead, &to.Astern}
		for n, known := range [2]bool{ahead, astern} {
			*loads[n] = quantity.Force(nan)
			if known {
				load := carried + one.lift(&by[n])
				*loads[n] = quantity.Force(load)
				more, across := one.pressed(&by[n])
				greatest, thrust = max(greatest, axial+more), greater(thrust, math.Abs(across))
				if load < driven {
					driven, out.LowestDrivingAt = load, m.Name
				}
			}
		}
		if carried < lowest {
			lowest, out.LowestLoadAt = carried, m.Name
		}
		to.Axial, to.Thrust = quantity.Force(greatest), quantity.Force(thrust)
		to.Use, to.ThrustUse = ratioOf(greatest, float64(m.RatedLoad)), ratioOf(thrust, float64(m.RatedThrust))
		to.Compression = ratioOf(axial/one.along, float64(m.RubberHeight))
		out.RestUse, out.Compression = greater(out.RestUse, ratioOf(axial, float64(m.RatedLoad))), greater(out.Compression, to.Compression)
		out.LoadUse, out.ThrustUse = greater(out.LoadUse, to.Use), greater(out.ThrustUse, to.ThrustUse)
	}
	out.LowestLoad, out.LowestDriving = quantity.Force(lowest), quantity.Force(driven)
	if !ahead || !astern { // what one way or rest does tells of no other, but for what is too much even so
		if driven >= 0 {
			out.LowestDriving, out.LowestDrivingAt = quantity.Force(nan), ""
		}
		if out.LoadUse <= 1 {
			out.LoadUse = quantity.Ratio(nan)
		}
		if out.ThrustUse <= 1 {
			out.ThrustUse = quantity.Ratio(nan)
		}
	}
}

// ratioOf is a over b, or NaN where b is not known.
func ratioOf(a, b float64) quantity.Ratio {
	if b == 0 {
		return quantity.Ratio(math.NaN())
	}
	return quantity.Ratio(a / b)
}

// greater is the greater of two, not counting what is NaN.
func greater[T ~float64](a, b T) T {
	if a != a || b > a {
		return b
	}
	return a
}

// take writes what driving does to the coupling.
func (out *LoadResult) take(in *LoadInput) {
	out.MovedGapPerDiameter = greater(out.FaceMoves[0].GapPerDiameter, out.FaceMoves[1].GapPerDiameter)
	out.MovedOffset = greater(out.FaceMoves[0].Offset, out.FaceMoves[1].Offset)
	out.MovedGap = length(math.NaN())
	ahead := &out.FaceMoves[0]
	out.AheadUp, out.AheadStarboard, out.AheadFrontUp, out.AheadFrontStarboard = ahead.Up, ahead.Starboard, ahead.FrontUp, ahead.FrontStarboard
	if math.IsNaN(float64(ahead.Offset)) || ahead.Name == "" {
		nan := math.NaN()
		out.AheadUp, out.AheadStarboard, out.AheadFrontUp, out.AheadFrontStarboard = length(nan), length(nan), quantity.Angle(nan), quantity.Angle(nan)
	}
	if in.CouplingDiameter > 0 {
		out.MovedGap = in.CouplingDiameter * length(out.MovedGapPerDiameter)
	}
	torque, thrust := in.ShaftTorque > 0 || in.AsternTorque > 0, in.Thrust > 0
	switch {
	case torque && in.ThrustOnMounts == 0:
		out.Driving = TorqueOnly
	case torque && thrust:
		out.Driving = BothDrive
	case torque:
		out.Driving = ThrustMissing
	case thrust:
		out.Driving = TorqueMissing
	default:
		out.Driving = NotDriven
	}
}

// oneLine refuses mounts that leave the engine free to turn.
func oneLine(mounts []Mount) problem.List {
	var bad problem.List
	bad.Add("/mounts", "the mounts lie in one line: nothing keeps the engine from turning about it", "three mounts or more that span a surface", "check the distances to starboard and forward; minus is port, or aft")
	return bad
}
