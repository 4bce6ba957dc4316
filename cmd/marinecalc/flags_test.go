package main

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// The flags that help, manual and completion tell of a command are those that
// it takes.
func TestFlagsAreThoseOfTheCommands(t *testing.T) {
	for _, c := range commands {
		if len(c.flags) == 0 || c.name == "index" { // index takes its one by hand
			continue
		}
		var told []string
		for _, name := range c.flags {
			if name != "+" {
				told = append(told, "--"+name)
				continue
			}
			for _, f := range ofRuns {
				told = append(told, "--"+f.name)
			}
		}
		args := []string{c.name, "--zzzzzzzz", "1", "--json"}
		if c.name == "fill" {
			args = []string{"fill", "shaft-torque", "--zzzzzzzz", "1", "--json"}
			form, err := marinecalc.Open("shaft-torque")
			if err != nil {
				t.Fatal(err)
			}
			for _, in := range form.Inputs {
				told = append(told, "--"+flagName(in.Name))
			}
		}
		var said struct{ Problems []struct{ Allowed string } }
		s := say("", args...)
		if err := json.Unmarshal([]byte(s.errs), &said); err != nil || len(said.Problems) != 1 {
			t.Errorf("%s: %v", c.name, s)
			continue
		}
		taken := strings.Split(said.Problems[0].Allowed, ", ")
		slices.Sort(told)
		slices.Sort(taken)
		if !slices.Equal(told, taken) {
			t.Errorf("%s tells of %q and takes %q", c.name, told, taken)
		}
	}
}
