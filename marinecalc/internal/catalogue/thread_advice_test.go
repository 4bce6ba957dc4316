package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// An insert is not held to what workshops take in the bare metal, nor advised where one
// is fitted; a stud is not a longer bolt. An insert whose length nobody told is asked for it.
func TestInsertAndStudAreAdvisedAsWhatTheyAre(t *testing.T) {
	const hole = `{"thread": "M10x1.5", "grade": "iso-8.8", "tappedMetal": "aluminium-cast", "engagementLength": "8 mm", "condition": "sound", "preload": "25 kN"`
	s := runInput(t, "thread-engagement", hole+`, "insert": "wire", "insertLength": "8 mm"}`, "metric")
	if v := s.Verdict("thread-rule-of-thumb"); v != nil {
		t.Error(v.Sentence)
	}
	advises(t, "insert", s, []string{"A longer insert and bolt"}, []string{", an insert", "or an insert", "Fit an insert"})
	s = runInput(t, "thread-engagement", hole+`, "insert": "wire"}`, "metric")
	if v := s.Verdict("thread-strips"); v.Word.Plain() == sheet.Within {
		t.Error(v.Sentence)
	}
	asked := false
	for _, v := range s.Verdicts {
		asked = asked || v.Word == sheet.NotMeasured && v.Limit == "thread-strips" && len(v.Sentence) > 0
	}
	if r := s.Result("tappedStripping"); r != nil {
		t.Errorf("length not told: %s (asked %v)", r.Text, asked)
	}
	s = runInput(t, "thread-engagement", hole+`, "insert": "none", "fastener": "stud"}`, "metric")
	advises(t, "stud", s, []string{"A stud with a longer metal end"}, []string{"longer bolt", "Fit a bolt"})
	s = runInput(t, "thread-engagement", hole+`, "insert": "none", "fastener": "bolt"}`, "metric")
	advises(t, "bolt", s, []string{"A longer bolt"}, []string{"longer metal end"})
}

// The blades' whirl at full speed has a verdict once blades are counted, and asks for them before.
func TestBladesWhirlIsJudged(t *testing.T) {
	const line = `{"shaftSpeed": "1300 rpm", "propellerMass": "6 kg", "shaftAlloy": "s31600-annealed", "sections": [{"length": "1400 mm", "diameter": "30 mm"}], "bearings": [{"at": "0 mm"}, {"at": "1250 mm"}], "propellerAt": "1350 mm"`
	for rest, want := range map[string]sheet.Word{``: sheet.NotMeasured, `, "blades": 1`: "", `, "blades": 3`: "", `, "blades": 5`: ""} {
		v := runInput(t, "shaft-whirl", line+rest+"}", "metric").Verdict("whirl-blades-at-full")
		if v == nil || want != "" && v.Word.Plain() != want || want == "" && v.Word.Plain() == sheet.NotMeasured {
			t.Errorf("%q: %+v", rest, v)
		}
	}
}
