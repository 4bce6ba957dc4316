package diagnosis_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// What was renewed since is not what was looked at: the answer from before is not
// counted, and that is told. One of the same day, a later one, and one that may have
// another cause still count. (Common practice, no source.)
func TestCareEndsAnswersFromBefore(t *testing.T) {
	for _, c := range []struct {
		name, item, done, answers string
		still                     bool
		told                      string // the question that is to be answered anew
	}{
		{name: "packing renewed", item: "gland-packing", done: "2026-04-02", answers: "packing-hard gland-hot", told: "hard, glazed or burnt"},
		{name: "on the very day", item: "gland-packing", done: "2026-04-01", answers: "packing-hard", still: true},
		{name: "before it", item: "gland-packing", done: "2026-03-30", answers: "packing-hard", still: true},
		{name: "something else", item: "gland-hose-renew", done: "2026-04-02", answers: "packing-hard", still: true},
		{name: "hose renewed", item: "gland-hose-renew", done: "2026-04-02", answers: "hose-seen", told: "water come from the gland hose"},
		{name: "smell of the old packing", item: "gland-packing", done: "2026-04-02", answers: "gland-burnt-smell", told: "smell burnt"},
		{name: "fluid changed", item: "fluid-change", done: "2026-04-02", answers: "fluid-low", told: "below its mark"},
		{name: "fluid changed, water looked for by nobody", item: "fluid-change", done: "2026-04-02", answers: "fluid-milky", still: true},
	} {
		var list []string
		for _, q := range strings.Fields(c.answers) {
			list = append(list, fmt.Sprintf(`{"evidence":%q,"answer":"yes"}`, q))
		}
		s := testboat.RunOn(t, `{"name":"Tern","gland":{"packing":"flax"},"readings":[{"date":"2026-04-01","symptoms":[`+strings.Join(list, ",")+`]}],"service":{"done":[{"item":"`+c.item+`","date":"`+c.done+`"}]}}`, "fault-finding", `{}`)
		text, _ := json.Marshal(s)
		if held := s.Result("heldBack"); (held != nil && held.Text != "") != c.still {
			t.Errorf("%s: held back: %+v", c.name, held)
		}
		if c.told != "" && !strings.Contains(string(text), c.told) {
			t.Errorf("%s: it is not told", c.name)
		}
		if was := strings.Contains(string(text), "it was not counted. Look again"); was != (c.told != "") {
			t.Errorf("%s: told %v", c.name, was)
		}
	}
}
