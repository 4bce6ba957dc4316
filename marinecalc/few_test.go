package marinecalc_test

import (
	"encoding/json"
	"os"
	"path/filepath"
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
	read := func(dir string, each func(name string, text []byte)) {
		files, err := filepath.Glob(testboat.Root("testdata", dir, "*.json"))
		if err != nil || len(files) == 0 {
			t.Fatalf("nothing in %s: %v", dir, err)
		}
		for _, f := range files {
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			each(filepath.Base(f), text)
		}
	}
	whole := func(name string, text []byte) { hold(name, testboat.Read(t, string(text))) }
	read("boats", whole)
	read("cases", whole)
	read("jobs", func(name string, text []byte) {
		var j job
		if err := json.Unmarshal(text, &j); err != nil {
			t.Fatal(err)
		}
		b := testboat.Read(t, string(j.Boat))
		for _, d := range j.Days {
			hold(name+" "+d.On, b.AsOf(d.On))
		}
	})
	if few < sheets/3 || few > sheets*9/10 {
		t.Errorf("%d of %d sheets have few trials", few, sheets)
	}
	t.Logf("%d of %d sheets have few trials", few, sheets)
}
