package conflict_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// conflictsOf are the conflicts of one code.
func conflictsOf(s *marinecalc.Sheet, code sheet.ConflictCode) (list []sheet.Conflict) {
	for _, c := range s.Conflicts {
		if c.Code == code {
			list = append(list, c)
		}
	}
	return list
}

const worn = `{"name": "Tern", "shaft": {"diameter": "40 mm"}, "readings": [{"date": "2026-06-01", "bearingClearance": "2 mm"}]}`

// Two ways to one quantity that disagree by more than their accuracies: no
// verdict rests on it, and both are told with their dates, the newest first.
func TestTwoWaysThatDisagreeAreNotJudged(t *testing.T) {
	b := testboat.Read(t, worn)
	run := func(bore, day string) *marinecalc.Sheet {
		return testboat.Run(t, "bearing-clearance", `{"shellBore": "`+bore+`"}`, marinecalc.Options{Boat: b, Day: day})
	}
	s := run("40.4 mm", "2026-03-01")
	two := conflictsOf(s, sheet.TwoWays)
	if len(two) != 1 || two[0].On != "clearance" {
		t.Fatalf("conflicts %+v", s.Conflicts)
	}
	if v := two[0].Values; v[0].Input != "bearingClearance" || v[0].Date != "2026-06-01" || v[1].Input != "shellBore" || v[1].Date != "2026-03-01" || math.Abs(v[1].SI-0.0004) > 1e-9 {
		t.Errorf("values %+v", v)
	}
	for _, limit := range []string{"worn-share"} {
		v := s.Verdict(limit)
		if v.Word.Plain() != sheet.CannotTell || !strings.Contains(v.Sentence, "two ways to “Clearance used” disagree: 2 mm by bearing clearance (read 2026-06-01), 0.4") || !strings.Contains(v.Sentence, "(typed, 2026-03-01)") || !strings.Contains(v.Sentence, "Measure again") {
			t.Errorf("%s: %+v", limit, v)
		}
	}
	if two := conflictsOf(run("40.4 mm", "2026-07-01"), sheet.TwoWays); len(two) != 1 || two[0].Values[0].Input != "shellBore" {
		t.Errorf("the newer one does not stand first: %+v", two)
	}
	// As far apart as a feeler and a calliper may be: ± 0.02 mm and twice
	// ± 0.03 mm at the most, so that a tenth of a millimetre is not explained.
	if s := run("42.02 mm", ""); len(s.Conflicts) > 0 || s.Verdict("worn-share").Word.Plain() != sheet.Beyond {
		t.Errorf("two that agree: %+v, %+v", s.Conflicts, s.Verdict("worn-share"))
	}
	// One way alone is judged.
	if s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "40 mm", "shellBore": "40.4 mm"}`, marinecalc.Options{}); len(s.Conflicts) > 0 || s.Verdict("worn-share").Word.Plain() != sheet.Within {
		t.Errorf("one way: %+v, %+v", s.Conflicts, s.Verdict("worn-share"))
	}
	// Without ranges too, and what does not move with it is judged as ever.
	s = testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "40 mm", "shellBore": "40.4 mm", "bearingClearance": "2 mm", "bearingLength": "170 mm"}`, marinecalc.Options{NoRanges: true})
	if s.Verdict("worn-share").Word.Plain() != sheet.CannotTell || s.Verdict("bearing-length").Word.Plain() == sheet.CannotTell {
		t.Errorf("without ranges: %+v", s.Verdicts)
	}
}

// A viscosity that was measured, and the one of the fluid's two points.
func TestViscosityByTwoWays(t *testing.T) {
	for measured, want := range map[string]int{"46 mm²/s": 0, "30 mm²/s": 1} {
		s := testboat.Run(t, "fluid-settling", `{"standingTime": "10 h", "metal": "carbon-steel", "particleSize": "20 µm", "fluidDensity": "870 kg/m³", "sumpDepth": "85 mm", "dipDepth": "30 mm", "fluidTemperature": "40 °C",
			"coolViscosity": "46 mm²/s", "hotViscosity": "6.8 mm²/s", "fluidViscosity": "`+measured+`"}`, marinecalc.Options{NoRanges: true})
		if got := conflictsOf(s, sheet.TwoWays); len(got) != want {
			t.Errorf("%s: %+v", measured, got)
		}
	}
}

// A viscosity that was measured stands beside no other where the second comes
// out of a table: nobody gave that.
func TestATableIsNoSecondWay(t *testing.T) {
	s := testboat.Run(t, "fluid-settling", `{"standingTime": "10 h", "metal": "carbon-steel", "particleSize": "20 µm", "sumpDepth": "85 mm", "dipDepth": "30 mm", "fluidTemperature": "40 °C",
		"fluid": "iso-vg-32", "fluidViscosity": "90 mm²/s"}`, marinecalc.Options{NoRanges: true})
	if got := conflictsOf(s, sheet.TwoWays); len(got) > 0 {
		t.Errorf("%+v", got)
	}
}

// Words and whole numbers that were typed over others of the boat are told as
// figures are, and not where they are the same.
func TestWordsAndCountsTypedOverTheBoat(t *testing.T) {
	b := testboat.Read(t, `{"name": "Tern", "engine": {"power": "20 kW", "speed": "3000 rpm", "cylinders": 3, "strokes": "four-stroke"}, "gearbox": {"ratioAhead": 2}, "shaft": {"diameter": "25 mm", "alloy": "s31600-annealed"}}`)
	for _, c := range []struct{ id, input, on string }{
		{"vibration-source", `{"engineSpeed": "1800 rpm", "gear": "ahead", "cylinders": 4}`, "cylinders"},
		{"vibration-source", `{"engineSpeed": "1800 rpm", "gear": "ahead", "cylinders": 3}`, ""},
		{"vibration-source", `{"engineSpeed": "1800 rpm", "gear": "ahead", "strokes": "two-stroke"}`, "strokes"},
		{"vibration-source", `{"engineSpeed": "1800 rpm", "gear": "ahead", "strokes": "four-stroke"}`, ""},
		{"shaft-strength", `{"shaftAlloy": "s31600-annealed"}`, ""},
		{"shaft-strength", `{"shaftAlloy": "s30400-annealed"}`, "shaftAlloy"},
	} {
		on := ""
		for _, conflict := range conflictsOf(testboat.Run(t, c.id, c.input, marinecalc.Options{Boat: b, NoRanges: true}), sheet.TypedOver) {
			if conflict.On == "cylinders" || conflict.On == "strokes" || conflict.On == "shaftAlloy" {
				on += conflict.On
			}
		}
		if on != c.on {
			t.Errorf("%s of %s: told of %q, want %q", c.input, c.id, on, c.on)
		}
	}
}

// What was typed over another figure of the boat is told, with both.
func TestTypedOverTheBoatIsTold(t *testing.T) {
	b := testboat.Read(t, worn)
	run := func(clearance, day string) []sheet.Conflict {
		return conflictsOf(testboat.Run(t, "bearing-clearance", `{"bearingClearance": "`+clearance+`"}`, marinecalc.Options{Boat: b, Day: day, NoRanges: true}), sheet.TypedOver)
	}
	for _, c := range []struct {
		clearance, day string
		told           string
	}{
		{"0.4 mm", "", "0.4 mm typed here is used; the boat file has 2 mm, read 2026-06-01. If that is the newer one"},
		{"0.4 mm", "2026-01-01", "which is newer: clear this field"},
		{"0.4 mm", "2026-07-01", ""},
		{"2.01 mm", "", ""}, // as near as the gauges let it be
		{"2 mm", "2026-01-01", ""},
	} {
		got := run(c.clearance, c.day)
		if (len(got) == 0) != (c.told == "") || len(got) > 0 && (!strings.Contains(strings.ReplaceAll(got[0].Text, ".0 mm", " mm"), c.told) || got[0].Values[1].Date != "2026-06-01") {
			t.Errorf("%s on %q: %+v, want %q", c.clearance, c.day, got, c.told)
		}
	}
	// Of what has no date, of a maker's figure and of an earlier result too.
	b = testboat.Read(t, `{"name": "Tern", "engine": {"power": "20 kW", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": 2}, "shaft": {"diameter": "25 mm", "alloy": "s31600-annealed"},
		"makersFigures": [{"of": "shaft-strength/shaftYieldStrength", "value": "300 MPa", "source": {"document": "Leaflet"}}]}`)
	s := testboat.Run(t, "shaft-strength", `{"shaftDiameter": "30 mm", "shaftYieldStrength": "400 MPa", "shaftPower": "200 kW"}`, marinecalc.Options{Boat: b, NoRanges: true})
	texts := fmt.Sprint(s.Conflicts)
	for _, want := range []string{"30 mm typed here is used; the boat file has 25 mm. One of the two", "the maker's figure is 300", "from the boat file "} {
		if !strings.Contains(texts, want) {
			t.Errorf("%q is not told: %s", want, texts)
		}
	}
	if _, err := marinecalc.Run("shaft-torque", nil, marinecalc.Options{Day: "June"}); err == nil || !strings.Contains(err.Error(), "/date") {
		t.Errorf("a day that is none: %v", err)
	}
}

// A figure of the boat file that another sheet works out otherwise is told on
// the sheet that takes it.
func TestAFigureBesideAnotherSheetIsTold(t *testing.T) {
	for length, want := range map[string]int{"32 mm": 0, "60 mm": 1} {
		b := testboat.Read(t, `{"name": "Tern", "engine": {"power": "20 kW", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": 2}, "shaft": {"diameter": "25 mm", "alloy": "s31600-annealed"},
			"gland": {"boxBore": "41 mm", "boxDepth": "48 mm", "followerDepth": "10 mm", "packing": "flax", "water": "sea", "packedLength": "`+length+`"},
			"readings": [{"date": "2026-06-01", "dripRate": "6 drips/min", "waterTemperature": "18 °C"}]}`)
		s := testboat.Run(t, "gland-heat", `{}`, marinecalc.Options{Boat: b, NoRanges: true})
		two := slices.DeleteFunc(conflictsOf(s, sheet.TwoFigures), func(c sheet.Conflict) bool { return !strings.Contains(c.Text, "by the sheet") })
		if len(two) != want || want > 0 && (two[0].On != "packedLength" || two[0].Values[0].Text != length || !strings.Contains(two[0].Text, "by the sheet “Stuffing-box packing” it is 32 mm")) {
			t.Errorf("%s: %+v", length, s.Conflicts)
		}
	}
}

// The sheet says which reading its figure comes from, and what the others say of
// it: one reading stands alone, and of several that do not agree none decides.
func TestTheSheetSaysWhichReadingStands(t *testing.T) {
	for _, c := range []struct{ calculation, input, want string }{
		{"bearing-clearance", `{"shaftDiameter": "25 mm", "liftTravel": "0.4 mm", "liftPull": "200 N", "secondPull": "100 N", "secondTravel": "0.38 mm"}`,
			"Clearance used: by “Travel of the lifted shaft” alone. No second way was read that could contradict it."},
		{"bearing-clearance", `{"shaftDiameter": "25 mm", "liftTravel": "0.4 mm", "liftPull": "200 N", "secondPull": "100 N", "secondTravel": "0.38 mm", "wireIn": "0.3 mm", "wireOut": "0.4 mm"}`,
			"Clearance used: by “Travel of the lifted shaft”, which goes before “Largest wire that goes in”. That agrees with it."},
		{"bearing-clearance", `{"shaftDiameter": "25 mm", "liftTravel": "0.4 mm", "liftPull": "200 N", "secondPull": "100 N", "secondTravel": "0.38 mm", "wireIn": "0.9 mm", "wireOut": "1 mm"}`,
			"Clearance used: by “Travel of the lifted shaft”, which goes before “Largest wire that goes in”. They do not agree: none of them decides until it is known which is wrong."},
		{"output-flange", `{"thread": "M24x2", "seatDiameter": "26 mm", "finish": "oiled", "nutTorque": "200 N·m", "nutTurn": "10°"}`, // of the stack nothing is known: its turn finds no clamp
			"Clamp when tightened: by “Torque of the flange nut” alone. No second way was read that could contradict it."},
	} {
		s := testboat.Run(t, c.calculation, c.input, marinecalc.Options{})
		if !slices.Contains(s.Notes, c.want) {
			t.Errorf("%s %s: %q, want %q", c.calculation, c.input, s.Notes, c.want)
		}
	}
}
