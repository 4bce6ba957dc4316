package main

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// What a host can ask for the command line tells too.
func TestWhatHostsAskFor(t *testing.T) {
	boat := file(t, "tern.json", tern)
	yard := file(t, "yard.json", `{"title": "Yard", "limits": [{"id": "yard-torque", "calculation": "shaft-torque", "on": "shaftTorque", "title": "Yard's limit", "max": "1 kN·m", "source": {"document": "Yard sheet"}, "basis": "maker", "how": "calculate it", "why": "the coupling slips"}]}`)
	for _, c := range []struct {
		args []string
		has  string
	}{
		{[]string{"convert", "45 lbf·ft ± 5 %", "N·m"}, "61.01 N·m ± 3.051 N·m\n"}, // NIST SP 811: 1.355818 N·m
		{[]string{"convert", "18 °F", "K", "--kind", "temperature-difference"}, "10 K\n"},
		{[]string{"convert", "--json", "1 in", "mm"}, `"value": 25.4`},
		{[]string{"convert", "--", "-40 °F", "°C"}, "-40 °C\n"},
		{[]string{"form", "bolt-preload"}, `"const": "7/16-14 UNC"`},
		{[]string{"form", "gland-heat", "--boat", boat}, `"$schema": "http://json-schema.org/draft-07/schema#"`},
		{[]string{"schemas"}, "\nboat\n"},
		{[]string{"schemas", "boat"}, `"title": "Boat`},
		{[]string{"limits"}, "gland-rise-measured"},
		{[]string{"limits", "shaft-torque", "--rules", yard}, "Yard's limit: at most 1 kN·m [Yard sheet]"},
		{[]string{"limits", "--json"}, `"limits"`},
		{[]string{"tables"}, "threads"},
		{[]string{"tables", "threads"}, "7/16-14 UNC"},
	} {
		if s := say("", c.args...); s.code != exitDone || s.errs != "" || !strings.Contains(s.out, c.has) {
			t.Errorf("%q: want %q in %.600v", c.args, c.has, s)
		}
	}
	for want, args := range map[string][]string{
		`did you mean "threads"?`: {"tables", "thread"}, `did you mean "boat"?`: {"schemas", "bot"}, `did you mean "shaft-torque"?`: {"limits", "shaft-tork"},
		`is no unit of length`: {"convert", "5 mm", "kg"}, "needs a quantity and a unit": {"convert", "5 mm"}, "needs the name of one calculation": {"form"},
	} {
		if s := say("", args...); s.code != exitBad || !strings.Contains(s.errs, want) {
			t.Errorf("%q: %v", args, s)
		}
	}
	var form map[string]any
	for _, c := range marinecalc.Calculations() {
		if s := say("", "form", c.ID); json.Unmarshal([]byte(s.out), &form) != nil || form["title"] != c.Title {
			t.Errorf("%s: %.300v", c.ID, s)
		}
	}
}
