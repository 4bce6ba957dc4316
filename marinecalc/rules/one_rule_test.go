package rules_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/rules"
)

// Wherever loose coupling bolts are spoken of the rule is one: with red dust, fretted or
// once over its proof load, and the whole set is changed.
func TestLooseCouplingBoltsHaveOneRule(t *testing.T) {
	b := rules.Standard()
	said := map[string]string{}
	for _, r := range b.Remedies().All() {
		if r.ID == "tighten-coupling-bolts" {
			said["remedy"] = r.Text
		}
	}
	for _, s := range b.Steps().All() {
		if s.ID == "look-coupling-bolts" {
			said["step"] = s.Text
		}
	}
	for _, a := range b.Advice("line-joints").All() {
		if a.ID == "line-stop-faces" {
			said["advice"] = a.Text
		}
	}
	for _, row := range b.Table("torque-joints").Rows.All() {
		if row.ID == "torque-coupling-bolts" {
			said["card"] = row.Values.Of("first").Text
		}
	}
	for _, where := range []string{"remedy", "step", "advice", "card"} {
		for _, word := range []string{"red dust", "frett", "once over its proof load", "change", "whole set"} {
			if !strings.Contains(said[where], word) {
				t.Errorf("%s does not say %q: %s", where, word, said[where])
			}
		}
	}
}
