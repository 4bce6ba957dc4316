package quantity

import "testing"

func TestPrintSpan(t *testing.T) {
	cases := []struct {
		kind       string
		low, high  float64
		s          System
		metric, us string
		want       string
	}{
		{"torque", 45.24, 75.37, Metric, "", "", "45 to 75 N·m"},
		{"torque", 45.24, 75.37, Both, "N·m", "lbf·ft", "45 to 75 N·m (33 to 56 lbf·ft)"},
		{"length", -0.00003144, 0.00003065, Metric, "mm", "in", "-0.031 to 0.031 mm"},
		{"length", 8.118e-7, 4.937e-5, Metric, "mm", "in", "0.001 to 0.049 mm"},
		{"angle", 0.000690, 0.001295, Metric, "°", "°", "0.040 to 0.074°"},
		{"temperature", 293.15, 313.15, US, "°C", "°F", "68 to 104 °F"},
		{"ratio", 0.5627, 0.9375, Metric, "%", "%", "56 to 94 %"},
		{"ratio", 1.01, 1.021, Metric, "%", "%", "101.0 to 102.1 %"},
		{"length", 0, 0.0000160, Metric, "mm", "in", "0 to 0.016 mm"},
		{"temperature", 273.15 + 19.4, 273.15 + 80.35, Metric, "°C", "°F", "19 to 80 °C"},
		{"temperature", 273.15 + 22.96, 273.15 + 25.04, Metric, "°C", "°F", "23 to 25 °C"},
		{"length", 0, 0.000051, Metric, "mm", "in", "0 to 0.051 mm"},
		{"length", 0.0000211, 0.0000409, US, "mm", "thou", "0.8 to 1.6 thou"},
		{"length", 0.0000021, 0.0000031, US, "mm", "thou", "0.08 to 0.12 thou"}, // "0.1 to 0.1" says that there is no range
		{"length", -0.0000005, 0.0000005, US, "mm", "thou", "-0.02 to 0.02 thou"},
		{"length", 0.10195, 0.10205, Metric, "mm", "in", "101.95 to 102.05 mm"},
		{"rotation-speed", 293.185, 293.245, Metric, "rpm", "rpm", "2799.7 to 2800.3 rpm"},
		{"length", 0.102, 0.102 + 1e-16, Metric, "mm", "in", "102 to 102 mm"},
	}
	for _, c := range cases {
		k, _ := Lookup(c.kind)
		if got := k.In(c.metric, c.us).PrintSpan(c.low, c.high, c.s); got != c.want {
			t.Errorf("%s %g to %g: got %q, want %q", c.kind, c.low, c.high, got, c.want)
		}
	}
}

// A range stands in the unit in which its value is printed.
func TestPrintSpanOf(t *testing.T) {
	k, _ := Lookup("time")
	v := k.In("day", "day")
	share, _ := Lookup("ratio")
	if got := share.In("", "").PrintTo(2e-5, 2.2e-4, Metric); got != "0.00002" {
		t.Errorf("two hundred-thousandths beside a range of as many digits: %q", got)
	}
	l, _ := Lookup("length")
	for si, want := range map[float64]string{1e-18: "0 mm, -0.038 to 0.038 mm", 2e-6: "0.002 mm, -0.036 to 0.040 mm", 0: "0 mm, -0.038 to 0.038 mm", 2e-4: "0.2 mm, 0.162 to 0.238 mm"} {
		v := l.In("mm", "in")
		if got := v.PrintTo(si, 38e-6, Metric) + ", " + v.PrintSpanOf(si, si-38e-6, si+38e-6, Metric); got != want {
			t.Errorf("%g: %q, want %q", si, got, want)
		}
	}
	for _, c := range []struct {
		size, low, high float64
		want            string
	}{
		{300 * day, 80 * day, 3200 * day, "80 to 3200 days"},
		{1200 * day, 80 * day, 3200 * day, "0.2 to 8.8 years"},
		{0, 80 * day, 3200 * day, "0.2 to 8.8 years"},
		{0, 0, 0.36, "0 to 0.36 s"},
	} {
		if got := v.PrintSpanOf(c.size, c.low, c.high, Metric); got != c.want {
			t.Errorf("%g to %g of %g: got %q, want %q", c.low, c.high, c.size, got, c.want)
		}
	}
}

func TestInfer(t *testing.T) {
	cases := []struct {
		text, kind string
		si         float64
	}{
		{"0.25 in", "length", 0.00635}, {"1/4 in", "length", 0.00635}, {"1200 rpm", "rotation-speed", 125.66370614359172},
		{"0.9", "ratio", 0.9}, {"90 %", "ratio", 0.9}, {"60 °C", "temperature", 333.15}, {"0.05 ± 0.02 mm", "length", 5e-5},
	}
	for _, c := range cases {
		r, k, err := Infer(c.text)
		if err != nil || k.Name != c.kind || r.SI != c.si {
			t.Errorf("%s: got %v %v %v", c.text, r.SI, k.Name, err)
		}
	}
	if _, _, err := Infer("12 furlongs"); err == nil {
		t.Error("an unknown unit was let through")
	}
}
