package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

const demonstration = "../../testdata/boats/kittiwake.json"

func TestProcedureInWords(t *testing.T) {
	list := say("", "procedure")
	if list.code != exitDone || !strings.Contains(list.out, "Coupling\n") || !strings.Contains(list.out, "repack-gland") {
		t.Errorf("the list: %s%s", list.out, list.errs)
	}
	s := say("", "procedure", "repack-gland", "align-coupling", "--boat", demonstration, "--units", "us", "--trials", "256")
	for _, want := range []string{"Kittiwake", "0 of ", "[ ]  1 ", "DANGER: ", "As at the steps before: DANGER ("} {
		if s.code != exitDone || !strings.Contains(s.out, want) {
			t.Errorf("%q is not in %s%s", want, s.out, s.errs)
		}
	}
	if s = say("", "procedure", "repack-glnd"); s.code != exitBad || !strings.HasPrefix(s.errs, "procedure: ") || !strings.Contains(s.errs, `"repack-gland"`) {
		t.Errorf("a slip in the name: %d, %s", s.code, s.errs)
	}
	var p marinecalc.Procedure
	if s = say("", "procedure", "repack-gland", "--json"); json.Unmarshal([]byte(s.out), &p) != nil || p.Steps == 0 {
		t.Errorf("as JSON: %s%s", s.out, s.errs)
	}
}

func TestProcedureTicksOff(t *testing.T) {
	to := filepath.Join(t.TempDir(), "ticked.json")
	tick := []string{"procedure", "repack-gland", "--boat", demonstration, "--tick", "make-safe", "--date", "2026-07-01", "--time", "9:30", "--note", "key in pocket", "--out", to}
	if s := say("", tick...); s.code != exitDone {
		t.Fatal(s.errs)
	}
	s := say("", "procedure", "repack-gland", "--boat", to, "--no-ranges")
	for _, want := range []string{"1 of ", "Ticked off 2026-07-01 09:30.", "Noted: key in pocket", "Last ticked 2026-07-01"} {
		if !strings.Contains(s.out, want) {
			t.Errorf("%q is not in %s", want, s.out)
		}
	}
	if s = say("", "procedure", "--boat", to); !strings.Contains(s.out, "(1 of ") {
		t.Errorf("the list does not tell: %s", s.out)
	}
	if s = say("", "procedure", "repack-gland", "--boat", to, "--untick", "make-safe", "--date", "2026-07-01", "--out", to); s.code != exitDone {
		t.Fatal(s.errs)
	}
	if text, _ := os.ReadFile(to); strings.Contains(string(text), `"done": "`) {
		t.Errorf("still ticked: %s", text)
	}
	if s = say("", "procedure", "repack-gland", "--boat", to, "--end", "--date", "2026-07-01"); s.code != exitBad || !strings.Contains(s.errs, "no step of this work is ticked off") {
		t.Errorf("ended: %d, %s%s", s.code, s.out, s.errs)
	}
	say("", tick...)
	if s = say("", "procedure", "repack-gland", "--boat", to, "--end", "--date", "2026-07-02"); s.code != exitDone || !strings.Contains(s.out, "Repack the gland: 1 of ") {
		t.Errorf("ended: %d, %s", s.code, s.errs)
	}
	for where, args := range map[string][]string{
		"--tick: ":   {"procedure", "repack-gland", "--boat", demonstration, "--tick", "make-saf", "--date", "2026-07-01"},
		"--date: ":   {"procedure", "repack-gland", "--boat", demonstration, "--tick", "make-safe"},
		"--boat: ":   {"procedure", "repack-gland", "--tick", "make-safe", "--date", "2026-07-01"},
		"--end: ":    {"procedure", "repack-gland", "--boat", demonstration, "--tick", "make-safe", "--end", "--date", "2026-07-01"},
		"--record: ": {"procedure", "repack-gland", "--boat", demonstration, "--tick", "make-safe", "--date", "2026-07-01", "--record", "Drips"},
	} {
		if s := say("", args...); s.code != exitBad || !strings.HasPrefix(s.errs, where) {
			t.Errorf("%v: %d, %s", args, s.code, s.errs)
		}
	}
}

// Whose a maker's torque is stands beside it at its step, and figures that it rests on
// keep the names that they have.
func TestProcedureSaysWhoseATorqueIs(t *testing.T) {
	file := filepath.Join(t.TempDir(), "boat.json")
	text := `{"name": "Dunlin", "units": "metric", "coupling": {"boltCount": 4}, "shaft": {"diameter": "30 mm", "alloy": "s31600-annealed"}, "propeller": {"hubDiameter": "62 mm", "hubMetal": "manganese-bronze", "taper": "iso-4566", "taperLength": "70 mm", "taperSurfaces": "bronze-dry"},
		"engine": {"power": "20 kW", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": "2.5"}, "torques": [{"joint": "coupling-bolts", "torque": "45 N·m", "source": "Leaflet (invented), p. 2"}, {"joint": "propeller-nut", "thread": "M20x1.5", "torque": "90 N·m", "source": "Book (invented)"}]}`
	if err := os.WriteFile(file, []byte(strings.Replace(text, `"taperSurfaces"`, `"nutThread": "M20x1.5", "taperSurfaces"`, 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	s := say("", "procedure", "tighten-coupling-bolts", "refit-propeller", "--boat", file, "--no-ranges")
	plain := strings.Join(strings.Fields(s.out), " ")
	for _, says := range []string{"wrench setting: 45 N·m, the maker's (Leaflet (invented), p. 2)", "90 N·m, the maker's (Book (invented))", "nobody confirmed: ", ", Poisson's ratio of the"} {
		if !strings.Contains(plain, says) {
			t.Errorf("no %q", says)
		}
	}
}
