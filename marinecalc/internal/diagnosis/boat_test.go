package diagnosis_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/procedure"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// What she does not have is not asked for and cannot lead; that alone is no
// answer, and what a person says goes before it.
func TestWhatSheDoesNotHaveCannotFail(t *testing.T) {
	const element, seal = "Is the elastic piece of a flexible coupling cracked, parted or crumbling?", "Is the shaft sealed by a face seal or lip seal, with no packing and no gland nuts?"
	for _, c := range []struct {
		name, has string
		asks      bool
	}{
		{"nothing known", "", true},
		{"rigid and packed", `"coupling":{"kind":"rigid"},"gland":{"packing":"flax"},`, false},
		{"flexible, packing not known", `"coupling":{"kind":"flexible"},"gland":{"packing":"not-known"},`, true},
	} {
		boat := `{"name":"Tern",` + c.has + `"readings":[{"date":"2026-03-01","symptoms":[{"evidence":"gland-drips-much","answer":"yes"},{"evidence":"after-touching","answer":"no"}]}]}`
		s := testboat.RunOn(t, boat, "fault-finding", `{}`)
		var asked []string
		for _, table := range []string{"nextChecks", "quickQuestions"} {
			for n := 0; s.Cell(table, n, "question") != nil; n++ {
				asked = append(asked, s.Cell(table, n, "question").Text)
			}
		}
		if slices.Contains(asked, seal) != c.asks || !c.asks && slices.Contains(asked, element) {
			t.Errorf("%s: asked are %q", c.name, asked)
		}
	}
	packed := testboat.RunOn(t, `{"name":"Tern","gland":{"packing":"flax"},"readings":[{"date":"2026-03-01","symptoms":[{"evidence":"gearbox-whine","answer":"no"}]}]}`, "fault-finding", `{}`)
	for n := 0; packed.Cell("ranking", n, "name") != nil; n++ {
		if by := packed.Cell("ranking", n, "evidenceFor"); by != nil && strings.Contains(by.Text, seal) {
			t.Errorf("that she has packing is evidence for %s", packed.Cell("ranking", n, "name").Text)
		}
	}
	s := testboat.RunOn(t, `{"name":"Tern","coupling":{"kind":"rigid"},"readings":[{"date":"2026-03-01"}],"symptoms":[]}`, "fault-finding", `{}`)
	if !strings.HasPrefix(s.Result("howSure").Text, "Nothing is answered yet") {
		t.Errorf("what she has counts as an answer: %q", s.Result("howSure").Text)
	}
	s = testboat.RunOn(t, `{"name":"Tern","coupling":{"kind":"rigid"},"readings":[{"date":"2026-03-01","symptoms":[{"evidence":"coupling-insert-seen","answer":"yes"}]}]}`, "fault-finding", `{}`)
	if s.Result("cause") == nil || s.Result("cause").Text != "coupling-insert-torn" {
		t.Errorf("what was seen does not go first: %+v", s.Result("cause"))
	}
}

// A measured trouble stands against a no, and the reason to keep the shaft still says
// by which figure of which day, not that she said yes. A yes from before a reading that
// shows none is over; one from after it stands. (Common practice, no source: the newer
// look counts.)
func TestTheNewerLookCounts(t *testing.T) {
	for _, c := range []struct{ name, read, at, answer, said, held, told string }{
		{"hot, then no", "2026-04-01", "63 °C", "no", "2026-04-05", "yes: 63 °C of 2026-04-01, against the answer no", "what was measured was counted"},
		{"hot, no before", "2026-04-05", "63 °C", "no", "2026-04-01", "yes: 63 °C of 2026-04-05, against the answer no", "what was measured was counted"},
		{"hot, and yes", "2026-04-01", "63 °C", "yes", "2026-04-01", "yes)", ""},
		{"cool after a yes", "2026-04-05", "22 °C", "yes", "2026-04-01", "", "what was measured is newer"},
		{"cool before a yes", "2026-04-01", "22 °C", "yes", "2026-04-05", "yes)", "the answer was counted"},
		{"cool on the day of a yes", "2026-04-01", "22 °C", "yes", "2026-04-01", "yes)", "the answer was counted"},
	} {
		s := testboat.RunOn(t, `{"name":"Tern","shaft":{"diameter":"30 mm"},"engine":{"power":"22 kW","speed":"2800 rpm"},"gearbox":{"ratioAhead":"2.1"},"gland":{"packing":"ptfe-flax","packedLength":"38 mm"},"readings":[
			{"date":"`+c.read+`","engineSpeed":"2000 rpm","dripRate":"6 drips/min","glandTemperature":"`+c.at+`","waterTemperature":"14 °C"},
			{"date":"`+c.said+`","symptoms":[{"evidence":"gland-hot","answer":"`+c.answer+`"}]}]}`, "fault-finding", `{}`)
		held, told := "", ""
		if r := s.Result("heldBack"); r != nil {
			held = r.Text
		}
		if r := s.Result("contradiction"); r != nil {
			told = r.Text
		}
		if (held != "") != (c.held != "") || !strings.Contains(held, c.held) {
			t.Errorf("%s: held back %q", c.name, held)
		}
		if (told != "") != (c.told != "") || !strings.Contains(told, c.told) {
			t.Errorf("%s: told %q", c.name, told)
		}
	}
}

// On a boat of a known kind no cause is suspected, look asked for, work proposed or part
// bought that she cannot have, whether the boat file says the kind or an answer of
// whatever day does; without it they are.
func TestWhatIsOfAnotherKindIsNotProposed(t *testing.T) {
	const hot = `{"date":"2026-03-02","engineHours":"310 h","glandTemperature":"66 °C","waterTemperature":"14 °C"%s}`
	answer := func(question, word string) string {
		return fmt.Sprintf(`,"symptoms":[{"evidence":"%s","answer":"%s"}]`, question, word)
	}
	for _, c := range []struct{ name, boat, cannot, looks, work, first string }{
		{"face seal, of that day", `"readings":[` + fmt.Sprintf(hot, answer("seal-kind", "yes")) + `]`, "gland-tight gland-packing-burnt gland-packing-worn gland-shaft-scored", "gland-ease packing-hard follower-home shaft-grooved gland-drawn-up seal-kind", "adjust-gland repack-gland polish-shaft-at-gland", "seal-vented"},
		{"face seal, told before", `"readings":[{"date":"2026-02-01"` + answer("seal-kind", "yes") + `},` + fmt.Sprintf(hot, answer("gland-hot", "yes")) + `]`, "gland-tight gland-packing-burnt gland-packing-worn gland-shaft-scored", "gland-ease packing-hard follower-home shaft-grooved gland-drawn-up seal-kind", "adjust-gland repack-gland polish-shaft-at-gland", "seal-vented"},
		{"face seal, of the boat", `"symptoms":[` + strings.TrimSuffix(strings.TrimPrefix(answer("seal-kind", "yes"), `,"symptoms":[`), "]") + `],"readings":[` + fmt.Sprintf(hot, "") + `]`, "gland-tight", "gland-ease", "repack-gland", "seal-vented"},
		{"packing", `"gland":{"packing":"flax"},"readings":[` + fmt.Sprintf(hot, answer("came-suddenly", "yes")) + `]`, "face-seal-dry face-seal-leaks", "seal-vented face-seal-seen seal-kind", "vent-face-seal reset-face-seal replace-face-seal", "gland-ease"},
		{"no packing said", `"readings":[` + fmt.Sprintf(hot, answer("seal-kind", "no")) + `]`, "face-seal-dry face-seal-leaks", "seal-vented face-seal-seen", "vent-face-seal", "gland-ease"},
		{"no keys", `"coupling":{"bore":{"key":{"fitted":"no"}}},"shaft":{"key":{"fitted":"no"}},"readings":[{"date":"2026-03-02"` + answer("knock-into-gear", "yes") + `}]`, "key-worn propeller-key-worn", "key-seen propeller-key-seen", "", ""},
		{"fixed blades, solid hub", `"readings":[{"date":"2026-03-01","symptoms":[{"evidence":"blades-fold","answer":"no"},{"evidence":"hub-bushed","answer":"no"}]},{"date":"2026-03-02"` + answer("comes-and-goes", "yes") + `}]`, "propeller-folding-stiff propeller-hub-spun", "blades-swing hub-mark-shifted blades-fold hub-bushed", "service-folding-propeller replace-propeller-hub", ""},
		{"flange on a clip", `"outputFlange":{"heldBy":"clip"},"readings":[{"date":"2026-03-02"` + answer("fluid-leaks", "yes") + `}]`, "output-nut-loose output-face-worn", "output-nut-turns output-face-seen", "tighten-output-nut", ""},
		{"hearsay is no description", `"readings":[` + fmt.Sprintf(hot, `,"symptoms":[{"evidence":"seal-kind","answer":"yes","by":"hearsay"}]`) + `]`, "", "", "", "gland-ease"},
	} {
		boat := `{"name":"Tern","lies":"afloat",` + c.boat + `}`
		s := testboat.RunOn(t, boat, "fault-finding", `{}`)
		for _, table := range []string{"nextChecks", "quickQuestions"} {
			for n := 0; s.Cell(table, n, "evidence") != nil; n++ {
				if id := s.Cell(table, n, "evidence").Text; slices.Contains(strings.Fields(c.looks), id) {
					t.Errorf("%s: %s is asked", c.name, id)
				}
			}
		}
		if first := s.Cell("nextChecks", 0, "evidence"); c.first != "" && (first == nil || first.Text != c.first) {
			t.Errorf("%s: the first look is %+v", c.name, first)
		}
		for n := 0; s.Cell("ranking", n, "cause") != nil; n++ {
			if cause := s.Cell("ranking", n, "cause").Text; slices.Contains(strings.Fields(c.cannot), cause) {
				t.Errorf("%s: %s is suspected", c.name, cause)
			}
		}
		b := testboat.Read(t, boat)
		for _, id := range strings.Fields(c.work) {
			plan := testboat.RunOn(t, boat, "work-plan", `{"today":"2026-03-03","remedies":[{"remedy":"`+id+`"}]}`)
			if !strings.Contains(plan.Result("trouble").Text, "is no work of this boat") {
				t.Errorf("%s: %s is planned: %q", c.name, id, plan.Result("trouble").Text)
			}
			for _, part := range procedure.List(rules.Standard(), b) {
				for _, w := range part.Work {
					if w.ID == id {
						t.Errorf("%s: %s is offered", c.name, id)
					}
				}
			}
		}
	}
}
