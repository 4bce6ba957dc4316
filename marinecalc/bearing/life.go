// Rating life of the rolling bearing: Life.

package bearing

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Kind is the shape of what rolls.
type Kind string

// The kinds.
const (
	Ball   Kind = "ball"
	Roller Kind = "roller"
)

// Coupling is how the shaft is joined to the gearbox.
type Coupling string

// The couplings. One that is not named is counted as rigid.
const (
	RigidCoupling    Coupling = "rigid"    // bends the shaft by what the flanges are misaligned
	FlexibleCoupling Coupling = "flexible" // bends it by nothing that offset and angle tell
)

// LifeInput is a rolling bearing, what loads it and how it sits. A field marked
// optional is not given when it is zero.
type LifeInput struct {
	RollingKind   Kind
	DynamicRating quantity.Force // C, above 0
	StaticRating  quantity.Force // C0; optional

	RadialLoad   quantity.Force // 0 or more
	Thrust       quantity.Force // along the shaft, 0 or more; not both loads 0
	RadialFactor quantity.Ratio // X, above 0 up to 1
	AxialFactor  quantity.Ratio // Y, 0 or more
	LoadLimit    quantity.Ratio // e: up to this share of the radial load thrust does not count
	AxialRow     quantity.Ratio // thrust over StaticRating for which X, Y and e are tabled; optional, not used by Life
	LoadFactor   quantity.Ratio // for shocks, 1 or more

	StaticRadialFactor quantity.Ratio `unset:"NaN"` // X0 of the static load, above 0 up to 1; NaN for not known
	StaticAxialFactor  quantity.Ratio `unset:"NaN"` // Y0, 0 or more; NaN for not known

	CouplingKind   Coupling        // "" for not said
	AddedLoad      quantity.Force  `unset:"NaN"` // radial, from misalignment, where it is known otherwise; NaN for not known
	Offset         quantity.Length `unset:"NaN"` // of the coupling flanges, either way; NaN for not known
	Angle          quantity.Angle  `unset:"NaN"` // between them, either way; NaN for not known
	FreeLength     quantity.Length // of the shaft from the coupling to its first bearing; optional, as all of the next
	ShaftDiameter  quantity.Length
	ElasticModulus quantity.Stress
	Overhang       quantity.Length // coupling face to this bearing
	BearingSpan    quantity.Length // this bearing to the next one on the gearbox's output shaft
	RigidShare     quantity.Ratio  // of the bent shaft's force that arrives, 0 to 1: what does not give way

	ShaftSpeed        quantity.RotationSpeed // above 0
	ReliabilityFactor quantity.Ratio         // a1, above 0 up to 1
	WantedLife        quantity.Time          // optional

	BearingBore  quantity.Length // nominal; optional
	SeatUpper    quantity.Length `unset:"NaN"` // deviation of the shaft's seat from the bore's nominal size, greatest
	SeatLower    quantity.Length `unset:"NaN"` // the same, least
	BoreUpper    quantity.Length `unset:"NaN"` // deviation of the ring's bore, greatest
	BoreLower    quantity.Length `unset:"NaN"` // the same, least
	SeatDiameter quantity.Length // measured; optional
	BoreDiameter quantity.Length // measured; optional
}

// LifeResult is what Life finds. A figure for which an input is missing is NaN.
type LifeResult struct {
	AdjustedLife quantity.Time  // at the reliability asked for
	LifeHours    quantity.Time  // 90 of 100 reach it
	BasicLife    quantity.Ratio // the same in millions of revolutions
	LifeLost     quantity.Ratio // to misalignment, as a share
	RatingNeeded quantity.Force // dynamic rating that lasts WantedLife

	EquivalentLoad   quantity.Force
	LoadShare        quantity.Ratio // EquivalentLoad over C; above one half no life is calculated
	StaticLoad       quantity.Force // the equivalent static load, shocks in it
	StaticSafety     quantity.Ratio // C0 over StaticLoad
	AlignedLoad      quantity.Force // the same without misalignment
	RadialTotal      quantity.Force // radial load and what misalignment adds
	BendingForce     quantity.Force // of the bent shaft, at its first bearing
	MisalignmentLoad quantity.Force // on this bearing
	AxialShare       quantity.Ratio // thrust over C0, by which X, Y and e are picked
	LifeExponent     quantity.Ratio // 3 for balls, 10/3 for rollers

	GreatestInterference quantity.Length // by the tolerances of seat and bore
	LeastInterference    quantity.Length
	MeasuredInterference quantity.Length
}

const (
	ballExponent   = 3.0
	rollerExponent = 10.0 / 3
	million        = 1e6
	turn           = 2 * math.Pi
	greatestShare  = 0.5 // of C, up to which the life of ISO 281 holds (from memory)
)

// Life finds the life of a rolling bearing.
//
// L10 = (C/P)^p million revolutions, p 3 for balls and 10/3 for rollers, and
// a1·L10 at another reliability (ISO 281:2007). The equivalent load is the
// radial one where the thrust is up to e times it, else X·F_r + Y·F_a. Above
// half of C the rings give, and no life is calculated. What the bearing bears
// without a permanent dent is C0 against the larger of F_r and X0·F_r + Y0·F_a
// (ISO 76:2006).
//
// Misalignment bends the shaft between a rigid coupling and its first
// bearing: a beam held at the coupling takes 3·E·I·(|δ| + |θ|·a)/a³ there at most
// (Shigley table A-9, case 1), and the two bearings of the output shaft share
// it as a lever, (a + b + s)/s on the nearer one (statics). That is the most
// that it can be: mounts, hull and the bearing at the other end give way, and
// RigidShare says how much is left. Behind a rigid coupling whose offset, angle
// or lengths are not known the load is not known, and neither is the life.
//
// A ring whose least interference with the seat is below nothing can creep on
// it.
//
// The error is a *problem.Error of everything that cannot be. Life does not
// allocate unless it refuses.
func Life(in LifeInput) (out LifeResult, err error) {
	if err = in.validate(); err != nil {
		return LifeResult{}, err
	}
	out.load(&in)
	out.last(&in)
	out.GreatestInterference = in.SeatUpper - in.BoreLower
	out.LeastInterference = in.SeatLower - in.BoreUpper
	out.MeasuredInterference = quantity.Length(quantity.OrNaN(float64(in.SeatDiameter)) - quantity.OrNaN(float64(in.BoreDiameter)))
	return out, nil
}

// load sets what the bearing bears.
func (out *LifeResult) load(in *LifeInput) {
	out.misalign(in)
	factor := quantity.Force(in.LoadFactor)
	out.RadialTotal = in.RadialLoad + out.MisalignmentLoad
	out.EquivalentLoad = equivalent(in, out.RadialTotal)
	out.AlignedLoad = equivalent(in, in.RadialLoad)
	out.LoadShare = quantity.Ratio(out.EquivalentLoad / in.DynamicRating)
	out.AxialShare = quantity.Ratio(float64(in.Thrust) / quantity.OrNaN(float64(in.StaticRating)))
	out.StaticLoad = factor * out.RadialTotal // as it is without thrust
	if in.Thrust > 0 {
		out.StaticLoad = factor * max(out.RadialTotal, quantity.Force(in.StaticRadialFactor)*out.RadialTotal+quantity.Force(in.StaticAxialFactor)*in.Thrust)
	}
	out.StaticSafety = quantity.Ratio(quantity.OrNaN(float64(in.StaticRating)) / float64(out.StaticLoad))
}

// misalign sets what misalignment adds to the radial load: what is typed and
// what bends the shaft, as far as either is known.
func (out *LifeResult) misalign(in *LifeInput) {
	out.BendingForce, out.MisalignmentLoad = quantity.Force(math.NaN()), in.AddedLoad
	if in.CouplingKind == FlexibleCoupling {
		if math.IsNaN(float64(in.AddedLoad)) {
			out.MisalignmentLoad = 0
		}
		return
	}
	d, a := float64(in.ShaftDiameter), quantity.OrNaN(float64(in.FreeLength))
	section := math.Pi / 64 * quantity.OrNaN(d) * d * d * d
	bend := 3 * quantity.OrNaN(float64(in.ElasticModulus)) * section * (math.Abs(float64(in.Offset)) + math.Abs(float64(in.Angle))*a) / (a * a * a)
	out.BendingForce = quantity.Force(bend)
	span := quantity.OrNaN(float64(in.BearingSpan))
	added := quantity.Force(float64(in.RigidShare) * bend * (a + float64(in.Overhang) + span) / span)
	switch {
	case math.IsNaN(float64(added)):
	case math.IsNaN(float64(in.AddedLoad)):
		out.MisalignmentLoad = added
	default:
		out.MisalignmentLoad += added
	}
}

// equivalent is the radial load that would wear the bearing alike.
func equivalent(in *LifeInput, radial quantity.Force) quantity.Force {
	if in.Thrust <= quantity.Force(in.LoadLimit)*radial {
		return quantity.Force(in.LoadFactor) * radial
	}
	return quantity.Force(in.LoadFactor) * (quantity.Force(in.RadialFactor)*radial + quantity.Force(in.AxialFactor)*in.Thrust)
}

// last sets the life.
func (out *LifeResult) last(in *LifeInput) {
	p := rollerExponent
	if in.RollingKind == Ball {
		p = ballExponent
	}
	out.LifeExponent = quantity.Ratio(p)
	load, speed := float64(out.EquivalentLoad), float64(in.ShaftSpeed)
	basic := math.NaN()
	if out.LoadShare <= greatestShare*(1+1e-9) {
		basic = math.Pow(float64(in.DynamicRating)/load, p)
	}
	out.BasicLife = quantity.Ratio(basic)
	out.LifeHours = quantity.Time(million * basic * turn / speed)
	out.AdjustedLife = quantity.Time(in.ReliabilityFactor) * out.LifeHours
	out.LifeLost = quantity.Ratio(math.NaN())
	if in.CouplingKind != FlexibleCoupling || !math.IsNaN(float64(in.AddedLoad)) { // and not for want of a reading
		out.LifeLost = quantity.Ratio(1 - math.Pow(float64(out.AlignedLoad)/load, p))
	}
	turns := quantity.OrNaN(float64(in.WantedLife)) * speed / turn / million
	out.RatingNeeded = quantity.Force(load * max(1/greatestShare, math.Pow(turns/float64(in.ReliabilityFactor), 1/p)))
}

// validate lists everything in the bearing that cannot be.
func (in *LifeInput) validate() error {
	var faults problem.List
	if in.RollingKind != Ball && in.RollingKind != Roller {
		faults.Add("/rollingKind", "what rolls is missing or unknown", "ball, roller", "")
	}
	if in.CouplingKind != "" && in.CouplingKind != RigidCoupling && in.CouplingKind != FlexibleCoupling {
		faults.Add("/couplingKind", "what the coupling is is unknown", "rigid, flexible", "")
	}
	faults.Above("/dynamicRating", "dynamic load rating", float64(in.DynamicRating))
	faults.NotNegative("/staticRating", "static load rating", float64(in.StaticRating))
	between(&faults, "/radialFactor", "radial factor X", float64(in.RadialFactor), 1e-6, 1, "above 0 up to 1", "0.56 for a deep groove ball bearing")
	faults.NotNegative("/axialFactor", "axial factor Y", float64(in.AxialFactor))
	faults.NotNegative("/loadLimit", "load limit e", float64(in.LoadLimit))
	between(&faults, "/loadFactor", "load factor", float64(in.LoadFactor), 1-1e-9, 10, "1 up to 10", "a shock never makes the load smaller; 1 means none")
	faults.Above("/shaftSpeed", "shaft speed", float64(in.ShaftSpeed))
	between(&faults, "/reliabilityFactor", "factor for reliability", float64(in.ReliabilityFactor), 1e-6, 1, "above 0 up to 1", "1 for 90 of 100 bearings")
	faults.NotNegative("/wantedLife", "wanted life", float64(in.WantedLife))
	in.validateLoads(&faults)
	faults.NotNegative("/seatDiameter", "diameter of the seat", float64(in.SeatDiameter))
	faults.NotNegative("/boreDiameter", "bore of the ring", float64(in.BoreDiameter))
	faults.NotNegative("/bearingBore", "nominal bore", float64(in.BearingBore))
	in.validateFit(&faults)
	return faults.Err()
}

// validateFit asks that seat and bore belong to one another.
func (in *LifeInput) validateFit(faults *problem.List) {
	const amiss = 0.001 // a worn seat is hundredths of a millimetre off, another bearing millimetres
	off := func(measured quantity.Length) bool {
		return in.BearingBore > 0 && measured > 0 && math.Abs(float64(measured-in.BearingBore)) > amiss
	}
	if off(in.SeatDiameter) {
		faults.Add("/seatDiameter", fmt.Sprintf("a seat of %.4g mm is not that of a bore of %.4g mm", 1000*in.SeatDiameter, 1000*in.BearingBore), "within a millimetre of the bore", "check the number on the ring")
	}
	if off(in.BoreDiameter) {
		faults.Add("/boreDiameter", fmt.Sprintf("a bore of %.4g mm is not one of %.4g mm", 1000*in.BoreDiameter, 1000*in.BearingBore), "within a millimetre of the nominal bore", "check the number on the ring")
	}
	for _, d := range [...]struct {
		where string
		v     quantity.Length
	}{{"/seatUpper", in.SeatUpper}, {"/seatLower", in.SeatLower}, {"/boreUpper", in.BoreUpper}, {"/boreLower", in.BoreLower}} {
		if math.Abs(float64(d.v)) > amiss { // not of one that is not known, which is NaN
			faults.Add(d.where, fmt.Sprintf("a size %.4g mm off the nominal one is no tolerance of a bearing's seat", 1000*d.v), "up to 1 mm either way", "tolerances are thousandths of a millimetre: 15 µm is 0.015 mm")
		}
	}
	if in.SeatUpper < in.SeatLower {
		faults.Add("/seatLower", "the least size of the seat is above its greatest", "up to the greatest", "")
	}
	if in.BoreUpper < in.BoreLower {
		faults.Add("/boreLower", "the least bore is above the greatest", "up to the greatest", "bores lie below the nominal size: upper 0, lower minus")
	}
}

func (in *LifeInput) validateLoads(faults *problem.List) {
	radial := faults.NotNegative("/radialLoad", "radial load", float64(in.RadialLoad))
	axial := faults.NotNegative("/thrust", "thrust", float64(in.Thrust))
	added := math.IsNaN(float64(in.AddedLoad)) || faults.NotNegative("/addedLoad", "added load", float64(in.AddedLoad))
	if radial && axial && added && in.RadialLoad == 0 && !(in.AddedLoad > 0) && in.Thrust*quantity.Force(in.AxialFactor) == 0 {
		faults.Add("/radialLoad", "nothing loads the bearing", "a radial load, or a thrust with its factor Y, above 0", "the shaft's own weight is a radial load too")
	}
	if !math.IsNaN(float64(in.Offset)) {
		between(faults, "/offset", "offset", float64(in.Offset), -0.05, 0.05, "up to 50 mm either way", "")
	}
	if !math.IsNaN(float64(in.Angle)) {
		between(faults, "/angle", "angle", float64(in.Angle), -0.2, 0.2, "up to 0.2 rad either way", "")
	}
	if !math.IsNaN(float64(in.StaticRadialFactor)) {
		between(faults, "/staticRadialFactor", "static radial factor X0", float64(in.StaticRadialFactor), 1e-6, 1, "above 0 up to 1", "0.6 for a deep groove ball bearing")
	}
	if !math.IsNaN(float64(in.StaticAxialFactor)) {
		faults.NotNegative("/staticAxialFactor", "static axial factor Y0", float64(in.StaticAxialFactor))
	}
	faults.NotNegative("/freeLength", "free length of the shaft", float64(in.FreeLength))
	faults.NotNegative("/shaftDiameter", "shaft diameter", float64(in.ShaftDiameter))
	faults.NotNegative("/elasticModulus", "elastic modulus", float64(in.ElasticModulus))
	faults.NotNegative("/overhang", "overhang", float64(in.Overhang))
	between(faults, "/rigidShare", "share that arrives", float64(in.RigidShare), 0, 1, "0 to 1", "1 when nothing but the shaft gives way")
	faults.NotNegative("/bearingSpan", "distance between the bearings", float64(in.BearingSpan))
	if in.FreeLength > 0 && in.FreeLength < in.ShaftDiameter {
		faults.Add("/freeLength", "the free length is shorter than the shaft is thick", "several shaft diameters", "a stub that short does not bend as a beam")
	}
}
