// Checks of a shaft in the bore of its coupling flange.

package coupling

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/shaft"
)

const (
	mostPinchBolts = 12
	mostSetScrews  = 12
	mostMisfit     = 0.01 // m
)

// validate lists everything in the bore that cannot be.
func (in *BoreInput) validate() error {
	var faults problem.List
	in.validateLoad(&faults)
	in.validateParts(&faults)
	if faults == nil {
		in.validateMethod(&faults)
	}
	if faults == nil && in.KeyWidth > 0 && in.KeyYieldStrength > 0 {
		_, err := shaft.KeyStrength(in.keyed())
		faults = append(faults, problem.Of(err)...)
	}
	return faults.Err()
}

func (in *BoreInput) validateLoad(faults *problem.List) {
	faults.Above("/shaftDiameter", "shaft diameter", float64(in.ShaftDiameter))
	faults.Above("/shaftTorque", "torque ahead", float64(in.ShaftTorque))
	faults.NotNegative("/asternTorque", "torque astern", float64(in.AsternTorque))
	faults.NotNegative("/peakTorque", "peak torque", float64(in.PeakTorque))
	faults.NotNegative("/thrust", "thrust", float64(in.Thrust))
	faults.NotNegative("/thrustAstern", "thrust astern", float64(in.ThrustAstern))
	faults.NotNegative("/foulPull", "pull of a foul propeller", float64(in.FoulPull))
	faults.Between("/asternThrust", "thrust astern over that ahead", float64(in.AsternThrust), 0, 2, "0 to 2")
	if mu := float64(in.BoreFriction); !(mu > 0 && mu < 1) {
		faults.Add("/boreFriction", "the friction of shaft and bore is missing or cannot be", "above 0, below 1", "0.12 means that they hold 12 % of what presses them together")
	}
}

func (in *BoreInput) validateParts(faults *problem.List) {
	for _, v := range [...]struct {
		where, name string
		value       float64
	}{
		{"/engagedLength", "length in the bore", float64(in.EngagedLength)},
		{"/keyWidth", "key width", float64(in.KeyWidth)},
		{"/keyHeight", "key height", float64(in.KeyHeight)},
		{"/heightShare", "height of the key over its width", float64(in.HeightShare)},
		{"/keySeat", "depth of the keyway", float64(in.KeySeat)},
		{"/seatShare", "share of the key's height that sits in the shaft", float64(in.SeatShare)},
		{"/keyLength", "key length", float64(in.KeyLength)},
		{"/keyYieldStrength", "yield strength of the key", float64(in.KeyYieldStrength)},
		{"/shaftYieldStrength", "yield strength of the shaft", float64(in.ShaftYieldStrength)},
		{"/hubYieldStrength", "yield strength of the flange", float64(in.HubYieldStrength)},
		{"/clampFactor", "clamp factor", float64(in.ClampFactor)},
		{"/pinchClamp", "clamp of a pinch bolt", float64(in.PinchClamp)},
		{"/pinchTorque", "torque of a pinch bolt", float64(in.PinchTorque)},
		{"/pinchDiameter", "diameter of a pinch bolt", float64(in.PinchDiameter)},
		{"/nutFaceDiameter", "outside of the nut's face", float64(in.NutFaceDiameter)},
		{"/permittedBearingStress", "allowed pressure under the nut", float64(in.PermittedBearingStress)},
		{"/pinchPitch", "pitch of a pinch bolt", float64(in.PinchPitch)},
		{"/pinchYieldStrength", "yield strength of a pinch bolt", float64(in.PinchYieldStrength)},
		{"/pinchTensileStrength", "tensile strength of a pinch bolt", float64(in.PinchTensileStrength)},
		{"/shaftTensileStrength", "tensile strength of the shaft", float64(in.ShaftTensileStrength)},
		{"/splitGap", "slot left open", told(float64(in.SplitGap))},
		{"/seatingTorque", "torque of a set screw", told(float64(in.SeatingTorque))},
		{"/tableSeating", "seating torque of the table", float64(in.TableSeating)},
		{"/nutFactor", "nut factor", float64(in.NutFactor)},
		{"/screwHolding", "holding power of a set screw", float64(in.ScrewHolding)},
		{"/smoothingLoss", "loss by smoothing", float64(in.SmoothingLoss)},
		{"/hubDiameter", "outside of the boss", float64(in.HubDiameter)},
		{"/bore", "bore through the shaft", float64(in.Bore)},
		{"/hubModulus", "elastic modulus of the flange", float64(in.HubModulus)},
		{"/elasticModulus", "elastic modulus of the shaft", float64(in.ElasticModulus)},
		{"/hubExpansion", "thermal expansion of the flange", float64(in.HubExpansion)},
		{"/fittingClearance", "clearance to slip it on", float64(in.FittingClearance)},
		{"/roomTemperature", "temperature of the shaft", float64(in.RoomTemperature)},
	} {
		faults.NotNegative(v.where, v.name, v.value)
	}
	faults.Between("/interference", "interference", told(float64(in.Interference)), -mostMisfit, mostMisfit, "-10 mm to 10 mm")
	faults.Between("/furtherScrew", "what a further set screw adds", float64(in.FurtherScrew), 0, 1, "0 to 1")
	faults.Between("/taperRatio", "taper", float64(in.TaperRatio), 0, hub.SteepestTaper, "0 to 0.25")
	faults.Between("/hubPoisson", "Poisson's ratio of the flange", float64(in.HubPoisson), 0, 0.5, "0 to 0.5")
	faults.Between("/shaftPoisson", "Poisson's ratio of the shaft", float64(in.ShaftPoisson), 0, 0.5, "0 to 0.5")
	if in.PinchBolts < 0 || in.PinchBolts > mostPinchBolts {
		faults.Add("/pinchBolts", fmt.Sprintf("%d pinch bolts", in.PinchBolts), fmt.Sprintf("0 to %d", mostPinchBolts), "")
	}
	if in.SetScrews < 0 || in.SetScrews > mostSetScrews {
		faults.Add("/setScrews", fmt.Sprintf("%g set screws", float64(in.SetScrews)), fmt.Sprintf("0 to %d", mostSetScrews), "")
	}
	if in.Keyed != "" && in.Keyed != hub.WithKey && in.Keyed != hub.NoKey {
		faults.Add("/keyed", "it is not said whether there is a key", "yes, no", "")
	}
	if in.Keyed == hub.NoKey && in.KeyWidth > 0 {
		faults.Add("/keyed", "a key is given, and that there is none", "yes with its size, or no without it", "")
	}
	if in.KeyWidth > 0 && in.KeyLength == 0 {
		faults.Add("/keyLength", "the key is given without its length", "above 0", "what bears in the bore, without round ends")
	}
	if in.SetScrews > 0 && in.ScrewHolding == 0 {
		faults.Add("/screwHolding", "set screws are given without what one holds", "above 0", "choose the size of the set screws")
	}
}

// needed asks for what a way of holding cannot do without.
func needed(faults *problem.List, where, name string, v float64) {
	if v == 0 {
		faults.Add(where, name+" is missing", "above 0", "it is needed for this way of holding")
	}
}

func (in *BoreInput) validateMethod(faults *problem.List) {
	if in.NutFaceShare != 0 {
		faults.Between("/nutFaceShare", "nut's face over its thread", float64(in.NutFaceShare), 1, 3, "1 to 3")
	}
	switch in.HoldMethod {
	case SplitClamp:
		needed(faults, "/clampFactor", "the clamp factor", float64(in.ClampFactor))
		if in.PinchBolts == 0 {
			faults.Add("/pinchBolts", "the pinch bolts are not counted", fmt.Sprintf("1 to %d", mostPinchBolts), "")
		}
		in.validateClamp(faults)
	case SetScrews:
	case Interference:
		if math.IsNaN(float64(in.Interference)) {
			faults.Add("/interference", "the interference is missing", "a length, below 0 for a clearance", "it is needed for this way of holding")
		}
		if most := hub.MostInterference * float64(in.ShaftDiameter); float64(in.Interference) > most {
			faults.Add("/interference", fmt.Sprintf("an interference of %s is more than any metal bears on a shaft of %s", problem.Millimetres(float64(in.Interference)), problem.Millimetres(float64(in.ShaftDiameter))),
				"at most "+problem.Millimetres(most)+", a hundredth of the diameter", "a press fit has about a thousandth of the diameter: was it read in µm or in thou?")
		}
		needed(faults, "/engagedLength", "the length in the bore", float64(in.EngagedLength))
		needed(faults, "/hubModulus", "the elastic modulus of the flange", float64(in.HubModulus))
		needed(faults, "/elasticModulus", "the elastic modulus of the shaft", float64(in.ElasticModulus))
		needed(faults, "/hubDiameter", "the outside of the boss", float64(in.HubDiameter))
		if in.Bore >= in.ShaftDiameter {
			faults.Add("/bore", fmt.Sprintf("a bore of %s leaves nothing of a shaft of %s", problem.Millimetres(float64(in.Bore)), problem.Millimetres(float64(in.ShaftDiameter))), "less than "+problem.Millimetres(float64(in.ShaftDiameter)), "0 for a solid shaft")
		}
	case TaperNut:
		needed(faults, "/taperRatio", "the taper", float64(in.TaperRatio))
		needed(faults, "/engagedLength", "the length in the bore", float64(in.EngagedLength))
		in.validateClamp(faults)
		if small := float64(hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, in.EngagedLength)); !(small > 0) {
			faults.Add("/engagedLength", "a taper so long comes to a point", "less than "+problem.Millimetres(float64(in.ShaftDiameter)/float64(in.TaperRatio)), "")
		} else if face := float64(in.NutFaceDiameter); face > 0 && face <= small {
			faults.Add("/nutFaceDiameter", fmt.Sprintf("a face of %s goes into a hole of %s: such a nut does not press the hub", problem.Millimetres(face), problem.Millimetres(small)), "above "+problem.Millimetres(small), "of a washer under the nut type its outside")
		} else if thread := float64(in.PinchDiameter); thread > small {
			faults.Add("/pinchDiameter", fmt.Sprintf("a flange whose cone ends at %s does not go over a thread of %s", problem.Millimetres(small), problem.Millimetres(thread)), "at most "+problem.Millimetres(small), "measure the thread, the shaft and the length in the bore")
		}
	default:
		faults.Add("/holdMethod", "how the flange is held is missing or unknown", "clamp, set-screws, interference, taper", "")
	}
	if in.HubDiameter > 0 && in.HubDiameter <= in.ShaftDiameter {
		faults.Add("/hubDiameter", fmt.Sprintf("a boss of %s is no wider than its shaft", problem.Millimetres(float64(in.HubDiameter))), "above "+problem.Millimetres(float64(in.ShaftDiameter)), "outside of the flange's boss, not of the flange")
	}
}

func (in *BoreInput) validateClamp(faults *problem.List) {
	if in.PinchClamp > 0 {
		return
	}
	needed(faults, "/pinchTorque", "the torque or clamp of a pinch bolt or nut", float64(in.PinchTorque))
	needed(faults, "/pinchDiameter", "the thread's diameter", float64(in.PinchDiameter))
	needed(faults, "/nutFactor", "the nut factor", float64(in.NutFactor))
}

// told is a figure, or 0 for one that nobody told.
func told(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}
