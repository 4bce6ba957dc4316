package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sheet"
)

// The pitch of a coarse thread may be left out (ISO 965-1, clause of
// designations, from memory): M10 is M10 × 1.5, and the sheet says that it was
// taken so. A thread written with its pitch is taken as written, × or x.
func TestThreadWithoutPitchIsTheCoarse(t *testing.T) {
	run := func(thread string) (*marinecalc.Sheet, error) {
		return marinecalc.Run("thread-engagement", []byte(`{"thread": "`+thread+`", "grade": "iso-8.8", "tappedMetal": "grey-iron", "engagementLength": "15 mm"}`), marinecalc.Options{NoRanges: true})
	}
	for thread, want := range map[string]struct {
		pitch float64
		said  bool
	}{"M10": {1.5e-3, true}, "m30": {3.5e-3, true}, "M36": {4e-3, true}, "M10x1.25": {1.25e-3, false}, "M10 × 1.5": {1.5e-3, false}, "3/8-16": {25.4e-3 / 16, false}, "3/8-24 unf": {25.4e-3 / 24, false}} {
		s, err := run(thread)
		if err != nil {
			t.Errorf("%s: %v", thread, err)
			continue
		}
		said := strings.Contains(strings.Join(s.Notes, " "), "is read as")
		if p := *s.Input("pitch").SI; p < want.pitch-1e-9 || p > want.pitch+1e-9 || said != want.said {
			t.Errorf("%s: pitch %g, said %v: %v", thread, p, said, s.Notes)
		}
	}
	for _, thread := range []string{"M11", "3/8", "M10x2"} {
		if _, err := run(thread); err == nil {
			t.Errorf("%s is taken for a thread of the table", thread)
		}
	}
}

// A stud's metal end is 1.25 diameters in iron, 2 in aluminium (DIN 939, DIN 835,
// from memory); what holds it in its hole decides whether it comes out with its
// nut, and nobody having said that, the sheet asks.
func TestStudsInTappedHoles(t *testing.T) {
	run := func(metal, length, more string) *marinecalc.Sheet {
		return runInput(t, "thread-engagement", `{"thread": "M10x1.5", "grade": "iso-8.8", "fastener": "stud", "tappedMetal": "`+metal+`", "engagementLength": "`+length+`"`+more+`}`, "metric")
	}
	for _, c := range []struct {
		metal, length string
		inside        bool
	}{{"grey-iron", "16 mm", true}, {"grey-iron", "11 mm", false}, {"aluminium-cast", "27 mm", true}, {"aluminium-cast", "16 mm", false}} {
		v := run(c.metal, c.length, "").Verdict("thread-stud-rule")
		if v == nil || (v.Reads == "inside the guide") != c.inside {
			t.Errorf("%s in %s: %+v", c.length, c.metal, v)
		}
	}
	for fit, says := range map[string]string{"": "Tell what holds the stud", `, "studFit": "free"`: "Nothing holds this stud", `, "studFit": "locker"`: "used once", `, "studFit": "interference"`: "is scrap"} {
		s := run("grey-iron", "16 mm", fit)
		if !advised(s, says) || advised(s, "belongs on studs") || s.Verdict("thread-rule-of-thumb") != nil {
			t.Errorf("%q: not told %q, or told what is for bolts", fit, says)
		}
	}
	if s := runInput(t, "thread-engagement", `{"thread": "M10x1.5", "grade": "iso-8.8", "tappedMetal": "grey-iron", "engagementLength": "16 mm"}`, "metric"); advised(s, "set once, to full depth") == false || s.Verdict("thread-stud-rule") != nil {
		t.Error("a bolt is told what is for studs, or not told of them")
	}
}

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

// One pitch is lost at the ends (VDI 2230: 0.8 of one, from memory): of 1 mm of
// M10x1.5 nothing bears, of 2 mm a third of a turn does, and strips.
func TestNoTurnOfThreadBears(t *testing.T) {
	for length, none := range map[string]bool{"1 mm": true, "1.5 mm": true, "2 mm": false} {
		s := runInput(t, "thread-engagement", `{"thread": "M10x1.5", "grade": "iso-8.8", "tappedMetal": "aluminium-cast", "engagementLength": "`+length+`", "lostThreads": 1}`, "metric")
		if word := s.Result("stripsFirst").Text; strings.Contains(word, "nothing") != none || advised(s, "No turn of thread bears") != none {
			t.Errorf("%s: %s", length, word)
		}
	}
}

// The first turns bear the most; past about 2.5 diameters more thread does not
// help (common practice, no source): then an insert or a larger bolt is named.
func TestMoreThreadThanHelps(t *testing.T) {
	for share, much := range map[string]bool{"1": false, "0.2": true} {
		s := runInput(t, "thread-engagement", `{"thread": "M10x1.5", "grade": "iso-8.8", "tappedMetal": "aluminium-cast", "engagementLength": "20 mm", "lostThreads": 1, "threadShare": `+share+`}`, "metric")
		wanted, over := *s.Result("engagementWanted").SI, *s.Result("diametersWanted").SI
		if off := over - wanted/0.010; off > 1e-9 || off < -1e-9 || (over > 2.5) != much || advised(s, "Fit an insert, or a larger bolt") != much {
			t.Errorf("sound share %s: %g m wanted, %g diameters", share, wanted, over)
		}
	}
}

// A solid insert of the table holds in the parent metal by its own outside
// thread: 0.4844-20 for a bolt of 3/8 in (MIL-I-45932/3). By the simplest
// estimate, half of the cylinder at its outside, it holds π·D·L/2 in shear; the
// handbook's formula lies between 0.8 and 1.6 of it.
func TestSolidInsertHoldsByItsOutside(t *testing.T) {
	const input = `{"thread": "3/8-16 UNC", "grade": "j429-5", "tappedTensileStrength": "30 ksi", "engagementLength": "0.56 in", "lostThreads": 0, "threadShare": 1, "shearShare": 0.5, `
	s := runInput(t, "thread-engagement", input+`"insert": "solid", "insertSize": "thin-wall-oversize-3/8"}`, "us")
	if in := s.Input("insertDiameter"); in == nil || math.Abs(*in.SI/(0.4844*0.0254)-1) > 1e-9 {
		t.Fatalf("outside of the insert: %+v", in)
	}
	area := result(s, "tappedShearArea")
	if simple := math.Pi * 0.4844 * 0.56 / 2 * 0.0254 * 0.0254; area < 0.8*simple || area > 1.6*simple {
		t.Errorf("area in shear %g, half of the cylinder %g", area, simple)
	}
	bare := runInput(t, "thread-engagement", input+`"insert": "none"}`, "us")
	if grown := area / result(bare, "tappedShearArea"); grown < 1.15 || grown > 1.45 {
		t.Errorf("the insert holds %g times the bare thread; its outside is 1.29 times the bolt's", grown)
	}
	if _, err := marinecalc.Run("thread-engagement", []byte(`{"thread": "1/2-13 UNC", "grade": "j429-5", "engagementLength": "0.56 in", "insert": "solid", "insertSize": "thin-wall-oversize-3/8"}`), marinecalc.Options{NoRanges: true}); err == nil {
		t.Error("an insert for 3/8 in takes a bolt of 1/2 in")
	}
}
