package rules

import (
	"slices"
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
			ratio := s.Yes / otherwise[s.Evidence]
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
