package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Skin that is all but worn through is close to its limit, although no share of
// a limit of 0 can be left: it goes by the skin when new.
func TestLittleOfTheHardSkinLeft(t *testing.T) {
	for depth, want := range map[string]string{"0.1 mm": "within", "0.451 mm ± 0.003 mm": "near the limit", "0.6 mm": "beyond"} {
		s := testboat.Run(t, "wear-debris", `{"wearDepth":"`+depth+`","caseDepth":"0.5 mm","depthGauge":"micrometer","wearLength":"10 mm","wearWidth":"5 mm","metal":"carbon-steel"}`, marinecalc.Options{})
		if got := string(s.Verdict("hard-skin").Word); got != want {
			t.Errorf("worn by %s: %s, want %s", depth, got, want)
		}
	}
}

// What comes of loads and strengths has three digits where nothing says how
// sure it is, and a mount that carries next to nothing is close to lifting.
func TestDigitsOfWhatIsWorkedOut(t *testing.T) {
	s := testboat.Run(t, "mount-load", `{}`, marinecalc.Options{Boat: testboat.Demo(t, "kittiwake"), NoRanges: true})
	looked := 0
	for _, r := range s.Results {
		if _, _, ranged := r.Range(); ranged || r.SI == nil || r.Kind != "ratio" && r.Kind != "force" {
			continue
		}
		looked++
		number, _, _ := strings.Cut(r.Text, " ")
		whole, part, _ := strings.Cut(number, ".")
		if part == "" {
			whole = strings.TrimRight(whole, "0")
		}
		if digits := strings.TrimLeft(strings.Trim(whole+part, "-"), "0"); len(digits) > 3 {
			t.Errorf("%s: %s", r.Title, r.Text)
		}
	}
	if looked < 3 {
		t.Errorf("only %d", looked)
	}
}

// A hundredth of metal in a fluid is outside what a sample has: 0.4 mm off a
// palm of steel in two litres is, a tenth of that is not.
func TestMetalThatAFluidCanHave(t *testing.T) {
	for depth, want := range map[string]sheet.Word{"0.1 mm ± 0.001 mm": sheet.Inside, "2 mm ± 0.001 mm": sheet.Outside} {
		s := testboat.Run(t, "wear-debris", `{"wearDepth":"`+depth+`","wearLength":"60 ± 1 mm","wearWidth":"60 ± 1 mm","metal":"carbon-steel","fluidVolume":"2 L","fluidDensity":"870 kg/m³"}`, marinecalc.Options{})
		if v := s.Verdict("debris-possible"); v == nil || v.Word != want {
			t.Errorf("%s: %+v", depth, v)
		}
	}
	for share, want := range map[string]sheet.Word{"500 ppm": sheet.Inside, "5 %": sheet.Outside} {
		s := testboat.Run(t, "fluid-flush", `{"fluidVolume":"2 L","leftVolume":"0.5 L","debrisShare":"`+share+`"}`, marinecalc.Options{})
		if v := s.Verdict("flush-debris-possible"); v == nil || v.Word != want {
			t.Errorf("%s: %+v", share, v)
		}
	}
}
