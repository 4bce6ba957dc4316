package shaft

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// Thrust, bending and twist as the stresses on a small cube at the surface: the
// principal ones are the eigenvalues of their tensor, von Mises's is of their
// differences.
func TestStressAsATensor(t *testing.T) {
	in := ketch()
	in.ShaftBore, in.Thrust, in.BendingMoment, in.SectionFactor = in.ShaftDiameter/2, 6000, 80, 1
	out := parttest.Must(t, Strength, in)
	d, b := float64(out.DiameterUsed), float64(in.ShaftBore)
	sigma := 6000/(math.Pi/4*(d*d-b*b)) + 32*80*d/(math.Pi*(math.Pow(d, 4)-math.Pow(b, 4)))
	tau := 16 * float64(out.DesignTorque) * d / (math.Pi * (math.Pow(d, 4) - math.Pow(b, 4)))
	var e mat.EigenSym
	if !e.Factorize(mat.NewSymDense(3, []float64{sigma, tau, 0, tau, 0, 0, 0, 0, 0}), false) {
		t.Fatal("no principal stresses")
	}
	s := e.Values(nil)
	parttest.Within(t, "greatest principal", out.GreatestPrincipal, s[2], 1e-9)
	parttest.Within(t, "greatest shear", out.GreatestShear, (s[2]-s[0])/2, 1e-9)
	parttest.Within(t, "von Mises", out.VonMises, math.Sqrt((math.Pow(s[0]-s[1], 2)+math.Pow(s[1]-s[2], 2)+math.Pow(s[2]-s[0], 2))/2), 1e-9)
}

// IACS UR M68.4 (from memory): a bore counts from 0.4 of the diameter on, as
// 1/(1 − (b/d)⁴), and strength up to the cap of the rule.
func TestBoreAndCapOfTheClassRule(t *testing.T) {
	in := ketch()
	d := float64(parttest.Must(t, Strength, in).DiameterUsed)
	for ratio, want := range map[float64]float64{0: 1, 0.3: 1, 0.399: 1, 0.41: 1 / (1 - math.Pow(0.41, 4)), 0.5: 16. / 15} {
		in.ShaftBore = quantity.Length(ratio * d)
		parttest.Within(t, "bore", parttest.Must(t, Strength, in).BoreFactor, want, 1e-9)
	}
	in = ketch()
	in.ShaftTensileStrength = 900e6
	for limit, want := range map[quantity.Stress]float64{0: 900e6, 600e6: 600e6, 900e6: 900e6, 950e6: 900e6} {
		in.TensileCap = limit
		parttest.Within(t, "strength", parttest.Must(t, Strength, in).TensileUsed, want, 1e-12)
	}
	// A peak as great as the steady torque is the peak.
	in = ketch()
	in.PeakTorque = parttest.Must(t, Strength, in).ShaftTorque
	if out := parttest.Must(t, Strength, in); out.DesignCase != AtPeak {
		t.Errorf("%s", out.DesignCase)
	}
}

// What yields without a shock is told though no peak is known, and nothing less
// than that is.
func TestYieldsWithoutAPeak(t *testing.T) {
	in := ketch()
	in.PeakTorque = 0
	mises := parttest.Must(t, Strength, in).VonMises
	for share, told := range map[float64]bool{0.99: false, 1.01: true, 1.5: true} {
		in.ShaftYieldStrength = mises / quantity.Stress(share)
		if out := parttest.Must(t, Strength, in); math.IsNaN(float64(out.YieldUse)) == told {
			t.Errorf("at %g of yield: %g", share, out.YieldUse)
		}
	}
	key := sloopKey()
	key.PeakTorque, key.ShaftYieldStrength, key.HubYieldStrength, key.KeyYieldStrength = 0, 1e9, 1e9, 1e9
	held := parttest.Must(t, KeyStrength, key)
	parttest.Within(t, "held", held.TorqueHeld, float64(held.SteadySafety)*float64(key.ShaftTorque), 1e-12)
	for share, told := range map[float64]bool{0.99: false, 1.01: true, 1.5: true} {
		key.ShaftTorque = held.TorqueHeld * quantity.Torque(share)
		out := parttest.Must(t, KeyStrength, key)
		if math.IsNaN(float64(out.PeakUse)) == told || math.IsNaN(float64(out.KeyUse)) == told {
			t.Errorf("at %g of what it holds: %g, key %g", share, out.PeakUse, out.KeyUse)
		}
	}
}

// Two keys on a taper whose keyway is deeper in the shaft: each bears half, at
// the middle of the taper, and is crushed where less of it bears.
func TestTwoKeysOnATaper(t *testing.T) {
	in := KeyStrengthInput{ShaftDiameter: 0.040, SmallEndDiameter: 0.032, ShaftTorque: 400, KeyWidth: 0.012, KeyHeight: 0.008, KeySeat: 0.005, KeyLength: 0.050, KeyCount: 2,
		KeyYieldStrength: 250e6, ShaftYieldStrength: 300e6, HubYieldStrength: 200e6}
	out := parttest.Must(t, KeyStrength, in)
	force := 400 / 0.018 // half of the mean diameter of 36 mm
	parttest.Within(t, "force", out.KeyForce, force, 1e-12)
	parttest.Within(t, "shear", out.KeyShear, force/2/(0.012*0.050), 1e-12)
	parttest.Within(t, "pressure in the shaft", out.ShaftSideBearing, force/2/(0.005*0.050), 1e-12)
	parttest.Within(t, "pressure in the hub", out.HubSideBearing, force/2/(0.003*0.050), 1e-12)
	parttest.Within(t, "key", out.KeyBearingSafety, 250e6*0.003*0.050/(force/2), 1e-12)
	parttest.Within(t, "width", out.WidthForShaft, 0.3, 1e-12)
	for says, change := range map[string]func(*KeyStrengthInput){
		"up to half the shaft, 20 mm": func(in *KeyStrengthInput) { in.KeyWidth = 0.021 },
		"a key 21 mm high":            func(in *KeyStrengthInput) { in.KeyHeight = 0.021 },
		"about 42 mm":                 func(in *KeyStrengthInput) { in.LargeEndDiameter, in.ShaftDiameter = 0.042, 0.040 },
	} {
		in := in
		change(&in)
		_, err := KeyStrength(in)
		parttest.Says(t, err, says)
	}
}

// A shaft in two bearings with its coupling ahead of one and its propeller aft of
// the other, in balance: forces and moments about both bearings (statics).
func TestDroopInBalance(t *testing.T) {
	in := DroopInput{ShaftDiameter: 0.04, FreeLength: 0.6, ElasticModulus: 193e9, ShaftDensity: 7900, CouplingMass: 8, CouplingCentre: 0.02, CouplingDiameter: 0.12,
		SpanBehind: 1.2, PropellerMass: 12, PropellerOverhang: 0.15}
	out := parttest.Must(t, Droop, in)
	const g = 9.80665
	per := math.Pi / 4 * 0.04 * 0.04 * 7900 * g
	loads := [][2]float64{{0.02, 8 * g}, {0.3, per * 0.6}, {1.2, per * 1.2}, {1.875, per * 0.15}, {1.95, 12 * g}} // place from the face, weight
	sum, aboutSupport, aboutBack := 0.0, 0.0, 0.0
	for _, l := range loads {
		sum += l[1]
		aboutSupport += (l[0] - 0.6) * l[1]
		aboutBack += (1.8 - l[0]) * l[1]
	}
	parttest.Within(t, "back", out.BackReaction, aboutSupport/1.2, 1e-9)
	parttest.Within(t, "support", out.SupportReaction, aboutBack/1.2, 1e-9)
	parttest.Within(t, "both", out.BackReaction+out.SupportReaction, sum, 1e-9)
	parttest.Within(t, "sag over length", out.SagPerFreeLength, float64(out.DroopSag)/0.6, 1e-12)
	parttest.Within(t, "length in diameters", out.FreeLengthPerShaft, 15, 1e-12)
	parttest.Within(t, "scale", out.LiftReading, float64(out.LiftForce)/g, 1e-12)
	parttest.Within(t, "gap", out.DroopGap, 0.12*math.Tan(float64(out.DroopSlope)), 1e-12)
	parttest.Within(t, "gap when lifted", out.GapLifted, 0.12*math.Tan(float64(out.SlopeLifted)), 1e-12)
	parttest.Within(t, "for the diameter", out.DroopPerDiameter, math.Abs(math.Tan(float64(out.DroopSlope))), 1e-12)
	// Without the span, or the propeller's place, how it turns in its bearing is not known.
	for what, change := range map[string]func(*DroopInput){
		"no span":  func(in *DroopInput) { in.SpanBehind = 0 },
		"no place": func(in *DroopInput) { in.PropellerOverhang = 0 },
	} {
		in := in
		change(&in)
		if out := parttest.Must(t, Droop, in); !math.IsNaN(float64(out.DroopPerDiameter)) {
			t.Errorf("%s: %g", what, out.DroopPerDiameter)
		}
	}
	in.PropellerMass, in.PropellerOverhang, in.SpanBehind = 0, 0, 0.9
	if out := parttest.Must(t, Droop, in); math.IsNaN(float64(out.DroopPerDiameter)) || math.IsNaN(float64(out.BackReaction)) {
		t.Errorf("no propeller: %g, %g N", out.DroopPerDiameter, out.BackReaction)
	}
	in.PropellerMass, in.PropellerOverhang, in.SpanBehind = 0.5, 0.9, 0.9
	if out := parttest.Must(t, Droop, in); math.IsNaN(float64(out.DroopPerDiameter)) {
		t.Error("a light propeller in its place leaves the slope unknown")
	}
}
