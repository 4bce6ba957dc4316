package quantity

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

func TestPrint(t *testing.T) {
	const in = testInch
	for _, c := range []struct {
		kind       string
		si         float64
		s          System
		metric, us string
		want       string
	}{
		{"length", 0.0111125, Both, "mm", "in", "11.11 mm (7/16 in)"},
		{"length", 0.0111, Both, "", "", "11.1 mm (0.437 in)"},
		{"length", 27.0 / 16 * in, US, "", "in", "1-11/16 in"},
		{"length", -27.0 / 16 * in, US, "", "in", "-1-11/16 in"},
		{"length", in / 64, US, "", "", "1/64 in"},
		{"length", in / 128, US, "", "", "0.007812 in"},
		{"length", 7.0 / 16 * in * (1 + 1e-8), US, "", "", "0.4375 in"},
		{"length", 7.0 / 16 * in * (1 + 1e-10), US, "", "", "7/16 in"},
		{"length", 2 * in, US, "", "", "2 in"},
		{"length", 0, US, "", "", "0 in"},
		{"length", math.Copysign(0, -1), US, "", "", "0 in"},
		{"length", 0.024 * in, US, "mm", "thou", "24 thou"},
		{"length", 0.0243219 * in, US, "mm", "thou", "24.3 thou"},
		{"length", 0.0023219 * in, US, "mm", "thou", "2.3 thou"},
		{"length", 0.0099712 * in, US, "mm", "thou", "10 thou"},
		{"length", 0.00023219 * in, US, "mm", "thou", "0.23 thou"},
		{"length", 0.032, Metric, "", "", "32 mm"},
		{"length", 0.032, Metric, "furlong", "", "32 mm"},
		{"length", 0.0320049, Metric, "", "", "32 mm"},
		{"length", 12346, Metric, "m", "", "12350 m"},
		{"length", 0.000000123456, Metric, "mm", "", "0.1235 µm"},
		{"length", 0.0000000123456, Metric, "mm", "", "0.01235 µm"},
		{"length", 5.355e-7, Metric, "mm", "", "0.5355 µm"},
		{"length", -5.355e-7, Metric, "mm", "", "-0.5355 µm"},
		{"length", 1e-6, Metric, "mm", "", "0.001 mm"},
		{"length", 0.5501, Metric, "mm", "", "550.1 mm"},
		{"length", 5.5011, Metric, "mm", "", "5501 mm"},
		{"time", 0.06963 * 60, Metric, "min", "", "4.178 s"},
		{"time", 696.3 * 60, Both, "min", "min", "11.61 h"},
		{"time", 59 * 60, Metric, "min", "", "59 min"},
		{"time", 0, Metric, "min", "", "0 min"},
		{"time", -0.05 * 3600, US, "h", "h", "-3 min"},
		{"time", 20000 * 3600, Metric, "h", "", "20000 h"},
		{"time", 3650 * 86400, Metric, "day", "", "10 years"},
		{"time", 90 * 86400, Metric, "day", "", "90 days"},
		{"time", 86400, Metric, "day", "", "1 day"},
		{"time", 0.00001 * 86400, Metric, "day", "", "0.864 s"},
		{"length", 9999900, Metric, "m", "", "1e7 m"},
		{"length", 9999400, Metric, "m", "", "9999000 m"},
		{"length", math.NaN(), Metric, "", "", "not known"},
		{"torque", 61, Both, "", "", "61 N·m (44.99 lbf·ft)"},
		{"torque", 61, Metric, "Nm", "", "61 N·m"},
		{"rotation-speed", 80 * math.Pi, Both, "", "", "2400 rpm"},
		{"temperature", 303.15, Both, "", "", "30 °C (86 °F)"},
		{"temperature", 273.15000000000003, Metric, "", "", "0 °C"},
		{"temperature-difference", 5, Both, "", "", "5 °C (9 °F)"},
		{"ratio", 0.75, Both, "", "", "0.75"},
		{"ratio", 0.75, Both, "%", "%", "75 %"},
		{"angle", math.Pi / 2, Metric, "o'clock", "", "3 o'clock"},
		{"angle", 0, Metric, "o'clock", "", "12 o'clock"},
		{"angle", math.Pi / 12, Metric, "o'clock", "", "12.5 o'clock"},
		{"angle", 2 * math.Pi * 0.99999, Metric, "o'clock", "", "12 o'clock"},
		{"angle", -math.Pi / 2, Metric, "o'clock", "", "9 o'clock"},
		{"drip-rate", 1.0 / 6, Both, "", "", "10 drips/min"},
		{"money", 12345.5, Both, "EUR", "EUR", "12345.50 EUR"},
		{"money", 120, US, "EUR", "USD", "120 USD"},
		{"money", 120, Metric, "", "", "120"},
	} {
		if got := kind(t, c.kind).Print(c.si, c.s, c.metric, c.us); got != c.want {
			t.Errorf("%s %v: %q, want %q", c.kind, c.si, got, c.want)
		}
	}
	if got := kind(t, "length").Format(0.0111125, "in"); got != "0.4375 in" {
		t.Errorf("Format gives %q", got)
	}
	if got := kind(t, "length").Format(math.Inf(1), "in"); got != "not known" {
		t.Errorf("Format gives %q", got)
	}
}

// forUnits calls f with each unit of each kind and a value of that unit.
func forUnits(t *testing.T, f func(k *Kind, unit string, si float64)) {
	random := rand.New(rand.NewPCG(2, 11))
	for _, k := range Kinds() {
		names := k.Units()
		if k.isMoney() {
			names = []string{"EUR", "JPY"}
		}
		for _, name := range names {
			u, _ := k.find(name)
			for range 2000 {
				x := math.Exp(random.Float64()*40-20) * float64(1-2*random.IntN(2))
				switch {
				case k.Name == "temperature":
					x = 200 + 1300*random.Float64()
				case u.style == clock:
					x = 12 * random.Float64()
				}
				f(k, name, u.toSI(x))
				if k.Name != "temperature" && u.style != clock {
					f(k, name, u.toSI(float64(random.IntN(2000))/100))
				}
			}
		}
	}
}

func TestExactComesBack(t *testing.T) {
	forUnits(t, func(k *Kind, unit string, si float64) {
		text := k.Exact(si, unit)
		r, err := k.Parse(text)
		switch {
		case err != nil:
			t.Fatalf("%s %v: %q: %v", k.Name, si, text, err)
		case r.Unit != unit:
			t.Fatalf("%s: %q has the unit %q, not %q", k.Name, text, r.Unit, unit)
		case k.Name == "temperature":
			if math.Abs(r.SI-si) > 1e-12*math.Abs(si) {
				t.Fatalf("%s: %q = %.17g, not %.17g", k.Name, text, r.SI, si)
			}
		case ulps(r.SI, si) > 1:
			t.Fatalf("%s: %q = %.17g, not %.17g", k.Name, text, r.SI, si)
		}
	})
}

func TestExactIsShort(t *testing.T) {
	for _, c := range []struct {
		kind, text, want string
	}{
		{"length", "32 mm", "32 mm"}, {"length", "0.1 in", "0.1 in"}, {"length", "1-11/16 in", "1.6875 in"},
		{"length", `7/16"`, `0.4375 "`}, {"torque", "45 lb-ft", "45 lb-ft"}, {"rotation-speed", "2400 rpm", "2400 rpm"},
		{"temperature", "30 °C", "30 °C"}, {"temperature", "86.5 °F", "86.5 °F"}, {"ratio", "0.75", "0.75"},
		{"angle", "90 deg", "90 deg"}, {"angle", "90°", "90°"}, {"money", "99.95 EUR", "99.95 EUR"}, {"length", "0 mm", "0 mm"},
	} {
		k := kind(t, c.kind)
		r, err := k.Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if got := k.Exact(r.SI, r.Unit); got != c.want {
			t.Errorf("%s: %q comes out as %q", c.kind, c.text, got)
		}
	}
	if got := kind(t, "length").Exact(2, "kg"); got != "2 m" {
		t.Errorf("2 m in kg comes out as %q", got)
	}
	if got := kind(t, "length").Exact(math.NaN(), "m"); got != "" {
		t.Errorf("NaN comes out as %q", got)
	}
}

func TestPrintComesBack(t *testing.T) {
	forUnits(t, func(k *Kind, unit string, si float64) {
		u, _ := k.find(unit)
		tolerance := u.width(math.Abs(u.fromSI(si))) * 0.5e-3 * (1 + 1e-9) // half a unit of the 4th digit
		switch u.style {
		case coarse:
			tolerance = max(tolerance, min(u.width(0.05), math.Abs(si)*0.05)*(1+1e-9))
		case degrees:
			tolerance += u.width(0.005)
		case clock:
			tolerance = u.width(0.0051)
		case currency:
			tolerance = max(tolerance, 0.005*(1+1e-9))
		}
		for _, text := range []string{k.Print(si, Metric, unit, ""), k.Print(si, US, "", unit), k.Format(si, unit)} {
			r, err := k.Parse(text)
			if err != nil {
				t.Fatalf("%s %v: %q: %v", k.Name, si, text, err)
			}
			miss := math.Abs(r.SI - si)
			if u.style == clock {
				miss = min(miss, 2*math.Pi-miss)
			}
			if miss > tolerance {
				t.Fatalf("%s: %q = %.17g, too far from %.17g", k.Name, text, r.SI, si)
			}
		}
		if both := k.Print(si, Both, unit, unit); strings.Contains(both, "(") && !strings.Contains(unit, "(") {
			t.Fatalf("%s: %q says the same twice", k.Name, both)
		}
	})
}

// A value shows no digit that its accuracy does not support: two of the
// accuracy itself, as JCGM 100:2008, 7.2.6 has it.
func TestPrintTo(t *testing.T) {
	for _, c := range []struct {
		kind     string
		si, half float64
		system   System
		want     string
	}{
		{"ratio", 0.7531, 0.26, Metric, "75 %"},
		{"torque", 37.8412, 9.5, Metric, "37.8 N·m"},
		{"torque", 37.8412, 0.02, Metric, "37.84 N·m"},
		{"torque", 37.8412, 0, Metric, "37.84 N·m"},
		{"length", 0.000012, 0.01, Metric, "0 mm"},
		{"length", 8.674e-19, 0, Metric, "0 µm"},
		{"length", 0.0254 / 16 * 7, 0.005, US, "0.44 in"},
		{"length", 0.0254 / 16 * 7, 0.0001, US, "7/16 in"},
		{"temperature-difference", 12.04, 1.5, Metric, "12 K"},
		{"angle", 3.3e-14, 0, Metric, "0°"},
		{"ratio", 0.0008, 0.012, Metric, "0.1 %"}, // beside 0.1 to 2.5 %, and no digit finer than these
		{"ratio", -0.0006, 0.012, Metric, "-0.1 %"},
		{"ratio", 0.0004, 0.012, Metric, "0 %"},
	} {
		k, _ := Lookup(c.kind)
		units := [2]string{}
		if c.kind == "temperature-difference" {
			units[0] = "K"
		}
		if c.kind == "ratio" {
			units[0] = "%"
		}
		if got := k.In(units[0], units[1]).PrintTo(c.si, c.half, c.system); got != c.want {
			t.Errorf("%s %g ± %g: %q, want %q", c.kind, c.si, c.half, got, c.want)
		}
	}
}

// An amount of money has the figures that its accuracy leaves it, and what is
// known to the cent its cents; a bound that was converted has three figures.
func TestPrintNoMoreThanIsKnown(t *testing.T) {
	of := func(name, metric, us string) Shown {
		k, _ := Lookup(name)
		return k.In(metric, us)
	}
	drips := of("drip-rate", "drips/min", "drips/min")
	for x, want := range map[float64]string{1: "1 drip/min", 2: "2 drips/min", 11: "11 drips/min", 0.1: "0.1 drips/min"} {
		if got := drips.Print(x/60, Metric); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	money := of("money", "EUR", "EUR")
	for _, c := range []struct {
		x, half float64
		want    string
	}{{5902.93, 4000, "5900 EUR"}, {5902.93, 40, "5900 EUR"}, {592.93, 40, "593 EUR"}, {5902.93, 0.9, "5902.93 EUR"}, {5902.93, 0, "5902.93 EUR"}, {1036, 0, "1036 EUR"}, {-489.2, 300, "-490 EUR"}} {
		if got := money.PrintTo(c.x, c.half, Metric); got != c.want {
			t.Errorf("%g ± %g: %s, want %s", c.x, c.half, got, c.want)
		}
	}
	if got := money.PrintSpan(2602.16, 10614.55, Metric); got != "2600 to 10600 EUR" {
		t.Error(got)
	}
	if got := money.PrintSpan(99.5, 100.25, Metric); got != "99.50 to 100.25 EUR" {
		t.Error(got)
	}
	length := of("length", "mm", "in")
	for si, want := range map[float64]string{0.0005: "0.5 mm (0.0197 in)", 0.003 * 0.0254: "0.0762 mm (0.003 in)", 0.0002: "0.2 mm (0.00787 in)"} {
		if got := length.PrintFigures(si, 3, Both); got != want {
			t.Errorf("%g: %s, want %s", si, got, want)
		}
	}
}

// A figure that was converted is printed as it is said in the reader's unit.
func TestPrintConverted(t *testing.T) {
	for _, c := range []struct {
		kind, metric, us string
		si               float64
		want             string
	}{
		{"length", "mm", "in", 0.003 * 0.0254, "0.076 mm (0.003 in)"}, {"length", "mm", "in", 0.00001, "0.01 mm (0.0004 in)"}, {"length", "mm", "in", 0.0005, "0.5 mm (0.02 in)"},
		{"length", "mm", "thou", 0.00006, "0.06 mm (2.4 thou)"}, {"length", "mm", "in", 1.375 * 0.0254, "34.9 mm (1.4 in)"},
		{"velocity", "mm/s", "in/s", 0.0045, "4.5 mm/s (0.18 in/s)"}, {"temperature", "°C", "°F", 328.15, "55 °C (131 °F)"}, {"length", "mm", "in", 0, "0 mm (0 in)"}, {"ratio", "", "", 0.001, "0.001"},
	} {
		k, _ := Lookup(c.kind)
		if got := k.In(c.metric, c.us).PrintConverted(c.si, Both); got != c.want {
			t.Errorf("%s %g: %q, want %q", c.kind, c.si, got, c.want)
		}
	}
	if got := (Shown{}).PrintConverted(1.23456, Metric); got != "1.235" {
		t.Error(got)
	}
}
