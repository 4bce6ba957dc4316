package quantity

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/problem"
)

// As people write, with what they mean. The factors are those of the units.
func TestEverydayWritingIsRead(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		si         float64
	}{
		{"length", "5''", 5 * testInch},
		{"length", "1-1/4''", 1.25 * testInch},
		{"length", "5 in.", 5 * testInch},
		{"length", "12 thous", 0.012 * testInch},
		{"length", "0.25 mm ± 0.02", 0.00025},
		{"rotation-speed", "18 Hz", 36 * math.Pi}, // of a shaft: turns a second, 1080 a minute
		{"rotation-speed", "2400 tr/min", 80 * math.Pi},
		{"rotation-speed", "2400 U/min", 80 * math.Pi},
		{"rotation-speed", "2400 revs", 80 * math.Pi},
		{"rotation-speed", "2400 min-1", 80 * math.Pi},
		{"direction", "top", 0},
		{"direction", "Starboard", math.Pi / 2},
		{"direction", "stbd", math.Pi / 2},
		{"direction", "bottom", math.Pi},
		{"direction", "port", 3 * math.Pi / 2},
		{"direction", "12:30", math.Pi / 12},
		{"direction", "3:00", math.Pi / 2},
		{"direction", "3h", math.Pi / 2},
		{"direction", "9:00 o'clock", 3 * math.Pi / 2},
		{"drip-rate", "5 a minute", 1.0 / 12},
		{"drip-rate", "5 per minute", 1.0 / 12},
		{"drip-rate", "5/min", 1.0 / 12},
		{"money", "€180", 180},
		{"money", "180 €", 180},
		{"money", "£ 99.95", 99.95},
		{"money", "$180", 180},
		{"money", "180 $", 180},
		{"money", "A$ 180", 180},
		{"torque", "5 kgm", 5 * 9.80665},
		{"torque", "30 ft lbs.", 30 * testLbfFt},
		{"power", "40 bhp", 40 * 550 * testLbfFt},
		{"power", "40 cv", 40 * 735.49875},
		{"pressure", "2 bars", 2e5},
		{"temperature", "20 celsius", 293.15},
		{"temperature", "20 degC", 293.15},
		{"velocity", "10 kph", 10 / 3.6},
	} {
		k, _ := Lookup(c.kind)
		r, err := k.Parse(c.text)
		if err != nil || math.Abs(r.SI-c.si) > 1e-12*math.Max(1, math.Abs(c.si)) {
			t.Errorf("%s %q = %v, %v, want %v", c.kind, c.text, r.SI, err, c.si)
		}
	}
	if r, err := byName["length"].Parse("0.25 mm ± 0.02"); err != nil || math.Abs(r.Accuracy-0.00002) > 1e-15 {
		t.Errorf("the accuracy of 0.25 mm ± 0.02 is %v, %v", r.Accuracy, err)
	}
}

// What can mean several things, or more than one number can hold, is asked,
// and what is proposed means what was written.
func TestSuggestionsKeepTheMeaning(t *testing.T) {
	for _, c := range []struct{ kind, text, hint string }{
		{"money", "640", `"640 EUR"`},
		{"length", "12-15", `"12-15 mm"`},
		{"money", "150-200", `"150-200 EUR"`},
		{"money", "$1,100", `"1100"`},
		{"money", "$1,100", `"1.100"`},
		{"rotation-speed", "1,100 rpm", `"1.100"`},
		{"length", "1-1/4", `"1-1/4 in"`},
		{"length", "7/16", `"7/16 in"`},
		{"direction", "15:00", `"3 o'clock"`},
		{"direction", "18:30", `"6.5 o'clock"`},
		{"rotation-speed", "1,100 rpm", `"1100"`},
		{"length", "~5 mm", `"5 mm"`},
		{"length", "<0.05 mm", `"0.05 mm"`},
		{"length", "about 3 in", `"3 in"`},
	} {
		k, _ := Lookup(c.kind)
		r, err := k.Parse(c.text)
		p, ok := err.(problem.Problem)
		if !ok || !strings.Contains(p.Hint, c.hint) {
			t.Errorf("%s %q: %v, %v, want a hint with %s", c.kind, c.text, r, err, c.hint)
			continue
		}
		if proposed := c.hint[1 : len(c.hint)-1]; proposed != "1100" && proposed != "1.100" {
			if _, err := k.Parse(proposed); err != nil {
				t.Errorf("%s: what is proposed for %q cannot be read: %v", c.kind, c.text, err)
			}
		}
	}
}

// A range is its middle, and half its width behind ±: even between its ends.
func TestRangesAreRead(t *testing.T) {
	for _, c := range []struct {
		kind, text   string
		middle, half float64
	}{
		{"length", "12-15 thou", 13.5e-3 * testInch, 1.5e-3 * testInch},
		{"length", "12 thou - 15 thou", 13.5e-3 * testInch, 1.5e-3 * testInch},
		{"length", "0.1 – 0.2 mm", 0.00015, 0.00005},
		{"length", "0,1-0,2 mm", 0.00015, 0.00005},
		{"length", "5 to 7 in", 6 * testInch, testInch},
		{"length", "0.5-0.7 in", 0.6 * testInch, 0.1 * testInch},
		{"power", "50 to 60 kW", 55e3, 5e3},
		{"temperature", "60-70 °C", 338.15, 5},
		{"ratio", "5-10 %", 0.075, 0.025},
		{"ratio", "2-3", 2.5, 0.5},
		{"money", "$150-200", 175, 25},
		{"money", "150-200 €", 175, 25},
		{"drip-rate", "4-6 a minute", 1.0 / 12, 1.0 / 60},
	} {
		k, _ := Lookup(c.kind)
		r, err := k.Parse(c.text)
		if err != nil || math.Abs(r.SI-c.middle) > 1e-9*c.middle || math.Abs(r.Accuracy-c.half) > 1e-9*c.middle {
			t.Errorf("%s %q = %v ± %v, %v, want %v ± %v", c.kind, c.text, r.SI, r.Accuracy, err, c.middle, c.half)
		}
	}
	for _, text := range []string{"15-12 thou", "12-12 thou", "12-15-18 thou", "12 mm - 15 thou", "12-15 thou ± 1 thou", "12- thou"} {
		if r, err := byName["length"].Parse(text); err == nil {
			t.Errorf("%q is read as %v ± %v", text, r.SI, r.Accuracy)
		}
	}
	for text, code := range map[string]string{"$180": "USD", "C$180": "CAD", "180 $ ± 20": "USD", "NZ$ 180": "NZD"} {
		if r, err := byName["money"].Parse(text); err != nil || r.SI != 180 || r.Unit != code {
			t.Errorf("%q = %v %s, %v, want 180 %s", text, r.SI, r.Unit, err, code)
		}
	}
}

// A mixed number is no range, a fraction no date, a minus no range.
func TestRangesAreToldFromFractions(t *testing.T) {
	for text, si := range map[string]float64{"1-11/16 in": 27.0 / 16 * testInch, "-5 mm": -0.005, "5e-3 m": 0.005, "1 1/2 in": 1.5 * testInch} {
		if r, err := byName["length"].Parse(text); err != nil || math.Abs(r.SI-si) > 1e-15 {
			t.Errorf("%q = %v, %v", text, r.SI, err)
		}
	}
	if _, err := byName["length"].Parse("1-11 in"); err == nil || !strings.Contains(err.Error(), "not a fraction") {
		t.Errorf("1-11 in, a fraction without its stroke: %v", err)
	}
	for text, want := range map[string]bool{"1-1/4": true, "7/16": true, "1 1/2": true, "½": true, "12": false, "0.25": false, "5/min": false, "-1/2": true} {
		if got := Fraction(text); got != want {
			t.Errorf("Fraction(%q) = %t", text, got)
		}
	}
}
