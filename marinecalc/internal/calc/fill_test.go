package calc_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc"
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
	thermometer := rules.Standard().Table(calc.Gauges).Find("contact-thermometer", nil).Values.Of("accuracy").Text
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
