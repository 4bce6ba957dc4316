package shaft

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// ketch is a scenario of our own: 23 kW at 1300 r/min in a 28 mm bar.
func ketch() StrengthInput {
	return StrengthInput{
		ShaftDiameter: 0.028, ShaftPower: 23e3, ShaftSpeed: 1300 * rpm, PeakTorque: 340, Thrust: 3000, BendingMoment: 15, SectionFactor: 1.08, NotchFactor: 2,
		ShaftYieldStrength: 207e6, TorsionalYield: 138e6, ShaftTensileStrength: 517e6, YachtSafetyFactor: 3,
		RuleScale: 100, RuleFactor: 1.26, RuleStrength: 560e6, RuleOffset: 160e6, TensileCap: 600e6,
	}
}

// Derived, regression only: 30 kW at 1200 r/min worked by three rules.
func TestSmallBoatByThreeRulesDerived(t *testing.T) {
	in := StrengthInput{ShaftDiameter: 0.035, ShaftPower: 30e3, ShaftSpeed: 1200 * rpm, ShaftTensileStrength: 600e6,
		RuleScale: 100, RuleFactor: 1.26, RuleStrength: 560e6, RuleOffset: 160e6, TensileCap: 600e6}
	parttest.Within(t, "M68, keyed", parttest.Must(t, Strength, in).ClassDiameter, 33.28e-3, 2e-4)
	in.RuleFactor, in.RuleStrength = 1.25, 416.4e6
	parttest.Within(t, "ABS under 20 m", parttest.Must(t, Strength, in).ClassDiameter, 29.91e-3, 2e-4)
	in = StrengthInput{ShaftDiameter: 0.035, ShaftPower: 30e3, ShaftSpeed: 1200 * rpm, ShaftTensileStrength: 655e6, PropellerDiameter: 0.432,
		RuleScale: 106.41, RuleFactor: 1.05, RuleStrength: 414e6, TensileCap: 414e6 / (0.85 * 0.85 * 0.85), AllowanceRate: 0.79, AllowanceDivisor: 144}
	parttest.Within(t, "Canada, tail shaft", parttest.Must(t, Strength, in).ClassDiameter, 29.06e-3, 1e-3)
	in.RuleMinimum = 0.032
	parttest.Within(t, "Canada, floored", parttest.Must(t, Strength, in).ClassDiameter, 0.032, 1e-12)
}

// The Canadian root max((414/S)^(1/3), 0.85) is the class form with the
// strength capped at 414/0.85³.
func TestCanadianRootIsTheClassForm(t *testing.T) {
	for _, s := range []float64{372, 414, 600, 674, 675, 900, 1400} {
		in := StrengthInput{ShaftDiameter: 0.03, ShaftPower: 30e3, ShaftSpeed: 1200 * rpm, ShaftTensileStrength: quantity.Stress(s * 1e6),
			RuleScale: 106.41, RuleFactor: 1, RuleStrength: 414e6, TensileCap: 674.13e6}
		want := 106.41 * math.Cbrt(30.0/1200) * max(math.Cbrt(414/s), 0.85) / 1000
		parttest.Within(t, "diameter", parttest.Must(t, Strength, in).ClassDiameter, want, 1e-5)
	}
}

// random is a shaft inside the ranges of the schema.
func randomShaft(r *rand.Rand) StrengthInput {
	between := func(lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }
	in := ketch()
	in.ShaftDiameter = quantity.Length(between(0.008, 0.8))
	in.ShaftBore = in.ShaftDiameter * quantity.Length(0.99*r.Float64())
	in.ShaftPower, in.ShaftSpeed = quantity.Power(between(50, 1e8)), quantity.RotationSpeed(between(1, 1000))
	in.PeakTorque, in.Thrust = quantity.Torque(between(0.5, 5e7)), quantity.Force(between(1, 1e7))
	in.BendingMoment = quantity.Torque(between(0.01, 1e7))
	in.SectionFactor = quantity.Ratio(between(1, 4))
	in.PropellerDiameter, in.AllowanceRate, in.AllowanceDivisor = quantity.Length(between(0.1, 5)), 0.8, 144
	return in
}

// More torque never gives a smaller shaft, nor more thrust, bending or a
// worse keyway less stress.
func TestMoreLoadNeverHelps(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 3000 {
		in := randomShaft(r)
		was := parttest.Must(t, Strength, in)
		in.ShaftPower *= quantity.Power(1 + r.Float64())
		more := parttest.Must(t, Strength, in)
		if more.YachtDiameter < was.YachtDiameter || more.ClassDiameter < was.ClassDiameter || more.VonMises < was.VonMises {
			t.Fatalf("%+v: more power gives a smaller shaft", in)
		}
		in.PeakTorque *= 2
		in.Thrust *= 2
		in.BendingMoment *= 2
		in.SectionFactor *= 1.1
		worse := parttest.Must(t, Strength, in)
		if worse.VonMises < more.VonMises || worse.YieldSafety > more.YieldSafety {
			t.Fatalf("%+v: more load gives less stress", in)
		}
		in.ShaftTensileStrength *= 1.5
		if stronger := parttest.Must(t, Strength, in); stronger.ClassDiameter > worse.ClassDiameter {
			t.Fatalf("%+v: a stronger metal gives a thicker shaft", in)
		}
		for name, v := range map[string]float64{"von Mises": float64(worse.VonMises), "yacht rule": float64(worse.YachtDiameter), "class rule": float64(worse.ClassDiameter)} {
			if math.IsInf(v, 0) || math.IsNaN(v) {
				t.Fatalf("%+v: %s is %v", in, name, v)
			}
		}
	}
}

// A shaft of exactly the yacht rule's diameter has exactly its safety factor.
func TestYachtRuleComesBack(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 500 {
		in := randomShaft(r)
		ratio := in.ShaftBore / in.ShaftDiameter
		in.ShaftDiameter = parttest.Must(t, Strength, in).YachtDiameter
		in.ShaftBore = ratio * in.ShaftDiameter
		out := parttest.Must(t, Strength, in)
		parttest.Within(t, "safety", out.SteadySafety, float64(in.YachtSafetyFactor), 1e-11)
		parttest.Within(t, "use", out.YachtUse, 1, 1e-12)
	}
}

func TestStrengthNotGiven(t *testing.T) {
	in := StrengthInput{ShaftDiameter: 0.028, ShaftPower: 23e3, ShaftSpeed: 1300 * rpm}
	out := parttest.Must(t, Strength, in)
	for name, v := range map[string]float64{"yield safety": float64(out.YieldSafety), "yacht": float64(out.YachtDiameter), "class": float64(out.ClassDiameter),
		"thrust": float64(out.ThrustStress), "bending": float64(out.BendingStress)} {
		if !math.IsNaN(v) {
			t.Errorf("%s is %v without its input", name, v)
		}
	}
	if out.ClassScope != UnknownToM68 {
		t.Error(out.ClassScope)
	}
	for protection, want := range map[Protection]string{BareInSea: OutsideM68, BareInFresh: FreshM68, Protected: InsideM68} {
		in.ShaftProtection = protection
		if got := parttest.Must(t, Strength, in).ClassScope; got != want {
			t.Errorf("%s: %s", protection, got)
		}
	}
	// Without any one of its numbers the class rule gives no diameter, not one of
	// nothing that every shaft would meet.
	for _, missing := range []func(*StrengthInput){
		func(s *StrengthInput) { s.ShaftTensileStrength = 0 }, func(s *StrengthInput) { s.RuleScale = 0 },
		func(s *StrengthInput) { s.RuleFactor = 0 }, func(s *StrengthInput) { s.RuleStrength = 0 },
	} {
		boat := ketch()
		missing(&boat)
		if out := parttest.Must(t, Strength, boat); !math.IsNaN(float64(out.ClassDiameter)) || !math.IsNaN(float64(out.ClassUse)) {
			t.Errorf("%+v: class diameter %v, use %v", boat, out.ClassDiameter, out.ClassUse)
		}
	}
	in.AllowanceDivisor, in.ShaftTensileStrength, in.RuleScale, in.RuleFactor, in.RuleStrength = 144, 5e8, 100, 1, 4e8
	if d := parttest.Must(t, Strength, in).ClassDiameter; !math.IsNaN(float64(d)) {
		t.Errorf("a rule that needs the propeller gives %v without it", d)
	}
}

// Without a peak torque nothing is said of the peak: the stresses stay those
// of the steady torque (Riley, Sturges and Morris, shaft under torque and
// thrust: 160 hp at 2800 rpm in a 1.50 in shaft, 5434.6 psi; answer
// recomputed), and so do the rules, which go by it.
func TestNoPeakNoSafetyAtThePeak(t *testing.T) {
	in := StrengthInput{ShaftDiameter: 1.5 * inch, ShaftPower: 160 * hp, ShaftSpeed: 2800 * rpm, ShaftYieldStrength: 30 * ksi, TorsionalYield: 20 * ksi, YachtSafetyFactor: 3}
	out := parttest.Must(t, Strength, in)
	for name, v := range map[string]quantity.Ratio{"safety against yield": out.YieldSafety, "use of the yield strength": out.YieldUse, "safety in torsion": out.TorsionSafety} {
		if !math.IsNaN(float64(v)) {
			t.Errorf("%s at the peak is %v without a peak torque", name, v)
		}
	}
	parttest.Within(t, "stress", out.TorsionStress, 5434.6*psi, 2e-4)
	parttest.Within(t, "steady safety", out.SteadySafety, 20000/5434.6, 2e-4)
	if out.DesignCase != AtSteadyAlone {
		t.Error(out.DesignCase)
	}
	in.PeakTorque = 2 * out.ShaftTorque
	peak := parttest.Must(t, Strength, in)
	parttest.Within(t, "safety in torsion at twice the torque", peak.TorsionSafety, 20000/5434.6/2, 2e-4)
	if peak.DesignCase != AtPeak || math.IsNaN(float64(peak.YieldUse)) || peak.YachtDiameter != out.YachtDiameter {
		t.Errorf("%+v", peak)
	}
	in.PeakTorque = out.ShaftTorque / 2
	if low := parttest.Must(t, Strength, in); low.DesignCase != AtSteady || low.TorsionStress != out.TorsionStress || math.IsNaN(float64(low.YieldUse)) {
		t.Errorf("%+v", low)
	}
}

// Two thirds of the yield strength stand in for that in torsion: ABYC P-6,
// 7/02, definitions. Gerr's example (Propeller Handbook, shaft formula: 403 hp
// at 1050 rpm, 70 000 psi in torsion, 1.74 in) comes out of 105 000 psi in pull.
func TestYieldInTorsionFollowsFromYield(t *testing.T) {
	in := StrengthInput{ShaftDiameter: 1.75 * inch, ShaftPower: 403 * hp, ShaftSpeed: 1050 * rpm, ShaftYieldStrength: 105 * ksi, YachtSafetyFactor: 3}
	out := parttest.Must(t, Strength, in)
	parttest.Within(t, "yacht rule", out.YachtDiameter, 1.74*inch, 1e-3)
	parttest.Within(t, "yield in torsion", out.TorsionalUsed, 70*ksi, 1e-12)
	if out.TorsionalCase != TwoThirds {
		t.Errorf("the sheet says %q", out.TorsionalCase)
	}
	in.TorsionalYield = 60 * ksi
	if own := parttest.Must(t, Strength, in); own.TorsionalUsed != 60*ksi || own.TorsionalCase != "" {
		t.Errorf("a figure given does not stand: %+v", own)
	}
}

// Shigley, Mechanical Engineering Design, 9th ed., example 7-1 (values from
// memory, recomputed): a shoulder of 1.100 in under a turning moment of 1260
// and a steady torque of 1100 lbf·in, K_f 1.58, K_fs 1.37, S_e 29.3 and S_u
// 105 kpsi: DE-Goodman gives a safety of 1.62.
func TestFatigueOfTheHandbook(t *testing.T) {
	in := StrengthInput{ShaftDiameter: 1.1 * inch, ShaftSpeed: 100, ShaftPower: quantity.Power(100 * 1100 * lbf * inch), BendingMoment: quantity.Torque(1260 * lbf * inch),
		NotchFactor: 1.58, SectionFactor: 1.37, FatigueStrength: 29.3 * ksi, ShaftTensileStrength: 105 * ksi}
	parttest.Within(t, "safety", 1/parttest.Must(t, Strength, in).FatigueUse, 1.62, 5e-3)
	// Steady thrust and torque count as von Mises over the tensile strength, and the peak torque does not.
	in.Thrust = quantity.Force(500 * lbf)
	in.PeakTorque = 1e5
	tau, sigma := 16*1100*1.37/(math.Pi*1.331), 500*4*1.37/(math.Pi*1.21)
	bend := 1.58 * 32 * 1260 / (math.Pi * 1.331)
	parttest.Within(t, "with thrust", parttest.Must(t, Strength, in).FatigueUse, bend/29300+math.Sqrt(sigma*sigma+3*tau*tau)/105000, 1e-9)
	for name, change := range map[string]func(*StrengthInput){
		"moment":           func(in *StrengthInput) { in.BendingMoment = 0 },
		"fatigue strength": func(in *StrengthInput) { in.FatigueStrength = 0 },
		"tensile strength": func(in *StrengthInput) { in.ShaftTensileStrength = 0 },
	} {
		one := in
		change(&one)
		if out := parttest.Must(t, Strength, one); !math.IsNaN(float64(out.FatigueUse)) {
			t.Errorf("fatigue use %v without a %s", out.FatigueUse, name)
		}
	}
}

// A worn shaft counts with what is left of it: it is as weak as a thinner one.
func TestNeckDecides(t *testing.T) {
	thin, worn := ketch(), ketch()
	thin.FatigueStrength, worn.FatigueStrength = 1e8, 1e8
	thin.ShaftDiameter, worn.NeckDiameter = 0.026, 0.026
	if a, b := fmt.Sprint(parttest.Must(t, Strength, thin)), fmt.Sprint(parttest.Must(t, Strength, worn)); a != b {
		t.Errorf("%s, worn to it %s", a, b)
	}
	worn.NeckDiameter = 0.0281 // by the calliper
	if out := parttest.Must(t, Strength, worn); out.DiameterUsed != 0.028 {
		t.Errorf("a neck thicker than the shaft counts: %v", out.DiameterUsed)
	}
}

func TestStrengthRefuses(t *testing.T) {
	refusals(t, Strength, ketch, []refusal[StrengthInput]{
		{"/shaftDiameter", "", func(s *StrengthInput) { s.ShaftDiameter = 0 }},
		{"/shaftPower", "", func(s *StrengthInput) { s.ShaftPower = -1 }},
		{"/shaftSpeed", "", func(s *StrengthInput) { s.ShaftSpeed = quantity.RotationSpeed(math.NaN()) }},
		{"/shaftBore", "28 mm leaves nothing of a shaft of 28 mm", func(s *StrengthInput) { s.ShaftBore = 0.028 }},
		{"/peakTorque", "", func(s *StrengthInput) { s.PeakTorque = -3 }},
		{"/sectionFactor", "", func(s *StrengthInput) { s.SectionFactor = 0.75 }},
		{"/notchFactor", "", func(s *StrengthInput) { s.NotchFactor = 0.9 }},
		{"/fatigueStrength", "", func(s *StrengthInput) { s.FatigueStrength = -1 }},
		{"/neckDiameter", "29 mm is thicker than the shaft of 28 mm", func(s *StrengthInput) { s.NeckDiameter = 0.029 }},
		{"/neckDiameter", "leaves nothing of a neck of 9 mm", func(s *StrengthInput) { s.ShaftBore, s.NeckDiameter = 0.010, 0.009 }},
		{"/thrust", "", func(s *StrengthInput) { s.Thrust = quantity.Force(math.Inf(1)) }},
		{"/shaftProtection", "", func(s *StrengthInput) { s.ShaftProtection = "painted" }},
	})
}

var strengthSink StrengthResult

func TestStrengthDoesNotAllocate(t *testing.T) {
	in := ketch()
	parttest.NoAllocations(t, func() { strengthSink, _ = Strength(in) })
}

func BenchmarkStrength(b *testing.B) {
	in := ketch()
	b.ReportAllocs()
	for b.Loop() {
		strengthSink, _ = Strength(in)
	}
}

func TestCodesHaveTheirWords(t *testing.T) {
	parttest.SameCodes(t, "shaft-strength", "classScope", OutsideM68, InsideM68, FreshM68, UnknownToM68)
	parttest.SameCodes(t, "shaft-strength", "torsionalCase", TwoThirds)
	parttest.SameCodes(t, "shaft-strength", "designCase", AtPeak, AtSteady, AtSteadyAlone)
	parttest.SameCodes(t, "key-strength", "designCase", AtPeak, AtSteady, AtSteadyAlone)
	parttest.SameCodes(t, "key-strength", "weakestPlace", KeyShears, KeyCrushes, ShaftGives, HubGives)
	parttest.SameCodes(t, "shaft-droop", "droopOpens", OpensBelow, OpensAbove)
	parttest.SameCodes(t, "shaft-withdrawal", "way", AftAmidships, AftHardOver, WithForward, RudderMust, EngineOrElse)
}

// A shaft that yields at the steady torque already does so whatever a shock
// adds; one that does not tells nothing of shocks. By hand: the polar modulus of
// 25 mm is π·25³/16 mm³, and without keyway the metal yields at a shear of its
// yield strength over √3.
func TestSteadyTorqueThatIsTooMuch(t *testing.T) {
	in := ketch()
	in.PeakTorque, in.Thrust, in.BendingMoment, in.ShaftBore, in.NeckDiameter, in.SectionFactor = 0, 0, 0, 0, 0, 0
	in.ShaftDiameter, in.ShaftYieldStrength = 0.025, 200e6
	yields := math.Pi * 0.025 * 0.025 * 0.025 / 16 * 200e6 / math.Sqrt(3)
	for share, told := range map[float64]bool{1.01: true, 0.99: false} {
		in.ShaftSpeed = 100
		in.ShaftPower = quantity.Power(share * yields * 100)
		out := parttest.Must(t, Strength, in)
		if got := float64(out.YieldUse); told && math.Abs(got-share) > 1e-9 || !told && !math.IsNaN(got) {
			t.Errorf("%g of what yields: %g", share, got)
		}
	}
}

// Of a bar whose yield strength nobody told nothing stands in for that in torsion.
func TestNothingStandsInForAnUnknownYield(t *testing.T) {
	in := ketch()
	in.ShaftYieldStrength, in.TorsionalYield = 0, 0
	if out := parttest.Must(t, Strength, in); out.TorsionalCase != "" || !math.IsNaN(float64(out.TorsionalUsed)) {
		t.Errorf("%g Pa, %q", out.TorsionalUsed, out.TorsionalCase)
	}
}
