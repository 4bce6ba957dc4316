package rules

import (
	"slices"
	"strings"
	"testing"
)

// Every cause has evidence for it beside its own check, a confirming check whose yes is strong evidence for it, and a remedy that
// says it cures it.
func TestEveryCauseHasEvidence(t *testing.T) {
	b := Standard()
	otherwise := map[string]float64{}
	for _, e := range b.Evidence().All() {
		otherwise[e.ID] = e.Otherwise
	}
	for _, c := range b.Causes().All() {
		evidenceFor := 0
		confirms := 0.0
		for _, s := range b.Signs().All() {
			if s.Cause != c.ID {
				continue
			}
			ratio := b.SignYes(s, otherwise[s.Evidence]) / otherwise[s.Evidence]
			if ratio >= 2 && s.Evidence != c.Confirm {
				evidenceFor++
			}
			if s.Evidence == c.Confirm {
				confirms = ratio
			}
		}
		if evidenceFor == 0 && c.ID != "not-listed" {
			t.Errorf("%s: no answer but that of its own check is evidence for it", c.ID)
		}
		if confirms < 5 {
			t.Errorf("%s: a yes to its confirming check is %.1f times as likely as otherwise", c.ID, confirms)
		}
		cured := slices.ContainsFunc(b.Remedies().items, func(r Remedy) bool {
			return Contains(r.Cures, c.ID) && Contains(c.Remedies, r.ID)
		})
		if !cured {
			t.Errorf("%s: no remedy that it names says that it cures it", c.ID)
		}
	}
}

// Every question bears on some cause and is asked once a cause; every remedy
// cures something and has steps; a chain does not lead to itself.
func TestTheJobIsWhole(t *testing.T) {
	b := Standard()
	used := map[string]bool{}
	pair := map[[2]string]bool{}
	for _, s := range b.Signs().All() {
		used[s.Evidence] = true
		if key := [2]string{s.Cause, s.Evidence}; pair[key] {
			t.Errorf("sign %s is there twice", s.ID)
		} else {
			pair[key] = true
		}
	}
	groups, _ := b.Table("evidence-groups").Picks()
	for _, e := range b.Evidence().All() {
		if !used[e.ID] {
			t.Errorf("evidence %s bears on no cause", e.ID)
		}
		if !slices.Contains(groups, e.Group) {
			t.Errorf("evidence %s: there is no group %q", e.ID, e.Group)
		}
	}
	for _, r := range b.Remedies().All() {
		if r.Cures.Len() == 0 || r.Steps.Len() == 0 {
			t.Errorf("remedy %s cures %d causes in %d steps", r.ID, r.Cures.Len(), r.Steps.Len())
		}
	}
	for _, c := range b.Chains().All() {
		if c.From == c.To {
			t.Errorf("chain %s leads to itself", c.ID)
		}
	}
}

// Ids are unique within each kind of the job.
func TestIDsOfTheJobAreUnique(t *testing.T) {
	j := Standard().job()
	seen := map[string]bool{}
	once := func(kind, id string) {
		if seen[kind+id] {
			t.Errorf("%s %s is there twice", kind, id)
		}
		seen[kind+id] = true
	}
	each(j.Causes, func(c Cause) { once("cause", c.ID) })
	each(j.Evidence, func(e Evidence) { once("evidence", e.ID) })
	each(j.Signs, func(s Sign) { once("sign", s.ID) })
	each(j.Chains, func(c Chain) { once("chain", c.ID) })
	each(j.Remedies, func(r Remedy) { once("remedy", r.ID) })
	each(j.Steps, func(s Step) { once("step", s.ID) })
	each(j.Parts, func(p Part) { once("part", p.ID) })
}

// Signs carry a word and what it rests on; each word has its figure, and its
// probability lies on its side of what is there anyway.
func TestSignsCarryWords(t *testing.T) {
	b := Standard()
	for _, s := range b.Signs().All() {
		if s.Weight == "" || s.Because == "" {
			t.Errorf("%s: weight %q, because %q", s.ID, s.Weight, s.Because)
		}
	}
	if n := b.Table("sign-weights").Rows.Len(); n != len(makes)+len(hides) {
		t.Errorf("%d words in the table", n)
	}
	for i, c := range []struct {
		word string
		want float64
	}{{"certain", 1 - 0.8*0.07}, {"strong", 1 - 0.8*0.25}, {"fair", 1 - 0.8*0.5}, {"weak", 1 - 0.8*0.8}, {"against", 0.2 * 0.3}, {"rules-out", 0.2 * 0.08}} {
		if got := b.SignYes(Sign{Weight: c.word}, 0.2); got < c.want-1e-12 || got > c.want+1e-12 || (i < len(makes)) != (got > 0.2) {
			t.Errorf("%s: %v, not %v", c.word, got, c.want)
		}
	}
	if got := b.SignYes(Sign{Yes: 0.37}, 0.2); got != 0.37 {
		t.Errorf("a number that somebody counted: %v", got)
	}
}

// Each question can be looked at in some way that is no hearsay, what is blind
// is among its ways, and every way has a rate of its own.
func TestQuestionsHaveWays(t *testing.T) {
	b := Standard()
	for _, e := range b.Evidence().All() {
		if way := e.Unsaid(); way == Hearsay || !Contains(e.WaysToLook(), way) {
			t.Errorf("%s: %s where nobody says", e.ID, way)
		}
		for _, way := range e.WaysToLook().All() {
			if w := b.WrongBy(way); !(w > 0 && w < 0.5) {
				t.Errorf("%s: %s is wrong in %v", e.ID, way, w)
			}
		}
		for _, way := range e.Blind.All() {
			if !Contains(e.WaysToLook(), way) {
				t.Errorf("%s: %s is none of its ways", e.ID, way)
			}
		}
	}
	for _, pair := range [][2]string{{"laboratory", "patch"}, {"patch", "magnet"}, {"magnet", "jar"}, {"jar", "dipstick"}, {"gauge", "eye"}, {"eye", "feel"}, {"feel", "noticed"}, {"noticed", Hearsay}} {
		if b.WrongBy(pair[0]) >= b.WrongBy(pair[1]) {
			t.Errorf("%s is no surer than %s", pair[0], pair[1])
		}
	}
}

// A gearbox with hydraulic clutches holds nothing with the engine off: what is
// felt at shaft and output flange is felt with the coupling parted, and nothing
// runs the shaft then.
func TestNothingRunsThePartedCoupling(t *testing.T) {
	for _, e := range Standard().Evidence().All() {
		parted := strings.Contains(strings.ToLower(e.Title+" "+e.Help), "coupling parted")
		if parted && e.RunsShaft {
			t.Errorf("%s runs the shaft", e.ID)
		}
		switch e.ID {
		case "output-flange-play", "output-nut-turns", "output-spline-play", "play-on-turning", "shaft-turns-hard", "shaft-runout":
			if !parted || !Contains(e.Hazards, "stop-the-engine") {
				t.Errorf("%s is not made with the coupling parted and the engine stopped", e.ID)
			}
		}
		if text := strings.ToLower(e.Title + " " + e.Help); strings.Contains(text, "in gear, can") {
			t.Errorf("%s takes the gearbox to hold", e.ID)
		}
	}
}
