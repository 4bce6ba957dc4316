package verdict_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A maker's figure for a limit, once in the boat file, is what the verdict
// goes by, and the verdict says so.
func TestMakersLimitWins(t *testing.T) {
	gaps := `"couplingKind": "rigid", "couplingDiameter": "100 mm", "readings": [{"clock": "0°", "gap": "0.40 mm ± 0.001 mm"}, {"clock": "90°", "gap": "0.30 mm ± 0.001 mm"}, {"clock": "180°", "gap": "0.20 mm ± 0.001 mm"}, {"clock": "270°", "gap": "0.30 mm ± 0.001 mm"}]`
	limit := "rigid-gap-per-diameter"
	plain := testboat.Run(t, "coupling-alignment", `{`+gaps+`}`, marinecalc.Options{}).Verdict(limit)
	if plain.Word != "beyond" || plain.Authority != "several makers" {
		t.Fatalf("without the maker: %+v", plain)
	}
	b := testboat.Read(t, `{"name": "Test", "makersFigures": [{"of": "`+limit+`", "value": 0.01, "source": {"document": "Coupling sheet", "clause": "p. 3"}}]}`)
	made := testboat.Run(t, "coupling-alignment", `{`+gaps+`}`, marinecalc.Options{Boat: b}).Verdict(limit)
	if made.Word != "within" || made.Authority != "maker's figure" || made.Source != "Coupling sheet, p. 3" {
		t.Errorf("with the maker: %+v", made)
	}
}

// Each word of a verdict has its sentence, with value, range and bound; the
// reason why stands beside what is beyond. Derived: 20 kW at 1200 r/min with an
// efficiency of 1 are 159.155 N·m.
func TestSentencesOfVerdicts(t *testing.T) {
	const input = `{"enginePower": "%s", "engineSpeed": "2400 rpm", "gearRatioAhead": 2, "gearboxEfficiency": "1 ± 0 %%"}`
	for _, c := range []struct{ power, limit, word, says string }{
		{"20 kW", `"max": "500 N·m"`, "within", "Tried: 159.2 N·m, allowed at most 500 N·m: OK."},
		{"20 kW", `"max": "160 N·m", "near": 0.9`, "near the limit", "Tried: 159.2 N·m, allowed at most 160 N·m: OK but close, 99 % of the limit is taken up."},
		{"20 kW", `"max": "100 N·m"`, "beyond", "Tried: 159.2 N·m, allowed at most 100 N·m: over the limit. It would break."},
		{"20 kW", `"min": "200 N·m"`, "beyond", "Tried: 159.2 N·m, needs at least 200 N·m: under the minimum. It would break."},
		{"20 kW ± 10 %", `"max": "160 N·m"`, "cannot tell", " N·m), allowed at most 160 N·m: not enough to tell; it is met with a probability of 53 %."},
	} {
		book := testboat.Overlay(t, `{"limits": [{"id": "tried", "calculation": "shaft-torque", "on": "shaftTorque", "title": "Tried", "why": "It would break.", `+c.limit+`, "source": {"document": "Test"}, "basis": "maker"}]}`)
		v := testboat.Run(t, "shaft-torque", fmt.Sprintf(input, c.power), marinecalc.Options{Rules: book}).Verdict("tried")
		if v == nil || string(v.Word) != c.word || !strings.HasSuffix(v.Sentence, c.says) {
			t.Errorf("%s: %+v, want %s: %s", c.limit, v, c.word, c.says)
		}
		if v != nil && (v.SI == nil || math.Abs(*v.SI-159.155) > 0.001) {
			t.Errorf("%s: value %v", c.limit, v.SI)
		}
	}
}

// A limit on what was read is judged with the accuracy of the reading: 20 kW
// within a tenth of it, anywhere alike, are at most 21 kW with a probability of
// three quarters.
func TestReadingsAreJudgedWithTheirAccuracy(t *testing.T) {
	for _, c := range []struct {
		max  string
		word sheet.Word
		p    float64
	}{{"30 kW", sheet.Within, 1}, {"21 kW", sheet.CannotTell, 0.75}, {"17 kW", sheet.Beyond, 0}} {
		book := testboat.Overlay(t, `{"limits": [{"id": "tried", "calculation": "shaft-torque", "on": "enginePower", "title": "Tried", "why": "-", "max": "`+c.max+`", "source": {"document": "Test"}, "basis": "maker"}]}`)
		v := testboat.Run(t, "shaft-torque", `{"enginePower": "20 kW ± 10 %", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}`, marinecalc.Options{Rules: book}).Verdict("tried")
		if v == nil || v.Word != c.word || v.Probability == nil || math.Abs(*v.Probability-c.p) > 0.01 || v.SI == nil || *v.SI != 20e3 {
			t.Errorf("at most %s: %+v, want %s with %g", c.max, v, c.word, c.p)
		}
	}
}

// A temperature near its limit is told by its rise from the sea: by that of the boat's
// water where it is known, and of 15 °C else. 30 °C of 33 have taken up 15 of 18 K above
// 15 °C, and 10 of 13 K above 20 °C.
func TestATemperatureNearItsLimitCountsFromTheSea(t *testing.T) {
	book := testboat.Overlay(t, `{"limits": [{"id": "tried", "calculation": "gland-heat", "on": "measuredGlandTemperature", "title": "Tried", "why": "-", "max": "33 °C", "near": 0.7, "source": {"document": "Test"}, "basis": "maker"}]}`)
	for sea, says := range map[string]string{"": "83 % of the rise from the sea", "20 °C": "77 % of the rise from the sea"} {
		var in map[string]any
		if err := json.Unmarshal([]byte(testboat.Typed(t, "gland-heat")), &in); err != nil {
			t.Fatal(err)
		}
		delete(in, "waterTemperature")
		if in["measuredGlandTemperature"] = "30 °C ± 0.1 K"; sea != "" {
			in["waterTemperature"] = sea
		}
		v := testboat.Run(t, "gland-heat", testboat.Text(t, in), marinecalc.Options{Rules: book}).Verdict("tried")
		if v == nil || v.Word != sheet.NearLimit || !strings.Contains(v.Sentence, says) {
			t.Errorf("%s: %+v, want %s", sea, v, says)
		}
	}
}

// A chance that the readings do not tell is no number, that a host would mark.
func TestAChanceThatIsNotKnownIsNoNumber(t *testing.T) {
	s := testboat.Run(t, "reading-trend", `{"reading": "dripRate", "today": "2026-11-29"}`, marinecalc.Options{Boat: testboat.Demo(t, "kittiwake")})
	looked := 0
	for _, v := range s.Verdicts {
		if v.Value != "not known" {
			continue
		}
		if looked++; v.SI != nil {
			t.Errorf("%s: not known, and %g", v.Limit, *v.SI)
		}
	}
	if looked == 0 {
		t.Error("no chance is unknown here")
	}
}

// A bound that was converted is said in round figures, and keeps those it was
// converted to where a reading, or an end of where it may lie, comes so close that
// rounded off it would seem to lie on the other side.
func TestConvertedBoundIsRound(t *testing.T) {
	const leaf = `, "bladeWidth": "0 mm", "wornLimit": "0.03 in", "shaftDiameter": "25 mm"}`
	for clearance, want := range map[string]string{"0.5 mm": "at most 0.76 mm", "0.761 mm ± 0.0001 mm": "at most 0.762 mm", "0.7 mm ± 0.06 mm": "at most 0.762 mm", "1.2 mm": "at most 0.76 mm"} {
		s := testboat.Run(t, "bearing-clearance", `{"bearingClearance": "`+clearance+`"`+leaf, marinecalc.Options{})
		if got := s.Verdict("worn-limit").Bound; got != want {
			t.Errorf("%s: %s, want %s", clearance, got, want)
		}
	}
	for units, want := range map[string]string{"metric": "at most 0.76 mm to 1.5 mm", "us": "at most 0.03 in to 0.059 in", "both": "at most 0.76 mm (0.03 in) to 1.5 mm (0.059 in)"} {
		s := testboat.Run(t, "bearing-clearance", `{"bearingClearance": "0.5 mm", "bladeWidth": "0 mm", "shaftDiameter": "25 mm", "wornRule": "practice-thirty-thou"}`, marinecalc.Options{Units: units})
		if got := s.Verdict("worn-limit").Bound; got != want {
			t.Errorf("%s: %s, want %s", units, got, want)
		}
	}
}
