package results_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
	"github.com/google/go-cmp/cmp"
)

// The same seed gives the same numbers; another seed moves only the ranges,
// and those little.
func TestSeeds(t *testing.T) {
	const input = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled"}`
	a, again := testboat.Run(t, "bolt-preload", input, marinecalc.Options{Seed: 5}), testboat.Run(t, "bolt-preload", input, marinecalc.Options{Seed: 5})
	if diff := cmp.Diff(a, again); diff != "" {
		t.Error(diff)
	}
	b := testboat.Run(t, "bolt-preload", input, marinecalc.Options{Seed: 6}).Result("achievedPreload")
	r := a.Result("achievedPreload")
	if *r.SI != *b.SI || *r.Low == *b.Low || math.Abs(*r.Low-*b.Low) > 0.02**r.SI {
		t.Errorf("%v and %v", r.Low, b.Low)
	}
}

// The trials of a size that was read as nothing all lie above it; its interval
// holds what was read all the same.
func TestNoIntervalExcludesItsEstimate(t *testing.T) {
	even := `{"couplingDiameter":"102 mm","couplingKind":"rigid","readings":[
	 {"clock":"12 o'clock","gap":"0.30 mm"},{"clock":"3 o'clock","gap":"0.30 mm"},{"clock":"6 o'clock","gap":"0.30 mm"},{"clock":"9 o'clock","gap":"0.30 mm"}]}`
	s := testboat.RunOn(t, "", "coupling-alignment", even)
	if r := s.Result("gapDifference"); r == nil || r.Low == nil || *r.Low > *r.SI {
		t.Errorf("%+v", r)
	}
	for _, r := range s.Results {
		if r.SI != nil && r.Low != nil && (*r.SI < *r.Low || *r.SI > *r.High) {
			t.Errorf("%s: %g is not within %g to %g", r.Name, *r.SI, *r.Low, *r.High)
		}
	}
}

// What a person sets is one figure: trials neither move it as an input nor
// give it a range as a result.
func TestSettingsHaveNoRange(t *testing.T) {
	settings := 0
	for _, c := range catalogue.Calculations {
		k, err := c.Form()
		if err != nil {
			t.Fatal(err)
		}
		s := testboat.Run(t, c.ID, testboat.Typed(t, c.ID), marinecalc.Options{Trials: 256})
		for _, p := range k.Result.Properties {
			if r := s.Result(p.Name); p.Setting && r != nil {
				if settings++; r.Low != nil {
					t.Errorf("%s: %g to %g", p.Path, *r.Low, *r.High)
				}
			}
			if table := s.Table(p.Name); table != nil {
				for i, column := range p.Items.Properties {
					for _, row := range table.Rows {
						if column.Setting && row.Cells[i].Low != nil {
							t.Errorf("%s/%s: %+v", p.Path, column.Name, row.Cells[i])
						}
					}
				}
			}
		}
	}
	if settings == 0 {
		t.Error("no result is marked as a setting")
	}
}

// One input with a coarse gauge no longer silences the others: bearing length
// has nothing to do with an earlier clearance next to nothing.
func TestRefusedTrialsSpoilTheirOwn(t *testing.T) {
	const input = `{"shaftDiameter": "40 mm", "shellBore": "40.6 mm", "bearingLength": "200 mm", "runningTime": "500 h", "earlierClearance": "%s"}`
	sure := testboat.Run(t, "bearing-clearance", fmt.Sprintf(input, "0.3 mm"), marinecalc.Options{}).Verdict("bearing-length")
	unsure := testboat.Run(t, "bearing-clearance", fmt.Sprintf(input, "0.018 mm"), marinecalc.Options{}).Verdict("bearing-length")
	if sure == nil || unsure == nil || sure.Word != unsure.Word || math.Abs(*sure.Probability-*unsure.Probability) > 0.02 {
		t.Errorf("%+v, then %+v", sure, unsure)
	}
}

// A coarser gauge is never surer: once it cannot be told, no worse gauge tells,
// down to one that leaves nothing.
func TestCoarserGaugeIsNotSurer(t *testing.T) {
	untold := map[string]bool{}
	for _, accuracy := range []string{"± 0.05 mm", "± 0.2 mm", "± 0.5 mm", "± 1 mm", "± 2 mm", "± 100 %"} {
		s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "40 mm", "shellBore": "40.6 mm `+accuracy+`"}`, marinecalc.Options{})
		for _, v := range s.Verdicts {
			if v.On != "clearance" && v.On != "clearancePerDiameter" {
				continue
			}
			tells := v.Word.Plain() != sheet.CannotTell
			if tells && untold[v.Limit] {
				t.Errorf("%s: %+v", accuracy, v)
			}
			untold[v.Limit] = !tells
		}
	}
	for limit, last := range untold {
		if !last {
			t.Errorf("%s is told by a gauge that leaves nothing", limit)
		}
	}
	if len(untold) == 0 {
		t.Error("nothing is judged")
	}
}
