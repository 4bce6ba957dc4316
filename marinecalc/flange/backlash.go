// Free play of the line, joint by joint: Backlash.

package flange

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// BacklashInput is the free play of the line as it was read at places along it,
// all with the engine held at its crankshaft and in gear, from one stop to the
// other. At each place the angle is given, or the travel on a radius; NaN is not
// read. One place is needed.
type BacklashInput struct {
	AtPropeller       quantity.Angle  `unset:"NaN"` // at the propeller, its own key behind the hand
	TravelAtPropeller quantity.Length `unset:"NaN"`
	RadiusAtPropeller quantity.Length // needed with the travel

	AtShaft       quantity.Angle  `unset:"NaN"` // on the propeller shaft behind its coupling
	TravelAtShaft quantity.Length `unset:"NaN"`
	RadiusAtShaft quantity.Length

	AtFlange       quantity.Angle  `unset:"NaN"` // at the gearbox output flange
	TravelAtFlange quantity.Length `unset:"NaN"`
	RadiusAtFlange quantity.Length

	AtOutputShaft       quantity.Angle  `unset:"NaN"` // on the end of the output shaft, inside the flange
	TravelAtOutputShaft quantity.Length `unset:"NaN"`
	RadiusAtOutputShaft quantity.Length

	PropellerSpread         quantity.Angle  `spreadOf:"atPropeller"` // standard uncertainties of what was read; 0: not known
	PropellerTravelSpread   quantity.Length `spreadOf:"travelAtPropeller"`
	ShaftSpread             quantity.Angle  `spreadOf:"atShaft"`
	ShaftTravelSpread       quantity.Length `spreadOf:"travelAtShaft"`
	FlangeSpread            quantity.Angle  `spreadOf:"atFlange"`
	FlangeTravelSpread      quantity.Length `spreadOf:"travelAtFlange"`
	OutputShaftSpread       quantity.Angle  `spreadOf:"atOutputShaft"`
	OutputShaftTravelSpread quantity.Length `spreadOf:"travelAtOutputShaft"`

	HandTorque    quantity.Torque // with which it was pressed to each stop; optional
	ShaftLength   quantity.Length // from coupling to propeller; optional
	ShaftDiameter quantity.Length // optional
	ShearModulus  quantity.Stress // above 0

	EarlierAtPropeller quantity.Angle `unset:"NaN"` // of an earlier reading; NaN for none
	RunningTime        quantity.Time  // since then; optional

	SplineDiameter    quantity.Length // mean, of the output flange; optional
	CouplingBore      quantity.Length // optional
	PropellerDiameter quantity.Length // of the taper where its key sits; optional
}

// BacklashResult is what Backlash finds. NaN marks a figure for which a reading is
// missing.
type BacklashResult struct {
	Total          quantity.Angle // at the aftmost place read, without what the shaft winds up
	GearboxAndHub  quantity.Angle // at the output flange
	GearboxShare   quantity.Angle // gears and clutch
	HubShare       quantity.Angle // output flange on its shaft
	CouplingShare  quantity.Angle // coupling: bolts, and its key or bore
	PropellerShare quantity.Angle // propeller on its shaft
	Greatest       string         // the joint with the greatest share, where that is told
	WoundUp        quantity.Angle // what the shaft winds up under the hand, both ways

	PropellerUsed   quantity.Angle // by angle, or by travel
	ShaftUsed       quantity.Angle
	FlangeUsed      quantity.Angle
	OutputShaftUsed quantity.Angle

	HubPlay       quantity.Length // at the flanks of the spline
	CouplingPlay  quantity.Length // at the surface of the bore
	PropellerPlay quantity.Length // at the surface of the taper

	PlayGrowth            quantity.Angle // at the propeller since the earlier reading
	PlayGrowthPerThousand quantity.Angle // in a thousand hours
	TimesEarlier          quantity.Ratio // the reading at the propeller over the earlier one
}

// The codes of Greatest, for which the schema of backlash has the words.
const (
	InGearbox       = "gearbox"
	InGearboxAndHub = "gearbox-and-hub"
	InHub           = "hub"
	InCoupling      = "coupling"
	InPropeller     = "propeller"
	NotSplit        = "not-split"
	NoPlay          = "none"   // none that the readings tell from nothing
	GreatestNotTold = "unsure" // two or more are alike as far as the readings tell
)

// Backlash splits the free play of the line over its joints.
//
// What lies ahead of a place is in its reading, what lies behind is not: the
// share of a joint is the difference of the readings on either side of it. A
// travel on a radius is an arc. The shaft winds up between hand and joint by
// T·l/(G·J) each way (Saint-Venant's torsion of a round bar), which is taken off
// the reading at the propeller.
//
// The error is a *problem.Error of everything that cannot be. Backlash allocates
// nothing when it succeeds.
func Backlash(in BacklashInput) (out BacklashResult, err error) {
	if err = in.validate(); err != nil {
		return BacklashResult{}, err
	}
	out.PropellerUsed = used(in.AtPropeller, in.TravelAtPropeller, in.RadiusAtPropeller)
	out.ShaftUsed = used(in.AtShaft, in.TravelAtShaft, in.RadiusAtShaft)
	out.FlangeUsed = used(in.AtFlange, in.TravelAtFlange, in.RadiusAtFlange)
	out.OutputShaftUsed = used(in.AtOutputShaft, in.TravelAtOutputShaft, in.RadiusAtOutputShaft)
	out.WoundUp = in.windUp()
	propeller := out.PropellerUsed
	if !math.IsNaN(float64(out.WoundUp)) {
		propeller -= out.WoundUp
	}
	out.Total = propeller
	for _, v := range [...]quantity.Angle{out.ShaftUsed, out.FlangeUsed, out.OutputShaftUsed} {
		if math.IsNaN(float64(out.Total)) {
			out.Total = v
		}
	}
	out.GearboxAndHub = out.FlangeUsed
	out.GearboxShare = out.OutputShaftUsed
	out.HubShare = out.FlangeUsed - out.OutputShaftUsed
	out.CouplingShare = out.ShaftUsed - out.FlangeUsed
	out.PropellerShare = propeller - out.ShaftUsed
	out.greatest(&in)
	arc := func(share quantity.Angle, d quantity.Length) quantity.Length {
		return quantity.Length(float64(share) * quantity.OrNaN(float64(d)) / 2)
	}
	out.HubPlay, out.CouplingPlay, out.PropellerPlay = arc(out.HubShare, in.SplineDiameter), arc(out.CouplingShare, in.CouplingBore), arc(out.PropellerShare, in.PropellerDiameter)
	out.PlayGrowth = out.PropellerUsed - in.EarlierAtPropeller
	out.PlayGrowthPerThousand = quantity.Angle(float64(out.PlayGrowth) * 3.6e6 / quantity.OrNaN(float64(in.RunningTime)))
	out.TimesEarlier = quantity.Ratio(float64(out.PropellerUsed) / quantity.OrNaN(float64(in.EarlierAtPropeller)))
	return out, nil
}

// Read tells whether free play was read anywhere.
func (in *BacklashInput) Read() bool {
	for _, v := range [...]float64{float64(in.AtPropeller), float64(in.TravelAtPropeller), float64(in.AtShaft), float64(in.TravelAtShaft),
		float64(in.AtFlange), float64(in.TravelAtFlange), float64(in.AtOutputShaft), float64(in.TravelAtOutputShaft)} {
		if !math.IsNaN(v) {
			return true
		}
	}
	return false
}

// used is a reading by angle, or by travel on a radius.
func used(angle quantity.Angle, travel, radius quantity.Length) quantity.Angle {
	if !math.IsNaN(float64(angle)) {
		return angle
	}
	return quantity.Angle(float64(travel) / quantity.OrNaN(float64(radius)))
}

// windUp is what the shaft winds up under the hand, from stop to stop; NaN where
// a measure of it is not known.
func (in *BacklashInput) windUp() quantity.Angle {
	d := quantity.OrNaN(float64(in.ShaftDiameter))
	j := math.Pi / 32 * d * d * d * d
	return quantity.Angle(2 * quantity.OrNaN(float64(in.HandTorque)) * quantity.OrNaN(float64(in.ShaftLength)) / (float64(in.ShearModulus) * j))
}

// off is the standard uncertainty of a reading, by angle or by travel on a radius.
func off(angle quantity.Angle, byAngle quantity.Angle, travel, radius quantity.Length) float64 {
	if !math.IsNaN(float64(angle)) || radius == 0 {
		return float64(byAngle)
	}
	return float64(travel / radius)
}

// greatest names the joint with the greatest share, where that is told from the
// next by more than 1.96 of the standard uncertainty of their difference, as if
// no reading were in both.
func (out *BacklashResult) greatest(in *BacklashInput) {
	propeller := off(in.AtPropeller, in.PropellerSpread, in.PropellerTravelSpread, in.RadiusAtPropeller)
	shaft := off(in.AtShaft, in.ShaftSpread, in.ShaftTravelSpread, in.RadiusAtShaft)
	flange := off(in.AtFlange, in.FlangeSpread, in.FlangeTravelSpread, in.RadiusAtFlange)
	output := off(in.AtOutputShaft, in.OutputShaftSpread, in.OutputShaftTravelSpread, in.RadiusAtOutputShaft)
	joints := [...]struct {
		share quantity.Angle
		off   float64
		name  string
	}{{out.GearboxShare, output, InGearbox}, {out.HubShare, math.Hypot(flange, output), InHub}, {out.CouplingShare, math.Hypot(shaft, flange), InCoupling},
		{out.PropellerShare, math.Hypot(propeller, shaft), InPropeller}, {out.GearboxAndHub, flange, InGearboxAndHub}}
	if !math.IsNaN(float64(out.GearboxShare)) { // told apart
		joints[4].share = quantity.Angle(math.NaN())
	}
	known, most := 0, -1
	for i, j := range joints {
		if !math.IsNaN(float64(j.share)) {
			if known++; most < 0 || j.share > joints[most].share {
				most = i
			}
		}
	}
	if known < 2 {
		out.Greatest = NotSplit
		return
	}
	first := joints[most]
	out.Greatest = first.name
	if float64(first.share) <= coverage*first.off {
		out.Greatest = NoPlay
		return
	}
	for i, j := range joints {
		if i != most && float64(first.share-j.share) <= coverage*math.Hypot(first.off, j.off) {
			out.Greatest = GreatestNotTold
		}
	}
}

// validate lists everything that cannot be.
func (in *BacklashInput) validate() error {
	var faults problem.List
	for _, r := range [...]struct {
		angle, travel, radius, place string
		a                            quantity.Angle
		t, r                         quantity.Length
	}{
		{"/atPropeller", "/travelAtPropeller", "/radiusAtPropeller", "propeller", in.AtPropeller, in.TravelAtPropeller, in.RadiusAtPropeller},
		{"/atShaft", "/travelAtShaft", "/radiusAtShaft", "shaft", in.AtShaft, in.TravelAtShaft, in.RadiusAtShaft},
		{"/atFlange", "/travelAtFlange", "/radiusAtFlange", "output flange", in.AtFlange, in.TravelAtFlange, in.RadiusAtFlange},
		{"/atOutputShaft", "/travelAtOutputShaft", "/radiusAtOutputShaft", "output shaft", in.AtOutputShaft, in.TravelAtOutputShaft, in.RadiusAtOutputShaft},
	} {
		a, t := float64(r.a), float64(r.t)
		if a < -0.05 || a > math.Pi {
			faults.Add(r.angle, "a free play of that angle at the "+r.place+" cannot be", "0 to 180°", "from one stop to the other")
		}
		if t < -0.005 || math.IsInf(t, 1) {
			faults.Add(r.travel, "the travel at the "+r.place+" is negative or not a number", "0 or more", "")
		}
		faults.NotNegative(r.radius, "radius at the "+r.place, float64(r.r))
		if !math.IsNaN(t) && math.IsNaN(a) && r.r == 0 {
			faults.Add(r.radius, "the radius on which that travel was read is missing", "above 0", "from the shaft's middle to the dial or the mark")
		}
		if math.IsNaN(a) && r.r > 0 && t > math.Pi*float64(r.r) && !math.IsInf(t, 1) {
			faults.Add(r.travel, "a travel of "+problem.Millimetres(t)+" on a radius of "+problem.Millimetres(float64(r.r))+" at the "+r.place+" is more than half a turn", "up to "+problem.Millimetres(math.Pi*float64(r.r)), "from one stop to the other; the radius from the shaft's middle to the dial or the mark")
		}
	}
	if !in.Read() {
		faults.Add("/atPropeller", "no free play was read", "an angle or a travel at one place at least", "engine held, in gear, turned by hand from stop to stop")
	}
	for _, u := range [...]struct {
		where string
		v     float64
	}{{"/propellerSpread", float64(in.PropellerSpread)}, {"/propellerTravelSpread", float64(in.PropellerTravelSpread)}, {"/shaftSpread", float64(in.ShaftSpread)}, {"/shaftTravelSpread", float64(in.ShaftTravelSpread)},
		{"/flangeSpread", float64(in.FlangeSpread)}, {"/flangeTravelSpread", float64(in.FlangeTravelSpread)}, {"/outputShaftSpread", float64(in.OutputShaftSpread)}, {"/outputShaftTravelSpread", float64(in.OutputShaftTravelSpread)}} {
		faults.NotNegative(u.where, "uncertainty", u.v)
	}
	faults.NotNegative("/handTorque", "torque of the hand", float64(in.HandTorque))
	faults.NotNegative("/shaftLength", "length of the shaft", float64(in.ShaftLength))
	faults.NotNegative("/shaftDiameter", "diameter of the shaft", float64(in.ShaftDiameter))
	faults.Above("/shearModulus", "shear modulus of the shaft", float64(in.ShearModulus))
	faults.NotNegative("/runningTime", "running time", float64(in.RunningTime))
	faults.NotNegative("/splineDiameter", "mean diameter of the spline", float64(in.SplineDiameter))
	faults.NotNegative("/couplingBore", "bore of the coupling", float64(in.CouplingBore))
	faults.NotNegative("/propellerDiameter", "diameter of the taper", float64(in.PropellerDiameter))
	if v := float64(in.EarlierAtPropeller); v < -0.05 || v > math.Pi {
		faults.Add("/earlierAtPropeller", "an earlier free play of that angle cannot be", "0 to 180°", "")
	}
	return faults.Err()
}
