package diagnosis_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
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
