package marinecalc_test

import (
	"encoding/json"
	"os"
	"regexp"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A survey that is read back from its JSON is the same, so that nothing of it is for Go
// alone: that past a limit the shaft must not run, above all.
func TestASurveyIsTheSameReadBack(t *testing.T) {
	stopped, runs, doubts, states := 0, 0, 0, 0
	for _, file := range []string{"boats/kittiwake", "cases/worn-flange-face", "cases/slipped-dial-bar", "gauges that disagree"} {
		text, err := os.ReadFile("../testdata/" + file + ".json")
		if file == "gauges that disagree" {
			text, err = os.ReadFile("../testdata/boats/kittiwake.json")
			text = regexp.MustCompile(`"couplingDial": \[[^\]]*\]`).ReplaceAll(text, []byte(`"couplingDial": [{"clock": "12 o'clock", "face": "0 mm", "rim": "0 mm"}, {"clock": "3 o'clock", "face": "0.30 mm", "rim": "-0.50 mm"},
				{"clock": "6 o'clock", "face": "0.60 mm", "rim": "-1.00 mm"}, {"clock": "9 o'clock", "face": "0.30 mm", "rim": "-0.50 mm"}, {"clock": "12 o'clock", "face": "0 mm", "rim": "0 mm"}]`))
		}
		if err != nil {
			t.Fatal(err)
		}
		s, err := marinecalc.Check(testboat.Read(t, string(text)), marinecalc.Options{Trials: 128})
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		written, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		var back marinecalc.Survey
		if err := json.Unmarshal(written, &back); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(s, &back, cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("%s: %s", file, diff)
		}
		for _, one := range back.Sheets {
			for _, v := range one.Verdicts {
				if v.Stops && v.Word == sheet.Beyond {
					stopped++
				}
				if v.Stops && v.Guide {
					t.Errorf("%s: the guide %s stops the shaft", file, v.Limit)
				}
				if v.State != "" {
					states++
				}
			}
			for _, n := range one.Next {
				if n.Runs {
					runs++
				}
			}
			for _, c := range one.Conflicts {
				if c.Doubt != "" {
					doubts++
				}
			}
		}
	}
	if stopped == 0 || runs == 0 || doubts == 0 || states == 0 {
		t.Errorf("%d verdicts stop a shaft, %d states, %d steps run it, %d conflicts withhold: the boats try nothing", stopped, states, runs, doubts)
	}
}
