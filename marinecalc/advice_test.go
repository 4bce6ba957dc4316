package marinecalc

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/stock"
)

// advised tells whether the sheet's advice has that text in it.
func advised(s *Sheet, text string) bool {
	for _, n := range s.Next {
		if strings.Contains(n.Text, text) {
			return true
		}
	}
	return false
}

// advises holds a sheet's advice against what it must say and must not say.
func advises(t *testing.T, what string, s *Sheet, wanted, unwanted []string) {
	t.Helper()
	for _, text := range wanted {
		if !advised(s, text) {
			t.Errorf("%s: nothing says %q", what, text)
		}
	}
	for _, text := range unwanted {
		if advised(s, text) {
			t.Errorf("%s: it says %q", what, text)
		}
	}
}

const (
	evenGaps  = `{"clock": "0°", "gap": "0.4 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.4 mm"}, {"clock": "270°", "gap": "0.4 mm"}`
	openGaps  = `{"clock": "0°", "gap": "0.6 mm"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.2 mm"}, {"clock": "270°", "gap": "0.4 mm"}`
	quarterOn = `, {"clock": "0°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "90°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "180°", "gap": "0.4 mm", "turn": "90°"}, {"clock": "270°", "gap": "0.4 mm", "turn": "90°"}`
)

// dialled is a rim read with a dial, the engine half so much too high.
func dialled(high string) string {
	return `, "rimGauge": "dial-indicator", "rimReadings": [{"clock": "0°", "step": "` + high + `"}, {"clock": "90°", "step": "0 mm"}, {"clock": "180°", "step": "-` + high + `"}, {"clock": "270°", "step": "0 mm"}]`
}

// A rigid coupling is called good enough to bolt up only when gap and offset
// are within and the shaft was turned: parallel faces alone do not line up two
// shafts.
func TestBoltingUpAsksForAllThree(t *testing.T) {
	const boltUp, readRim, turn, whole = "good enough to bolt up", "now read the rim offset", "only that tells a crooked flange", "Move the whole engine over"
	for _, c := range []struct {
		what, gaps, rest, offset string
		wanted, unwanted         []string
	}{
		{"5 mm misaligned", evenGaps, dialled("5 mm"), "beyond", []string{whole, turn}, []string{boltUp, readRim}},
		{"5 mm misaligned, turned", evenGaps + quarterOn, dialled("5 mm"), "beyond", []string{whole}, []string{boltUp, readRim, turn}},
		{"0.1 mm misaligned, turned", evenGaps + quarterOn, dialled("0.1 mm"), "beyond", []string{whole}, []string{boltUp}},
		{"no rim read", evenGaps, "", "not measured", []string{readRim, turn}, []string{boltUp}},
		{"no rim read, turned", evenGaps + quarterOn, "", "not measured", []string{readRim}, []string{boltUp, turn}},
		{"in line, not turned", evenGaps, dialled("0.01 mm"), "within", []string{turn}, []string{boltUp, readRim}},
		{"in line, turned", evenGaps + quarterOn, dialled("0.01 mm"), "within", []string{boltUp}, []string{readRim, turn}},
		{"in line, faces open", openGaps, dialled("0.01 mm"), "within", nil, []string{boltUp, readRim}},
		{"in line, turned, but not for the rule chosen", evenGaps + quarterOn, dialled("0.01 mm") + `, "toleranceTable": "army-feeler", "gapGauge": "straight-edge"`, "within", nil, []string{boltUp}},
	} {
		s := mustRun(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "readings": [`+c.gaps+`]`+c.rest+`}`, Options{})
		if v := s.Verdict("rigid-flange-offset"); v == nil || string(v.Word) != c.offset {
			t.Errorf("%s: the offset is %+v", c.what, v)
		}
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// The gap difference printed as allowed is the one that the limit asks for.
func TestGapAllowedIsTheLimit(t *testing.T) {
	s := mustRun(t, "coupling-alignment", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "readings": [`+openGaps+`]}`, Options{NoRanges: true})
	limit := -1.0
	for _, l := range s.Verdicts {
		if l.Limit == rigidLimit(t) {
			limit = *s.Result("gapPerDiameter").SI / *s.Result("gapDifference").SI * *s.Result("gapAllowed").SI
		}
	}
	if !(limit > 0.001*(1-1e-9) && limit < 0.001*(1+1e-9)) {
		t.Errorf("the gap allowed is %g of the diameter", limit)
	}
}

// A droop that is taken off the readings is not lifted out as well, and what a
// tolerance table needs is asked for only while it is missing.
func TestAlignmentAdviceKnowsWhatWasDone(t *testing.T) {
	const lift, taken = "Lift the free shaft end by its sag", "The droop is taken off the readings already"
	const choose, speed, above = "Choose the tolerance table", "Type the shaft speed", "turns faster than this table goes"
	for _, c := range []struct {
		what, rest       string
		wanted, unwanted []string
	}{
		{"held up, no table", ``, []string{lift, choose}, []string{taken, speed, above}},
		{"hanging free", `, "shaftEnd": "hanging-free", "droopSlope": "0.1 mm/m"`, []string{taken}, []string{lift}},
		{"table without speed", `, "toleranceTable": "spacer"`, []string{speed}, []string{choose, above}},
		{"table and speed", `, "toleranceTable": "spacer", "shaftSpeed": "6000 rpm"`, nil, []string{choose, speed, above}},
		{"above the spacer table", `, "toleranceTable": "spacer", "shaftSpeed": "6100 rpm"`, []string{above}, []string{choose, speed}},
		{"above the bands", `, "toleranceTable": "speed-bands", "shaftSpeed": "7100 rpm"`, []string{above}, []string{choose, speed}},
		{"above the short couplings", `, "toleranceTable": "short-flexible-excellent", "shaftSpeed": "9000 rpm"`, []string{above}, []string{choose, speed}},
		{"a feeler rule", `, "toleranceTable": "engine-bulletin"`, nil, []string{choose, speed, above}},
	} {
		s := mustRun(t, "coupling-alignment", `{"couplingKind": "flexible", "couplingDiameter": "102 mm", "readings": [`+evenGaps+`]`+c.rest+`}`, Options{NoRanges: true})
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// A measured gland decides: first on the sheet is its rise, and no drip rate is
// recommended that is a running tap (packed pumps run at 40 to 60 drops a
// minute: general texts on packed pumps).
func TestAHotGlandIsNotCooledByATap(t *testing.T) {
	const stop, ease, tap, small, unknown, far = "stop the shaft as soon as", "Back both gland nuts off by one flat, evenly, wait ten minutes", "no drip holds the rise while", "smaller than drips can hold", "drip rate found here", "far hotter than ordinary friction"
	for _, c := range []struct {
		what, rest       string
		first            string
		wanted, unwanted []string
	}{
		{"90 °C", `, "measuredGlandTemperature": "90 °C"`, "measuredRise", []string{stop, tap, far}, []string{ease, small, unknown}},
		{"45 °C", `, "measuredGlandTemperature": "45 °C"`, "measuredRise", []string{ease, tap}, []string{stop, small, unknown, far}},
		{"25 °C", `, "measuredGlandTemperature": "25 °C"`, "measuredRise", []string{"Leave the nuts alone"}, []string{stop, ease, tap, small, unknown, far}},
		{"25 °C, 3 °C wanted", `, "measuredGlandTemperature": "25 °C", "wantedRise": "3 °C"`, "measuredRise", []string{small}, []string{stop, ease, tap, unknown, far}},
		{"not measured", `, "wantedRise": "5 °C"`, "temperatureRise", []string{unknown}, []string{stop, ease, tap, small, far}},
	} {
		s := mustRun(t, "gland-heat", `{"shaftDiameter": "32 mm", "boxBore": "50 mm", "packedLength": "36 mm", "shaftSpeed": "1200 rpm", "dripRate": "8 drips/min", "waterTemperature": "18 °C", "packing": "ptfe", "shaftAlloy": "s31600-annealed"`+c.rest+`}`, Options{})
		advises(t, c.what, s, c.wanted, c.unwanted)
		if s.Results[0].Name != c.first {
			t.Errorf("%s: first comes %s", c.what, s.Results[0].Name)
		}
		if rate, words := *s.Result("dripRateForRise").SI, s.Result("whatHoldsIt").Text; rate > 1 != strings.HasPrefix(words, "no drip does") {
			t.Errorf("%s: %g drips a second, %q", c.what, rate, words)
		}
	}
}

// The drips are blamed for an empty battery only where they have a part in it.
func TestTheDripsAreBlamedForTheirPart(t *testing.T) {
	const off, slow, other = "what stays switched on", "Slow the drips at rest", "other water than the gland's"
	for _, c := range []struct {
		what, rest       string
		wanted, unwanted []string
	}{
		{"a standing load", `, "dripRateAtRest": "2 drips/min", "standingPower": "1.2 W", "pumpFlow": "20 L/min"`, []string{off}, []string{slow, other}},
		{"a fast drip", `, "dripRateAtRest": "600 drips/min", "standingPower": "0 W", "pumpFlow": "2 L/min"`, []string{slow}, []string{off, other}},
		{"a leak elsewhere", `, "dripRateAtRest": "2 drips/min", "otherInflow": "60 L/day", "standingPower": "0 W", "pumpFlow": "2 L/min"`, []string{other}, []string{off, slow}},
		{"a fast drip and a load", `, "dripRateAtRest": "600 drips/min", "standingPower": "1.2 W", "pumpFlow": "2 L/min"`, []string{off, slow}, []string{other}},
	} {
		s := mustRun(t, "gland-drip", `{"dripRate": "8 drips/min", "timeUnderWay": "6 h", "switchVolume": "20 L", "cycleVolume": "12 L", "floodVolume": "300 L", "pumpPower": "48 W", "batteryEnergy": "600 W·h", "timeAway": "90 day"`+c.rest+`}`, Options{})
		if v := s.Verdict("battery-outlasts-absence"); v == nil || v.Word != "beyond" {
			t.Errorf("%s: the battery is %+v", c.what, v)
		}
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// What is bought, what the verdict says of it and what is advised agree: a size
// is judged beyond only where no size of the list is inside both limits.
func TestPackingBoughtIsPackingAdvised(t *testing.T) {
	usual := func(row, input string) float64 {
		return rules.Standard().Usual("gland-packing").Find(row, nil).Values.Of(input).SI
	}
	bound := map[string]float64{"packing-over": usual("packing-over", "mostOver"), "packing-under": -usual("packing-under", "mostUnder")}
	for _, l := range rules.Standard().Limits("gland-packing").All() {
		if l.ID == "packing-under" && l.Min.SI != bound[l.ID] {
			t.Errorf("sizes are chosen down to %g m, and judged down to %g m", bound[l.ID], l.Min.SI)
		}
	}
	const noSize = "None of these sizes fits"
	usable, not := 0, 0
	for room := 5.0; room < 13; room += 0.083 {
		s := mustRun(t, "gland-packing", fmt.Sprintf(`{"shaftDiameter": "32 mm", "boxBore": "%.6f mm", "boxDepth": "60 mm", "followerDepth": "8 mm", "sizes": "either", "cut": "bevel", "spareRings": 1}`, 32+2*room), Options{NoRanges: true})
		fits := false
		for rest := stock.List(s.Input("stockSections").Text); rest != ""; {
			var size quantity.Length
			size, _, rest = rest.Cut()
			over := float64(size) - room/1000
			fits = fits || over <= bound["packing-over"] && over >= bound["packing-under"]
		}
		beyond := s.Verdict("packing-over").Word == "beyond" || s.Verdict("packing-under").Word == "beyond"
		if beyond == fits || advised(s, noSize) == fits {
			t.Errorf("room of %.3f mm: %s bought, a size fits: %v; beyond: %v, advised: %+v", room, s.Result("soldAs").Text, fits, beyond, s.Next)
		}
		if fits {
			usable++
		} else {
			not++
		}
	}
	if usable == 0 || not == 0 {
		t.Errorf("%d rooms with a size, %d without", usable, not)
	}
}
