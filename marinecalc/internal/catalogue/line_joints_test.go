package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A range holds what its probability counts: of 290 ± 100 N·m (evenly spread)
// against 320 N·m a third of what it may be is 1 or more, though another joint
// that is not known leaves that untold.
func TestRangeOfTheLineHoldsWhatItsProbabilityCounts(t *testing.T) {
	s := testboat.Run(t, "line-joints", `{"shaftTorque": "280 N·m", "peakTorque": "320 N·m", "asternTorque": "200 N·m", "facesAhead": "300 ± 100 N·m", "facesAstern": "290 ± 100 N·m",
		"boreAhead": "900 ± 50 N·m", "boreAstern": "900 ± 50 N·m", "taperAhead": "800 ± 50 N·m", "taperAstern": "800 ± 50 N·m"}`, marinecalc.Options{})
	low, high, ok := s.Result("leastShock").Range()
	if !ok || low < 0.57 || low > 0.63 || high < 1.17 || high > 1.28 { // 190 and 390 over 320 or nearly, 95 % of the way between
		t.Errorf("%g to %g", low, high)
	}
	if v := s.Verdict("line-shock"); wordOf(s, "line-shock") != "cannot tell" || *v.Probability < 0.33 || *v.Probability > 0.37 {
		t.Errorf("%s", v.Sentence)
	}
	if s.Result("leastAhead") != nil { // 300 of 280: told only once the output flange is known
		t.Errorf("ahead %s", s.Result("leastAhead").Text)
	}
}

// Where one joint is not known the margin of the weakest of the others stands all the same,
// ahead, astern and in a shock, and the verdict on the whole line names the one that lacks.
func TestKnownJointsHaveTheirMarginWhereOneIsNotKnown(t *testing.T) {
	s := testboat.Run(t, "line-joints", `{"shaftTorque": "150 N·m", "peakTorque": "300 N·m", "asternTorque": "120 N·m", "hubDrive": "spline", "hubFriction": "300 N·m", "hubFlanks": "900 N·m", "hubPullMargin": 20,
		"facesAhead": "600 N·m", "facesAstern": "590 N·m", "boreAhead": "480 N·m", "boreAstern": "470 N·m"}`, marinecalc.Options{})
	for _, way := range []string{"ahead", "astern", "shock"} {
		whole, known := s.Verdict("line-"+way), s.Result("leastKnown"+strings.ToUpper(way[:1])+way[1:])
		if whole == nil || whole.Reads != "not measured" || !strings.Contains(whole.Sentence, "propeller's taper is not known") || strings.Contains(whole.Sentence, "faces are not known") {
			t.Errorf("%s: %+v", way, whole)
		}
		if known == nil || *known.SI < 1 {
			t.Errorf("%s, those known: %+v", way, known)
		}
	}
}

// A joint of which only the pull astern is not known is not said to be unknown.
func TestOnlyThePullAsternLacks(t *testing.T) {
	s := testboat.Run(t, "line-joints", `{"shaftTorque": "150 N·m", "peakTorque": "300 N·m", "asternTorque": "120 N·m", "facesAhead": "600 N·m", "boreAhead": "480 N·m"}`, marinecalc.Options{})
	for _, id := range []string{"line-astern", "line-shock"} {
		says := s.Verdict(id).Sentence
		if !strings.Contains(says, "pull astern leaves of the coupling faces") || !strings.Contains(says, "pull astern leaves of the shaft in its coupling flange") || strings.Contains(says, "faces are not known") || strings.Contains(says, "The shaft in its coupling flange is not known") {
			t.Error(says)
		}
	}
}

// What is not known of a joint astern is the pull, where ahead all of it is known.
func TestLineSaysWhatIsNotKnownOfTheTaper(t *testing.T) {
	const known = `{"shaftTorque": "100 N·m", "asternTorque": "90 N·m", "facesAhead": "600 N·m", "facesAstern": "500 N·m", "boreAhead": "400 N·m", "boreAstern": "300 N·m", "hubFriction": "200 N·m"%}`
	for taper, says := range map[string]string{`, "taperAhead": "300 N·m"`: "What the pull astern leaves of the propeller on its taper is not known", ``: "The propeller's taper is not known"} {
		v := testboat.Run(t, "line-joints", strings.Replace(known, "%", taper, 1), marinecalc.Options{}).Verdict("line-astern")
		if v == nil || !strings.Contains(v.Sentence, says) || strings.Count(v.Sentence, "taper") != 1 {
			t.Errorf("%s: %+v", taper, v)
		}
	}
}
