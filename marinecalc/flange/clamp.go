// Springs, clamp and wear of the stack.

package flange

import (
	"math"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/quantity"
)

const (
	secant30        = 1.1547005383792515 // 1/cos 30°, of half the thread angle
	pitchDepth      = 0.649519           // pitches, ISO 68-1 and ASME B1.1
	metricRootDepth = 1.226869           // pitches, ISO 898-1
	inchRootDepth   = 1.299038           // pitches, ASME B1.1
	engagedLength   = 0.5                // diameters of the root inside the nut: VDI 2230, from memory
	nutThreadShift  = 0.4                // diameters of the full section, for nut and thread: VDI 2230, from memory
)

// diameters of the thread: pitch and root.
func (in *OutputInput) diameters() (d2, d3 float64) {
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	root := inchRootDepth
	if in.ThreadForm == fastener.Metric {
		root = metricRootDepth
	}
	return d - pitchDepth*p, d - root*p
}

// springs finds the stiffness of shaft end and stack, and the face that is
// clamped.
func (out *OutputResult) springs(in *OutputInput) {
	seat, bore, d := float64(in.SeatDiameter), float64(in.ShaftBore), float64(in.NominalDiameter)
	d2, d3 := in.diameters()
	out.PitchDiameter, out.MinorDiameter, out.StressDiameter = quantity.Length(d2), quantity.Length(d3), quantity.Length((d2+d3)/2)
	hub := quantity.OrNaN(max(0, float64(in.HubLength))) // is always in the stack: without its length nothing is known of it
	out.ClampedLength = quantity.Length(hub) + max(0, in.RingLength) + max(0, in.SpacerLength)
	thread := float64(in.ThreadInside)
	give := (float64(out.ClampedLength)-thread)/ring(seat, bore) + thread/ring((d2+d3)/2, bore) +
		engagedLength*d/ring(d3, bore) + nutThreadShift*d/ring(d, 0)
	out.ShaftSpring = quantity.Stiffness(float64(in.ShaftModulus) / give)
	give, out.FaceOutside = 0*hub, in.FaceDiameter
	for _, part := range [...]struct{ length, outside quantity.Length }{{in.HubLength, in.HubDiameter}, {in.RingLength, in.RingDiameter}, {in.SpacerLength, in.SpacerDiameter}} {
		if part.length > 0 {
			give += float64(part.length) / ring(quantity.OrNaN(float64(part.outside)), seat)
		}
		if o := part.outside; in.FaceDiameter == 0 && o > 0 && (out.FaceOutside == 0 || o < out.FaceOutside) {
			out.FaceOutside = o
		}
	}
	out.FaceOutside = quantity.Length(quantity.OrNaN(float64(out.FaceOutside)))
	out.StackSpring = quantity.Stiffness(float64(in.StackModulus) / quantity.OrNaN(give))
	out.LoadShare = quantity.Ratio(out.ShaftSpring / (out.ShaftSpring + out.StackSpring))
}

// ring is the area of a ring.
func ring(outside, inside float64) float64 {
	return math.Pi / 4 * (outside*outside - inside*inside)
}

// friction finds the torque for each unit of clamp: the frictions given, or the
// one that thread and face have alike when the nut factor is what lead and
// friction come to.
func (out *OutputResult) friction(in *OutputInput) {
	d2, _ := in.diameters()
	collar := in.collar()
	out.CollarDiameter = quantity.Length(collar)
	thread, lead := d2*secant30/2, float64(in.Pitch)/(2*math.Pi)
	alike := quantity.Ratio(fastener.AlikeFriction(quantity.Ratio(quantity.OrNaN(float64(in.NutFactor))), in.NominalDiameter, in.Pitch, out.CollarDiameter))
	if !(alike > 0) {
		alike = quantity.Ratio(math.NaN())
	}
	out.ThreadFrictionUsed, out.NutFrictionUsed = in.ThreadFriction, in.NutFriction
	if in.ThreadFriction == 0 {
		out.ThreadFrictionUsed = alike
	}
	if in.NutFriction == 0 {
		out.NutFrictionUsed = alike
	}
	out.FrictionsFactor = quantity.Ratio(math.NaN())
	if in.ThreadFriction > 0 && in.NutFriction > 0 {
		out.FrictionsFactor = quantity.Ratio((lead + float64(in.ThreadFriction)*thread + float64(in.NutFriction)*collar/2) / float64(in.NominalDiameter))
	}
	out.TorquePerClamp = quantity.Length(lead + float64(out.ThreadFrictionUsed)*thread + float64(out.NutFrictionUsed)*collar/2)
}

// collar is the mean diameter of the face that turns.
func (in *OutputInput) collar() float64 {
	if in.NutFaceDiameter > 0 {
		return float64(in.NutFaceDiameter+in.SeatDiameter) / 2
	}
	return fastener.HexagonCollar * float64(in.NominalDiameter)
}

// face finds the pressure under the nut as it was tightened, over the ring between its
// face and the shaft inside. What is usual of a hexagon says little here: such nuts have
// collars and washers.
func (out *OutputResult) face(in *OutputInput) {
	out.FaceStress = fastener.FacePressure(out.FittedClamp, in.NutFaceDiameter, in.SeatDiameter)
	out.FaceUse = quantity.Ratio(float64(out.FaceStress) / quantity.OrNaN(float64(in.PermittedBearingStress)))
}

// clamp finds what the nut was tightened to.
func (out *OutputResult) clamp(in *OutputInput) {
	give := 1/float64(out.ShaftSpring) + 1/float64(out.StackSpring)
	perTurn := float64(in.Pitch) / (2 * math.Pi)
	each := float64(out.TorquePerClamp)
	out.ClampFromTorque = quantity.Force(float64(in.TorqueScatter) * quantity.OrNaN(float64(in.NutTorque)) / each)
	out.ClampFromTurn = quantity.Force(float64(in.TurnScatter) * quantity.OrNaN(float64(in.NutTurn)) * perTurn / give)
	out.ClampFromLoosening = quantity.Force(quantity.OrNaN(float64(in.LooseningTorque)) / loosening(each, perTurn))
	out.FittedClamp = out.ClampFromTurn
	if in.NutTurn == 0 || math.IsNaN(give) {
		out.FittedClamp = out.ClampFromTorque
	}
	out.ShareByLoosening = quantity.Ratio(out.ClampFromLoosening / out.FittedClamp)
	force := float64(out.FittedClamp)
	out.Stretch = quantity.Length(force / float64(out.ShaftSpring))
	out.Squeeze = quantity.Length(force / float64(out.StackSpring))
	out.WearToLoss = out.Stretch + out.Squeeze
	out.TurnFromSnug = quantity.Angle(force * give / perTurn)
}

// loosening is the torque for each unit of clamp that undoes the nut: the lead
// helps; NaN for a thread so steep that the nut would undo itself.
func loosening(each, lead float64) float64 {
	if back := each - 2*lead; back > 0 {
		return back
	}
	return math.NaN()
}

// wear finds what a worn face has left of the clamp, and when it was gone.
func (out *OutputResult) wear(in *OutputInput) {
	worn, gone := float64(in.FaceWear), float64(out.WearToLoss)
	left := min(1, max(0, 1-worn/gone)) * float64(out.FittedClamp)
	if undone := float64(out.ClampFromLoosening); undone < left { // settling and creep take clamp, and wear nothing
		left = undone
	}
	out.ClampLeft = quantity.Force(left)
	out.ShareLeft = quantity.Ratio(left / float64(out.FittedClamp))
	out.RetorqueTurn = quantity.Angle(2 * math.Pi * max(0, worn) / float64(in.Pitch))
	earlier := float64(in.EarlierWear)
	if math.IsNaN(earlier) {
		earlier = 0
	}
	rate := (worn - earlier) / quantity.OrNaN(float64(in.RunningTime))
	out.FaceWearRate = quantity.Length(rate * 3.6e6)
	out.TimeToLoss, out.LostAgo = quantity.Time(math.NaN()), quantity.Time(math.NaN())
	switch left := gone - worn; {
	case math.IsNaN(rate) || math.IsNaN(left):
	case rate > 0:
		out.TimeToLoss = quantity.Time(min(Never, float64(out.ShareLeft)*gone/rate))
		out.LostAgo = quantity.Time(min(Never, max(0, -left/rate)))
	case left > 0:
		out.TimeToLoss, out.LostAgo = Never, 0
	}
}

// thread finds the stress in the shaft's thread while the nut is tightened to
// the clamp, and the torque at which it yields.
func (out *OutputResult) thread(in *OutputInput) {
	d2, d3 := in.diameters()
	ds, bore := (d2+d3)/2, float64(in.ShaftBore)
	twist := float64(in.Pitch)/(2*math.Pi) + float64(out.ThreadFrictionUsed)*d2*secant30/2
	tension := 1 / ring(ds, bore)
	torsion := 16 * twist * ds / (math.Pi * (math.Pow(ds, 4) - math.Pow(bore, 4)))
	one := math.Sqrt(tension*tension + 3*torsion*torsion) // stress of each newton
	yield := quantity.OrNaN(float64(in.ShaftYieldStrength))
	out.ShaftStress = quantity.Stress(one * float64(out.FittedClamp))
	out.ShaftUse = quantity.Ratio(float64(out.ShaftStress) / yield)
	out.MostNutTorque = quantity.Torque(yield / one * float64(out.TorquePerClamp) / float64(in.TorqueScatter))
}
