package inputs_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

func fits(t *testing.T, calculation, input string, o marinecalc.Options) map[string]marinecalc.Fit {
	t.Helper()
	got, err := new(marinecalc.Engine).Fits(t.Context(), calculation, []byte(input), o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// The nuts of a thread are told apart from the others, with what these do not go with,
// while other inputs are still open or wrong.
func TestPicksThatGoWithTheRest(t *testing.T) {
	for _, c := range []struct{ calculation, input, of, with, goes string }{
		{"bolt-preload", `{"thread": "3/8-24 UNF"}`, "nut", "3/8-24 UNF", "plain-nut ne-3/8-24"},
		{"bolt-preload", `{"thread": "3/8-24 UNF", "nut": "ne-3/8-16", "gripLength": "wide"}`, "nut", "3/8-24 UNF", "plain-nut ne-3/8-24"},
		{"bolt-preload", `{"nominalDiameter": "10 mm", "pitch": "1.5 mm"}`, "nut", "thread diameter 10 mm and pitch 1.5 mm", "plain-nut insert-m10"},
		{"bolt-preload", `{"nominalDiameter": "10 mm"}`, "nut", "thread diameter 10 mm", "plain-nut insert-m10"},
		{"bolt-fit", `{"thread": "3/8-24 UNF"}`, "nut", "3/8-24 UNF", "plain-nut ne-3/8-24"},
		{"thread-engagement", `{"thread": "1/4-20 UNC"}`, "insertSize", "1/4-20 UNC", "thin-wall-oversize-1/4"},
		{"bearing-clearance", `{"shaftDiameter": "25 mm", "bearingKind": "rubber"}`, "wornRule", "shaft diameter 25 mm and bearing: rubber in a metal or plastic shell", "practice-thirty-thou"},
		{"key-strength", `{"shaftDiameter": "25 mm"}`, "keyTable", "", "b17.1-square din-6885"},
	} {
		got := fits(t, c.calculation, c.input, marinecalc.Options{})[c.of]
		if list := strings.Join(got.Picks, " "); list != c.goes || got.With != c.with {
			t.Errorf("%s %s: %s go, the others not with %q; want %s, %q", c.calculation, c.input, list, got.With, c.goes, c.with)
		}
	}
	if got := fits(t, "bolt-preload", `{}`, marinecalc.Options{})["nut"]; got.With != "" || len(got.Picks) < 30 {
		t.Errorf("with nothing known %d nuts go, and the others not with %q", len(got.Picks), got.With)
	}
	boat := fits(t, "bolt-preload", `{}`, marinecalc.Options{Boat: testboat.Demo(t, "kittiwake")})["nut"]
	if !slices.Contains(boat.Picks, "insert-m10") || !strings.HasPrefix(boat.With, "M10") {
		t.Errorf("of the boat's bolts: %+v", boat)
	}
}

// What is said to go with the rest is taken by the run, and what is not is refused or
// told, of every pick that asks for another input, on every demonstration boat.
func TestWhatFitsIsWhatTheRunTakes(t *testing.T) {
	says := func(text string) bool {
		return strings.Contains(text, "does not go with the rest") || strings.Contains(text, "covers this size") || strings.Contains(text, ", not for this ")
	}
	asked := 0
	for _, name := range []string{"juniper", "kittiwake"} {
		o := marinecalc.Options{Boat: testboat.Demo(t, name), NoRanges: true}
		for _, e := range marinecalc.Calculations() {
			form, err := marinecalc.Open(e.ID)
			if err != nil {
				t.Fatal(err)
			}
			fits := fits(t, e.ID, `{}`, o)
			for _, in := range form.Inputs {
				fit, tied := fits[in.Name]
				if !tied {
					continue
				}
				for _, c := range in.Choices {
					s, err := marinecalc.Run(e.ID, []byte(`{"`+in.Name+`": "`+c.Pick+`"}`), o)
					told := err != nil && says(err.Error())
					if s != nil {
						told = slices.ContainsFunc(s.Notes, says) || says(s.Input(in.Name).Text)
					}
					if slices.Contains(fit.Picks, c.Pick) == told {
						t.Errorf("%s, %s, %s %s: goes %v, told %v: %v", name, e.ID, in.Name, c.Pick, !told, told, err)
					}
					asked++
				}
			}
		}
	}
	if asked < 300 {
		t.Errorf("only %d picks were tried", asked)
	}
}
