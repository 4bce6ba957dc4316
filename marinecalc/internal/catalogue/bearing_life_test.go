package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
)

// ISO 281 has X, Y and e by thrust over static rating: 0.5 kN on the 16.6 kN of
// a 6208 is 0.030, between the rows 0.028 and 0.056; the row 0.56 makes the
// life three times too long.
func TestAxialRowMustBeNextToTheThrust(t *testing.T) {
	input := func(row, thrust string) []byte {
		return []byte(`{"bearing":"6208","addedLoad":"0 N","radialLoad":"0.9 kN","thrust":"` + thrust + `","axialFactors":"` + row + `","shaftSpeed":"1200 rpm","wantedLife":"5000 h"}`)
	}
	for _, c := range []struct{ row, thrust, allowed string }{
		{"0.028", "0.5 kN", ""}, {"0.056", "0.5 kN", ""}, {"0.56", "0.5 kN", "0.028 or 0.056"}, {"0.014", "0.5 kN", "0.028 or 0.056"},
		{"0.014", "0.1 kN", ""}, {"0.028", "0.1 kN", "0.014"}, {"0.56", "9.2 kN", ""}, {"0.56", "12 kN", "a thrust up to 0.56 of the static rating"}, {"0.42", "12 kN", "0.56"}, {"0.56", "0 kN", ""},
	} {
		_, err := marinecalc.Run("bearing-life", input(c.row, c.thrust), marinecalc.Options{NoRanges: true})
		if list := problem.Of(err); c.allowed == "" && err != nil || c.allowed != "" && (len(list) != 1 || list[0].Where != "/axialFactors" || list[0].Allowed != c.allowed) {
			t.Errorf("row %s, thrust %s: %v, want %q", c.row, c.thrust, err, c.allowed)
		}
	}
	// A thrust known to a third may stray past the rows in its trials.
	if s := testboat.Run(t, "bearing-life", string(input("0.028", "0.5 kN ± 0.17 kN")), marinecalc.Options{}); s.Result("adjustedLife").Low == nil {
		t.Errorf("no range: %q", s.Notes)
	}
}

// Each limit of the bearing on both sides, and none is passed for want of a figure. The
// third is 6206 under 1.9 times its static rating, at a crawl and for a short life.
func TestTheRollingBearingIsJudgedAtRestToo(t *testing.T) {
	const typed = `"dynamicRating":"19.5 kN","radialFactor":0.56,"axialFactor":1,"loadLimit":0.44,`
	for _, c := range []struct{ what, input, limit, word string }{
		{"a light load", typed + `"addedLoad":"0 N","staticRating":"10 kN","radialLoad":"1 kN","thrust":"0 kN","shaftSpeed":"1000 rpm"`, "bearing-static", "within"},
		{"no static rating", typed + `"radialLoad":"1 kN","thrust":"0 kN","shaftSpeed":"1000 rpm"`, "bearing-static", "not measured"},
		{"twice what dents it", typed + `"addedLoad":"0 N","staticRating":"10 kN","radialLoad":"19 kN","thrust":"0 kN","shaftSpeed":"10 rpm","wantedLife":"1000 h"`, "bearing-static", "beyond"},
		{"the same, its life", typed + `"addedLoad":"0 N","staticRating":"10 kN","radialLoad":"19 kN","thrust":"0 kN","shaftSpeed":"10 rpm","wantedLife":"1000 h"`, "bearing-life-wanted", "not measured"},
		{"the same, its share", typed + `"addedLoad":"0 N","staticRating":"10 kN","radialLoad":"19 kN","thrust":"0 kN","shaftSpeed":"10 rpm","wantedLife":"1000 h"`, "bearing-load-share", "beyond"},
		{"thrust of nine tenths", typed + `"addedLoad":"0 N","staticRating":"10 kN","radialLoad":"9.5 kN ± 0 %","thrust":"9 kN ± 0 %","shaftSpeed":"100 rpm"`, "bearing-static", "beyond"},
		{"rollers at 1.2", `"addedLoad":"0 N","rollingKind":"roller",` + typed + `"staticRating":"12 kN","radialLoad":"10 kN","thrust":"0 kN","shaftSpeed":"100 rpm"`, "bearing-static-roller", "beyond"},
		{"rollers under thrust, factors not known", `"rollingKind":"roller",` + typed + `"staticRating":"12 kN","radialLoad":"1 kN","thrust":"1 kN","shaftSpeed":"100 rpm"`, "bearing-static-roller", "not measured"},
		{"rigid, alignment not known", typed + `"couplingKind":"rigid","staticRating":"10 kN","radialLoad":"1 kN","thrust":"0 kN","shaftSpeed":"1000 rpm","wantedLife":"1000 h"`, "bearing-life-wanted", "not measured"},
		{"flexible, alignment not known", typed + `"couplingKind":"flexible","staticRating":"10 kN","radialLoad":"1 kN","thrust":"0 kN","shaftSpeed":"1000 rpm","wantedLife":"1000 h"`, "bearing-life-wanted", "within"},
		{"what is lost, not known", typed + `"staticRating":"10 kN","radialLoad":"1 kN","thrust":"0 kN","shaftSpeed":"1000 rpm"`, "bearing-life-lost", ""},
		{"what is lost", typed + `"staticRating":"10 kN","radialLoad":"1 kN","addedLoad":"0.5 kN","thrust":"0 kN","shaftSpeed":"1000 rpm"`, "bearing-life-lost", "beyond"},
	} {
		s := testboat.Run(t, "bearing-life", `{`+c.input+`}`, marinecalc.Options{})
		if said := advised(s, "What misalignment adds is not known"); said != (s.Result("misalignmentLoad") == nil) {
			t.Errorf("%s: said that misalignment is not known: %v", c.what, said)
		}
		if got := wordOf(s, c.limit); got != c.word {
			t.Errorf("%s: %s is %q, want %q", c.what, c.limit, got, c.word)
		}
	}
}

// A bore that the table of seats does not cover hinders no life.
func TestASeatWithoutARowHindersNothing(t *testing.T) {
	s := testboat.Run(t, "bearing-life", `{"dynamicRating":"200 kN","axialFactor":1,"loadLimit":0.4,"addedLoad":"0 N","radialLoad":"1 kN","thrust":"0 kN","shaftSpeed":"1000 rpm","bearingBore":"140 mm","seatFit":"k6"}`, marinecalc.Options{})
	if s.Result("adjustedLife") == nil || s.Result("leastInterference") != nil {
		t.Errorf("life %v, interference %v", s.Result("adjustedLife"), s.Result("leastInterference"))
	}
	if got := wordOf(s, "seat-interference"); got != "not measured" {
		t.Errorf("the seat: %q", got)
	}
}

// A ring is too tight above the tightest of its fit, 25 µm of k6 under a 30 mm
// ring of Normal class (ISO 286-2: +15 to +2 µm; ISO 492: 0 to -10 µm), and
// without a fit above the tightest usual seat, p6, 45 µm.
func TestARingIsNotTooTight(t *testing.T) {
	const fit = `"seatFit":"k6",`
	for _, c := range []struct{ fit, seat, limit, word, least string }{
		{fit, "30.100", "seat-too-tight", "beyond", "cannot tell"},
		{fit, "30.010", "seat-too-tight", "within", "within"},
		{"", "30.100", "seat-too-tight-to-30", "beyond", "cannot tell"},
		{"", "30.020", "seat-too-tight-to-30", "within", "within"},
	} {
		s := testboat.Run(t, "bearing-life", `{"bearing":"6206","axialFactors":"0.11","radialLoad":"0.9 kN","thrust":"1.2 kN","shaftSpeed":"1300 rpm",`+c.fit+`"seatDiameter":"`+c.seat+` mm ± 0.002 mm","boreDiameter":"29.995 mm ± 0.002 mm"}`, marinecalc.Options{})
		if got, least := wordOf(s, c.limit), wordOf(s, "seat-interference-measured"); got != c.word || least != c.least {
			t.Errorf("%s%s mm: %s is %q, want %q; tight at all %q, want %q", c.fit, c.seat, c.limit, got, c.word, least, c.least)
		}
	}
}
