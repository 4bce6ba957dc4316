// Strength of the shaft and the diameters that rules ask for: Strength.

package shaft

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// StrengthInput is a propeller shaft and what it must bear. A field marked optional
// is not given when it is zero.
type StrengthInput struct {
	ShaftDiameter quantity.Length        // outside, above 0
	NeckDiameter  quantity.Length        // what wear has left at its thinnest; optional
	ShaftPower    quantity.Power         // behind the gearbox, above 0
	ShaftSpeed    quantity.RotationSpeed // at that power, above 0
	ShaftBore     quantity.Length        // 0 for a solid shaft
	PeakTorque    quantity.Torque        // optional; without it nothing is said of the peak, and the steady torque counts when it is greater
	Thrust        quantity.Force         // optional, pull or push
	BendingMoment quantity.Torque        // optional, at the place of the worst torque; turns with respect to the shaft
	SectionFactor quantity.Ratio         // by which the metal cut out for a keyway raises the stress, 1 or more; 0 is 1
	NotchFactor   quantity.Ratio         // by which a notch raises the stress that tires, 1 or more; 0 is 1

	ShaftYieldStrength   quantity.Stress // optional
	TorsionalYield       quantity.Stress // optional, in shear; two thirds of ShaftYieldStrength stand in
	ShaftTensileStrength quantity.Stress // optional
	FatigueStrength      quantity.Stress // in reversed bending, smooth, in the water that reaches it; optional

	YachtSafetyFactor quantity.Ratio // of the yacht rule; optional

	RuleScale         quantity.Ratio  // F of the class rule, in mm
	RuleFactor        quantity.Ratio  // k of the class rule
	RuleStrength      quantity.Stress // above the line: 560 N/mm² in UR M68
	RuleOffset        quantity.Stress // added to the tensile strength: 160 N/mm² in UR M68
	TensileCap        quantity.Stress // greatest tensile strength that may be used; 0 for none
	PropellerDiameter quantity.Length // for rules that add to the diameter by it
	AllowanceRate     quantity.Ratio  // of that addition, per metre of propeller diameter; 0 for none
	AllowanceDivisor  quantity.Ratio  // of that addition; 0 for none
	RuleMinimum       quantity.Length // no shaft may be thinner; 0 for none

	ShaftProtection Protection // "" when not known
}

// Protection says what keeps the water from the shaft's metal.
type Protection string

// How a shaft may be protected.
const (
	BareInSea   Protection = "bare-sea"
	BareInFresh Protection = "bare-fresh"
	Protected   Protection = "protected" // liner, oil, or no water at that part of the shaft
)

// StrengthResult is what Strength finds. NaN marks a figure that cannot be given.
type StrengthResult struct {
	DiameterUsed  quantity.Length
	YieldSafety   quantity.Ratio // at the peak, in the section left by a keyway; NaN without a peak torque
	SteadySafety  quantity.Ratio // torsional yield over the shear stress at the steady torque, as the yacht rule counts it
	YachtDiameter quantity.Length
	ClassDiameter quantity.Length
	ClassScope    string         // whether UR M68 speaks of this shaft
	YieldUse      quantity.Ratio // of the yield strength at the peak; without a peak torque NaN, unless the steady one is too much
	YachtUse      quantity.Ratio // YachtDiameter over the shaft's
	ClassUse      quantity.Ratio // ClassDiameter over the shaft's
	FatigueUse    quantity.Ratio // Goodman's share used by bending that turns; NaN without moment, fatigue and tensile strength

	TorsionStress     quantity.Stress // at the design torque, plain shaft
	ThrustStress      quantity.Stress
	BendingStress     quantity.Stress
	GreatestShear     quantity.Stress // of the three together, plain shaft
	GreatestPrincipal quantity.Stress // the same, size alone
	VonMises          quantity.Stress // in the section left by a keyway
	SteadyMises       quantity.Stress // the same of steady torque and thrust alone, without bending
	TorsionSafety     quantity.Ratio  // at the peak, in the section left by a keyway; NaN without a peak torque

	TorsionalUsed quantity.Stress // TorsionalYield, or what stands in
	TorsionalCase string          // TwoThirds where something stands in, otherwise ""

	ShaftTorque        quantity.Torque
	DesignTorque       quantity.Torque // the greater of steady and peak torque, as far as they are known
	DesignCase         string          // which of them that is
	KilowattsPerRpm    quantity.Ratio  // power in kW over speed in rpm, as class rules take it
	BoreFactor         quantity.Ratio  // by which a bore counts in class rules
	TensileUsed        quantity.Stress // tensile strength, no more than the rule's cap
	PropellerAllowance quantity.Length
}

// The codes of ClassScope, for which the schema of shaft-strength has the words.
const (
	OutsideM68   = "bare-in-sea"
	InsideM68    = "protected"
	FreshM68     = "bare-in-fresh"
	UnknownToM68 = "unknown"
)

// torsionalShare is the yield strength in torsion over the 0.2 % tensile
// yield, for steel and nickel alloys: ABYC P-6, 7/02, definitions.
const torsionalShare = 2.0 / 3

// TwoThirds is the code of TorsionalCase: of the yield strength, as ABYC P-6
// takes it for steel and nickel alloys.
const TwoThirds = "two-thirds-of-yield"

// The codes of DesignCase, of shaft and key, for which their schemas have the
// words.
const (
	AtPeak        = "peak"
	AtSteady      = "steady-above-peak"
	AtSteadyAlone = "steady-alone"
)

// designTorque is the torque that stresses are calculated at, and which of the
// two it is.
func designTorque(steady, peak quantity.Torque) (quantity.Torque, string) {
	switch {
	case peak == 0:
		return steady, AtSteadyAlone
	case peak < steady:
		return steady, AtSteady
	}
	return peak, AtPeak
}

// Strength finds the stresses in a shaft under torque, thrust and bending, its
// safety against yield and fatigue, and the diameter that two published rules
// ask for. The shaft counts with its thinnest diameter.
//
// Torsion 16·T·d/(π·(d⁴ - b⁴)), thrust over area, bending 32·M·d/(π·(d⁴ - b⁴)),
// together by von Mises √(σ² + 3·τ²) (Shigley, Mechanical Engineering Design,
// 9th ed., eq. 3-37 and 5-15; Hibbeler, Mechanics of Materials). A keyway takes
// metal away, which SectionFactor stands for; as a notch it does not matter to
// a single load on ductile metal, but to one that turns. In bending that turns
// the share used is K_f·σ_b/S_e + σ_m/S_u, with the von Mises stress σ_m of
// what is steady (Goodman with distortion energy, Shigley, eq. 7-7, from
// memory).
//
// Class rule: d = F·k·(P/n · 1/(1 - (b/d)⁴) · c1/(S_u + c2))^(1/3), mm, kW,
// rpm, N/mm², IACS UR M68.4; the bore counts above 0.4 d (from memory). ABS's
// rule has the same form, and so have the Canadian ones with c2 = 0 and an
// addition min(K·D_p, 1)·D_p/C for the propeller (C.R.C. c. 1486 s. 19(2);
// TP 11717). Yacht rule: d = (16·T·SF/(π·S_s))^(1/3), which is
// (321 000·shp·SF/(S_s·rpm))^(1/3) in inch units (Gerr, Propeller Handbook;
// ABYC P-6).
//
// The error is a *problem.Error of everything that cannot be. Strength allocates
// nothing when it succeeds.
func Strength(in StrengthInput) (out StrengthResult, err error) {
	if err = in.validate(); err != nil {
		return StrengthResult{}, err
	}
	out.DiameterUsed = in.ShaftDiameter
	if in.NeckDiameter > 0 {
		out.DiameterUsed = min(in.ShaftDiameter, in.NeckDiameter)
	}
	out.torsional(&in)
	out.stress(&in)
	out.fatigue(&in)
	out.yachtRule(&in)
	out.classRule(&in)
	out.scope(&in)
	return out, nil
}

// torsional finds the yield strength in torsion to use.
func (out *StrengthResult) torsional(in *StrengthInput) {
	out.TorsionalUsed = in.TorsionalYield
	if in.TorsionalYield == 0 {
		out.TorsionalUsed = quantity.Stress(torsionalShare * quantity.OrNaN(float64(in.ShaftYieldStrength)))
		if in.ShaftYieldStrength > 0 {
			out.TorsionalCase = TwoThirds
		}
	}
}

// stress finds what the load does to the section.
func (out *StrengthResult) stress(in *StrengthInput) {
	d, b := float64(out.DiameterUsed), float64(in.ShaftBore)
	modulus := 4 * secondMoment(d, b) / d // polar, over the radius
	out.ShaftTorque = quantity.Torque(float64(in.ShaftPower) / float64(in.ShaftSpeed))
	out.DesignTorque, out.DesignCase = designTorque(out.ShaftTorque, in.PeakTorque)
	tau := float64(out.DesignTorque) / modulus
	push, bend := float64(in.Thrust)/area(d, b), 2*float64(in.BendingMoment)/modulus
	sigma := push + bend
	shear := math.Sqrt(sigma*sigma/4 + tau*tau)
	key := max(1, float64(in.SectionFactor))
	steady := float64(out.ShaftTorque) / modulus
	mises := key * math.Sqrt(sigma*sigma+3*tau*tau)

	out.TorsionStress = quantity.Stress(tau)
	out.ThrustStress, out.BendingStress = quantity.Stress(push), quantity.Stress(bend)
	if in.Thrust == 0 {
		out.ThrustStress = quantity.Stress(math.NaN())
	}
	if in.BendingMoment == 0 {
		out.BendingStress = quantity.Stress(math.NaN())
	}
	out.GreatestShear = quantity.Stress(shear)
	out.GreatestPrincipal = quantity.Stress(sigma/2 + shear)
	out.VonMises = quantity.Stress(mises)
	out.SteadyMises = quantity.Stress(key * math.Sqrt(push*push+3*steady*steady))
	yield, slip := quantity.OrNaN(float64(in.ShaftYieldStrength)), float64(out.TorsionalUsed)
	out.YieldSafety, out.YieldUse = quantity.Ratio(yield/mises), quantity.Ratio(mises/yield)
	out.TorsionSafety = quantity.Ratio(slip / (key * tau))
	if nan := quantity.Ratio(math.NaN()); in.PeakTorque == 0 {
		out.TorsionSafety = nan
		if !(out.YieldUse > 1) { // what yields without a shock does with one
			out.YieldSafety, out.YieldUse = nan, nan
		}
	}
	out.SteadySafety = quantity.Ratio(slip * modulus / float64(out.ShaftTorque))
}

// fatigue finds what bending that turns uses of the metal.
func (out *StrengthResult) fatigue(in *StrengthInput) {
	notch := quantity.Stress(max(1, in.NotchFactor))
	out.FatigueUse = quantity.Ratio(notch*out.BendingStress/quantity.Stress(quantity.OrNaN(float64(in.FatigueStrength)))) +
		quantity.Ratio(out.SteadyMises/quantity.Stress(quantity.OrNaN(float64(in.ShaftTensileStrength))))
}

// yachtRule finds the diameter of the small-craft rule, the bore in the same
// proportion to it as to the shaft.
func (out *StrengthResult) yachtRule(in *StrengthInput) {
	ratio := float64(in.ShaftBore / out.DiameterUsed)
	slip, factor := float64(out.TorsionalUsed), quantity.OrNaN(float64(in.YachtSafetyFactor))
	out.YachtDiameter = quantity.Length(math.Cbrt(16 * float64(out.ShaftTorque) * factor / (math.Pi * slip * (1 - ratio*ratio*ratio*ratio))))
	out.YachtUse = quantity.Ratio(out.YachtDiameter / out.DiameterUsed)
}

// classRule finds the diameter of the class rule.
func (out *StrengthResult) classRule(in *StrengthInput) {
	out.KilowattsPerRpm = quantity.Ratio(float64(in.ShaftPower) / 1000 / (float64(in.ShaftSpeed) * 30 / math.Pi))
	out.BoreFactor = 1
	if ratio := float64(in.ShaftBore / out.DiameterUsed); ratio > 0.4 {
		out.BoreFactor = quantity.Ratio(1 / (1 - ratio*ratio*ratio*ratio))
	}
	nan := math.NaN()
	out.PropellerAllowance, out.ClassDiameter, out.ClassUse = quantity.Length(nan), quantity.Length(nan), quantity.Ratio(nan)
	out.TensileUsed = quantity.Stress(quantity.OrNaN(float64(in.ShaftTensileStrength)))
	if in.TensileCap > 0 && in.TensileCap < out.TensileUsed {
		out.TensileUsed = in.TensileCap
	}
	if in.ShaftTensileStrength == 0 || in.RuleScale == 0 || in.RuleFactor == 0 || in.RuleStrength == 0 {
		return
	}
	allowance := 0.0
	if in.AllowanceDivisor > 0 {
		if in.PropellerDiameter == 0 {
			return // the rule cannot be used without it
		}
		prop := float64(in.PropellerDiameter)
		allowance = min(float64(in.AllowanceRate)*prop, 1) * prop / float64(in.AllowanceDivisor)
		out.PropellerAllowance = quantity.Length(allowance)
	}
	root := math.Cbrt(float64(out.KilowattsPerRpm) * float64(out.BoreFactor) * float64(in.RuleStrength) / float64(out.TensileUsed+in.RuleOffset))
	d := float64(in.RuleScale)*float64(in.RuleFactor)*root/1000 + allowance
	out.ClassDiameter = max(quantity.Length(d), in.RuleMinimum)
	out.ClassUse = quantity.Ratio(out.ClassDiameter / out.DiameterUsed)
}

func (out *StrengthResult) scope(in *StrengthInput) {
	switch in.ShaftProtection {
	case BareInSea:
		out.ClassScope = OutsideM68
	case BareInFresh:
		out.ClassScope = FreshM68
	case Protected:
		out.ClassScope = InsideM68
	default:
		out.ClassScope = UnknownToM68
	}
}

// validate lists everything that cannot be.
func (in *StrengthInput) validate() error {
	var faults problem.List
	faults.Above("/shaftDiameter", "shaft diameter", float64(in.ShaftDiameter))
	faults.Above("/shaftPower", "shaft power", float64(in.ShaftPower))
	faults.Above("/shaftSpeed", "shaft speed", float64(in.ShaftSpeed))
	boreFits(&faults, "/shaftBore", float64(in.ShaftBore), float64(in.ShaftDiameter))
	faults.NotNegative("/neckDiameter", "diameter of the neck", float64(in.NeckDiameter))
	if neck := float64(in.NeckDiameter); neck > 0 && neck <= float64(in.ShaftBore) {
		faults.Add("/neckDiameter", fmt.Sprintf("a bore of %s leaves nothing of a neck of %s", problem.Millimetres(float64(in.ShaftBore)), problem.Millimetres(neck)), "above "+problem.Millimetres(float64(in.ShaftBore)), "")
	} else if neck > float64(in.ShaftDiameter)*(1+sameEnd) {
		faults.Add("/neckDiameter", fmt.Sprintf("a neck of %s is thicker than the shaft of %s", problem.Millimetres(neck), problem.Millimetres(float64(in.ShaftDiameter))), "up to "+problem.Millimetres(float64(in.ShaftDiameter)), "what is left where the shaft is worn")
	}
	faults.NotNegative("/peakTorque", "peak torque", float64(in.PeakTorque))
	faults.NotNegative("/thrust", "thrust", float64(in.Thrust))
	faults.NotNegative("/bendingMoment", "bending moment", float64(in.BendingMoment))
	for _, one := range [...]struct {
		where, what string
		k           quantity.Ratio
	}{{"/sectionFactor", "section factor", in.SectionFactor}, {"/notchFactor", "notch factor", in.NotchFactor}} {
		if one.k != 0 && !(one.k >= 1 && one.k <= 10) {
			faults.Add(one.where, "the "+one.what+" is below 1, far too great or not a number", "1 to 10", "a keyway never makes a shaft stronger; 1 means none")
		}
	}
	faults.NotNegative("/fatigueStrength", "fatigue strength", float64(in.FatigueStrength))
	faults.NotNegative("/shaftYieldStrength", "yield strength", float64(in.ShaftYieldStrength))
	faults.NotNegative("/torsionalYield", "yield strength in torsion", float64(in.TorsionalYield))
	faults.NotNegative("/shaftTensileStrength", "tensile strength", float64(in.ShaftTensileStrength))
	if in.ShaftTensileStrength > 0 && in.ShaftYieldStrength > in.ShaftTensileStrength*(1+1e-9) {
		faults.Add("/shaftTensileStrength", "the tensile strength is below the yield strength", "at least the yield strength", "check that both belong to the same alloy and condition")
	}
	faults.NotNegative("/yachtSafetyFactor", "safety factor of the yacht rule", float64(in.YachtSafetyFactor))
	faults.NotNegative("/ruleScale", "scale of the class rule", float64(in.RuleScale))
	faults.NotNegative("/ruleFactor", "factor of the class rule", float64(in.RuleFactor))
	faults.NotNegative("/ruleStrength", "strength figure of the class rule", float64(in.RuleStrength))
	faults.NotNegative("/ruleOffset", "strength the class rule adds", float64(in.RuleOffset))
	faults.NotNegative("/tensileCap", "greatest tensile strength", float64(in.TensileCap))
	faults.NotNegative("/propellerDiameter", "propeller diameter", float64(in.PropellerDiameter))
	faults.NotNegative("/allowanceRate", "allowance rate", float64(in.AllowanceRate))
	faults.NotNegative("/allowanceDivisor", "allowance divisor", float64(in.AllowanceDivisor))
	faults.NotNegative("/ruleMinimum", "least diameter of the class rule", float64(in.RuleMinimum))
	switch in.ShaftProtection {
	case "", BareInSea, BareInFresh, Protected:
	default:
		faults.Add("/shaftProtection", "that is no way of protecting a shaft", "bare-sea, bare-fresh, protected", "")
	}
	return faults.Err()
}
