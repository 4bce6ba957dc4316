package propeller

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// fitted is a manganese bronze propeller on a stainless shaft of 40 mm.
func fitted() TaperInput {
	return TaperInput{ShaftDiameter: 0.04, TaperRatio: 0.1, TaperLength: 0.085, HubLength: 0.08, SmallEndDiameter: 0.0315, ContactShare: 0.8, BoreFriction: 0.15,
		MarkWithoutKey: 0.012, MarkWithKey: 0.0121, NutTorque: 200, NutFactor: 0.2, NutDiameter: 0.024, NutPitch: 0.002, NutForm: fastener.Metric,
		HubDiameter: 0.075, HubModulus: 103e9, ElasticModulus: 193e9, HubPoisson: 0.34, ShaftPoisson: 0.3, HubYieldStrength: 172e6, ShaftYieldStrength: 207e6, HubExpansion: 21e-6,
		ShaftTorque: 250, AsternTorque: 220, PeakTorque: 500, KeyTorque: 600, Thrust: 4000, AsternThrust: 0.7, ThrustAstern: 2800, Bore: 0.01}
}

func TestEdgesOfTaper(t *testing.T) {
	edges := map[string]string{"/shaftDiameter": "(0, inf)", "/taperRatio": "(0, 0.25]", "/contactShare": "(0, 1]", "/boreFriction": "(0, 1)", "/hubDiameter": "(0.04, inf)",
		"/hubModulus": "(0, inf)", "/elasticModulus": "(0, inf)", "/hubPoisson": "[0, 0.5]", "/shaftPoisson": "[0, 0.5]", "/shaftTorque": "(0, inf)", "/asternThrust": "[0, 2]",
		"/nutTorque": "(0, inf)", "/nutFactor": "(0, inf)", "/nutDiameter": "about (0.0026, inf)", "/nutPitch": "about [0, 0.01846153846)", "/bore": "about [0, 0.032)", "/lengthShare": "0 or [0.3, 1]", "/smallEndDiameter": "[0, 0.04)",
		"/taperLength": "[0, inf)", "/hubLength": "[0, inf)"}
	for _, name := range []string{"markWithoutKey", "markWithKey", "pushUp", "nutForce", "hubYieldStrength", "shaftYieldStrength", "hubExpansion", "permittedBearingStress", "asternTorque", "peakTorque", "keyTorque", "keyTorqueMost", "thrust", "thrustAstern"} {
		edges["/"+name] = "[0, inf)"
	}
	edges["/nutFaceDiameter"] = "0 or (0.032, inf)" // the hole is the small end of what touches
	edges["/nutFaceShare"] = "0 or [1, 3]"
	edges["/hubHole"] = "[0, 0.075)"
	edges["/nutDiameter"] = "any" // too thin a thread is told of its pitch
	parttest.Edges(t, fitted(), Taper, edges)
}

func TestTaperRefuses(t *testing.T) {
	for where, change := range map[string]func(*TaperInput){
		"/taperLength": func(in *TaperInput) { in.TaperLength, in.HubLength = 0.5, 0 },
		"/nutForm":     func(in *TaperInput) { in.NutForm = "" },
		"/nutDiameter": func(in *TaperInput) { in.NutDiameter = 0 },
		"/nutPitch":    func(in *TaperInput) { in.NutDiameter = 0.002 },
		"/hubDiameter": func(in *TaperInput) { in.HubDiameter = 0.04 },
	} {
		in := fitted()
		change(&in)
		_, err := Taper(in)
		parttest.RefusedAt(t, err, where)
	}
	in := fitted() // 8.5 mm less than 40 at the small end
	in.NutDiameter = 0.0316
	_, err := Taper(in)
	parttest.RefusedAt(t, err, "/nutDiameter")
	in.NutDiameter = 0.0314
	parttest.Must(t, Taper, in)
	in = fitted()
	in.TaperLength, in.HubLength, in.SmallEndDiameter = 0, 0, 0
	_, err = Taper(in)
	parttest.RefusedAt(t, err, "/taperLength")
}

// A nut's push and the push-up that it comes to give one fit, and the two
// bounds are where they say: at the least torque friction holds the hardest
// torque to the last digit, at the most the hub yields or the thread does.
func TestPushAndPushUpAreOneFit(t *testing.T) {
	in := fitted()
	by := parttest.Must(t, Taper, in)
	in.PushUp = by.PushUpUsed
	again := parttest.Must(t, Taper, in)
	parttest.Within(t, "push", again.PushForce, float64(by.PushForce), 1e-12)
	parttest.Within(t, "torque", again.TorqueOfPush, 200, 1e-12)
	parttest.Within(t, "slip", again.FrictionTorque, float64(by.FrictionTorque), 1e-12)
	in = fitted()
	in.NutTorque = by.LeastNutTorque
	parttest.Within(t, "friction at the least torque", parttest.Must(t, Taper, in).FrictionTorque, 500, 1e-9)
	in.NutTorque = by.MostNutTorque
	most := parttest.Must(t, Taper, in)
	parttest.Within(t, "the harder of hub and thread at the most torque", max(most.HubUse, most.ThreadUse), 1, 1e-9)
	in = fitted()
	in.PushUp = by.MostPushUp
	parttest.Within(t, "hub at the most push-up", parttest.Must(t, Taper, in).HubUse, 1, 1e-9)
	in.PushUp = by.LeastPushUp
	parttest.Within(t, "friction at the least push-up", parttest.Must(t, Taper, in).FrictionTorque, 500, 1e-9)
	if !(by.LeastPushUp < by.MostPushUp) {
		t.Errorf("%g m holds, %g m bursts", by.LeastPushUp, by.MostPushUp)
	}
}

// Too small a push-up slips, too large a one yields the hub.
func TestTaperSlipsOrBursts(t *testing.T) {
	in := fitted()
	in.KeyTorque = 0
	for up, want := range map[quantity.Length][2]bool{50e-6: {false, true}, 400e-6: {true, true}, 2000e-6: {true, false}} {
		in.PushUp = up
		out := parttest.Must(t, Taper, in)
		if got := [2]bool{out.MarginPeak >= 1, out.HubUse <= 1}; got != want {
			t.Errorf("%g µm: held %v, hub sound %v; margin %g, use %g", 1e6*up, got[0], got[1], out.MarginPeak, out.HubUse)
		}
	}
}

// What nobody told makes nothing sure.
func TestTaperIsSilentOfWhatIsNotKnown(t *testing.T) {
	nan := func(what string, v float64) {
		t.Helper()
		if !math.IsNaN(v) {
			t.Errorf("%s: %g", what, v)
		}
	}
	in := fitted()
	in.KeyTorque, in.Thrust, in.ThrustAstern, in.Keyed = 0, 0, 0, hub.NoKey
	in.NutTorque = 600
	out := parttest.Must(t, Taper, in)
	nan("astern without a pull", float64(out.MarginAstern))
	nan("nut lost without a pull", float64(out.BareMargin))
	in.NutTorque = 10
	if out = parttest.Must(t, Taper, in); !(out.MarginPeak < 1) {
		t.Errorf("slips even without a pull: %g", out.MarginPeak)
	}
	for _, k := range []hub.Keyed{"", hub.WithKey} { // a key that may hold it
		in.Keyed = k
		out = parttest.Must(t, Taper, in)
		nan("a key that nobody knows", float64(out.MarginPeak))
		nan("what it holds", float64(out.SlipTorque))
		if out.HeldBy != KeyUnknown {
			t.Errorf("held by %s", out.HeldBy)
		}
	}
	in = fitted()
	in.KeyTorque, in.Thrust, in.ThrustAstern = 5000, 0, 0
	if out = parttest.Must(t, Taper, in); out.HeldBy != HeldByKey || out.MarginPeak != 10 {
		t.Errorf("a key that holds by itself: %s, %g", out.HeldBy, out.MarginPeak)
	}
	in = fitted()
	in.HubYieldStrength = 0
	out = parttest.Must(t, Taper, in)
	nan("hub of an unknown metal", float64(out.HubUse))
	nan("most torque with an unknown hub", float64(out.MostNutTorque))
	in = fitted()
	in.MarkWithKey = 0
	nan("one mark alone", float64(parttest.Must(t, Taper, in).KeyHoldOff))
	in = fitted()
	in.BoreFriction = 0.05 // no more than the slope
	out = parttest.Must(t, Taper, in)
	nan("least torque of a cone that holds nothing", float64(out.LeastNutTorque))
	parttest.Within(t, "self-holding", out.SelfHolding, 1, 1e-12)
}

// A pull astern takes from the friction left for the torque; beyond what draws
// the hub off its cone nothing is left, key or not.
func TestPullTakesTheHubOff(t *testing.T) {
	in := fitted()
	in.KeyTorque, in.ThrustAstern, in.Keyed = 0, 1, hub.NoKey
	off := parttest.Must(t, Taper, in).PullOff
	last := math.Inf(1)
	for _, share := range []float64{0.1, 0.5, 0.9, 0.999} {
		in.ThrustAstern = quantity.Force(share) * off
		held := float64(parttest.Must(t, Taper, in).SlipAstern)
		if !(held > 0 && held < last) {
			t.Errorf("at %g of the pull-off force: %g N·m, %g before", share, held, last)
		}
		last = held
	}
	in.KeyTorque, in.Keyed = 5000, hub.WithKey
	if out := parttest.Must(t, Taper, in); out.SlipAstern != 5000 || !(out.MarginAstern > 1) {
		t.Errorf("a hub that is still on: %g N·m, margin %g", out.SlipAstern, out.MarginAstern)
	}
	in.ThrustAstern = 1.001 * off
	if out := parttest.Must(t, Taper, in); out.SlipAstern != 0 || out.MarginAstern != 0 || out.MarginPeak != 0 || !(out.MarginAhead > 1) || !(out.BareMargin < 1) {
		t.Errorf("a hub that is off: %+v", out)
	}
}

func TestTaperAllocatesNothing(t *testing.T) {
	in := fitted()
	parttest.NoAllocations(t, func() { Taper(in) })
}
