package calc_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"github.com/google/go-cmp/cmp"
)

func TestMakersResultStandsBesideOurs(t *testing.T) {
	s := testboat.Run(t, "bolt-preload", `{}`, marinecalc.Options{Boat: testboat.Demo(t, "juniper"), NoRanges: true})
	m := s.Result("wrenchSetting").Maker
	if m == nil || m.Text != "30 lbf·ft" || !strings.Contains(m.Source, "p. 2") {
		t.Errorf("got %+v", m)
	}
}

// A brief sheet is the whole one but for its worked lines and drawings, and
// the sources that only those name.
func TestBriefSheet(t *testing.T) {
	boat := testboat.Demo(t, "kittiwake")
	for _, entry := range marinecalc.Calculations() {
		input := `{}`
		if entry.ID == "thread-engagement" { // her coupling bolts have nuts
			input = `{"tappedMetal": "ductile-iron", "engagementLength": "16 mm"}`
		}
		whole, brief := testboat.Run(t, entry.ID, input, marinecalc.Options{Boat: boat}), testboat.Run(t, entry.ID, input, marinecalc.Options{Boat: boat, Brief: true})
		if len(whole.Work) == 0 || len(brief.Work) > 0 || len(brief.Drawings) > 0 {
			t.Errorf("%s: whole has %d lines, brief %d and %d drawings", entry.ID, len(whole.Work), len(brief.Work), len(brief.Drawings))
		}
		whole.Work, whole.Drawings, whole.Sources = brief.Work, brief.Drawings, brief.Sources
		if diff := cmp.Diff(whole, brief); diff != "" {
			t.Errorf("%s, brief (-whole +brief):\n%s", entry.ID, diff)
		}
	}
	var reply struct{ OK bool }
	if err := json.Unmarshal(marinecalc.Call([]byte(`{"ask": "run", "calculation": "shaft-torque", "brief": "yes"}`)), &reply); err != nil || reply.OK {
		t.Error("brief as a text was taken")
	}
}

func TestUnitsChangeTheTextsOnly(t *testing.T) {
	const input = `{"thread": "7/16-14 UNC", "grade": "j429-5", "finish": "oiled"}`
	metric, us := testboat.Run(t, "bolt-preload", input, marinecalc.Options{NoRanges: true}), testboat.Run(t, "bolt-preload", input, marinecalc.Options{Units: "us", NoRanges: true})
	for i, r := range metric.Results {
		if *r.SI != *us.Results[i].SI {
			t.Errorf("%s: %g and %g", r.Name, *r.SI, *us.Results[i].SI)
		}
	}
	if !strings.HasSuffix(metric.Result("wrenchSetting").Text, "N·m") || !strings.HasSuffix(us.Result("wrenchSetting").Text, "lbf·ft") {
		t.Errorf("%s, %s", metric.Result("wrenchSetting").Text, us.Result("wrenchSetting").Text)
	}
}

// What is done before the work that a sheet is about stands before it: the shaft is
// turned and read before an engine is moved.
func TestWhatComesBeforeStandsBefore(t *testing.T) {
	s := testboat.Run(t, "coupling-alignment", `{"couplingDiameter": "127 mm", "couplingKind": "rigid", "readings": [{"clock": "12:00", "gap": "0.5 mm"}, {"clock": "3:00", "gap": "0.3 mm"}, {"clock": "6:00", "gap": "0.1 mm"}, {"clock": "9:00", "gap": "0.3 mm"}]}`, marinecalc.Options{NoRanges: true})
	at := map[string]int{}
	for i, n := range s.Next {
		for _, begins := range []string{"Before the engine is moved", "Move the mounts"} {
			if strings.HasPrefix(n.Text, begins) {
				at[begins] = i + 1
			}
		}
	}
	if at["Before the engine is moved"] == 0 || at["Move the mounts"] <= at["Before the engine is moved"] {
		t.Errorf("%v in %+v", at, s.Next)
	}
}
