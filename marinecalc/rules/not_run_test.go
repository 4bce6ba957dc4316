package rules

import (
	"regexp"
	"testing"
)

// What is to be cured before she runs keeps the shaft still, by the cause or by the
// look that shows it: a sheet cannot say "not run until then" of a boat that another
// sheet plans to read under way.
func TestWhatIsCuredBeforeSheRunsKeepsTheShaftStill(t *testing.T) {
	b := Standard()
	before := regexp.MustCompile(`(?i)\bnot run until|\bbefore she (runs again|runs\.|runs under|is run)|with the shaft stopped`)
	looks := map[string]Evidence{}
	for _, e := range b.Evidence().All() {
		looks[e.ID] = e
	}
	met := 0
	for _, c := range b.Causes().All() {
		if !before.MatchString(c.When) {
			continue
		}
		met++
		if c.KeepStill == "" && looks[c.Confirm].KeepStill == "" {
			t.Errorf("%s: %q, and nothing keeps the shaft still when “%s” is answered yes", c.ID, c.When, looks[c.Confirm].Title)
		}
	}
	if met < 10 {
		t.Errorf("%d causes are cured before she runs", met)
	}
}

// The first statement of a caution, which stands alone in lists, says what can hurt
// and is no half sentence.
func TestAShortCautionIsASentence(t *testing.T) {
	half := regexp.MustCompile(`^(Before|After|When|While|Until|Where) [^,]*$`)
	for _, c := range Standard().AllCautions().All() {
		if half.MatchString(c.InShort()) {
			t.Errorf("%s: %s", c.ID, c.InShort())
		}
	}
}
