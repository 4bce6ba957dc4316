package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

const screwed = `{"shaftDiameter": "25 mm", "shaftTorque": "150 N·m", "peakTorque": "220 N·m", "asternTorque": "130 N·m", "thrust": "3.6 kN", "holdMethod": "set-screws", "setScrews": %SCREWS%,
	"hubDiameter": "58 mm", "hubMetal": "mild-steel", "engagedLength": "60 mm"%KEY%}`

// Of a flange on set screws the torque is the danger, of which the screws hold none: what
// holds it stands before what the screws pull, and no advice goes by the pull alone.
func TestSetScrewsLeadWithTheTorque(t *testing.T) {
	for _, c := range []struct{ screws, key, word, first string }{
		{`2, "setScrewSize": "3/8"`, ``, "cannot tell", "Look what carries the torque, ahead and astern, before she next leaves the berth"},
		{`2, "setScrewSize": "3/8"`, `, "keyed": "yes"`, "cannot tell", "Look what carries the torque, ahead and astern, before she next leaves the berth"},
		{`2, "setScrewSize": "3/8"`, `, "keyed": "no"`, "beyond", "Do not run under power"},
		{`1, "setScrewSize": "no-10"`, ``, "cannot tell", "Do not run under power"}, // pulled off astern
	} {
		s := testboat.Run(t, "coupling-bore", strings.NewReplacer("%SCREWS%", c.screws, "%KEY%", c.key).Replace(screwed), marinecalc.Options{})
		if got := wordOf(s, "bore-torque-ahead"); got != c.word {
			t.Errorf("%s%s: ahead %s", c.screws, c.key, s.Verdict("bore-torque-ahead").Sentence)
		}
		if !strings.HasPrefix(s.Next[0].Text, c.first) {
			t.Errorf("%s%s: %s", c.screws, c.key, s.Next[0].Text)
		}
		at := map[string]int{}
		for i, r := range s.Results {
			at[r.Name] = i
		}
		if at["heldBy"] > at["screwMargin"] || s.Result("heldBy") == nil {
			t.Errorf("%s%s: what holds it stands at %d, the screws at %d", c.screws, c.key, at["heldBy"], at["screwMargin"])
		}
		for _, n := range s.Next {
			if strings.HasPrefix(n.Text, "Go astern gently") {
				t.Errorf("%s%s: %s", c.screws, c.key, n.Text)
			}
		}
	}
}

// Of verdicts that are past their limits those lead that keep the shaft still, and their
// advice with them.
func TestWhatKeepsTheShaftStillLeads(t *testing.T) {
	s := testboat.Run(t, "coupling-bore", strings.NewReplacer("%SCREWS%", `2, "setScrewSize": "3/8"`, "%KEY%", `, "keyed": "no"`).Replace(screwed), marinecalc.Options{})
	var past []string
	for _, v := range s.Verdicts {
		if v.Word == sheet.Beyond {
			past = append(past, v.Limit)
		}
	}
	if got := strings.Join(past, " "); got != "bore-torque-ahead bore-torque-astern bore-torque-peak" {
		t.Errorf("%s", got)
	}
}
