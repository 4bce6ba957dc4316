package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
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
