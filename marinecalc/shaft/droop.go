// Droop of the free end at the coupling: Droop.

package shaft

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// DroopInput is the end of a shaft that hangs free between its foremost bearing
// and the parted coupling. A field marked optional is not given when it is
// zero.
type DroopInput struct {
	ShaftDiameter     quantity.Length  // next to the bearing, above 0
	FreeLength        quantity.Length  // from where the shaft is held to the coupling face, above 0
	CouplingMass      quantity.Mass    // of the half on the shaft; 0 for none
	CouplingDiameter  quantity.Length  // where the feeler reads; optional
	CouplingCentre    quantity.Length  // its centre of mass, aft of the face
	StepLength        quantity.Length  // of a second section at the coupling; optional
	StepDiameter      quantity.Length  // of that section; needed with StepLength
	ShaftBore         quantity.Length  // through the whole length; 0 for solid
	SpanBehind        quantity.Length  // to the next bearing aft, which the shaft rests in freely; optional
	PropellerMass     quantity.Mass    // aft of that bearing; 0 for none
	PropellerOverhang quantity.Length  // its centre of mass aft of that bearing; 0: not known, PropellerMass does not count
	ShaftIncline      quantity.Angle   // of the shaft line to the level
	ElasticModulus    quantity.Stress  // above 0
	ShaftDensity      quantity.Density // above 0
}

// DroopResult is what Droop finds. Down is plus. NaN marks a figure for which the
// optional input is missing.
type DroopResult struct {
	DroopSag    quantity.Length // of the coupling face's centre
	DroopSlope  quantity.Angle  // plus: the end points down
	DroopGap    quantity.Length // over CouplingDiameter; plus: open at the bottom
	DroopOpens  string          // the same in words
	LiftForce   quantity.Force  // at the coupling face, that brings DroopSag to zero
	LiftReading quantity.Mass   // what a spring scale shows then
	GapLifted   quantity.Length // what is left of DroopGap with the droop lifted out

	BendingMoment   quantity.Torque // at the bearing
	SupportReaction quantity.Force  // NaN without SpanBehind
	BackReaction    quantity.Force  // of the bearing behind; minus: the shaft presses up there; NaN without SpanBehind, and with a propeller that hangs nobody knows where
	PropellerWeight quantity.Force  // aft of the bearing behind; 0 without PropellerOverhang, NaN without SpanBehind
	AftShaftWeight  quantity.Force  // of the shaft from that bearing to the propeller
	AftMoment       quantity.Torque // of both, at that bearing

	TipDiameter        quantity.Length // at the coupling
	ThickWeight        quantity.Force  // square to the shaft, of the section next to the bearing
	TipWeight          quantity.Force  // of the section at the coupling
	CouplingWeight     quantity.Force
	SpanWeight         quantity.Force // of the span behind; NaN without it
	StepMoment         quantity.Torque
	ThickStiffness     quantity.AngularStiffness // E·I over FreeLength, next to the bearing
	TipStiffness       quantity.AngularStiffness // the same at the coupling
	StepSag            quantity.Length           // where the section changes, bearing rigid
	StepSlope          quantity.Angle
	SupportSlope       quantity.Angle     // in the bearing, from the span behind; NaN without it
	EndStiffness       quantity.Stiffness // force per deflection at the coupling
	SlopeLifted        quantity.Angle
	DroopPerDiameter   quantity.Ratio // slope as gap for the diameter, size alone; NaN where the turn in the bearing is not known
	SagPerFreeLength   quantity.Ratio
	FreeLengthPerShaft quantity.Ratio // free length over shaft diameter
}

// The codes of DroopOpens, for which the schema of shaft-droop has the words.
const (
	OpensBelow = "bottom"
	OpensAbove = "top"
)

// steepest is the droop over free length up to which small-deflection beam
// theory is used here; beyond it the input is taken for a slip.
const steepest = 0.05

// Droop finds how far the free end of a shaft droops under its own weight and
// the shaft coupling flange, which way it points, and how much to lift it.
//
// Each section is a cantilever with an end force, an end moment and its own
// weight; the second hangs on the end of the first (Shigley, Mechanical
// Engineering Design, table A-9, cases 1, 3 and 4, from memory). With a span
// behind, the shaft turns in the bearing by M·l/(3·E·I) - w·l³/(24·E·I) (case
// 10, and the simply supported beam under its own weight), and by M·l/(6·E·I)
// under the moment of the propeller aft of the next bearing (the same case
// from its other end; from memory). The bearings are points and do not give;
// the propeller weighs as in air, which is the safe side.
//
// The error is a *problem.Error of everything that cannot be, a droop beyond
// small deflections among it. Droop allocates nothing when it succeeds.
func Droop(in DroopInput) (out DroopResult, err error) {
	if err = in.validate(); err != nil {
		return DroopResult{}, err
	}
	out.weigh(&in)
	out.bend(&in)
	if sag := math.Abs(float64(out.DroopSag)); sag > steepest*float64(in.FreeLength) {
		return DroopResult{}, problem.List{{Where: "/freeLength",
			What:    fmt.Sprintf("the end would droop %s on a free length of %s", problem.Millimetres(sag), problem.Millimetres(float64(in.FreeLength))),
			Allowed: "a droop up to 5 % of the free length", Hint: "is a unit or a decimal point wrong?"}}.Err()
	}
	out.lift(&in)
	return out, nil
}

// weigh finds the loads.
func (out *DroopResult) weigh(in *DroopInput) {
	tilt := math.Cos(float64(in.ShaftIncline))
	s, r := float64(in.StepLength), float64(in.FreeLength-in.StepLength)
	out.TipDiameter = in.ShaftDiameter
	if s > 0 {
		out.TipDiameter = in.StepDiameter
	}
	bore := float64(in.ShaftBore)
	perLength := func(d quantity.Length) float64 {
		return float64(in.ShaftDensity) * gravity * area(float64(d), bore) * tilt
	}
	thick, tip := perLength(in.ShaftDiameter)*r, perLength(out.TipDiameter)*s
	coupling := float64(in.CouplingMass) * gravity * tilt
	step := tip*s/2 + coupling*(s-float64(in.CouplingCentre))
	moment := thick*r/2 + (tip+coupling)*r + step

	out.ThickWeight, out.TipWeight, out.CouplingWeight = quantity.Force(thick), quantity.Force(tip), quantity.Force(coupling)
	out.StepMoment, out.BendingMoment = quantity.Torque(step), quantity.Torque(moment)
	nan := quantity.Force(math.NaN())
	out.SpanWeight, out.SupportReaction, out.BackReaction = nan, nan, nan
	out.PropellerWeight, out.AftShaftWeight, out.AftMoment = nan, nan, quantity.Torque(math.NaN())
	if span := float64(in.SpanBehind); span > 0 {
		a := float64(in.PropellerOverhang)
		propeller, aft := 0.0, perLength(in.ShaftDiameter)*a
		if a > 0 {
			propeller = float64(in.PropellerMass) * gravity * tilt
		}
		over := (propeller + aft/2) * a
		out.PropellerWeight, out.AftShaftWeight, out.AftMoment = quantity.Force(propeller), quantity.Force(aft), quantity.Torque(over)
		weight := perLength(in.ShaftDiameter) * span
		out.SpanWeight = quantity.Force(weight)
		if in.PropellerMass == 0 || a > 0 {
			out.BackReaction = quantity.Force(propeller + aft + weight/2 + (over-moment)/span)
		}
		out.SupportReaction = quantity.Force(thick + tip + coupling + weight/2 + (moment-over)/span)
	}
}

// bend finds droop and slope of the end.
func (out *DroopResult) bend(in *DroopInput) {
	l, s := float64(in.FreeLength), float64(in.StepLength)
	r, c := l-s, float64(in.CouplingCentre)
	bore, e := float64(in.ShaftBore), float64(in.ElasticModulus)
	thick, tip := e*secondMoment(float64(in.ShaftDiameter), bore), e*secondMoment(float64(out.TipDiameter), bore)
	out.ThickStiffness, out.TipStiffness = quantity.AngularStiffness(thick/l), quantity.AngularStiffness(tip/l)

	weight, end, moment := float64(out.ThickWeight), float64(out.TipWeight+out.CouplingWeight), float64(out.StepMoment)
	stepSag := ((weight/8+end/3)*r*r*r + moment*r*r/2) / thick
	stepSlope := ((weight/6+end/2)*r*r + moment*r) / thick
	tipWeight, coupling := float64(out.TipWeight), float64(out.CouplingWeight)
	sag := stepSag + stepSlope*s + (tipWeight*s*s*s/8+coupling*(s-c)*(s-c)*(2*s+c)/6)/tip
	slope := stepSlope + (tipWeight*s*s/6+coupling*(s-c)*(s-c)/2)/tip
	out.StepSag, out.StepSlope, out.SupportSlope = quantity.Length(stepSag), quantity.Angle(stepSlope), quantity.Angle(math.NaN())
	if span := float64(in.SpanBehind); span > 0 {
		turn := (float64(out.BendingMoment)*span/3 + float64(out.AftMoment)*span/6 - float64(out.SpanWeight)*span*span/24) / thick
		out.SupportSlope = quantity.Angle(turn)
		sag, slope = sag+turn*l, slope+turn
	}
	out.DroopSag, out.DroopSlope = quantity.Length(sag), quantity.Angle(slope)
	out.DroopPerDiameter = quantity.Ratio(math.Abs(math.Tan(slope)))
	if in.SpanBehind == 0 || in.PropellerMass > 0 && in.PropellerOverhang == 0 {
		out.DroopPerDiameter = quantity.Ratio(math.NaN()) // how far the shaft turns in its bearing is not known
	}
	out.SagPerFreeLength = quantity.Ratio(sag / l)
	out.FreeLengthPerShaft = quantity.Ratio(l / float64(in.ShaftDiameter))
}

// lift finds the force at the coupling that takes the droop out, and the slope
// that is left then.
func (out *DroopResult) lift(in *DroopInput) {
	l, s, span := float64(in.FreeLength), float64(in.StepLength), float64(in.SpanBehind)
	r := l - s
	thick, tip := float64(out.ThickStiffness)*l, float64(out.TipStiffness)*l
	flex := (r*r*r/3+s*r*r+s*s*r+l*l*span/3)/thick + s*s*s/(3*tip)
	turn := (r*r/2+s*r+l*span/3)/thick + s*s/(2*tip)
	force := float64(out.DroopSag) / flex
	left := float64(out.DroopSlope) - force*turn
	out.EndStiffness, out.LiftForce = quantity.Stiffness(1/flex), quantity.Force(force)
	out.LiftReading = quantity.Mass(force / gravity)
	out.SlopeLifted = quantity.Angle(left)

	out.DroopOpens = OpensBelow
	if out.DroopSlope < 0 {
		out.DroopOpens = OpensAbove
	}
	d := quantity.OrNaN(float64(in.CouplingDiameter))
	out.DroopGap = quantity.Length(d * math.Tan(float64(out.DroopSlope)))
	out.GapLifted = quantity.Length(d * math.Tan(left))
}

// validate lists everything that cannot be.
func (in *DroopInput) validate() error {
	var faults problem.List
	faults.Above("/shaftDiameter", "shaft diameter", float64(in.ShaftDiameter))
	faults.Above("/freeLength", "free length", float64(in.FreeLength))
	faults.Above("/elasticModulus", "stiffness of the metal", float64(in.ElasticModulus))
	faults.Above("/shaftDensity", "density of the metal", float64(in.ShaftDensity))
	faults.NotNegative("/couplingMass", "mass of the coupling flange", float64(in.CouplingMass))
	faults.NotNegative("/couplingDiameter", "coupling diameter", float64(in.CouplingDiameter))
	faults.NotNegative("/spanBehind", "span behind", float64(in.SpanBehind))
	faults.NotNegative("/propellerMass", "mass of the propeller", float64(in.PropellerMass))
	faults.NotNegative("/propellerOverhang", "overhang of the propeller", float64(in.PropellerOverhang))
	faults.NotNegative("/couplingCentre", "distance of the coupling's centre of mass", float64(in.CouplingCentre))
	faults.NotNegative("/stepLength", "length of the second section", float64(in.StepLength))
	boreFits(&faults, "/shaftBore", float64(in.ShaftBore), float64(in.ShaftDiameter))
	if i := float64(in.ShaftIncline); !(math.Abs(i) <= 1) {
		faults.Add("/shaftIncline", "the incline of the shaft line is steeper than any boat's or not a number", "0° to 57°", "8 to 15 degrees are usual")
	}
	s, l, c := float64(in.StepLength), float64(in.FreeLength), float64(in.CouplingCentre)
	reach := l
	if s > 0 {
		reach = s
		if faults.Above("/stepDiameter", "diameter of the second section", float64(in.StepDiameter)); in.StepDiameter > 0 {
			boreFits(&faults, "/shaftBore", float64(in.ShaftBore), float64(in.StepDiameter))
		}
		if s >= l {
			faults.Add("/stepLength", fmt.Sprintf("a second section of %s does not go into a free length of %s", problem.Millimetres(s), problem.Millimetres(l)), "less than "+problem.Millimetres(l), "the free length holds both sections")
		}
	}
	if c > 0 && c > reach {
		faults.Add("/couplingCentre", fmt.Sprintf("the coupling's centre of mass lies %s aft of the face, beyond the %s it sits on", problem.Millimetres(c), problem.Millimetres(reach)), "up to "+problem.Millimetres(reach), "usually about a third of the coupling's length")
	}
	return faults.Err()
}
