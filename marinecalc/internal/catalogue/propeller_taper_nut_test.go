package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sheet"
)

// A propeller nut that nothing locks is outside the guide; of one of which nobody
// looked nothing is told, and two nuts lock each other.
func TestPropellerNutIsLocked(t *testing.T) {
	base := strings.NewReplacer("STANDARD", "iso-4566", `, "smallEndDiameter": "SMALL"}`, "").Replace(measuredTaper)
	for _, c := range []struct {
		typed  string
		word   sheet.Word
		warned bool
	}{
		{``, sheet.CannotTell, false},
		{`, "nutLock": "not-known"`, sheet.CannotTell, false},
		{`, "nutLock": "none"`, sheet.CannotTell, false}, // a second nut may
		{`, "nutOrder": "one-nut"`, sheet.CannotTell, false},
		{`, "nutLock": "none", "nutOrder": "one-nut"`, sheet.Beyond, true},
		{`, "nutLock": "none", "nutOrder": "thick-first"`, sheet.Within, false},
		{`, "nutOrder": "thin-first"`, sheet.Within, false},
		{`, "nutLock": "not-known", "nutOrder": "thin-first"`, sheet.Within, false},
		{`, "nutLock": "cotter"`, sheet.Within, false},
		{`, "nutLock": "cotter", "nutOrder": "one-nut"`, sheet.Within, false},
		{`, "nutLock": "nylon-insert"`, sheet.Within, false},
		{`, "nutLock": "second-nut"`, sheet.Within, false},
		{`, "nutLock": "makers-lock", "nutOrder": "not-known"`, sheet.Within, false},
	} {
		s := runInput(t, "propeller-taper", base+c.typed+"}", "metric")
		v := verdictsOf(s)["taper-nut-locked"]
		warned := false
		for _, w := range s.Cautions {
			warned = warned || strings.Contains(w.Text, "nothing to lock it")
		}
		if v.Word.Plain() != c.word || v.Guide || warned != c.warned || (c.word == sheet.CannotTell) != advised(s, "Nobody has looked what locks") {
			t.Errorf("%s: %s; warned %v", c.typed, v.Sentence, warned)
		}
	}
	_, err := marinecalc.Run("propeller-taper", []byte(base+`, "nutLock": "second-nut", "nutOrder": "one-nut"}`), marinecalc.Options{})
	if err == nil || !strings.Contains(err.Error(), "one nut alone") {
		t.Errorf("a second nut of one: %v", err)
	}
}
