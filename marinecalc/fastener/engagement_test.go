package fastener

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// tapped is an M10 bolt of grade 8.8 in ductile iron.
func tapped() EngagementInput {
	return EngagementInput{NominalDiameter: 0.010, Pitch: 0.0015, ThreadForm: Metric, EngagementLength: 0.015, LostThreads: 1, ThreadShare: 1, TensileStrength: 800e6,
		TappedTensileStrength: 448e6, ShearShare: 0.5, Preload: 25e3, TappedDepth: 0.02, TappedMinorDiameter: 0.0086, Insert: NoInsert}
}

func TestEdgesOfEngagement(t *testing.T) {
	edges := map[string]string{"/nominalDiameter": "(0, inf)", "/pitch": "about (0, 0.005)", "/engagementLength": "(0, inf)", "/tensileStrength": "(0, inf)",
		"/threadShare": "(0, 1]", "/shearShare": "(0, 1]", "/tappedMinorDiameter": "about 0 or [0.00805, 0.01)", "/tappedDepth": "about 0 or [0.0135, inf)",
		"/insertDiameter": "[0, inf)", "/insertPitch": "[0, inf)", "/insertLength": "[0, inf)"}
	for _, name := range []string{"lostThreads", "tappedTensileStrength"} {
		edges["/"+name] = "[0, inf)"
	}
	edges["/preload"] = "about [0, 46391.6775215)" // 58.0 mm² (ISO 898-1) at 800 MPa
	edges["/pitch"] = "(0, 0.005)"
	parttest.Edges(t, tapped(), Engagement, edges)
	in := tapped()
	in.Insert, in.InsertDiameter, in.InsertPitch = SolidInsert, 0.014, 0.0015
	edges["/insertDiameter"], edges["/insertPitch"], edges["/insertLength"] = "(0.01, inf)", "(0, 0.007)", "about 0 or [0.0135, inf)"
	parttest.Edges(t, in, Engagement, edges)
}

func TestEngagementRefuses(t *testing.T) {
	for where, change := range map[string]func(*EngagementInput){
		"/threadForm":          func(in *EngagementInput) { in.ThreadForm = "" },
		"/insert":              func(in *EngagementInput) { in.Insert = "glue" },
		"/tappedDepth":         func(in *EngagementInput) { in.TappedDepth = 0.01 },
		"/tappedMinorDiameter": func(in *EngagementInput) { in.TappedMinorDiameter = 0.01 },
	} {
		in := tapped()
		change(&in)
		_, err := Engagement(in)
		parttest.RefusedAt(t, err, where)
	}
}

// Limits of ISO 965-1 and ASME B1.1 as tables print them, to what the tables
// round (10 µm).
func TestTolerancesAgreeWithTables(t *testing.T) {
	for _, m := range []struct{ d, p, major, pitch, minor, tapped float64 }{
		{10, 1.5, 9.732, 8.862, 8.676, 9.206},
		{10, 1.25, 0, 0, 8.912, 9.348},
		{10, 1, 0, 0, 9.153, 9.500},
		{12, 1.75, 0, 0, 10.441, 11.063},
		{12, 1.5, 0, 0, 10.676, 11.216},
		{12, 1.25, 0, 0, 10.912, 11.368},
		{14, 2, 0, 0, 12.210, 12.913},
		{14, 1.5, 0, 0, 12.676, 13.216},
		{6, 1, 5.794, 0, 0, 0},
		{5, 0.8, 4.826, 4.361, 0, 0},
		{4, 0.7, 3.838, 3.433, 0, 0},
	} {
		got := tolerances(m.d/1e3, m.p/1e3, Metric)
		for _, v := range []struct {
			name      string
			got, want float64
		}{{"major", got.major, m.major}, {"pitch", got.pitch, m.pitch}, {"minor", got.minor, m.minor}, {"tapped pitch", got.tappedPitch, m.tapped}} {
			if v.want > 0 {
				parttest.Near(t, v.name, v.got*1e3, v.want, 0.010)
			}
		}
	}
	// Machinery's Handbook, 31st ed., table 6 of internal inch screw thread calculations:
	// 0.2969 in with a pitch of 0.02777778 in, class 2B.
	got := tolerances(0.2969*0.0254, 0.0254/36, Inch)
	parttest.Near(t, "minor of 0.2969 in", got.minor/0.0254, 0.273465, 2e-6)
	// ASME B1.1, 1/2-13 UNC-2A and 2B, from memory.
	got = tolerances(0.0127, 0.0254/13, Inch)
	parttest.Near(t, "major of 1/2-13", got.major/0.0254, 0.4876, 2e-4)
	parttest.Near(t, "pitch of 1/2-13", got.pitch/0.0254, 0.4435, 2e-4)
	parttest.Near(t, "minor of 1/2-13", got.minor/0.0254, 0.434, 5e-4)
	parttest.Near(t, "tapped pitch of 1/2-13", got.tappedPitch/0.0254, 0.4565, 2e-4)
}

// The areas in shear against the profile of the threads cut up along the axis:
// at the crest of one thread, what of a pitch the other's metal takes up.
func TestAreasAgreeWithTheProfile(t *testing.T) {
	out := parttest.Must(t, Engagement, tapped())
	const slices = 200000
	p := 1.5e-3
	// share of a pitch that is metal at a radius, of a thread whose pitch diameter is given: half of it
	// there, and 2·tan 30° more for each step toward its root.
	metal := func(diameter, pitchDiameter, toward float64) float64 {
		n := 0
		half := p/4 + toward*(pitchDiameter-diameter)/2*math.Tan(math.Pi/6)
		for i := range slices {
			if x := (float64(i)+0.5)/slices*p - p/2; math.Abs(x) < half {
				n++
			}
		}
		return float64(n) / slices
	}
	length := 0.015 - p
	bolt := math.Pi * 0.0086 * length * metal(0.0086, float64(out.PitchLeast), 1) // grows toward the axis
	hole := math.Pi * float64(out.MajorLeast) * length * metal(float64(out.MajorLeast), float64(out.PitchMost), -1)
	parttest.Within(t, "bolt", out.BoltShearArea, bolt, 1e-4)
	parttest.Within(t, "tapped", out.TappedShearArea, hole, 1e-4)
}

// Alexander's theory, with strength in shear 0.6 of that in tension and factors
// for bending threads, from memory: what is found here is on its safe side.
func TestAlexanderFindsNoLess(t *testing.T) {
	for _, tensile := range []quantity.Stress{150e6, 300e6, 448e6, 600e6, 900e6} {
		for _, pitch := range []quantity.Length{0.001, 0.00125, 0.0015} {
			in := tapped()
			in.TappedTensileStrength, in.Pitch, in.TappedMinorDiameter = tensile, pitch, 0
			out := parttest.Must(t, Engagement, in)
			ratio := float64(out.TappedShearArea) * float64(tensile) / (float64(out.BoltShearArea) * 800e6)
			bolt, hole := 0.897, 0.897
			if ratio > 1 && ratio < 2.2 {
				bolt = 5.594 - 13.682*ratio + 14.107*ratio*ratio - 6.057*math.Pow(ratio, 3) + 0.9353*math.Pow(ratio, 4)
			}
			if ratio > 0.4 && ratio < 1 {
				hole = 0.728 + 1.769*ratio - 2.896*ratio*ratio + 1.296*math.Pow(ratio, 3)
			}
			theirs := min(0.6*800e6*float64(out.BoltShearArea)*bolt, 0.6*float64(tensile)*float64(out.TappedShearArea)*hole)
			if ours := float64(out.StrippingLoad); ours > theirs || ours < 0.7*theirs {
				t.Errorf("%g MPa, pitch %g: %g N here, %g N by Alexander", tensile/1e6, pitch, ours, theirs)
			}
		}
	}
}

// With the engagement that is wanted the threads strip just as the bolt
// breaks; with more turns lost it is more.
func TestEngagementWantedIsJustEnough(t *testing.T) {
	for _, insert := range []Insert{NoInsert, WireInsert, SolidInsert} {
		in := tapped()
		in.Insert, in.InsertDiameter, in.InsertPitch, in.InsertLength, in.TappedDepth = insert, 0.014, 0.0015, 0.1, 0
		first := parttest.Must(t, Engagement, in)
		in.EngagementLength = first.EngagementWanted
		parttest.Within(t, string(insert), parttest.Must(t, Engagement, in).EngagementMargin, 1, 1e-12)
		in.LostThreads = 2
		parttest.Near(t, "another turn lost", parttest.Must(t, Engagement, in).EngagementWanted, float64(first.EngagementWanted)+0.0015, 1e-12)
	}
}

// An insert spreads the load over a wider thread, and holds more in soft metal.
func TestInsertsHoldMore(t *testing.T) {
	in := tapped()
	in.TappedTensileStrength = 200e6
	bare := parttest.Must(t, Engagement, in)
	in.Insert, in.InsertLength = WireInsert, in.EngagementLength
	wire := parttest.Must(t, Engagement, in)
	if !(wire.TappedStripping > bare.TappedStripping) || wire.BoltStripping != bare.BoltStripping {
		t.Errorf("bare %g N, with wire %g N", bare.TappedStripping, wire.TappedStripping)
	}
	if bare.StripsFirst != TappedStrips {
		t.Errorf("in soft metal %s", bare.StripsFirst)
	}
}

// An insert of which nobody told the length may be shorter than the bolt goes in:
// its outside is not judged. One that is shorter is refused.
func TestInsertOfUnknownLength(t *testing.T) {
	for _, insert := range []Insert{WireInsert, SolidInsert} {
		in := tapped()
		in.Insert, in.InsertDiameter, in.InsertPitch = insert, 0.014, 0.0015
		out := parttest.Must(t, Engagement, in)
		if !math.IsNaN(float64(out.EngagementMargin)) || out.StripsFirst != StripsNotKnown {
			t.Errorf("%s: margin %g, %s", insert, out.EngagementMargin, out.StripsFirst)
		}
		in.InsertLength = in.EngagementLength
		if out = parttest.Must(t, Engagement, in); math.IsNaN(float64(out.EngagementMargin)) {
			t.Errorf("%s: length told: %+v", insert, out)
		}
		in.InsertLength = in.EngagementLength / 2
		_, err := Engagement(in)
		parttest.Says(t, err, "an insert 7.5 mm long", "15 mm of bolt", "/insertLength")
	}
}

// A metal nobody named is not unbreakable, and a bolt whose own thread strips
// is told so even then.
func TestUnknownMetalIsNotJudged(t *testing.T) {
	in := tapped()
	in.TappedTensileStrength = 0
	out := parttest.Must(t, Engagement, in)
	if !math.IsNaN(float64(out.EngagementMargin)) || !math.IsNaN(float64(out.StripMargin)) || out.StripsFirst != StripsNotKnown {
		t.Errorf("margin %g, %g, %s", out.EngagementMargin, out.StripMargin, out.StripsFirst)
	}
	in.EngagementLength = 0.004
	out = parttest.Must(t, Engagement, in)
	if !(out.EngagementMargin < 1) || out.StripsFirst != BoltStrips {
		t.Errorf("a few turns: margin %g, %s", out.EngagementMargin, out.StripsFirst)
	}
	in = tapped()
	in.EngagementLength, in.LostThreads = 0.0015, 2
	if out = parttest.Must(t, Engagement, in); out.StrippingLoad != 0 || !math.IsNaN(float64(out.EngagementWanted)) {
		t.Errorf("no turn bears: %g N", out.StrippingLoad)
	}
}

func TestEngagementAllocatesNothing(t *testing.T) {
	in := tapped()
	parttest.NoAllocations(t, func() { Engagement(in) })
}
