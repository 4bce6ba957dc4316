package catalogue_test

import (
	"strings"
	"testing"
)

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
