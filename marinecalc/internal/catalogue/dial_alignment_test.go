package catalogue_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// byDial is a coupling read by dials: face and rim at 12, 3, 6, 9 and 12 again,
// in hundredths of a millimetre.
func byDial(face, rim [5]float64) string {
	var rows []string
	for i, clock := range []string{"12 o'clock", "3 o'clock", "6 o'clock", "9 o'clock", "12 o'clock"} {
		rows = append(rows, fmt.Sprintf(`{"clock": "%s", "face": "%g mm", "rim": "%g mm"}`, clock, face[i]/100, rim[i]/100))
	}
	return `"dialReadings": [` + strings.Join(rows, ", ") + `], "couplingDiameter": "102 mm", "couplingKind": "rigid", "dialRadius": "44 mm", "swept": "together"`
}

const trueRun = `, "barSagRim": "0 mm", "barSagFace": "0 mm", "knownFaceRunOut": "0.01 mm", "knownRimRunOut": "0.01 mm", "pilot": "parted", "shaftCentred": "centred"`

// Each limit of the alignment by dial on both sides, and none where pilot or
// shaft take its meaning.
func TestLimitsOfTheDialAlignment(t *testing.T) {
	none, open, high := [5]float64{}, [5]float64{0, 6, 12, 6, 0}, [5]float64{0, -11, -22, -11, 0}
	for _, c := range []struct {
		limit, what, input, word string
		face, rim                [5]float64
	}{
		{"rigid-gap-per-diameter", "true", trueRun, "within", none, none},
		{"rigid-gap-per-diameter", "open", trueRun, "beyond", open, none},
		{"rigid-gap-per-diameter", "true, its run-out not known", `, "pilot": "parted"`, "cannot tell", none, none},
		{"rigid-gap-per-diameter", "true, the pilot in", trueRun + `, "pilot": "engaged", "freeLength": "180 mm"`, "cannot tell", none, none},
		{"rigid-gap-per-diameter", "true, the pilot in, free length not known", trueRun + `, "pilot": "engaged"`, "cannot tell", none, none},
		{"rigid-gap-per-diameter", "shaft touching", trueRun + `, "shaftCentred": "touching"`, "not measured", none, none},
		{"rigid-flange-offset", "true", trueRun, "within", none, none},
		{"rigid-flange-offset", "high", trueRun, "beyond", none, high},
		{"rigid-flange-offset", "true, sag not measured", `, "knownRimRunOut": "0.01 mm", "pilot": "parted"`, "cannot tell", none, none},
		{"rigid-flange-offset", "the pilot in", trueRun + `, "pilot": "engaged", "freeLength": "180 mm"`, "not measured", none, none},
		{"rigid-flange-offset", "faces nearer than the pilot is deep", trueRun + `, "facesApart": "1 mm", "pilotDepth": "4 mm", "freeLength": "180 mm"`, "not measured", none, none},
		{"rigid-flange-offset", "faces further apart", trueRun + `, "facesApart": "6 mm", "pilotDepth": "4 mm"`, "within", none, none},
		{"engine-bulletin-gap", "true", trueRun + `, "toleranceTable": "engine-bulletin"`, "within", none, none},
		{"engine-bulletin-gap", "open", trueRun + `, "toleranceTable": "engine-bulletin"`, "beyond", open, none},
		{"dial-closes", "closing", trueRun, "within", open, high},
		{"dial-closes", "face does not close", trueRun, "beyond", [5]float64{0, 9, 12, 9, 0}, none},
		{"dial-closes", "rim does not close", trueRun, "beyond", none, [5]float64{0, -20, -22, -11, 0}},
		{"dial-closes", "does not return to zero", trueRun, "beyond", none, [5]float64{0, 0, 0, 0, 5}},
	} {
		input := byDial(c.face, c.rim) + c.input
		if strings.Contains(c.input, `"engaged"`) {
			input = strings.Replace(input, `"pilot": "parted", `, "", 1)
		}
		if strings.Contains(c.input, `"touching"`) {
			input = strings.Replace(input, `, "shaftCentred": "centred"`, "", 1)
		}
		s := testboat.Run(t, "dial-alignment", "{"+input+"}", marinecalc.Options{})
		if got := wordOf(s, c.limit); got != c.word {
			t.Errorf("%s, %s: %q, want %q", c.limit, c.what, got, c.word)
		}
	}
}

// Only the half with the dial turned: the other one's run-out stands in the
// range, which is wider than swept together; and it is said.
func TestAStandingFlangesRunOutIsInTheRange(t *testing.T) {
	wide := map[string]float64{}
	for _, swept := range []string{"together", "dial-half"} {
		input := strings.Replace(byDial([5]float64{}, [5]float64{}), `"together"`, `"`+swept+`"`, 1) + trueRun
		s := testboat.Run(t, "dial-alignment", "{"+input+"}", marinecalc.Options{})
		for _, result := range []string{"gapVertical", "gapHorizontal", "offsetVertical", "offsetHorizontal"} {
			low, high, _ := s.Result(result).Range()
			wide[swept+result] = high - low
			if swept == "dial-half" && !(wide[swept+result] > 2*wide["together"+result]) {
				t.Errorf("%s: %g wide with the run-out, %g without", result, wide[swept+result], wide["together"+result])
			}
		}
		if got := advised(s, "Turn both flanges together, bolt hole"); got != (swept == "dial-half") {
			t.Errorf("%s: told to turn both: %v", swept, got)
		}
	}
}

// A coupling read by feeler with its pilot in, or its shaft against the gland,
// is judged no better.
func TestPilotAndCentringHoldForFeelersToo(t *testing.T) {
	gaps := `"couplingDiameter": "102 mm", "couplingKind": "rigid", "readings": [` + evenGaps + quarterOn + `]` + dialled("0.01 mm", "90°")
	for _, c := range []struct{ rest, gap, offset, says string }{
		{`, "pilot": "none", "shaftCentred": "centred"`, "within", "within", ""},
		{`, "pilotDepth": "4 mm", "freeLength": "180 mm"`, "cannot tell", "not measured", "Clear the pilot first"},
		{`, "pilotDepth": "4 mm", "freeLength": "180 mm", "hiddenOffset": "0.01 mm"`, "within", "not measured", "Clear the pilot first"},
		{`, "pilot": "engaged"`, "cannot tell", "not measured", "Clear the pilot first"},
		{`, "pilot": "parted", "shaftCentred": "touching"`, "not measured", "not measured", "Centre the shaft first"},
		{`, "pilot": "parted"`, "within", "within", "in the middle of tube and gland"},
		{``, "within", "cannot tell", "Tell whether the pilot was clear"},
	} {
		s := testboat.Run(t, "coupling-alignment", "{"+gaps+c.rest+"}", marinecalc.Options{})
		if gap, offset := wordOf(s, "rigid-gap-per-diameter"), wordOf(s, "rigid-flange-offset"); gap != c.gap || offset != c.offset {
			t.Errorf("%s: gap %q, offset %q, want %q, %q", c.rest, gap, offset, c.gap, c.offset)
		}
		if c.says != "" && !advised(s, c.says) {
			t.Errorf("%s: nothing says %q", c.rest, c.says)
		}
	}
}

// A bar sag of the wrong sign or of no bar's size is asked about, and a usual one is not.
func TestABarSagThatNoBarHas(t *testing.T) {
	for _, c := range []struct{ rim, face, limit, word string }{
		{"-0.06 mm", "0.01 mm", "", ""}, {"0 mm", "0 mm", "", ""}, {"", "", "", ""}, // not measured: the usual one is not doubted
		{"0.15 mm", "0.01 mm", "dial-sag-sign", "beyond"}, {"-6 mm", "0.01 mm", "dial-sag-size", "beyond"},
		{"-0.06 mm", "1 mm", "dial-sag-face", "beyond"}, {"-0.06 mm", "-1 mm", "dial-sag-face-minus", "beyond"},
	} {
		sags := ""
		if c.rim != "" {
			sags = ` "barSagRim": "` + c.rim + `", "barSagFace": "` + c.face + `",`
		}
		s := testboat.Run(t, "dial-alignment", `{"couplingDiameter": "100 mm", "couplingKind": "rigid", "dialRadius": "45 mm", "swept": "together",`+sags+`
			"dialReadings": [{"clock": "0°", "face": "0 mm", "rim": "0 mm"}, {"clock": "90°", "face": "0.01 mm", "rim": "-0.03 mm"}, {"clock": "180°", "face": "0 mm", "rim": "-0.06 mm"}, {"clock": "270°", "face": "-0.01 mm", "rim": "-0.03 mm"}]}`, marinecalc.Options{})
		for _, limit := range []string{"dial-sag-sign", "dial-sag-size", "dial-sag-face", "dial-sag-face-minus"} {
			want := ""
			if limit == c.limit {
				want = c.word
			}
			if got := wordOf(s, limit); got != want {
				t.Errorf("%s and %s: %s is %q, want %q", c.rim, c.face, limit, got, want)
			}
		}
	}
}

// Gaps read with a tape, good for a millimetre: what leaves the verdict open is
// the tape and not the gap allowed, so that the tape is blamed.
func TestTheTapeIsBlamedForWhatItLeavesOpen(t *testing.T) {
	const even = `"readings": [{"clock": "12 o'clock", "gap": "0.5 mm"}, {"clock": "3 o'clock", "gap": "0.5 mm"}, {"clock": "6 o'clock", "gap": "0.5 mm"}, {"clock": "9 o'clock", "gap": "0.5 mm"}],
		"couplingDiameter": "100 mm", "couplingKind": "rigid", "pilot": "parted", "knownFaceRunOut": "0.02 mm", "knownRimRunOut": "0.02 mm"`
	s := testboat.Run(t, "coupling-alignment", `{"gapGauge": "tape-measure", `+even+`}`, marinecalc.Options{})
	v := s.Verdict("rigid-gap-per-diameter")
	if said := v.Sentence + v.Settle; wordOf(s, "rigid-gap-per-diameter") != "cannot tell" || strings.Contains(said, "gap allowed") || !strings.Contains(said, "Gaps between the coupling faces") || !strings.Contains(said, "finer gauge") {
		t.Errorf("%s %s", v.Sentence, v.Settle)
	}
}

// Rim readings that do not come back to their zero by 0.3 mm tell the offset no
// closer than they scatter: the root of what is left of five readings over two of
// freedom, to each of two (least squares).
func TestRimThatDoesNotCloseWidensTheOffset(t *testing.T) {
	width := func(last string) float64 {
		s := testboat.Run(t, "dial-alignment", `{"dialReadings": [{"clock": "12 o'clock", "face": "0 mm", "rim": "0 mm"}, {"clock": "3 o'clock", "face": "0.03 mm", "rim": "0.1 mm"}, {"clock": "6 o'clock", "face": "0.06 mm", "rim": "0.2 mm"},
			{"clock": "9 o'clock", "face": "0.03 mm", "rim": "0.1 mm"}, {"clock": "12 o'clock", "face": "0 mm", "rim": "`+last+`"}], "dialRadius": "50 mm", "swept": "together", "couplingDiameter": "100 mm", "couplingKind": "rigid", "pilot": "parted", "barSagRim": "0 mm", "barSagFace": "0 mm"}`, marinecalc.Options{})
		low, high, ok := s.Result("offsetVertical").Range()
		if !ok {
			t.Fatal("no range")
		}
		return high - low
	}
	if sound, torn := width("0 mm"), width("0.3 mm"); torn < 10*sound || torn < 0.2e-3 {
		t.Errorf("a rim that closes: %g, one that does not: %g", sound, torn)
	}
}
