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
	// Slope 0.12/102, engine flange low by 0.3 mm.
	front := moves.Cell("moves", 0, "raise")
	if want := 0.12e-3/0.102*0.85 + 0.3e-3; front == nil || math.Abs(*front.SI-want) > 1e-9 || front.Low == nil || !(*front.Low < want && want < *front.High) {
		t.Fatalf("front port: %+v", front)
	}
	if nut := moves.Cell("moves", 0, "nut"); nut.Text != "5¼ flats up" || nut.SI != nil {
		t.Errorf("nut: %+v", nut)
	}
	if v := moves.Verdict("soft-foot"); v == nil || v.Word != "within" {
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
	if v := moves.Verdict("rigid-gap-per-diameter"); v == nil || v.Authority != "maker's figure" || v.On != "gapPerDiameterAfter" || v.Word != "within" {
		t.Errorf("%+v", v)
	}
}

// Without the rim offset only the angle is cured, and the sheet says so.
func TestMountsWithoutOffset(t *testing.T) {
	s := testboat.Run(t, "mount-moves", `{"couplingDiameter": "100 mm", "gapVertical": "0.1 mm", "gapHorizontal": "0 mm",
		"mounts": [{"name": "front", "forward": "900 mm", "starboard": "0 mm"}, {"name": "aft", "forward": "300 mm", "starboard": "0 mm"}]}`, marinecalc.Options{NoRanges: true})
	if c := s.Cell("moves", 0, "raise"); math.Abs(*c.SI-0.3e-3) > 1e-12 {
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

// What one move leaves is off by what the gauge does not see, and judged so: a
// coarse gauge cannot tell, a fine one can.
func TestWhatIsLeftIsTheReadingsError(t *testing.T) {
	left := func(accuracy string) *marinecalc.Sheet {
		return testboat.Run(t, "mount-moves", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "gapVertical": "0.2 mm ± `+accuracy+`",
			"gapHorizontal": "-0.06 mm ± `+accuracy+`", "offsetVertical": "0.1 mm ± 0.005 mm", "offsetHorizontal": "-0.05 mm ± 0.005 mm",
			"mounts": [{"name": "fore", "forward": "850 mm", "starboard": "0 mm"}, {"name": "aft", "forward": "250 mm", "starboard": "0 mm"}]}`, marinecalc.Options{})
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
