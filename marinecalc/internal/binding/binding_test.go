package binding_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/sheet"
	"example.org/driveline/marinecalc/torque"
)

// drive is a part of what shaft-torque takes, with fields of its own.
type drive struct {
	EnginePower    quantity.Power
	GearRatioAhead quantity.Ratio `unset:"NaN"`
	BoatSpeed      quantity.Velocity
}

func bound(t *testing.T, in, out reflect.Type) *binding.Form {
	t.Helper()
	k, err := binding.Bind("shaft-torque", in, out)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// A property lies in the field of its name, whatever the order of the fields;
// one without a field has none.
func TestPropertiesLieInTheirFields(t *testing.T) {
	k := bound(t, reflect.TypeFor[drive](), reflect.TypeFor[torque.ShaftResult]())
	in := drive{EnginePower: 20e3, GearRatioAhead: 2, BoatSpeed: 3}
	for name, want := range map[string]float64{"enginePower": 20e3, "gearRatioAhead": 2, "boatSpeed": 3} {
		if f, ok := k.Inputs.Field(reflect.ValueOf(&in).Elem(), k.Input.Child(name)); !ok || f.Float() != want {
			t.Errorf("%s: %v %v", name, f, ok)
		}
	}
	if _, ok := k.Inputs.Field(reflect.ValueOf(&in).Elem(), k.Input.Child("engineSpeed")); ok {
		t.Error("engineSpeed has a field")
	}
}

// Of what nobody gave only the fields tagged for it become NaN.
func TestClearMarksWhatIsNotGiven(t *testing.T) {
	k := bound(t, reflect.TypeFor[drive](), reflect.TypeFor[torque.ShaftResult]())
	in := drive{EnginePower: 20e3, GearRatioAhead: 2, BoatSpeed: 3}
	k.Inputs.Clear(reflect.ValueOf(&in).Elem())
	if !math.IsNaN(float64(in.GearRatioAhead)) || in.EnginePower != 20e3 || in.BoatSpeed != 3 {
		t.Errorf("%+v", in)
	}
}

// The words of a sheet are those of the schema, and a result has its way too.
func TestWordsAreTheSchemas(t *testing.T) {
	k := bound(t, reflect.TypeFor[torque.ShaftInput](), reflect.TypeFor[torque.ShaftResult]())
	p, r := k.Input.Child("enginePower"), k.Result.Child("shaftTorque")
	in, out := k.Inputs.Places[p.Index], k.Results.Places[r.Index]
	if in.Term.Name != "enginePower" || in.Term.Title != p.Title || in.Term.Kind != "power" || in.Way != (sheet.Way{}) {
		t.Errorf("input %+v, way %+v", in.Term, in.Way)
	}
	if out.Term.Title != r.Title || out.Way.Result != "shaftTorque" || out.Way.Formula != r.Formula || !strings.Contains(out.Way.Formula, "=") {
		t.Errorf("result %+v, way %+v", out.Term, out.Way)
	}
}

func TestAnUnknownCalculationIsNotBound(t *testing.T) {
	if _, err := binding.Bind("no-such", reflect.TypeFor[drive](), reflect.TypeFor[drive]()); err == nil {
		t.Error("it was bound")
	}
}

func TestNamesOfFields(t *testing.T) {
	for name, want := range map[string]string{"EnginePower": "enginePower", "Öl": "öl", "X": "x"} {
		if got := binding.JSONName(name); got != want {
			t.Errorf("%s is %s", name, got)
		}
	}
}

// A number is written and read through its pointer; a word has none.
func TestNumbersAreReachedByPointer(t *testing.T) {
	var v struct {
		Length quantity.Length
		Word   string
		Count  int
	}
	s := reflect.ValueOf(&v).Elem()
	n := binding.Number(s.Field(0))
	if n == nil {
		t.Fatal("a length is no number")
	}
	if *n = 0.25; v.Length != 0.25 {
		t.Errorf("the length is %v", v.Length)
	}
	if binding.Number(s.Field(1)) != nil || binding.Number(s.Field(2)) != nil {
		t.Error("a word or a count is a float")
	}
}
