package inputs_test

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
	"github.com/google/go-cmp/cmp"
)

func TestOriginsWinInTheirOrder(t *testing.T) {
	const boat = `{"name": "Test", "engine": {"power": "20 kW", "speed": "2400 rpm"}, "gearbox": {"ratioAhead": 2}`
	cases := []struct {
		name, boat, input string
		origin            sheet.Origin
		kilowatts         float64
	}{
		{"boat", boat + `}`, `{}`, sheet.FromBoat, 20},
		{"maker over boat", boat + `, "makersFigures": [{"of": "shaft-torque/enginePower", "value": "22 kW", "source": {"document": "Plate"}}]}`, `{}`, sheet.MakersFigure, 22},
		{"typed over all", boat + `, "makersFigures": [{"of": "shaft-torque/enginePower", "value": "22 kW", "source": {"document": "Plate"}}]}`, `{"enginePower": "25 kW"}`, sheet.Typed, 25},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := testboat.Read(t, c.boat)
			in := testboat.Run(t, "shaft-torque", c.input, marinecalc.Options{Boat: b, NoRanges: true}).Input("enginePower")
			if in.Origin != c.origin || *in.SI != c.kilowatts*1000 {
				t.Errorf("got %s %g W", in.Origin, *in.SI)
			}
		})
	}
	s := testboat.Run(t, "shaft-torque", `{"enginePower": "20 kW", "engineSpeed": "2400 rpm", "gearRatioAhead": 2}`, marinecalc.Options{NoRanges: true})
	if in := s.Input("gearboxEfficiency"); in.Origin != sheet.UsualValue || in.Source == "" {
		t.Errorf("the efficiency is %+v", in)
	}
}

func TestEarlierResultsAreTakenWithTheirRange(t *testing.T) {
	b := testboat.Demo(t, "kittiwake")
	s := testboat.Run(t, "gland-heat", `{}`, marinecalc.Options{Boat: b})
	in := s.Input("shaftSpeed")
	if in == nil || in.Origin != sheet.Earlier || in.Source != "Shaft torque" {
		t.Fatalf("the shaft speed is %+v", in)
	}
	torque := testboat.Run(t, "shaft-torque", `{}`, marinecalc.Options{Boat: b})
	if *in.SI != *torque.Result("shaftSpeed").SI {
		t.Errorf("%g here, %g there", *in.SI, *torque.Result("shaftSpeed").SI)
	}
}

// Problems of the boat file point into the boat file, also when a
// calculation finds them.
func TestProblemsOfTheBoatPointIntoTheBoat(t *testing.T) {
	_, err := marinecalc.ReadBoat([]byte(`{"name": "X", "shaft": {"diametre": "25 mm", "diameter": "25 kg"}, "readings": [{"date": "yesterday"}]}`))
	var places []string
	for _, p := range problem.Of(err) {
		places = append(places, p.Where)
	}
	if diff := cmp.Diff([]string{"/readings/0/date", "/shaft/diameter"}, places); diff != "" {
		t.Error(diff)
	}
	b := testboat.Read(t, `{"name": "X", "shaft": {"diameter": "50 mm", "alloy": "c46400-h02"}, "gland": {"boxBore": "41 mm", "packedLength": "32 mm", "packing": "flax", "water": "sea"}, "readings": [{"date": "2026-01-01", "dripRate": "5 drips/min"}]}`)
	_, err = marinecalc.Run("gland-heat", []byte(`{"shaftSpeed": "1000 rpm"}`), marinecalc.Options{Boat: b})
	if err == nil || problem.Of(err)[0].Where != "/boat/gland/boxBore" {
		t.Errorf("got %v", err)
	}
}

// What is missing and can be had by choosing is asked for as that choice, once.
func TestMissingIsAskedForByItsChoice(t *testing.T) {
	b := testboat.Read(t, `{"name": "Ternlet", "coupling": {"bolts": {"thread": "M10x1.5", "grade": "iso-8.8"}}}`)
	whole := testboat.Check(t, b, marinecalc.Options{NoRanges: true})
	i := slices.IndexFunc(whole.Missing, func(m survey.Missing) bool { return m.Calculation == "bolt-preload" })
	if i < 0 || len(whole.Missing[i].Needs) != 1 || whole.Missing[i].Needs[0].Input != "finish" {
		t.Errorf("bolt preload needs %+v", whole.Missing)
	}
}
