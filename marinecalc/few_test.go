package marinecalc_test

import (
	"encoding/json"
	"regexp"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// figure is a number, or that one trial of a thousand lay on the other side.
var figure = regexp.MustCompile(`, met with a probability of more than 99 %|\d+([.,]\d+)?`)

// worded is a survey without its sheets and without figures: every word of it, in
// its order.
func worded(t *testing.T, s *marinecalc.Survey) string {
	bare := *s
	bare.Sheets, bare.Made = nil, marinecalc.Survey{}.Made
	text, err := json.MarshalIndent(bare, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return figure.ReplaceAllStringFunc(string(text), func(f string) string {
		if f[0] == ',' {
			return ""
		}
		return "#"
	})
}

// TestFewTrialsSayTheSameWords surveys every boat there is with few trials where
// these leave no doubt, and with all of them everywhere: both say the same, but for
// the figures, and of what is past a limit these are of all trials too.
func TestFewTrialsSayTheSameWords(t *testing.T) {
	alone(t)
	sheets, few := 0, 0
	hold := func(name string, b *marinecalc.Boat) {
		t.Run(name, func(t *testing.T) {
			got := testboat.Check(t, b, marinecalc.Options{Brief: true})
			want := testboat.Check(t, b, marinecalc.Options{Brief: true, Trials: marinecalc.DefaultTrials})
			if diff := cmp.Diff(worded(t, want), worded(t, got)); diff != "" {
				t.Error(diff)
			}
			for i, s := range got.Sheets {
				if want.Sheets[i].Trials == 0 {
					continue
				}
				if sheets++; s.Trials == marinecalc.DefaultTrials {
					continue
				}
				few++
				for _, v := range s.Verdicts {
					if r := s.Result(v.On); v.Word.Plain() == sheet.Beyond && r != nil && r.Interval != "" {
						t.Errorf("%s, %s, is of %d trials: %s", v.Limit, v.Word, s.Trials, v.Sentence)
					}
				}
			}
		})
	}
	boats, err := testBoats()
	if err != nil {
		t.Fatal(err)
	}
	for _, one := range boats {
		hold(one.name, one.boat)
	}
	eachJob(t, func(name string, j *job, b *marinecalc.Boat) {
		for _, d := range j.Days {
			hold(name+" "+d.On, b.AsOf(d.On))
		}
	})
	if few < sheets/3 || few > sheets*9/10 {
		t.Errorf("%d of %d sheets have few trials", few, sheets)
	}
	t.Logf("%d of %d sheets have few trials", few, sheets)
}
