package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A result of one calculation is an input of the next: the droop of the boat
// goes into the alignment when its shaft end hung free, and only then.
func TestDroopFeedsTheAlignment(t *testing.T) {
	boat := testboat.Read(t, `{"name":"Marguerite","coupling":{"diameter":"102 mm","kind":"rigid","mass":"3 kg"},"shaft":{"diameter":"30 mm","alloy":"s31600-annealed","freeLength":"700 mm"},
		"readings":[{"date":"2026-05-02","couplingGaps":[{"clock":"12 o'clock","gap":"0.30 mm"},{"clock":"3 o'clock","gap":"0.35 mm"},{"clock":"6 o'clock","gap":"0.40 mm"},{"clock":"9 o'clock","gap":"0.35 mm"}]}]}`)
	o := marinecalc.Options{Boat: boat, NoRanges: true}
	droop := testboat.Run(t, "shaft-droop", `{}`, o)
	held, free := testboat.Run(t, "coupling-alignment", `{}`, o), testboat.Run(t, "coupling-alignment", `{"shaftEnd":"hanging-free"}`, o)
	gap := *droop.Result("droopGap").SI
	if got := *free.Result("gapVertical").SI - *held.Result("gapVertical").SI; math.Abs(got-gap) > 1e-12 {
		t.Errorf("the droop's gap of %g moved the vertical gap by %g", gap, got)
	}
	if in := free.Input("droopSlope"); in == nil || in.Origin != "earlier result" || in.Source != "Shaft droop" {
		t.Errorf("the slope came from %+v", in)
	}
	if held.Result("droopGapTaken") != nil {
		t.Error("a droop was taken off an end that was held up")
	}
}

// The bearing behind is judged with the propeller on and off: statics of an
// overhanging beam. A propeller that hangs nobody knows where leaves it open.
func TestBearingBehindWithThePropellerOff(t *testing.T) {
	const shaft = `{"shaftDiameter":"30 mm","freeLength":"1000 mm","spanBehind":"300 mm","couplingMass":"5 kg","shaftAlloy":"s31600-annealed"`
	for more, want := range map[string]string{
		``:                        "beyond",
		`,"propellerMass":"0 kg"`: "beyond",
		`,"propellerMass":"9 kg"`: "not measured",
		`,"propellerMass":"9 kg","propellerOverhang":"50 mm"`:   "beyond",
		`,"propellerMass":"60 kg","propellerOverhang":"300 mm"`: "within",
	} {
		s := runInput(t, "shaft-droop", shaft+more+"}", "metric")
		if v := verdictsOf(s)["droop-bearing-behind"]; string(v.Word) != want {
			t.Errorf("%s: %+v", more, v)
		}
	}
}

// A second section without its diameter is asked for that, and not accused of
// its bore.
func TestSecondSectionAsksForItsDiameter(t *testing.T) {
	_, err := marinecalc.Run("shaft-droop", []byte(`{"shaftDiameter":"30 mm","freeLength":"600 mm","couplingMass":"3 kg","shaftAlloy":"s31600-annealed","stepLength":"100 mm","shaftBore":"7 mm"}`), marinecalc.Options{})
	if err == nil || strings.Contains(err.Error(), "bore") || !strings.Contains(err.Error(), "/stepDiameter") {
		t.Errorf("%v", err)
	}
}

// A mass that nobody gave is not taken for none.
func TestMassesAreAskedFor(t *testing.T) {
	for id, c := range map[string]struct{ input, at string }{
		"shaft-droop": {`{"shaftDiameter":"30 mm","freeLength":"600 mm","shaftAlloy":"s31600-annealed"}`, "/couplingMass"},
		"shaft-whirl": {`{"sections":[{"diameter":"30 mm","length":"2700 mm"}],"bearings":[{"at":"0 mm"},{"at":"2550 mm"}],"shaftSpeed":"600 rpm","shaftAlloy":"s31600-annealed"}`, "/propellerMass"},
	} {
		if _, err := marinecalc.Run(id, []byte(c.input), marinecalc.Options{}); err == nil || !strings.Contains(err.Error(), c.at) {
			t.Errorf("%s: %v", id, err)
		}
	}
}
