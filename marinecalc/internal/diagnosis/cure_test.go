package diagnosis_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
)

// What happened to the boat is what made a part fail, where its sign says so; that a
// trouble came after something which does not make it, is not.
func TestWhatHappenedMadeItFail(t *testing.T) {
	for _, c := range []struct{ name, input, has, not string }{
		{"a blow", `{"answers": [{"evidence": "blade-seen", "answer": "yes"}, {"evidence": "after-touching", "answer": "yes"}]}`,
			"By what was told: a blow bends it (“Did it begin after touching ground or hitting something?” yes).", "Not known"},
		{"no blow", `{"answers": [{"evidence": "blade-seen", "answer": "yes"}, {"evidence": "after-touching", "answer": "no"}]}`, "", "By what was told"},
		{"a blow that has no part in it", `{"answers": [{"evidence": "idle-read", "answer": "yes"}, {"evidence": "after-touching", "answer": "yes"}]}`, "", "By what was told"},
	} {
		s := testboat.Run(t, diagnosis.FaultFinding, c.input, marinecalc.Options{NoRanges: true})
		text := ""
		if by := s.Result("madeBy"); by != nil {
			text = by.Text
		}
		if !strings.Contains(text, c.has) || c.not != "" && strings.Contains(text, c.not) {
			t.Errorf("%s: %q", c.name, text)
		}
	}
}

// The propeller's key is renewed with the propeller off, the coupling's with its
// flange off, and each is found by its own look and its own calculation.
func TestEachKeyHasItsCure(t *testing.T) {
	for _, c := range []struct{ look, cause, cure string }{
		{"key-seen", "key-worn", "Fit a new key"}, {"propeller-key-seen", "propeller-key-worn", "Fit a new key to the propeller"},
	} {
		s := testboat.Run(t, diagnosis.FaultFinding, `{"answers": [{"evidence": "`+c.look+`", "answer": "yes"}]}`, marinecalc.Options{NoRanges: true})
		if s.Result("cause").Text != c.cause || s.Result("remedies").Text != c.cure {
			t.Errorf("%s: %s, %s", c.look, s.Result("cause").Text, s.Result("remedies").Text)
		}
	}
	for figure, question := range map[string]string{"propeller": "propeller-key-worn", "coupling": "key-worn"} {
		for _, chain := range testboat.Overlay(t, `{}`).Chains().All() {
			if chain.To == question && strings.HasSuffix(chain.From, "key-at-peak") && strings.HasPrefix(chain.From, "coupling") != (figure == "coupling") {
				t.Errorf("%s leads to %s", chain.From, chain.To)
			}
		}
	}
}

// A propeller that stands while its shaft turns is no broken shaft yet: a sheared key
// looks the same until the shaft's own end is seen, or the key.
func TestAPropellerThatStandsIsNoBrokenShaftYet(t *testing.T) {
	for more, want := range map[string]struct{ cause, found, cure string }{
		``: {"shaft-broken", "", ""},
		`,{"evidence":"shaft-end-stands","answer":"yes"}`:   {"shaft-broken", "Shaft broken", "Change the propeller shaft"},
		`,{"evidence":"shaft-end-stands","answer":"no"}`:    {"propeller-key-worn", "", ""},
		`,{"evidence":"propeller-key-seen","answer":"yes"}`: {"propeller-key-worn", "Propeller key worn or sheared, or its keyway worn", "Fit a new key to the propeller"},
	} {
		s := testboat.Run(t, diagnosis.FaultFinding, `{"answers": [{"evidence":"after-touching","answer":"yes"},{"evidence":"came-suddenly","answer":"yes"},{"evidence":"revs-no-drive","answer":"yes"},
			{"evidence":"revs-too-high","answer":"yes"},{"evidence":"rope-seen","answer":"no"},{"evidence":"coupling-mark-shifted","answer":"no"},{"evidence":"shaft-parted","answer":"yes"}`+more+`]}`, marinecalc.Options{NoRanges: true})
		text := func(result string) string {
			if r := s.Result(result); r != nil {
				return r.Text
			}
			return ""
		}
		first := s.Cell("ranking", 0, "cause")
		if first == nil || first.Text != want.cause || text("found") != want.found || text("remedies") != want.cure {
			t.Errorf("%q: first %+v, found %q, cure %q", more, first, text("found"), text("remedies"))
		}
		key := false
		for n := 0; n < 3 && s.Cell("ranking", n, "cause") != nil; n++ {
			key = key || s.Cell("ranking", n, "cause").Text == "propeller-key-worn"
		}
		if want.found != "Shaft broken" && !key {
			t.Errorf("%q: the key is not among the first three", more)
		}
	}
}
