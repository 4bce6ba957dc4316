package fastener

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// whole is a joint with every field given.
func whole() PreloadInput {
	return PreloadInput{
		NominalDiameter: 0.010, Pitch: 0.0015, ThreadForm: Metric,
		ProofStrength: 580e6, YieldStrength: 640e6, TensileStrength: 800e6,
		NutFactor: 0.2, ThreadFriction: 0.14, HeadFriction: 0.12,
		Target: Proof, ProofFraction: 0.75, YieldFraction: 0.9, TensionFraction: 0.65, Method: Long,
		PrevailingTorque: 6, PrevailingRule: Always, Control: ByTorque, TorqueScatter: 1, WrenchScatter: 1, TighteningFactor: 1.6, TorqueUsed: 45,
		WrenchLength: 0.42, ExtensionLength: 0.045,
		HeadBearingDiameter: 0.0146, HoleDiameter: 0.011, PermittedBearingStress: 490e6,
		GripLength: 0.024, ShankLength: 0.010, BoltModulus: 207e9, MemberModulus: 207e9, ExternalLoad: 1200,
	}
}

// random is a whole joint somewhere inside what can be.
func random(r *rand.Rand) PreloadInput {
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	in := whole()
	d := between(0.004, 0.03)
	in.NominalDiameter = quantity.Length(d)
	in.Pitch = quantity.Length(d * between(0.06, 0.2))
	in.ThreadForm = []ThreadForm{Metric, Inch}[r.IntN(2)]
	in.YieldStrength = quantity.Stress(between(200e6, 1100e6))
	in.ProofStrength = in.YieldStrength * quantity.Stress(between(0.8, 1))
	in.TensileStrength = in.YieldStrength * quantity.Stress(between(1, 1.5))
	in.NutFactor = quantity.Ratio(between(0.08, 0.4))
	in.ThreadFriction, in.HeadFriction = quantity.Ratio(between(0.05, 0.4)), quantity.Ratio(between(0.05, 0.4))
	in.Target, in.Method = []Target{Proof, Yield, Tension}[r.IntN(3)], []Method{Short, Long}[r.IntN(2)]
	in.PrevailingTorque = 0
	in.HeadBearingDiameter, in.HoleDiameter = quantity.Length(d*between(1.4, 2)), quantity.Length(d*between(1, 1.2))
	in.GripLength = quantity.Length(d * between(1, 8))
	in.ShankLength = in.GripLength * quantity.Length(r.Float64())
	return in
}

func TestProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 2000 {
		in := random(r)
		in.TensileStrength = 0 // a bolt that breaks follows no proportion
		out := tighten(t, in)

		more := in
		more.NutFactor *= 1.1
		parttest.Within(t, "short torque grows with K", float64(tighten(t, more).ShortTorque), 1.1*float64(out.ShortTorque), 1e-12)

		more = in
		more.ThreadFriction *= 1.1
		if in.Target != Yield && tighten(t, more).LongTorque <= out.LongTorque {
			t.Error("long torque does not grow with the friction in the thread")
		}
		if in.Target == Yield && tighten(t, more).Preload >= out.Preload {
			t.Error("preload at a share of yield does not fall with the friction in the thread")
		}

		half := in
		half.ProofFraction, half.YieldFraction, half.TensionFraction = in.ProofFraction/2, in.YieldFraction/2, in.TensionFraction/2
		h := tighten(t, half)
		parttest.Within(t, "half the aim, preload", float64(h.Preload), float64(out.Preload)/2, 1e-12)
		parttest.Within(t, "half the aim, setting", float64(h.WrenchSetting), float64(out.WrenchSetting)/2, 1e-12)
		parttest.Within(t, "half the aim, turn", float64(h.NutTurn), float64(out.NutTurn)/2, 1e-12)
		parttest.Within(t, "torque in question does not care for the aim", float64(h.ProofUseFromTorqueUsed), float64(out.ProofUseFromTorqueUsed), 1e-12)

		same := in
		same.TorqueUsed = out.WrenchSetting
		s := tighten(t, same)
		parttest.Within(t, "the setting gives the preload", float64(s.PreloadFromTorqueUsed), float64(out.Preload), 1e-12)
		parttest.Within(t, "and the same use", float64(s.ProofUseFromTorqueUsed), float64(out.ProofUse), 1e-12)

		parttest.Within(t, "pull shared out", float64(out.LoadShare), float64(out.BoltSpring/(out.BoltSpring+out.MemberSpring)), 1e-12)
		parttest.Within(t, "flats", float64(out.NutFlats), float64(out.NutTurn)/(math.Pi/3), 1e-12)
	}
}

// Three times the size in every length: forces grow ninefold, torques
// twenty-sevenfold, stresses, angles and ratios stay.
func TestScaling(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 500 {
		in := random(r)
		big := in
		for _, l := range []*quantity.Length{&big.NominalDiameter, &big.Pitch, &big.HeadBearingDiameter, &big.HoleDiameter, &big.GripLength, &big.ShankLength, &big.WrenchLength, &big.ExtensionLength} {
			*l *= 3
		}
		big.ExternalLoad *= 9
		a, b := tighten(t, in), tighten(t, big)
		parttest.Within(t, "preload", float64(b.Preload), 9*float64(a.Preload), 1e-12)
		parttest.Within(t, "setting", float64(b.WrenchSetting), 27*float64(a.WrenchSetting), 1e-12)
		parttest.Within(t, "bearing stress", float64(b.HeadBearingStress), float64(a.HeadBearingStress), 1e-9)
		parttest.Within(t, "turn", float64(b.NutTurn), float64(a.NutTurn), 1e-9)
		parttest.Within(t, "bolt stress under load", float64(b.LoadedBoltStress), float64(a.LoadedBoltStress), 1e-12)
	}
}

// The nut factor cancels in the achieved preload: its scatter is in the wrench
// scatter already.
func TestFrictionIsCountedOnce(t *testing.T) {
	in := whole()
	in.PrevailingTorque, in.Method = 0, Short
	a := tighten(t, in)
	in.NutFactor = 0.3
	b := tighten(t, in)
	parttest.Within(t, "achieved preload", float64(b.AchievedPreload), float64(a.AchievedPreload), 1e-15)
	parttest.Within(t, "torque in question", float64(b.PreloadFromTorqueUsed), float64(a.PreloadFromTorqueUsed)*2/3, 1e-12)
	in.WrenchScatter = 0.75
	parttest.Within(t, "scatter", float64(tighten(t, in).AchievedPreload), 0.75*float64(a.Preload), 1e-12)
}

func TestStainlessWithoutProofStrength(t *testing.T) {
	// Shigley, Mechanical Engineering Design: proof about 0.85 of yield where
	// it is not known.
	in := whole()
	in.ProofStrength, in.YieldStrength = 0, 450e6
	parttest.Within(t, "proof strength", float64(tighten(t, in).ProofStress), 0.85*450e6, 1e-15)
}

func TestBearingRing(t *testing.T) {
	in := whole()
	out := tighten(t, in)
	ring := math.Pi / 4 * (0.0146*0.0146 - 0.011*0.011)
	parttest.Within(t, "pressure on the ring", float64(out.HeadBearingStress)*ring, float64(out.AchievedPreload), 1e-12)
	parttest.Within(t, "collar, measured", float64(out.CollarDiameter), 0.0128, 1e-12)
	in.HoleDiameter = 0
	out = tighten(t, in)
	parttest.Within(t, "collar of a hexagon", float64(out.CollarDiameter), 0.0125, 1e-12)
	if !math.IsNaN(float64(out.HeadBearingStress)) || !math.IsNaN(float64(out.BearingUse)) {
		t.Error("pressure given without a hole")
	}
}

func TestAdapter(t *testing.T) {
	in := whole()
	out := tighten(t, in)
	parttest.Within(t, "force on the grip", float64(out.WrenchDial)/0.42, float64(out.WrenchSetting)/(0.42+0.045), 1e-12)
}

func TestOpenedJoint(t *testing.T) {
	in := whole()
	out := tighten(t, in)
	in.ExternalLoad = out.SeparationLoad * 1.0000001
	parttest.Within(t, "stress is continuous where the joint opens", float64(tighten(t, in).LoadedBoltStress), float64(out.SeparationLoad)/float64(out.StressArea), 1e-6)
	in.ExternalLoad = out.SeparationLoad * 2
	parttest.Within(t, "the bolt bears it all", float64(tighten(t, in).LoadedBoltStress), 2*float64(out.SeparationLoad)/float64(out.StressArea), 1e-12)
}

// Shigley ch. 8, F_i/(1 − C) and F_i + C·P: F_i is the preload in the bolt, so
// a joint that came out slack opens sooner, presses less, and its bolt bears
// less.
func TestPreloadGoesByTheClampReached(t *testing.T) {
	in := whole()
	for _, scatter := range []quantity.Ratio{0.75, 1, 1.25} {
		in.WrenchScatter = scatter
		out := tighten(t, in)
		reached, area := float64(out.AchievedPreload), float64(out.StressArea)
		parttest.Within(t, "opens at", float64(out.SeparationLoad)*(1-float64(out.LoadShare)), reached, 1e-12)
		parttest.Within(t, "bolt bears", float64(out.LoadedBoltStress)*area-float64(out.LoadShare)*1200, reached, 1e-12)
	}
	in.WrenchScatter, in.PrevailingTorque, in.PrevailingRule = 1, 0, FromAThird
	free := tighten(t, in)
	in.PrevailingTorque = 6 // not added, so it is missing from the clamp
	hard := tighten(t, in)
	left := 1 - 6/float64(free.TargetTorque)
	parttest.Within(t, "opens sooner", float64(hard.SeparationLoad/free.SeparationLoad), left, 1e-12)
	parttest.Within(t, "presses less", float64(hard.HeadBearingStress/free.HeadBearingStress), left, 1e-12)
}

func TestSoftShankOfThreadOnly(t *testing.T) {
	in := whole()
	in.ShankLength = 0
	out := tighten(t, in)
	// Head 0.5 d and nut 0.4 d of the full section, engaged thread 0.5 d of the
	// root: VDI 2230, from memory.
	full, root := math.Pi/4*0.010*0.010, math.Pi/4*math.Pow(0.010-1.226869*0.0015, 2)
	ends := 0.9*0.010/full + 0.5*0.010/root
	parttest.Within(t, "thread throughout", float64(out.BoltSpring), 207e9/(0.024/float64(out.StressArea)+ends), 1e-12)
	in.ShankLength = 0.024
	parttest.Within(t, "shank throughout", float64(tighten(t, in).BoltSpring), 207e9/(0.024/full+ends), 1e-12)
}

// Head, engaged thread and nut make a short bolt much softer. By hand with VDI
// 2230's lengths (from memory), M10 8.8 over 24 mm at 25.23 kN: they stretch by
// 25.23 kN · (9/78.54 + 5/52.29)/207 GPa = 0.0256 mm, which is 6.15° of a pitch
// of 1.5 mm on top of the 14.96° of grip and flanges.
func TestTurnOfShortBolts(t *testing.T) {
	in := whole()
	in.ShankLength = 0
	parttest.Within(t, "turn, degrees", float64(tighten(t, in).NutTurn)/degree, 21.11, 2e-3)
	out := tighten(t, in)
	in.BoltStiffness = quantity.Stiffness(207e9 * float64(out.StressArea) / 0.024)
	parttest.Within(t, "turn of the grip alone, degrees", float64(tighten(t, in).NutTurn)/degree, 14.96, 2e-3)
}

func TestNotGivenIsNotANumber(t *testing.T) {
	out := tighten(t, PreloadInput{
		NominalDiameter: 0.010, Pitch: 0.0015, ThreadForm: Metric, YieldStrength: 640e6, NutFactor: 0.2,
		Target: Proof, ProofFraction: 0.75, Method: Short, PrevailingRule: Always, Control: ByTorque, TorqueScatter: 1,
	})
	missing := map[string]bool{
		"WrenchDial": true, "LeastPreload": true, "BreakingLoad": true, "BreakingClamp": true, "BreakingTorque": true,
		"PreloadFromTorqueUsed": true, "ProofUseFromTorqueUsed": true, "ClampShareFromTorqueUsed": true, "BreakingUse": true, "HeadBearingStress": true, "BearingUse": true, "NutTurn": true, "NutFlats": true,
		"BoltSpring": true, "MemberSpring": true, "LoadShare": true, "LoadedBoltStress": true, "SeparationLoad": true,
		"ClampFromStretch": true, "ClampFromTurn": true, "MeasuredProofUse": true, "MeasuredYieldUse": true, "MeasuredBreakingUse": true, "MeasuredShare": true, "Settling": true, "SettlingLoss": true, "SettledClamp": true, "SettledShare": true, "RetorqueTurn": true, "Grown": true, "FrictionsFactor": true,
	}
	noHoles(t, out, missing)
	noHoles(t, tighten(t, read()), nil)
}

// noHoles demands a finite number of every result but those named.
func noHoles(t *testing.T, out PreloadResult, missing map[string]bool) {
	t.Helper()
	v := reflect.ValueOf(out)
	for i := range v.NumField() {
		name, f := v.Type().Field(i).Name, v.Field(i).Float()
		if math.IsNaN(f) != missing[name] || math.IsInf(f, 0) {
			t.Errorf("%s: got %v", name, f)
		}
	}
}

func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		where  string
		change func(*PreloadInput)
	}{
		{"/nominalDiameter", func(j *PreloadInput) { j.NominalDiameter = 0 }},
		{"/nominalDiameter", func(j *PreloadInput) { j.NominalDiameter = quantity.Length(inf) }},
		{"/pitch", func(j *PreloadInput) { j.Pitch = -0.001 }},
		{"/pitch", func(j *PreloadInput) { j.Pitch = 0.010 }},
		{"/pitch", func(j *PreloadInput) { j.Pitch = quantity.Length(nan) }},
		{"/threadForm", func(j *PreloadInput) { j.ThreadForm = "" }},
		{"/proofStrength", func(j *PreloadInput) { j.ProofStrength = 700e6 }},
		{"/yieldStrength", func(j *PreloadInput) { j.YieldStrength = 0 }},
		{"/tensileStrength", func(j *PreloadInput) { j.TensileStrength = 600e6 }},
		{"/nutFactor", func(j *PreloadInput) { j.NutFactor = 0 }},
		{"/threadFriction", func(j *PreloadInput) { j.ThreadFriction = 0 }},
		{"/nutFactor", func(j *PreloadInput) { j.ThreadFriction, j.HeadFriction, j.NutFactor = 0, 0, 0.023 }}, // the lead takes 0.0239
		{"/threadFriction", func(j *PreloadInput) { j.ThreadFriction = 14 }},
		{"/headFriction", func(j *PreloadInput) { j.HeadFriction = 0 }},
		{"/headFriction", func(j *PreloadInput) { j.HeadFriction = -0.1 }},
		{"/target", func(j *PreloadInput) { j.Target = "tight" }},
		{"/method", func(j *PreloadInput) { j.Method = "guess" }},
		{"/proofFraction", func(j *PreloadInput) { j.ProofFraction = 75 }},
		{"/yieldFraction", func(j *PreloadInput) { j.Target, j.YieldFraction = Yield, 0 }},
		{"/prevailingTorque", func(j *PreloadInput) { j.PrevailingTorque = -1 }},
		{"/tensionFraction", func(j *PreloadInput) { j.Target, j.TensionFraction = Tension, 1.2 }},
		{"/prevailingRule", func(j *PreloadInput) { j.PrevailingRule = "sometimes" }},
		{"/control", func(j *PreloadInput) { j.Control = "" }},
		{"/torqueScatter", func(j *PreloadInput) { j.TorqueScatter = 0 }},
		{"/wrenchScatter", func(j *PreloadInput) { j.WrenchScatter = -1 }},
		{"/tighteningFactor", func(j *PreloadInput) { j.TighteningFactor = 0.6 }},
		{"/torqueUsed", func(j *PreloadInput) { j.TorqueUsed = quantity.Torque(nan) }},
		{"/wrenchLength", func(j *PreloadInput) { j.WrenchLength = 0 }},
		{"/extensionLength", func(j *PreloadInput) { j.ExtensionLength = -0.1 }},
		{"/headBearingDiameter", func(j *PreloadInput) { j.HeadBearingDiameter = quantity.Length(nan) }},
		{"/holeDiameter", func(j *PreloadInput) { j.HoleDiameter = 0.0146 }},
		{"/holeDiameter", func(j *PreloadInput) { j.HoleDiameter = 0.009 }},
		{"/permittedBearingStress", func(j *PreloadInput) { j.PermittedBearingStress = -1 }},
		{"/gripLength", func(j *PreloadInput) { j.GripLength = -1 }},
		{"/shankLength", func(j *PreloadInput) { j.ShankLength = 0.030 }},
		{"/boltModulus", func(j *PreloadInput) { j.BoltModulus = 0 }},
		{"/memberModulus", func(j *PreloadInput) { j.MemberModulus = 0 }},
		{"/boltStiffness", func(j *PreloadInput) { j.BoltStiffness = quantity.Stiffness(inf) }},
		{"/memberStiffness", func(j *PreloadInput) { j.MemberStiffness = -1 }},
		{"/externalLoad", func(j *PreloadInput) { j.ExternalLoad = -5 }},
	} {
		in := whole()
		c.change(&in)
		_, err := Preload(in)
		parttest.RefusedAt(t, err, c.where)
	}
	_, err := Preload(PreloadInput{})
	if list := problem.Of(err); len(list) != 10 {
		t.Errorf("the empty joint: want its ten needs refused at once, got %v", err)
	}
}

func TestDoesNotAllocate(t *testing.T) {
	in := whole()
	parttest.NoAllocations(t, func() { sink, _ = Preload(in) })
}

var sink PreloadResult

func BenchmarkPreload(b *testing.B) {
	in := whole()
	b.ReportAllocs()
	for b.Loop() {
		sink, _ = Preload(in)
	}
}

func BenchmarkPreloadShort(b *testing.B) {
	in := unified(7./16, 14, 85, 92)
	b.ReportAllocs()
	for b.Loop() {
		sink, _ = Preload(in)
	}
}
