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
		if c.name == "fill" || c.name == "blank" {
			args = []string{c.name, "shaft-torque", "--zzzzzzzz", "1", "--json"}
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

// Each flag stands once in the tables of help, manual and completion, as one
// that takes a value or as one that does not, as its command reads it.
func TestFlagsTakeWhatIsToldOfThem(t *testing.T) {
	of := map[string]flagOf{}
	for _, list := range [][]flagOf{ofSome, ofRuns} {
		for _, f := range list {
			if _, twice := of[f.name]; twice || f.does == "" {
				t.Errorf("--%s stands twice, or does nothing", f.name)
			}
			of[f.name] = f
		}
	}
	used := map[string]bool{}
	for _, c := range commands {
		names := slices.DeleteFunc(slices.Clone(c.flags), func(name string) bool { return name == "+" })
		if len(names) < len(c.flags) {
			for _, f := range ofRuns {
				names = append(names, f.name)
			}
		}
		for _, name := range names {
			f, told := of[name]
			if used[name] = true; !told {
				t.Errorf("nothing tells of --%s of %s", name, c.name)
				continue
			}
			if c.name == "index" { // takes its one by hand
				continue
			}
			args := []string{c.name, "--" + name, "--zzzzzzzz", "--json"}
			if c.name == "fill" {
				args = slices.Insert(args, 1, "shaft-torque")
			}
			var said struct{ Problems []struct{ Where string } }
			s := say("", args...)
			_ = json.Unmarshal([]byte(s.errs), &said) // what is no list of problems has none
			bare := len(said.Problems) == 1 && said.Problems[0].Where == "--zzzzzzzz"
			if bare != (f.of == "") {
				t.Errorf("--%s of %s is told with %q: %v", name, c.name, f.of, s)
			}
		}
	}
	for name := range of {
		if !used[name] {
			t.Errorf("no command takes --%s", name)
		}
	}
}

// Of two values that differ neither is taken in silence; a list may be given
// several times, and the same value twice.
func TestAFlagIsGivenOnce(t *testing.T) {
	bolt := []string{"fill", "bolt-preload", "--grade", "iso-8.8", "--finish", "oiled", "--nut", "plain-nut", "--no-ranges", "--thread", "M10x1.5"}
	for _, c := range []struct {
		more string
		code int
	}{{"--thread M8x1.25", exitBad}, {"--thread M10x1.5", exitDone}, {"--no-ranges", exitDone}, {"--units us --units metric", exitBad}} {
		s := say("", append(slices.Clone(bolt), strings.Fields(c.more)...)...)
		if s.code != c.code || c.code == exitBad && !strings.Contains(s.errs, "was given as") {
			t.Errorf("%s: %d, %s", c.more, s.code, s.errs)
		}
	}
}
