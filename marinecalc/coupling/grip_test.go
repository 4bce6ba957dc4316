package coupling

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// small is the coupling of a small auxiliary: four M10 bolts on 82.5 mm.
func small() GripInput {
	return GripInput{
		BoltCount: 4, BoltCircle: 0.0825, Preload: 25000, FaceFriction: 0.15,
		ShaftTorque: 170, AsternTorque: 150, PeakTorque: 340, ThrustAstern: 1200,
		NominalDiameter: 0.010, Pitch: 0.0015, ThreadForm: fastener.Metric, ShearPlane: Thread, BearingShare: 1,
		ProofStrength: 580e6, YieldStrength: 640e6, TensileStrength: 800e6, LowerYieldStrength: 450e6,
		ShaftDiameter: 0.025, ShaftTensileStrength: 515e6, CouplingDiameter: 0.105, HoleDiameter: 0.011,
	}
}

func hold(t *testing.T, in GripInput) GripResult {
	t.Helper()
	return parttest.Must(t, Grip, in)
}

func TestFittedBoltsByTheAmericanRule(t *testing.T) {
	// S3: ABS 4-3-2/5.19, D 270.02, U 560, c 160, N 8, B 495, U_b 725:
	// 45.67 mm (the inputs were read, the answer is computed).
	in := small()
	in.BoltCount, in.BoltCircle, in.CouplingDiameter = 8, 0.495, 0
	in.ShaftDiameter, in.ShaftTensileStrength, in.TensileStrength = 0.27002, 560e6, 725e6
	parttest.Within(t, "S3", float64(hold(t, in).FittedDiameterAbs), 0.04567, 2e-4)
}

func TestFittedBoltsByTheGermanRule(t *testing.T) {
	// S6: GL I-1-2 section 4 D, 1210 kW, 400 rpm, bolt circle 292, 12 bolts,
	// R_m 440: 22.41 mm. The printed form is evaluated beside ours.
	in := small()
	in.BoltCount, in.BoltCircle, in.CouplingDiameter, in.TensileStrength = 12, 0.292, 0, 440e6
	in.ShaftTorque = quantity.Torque(1210e3 / (400 * math.Pi / 30))
	got := float64(hold(t, in).FittedDiameterGl)
	parttest.Within(t, "S6", got, 0.02241, 2e-4)
	parttest.Within(t, "S6 as printed", got*1000, 16*math.Sqrt(1e6*1210/(400*292*12*440.)), 1e-12)
}

// No more of a bolt's strength counts than 1.7 times the shaft's, nor than
// 1000 N/mm² (ABS 4-3-2/5.19, from memory): stronger bolts get no thinner.
func TestStrongFittedBoltsGetNoThinner(t *testing.T) {
	in := small()
	in.ShaftTensileStrength, in.TensileStrength = 515e6, 1.7*515e6
	most := hold(t, in).FittedDiameterAbs
	in.TensileStrength = 1220e6
	parttest.Within(t, "12.9 on a soft shaft", float64(hold(t, in).FittedDiameterAbs), float64(most), 1e-12)
	in.ShaftTensileStrength, in.TensileStrength = 900e6, 1000e6
	most = hold(t, in).FittedDiameterAbs
	in.TensileStrength = 1220e6
	parttest.Within(t, "12.9 on a hard shaft", float64(hold(t, in).FittedDiameterAbs), float64(most), 1e-12)
	in.TensileStrength = 0
	if d := hold(t, in).FittedDiameterAbs; !math.IsNaN(float64(d)) {
		t.Errorf("bolts of no known strength: %v", d)
	}
}

// The step down in grade follows from the two grades at the bolt's own size:
// SAE J429 grades 5 and 2 over 3/4 in, 85 and 33 ksi, and ISO 898-1 class 10.9
// and 8.8 over M16, 830 and 600 MPa. Stainless takes 0.85 of yield (Shigley
// ch. 8).
func TestTheStepDownInGrade(t *testing.T) {
	for name, c := range map[string]struct{ proof, yield, lowerProof, lowerYield, ratio float64 }{
		"5 to 2 over 3/4 in":   {85, 92, 33, 36, 0.388235},
		"5 to 2 up to 3/4 in":  {85, 92, 55, 57, 0.647059},
		"10.9 to 8.8 over M16": {830, 940, 600, 660, 0.722892},
		"8.8 to A4-70":         {580, 640, 0, 450, 0.659483},
		"A4-80 to A4-50":       {0, 600, 0, 210, 0.35},
	} {
		in := small()
		in.ThrustAstern = 0
		in.ProofStrength, in.YieldStrength = quantity.Stress(c.proof*1e6), quantity.Stress(c.yield*1e6)
		in.LowerProofStrength, in.LowerYieldStrength = quantity.Stress(c.lowerProof*1e6), quantity.Stress(c.lowerYield*1e6)
		out := hold(t, in)
		parttest.Within(t, name, float64(out.GradeRatio), c.ratio, 1e-5)
		parttest.Within(t, name+": capacity", float64(out.CapacityLowerGrade), c.ratio*float64(out.FrictionCapacity), 1e-5)
	}
	in := small()
	in.LowerYieldStrength = 0
	if out := hold(t, in); !math.IsNaN(float64(out.MarginLowerGrade)) {
		t.Errorf("no lower grade: %v", out.MarginLowerGrade)
	}
	in = small()
	in.ProofStrength, in.YieldStrength = 0, 0
	if out := hold(t, in); !math.IsNaN(float64(out.MarginLowerGrade)) {
		t.Errorf("grade of the bolts not known: %v", out.MarginLowerGrade)
	}
}

func TestTextbookFlanges(t *testing.T) {
	in := small()
	in.ThrustAstern, in.AsternTorque, in.PeakTorque, in.CouplingDiameter = 0, 0, 0, 0
	in.ShearPlane = Shank

	// P7, marine coupling worked sheet: 3000 kW at 100 rpm, 8 bolts on
	// 480 mm, 60 MPa: 56.3 mm.
	p7 := in
	p7.BoltCount, p7.BoltCircle, p7.ShaftTorque, p7.PermittedShear = 8, 0.480, 286479, 60e6
	parttest.Within(t, "P7", float64(hold(t, p7).ShearDiameterNeeded), 0.0563, 1e-3)

	// P9, Singer: ten 20 mm bolts on 400 mm at 40 MPa: 25.13 kN·m.
	p9 := in
	p9.BoltCount, p9.BoltCircle, p9.NominalDiameter, p9.HoleDiameter, p9.PermittedShear = 10, 0.400, 0.020, 0, 40e6
	parttest.Within(t, "P9", float64(hold(t, p9).ShearTorque), 25130, 3e-4)

	// P10, Singer variant: 8 bolts on 305 mm and 6 on 229 mm, all 12.7 mm,
	// 949 N·m: 4.32 and 3.247 MPa.
	p10 := in
	p10.BoltCount, p10.BoltCircle, p10.InnerBoltCount, p10.InnerBoltCircle = 8, 0.305, 6, 0.229
	p10.NominalDiameter, p10.HoleDiameter, p10.ShaftTorque = 0.0127, 0, 949
	out := hold(t, p10)
	parttest.Within(t, "P10 outer", float64(out.ShearStress), 4.32e6, 2e-3)
	parttest.Within(t, "P10 inner", float64(out.ShearStressInner), 3.247e6, 3e-3)

	// P11, Singer: 8 bolts on 400 mm and 6 on 300 mm, 10 mm, 60 MPa:
	// 10.72 kN·m (statement read, answer recomputed).
	p11 := in
	p11.BoltCount, p11.BoltCircle, p11.InnerBoltCount, p11.InnerBoltCircle = 8, 0.400, 6, 0.300
	p11.PermittedShear, p11.NominalDiameter, p11.HoleDiameter = 60e6, 0.010, 0
	parttest.Within(t, "P11", float64(hold(t, p11).ShearTorque), 10720, 3e-4)
}

func TestFrictionJoint(t *testing.T) {
	// Derived: 4 bolts at 6776.6 lbf, friction 0.15, on 3.25 in: 6607 lbf·in
	// against 1576 lbf·in, a margin of 4.2.
	const pound, inch = 4.4482216152605, 0.0254
	in := small()
	in.ThrustAstern, in.AsternTorque, in.PeakTorque = 0, 0, 0
	in.BoltCircle, in.Preload, in.ShaftTorque = 3.25*inch, 6776.6*pound, 1575.6*pound*inch
	out := hold(t, in)
	parttest.Within(t, "capacity", float64(out.FrictionCapacity), 6607*pound*inch, 1e-4)
	parttest.Within(t, "margin", float64(out.MarginAhead), 4.2, 2e-3)
}

func TestWhatJustHolds(t *testing.T) {
	in := small()
	in.Preload = hold(t, in).PreloadToHold
	out := hold(t, in)
	parttest.Within(t, "capacity at the clamp that just holds", float64(out.CapacityAstern), float64(out.HardestTorque), 1e-12)
	in.NominalDiameter, in.ShearPlane, in.ThreadForm = out.ShearDiameterNeeded, Shank, "" // a shank, of whatever thread
	parttest.Within(t, "use at the diameter that bears it", float64(hold(t, in).ShearUse), 1, 1e-12)
}

func TestGripRunsTheRightWay(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	grow := func(v float64) float64 { return v * (1 + r.Float64()) }
	for range 500 {
		in := small()
		in.Preload = quantity.Force(grow(float64(in.Preload) / 2))
		in.BoltCount = 3 + r.IntN(6)
		before := hold(t, in)
		more := func(what string, change func(*GripInput), got func(GripResult) quantity.Ratio, sign float64) {
			other := in
			change(&other)
			if d := float64(got(hold(t, other)) - got(before)); d*sign < 0 {
				t.Errorf("%s: the margin moves by %v", what, d)
			}
		}
		ahead := func(g GripResult) quantity.Ratio { return g.MarginAhead }
		astern := func(g GripResult) quantity.Ratio { return g.MarginAstern }
		more("more clamp", func(f *GripInput) { f.Preload *= 1.1 }, ahead, 1)
		more("more friction", func(f *GripInput) { f.FaceFriction *= 1.1 }, ahead, 1)
		more("one more bolt", func(f *GripInput) { f.BoltCount++ }, ahead, 1)
		more("more torque", func(f *GripInput) { f.ShaftTorque *= 1.1 }, ahead, -1)
		more("more pull astern", func(f *GripInput) { f.ThrustAstern *= 1.1 }, astern, -1)
		if !(before.MarginOneLoose <= before.MarginPeak && before.MarginLowerGrade <= before.MarginPeak && before.CapacityAstern <= before.FrictionCapacity) {
			t.Errorf("a loose or weaker bolt holds more: %+v", before)
		}
		// One bolt less, all clamps as they are, is one bolt loose.
		fewer := in
		fewer.BoltCount--
		if fewer.BoltCount >= 2 {
			parttest.Within(t, "one bolt less", float64(hold(t, fewer).CapacityAstern), float64(before.CapacityOneLoose), 1e-12)
		}
	}
}

func TestAPullBeyondTheClampHoldsNothing(t *testing.T) {
	in := small()
	in.ThrustAstern = 5 * in.Preload
	if out := hold(t, in); out.CapacityAstern != 0 || out.MarginAstern != 0 {
		t.Errorf("faces pulled apart hold %v", out.CapacityAstern)
	}
}

// The pull is what was told of it, or follows from the thrust ahead; by
// Coulomb's law four bolts of 25 kN at 0.15 on 82.5 mm hold 618.75 N·m, less
// the part that the pull takes of their 100 kN.
func TestThePullAstern(t *testing.T) {
	in := small()
	in.ThrustAstern = 0
	for name, c := range map[string]struct {
		change func(*GripInput)
		pull   float64
	}{
		"of the thrust ahead":       {func(f *GripInput) { f.Thrust, f.AsternThrust, f.ThrustOnCoupling = 2500, 0.7, 1 }, 1750},
		"half of it on the hull":    {func(f *GripInput) { f.Thrust, f.AsternThrust, f.ThrustOnCoupling = 2500, 0.7, 0.5 }, 875},
		"told, beside the thrust":   {func(f *GripInput) { f.ThrustAstern, f.Thrust, f.AsternThrust, f.ThrustOnCoupling = 1200, 2500, 0.7, 1 }, 1200},
		"a thrust bearing takes it": {func(f *GripInput) { f.Thrust, f.AsternThrust = 2500, 0.7 }, 0},
	} {
		flange := in
		c.change(&flange)
		out := hold(t, flange)
		parttest.Within(t, name+": pull", float64(out.PullAstern), c.pull, 1e-12)
		parttest.Within(t, name+": capacity", float64(out.CapacityAstern), 618.75*(1-c.pull/100e3), 1e-12)
		parttest.Within(t, name+": margin", float64(out.MarginAstern), 618.75*(1-c.pull/100e3)/150, 1e-12)
		parttest.Within(t, name+": in a shock", float64(out.MarginPeak), 618.75*(1-c.pull/100e3)/340, 1e-12)
	}
	in.ThrustOnCoupling = 1 // it passes the coupling, and nobody knows how much it is
	out := hold(t, in)
	if !math.IsNaN(float64(out.PullAstern)) || !math.IsNaN(float64(out.CapacityAstern)) || !math.IsNaN(float64(out.MarginAstern)) {
		t.Errorf("a pull that nobody knows: %+v", out)
	}
	in.PeakTorque = 700 // slips even without a pull
	parttest.Within(t, "in a shock, without a pull", float64(hold(t, in).MarginPeak), 618.75/700, 1e-12)
}

// What is met only because a torque or a pull is not known is not told: steady
// at 170 N·m, the faces hold 618.75 N·m less what the pull takes. What is not
// met even so is told.
func TestNothingHoldsForWantOfATorqueOrAPull(t *testing.T) {
	known := func(v quantity.Ratio) bool { return !math.IsNaN(float64(v)) }
	for name, c := range map[string]struct {
		change      func(*GripInput)
		peak, shear bool
		rest        bool // the margins at the hardest torque
	}{
		"everything":              {func(*GripInput) {}, true, true, true},
		"no peak":                 {func(f *GripInput) { f.PeakTorque = 0 }, false, false, false},
		"no pull":                 {func(f *GripInput) { f.ThrustAstern, f.ThrustOnCoupling = 0, 1 }, false, true, false},
		"no peak, slips steadily": {func(f *GripInput) { f.PeakTorque, f.FaceFriction, f.NominalDiameter = 0, 0.03, 0.0035 }, false, true, true},
		"no pull, slips steadily": {func(f *GripInput) { f.ThrustAstern, f.ThrustOnCoupling, f.FaceFriction = 0, 1, 0.03 }, true, true, true},
	} {
		in := small()
		in.ThreadForm = "" // what the clamp does to the bolt is not looked at here
		c.change(&in)
		out := hold(t, in)
		if known(out.MarginPeak) != c.peak || known(out.ShearUse) != c.shear || known(out.MarginHardest) != c.rest || known(out.MarginOneLoose) != c.rest || known(out.MarginLowerGrade) != c.rest {
			t.Errorf("%s: %v, %v, %v, %v, %v", name, out.MarginPeak, out.ShearUse, out.MarginHardest, out.MarginOneLoose, out.MarginLowerGrade)
		}
	}
}

// What the margins with a loose or a weaker bolt go by is said.
func TestTheHardestTorqueIsNamed(t *testing.T) {
	for want, change := range map[string]func(*GripInput){
		PeakIsHardest:   func(*GripInput) {},
		AheadIsHardest:  func(f *GripInput) { f.PeakTorque = 0 },
		AsternIsHardest: func(f *GripInput) { f.PeakTorque, f.AsternTorque = 100, 180 },
	} {
		in := small()
		change(&in)
		out := hold(t, in)
		if out.HardestCase != want {
			t.Errorf("%q, want %q", out.HardestCase, want)
		}
		parttest.Within(t, want, float64(out.HardestTorque), float64(max(in.ShaftTorque, in.AsternTorque, in.PeakTorque)), 0)
	}
}

func TestExtremesStayFinite(t *testing.T) {
	in := small()
	in.BoltCount, in.BoltCircle, in.NominalDiameter, in.HoleDiameter, in.CouplingDiameter = 48, 1.5, 0.02, 0.02, 0
	in.Preload, in.ShaftTorque, in.PeakTorque, in.ThreadForm = 5e6, 0.1, 1e8, "" // no such bolt bears that clamp
	out := hold(t, in)
	for _, v := range []float64{float64(out.MarginAhead), float64(out.MarginPeak), float64(out.ShearStress), float64(out.FittedDiameterGl)} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Errorf("%+v", out)
		}
	}
}

func TestImpossibleFlangesAreRefused(t *testing.T) {
	for where, change := range map[string]func(*GripInput){
		"/boltCount":        func(f *GripInput) { f.BoltCount = 24 },                               // holes run into each other
		"/boltCircle":       func(f *GripInput) { f.BoltCircle = 0.030 },                           // inside the shaft
		"/boltCircle ":      func(f *GripInput) { f.BoltCircle = 0.100 },                           // through the rim
		"/innerBoltCircle":  func(f *GripInput) { f.InnerBoltCount = 4 },                           // no circle
		"/innerBoltCount":   func(f *GripInput) { f.InnerBoltCount, f.InnerBoltCircle = 20, 0.05 }, // overlap
		"/faceFriction":     func(f *GripInput) { f.FaceFriction = 15 },
		"/preload":          func(f *GripInput) { f.Preload = 0 },
		"/shaftTorque":      func(f *GripInput) { f.ShaftTorque = quantity.Torque(math.NaN()) },
		"/bearingShare":     func(f *GripInput) { f.BearingShare = 0 },
		"/lowerGrade":       func(f *GripInput) { f.LowerProofStrength = 830e6 },
		"/shearPlane":       func(f *GripInput) { f.ShearPlane = "" },
		"/pitch":            func(f *GripInput) { f.Pitch = 0.009 },
		"/pitch ":           func(f *GripInput) { f.Pitch = 0 },
		"/thrustAstern":     func(f *GripInput) { f.ThrustAstern = -1 },
		"/thrust":           func(f *GripInput) { f.Thrust = -1 },
		"/asternThrust":     func(f *GripInput) { f.AsternThrust = 3 },
		"/thrustOnCoupling": func(f *GripInput) { f.ThrustOnCoupling = 1.1 },
	} {
		in := small()
		change(&in)
		_, err := Grip(in)
		parttest.RefusedAt(t, err, strings.TrimSpace(where))
	}
}

func TestGripDoesNotAllocate(t *testing.T) {
	in := small()
	parttest.NoAllocations(t, func() { _, _ = Grip(in) })
}

func BenchmarkGrip(b *testing.B) {
	in := small()
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Grip(in)
	}
}

func TestCodesHaveTheirWords(t *testing.T) {
	parttest.SameCodes(t, "coupling-grip", "hardestCase", PeakIsHardest, AheadIsHardest, AsternIsHardest)
}
