package catalogue_test

import (
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// played is the demonstration boat with free play read at three places; the
// gears have 0.3°.
func played(t *testing.T, flange, shaft, propeller string) *marinecalc.Boat {
	text, err := os.ReadFile(testboat.Root("testdata", "boats", "kittiwake.json"))
	if err != nil {
		t.Fatal(err)
	}
	at := strings.LastIndex(string(text), `"readings": [`) + len(`"readings": [`)
	return testboat.Read(t, string(text)[:at]+`{"date": "2026-11-20", "backlashOutputShaft": "0.3 ± 0.05 °", "backlashFlange": "`+flange+` ± 0.05 °", "backlashShaft": "`+shaft+` ± 0.05 °", "backlashPropeller": "`+propeller+` ± 0.05 °"},`+string(text)[at:])
}

// A joint that was found to have play lets go already (Coulomb): nothing that says
// it holds is OK, its sheet and that of the whole line forbid power and say nothing
// milder; without play they say none of that.
func TestPlayTakesTheJointsVerdictsBack(t *testing.T) {
	for _, c := range []struct {
		flange, shaft, propeller string
		limit                    string
		loose                    []string // sheets that must forbid power
	}{
		{"0.32", "0.35", "0.38", "", nil},
		{"2.9", "2.92", "2.94", "backlash-hub-free", []string{"output-flange", "line-joints"}},
		{"0.32", "0.35", "2.9", "backlash-taper-free", []string{"propeller-taper", "line-joints"}},
	} {
		b := played(t, c.flange, c.shaft, c.propeller)
		sheets := map[string]*marinecalc.Sheet{}
		for _, id := range []string{"backlash", "output-flange", "propeller-taper", "line-joints"} {
			s, err := marinecalc.Run(id, nil, marinecalc.Options{Boat: b})
			if err != nil {
				t.Fatalf("%s: %v", id, err)
			}
			sheets[id] = s
		}
		if c.limit != "" {
			if v := sheets["backlash"].Verdict(c.limit); v == nil && c.limit == "backlash-hub-free" {
				if v = sheets["backlash"].Verdict("backlash-hub-free-unsaid"); v == nil || v.Word.Plain() != sheet.Beyond {
					t.Errorf("play of the flange: %+v", v)
				}
			} else if v == nil || v.Word != sheet.Beyond {
				t.Errorf("%s: %+v", c.limit, v)
			}
		}
		for id, s := range sheets {
			orders := false
			for _, n := range s.Next {
				orders = orders || strings.HasPrefix(n.Text, "Do not run under power: the propeller was") || strings.HasPrefix(n.Text, "Leave the lever in neutral: ")
			}
			want := false
			for _, one := range c.loose {
				want = want || one == id
			}
			if orders != want && id != "backlash" {
				t.Errorf("play %s, %s, %s: %s forbids power: %t", c.flange, c.shaft, c.propeller, id, orders)
			}
			for _, v := range s.Verdicts {
				ok := v.Word.Plain() == sheet.Within || v.Word.Plain() == sheet.NearLimit
				if want && ok && (strings.HasPrefix(v.On, "margin") || strings.HasPrefix(v.On, "least") || v.On == "shareLeft") {
					t.Errorf("%s: %s", id, v.Sentence)
				}
			}
		}
	}
}

// A figure more that disagrees makes no verdict milder: with a turn that does not
// go with the torque a nut that moved at 25 N·m shows by either that the clamp had
// gone; one that moved at 170 N·m by one alone, and then nothing is told.
func TestAContradictionExcusesNothing(t *testing.T) {
	for _, c := range []struct {
		moved string
		word  sheet.Word
	}{{"25 N·m", sheet.Beyond}, {"170 N·m", sheet.CannotTell}} {
		s := testboat.Run(t, "output-flange", `{"nominalDiameter": "27 mm", "pitch": "2 mm", "threadForm": "metric", "finish": "oiled", "nutTorque": "260 N·m", "nutTurn": "25°", "nutFaceDiameter": "50 mm", "seatDiameter": "32 mm",
			"hubLength": "45 mm", "hubDiameter": "54 mm", "ringLength": "20 mm", "ringDiameter": "54 mm", "faceWear": "0 mm", "looseningTorque": "`+c.moved+`"}`, marinecalc.Options{})
		if len(s.Conflicts) == 0 {
			t.Fatal("turn and torque agree")
		}
		for _, id := range []string{"flange-clamp-loose", "flange-clamp-by-loosening"} {
			v := s.Verdict(id)
			if v == nil || v.Word != c.word || !strings.Contains(v.Sentence, "disagree") {
				t.Errorf("moved at %s: %+v", c.moved, v)
			}
		}
	}
}
