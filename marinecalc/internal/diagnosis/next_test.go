package diagnosis_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

func titleOf(t *testing.T, id string) string {
	t.Helper()
	for _, e := range rules.Standard().Evidence().All() {
		if e.ID == id {
			return e.Title
		}
	}
	t.Fatalf("there is no question %s", id)
	return ""
}

// asked lists everything that is proposed.
func asked(out diagnosis.Result) (list []string) {
	for _, c := range out.NextChecks {
		list = append(list, c.Question)
	}
	for _, q := range out.QuickQuestions {
		list = append(list, q.Question)
	}
	return slices.DeleteFunc(list, func(s string) bool { return s == "" })
}

// Once a cause leads, the look that settles it comes first, with what it
// needs, how long it takes, and what either answer does.
func TestTheLookThatSettlesComesFirst(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("gland-hot", "gland-no-drip", "gland-drawn-up")...)
	first := out.NextChecks[0]
	if first.Question != titleOf(t, "gland-ease") || first.Needs == "" || first.Minutes <= 0 || !strings.HasPrefix(first.IfYes, "found: Gland too tight") || first.IfNo == "" {
		t.Errorf("%+v", first)
	}
	for _, q := range out.QuickQuestions {
		for _, c := range out.NextChecks {
			if q.Question != "" && q.Question == c.Question {
				t.Errorf("in both lists: %s", q.Question)
			}
		}
	}
	if len(asked(out)) < 3 || out.QuickQuestions[0].IfYes == "" {
		t.Errorf("%+v", out.QuickQuestions)
	}
}

// Nothing that runs the shaft is proposed while a dry gland, a rope or a
// grounding may be the trouble; once they were looked for, or never were
// suspected, it is.
func TestTheShaftIsKeptStill(t *testing.T) {
	running := map[string]bool{}
	for _, e := range rules.Standard().Evidence().All() {
		running[e.Title] = e.Runs()
	}
	for _, c := range []struct {
		what    string
		answers []diagnosis.Symptom
		still   bool
	}{
		{"dry gland", yes("gland-hot", "gland-drawn-up"), true},
		{"rope", yes("after-rope", "came-suddenly"), true},
		{"grounding", yes("after-touching", "shake-grows"), true},
		{"grounding, looked at", append(yes("after-touching", "shake-grows"), no("shaft-runout", "blade-seen", "strut-moves")...), false},
		{"damper springs seen broken", yes("damper-seen", "bearing-play"), true},
		{"knock", yes("knock-into-gear"), false},
	} {
		out := found(t, marinecalc.Options{}, c.answers...)
		if (out.HeldBack != "") != c.still {
			t.Errorf("%s: %q", c.what, out.HeldBack)
		}
		runs := slices.ContainsFunc(asked(out), func(title string) bool { return running[title] })
		if runs == c.still {
			t.Errorf("%s: the shaft or the engine runs for a proposal: %v", c.what, runs)
		}
	}
}

// A verdict that forbids power holds back questions as a finding does, and the
// look that confirms the leading cause says that it waits where it runs the shaft.
func TestAVerdictThatForbidsPowerHoldsBackQuestions(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "cases", "weak-split-clamp.json"))
	if err != nil {
		t.Fatal(err)
	}
	running := map[string]bool{}
	for _, e := range rules.Standard().Evidence().All() {
		running[e.Title] = e.Runs()
	}
	s := testboat.Run(t, diagnosis.FaultFinding, `{"lies": "afloat", "answers": [{"evidence": "knock-into-gear", "answer": "yes"}]}`, marinecalc.Options{Boat: testboat.Read(t, string(text))})
	if r := s.Result("heldBack"); r == nil || !strings.Contains(r.Text, "torque margin of shaft and flange ahead") {
		t.Errorf("held back: %+v", r)
	}
	for _, list := range []string{"nextChecks", "quickQuestions"} {
		for n := 0; s.Cell(list, n, "question") != nil; n++ {
			if q := s.Cell(list, n, "question").Text; running[q] {
				t.Errorf("%s: %s", list, q)
			}
		}
	}
	held := found(t, marinecalc.Options{}, yes("lever-changed", "late-engage", "gland-burnt-smell")...)
	free := found(t, marinecalc.Options{}, yes("lever-changed", "late-engage")...)
	const waits = "Not while the shaft must stand."
	if !strings.Contains(held.ConfirmBy, waits) || strings.Contains(free.ConfirmBy, waits) {
		t.Errorf("held %q, free %q", held.ConfirmBy, free.ConfirmBy)
	}
}

// What she ran through or touched is looked for first while it keeps her still:
// that look alone lets her go on.
func TestTheLookThatLetsHerGoOnComesFirst(t *testing.T) {
	for _, c := range []struct {
		answers []diagnosis.Symptom
		look    string
	}{
		{yes("after-rope", "shake-grows"), "rope-seen"},
		{yes("after-rope", "shake-grows", "slower-than-before"), "rope-seen"},
		{yes("after-rope", "rumble-aft"), "rope-seen"},
		{yes("after-touching", "shake-grows"), "blade-seen"},
	} {
		if out := found(t, marinecalc.Options{}, c.answers...); out.NextChecks[0].Question != titleOf(t, c.look) {
			t.Errorf("%+v: first %q, then %q", c.answers, out.NextChecks[0].Question, out.NextChecks[1].Question)
		}
	}
}

// What was answered with don't know is not asked again while anything else is
// worth asking.
func TestDoNotKnowIsNotAskedAgain(t *testing.T) {
	answers := []diagnosis.Symptom{}
	seen := map[string]bool{}
	for range 6 {
		out := found(t, marinecalc.Options{}, answers...)
		first := out.QuickQuestions[0].Question
		if seen[first] {
			t.Fatalf("asked again: %s", first)
		}
		seen[first] = true
		for _, e := range rules.Standard().Evidence().All() {
			if e.Title == first {
				answers = append(answers, said("unknown", []string{e.ID})...)
			}
		}
	}
}

// A boat of which nothing points anywhere is not taken apart; before anything
// was answered there is something to ask.
func TestNothingIsOpenedWhileNothingPoints(t *testing.T) {
	out := found(t, marinecalc.Options{}, no("shake-grows", "fluid-leaks", "late-engage")...)
	if out.LeadingCause != diagnosis.NothingPoints || len(asked(out)) > 0 {
		t.Errorf("%s: %q", out.LeadingCause, asked(out))
	}
	if out = found(t, marinecalc.Options{}); len(asked(out)) == 0 {
		t.Error("nothing to begin with")
	}
	if out = found(t, marinecalc.Options{}, yes("shake-grows")...); len(asked(out)) == 0 {
		t.Error("nothing to look at for a vibration")
	}
}

// Why the shaft stands is said once: what was found or seen stands for what it
// points to, and another part has a reason of its own.
func TestTheReasonToKeepStillIsSaidOnce(t *testing.T) {
	for _, c := range []struct {
		what    string
		answers []diagnosis.Symptom
		reasons int
	}{
		{"dry gland", yes("gland-hot", "gland-no-drip", "gland-drawn-up"), 1},
		{"dry gland, found", yes("gland-hot", "gland-no-drip", "gland-drawn-up", "gland-ease"), 1},
		{"dry gland and loose bolts", yes("gland-hot", "gland-no-drip", "gland-drawn-up", "gland-ease", "coupling-bolt-turns"), 2},
	} {
		if out := found(t, marinecalc.Options{}, c.answers...); strings.Count(out.HeldBack, " (“") != c.reasons {
			t.Errorf("%s: %q", c.what, out.HeldBack)
		}
	}
}
