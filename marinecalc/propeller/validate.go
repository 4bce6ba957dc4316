// Checks of a propeller on its taper.

package propeller

import (
	"fmt"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

const (
	deepestThread = 1.3 // pitches, more than the root of any thread lies deep
)

// validate lists everything in the fit that cannot be.
func (in *TaperInput) validate() error {
	var faults problem.List
	in.validateCone(&faults)
	in.validateDrive(&faults)
	in.validateLoad(&faults)
	if faults == nil {
		in.validateShape(&faults)
	}
	return faults.Err()
}

func (in *TaperInput) validateCone(faults *problem.List) {
	faults.Above("/shaftDiameter", "shaft diameter", float64(in.ShaftDiameter))
	faults.Above("/hubDiameter", "outside of the hub", float64(in.HubDiameter))
	faults.Above("/hubModulus", "elastic modulus of the hub", float64(in.HubModulus))
	faults.Above("/elasticModulus", "elastic modulus of the shaft", float64(in.ElasticModulus))
	faults.Share("/contactShare", "share of the cone that touches", float64(in.ContactShare))
	if k := float64(in.TaperRatio); !(k > 0 && k <= hub.SteepestTaper) {
		faults.Add("/taperRatio", "the taper is missing or cannot be", "above 0, up to 0.25", "1 in 16 is 0.0625, 1 in 10 is 0.1")
	}
	if mu := float64(in.BoreFriction); !(mu > 0 && mu < 1) {
		faults.Add("/boreFriction", "the friction of cone and hub is missing or cannot be", "above 0, below 1", "0.13 means that they hold 13 % of what presses them together")
	}
	for _, v := range [...]struct {
		where, name string
		value       float64
	}{
		{"/taperLength", "length of the taper", float64(in.TaperLength)},
		{"/hubLength", "length of the hub", float64(in.HubLength)},
		{"/smallEndDiameter", "small end of the taper", float64(in.SmallEndDiameter)},
		{"/markWithoutKey", "mark without the key", float64(in.MarkWithoutKey)},
		{"/markWithKey", "mark with the key", float64(in.MarkWithKey)},
		{"/bore", "bore through the shaft", float64(in.Bore)},
		{"/hubYieldStrength", "yield strength of the hub", float64(in.HubYieldStrength)},
		{"/shaftYieldStrength", "yield strength of the shaft", float64(in.ShaftYieldStrength)},
		{"/hubExpansion", "thermal expansion of the hub", float64(in.HubExpansion)},
	} {
		faults.NotNegative(v.where, v.name, v.value)
	}
	faults.Between("/hubPoisson", "Poisson's ratio of the hub", float64(in.HubPoisson), 0, 0.5, "0 to 0.5")
	faults.Between("/shaftPoisson", "Poisson's ratio of the shaft", float64(in.ShaftPoisson), 0, 0.5, "0 to 0.5")
}

func (in *TaperInput) validateDrive(faults *problem.List) {
	switch in.NutLock {
	case "", LockCotter, LockTab, LockNylon, LockSecond, LockMakers, LockNone, LockUnseen:
	default:
		faults.Add("/nutLock", "what locks the nut is not known by that word", "cotter, tab-washer, nylon-insert, second-nut, makers-lock, none, not-known", "")
	}
	switch in.NutOrder {
	case "", ThinFirst, ThickFirst, OneNut, OrderUnknown:
	default:
		faults.Add("/nutOrder", "the order of the nuts is not known by that word", "thin-first, thick-first, one-nut, not-known", "")
	}
	if in.NutLock == LockSecond && in.NutOrder == OneNut {
		faults.Add("/nutLock", "a second nut is said to lock the nut, and that there is one nut alone", "a second nut with the order of both, or what else locks the one", "look at the shaft's end")
	}
	faults.NotNegative("/pushUp", "push-up", float64(in.PushUp))
	if most := hub.MostInterference * float64(in.ShaftDiameter) / quantity.OrNaN(float64(in.TaperRatio)); float64(in.PushUp) > most {
		faults.Add("/pushUp", fmt.Sprintf("a push-up of %s would stretch the hub more than any metal bears", problem.Millimetres(float64(in.PushUp))), "at most "+problem.Millimetres(most), "measure from where the dry hub sits by a light push, along the shaft")
	}
	faults.NotNegative("/nutForce", "push of the nut", float64(in.NutForce))
	faults.NotNegative("/nutTorque", "torque of the nut", float64(in.NutTorque))
	faults.NotNegative("/nutFactor", "nut factor", float64(in.NutFactor))
	faults.NotNegative("/nutDiameter", "thread diameter of the nut", float64(in.NutDiameter))
	faults.NotNegative("/nutPitch", "pitch of the nut", float64(in.NutPitch))
	faults.NotNegative("/nutFaceDiameter", "outside of the nut's face", float64(in.NutFaceDiameter))
	faults.NotNegative("/hubHole", "hole in the hub's face", float64(in.HubHole))
	faults.NotNegative("/permittedBearingStress", "allowed pressure under the nut", float64(in.PermittedBearingStress))
	if in.NutFaceShare != 0 {
		faults.Between("/nutFaceShare", "nut's face over its thread", float64(in.NutFaceShare), 1, 3, "1 to 3")
	}
	if in.PushUp == 0 && in.NutForce == 0 {
		for _, v := range [...]struct {
			where, name string
			value       float64
		}{
			{"/nutTorque", "neither push-up nor the nut's torque is known", float64(in.NutTorque)},
			{"/nutDiameter", "the nut's thread is missing", float64(in.NutDiameter)},
			{"/nutFactor", "the nut factor is missing", float64(in.NutFactor)},
		} {
			if v.value == 0 {
				faults.Add(v.where, v.name, "above 0", "type the push-up, or torque and thread of the nut")
			}
		}
	}
	if in.NutDiameter > 0 && in.NutPitch > 0 {
		if in.NutForm != fastener.Metric && in.NutForm != fastener.Inch {
			faults.Add("/nutForm", "the thread standard is missing or unknown", "metric, inch", "")
		}
		if in.NutDiameter <= deepestThread*in.NutPitch {
			faults.Add("/nutPitch", "the pitch is so coarse that the thread has no root left", "well below the thread diameter", "an inch thread's pitch is one inch divided by its threads per inch")
		}
	}
}

func (in *TaperInput) validateLoad(faults *problem.List) {
	faults.Above("/shaftTorque", "torque ahead", float64(in.ShaftTorque))
	faults.NotNegative("/asternTorque", "torque astern", float64(in.AsternTorque))
	faults.NotNegative("/peakTorque", "peak torque", float64(in.PeakTorque))
	faults.NotNegative("/keyTorque", "torque of the key", float64(in.KeyTorque))
	faults.NotNegative("/keyTorqueMost", "torque that the key holds at most", float64(in.KeyTorqueMost))
	if in.Keyed != "" && in.Keyed != hub.WithKey && in.Keyed != hub.NoKey {
		faults.Add("/keyed", "it is not said whether there is a key", "yes, no", "")
	}
	if in.Keyed == hub.NoKey && in.KeyTorque > 0 {
		faults.Add("/keyed", "a key's torque is given, and that there is no key", "yes with that torque, or no without it", "")
	}
	faults.NotNegative("/thrust", "thrust", float64(in.Thrust))
	faults.NotNegative("/thrustAstern", "thrust astern", float64(in.ThrustAstern))
	if in.LengthShare != 0 {
		faults.Between("/lengthShare", "length that touches over the hub's", float64(in.LengthShare), 0.3, 1, "0.3 to 1")
	}
	faults.Between("/asternThrust", "thrust astern over that ahead", float64(in.AsternThrust), 0, 2, "0 to 2")
}

func (in *TaperInput) validateShape(faults *problem.List) {
	length := in.contact()
	small := float64(hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, length))
	switch {
	case length == 0:
		faults.Add("/taperLength", "neither the cone's length nor the hub's is known", "above 0", "what of the cone lies in the hub")
	case !(small > 0):
		faults.Add("/taperLength", "a taper so long comes to a point", "less than "+problem.Millimetres(float64(in.ShaftDiameter)/float64(in.TaperRatio)), "")
	case !(float64(in.Bore) < small):
		faults.Add("/bore", fmt.Sprintf("a bore of %s leaves nothing of a cone of %s", problem.Millimetres(float64(in.Bore)), problem.Millimetres(small)), "less than "+problem.Millimetres(small), "0 for a solid shaft")
	}
	if in.HubDiameter <= in.ShaftDiameter {
		faults.Add("/hubDiameter", fmt.Sprintf("a hub of %s is no wider than its shaft", problem.Millimetres(float64(in.HubDiameter))), "above "+problem.Millimetres(float64(in.ShaftDiameter)), "outside of the hub midway along")
	}
	if end := float64(hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, in.TaperLength)); in.TaperLength > 0 && end > 0 && float64(in.NutDiameter) > end {
		faults.Add("/nutDiameter", fmt.Sprintf("a hub whose cone ends at %s does not go over a thread of %s", problem.Millimetres(end), problem.Millimetres(float64(in.NutDiameter))), "at most "+problem.Millimetres(end), "measure the thread, and the taper's length and small end")
	}
	if in.HubHole >= in.HubDiameter {
		faults.Add("/hubHole", fmt.Sprintf("a hole of %s leaves nothing of a hub of %s", problem.Millimetres(float64(in.HubHole)), problem.Millimetres(float64(in.HubDiameter))), "less than "+problem.Millimetres(float64(in.HubDiameter)), "")
	}
	if face, hole := in.NutFaceDiameter, in.hole(); face > 0 && face <= hole {
		faults.Add("/nutFaceDiameter", fmt.Sprintf("a face of %s goes into a hole of %s: such a nut does not press the hub", problem.Millimetres(float64(face)), problem.Millimetres(float64(hole))), "above "+problem.Millimetres(float64(hole)), "of a washer under the nut type its outside; measure the hole in the hub's end")
	}
	if in.SmallEndDiameter >= in.ShaftDiameter {
		faults.Add("/smallEndDiameter", "the small end is no smaller than the large one", "less than "+problem.Millimetres(float64(in.ShaftDiameter)), "")
	}
}
