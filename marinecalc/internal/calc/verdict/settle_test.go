package verdict_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// With a feeler gauge the reading is too near the limit to tell; the sheet
// names what would settle it.
func TestAGaugeTooCoarseIsNamed(t *testing.T) {
	const read = `{"clock": "0°", "gap": "0.385 mm"}, {"clock": "90°", "gap": "0.35 mm"}, {"clock": "180°", "gap": "0.30 mm"}, {"clock": "270°", "gap": "0.35 mm"}`
	s := testboat.Run(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "gapAllowance": 0.001, "readings": [`+read+`, `+strings.ReplaceAll(read, `"}`, `", "turn": "180°"}`)+`]}`, marinecalc.Options{})
	v := s.Verdict("rigid-gap-per-diameter")
	if v.Word != "cannot tell" || !strings.Contains(v.Settle, "dial") && !strings.Contains(v.Settle, "times and use the mean") {
		t.Errorf("got %+v", v)
	}
}

// What is proposed reads what the gauge in hand reads: no dial measures a shaft,
// no micrometer a gap, and no feeler gauge how deep a hollow is.
func TestTheGaugeProposedReadsTheSame(t *testing.T) {
	s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "25 mm", "shellBore": "24.95 mm"}`, marinecalc.Options{})
	if v := s.Verdict("clearance-none"); v.SettleBy == nil || v.SettleBy.Gauge != "Micrometer" {
		t.Errorf("for a shaft and its bore: %+v", v)
	}
	s = testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "60 mm", "bearingClearance": "0.137 mm", "bladeWidth": "0 mm"}`, marinecalc.Options{})
	if v := s.Verdict("clearance-tight"); v.SettleBy == nil || strings.HasPrefix(v.SettleBy.Gauge, "D") || v.SettleBy.Readings == 0 {
		t.Errorf("for a clearance: %+v", v)
	}
	s = testboat.Run(t, "wear-debris", `{"wearDepth":"0.47 mm","caseDepth":"0.5 mm ± 0 mm","depthGauge":"depth-gauge","wearLength":"10 mm","wearWidth":"5 mm","metal":"carbon-steel"}`, marinecalc.Options{})
	if v := s.Verdict("hard-skin"); v.SettleBy == nil || !strings.HasPrefix(v.SettleBy.Gauge, "Dial indicator") {
		t.Errorf("for the depth of a hollow: %+v", v)
	}
}

// A bracket whose ends lie far apart keeps the digits of the lower one, and a
// reading shown in another unit has no more digits than it is known to.
func TestDigitsOfBracketsAndReadings(t *testing.T) {
	s := testboat.Run(t, "bolt-preload", `{"thread": "3/8-24 UNF", "grade": "iso-a4-70", "finish": "oiled", "nut": "ne-3/8-24"}`, marinecalc.Options{})
	if v := s.Verdict("bolt-proof-load"); v.Turns == nil || v.Turns.Usual != "0.452 N·m to 12.4 N·m" {
		t.Errorf("a wide bracket: %+v", v.Turns)
	}
	s = testboat.Run(t, "gland-heat", `{"shaftDiameter": "32 mm", "boxBore": "45 mm", "packedLength": "32 mm", "packing": "flax", "shaftSpeed": "1200 rpm", "shaftAlloy": "s31600-annealed", "dripRate": "12 drips/min", "waterTemperature": "60 °F", "measuredGlandTemperature": "70 °F"}`, marinecalc.Options{})
	if v := s.Verdict("gland-too-hot-to-hold"); v.Value != "21.1 °C" {
		t.Errorf("70 °F to ± 1 K: %s", v.Value)
	}
}

// Each gauge reads some kind of quantity, by an accuracy of that kind, and not
// each reads all.
func TestGaugesReadTheirKinds(t *testing.T) {
	kinds := quantity.Kinds()
	for _, gauge := range rules.Standard().Table(inputs.Gauges).Rows.All() {
		reads := 0
		for _, k := range kinds {
			if !inputs.ReadsKind(gauge, k) {
				continue
			}
			reads++
			if _, err := k.ParseAccuracy(gauge.Values.Of("accuracy").Text, 1); err != nil {
				t.Errorf("%s reads a %s: %v", gauge.Pick, k.Name, err)
			}
		}
		if reads == 0 || reads == len(kinds) {
			t.Errorf("%s reads %d kinds of %d", gauge.Pick, reads, len(kinds))
		}
	}
}

// A torque that a bolt was set to is no reading that can be taken again.
func TestNoMeanOfWhatWasSetOnce(t *testing.T) {
	s := testboat.Run(t, "bolt-preload", `{"thread":"3/8-16 UNC","grade":"j429-5","finish":"oiled","torqueUsed":"31 lbf·ft","gripLength":"7/8 in","freeLength":"1.755 in","freeLengthNew":"1.752 in"}`, marinecalc.Options{})
	unsettled := 0
	for _, v := range s.Verdicts {
		if v.Settle != "" {
			unsettled++
		}
		if strings.Contains(v.Settle, "readings of “Torque used") {
			t.Errorf("%s: %s", v.Limit, v.Settle)
		}
	}
	if unsettled == 0 {
		t.Error("nothing is in doubt")
	}
}

// What was counted is counted longer, or more of it; no other way finds it.
func TestACountOfFewIsCountedMore(t *testing.T) {
	s := testboat.Run(t, "fluid-cleanliness", `{"count4": 400, "count6": 100, "count14": 19, "sampleVolume": "1 mL", "countedVolume": "1 mL", "wantedCode14": 11}`, marinecalc.Options{})
	if v := s.Verdict("clean-14"); !strings.Contains(v.Settle, "count longer, or more of it") {
		t.Errorf("%s %s", v.Sentence, v.Settle)
	}
}

// What was typed and judged itself is to be found more surely than to what parts it
// from its limit, whichever side that is on; what a limit's own way of reading settles
// better is said in its place.
func TestHowMuchMoreSurelyItIsToBeFound(t *testing.T) {
	for _, c := range []struct{ power, limit, finer, says string }{
		{"20 kW ± 10 %", `"max": "21 kW"`, "", "To settle it, find it more surely than to ± 1 kW and type its ±."},
		{"20 kW ± 10 %", `"min": "19.5 kW"`, "", "To settle it, find it more surely than to ± 0.5 kW and type its ±."},
		{"20 kW ± 10 %", `"max": "20 kW"`, "", "comes from “Engine power”"},
		{"20 kW ± 10 %", `"max": "21 kW"`, "run her on a brake.", "To settle it, run her on a brake."},
	} {
		finer := ""
		if c.finer != "" {
			finer = `"finer": "` + c.finer + `", `
		}
		book := testboat.Overlay(t, `{"limits": [{"id": "tried", "calculation": "shaft-torque", "on": "enginePower", "title": "Tried", "why": "-", `+c.limit+`, `+finer+`"source": {"document": "Test"}, "basis": "maker"}]}`)
		v := testboat.Run(t, "shaft-torque", `{"enginePower": "`+c.power+`", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}`, marinecalc.Options{Rules: book}).Verdict("tried")
		if v == nil || v.Word != sheet.CannotTell || !strings.Contains(v.Settle, c.says) {
			t.Errorf("%s: %+v", c.limit, v)
		}
	}
}
