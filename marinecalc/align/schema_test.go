package align

import (
	"math"
	"reflect"
	"testing"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// The ranges and words of the schema are those that Coupling takes.
func TestRangesAgreeWithSchema(t *testing.T) {
	k, err := contract.OpenCalculation("coupling-alignment")
	if err != nil {
		t.Fatal(err)
	}
	input := k.Input.Child
	same := func(name string, p *contract.Property, lo, hi float64) {
		t.Helper()
		if p.Minimum == nil || p.Maximum == nil || *p.Minimum != lo || *p.Maximum != hi {
			t.Errorf("%s: the schema does not say %g to %g", name, lo, hi)
		}
	}
	same("couplingDiameter", input("couplingDiameter"), 0.03, 0.8)
	same("gap", input("readings").Items.Child("gap"), 0, 0.05)
	same("step", input("rimReadings").Items.Child("step"), -0.05, 0.05)
	for _, list := range []string{"readings", "rimReadings"} {
		if p := input(list); p.MinItems != fewest || p.MaxItems != most {
			t.Errorf("%s: %d to %d items", list, p.MinItems, p.MaxItems)
		}
		for _, angle := range []string{"clock", "turn"} {
			same(list+" "+angle, input(list).Items.Child(angle), 0, 2*math.Pi)
		}
	}
	if !reflect.DeepEqual(input("couplingKind").Enum, []string{string(Rigid), string(Flexible)}) ||
		!reflect.DeepEqual(input("turned").Enum, []string{string(ShaftFlange), string(BothFlanges)}) {
		t.Error("the words of couplingKind or turned differ")
	}
}

func TestCouplingRefuses(t *testing.T) {
	c := truth{mean: 1e-3, fixed: vector{1e-4, 0}}
	good := func() CouplingInput { return faces(c.read(round(4), []float64{0})) }
	degrees := func(d ...float64) []float64 {
		for i := range d {
			d[i] *= math.Pi / 180
		}
		return d
	}
	nan := math.NaN()
	for _, k := range []struct {
		name   string
		spoil  func(*CouplingInput)
		places []string
	}{
		{"nothing", func(in *CouplingInput) { *in = CouplingInput{} }, []string{"/couplingDiameter", "/couplingKind", "/readings"}},
		{"two places", func(in *CouplingInput) { in.Readings = c.read(round(2), []float64{0}) }, []string{"/readings"}},
		{"one place four times", func(in *CouplingInput) { in.Readings = c.read(degrees(0, 2, 4, 6), []float64{0}) }, []string{"/readings"}},
		{"all below", func(in *CouplingInput) { in.Readings = c.read(degrees(100, 150, 200, 250), []float64{0}) }, []string{"/readings"}},
		{"all to one side, across 12", func(in *CouplingInput) { in.Readings = c.read(degrees(300, 340, 20, 60), []float64{0}) }, []string{"/readings"}},
		{"one place a turn", func(in *CouplingInput) {
			in.Readings = nil
			for _, a := range round(4) {
				in.Readings = append(in.Readings, Reading{Clock: quantity.Direction(a), Turn: quantity.Angle(a), Gap: 0.001})
			}
		}, []string{"/readings"}},
		{"negative gap", func(in *CouplingInput) { in.Readings[2].Gap = -0.001 }, []string{"/readings/2/gap"}},
		{"metres for millimetres", func(in *CouplingInput) { in.Readings[1].Gap = 0.4 }, []string{"/readings/1/gap"}},
		{"clock as an hour", func(in *CouplingInput) { in.Readings[3].Clock = 9 }, []string{"/readings/3/clock"}},
		{"NaN", func(in *CouplingInput) {
			in.Readings[0].Gap, in.Readings[0].Turn = quantity.Length(nan), quantity.Angle(nan)
		}, []string{"/readings/0/turn", "/readings/0/gap"}},
		{"steep", func(in *CouplingInput) { in.Readings[0].Gap = 0.007 }, []string{"/readings"}},
		{"contradiction", func(in *CouplingInput) {
			again := in.Readings[1]
			again.Gap += 5e-4
			in.Readings = append(in.Readings, again)
		}, []string{"/readings/4/gap"}},
		{"too many", func(in *CouplingInput) { in.Readings = make([]Reading, 97) }, []string{"/readings"}},
		{"too many steps", func(in *CouplingInput) { in.RimReadings = make([]RimReading, 97) }, []string{"/rimReadings"}},
		{"two steps", func(in *CouplingInput) { in.RimReadings = []RimReading{{}, {Clock: 3}} }, []string{"/rimReadings"}},
		{"far off", func(in *CouplingInput) {
			in.RimReadings = []RimReading{{Step: 0.02}, {Clock: math.Pi / 2}, {Clock: math.Pi, Step: -0.02}, {Clock: 3 * math.Pi / 2}}
		}, []string{"/rimReadings"}},
		{"words", func(in *CouplingInput) { in.CouplingKind, in.Turned = "stiff", "engine" }, []string{"/couplingKind", "/turned"}},
		{"all at once", func(in *CouplingInput) {
			in.CouplingDiameter = 4
			in.Readings[0].Gap, in.Readings[1].Turn = -1, 90
		}, []string{"/couplingDiameter", "/readings/0/gap", "/readings/1/turn"}},
	} {
		in := good()
		k.spoil(&in)
		_, err := Coupling(in)
		parttest.RefusedAt(t, err, k.places...)
	}
}

func TestRefusalsSayWhatWasRead(t *testing.T) {
	c := truth{mean: 1e-3, fixed: vector{1e-4, 0}}
	in := faces(c.read(round(4), []float64{0}))
	in.Readings[1].Gap = 0.0612
	_, err := Coupling(in)
	parttest.Says(t, err, "61.2 mm")
	in = faces(c.read(round(4), []float64{0}))
	again := in.Readings[1]
	again.Gap += 5e-4
	in.Readings = append(in.Readings, again)
	_, err = Coupling(in)
	parttest.Says(t, err, "read twice, 1 mm and 1.5 mm")
	parttest.Says(t, err, "was the shaft turned between the two?")
	_, err = Coupling(faces(c.read(round(2), []float64{0})))
	parttest.Says(t, err, "at 2 clock positions")
}

// A gap of none less its accuracy passes; an exact half circle passes; the
// same place read twice with answers alike passes.
func TestCouplingTakes(t *testing.T) {
	c := truth{mean: 2e-4, fixed: vector{1e-4, 0}}
	readings := c.read([]float64{0, math.Pi / 3, 2 * math.Pi / 3, math.Pi}, []float64{0})
	readings = append(readings, readings[1])
	readings[3].Gap -= 1.2e-4
	readings[4].Gap += 5e-5
	if _, err := Coupling(faces(readings)); err != nil {
		t.Error(err)
	}
}

func TestCodesHaveTheirWords(t *testing.T) {
	parttest.SameCodes(t, "coupling-alignment", "separation", NotTurned, TurnedTooLittle, ShaftFlangeTold, BothFlangesTold)
}
