package verdict_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Of four mounts one foot was read: the largest gap of those read is not the
// largest of all, and a gap over the limit is one whatever the others are. Known
// or not, what was given is not asked for.
func TestWorstOfSeveralWantsThemAll(t *testing.T) {
	moves := func(port, starboard string) *sheet.Sheet {
		return testboat.RunOn(t, "", "mount-moves", `{"gapVertical": "0.2 mm", "gapHorizontal": "0 mm", "couplingDiameter": "102 mm", "couplingKind": "rigid", "mounts": [
			{"name": "front port", "forward": "850 mm", "starboard": "-250 mm", "threadPitch": "1.5 mm"`+port+`},
			{"name": "front starboard", "forward": "850 mm", "starboard": "250 mm", "threadPitch": "1.5 mm"`+starboard+`},
			{"name": "aft port", "forward": "250 mm", "starboard": "-250 mm", "threadPitch": "1.5 mm", "footGap": "0.01 mm"},
			{"name": "aft starboard", "forward": "250 mm", "starboard": "250 mm", "threadPitch": "1.5 mm", "footGap": "0.01 mm"}]}`)
	}
	for _, c := range []struct {
		name, port, starboard string
		word                  sheet.Word
		says                  string
	}{
		{"all read", `, "footGap": "0.01 mm"`, `, "footGap": "0.02 mm"`, sheet.Within, "inside the guide"},
		{"two not read", "", "", sheet.CannotTell, "nothing is known of front port, front starboard. With all other nuts tight"},
		{"one over", `, "footGap": "0.3 mm"`, "", sheet.Beyond, "outside the guide"},
	} {
		if v := moves(c.port, c.starboard).Verdict("soft-foot"); v == nil || v.Word.Plain() != c.word || !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s: %+v", c.name, v)
		}
	}
}
