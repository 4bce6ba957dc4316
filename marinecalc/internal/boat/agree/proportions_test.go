package agree_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// A figure that is off by ten, or typed in inches as millimetres, contradicts
// another of the boat file; every boat of the tests goes together as she is.
func TestASlipOfTheDecimalPointIsTold(t *testing.T) {
	const whole = `"propeller": {"diameter": "430 mm", "mass": "6 kg"}, "shaft": {"diameter": "25 mm"}, "coupling": {"diameter": "102 mm"}, "gland": {"boxBore": "41 mm", "boxDepth": "48 mm"}, "gearbox": {"ratioAhead": "2.15", "ratioAstern": "1.95"}, "engine": {"mass": "165 kg", "power": "21 kW"}`
	codes := func(text string) (list string) {
		for _, d := range agree.Of(testboat.Read(t, `{"name": "Tern", `+text+`}`), rules.Standard()) {
			list += d.Code + " "
		}
		return list
	}
	if got := codes(whole); got != "" {
		t.Errorf("what goes together is told of: %s", got)
	}
	for _, c := range []struct{ was, slipped, code string }{
		{"430 mm", "4300 mm", "propeller-on-shaft"}, {"25 mm", "250 mm", "propeller-on-shaft"}, {`"25 mm"`, `"635 mm"`, "flange-on-shaft"},
		{"6 kg", "60 kg", "propeller-mass"}, {"6 kg", "0.6 kg", "propeller-mass"}, {"102 mm", "1020 mm", "flange-on-shaft"}, {"102 mm", "40 mm", "flange-on-shaft"},
		{"48 mm", "480 mm", "box-depth"}, {"48 mm", "5.5 mm", "box-depth"}, {"2.15", "21.5", "ratios"}, {"1.95", "19.5", "ratios"},
		{"21 kW", "210 kW", "mass-for-power"}, {"21 kW", "2.1 kW", "mass-for-power"}, {"165 kg", "1650 kg", "mass-for-power"},
	} {
		if got := codes(strings.Replace(whole, c.was, c.slipped, 1)); !strings.Contains(got, "proportion-"+c.code) {
			t.Errorf("%s for %s: told %q, want %s", c.slipped, c.was, got, c.code)
		}
	}
	boats, _ := filepath.Glob(testboat.Root("testdata", "*", "*.json"))
	met := 0
	for _, file := range boats {
		if dir := filepath.Base(filepath.Dir(file)); dir != "boats" && dir != "cases" {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		met++
		for _, d := range agree.Of(testboat.Read(t, string(text)), rules.Standard()) {
			if strings.HasPrefix(d.Code, "proportion-") {
				t.Errorf("%s: %s", filepath.Base(file), d.Text)
			}
		}
	}
	if met < 50 {
		t.Errorf("%d boats", met)
	}
}
