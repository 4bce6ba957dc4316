package inputs_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

const gland = `"shaftDiameter": "32 mm", "boxBore": "50 mm", "packedLength": "36 mm", "shaftSpeed": "1200 rpm", "dripRate": "8 drips/min", "packing": "ptfe", "shaftAlloy": "s31600-annealed"`

// A bare reading has the accuracy of the gauge it was read with; one that was
// typed with its accuracy keeps that.
func TestReadingsHaveTheirGaugesAccuracy(t *testing.T) {
	rangeOf := func(temperature string) string {
		s := testboat.Run(t, "gland-heat", `{`+gland+`, "waterTemperature": "`+temperature+`"}`, marinecalc.Options{NoRanges: true})
		return s.Input("waterTemperature").Range
	}
	thermometer := rules.Standard().Table(inputs.Gauges).Find("contact-thermometer", nil).Values.Of("accuracy").Text
	if bare, typed := rangeOf("18 °C"), rangeOf("18 °C "+thermometer); bare == "" || bare != typed {
		t.Errorf("bare it is %q, with the thermometer's %s %q", bare, thermometer, typed)
	}
	if r := rangeOf("18 °C ± 3 °C"); r != "15 to 21 °C" {
		t.Errorf("typed with ± 3 °C it is %q", r)
	}
}

// A gauge that cannot read the quantity is refused where it was chosen.
func TestAGaugeOfAnotherQuantityIsRefused(t *testing.T) {
	_, err := marinecalc.Run("gland-heat", []byte(`{`+gland+`, "waterTemperature": "18 °C", "thermometer": "feeler-gauge"}`), marinecalc.Options{NoRanges: true})
	parttest.RefusedAt(t, err, "/thermometer")
}

// What cannot be read in an entry of a list is blamed on that entry.
func TestEntriesOfListsAreBlamedAtTheirPlace(t *testing.T) {
	_, err := marinecalc.Run("coupling-alignment", []byte(`{"couplingKind": "rigid", "couplingDiameter": "102 mm", "readings": [{"clock": "0°", "gap": "0.4 mm"}, {"clock": "90°", "gap": "0.4 kg"}, {"clock": "180°", "gap": "0.4 mm"}, {"clock": "north", "gap": "0.4 mm"}]}`), marinecalc.Options{NoRanges: true})
	parttest.RefusedAt(t, err, "/readings/1/gap", "/readings/3/clock")
}

// A list counts its entries, and a word is shown by its title.
func TestInputsAsTheyAreShown(t *testing.T) {
	s := testboat.Run(t, "coupling-alignment", testboat.Typed(t, "coupling-alignment"), marinecalc.Options{NoRanges: true})
	if in := s.Input("readings"); in == nil || in.Text != "4 entries" && in.Text != "8 entries" || in.SI != nil {
		t.Errorf("the readings are %+v", in)
	}
	if in := s.Input("couplingKind"); in == nil || in.Word != "rigid" && in.Word != "flexible" || in.Text == "" || in.SI != nil {
		t.Errorf("the kind is %+v", in)
	}
}

// A figure of nature that comes without an accuracy is not exact: it is off by
// what its row of the bare figures says, as far as it can be at all. One with
// an accuracy of its own, none among them, keeps that; nothing has none.
func TestBareFiguresAreNotExact(t *testing.T) {
	const input = `{"boltCount": 4, "boltCircle": "80 mm", "shaftTorque": "200 N·m", "preload": %q, "faceFriction": %q, "bearingShare": %q, "shearPlane": "thread", "thrust": %q}`
	for _, c := range []struct{ what, preload, friction, bearing, thrust, name, want string }{
		{"by its row", "20 kN", "0.15", "0.75", "0.5 kN", "preload", "15 to 25 kN"},
		{"with its own", "20 kN ± 1 kN", "0.15", "0.75", "0.5 kN", "preload", "19 to 21 kN"},
		{"known for certain", "20 kN ± 0 %", "0.15", "0.75", "0.5 kN", "preload", ""},
		{"another row", "20 kN", "0.15", "0.75", "0.5 kN", "faceFriction", "0.105 to 0.195"},
		{"as far as it can be", "20 kN", "0.15", "90 %", "0.5 kN", "bearingShare", "72 to 100 %"},
		{"certain too", "20 kN", "0.15", "0.75", "0.5 kN ± 0 %", "thrust", ""},
	} {
		s := testboat.Run(t, "coupling-grip", fmt.Sprintf(input, c.preload, c.friction, c.bearing, c.thrust), marinecalc.Options{Trials: 256})
		in := s.Input(c.name)
		if in.Range != c.want || (in.Range != "" && in.Range != "19 to 21 kN") != strings.HasPrefix(in.Source, "range of ") {
			t.Errorf("%s: %+v", c.what, in)
		}
	}
	s := testboat.Run(t, "shaft-droop", `{"shaftDiameter": "30 mm", "freeLength": "700 mm", "spanBehind": "1400 mm", "couplingMass": "3 kg", "couplingDiameter": "102 mm", "shaftAlloy": "s31600-annealed"}`, marinecalc.Options{Trials: 256})
	if none, mass := s.Input("propellerMass"), s.Input("couplingMass"); none.Range != "" || mass.Range != "2.85 to 3.15 kg" {
		t.Errorf("no propeller: %+v; the coupling: %+v", none, mass)
	}
}
