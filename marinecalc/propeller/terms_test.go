package propeller

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// SAE J755: a shaft of 1 in loses 1/16 over 2.750 in and ends at 0.828 in.
// Nothing is said of a taper of which a dimension is missing.
func TestTaperMeasured(t *testing.T) {
	in := fitted()
	in.ShaftDiameter, in.TaperLength, in.SmallEndDiameter, in.Bore, in.NutDiameter = 0.0254, 2.75*0.0254, 0.828125*0.0254, 0, 0.016
	parttest.Within(t, "1 in 16", parttest.Must(t, Taper, in).TaperMeasured, 1./16, 1e-9)
	in.SmallEndDiameter = 0
	if out := parttest.Must(t, Taper, in); !math.IsNaN(float64(out.TaperMeasured)) {
		t.Errorf("without the small end: %g", out.TaperMeasured)
	}
	in.SmallEndDiameter, in.TaperLength = 0.02, 0
	if out := parttest.Must(t, Taper, in); !math.IsNaN(float64(out.TaperMeasured)) {
		t.Errorf("without the length: %g", out.TaperMeasured)
	}
	parttest.Near(t, "a tenth of a millimetre less far with the key", parttest.Must(t, Taper, fitted()).KeyHoldOff, 1e-4, 1e-12)
}

// ISO 898-1, table of the fine threads: M24×2 has a stress area of 384 mm².
func TestThreadOfTheNut(t *testing.T) {
	in := fitted()
	in.NutForce = 40e3
	out := parttest.Must(t, Taper, in)
	parttest.Within(t, "stress area", out.StressArea, 384e-6, 0.002)
	parttest.Within(t, "use", out.ThreadUse, 40e3/384e-6/207e6, 0.002)
	for what, change := range map[string]func(*TaperInput){
		"no pitch":    func(in *TaperInput) { in.NutPitch, in.NutForm = 0, "" },
		"no diameter": func(in *TaperInput) { in.NutDiameter, in.NutForm = 0, "" },
	} {
		in := fitted()
		in.NutForce = 40e3
		change(&in)
		if out := parttest.Must(t, Taper, in); !math.IsNaN(float64(out.StressArea)) || !math.IsNaN(float64(out.ThreadUse)) {
			t.Errorf("%s: %g m², %g", what, out.StressArea, out.ThreadUse)
		}
	}
}

// The ring under the nut added up circle by circle bears the push; the nut that sinks
// is where the torque says; what was measured goes before what is usual.
func TestFaceOfTheNut(t *testing.T) {
	in := fitted()
	in.NutFaceDiameter, in.NutFaceShare, in.HubHole, in.PermittedBearingStress = 0.036, 1.5, 0.026, 200e6
	out := parttest.Must(t, Taper, in)
	ring := func(hole, face float64) (area float64) {
		const circles = 1000
		for i := range circles {
			r := (hole + (face-hole)*(float64(i)+0.5)/circles) / 2
			area += 2 * math.Pi * r * (face - hole) / 2 / circles
		}
		return area
	}
	push := 200 / (0.2 * 0.024)
	parttest.Within(t, "pressure", out.FaceStress, push/ring(0.026, 0.036), 1e-9)
	parttest.Within(t, "use", out.FaceUse, push/ring(0.026, 0.036)/200e6, 1e-9)
	in.NutTorque = out.SinkNutTorque
	parttest.Within(t, "use where it sinks", parttest.Must(t, Taper, in).FaceUse, 1, 1e-9)
	in = fitted()
	in.NutFaceShare = 1.5 // a face of 36 mm on the cone's small end, 8 mm less than 40
	parttest.Within(t, "usual face", parttest.Must(t, Taper, in).FaceStress, push/ring(0.032, 0.036), 1e-9)
	for what, change := range map[string]func(*TaperInput){
		"no face":              func(in *TaperInput) { in.NutFaceShare = 0 },
		"a face in the hole":   func(in *TaperInput) { in.NutFaceShare = 1.3 },
		"no thread, no face":   func(in *TaperInput) { in.NutForce, in.NutDiameter, in.NutForm, in.NutPitch = 40e3, 0, "", 0 },
		"a metal not known":    func(in *TaperInput) { in.PermittedBearingStress = 0 },
		"a ring of no breadth": func(in *TaperInput) { in.NutFaceShare, in.HubHole = 1.5, 0.037 },
	} {
		in := fitted()
		in.NutFaceShare, in.PermittedBearingStress = 1.5, 200e6
		change(&in)
		if out := parttest.Must(t, Taper, in); !math.IsNaN(float64(out.FaceUse)) || !math.IsNaN(float64(out.SinkNutTorque)) {
			t.Errorf("%s: %g, %g N·m", what, out.FaceUse, out.SinkNutTorque)
		}
	}
}

// Tension and torsion of a round bar by the distortion energy (Shigley, Mechanical
// Engineering Design, ch. 3 and 5), worked out here from the torque in the
// thread: half of 180 N·m on M20x2 is 174 and 78 MPa, 221 together. A hydraulic
// nut, which is pushed, twists nothing.
func TestTwistOfTheNut(t *testing.T) {
	in := fitted()
	in.NutDiameter, in.NutTorque, in.ShaftYieldStrength = 0.020, 180, 206.8e6
	in.HubYieldStrength = 2e9 // the thread is the weaker
	out := parttest.Must(t, Taper, in)
	d2, ds := 0.018701, 0.0181236
	lead := 0.002 / 2 / math.Pi
	// 180 N·m = 45 kN·(lead + f·d2/2/cos 30° + f·1.25·20 mm/2), solved for f
	f := (180/45e3 - lead) / (d2/2/math.Cos(math.Pi/6) + 0.0125)
	thread := 180 - 45e3*f*0.0125 // what the face does not take
	tension, torsion := 45e3/(math.Pi/4*ds*ds), 16*thread/(math.Pi*ds*ds*ds)
	together := math.Sqrt(tension*tension + 3*torsion*torsion)
	parttest.Within(t, "tension, MPa", tension/1e6, 174, 0.005)
	parttest.Within(t, "torsion, MPa", torsion/1e6, 78, 0.005)
	parttest.Within(t, "together, MPa", together/1e6, 221, 0.005)
	parttest.Within(t, "use", out.ThreadUse, together/206.8e6, 1e-4)
	parttest.Within(t, "most torque", out.MostNutTorque, 180*206.8e6/together, 1e-4)
	for _, beside := range []quantity.Ratio{0.999, 1.001} {
		in.NutTorque = out.MostNutTorque * quantity.Torque(beside)
		if use := parttest.Must(t, Taper, in).ThreadUse; (use > 1) != (beside > 1) {
			t.Errorf("%g of the most torque: use %g", beside, use)
		}
	}
	in.NutForce = 45e3
	parttest.Within(t, "hydraulic nut", parttest.Must(t, Taper, in).ThreadUse, tension/206.8e6, 1e-4)
	in.NutForce, in.NutTorque, in.PushUp = 0, 0, out.PushUpUsed
	parttest.Within(t, "as far by push-up", parttest.Must(t, Taper, in).ThreadUse, together/206.8e6, 1e-4)
	in.NutFactor = 0
	if use := parttest.Must(t, Taper, in).ThreadUse; !math.IsNaN(float64(use)) {
		t.Errorf("twisted by nobody knows what: %g", use)
	}
	in.NutFactor = 0.01 // less than the lead takes
	if out := parttest.Must(t, Taper, in); !math.IsNaN(float64(out.ThreadFrictionUsed)) || !math.IsNaN(float64(out.ThreadUse)) {
		t.Errorf("a nut that turns itself: friction %g, use %g", out.ThreadFrictionUsed, out.ThreadUse)
	}
}

// A push spread over half the cone presses it twice as hard, and friction holds
// the same; a fit pushed up as far presses the half as hard, and holds half.
func TestHalfTheContact(t *testing.T) {
	in := fitted()
	in.NutForce = 30e3
	whole := parttest.Must(t, Taper, in)
	in.ContactShare /= 2
	part := parttest.Must(t, Taper, in)
	parttest.Within(t, "pressure", part.ConePressure, 2*float64(whole.ConePressure), 1e-12)
	parttest.Within(t, "friction", part.FrictionTorque, float64(whole.FrictionTorque), 1e-12)
	parttest.Within(t, "area", whole.Pressed/quantity.Force(whole.ConePressure), math.Pi*0.036*0.08*0.8, 1e-9)
	in.PushUp = whole.PushUpUsed
	parttest.Within(t, "friction by push-up", parttest.Must(t, Taper, in).FrictionTorque, float64(whole.FrictionTorque)/2, 1e-9)
}

// Each margin is the torque held over the torque asked; a key as strong as the
// friction bears nothing yet.
func TestTaperMargins(t *testing.T) {
	in := fitted()
	in.KeyTorque, in.Keyed = 0, hub.NoKey
	out := parttest.Must(t, Taper, in)
	parttest.Within(t, "ahead", out.MarginAhead, float64(out.FrictionTorque)/250, 1e-12)
	parttest.Within(t, "friction", out.FrictionMargin, float64(out.FrictionTorque)/250, 1e-12)
	parttest.Within(t, "astern", out.MarginAstern, float64(out.SlipAstern)/220, 1e-12)
	in.KeyTorque, in.Keyed = out.FrictionTorque, hub.WithKey
	if out = parttest.Must(t, Taper, in); out.HeldBy != HeldByFriction {
		t.Errorf("held by %s", out.HeldBy)
	}
	in.KeyTorque *= 1.001
	if out = parttest.Must(t, Taper, in); out.HeldBy != HeldByKey || out.SlipTorque != in.KeyTorque {
		t.Errorf("held by %s, %g N·m", out.HeldBy, out.SlipTorque)
	}
	in = fitted()
	in.KeyTorque, in.Thrust, in.ThrustAstern, in.NutTorque, in.Keyed = 0, 0, 0, 60, hub.NoKey
	out = parttest.Must(t, Taper, in)
	parttest.Within(t, "what slips without a pull", out.MarginPeak, float64(out.FrictionTorque)/500, 1e-12)
}

// A cone that does not hold itself is off at the least pull; while no pull is
// told, its key holds alone.
func TestConeThatJumpsOff(t *testing.T) {
	in := fitted()
	in.BoreFriction, in.KeyTorque, in.ThrustAstern = 0.04, 5000, 0.5
	out := parttest.Must(t, Taper, in)
	if out.SlipAstern != 0 || out.MarginAstern != 0 || out.PullOff != 0 || out.BareMargin != 0 {
		t.Errorf("pulled by half a newton: %+v", out)
	}
	in.Thrust, in.ThrustAstern = 0, 0
	out = parttest.Must(t, Taper, in)
	parttest.Within(t, "key alone", out.MarginPeak, 10, 1e-12)
}

// With the nut lost a key that holds the torque astern leaves all friction
// to the pull; what it does not hold turns the friction away from it. Where the
// torque is not known no margin of 1 or more is.
func TestNutLost(t *testing.T) {
	in := fitted()
	out := parttest.Must(t, Taper, in)
	n := float64(out.Pressed)
	half := math.Atan(0.05)
	straight := n * (0.15*math.Cos(half) - math.Sin(half))
	round := 220 / (0.036 / 2)
	askew := math.Sqrt(0.15*0.15*n*n-round*round)*math.Cos(half) - n*math.Sin(half)
	for key, want := range map[quantity.Torque]float64{0: askew, 219: askew, 220: straight, 600: straight} {
		in.KeyTorque = key
		parttest.Within(t, "margin with a key", parttest.Must(t, Taper, in).BareMargin, max(0, want)/2800, 1e-9)
	}
	in = fitted()
	in.KeyTorque, in.AsternTorque = 0, 0
	in.ThrustAstern = out.PullOff
	for pull, told := range map[quantity.Force]bool{out.PullOff / 3 * 2: false, out.PullOff: false, out.PullOff * 1.01: true} {
		in.ThrustAstern = pull
		if out := parttest.Must(t, Taper, in); math.IsNaN(float64(out.BareMargin)) == told {
			t.Errorf("pull %g N of %g N without a torque: %g", pull, out.PullOff, out.BareMargin)
		}
	}
	in.AsternTorque, in.ThrustAstern = 1, out.PullOff/4
	if out := parttest.Must(t, Taper, in); !(out.BareMargin > 2) {
		t.Errorf("with a torque of 1 N·m: %g", out.BareMargin)
	}
}

// Where the shaft is the stronger the hub sets the most torque; heat frees a
// hub once it has grown by its interference.
func TestHubBurstsFirst(t *testing.T) {
	in := fitted()
	in.ShaftYieldStrength = 2e9
	in.NutTorque = parttest.Must(t, Taper, in).MostNutTorque
	out := parttest.Must(t, Taper, in)
	parttest.Within(t, "hub at the most torque", out.HubUse, 1, 1e-9)
	interference := float64(out.PushUpUsed) * 0.1
	parttest.Within(t, "grown by", 0.036*21e-6*float64(out.HeatOff), interference, 1e-9)
}

// Edges that fall on whole powers of two, where nothing is rounded.
func TestTaperEdgesExactly(t *testing.T) {
	in := fitted()
	in.ShaftDiameter, in.TaperRatio, in.TaperLength, in.HubLength, in.SmallEndDiameter, in.Bore = 0.0625, 0.125, 0.5, 0, 0, 0
	_, err := Taper(in)
	parttest.RefusedAt(t, err, "/taperLength")
	parttest.Says(t, err, "500 mm")
	in.TaperLength, in.Bore = 0.25, 0.03125
	_, err = Taper(in)
	parttest.RefusedAt(t, err, "/bore")
	in.Bore = 0.03124
	parttest.Must(t, Taper, in)
	in = fitted()
	in.NutForce, in.NutPitch, in.NutForm = 40e3, 0, ""
	parttest.Must(t, Taper, in) // of a thread whose pitch is not told no form is asked
	in.NutPitch, in.NutForm = 1, fastener.Metric
	in.NutDiameter = deepestThread * in.NutPitch
	_, err = Taper(in)
	parttest.RefusedAt(t, err, "/nutPitch")
}
