package coupling

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/shaft"
)

// pressed is a steel flange pressed on a stainless shaft of 30 mm.
func pressed() BoreInput {
	return BoreInput{HoldMethod: Interference, ShaftDiameter: 0.03, EngagedLength: 0.06, BoreFriction: 0.15, ShaftTorque: 170, AsternTorque: 150, PeakTorque: 340,
		Thrust: 2500, AsternThrust: 0.7, ThrustAstern: 1800, FoulPull: 6000, Interference: 30e-6, SmoothingLoss: 6e-6, HubDiameter: 0.06, Bore: 0.008, HubModulus: 207e9, HubPoisson: 0.29,
		ElasticModulus: 193e9, ShaftPoisson: 0.3, HubExpansion: 11.7e-6, RoomTemperature: 293.15, FittingClearance: 30e-6, HubYieldStrength: 250e6, SetScrews: quantity.Ratio(math.NaN()), SplitGap: quantity.Length(math.NaN()), SeatingTorque: quantity.Torque(math.NaN())}
}

func split() BoreInput {
	in := pressed()
	in.HoldMethod, in.ClampFactor, in.PinchBolts, in.PinchTorque, in.PinchDiameter, in.NutFactor = SplitClamp, 2, 4, 45, 0.01, 0.2
	in.PinchPitch, in.PinchYieldStrength, in.PinchTensileStrength = 0.0015, 640e6, 800e6 // property class 8.8: ISO 898-1
	return in
}

func screwed() BoreInput {
	in := pressed()
	in.HoldMethod, in.SetScrews, in.ScrewHolding, in.FurtherScrew = SetScrews, 2, 6600, 0.5
	in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = 0.008, 0.007, 0.045, 250e6, 205e6
	return in
}

func coned() BoreInput {
	in := pressed()
	in.HoldMethod, in.TaperRatio, in.PinchClamp = TaperNut, 0.1, 30e3
	return in
}

// common are the edges of what every way of holding checks.
func common(own map[string]string) map[string]string {
	all := map[string]string{"/shaftTorque": "(0, inf)", "/boreFriction": "(0, 1)", "/asternThrust": "[0, 2]", "/furtherScrew": "[0, 1]", "/taperRatio": "[0, 0.25]", "/nutFaceShare": "0 or [1, 3]",
		"/hubPoisson": "[0, 0.5]", "/shaftPoisson": "[0, 0.5]", "/pinchBolts": "[0, 12]", "/setScrews": "NaN or [0, 12]", "/splitGap": "NaN or [0, inf)", "/interference": "NaN or [-0.01, 0.01]", "/seatingTorque": "NaN or [0, inf)", "/shaftDiameter": "(0, inf)", "/hubDiameter": "0 or (0.03, inf)", "/heightShare": "[0, inf)", "/seatShare": "[0, inf)", "/keySeat": "[0, inf)"}
	for _, name := range []string{"asternTorque", "peakTorque", "thrust", "thrustAstern", "foulPull", "engagedLength", "keyWidth", "keyHeight", "keyLength", "keyYieldStrength",
		"shaftYieldStrength", "hubYieldStrength", "clampFactor", "pinchClamp", "pinchTorque", "pinchDiameter", "nutFactor", "pinchPitch", "pinchYieldStrength", "pinchTensileStrength", "shaftTensileStrength", "tableSeating", "screwHolding", "smoothingLoss",
		"bore", "nutFaceDiameter", "permittedBearingStress", "hubModulus", "elasticModulus", "hubExpansion", "fittingClearance", "roomTemperature"} {
		all["/"+name] = "[0, inf)"
	}
	for where, edges := range own {
		all[where] = edges
	}
	return all
}

func TestEdgesOfBore(t *testing.T) {
	// A count of set screws asks for what one holds, so that none are given here.
	in := pressed()
	in.ScrewHolding = 5000
	parttest.Edges(t, in, Bore, common(map[string]string{"/hubDiameter": "(0.03, inf)", "/bore": "[0, 0.03)", "/interference": "[-0.01, 0.0003]",
		"/engagedLength": "(0, inf)", "/hubModulus": "(0, inf)", "/elasticModulus": "(0, inf)"}))
	in = split()
	in.ScrewHolding = 5000
	parttest.Edges(t, in, Bore, common(map[string]string{"/clampFactor": "(0, inf)", "/pinchBolts": "[1, 12]", "/pinchTorque": "(0, inf)", "/pinchDiameter": "(0, inf)", "/nutFactor": "(0, inf)"}))
	in = coned()
	in.ScrewHolding = 5000
	parttest.Edges(t, in, Bore, common(map[string]string{"/engagedLength": "(0, 0.3)", "/taperRatio": "(0, 0.25]", "/nutFaceDiameter": "0 or (0.024, inf)"}))
	in = screwed()
	parttest.Edges(t, in, Bore, common(map[string]string{"/screwHolding": "(0, inf)", "/keyLength": "(0, inf)", "/keyWidth": "[0, 0.015]", "/keyHeight": "[0, 0.015]", "/heightShare": "0 or [0.3, 2]", "/seatShare": "0 or [0.3, 0.8]", "/keySeat": "[0, inf)"}))
}

func TestBoreRefusesWhatIsMissing(t *testing.T) {
	for where, change := range map[string]func(*BoreInput){
		"/holdMethod":    func(in *BoreInput) { in.HoldMethod = "glue" },
		"/interference":  func(in *BoreInput) { in.Interference = quantity.Length(math.NaN()) },
		"/interference ": func(in *BoreInput) { in.Interference = 0.002 },
		"/hubDiameter":   func(in *BoreInput) { in.HubDiameter = 0.03 },
		"/screwHolding":  func(in *BoreInput) { in.SetScrews = 1 },
		"/keyLength":     func(in *BoreInput) { in.KeyWidth = 0.008 },
		"/keyed":         func(in *BoreInput) { in.Keyed = "perhaps" },
		"/bore":          func(in *BoreInput) { in.Bore = 0.03 },
		"/engagedLength": func(in *BoreInput) { in.EngagedLength = 0 },
	} {
		in := pressed()
		change(&in)
		_, err := Bore(in)
		parttest.RefusedAt(t, err, strings.TrimSpace(where))
	}
	in := split()
	in.PinchTorque = 0
	_, err := Bore(in)
	parttest.RefusedAt(t, err, "/pinchTorque")
	in = coned()
	in.EngagedLength = 0.31
	_, err = Bore(in)
	parttest.RefusedAt(t, err, "/engagedLength")
	thread := coned() // 30 mm less 6 at the small end
	thread.PinchClamp, thread.PinchTorque, thread.NutFactor, thread.PinchDiameter = 0, 100, 0.2, 0.0241
	_, err = Bore(thread)
	parttest.RefusedAt(t, err, "/pinchDiameter")
	thread.PinchDiameter = 0.0239
	parttest.Must(t, Bore, thread)
}

// Little interference slips, much of it yields the boss: the two limits stand
// on either side.
func TestBoreSlipsOrYields(t *testing.T) {
	in := pressed()
	in.Keyed = hub.NoKey
	for interference, want := range map[quantity.Length][2]bool{ // held in a shock, boss sound
		10e-6: {false, true}, 30e-6: {true, true}, 80e-6: {true, false},
	} {
		in.Interference = interference
		out := parttest.Must(t, Bore, in)
		if got := [2]bool{out.MarginPeak >= 1, out.HubUse <= 1}; got != want {
			t.Errorf("%g µm: held %v, sound %v; margin %g, use %g", interference*1e6, got[0], got[1], out.MarginPeak, out.HubUse)
		}
	}
	in.Interference = in.SmoothingLoss
	if out := parttest.Must(t, Bore, in); out.Pressed != 0 || out.SlipTorque != 0 || out.PullOff != 0 {
		t.Errorf("no interference is left, and it holds: %+v", out)
	}
}

// What nobody told makes nothing sure: neither a margin over 1 without the
// pull, nor a key without its strengths, nor set screws without the pull.
func TestBoreIsSilentOfWhatIsNotKnown(t *testing.T) {
	nan := func(what string, v quantity.Ratio) {
		t.Helper()
		if !math.IsNaN(float64(v)) {
			t.Errorf("%s: %g", what, v)
		}
	}
	in := pressed()
	in.Thrust, in.ThrustAstern = 0, 0
	out := parttest.Must(t, Bore, in)
	nan("astern without a pull", out.MarginAstern)
	nan("shock without a pull", out.MarginPeak)
	nan("pull-off without a pull", out.PullMargin)
	in.PeakTorque = 5000
	nan("a shock that a key may hold", parttest.Must(t, Bore, in).MarginPeak)
	in.Keyed = hub.NoKey
	if out = parttest.Must(t, Bore, in); !(out.MarginPeak < 1) {
		t.Errorf("a shock that slips even so: %g", out.MarginPeak)
	}
	in = pressed()
	in.AsternTorque = 0
	nan("pull-off without the torque", parttest.Must(t, Bore, in).PullMargin)
	in = screwed()
	in.HubYieldStrength = 0
	out = parttest.Must(t, Bore, in)
	nan("key in an unknown flange", out.MarginAhead)
	if out.HeldBy != HeldByNothing {
		t.Errorf("held by %q", out.HeldBy)
	}
	in = split()
	in.KeyWidth, in.KeyLength = 0.008, 0.045 // and no strengths: friction at least
	if out = parttest.Must(t, Bore, in); out.HeldBy != KeyUnknown || !math.IsNaN(float64(out.SlipTorque)) || math.Abs(float64(out.MarginAhead)-float64(out.FrictionTorque)/float64(in.ShaftTorque)) > 1e-9 {
		t.Errorf("held by %q: %+v", out.HeldBy, out)
	}
	in = screwed()
	in.KeyWidth, in.KeyLength, in.KeyHeight, in.Keyed = 0, 0, 0, hub.NoKey // set screws hold no torque
	if out = parttest.Must(t, Bore, in); out.HeldBy != ScrewsAlone || out.MarginAhead != 0 {
		t.Errorf("set screws alone: held by %q, %g", out.HeldBy, out.MarginAhead)
	}
	in.Keyed = ""
	if out = parttest.Must(t, Bore, in); out.HeldBy != HeldByNothing || !math.IsNaN(float64(out.MarginAhead)) {
		t.Errorf("set screws, and perhaps a key: held by %q, %g", out.HeldBy, out.MarginAhead)
	}
	in = screwed()
	in.Keyed = hub.NoKey
	_, err := Bore(in)
	parttest.RefusedAt(t, err, "/keyed")
}

// The key is key-strength's key, and where it bears the torque all friction
// holds against the pull.
func TestBoreHandsTheKeyAlong(t *testing.T) {
	in := screwed()
	out := parttest.Must(t, Bore, in)
	k := parttest.Must(t, shaft.KeyStrength, shaft.KeyStrengthInput{ShaftDiameter: 0.03, ShaftTorque: 170, KeyWidth: 0.008, KeyHeight: 0.007, KeyLength: 0.045,
		KeyYieldStrength: 250e6, ShaftYieldStrength: 205e6, HubYieldStrength: 250e6})
	parttest.Within(t, "margin ahead", out.MarginAhead, float64(k.SteadySafety), 1e-12)
	parttest.Within(t, "screws", out.ScrewHold, 1.5*6600, 1e-12)
	parttest.Within(t, "pull-off", out.PullMargin, 1.5*6600/1800, 1e-12)
	in = split()
	without := parttest.Must(t, Bore, in)
	in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = 0.008, 0.007, 0.045, 250e6, 205e6
	with := parttest.Must(t, Bore, in)
	if !(with.PullOff > without.PullOff) || float64(with.PullOff) != float64(with.Pressed)*0.15 {
		t.Errorf("pull-off %g with the key, %g without, of %g pressed", with.PullOff, without.PullOff, with.Pressed)
	}
}

func TestBoreAllocatesNothing(t *testing.T) {
	unknown, none := screwed(), split()
	unknown.KeyYieldStrength = 0
	none.KeyYieldStrength, none.ShaftYieldStrength = 250e6, 205e6
	for _, in := range []BoreInput{pressed(), split(), screwed(), coned(), unknown, none} {
		parttest.NoAllocations(t, func() { Bore(in) })
	}
}

// A key holds no shaft that the pull astern draws out of its flange.
func TestPullTakesTheShaftOut(t *testing.T) {
	in := screwed() // the screws hold along the shaft, the key against turning
	in.ThrustAstern = 1
	off := parttest.Must(t, Bore, in).PullOff
	for _, c := range []struct {
		share float64
		holds bool
	}{{0.99, true}, {1.01, false}} {
		in.ThrustAstern = quantity.Force(c.share) * off
		out := parttest.Must(t, Bore, in)
		if out.SlipAstern > 0 != c.holds || out.MarginPeak > 0 != c.holds {
			t.Errorf("at %g of the pull-off force: %g N·m astern, margin in a shock %g", c.share, out.SlipAstern, out.MarginPeak)
		}
		if !(out.MarginAhead > 0) {
			t.Errorf("at %g of the pull-off force: margin ahead %g", c.share, out.MarginAhead)
		}
	}
}

// just is a split clamp whose figures are exact in binary: it grips with 5000 N at a
// radius of 1/64 m, which is 4000 N round and 3000 N along together.
func just() BoreInput {
	in := split()
	in.Keyed, in.BoreFriction, in.ShaftDiameter, in.PinchClamp = hub.NoKey, 1./8, 1./32, 5000
	in.ShaftTorque, in.AsternTorque, in.PeakTorque = 5000./64, 4000./64, 4000./64
	in.ThrustAstern, in.FoulPull = 3000, 3000
	return in
}

// What holds just as much as is asked holds; what turns at the least more holds
// nothing on, however little pulls.
func TestBoreHoldsJustAsMuch(t *testing.T) {
	in := just()
	if out := parttest.Must(t, Bore, in); out.MarginAhead != 1 || out.MarginAstern != 1 || out.MarginPeak != 1 || out.PullMargin != 1 || out.FoulMargin != 1 {
		t.Errorf("just: %+v", out)
	}
	in.ShaftTorque += 0.01
	if out := parttest.Must(t, Bore, in); !(out.MarginAhead < 1) || !math.IsNaN(float64(out.PullMargin)) || !math.IsNaN(float64(out.FoulMargin)) {
		t.Errorf("it turns, and stays on by %g and %g", out.PullMargin, out.FoulMargin)
	}
	like := parttest.Must(t, Bore, just())
	if trial, _ := BoreTrial(in, &like); trial.PullMargin != 0 || trial.FoulMargin != 0 {
		t.Errorf("a trial that turns stays on by %g and %g", trial.PullMargin, trial.FoulMargin)
	}
	in = just()
	in.PeakTorque, in.FoulPull = 4800./64, 1400 // 7, 24, 25
	for _, foul := range []quantity.Force{1400, 1000} {
		in.FoulPull = foul
		if out := parttest.Must(t, Bore, in); !(out.MarginPeak < 1) || !math.IsNaN(float64(out.FoulMargin)) || out.PullMargin != 1 {
			t.Errorf("it turns in a shock, and stays on by %g; without one by %g", out.FoulMargin, out.PullMargin)
		}
	}
	in = just()
	in.PinchYieldStrength, in.PinchTensileStrength, in.PinchDiameter, in.PinchPitch = 0, 0, 0.005, 0.0008 // 4.6 would yield
	if out := parttest.Must(t, Bore, in); out.HeldBy != ClampUnsure || !math.IsNaN(float64(out.MarginAhead)) {
		t.Errorf("bolts of no known grade hold %g by %s", out.MarginAhead, out.HeldBy)
	}
}

// A key of which nobody told may bear the torque and leave all friction for the pull:
// a margin below 1 is not known where that would hold, and is where it would not.
func TestPullBesideAKeyThatNobodyTold(t *testing.T) {
	for pull, want := range map[quantity.Force]float64{2500: 1.2, 3000: 1, 4000: math.NaN(), 5000: math.NaN(), 6000: 0.5} {
		in := just()
		in.Keyed, in.ThrustAstern = "", pull
		out := parttest.Must(t, Bore, in)
		if got := float64(out.PullMargin); got != want && !(math.IsNaN(got) && math.IsNaN(want)) {
			t.Errorf("%g N: %g, want %g", pull, got, want)
		}
		if pull == 5000 && !math.IsNaN(float64(out.MarginAstern)) { // all friction holds the pull: it is not drawn out
			t.Errorf("just held: margin astern %g", out.MarginAstern)
		}
	}
	in := just() // slips astern, and what pulls nobody told
	in.Keyed, in.AsternTorque, in.Thrust, in.ThrustAstern = "", 100, 0, 0
	if out := parttest.Must(t, Bore, in); !math.IsNaN(float64(out.PullMargin)) {
		t.Errorf("no pull told, perhaps a key: %g", out.PullMargin)
	}
	in.Keyed = hub.NoKey
	if out := parttest.Must(t, Bore, in); out.PullMargin != 0 {
		t.Errorf("no pull told, no key, and it slips: %g", out.PullMargin)
	}
	// What the estimates do not tell no trial tells.
	like := parttest.Must(t, Bore, in)
	like.MarginPeak = quantity.Ratio(math.NaN())
	if trial, _ := BoreTrial(in, &like); !math.IsNaN(float64(trial.MarginPeak)) {
		t.Errorf("a trial tells %g of a shock", trial.MarginPeak)
	}
	// The weakest of a key's parts that is known bounds what it holds.
	in = pressed()
	in.Interference, in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = 10e-6, 0.008, 0.007, 0.045, 1e6, 0
	out := parttest.Must(t, Bore, in)
	parttest.Within(t, "friction, or a key of lead", out.MarginAhead, float64(out.FrictionTorque)/170, 1e-12)
	if !(out.MarginAhead < 1) || !(float64(out.KeyTorqueMost) < float64(out.FrictionTorque)) {
		t.Errorf("ahead %g, key %g N·m at the most", out.MarginAhead, out.KeyTorqueMost)
	}
}

// A keyed taper whose pull just draws its cone off, or just brings its nut's thread to
// yield, is still on; with the nut of no known thread it is not known.
func TestPullThatATapersNutJustHolds(t *testing.T) {
	keyed := coned()
	keyed.KeyWidth, keyed.KeyHeight, keyed.KeyLength, keyed.KeyYieldStrength, keyed.ShaftYieldStrength = 0.008, 0.007, 0.045, 250e6, 205e6
	bare := parttest.Must(t, Bore, keyed)
	straight := keyed
	straight.HoldMethod = SetScrews
	parttest.Within(t, "key at the mean diameter", float64(bare.KeyTorque), 27./30*float64(parttest.Must(t, Bore, straight).KeyTorque), 1e-12)
	parttest.Within(t, "cone alone, of the torque", float64(bare.ConeMargin), float64(bare.FrictionTorque)/170, 1e-12)
	in := keyed
	in.ThrustAstern = bare.BareOff
	if out := parttest.Must(t, Bore, in); out.PullMargin != 1 {
		t.Errorf("the cone just holds, of its nut nothing is known: %g", out.PullMargin)
	}
	in.ThrustAstern *= 1.01
	if out := parttest.Must(t, Bore, in); !math.IsNaN(float64(out.MarginAstern)) || !math.IsNaN(float64(out.PullMargin)) {
		t.Errorf("a nut of which nothing is known: %g astern, pull %g", out.MarginAstern, out.PullMargin)
	}
	loose := in
	loose.KeyWidth, loose.Keyed = 0, hub.NoKey
	if out := parttest.Must(t, Bore, loose); out.MarginAstern != 0 {
		t.Errorf("likewise with no key: %g astern", out.MarginAstern)
	}
	in.PinchDiameter, in.PinchPitch = 0.024, 0.002
	nut := parttest.Must(t, Bore, in).NutHold
	for share, on := range map[quantity.Force]bool{0.5: true, 1: true, 1.01: false} {
		in.ThrustAstern = share * nut
		out := parttest.Must(t, Bore, in)
		if on {
			parttest.Within(t, "by its nut", float64(out.PullMargin), 1/float64(share), 1e-12)
		}
		if out.MarginAstern > 0 != on || math.IsNaN(float64(out.MarginAstern)) {
			t.Errorf("%g of what the nut holds: %g astern", share, out.MarginAstern)
		}
	}
}
