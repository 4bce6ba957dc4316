package catalogue_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A reading at the coupling goes on to the mounts: angle and offset come from
// the coupling's sheet with their ranges, and another reading gives other
// moves.
func TestReadingsReachTheMounts(t *testing.T) {
	moves := testboat.Page(t, testboat.Mounted(t, "0.42", "9 mm"), "mount-moves")
	for _, name := range []string{"gapVertical", "gapHorizontal", "offsetVertical", "offsetHorizontal"} {
		if i := moves.Input(name); i == nil || i.Origin != "earlier result" || i.Range == "" {
			t.Errorf("%s: %+v", name, i)
		}
	}
	if i := moves.Input("mounts"); i == nil || i.Origin != "boat" || i.Text != "4 entries" {
		t.Errorf("mounts: %+v", i)
	}
	// Slope 0.12/102, engine flange low by 0.3 mm: 1.3 mm, but the nut is turned
	// by quarter flats, and what a hand sets has no range.
	front := moves.Cell("moves", 0, "raise")
	if want := 0.12e-3/0.102*0.85 + 0.3e-3; front == nil || math.Abs(*front.SI-want) > 3*1.5e-3/24 || math.Abs(math.Remainder(*front.SI, 1.5e-3/24)) > 1e-9 || front.Low != nil {
		t.Fatalf("front port: %+v", front)
	}
	if nut := moves.Cell("moves", 0, "nut"); !strings.HasSuffix(nut.Text, "flats up") || nut.SI != nil {
		t.Errorf("nut: %+v", nut)
	}
	if v := moves.Verdict("soft-foot"); v == nil || v.Word.Plain() != "within" {
		t.Errorf("soft foot: %+v", v)
	}
	other := testboat.Page(t, testboat.Mounted(t, "0.36", "9 mm"), "mount-moves")
	if c := other.Cell("moves", 0, "raise"); *c.SI >= *front.SI {
		t.Errorf("a smaller gap raises the front end by %g, before %g", *c.SI, *front.SI)
	}
}

// A stud that runs out of travel is named, what is left is judged by the
// maker's figure, and the sheet says what to do.
func TestMountsOutOfTravel(t *testing.T) {
	moves := testboat.Page(t, testboat.Mounted(t, "0.42", "0.1 mm"), "mount-moves")
	if c := moves.Cell("moves", 3, "stop"); c == nil || c.Text != "top of its travel" {
		t.Errorf("stop: %+v", c)
	}
	if !slices.ContainsFunc(moves.Next, func(n sheet.Next) bool { return strings.Contains(n.Text, "shim the engine beds") }) {
		t.Errorf("no advice to shim: %+v", moves.Next)
	}
	if v := moves.Verdict("rigid-gap-per-diameter"); v == nil || v.Authority != "maker's figure" || v.On != "worstGapPerDiameterAfter" || v.Word != "within" {
		t.Errorf("%+v", v)
	}
}

// Without the rim offset only the angle is cured, and the sheet says so.
func TestMountsWithoutOffset(t *testing.T) {
	s := testboat.Run(t, "mount-moves", `{"couplingDiameter": "100 mm", "gapVertical": "0.1 mm", "gapHorizontal": "0 mm",
		"mounts": [{"name": "front", "forward": "900 mm", "starboard": "0 mm"}, {"name": "aft", "forward": "300 mm", "starboard": "0 mm"}]}`, marinecalc.Options{NoRanges: true})
	if c := s.Cell("moves", 0, "raise"); math.Abs(*c.SI-0.9e-3) > 1e-12 { // about the coupling, which stays
		t.Errorf("front: %+v", c)
	}
	if c := s.Cell("moves", 0, "nut"); c.Text != "" {
		t.Errorf("nut without a thread: %+v", c)
	}
	if s.Result("offsetAfter") != nil || s.Verdict("soft-foot").Word != "not measured" {
		t.Error("an offset or a soft foot was found that nobody read")
	}
	if !slices.ContainsFunc(s.Next, func(n sheet.Next) bool { return strings.Contains(n.Text, "rim offset") }) {
		t.Errorf("no advice to read the rim: %+v", s.Next)
	}
}

// An angle cured about the coupling keeps its offset; about the mounts it moves
// it, and that is judged.
func TestOffsetThatAMoveMakes(t *testing.T) {
	for about, word := range map[string]string{"coupling": "within", "mounts": "beyond"} {
		s := testboat.Run(t, "mount-moves", `{"couplingKind": "rigid", "couplingDiameter": "100 mm", "gapVertical": "0.1 mm", "gapHorizontal": "0 mm", "turnAbout": "`+about+`",
			"mounts": [{"name": "front", "forward": "900 mm", "starboard": "0 mm", "threadPitch": "1.5 mm"}, {"name": "aft", "forward": "300 mm", "starboard": "0 mm", "threadPitch": "1.5 mm"}]}`, marinecalc.Options{})
		if v := s.Verdict("offset-made"); v == nil || string(v.Word) != word {
			t.Errorf("about the %s: %+v", about, v)
		}
	}
}

// A gap typed bare is the difference of two blades, each as far off as the
// feeler: it is never drawn as a certainty.
func TestBareGapsHaveTheirGauge(t *testing.T) {
	s := testboat.Run(t, "mount-moves", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "gapVertical": "0.2 mm", "gapHorizontal": "0 mm", "gapRunOut": "0 mm",
		"mounts": [{"name": "front", "forward": "900 mm", "starboard": "0 mm", "footGap": "0.058 mm"}, {"name": "aft", "forward": "300 mm", "starboard": "0 mm", "footGap": "0.01 mm"}]}`, marinecalc.Options{})
	if i := s.Input("gapVertical"); i == nil || i.Range != "0.16 to 0.24 mm" {
		t.Errorf("%+v", i)
	}
	r := s.Result("gapVerticalAfter")
	if _, high, ok := r.Range(); !ok || math.Abs(high-0.02e-3*2*(1-math.Sqrt(0.05))) > 1e-6 { // 97.5 % of a triangle lies up to 1-√0.05 of its half width
		t.Errorf("what is left: %+v", r)
	}
	if v := s.Verdict("soft-foot"); v == nil || !v.Guide || v.Word.Plain() != "cannot tell" {
		t.Errorf("0.058 mm of 0.06 by a feeler: %+v", v)
	}
}

// What one move leaves is off by what the gauge does not see, and judged so: a
// coarse gauge cannot tell, a fine one can.
func TestWhatIsLeftIsTheReadingsError(t *testing.T) {
	left := func(accuracy string) *marinecalc.Sheet {
		return testboat.Run(t, "mount-moves", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "gapVertical": "0.2 mm ± `+accuracy+`",
			"gapHorizontal": "-0.06 mm ± `+accuracy+`", "offsetVertical": "0.1 mm ± 0.005 mm", "offsetHorizontal": "-0.05 mm ± 0.005 mm",
			"gapRunOut": "0 mm", "offsetRunOut": "0 mm", "mounts": [{"name": "fore", "forward": "850 mm", "starboard": "0 mm"}, {"name": "aft", "forward": "250 mm", "starboard": "0 mm"}]}`, marinecalc.Options{})
	}
	for accuracy, word := range map[string]string{"0.5 mm": "cannot tell", "0.01 mm": "within"} {
		if v := left(accuracy).Verdict("rigid-gap-per-diameter"); v == nil || string(v.Word) != word {
			t.Errorf("read to ±%s: %+v, want %s", accuracy, v, word)
		}
	}
	// Two readings within ±a, each rectangular (JCGM 101:2008, 6.4.2), lie in a
	// square. Of it the part √(ρ²-1) + ρ²·(π/4 - arccos(1/ρ)) lies within the
	// radius ρ·a, for ρ from 1 to √2 (plane geometry): 97.5 % of it do so up to
	// the interval's end.
	const a = 0.05e-3
	r := left("0.05 mm").Result("gapDifferenceAfter")
	if r == nil || r.Low == nil || *r.SI != 0 {
		t.Fatalf("gap difference left: %+v", r)
	}
	rho := *r.High / a
	if part := math.Sqrt(rho*rho-1) + rho*rho*(math.Pi/4-math.Acos(1/rho)); !(math.Abs(part-0.975) < 0.008) {
		t.Errorf("%g of the readings lie up to %g m, want 0.975", part, *r.High)
	}
}

// Moves made of readings that contradict each other are no moves: the sheet says
// so first, and neither that nothing needs to be moved nor how.
func TestNoMountIsMovedOnAContradiction(t *testing.T) {
	const stand = `"mounts": [{"name": "front port", "forward": "700 mm", "starboard": "-200 mm"}, {"name": "front starboard", "forward": "700 mm", "starboard": "200 mm"}, {"name": "aft port", "forward": "200 mm", "starboard": "-200 mm"}, {"name": "aft starboard", "forward": "200 mm", "starboard": "200 mm"}],
		"couplingDiameter": "100 mm", "couplingKind": "rigid", "gapVertical": "0.3 mm", "gapHorizontal": "0 mm"`
	for use, beyond := range map[string]bool{"20 %": false, "400 %": true} {
		s := runInput(t, "mount-moves", `{`+stand+`, "closureUse": "`+use+`"}`, "metric")
		if (wordOf(s, "moves-readings-close") == "beyond") != beyond || advised(s, "Move nothing by this table") != beyond || advised(s, "After each pair read the coupling") == beyond {
			t.Errorf("%s: %s", use, wordOf(s, "moves-readings-close"))
		}
	}
}

// At one time: a disagreement past what the gauge explains is told, and what is past
// three times that takes back every verdict on the coupling.
func TestMisreadGapMovesNoMount(t *testing.T) {
	for _, c := range []struct {
		top   float64
		reads string
		moot  bool
	}{{0.40, "OK", false}, {0.47, "OK", false}, {0.55, "over the limit", false}, {0.63, "over the limit", false}, {0.65, "over the limit", true}, {1.40, "over the limit", true}} {
		s := testboat.Run(t, "coupling-alignment", `{"couplingDiameter": "100 mm", "couplingKind": "rigid", "knownFaceRunOut": "0 mm", "readings": `+fourGaps(c.top, 0.40, 0.40, 0.40)+`}`, marinecalc.Options{})
		if v := s.Verdict("coupling-closes"); v == nil || v.Reads != c.reads {
			t.Errorf("%g mm: %+v, want %s", c.top, v, c.reads)
		}
		if v := s.Verdict("rigid-gap-per-diameter"); v == nil || v.Moot != c.moot || (s.Result("worstGap") == nil) != c.moot {
			t.Errorf("%g mm: %+v", c.top, v)
		}
		for _, a := range s.Next {
			if c.reads != "OK" && strings.Contains(a.Text, "Move the mounts") {
				t.Errorf("%g mm: %s", c.top, a.Text)
			}
		}
	}
}
