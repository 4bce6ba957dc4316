// Torque, clamp load and stresses of a bolt: Preload.

package fastener

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

const (
	secant30        = 1.1547005383792515 // 1/cos 30°, half the thread angle
	prevailingBound = 1.0 / 3            // TM 5-2330-325-13&P: from here the prevailing torque counts
	proofOfYield    = 0.85               // Shigley ch. 8: proof strength where the standard gives none
	nutFlat         = math.Pi / 3        // one flat of a hexagon
)

// Preload works out torque, preload and their consequences for one joint.
//
// Stress area: ISO 898-1 cl. 9.1.6 and ASME B1.1. Preload: Shigley,
// Mechanical Engineering Design, 9th ed., eq. 8-31, or VDI 2230 for a share
// of yield with the twist of the thread, or a share of yield in plain tension.
// Torque: Shigley eq. 8-27 (short) and 8-26 (long, with the pitch diameter as
// mean thread diameter). The prevailing torque of a lock nut turns the nut and
// clamps nothing, so it is added to the setting; US Army TM 5-2330-325-13&P
// adds it from one third of the target torque upward only, which is a choice.
//
// What a set torque clamps is that torque less the prevailing one, over the
// torque for each unit of clamp, times the scatter, because the published
// scatter at one torque holds friction and wrench together. Where stretch,
// turn or load itself is controlled it is the target times the scatter. What
// the clamp then does to joint, bolt and flange goes by the preload achieved.
//
// The error is a *problem.Error of everything in the joint that cannot be.
// Preload does not allocate unless it refuses.
func Preload(in PreloadInput) (PreloadResult, error) { return preload(&in, nil) }

// PreloadAt is Preload of a joint that is tightened by a setting which was
// worked out before, for a bolt or a nut as it was then thought to be.
func PreloadAt(in PreloadInput, set Setting) (PreloadResult, error) { return preload(&in, &set) }

// Setting is what the person at the wrench sets.
func (out *PreloadResult) Setting() Setting {
	return Setting{Wrench: out.WrenchSetting, Dial: out.WrenchDial, Added: out.PrevailingTorqueAdded, Turn: out.NutTurn, Flats: out.NutFlats, Clamp: out.Preload}
}

func preload(in *PreloadInput, set *Setting) (out PreloadResult, err error) {
	if err = validate(in); err != nil {
		return PreloadResult{}, err
	}
	out.thread(in)
	out.friction(in)
	out.preload(in)
	out.torque(in)
	out.turn(in)
	target := out.Preload
	if set != nil {
		out.WrenchSetting, out.WrenchDial, out.PrevailingTorqueAdded = set.Wrench, set.Dial, set.Added
		out.NutTurn, out.NutFlats, target = set.Turn, set.Flats, set.Clamp
	}
	out.achieved(in, target)
	out.readings(in)
	out.bearing(in)
	out.pulled(in)
	return out, nil
}

// friction sets the coefficients: those given, or the one that thread and head
// have alike.
func (out *PreloadResult) friction(in *PreloadInput) {
	out.CollarDiameter = HexagonCollar * in.NominalDiameter
	if in.HeadBearingDiameter > 0 && in.HoleDiameter > 0 {
		out.CollarDiameter = (in.HeadBearingDiameter + in.HoleDiameter) / 2
	}
	alike := quantity.Ratio(AlikeFriction(in.NutFactor, in.NominalDiameter, in.Pitch, out.CollarDiameter))
	if alike <= 0 {
		alike = quantity.Ratio(math.NaN())
	}
	out.ThreadFrictionUsed, out.HeadFrictionUsed = in.ThreadFriction, in.HeadFriction
	if in.ThreadFriction == 0 {
		out.ThreadFrictionUsed = alike
	}
	if in.HeadFriction == 0 {
		out.HeadFrictionUsed = alike
	}
}

// preload sets the target clamp load.
func (out *PreloadResult) preload(in *PreloadInput) {
	d2, ds, p := float64(out.PitchDiameter), float64(out.StressDiameter), float64(in.Pitch)
	out.TwistRatio = quantity.Ratio(1.5 * d2 / ds * (p/(math.Pi*d2) + 1.155*float64(out.ThreadFrictionUsed)))
	out.ProofStress = in.ProofStrength
	if in.ProofStrength == 0 {
		out.ProofStress = proofOfYield * in.YieldStrength
	}
	area := float64(out.StressArea)
	switch in.Target {
	case Proof:
		out.Preload = quantity.Force(float64(in.ProofFraction) * float64(out.ProofStress) * area)
	case Yield:
		out.Preload = quantity.Force(float64(in.YieldFraction) * float64(in.YieldStrength) * area / out.twist())
	default:
		out.Preload = quantity.Force(float64(in.TensionFraction) * float64(in.YieldStrength) * area)
	}
	out.BreakingLoad = quantity.Force(quantity.OrNaN(float64(in.TensileStrength)) * area)
	out.BreakingClamp = out.BreakingLoad / quantity.Force(out.twist())
}

// twist is the equivalent stress over the stress of the pull alone.
func (out *PreloadResult) twist() float64 { return Combined(float64(out.TwistRatio)) }

// torque sets the wrench.
func (out *PreloadResult) torque(in *PreloadInput) {
	force, d := float64(out.Preload), float64(in.NominalDiameter)
	d2, lead := float64(out.PitchDiameter), float64(in.Pitch)/(math.Pi*float64(out.PitchDiameter))
	f, fc := float64(out.ThreadFrictionUsed), float64(out.HeadFrictionUsed)
	short := float64(in.NutFactor) * force * d
	long := force*d2/2*(lead+f*secant30)/(1-f*lead*secant30) + force*fc*float64(out.CollarDiameter)/2
	out.ShortTorque, out.LongTorque = quantity.Torque(short), quantity.Torque(long)
	out.LongNutFactor = quantity.Ratio(long / (force * d))
	out.FrictionsFactor = out.LongNutFactor
	if in.ThreadFriction == 0 || in.HeadFriction == 0 {
		out.FrictionsFactor = quantity.Ratio(math.NaN())
	}
	out.TargetTorque = out.ShortTorque
	if in.Method == Long {
		out.TargetTorque = out.LongTorque
	}
	out.PrevailingShare = quantity.Ratio(in.PrevailingTorque / out.TargetTorque)
	if in.PrevailingRule == Always || in.PrevailingTorque >= out.TargetTorque*prevailingBound {
		out.PrevailingTorqueAdded = in.PrevailingTorque
	}
	out.WrenchSetting = out.TargetTorque + out.PrevailingTorqueAdded
	out.WrenchDial = quantity.Torque(math.NaN())
	if in.ExtensionLength > 0 {
		out.WrenchDial = out.WrenchSetting * quantity.Torque(in.WrenchLength/(in.WrenchLength+in.ExtensionLength))
	}
}

// justOver is more than rounding makes of a torque that is just enough.
const justOver = 1 + 1e-9

// clamped is what a torque clamps, without scatter and breaking.
func (out *PreloadResult) clamped(in *PreloadInput, torque quantity.Torque) float64 {
	return float64(out.Preload) * float64(max(torque-in.PrevailingTorque, 0)) / float64(out.TargetTorque)
}

// held is that clamp, or what is left of it in a bolt that breaks before.
func (out *PreloadResult) held(clamp float64) float64 {
	if most := float64(out.BreakingClamp); clamp > most {
		return most
	}
	return clamp
}

// clampShare is what is left of a clamp as a share of the target.
func (out *PreloadResult) clampShare(clamp float64, target quantity.Force) quantity.Ratio {
	return quantity.Ratio(out.held(clamp) / float64(target))
}

// achieved sets what the bolt gets at the setting, with its target clamp load,
// and at the torque in question.
func (out *PreloadResult) achieved(in *PreloadInput, target quantity.Force) {
	area := float64(out.StressArea)
	out.ScatterUsed = in.WrenchScatter
	if in.WrenchScatter == 0 {
		out.ScatterUsed = in.TorqueScatter
	}
	proof, yield := float64(out.ProofStress)*area, float64(in.YieldStrength)*area
	middle := float64(target)
	if in.Control == ByTorque {
		middle = out.clamped(in, out.WrenchSetting)
	}
	wanted := float64(out.ScatterUsed) * middle
	reached := out.held(wanted)
	out.MiddlePreload = quantity.Force(middle)
	out.AchievedPreload = quantity.Force(reached)
	out.ClampShare = out.clampShare(wanted, target)
	out.LeastPreload = quantity.Force(middle / quantity.OrNaN(float64(in.TighteningFactor)))
	out.ProofUse = quantity.Ratio(wanted / proof) // what is asked of the bolt, whether it bears it or not
	out.YieldUse = quantity.Ratio(wanted / yield)
	out.TighteningStress = quantity.Stress(wanted / area * out.twist())
	out.TighteningUse = quantity.Ratio(out.TighteningStress / in.YieldStrength)

	asked := float64(in.TorqueScatter) * out.clamped(in, quantity.Torque(quantity.OrNaN(float64(in.TorqueUsed))))
	out.PreloadFromTorqueUsed = quantity.Force(out.held(asked))
	out.JointClamp = out.AchievedPreload
	if in.TorqueUsed > 0 {
		out.JointClamp = out.PreloadFromTorqueUsed
	}
	out.ProofUseFromTorqueUsed = quantity.Ratio(asked / proof)
	out.ClampShareFromTorqueUsed = out.clampShare(asked, target)
	out.BreakingUse = quantity.Ratio(asked / float64(out.BreakingClamp))
	if out.BreakingUse > justOver || in.TensileStrength == 0 && asked > justOver*yield { // what is broken, or may be, holds nothing, and is not called tight
		out.PreloadFromTorqueUsed, out.JointClamp = quantity.Force(math.NaN()), quantity.Force(math.NaN())
		out.ClampShareFromTorqueUsed = quantity.Ratio(math.NaN())
	}
	out.BreakingTorque = in.PrevailingTorque + quantity.Torque(float64(out.BreakingClamp)/float64(in.TorqueScatter)*float64(out.TargetTorque)/float64(out.Preload))
}

// bearing sets the pressure that the achieved clamp load makes under head or nut
// without a washer.
func (out *PreloadResult) bearing(in *PreloadInput) {
	out.HeadBearingStress = FacePressure(out.AchievedPreload, in.HeadBearingDiameter, in.HoleDiameter)
	out.BearingUse = quantity.Ratio(float64(out.HeadBearingStress) / quantity.OrNaN(float64(in.PermittedBearingStress)))
}

// FacePressure is the pressure of a clamp under a head or nut, over the ring between
// the outside of its face and the hole under it. It is NaN where one of them is 0,
// not known, or no ring is left.
func FacePressure(clamp quantity.Force, face, hole quantity.Length) quantity.Stress {
	if !(hole > 0 && face > hole) {
		return quantity.Stress(math.NaN())
	}
	outside, inside := float64(face), float64(hole)
	return quantity.Stress(float64(clamp) / (math.Pi / 4 * (outside*outside - inside*inside)))
}
