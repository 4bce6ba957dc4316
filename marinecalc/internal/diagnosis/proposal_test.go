package diagnosis_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// In front stands what can hurt in the looks that are proposed first, and what
// is dangerous now; what belongs to other looks stands beside each of them.
func TestCautionsAreOfTheWorkInHand(t *testing.T) {
	const diver, monoxide, slings = "Nobody dives", "carbon monoxide", "boat on stands"
	const stay, water, shaftAft = "The shaft stays still", "Water comes in at shaft", "can slide out"
	for _, c := range []struct {
		name, lies string
		yes        []string
		has, not   []string
	}{
		{"nothing yet", "afloat", nil, []string{"not a proof"}, []string{stay, water, slings}},
		{"dry gland", "afloat", []string{"gland-hot", "gland-no-drip"}, []string{stay, "Slackening the follower"}, []string{diver, slings}},
		{"smoke", "afloat", []string{"smokes-more"}, []string{monoxide}, []string{stay, water}},
		{"water at the hose", "afloat", []string{"tube-weeps", "hose-seen"}, []string{water}, []string{"coupling bolts"}},
		{"the same ashore", "ashore", []string{"tube-weeps"}, nil, []string{water, diver}},
		{"shaft gone aft", "afloat", []string{"shaft-moved-aft"}, []string{shaftAft, stay}, nil},
		{"blade ashore", "ashore", []string{"after-touching", "shake-grows"}, []string{slings}, []string{"Make fast fore and aft"}},
	} {
		var answers []string
		for _, id := range c.yes {
			answers = append(answers, `{"evidence":"`+id+`","answer":"yes"}`)
		}
		s := testboat.Run(t, "fault-finding", `{"lies":"`+c.lies+`","answers":[`+strings.Join(answers, ",")+`]}`, marinecalc.Options{NoRanges: true})
		says := func(words string) bool {
			return slices.ContainsFunc(s.Cautions, func(o sheet.Caution) bool { return strings.Contains(o.Text, words) })
		}
		for _, words := range c.has {
			if !says(words) {
				t.Errorf("%s: no caution with %q", c.name, words)
			}
		}
		for _, words := range c.not {
			if says(words) {
				t.Errorf("%s: a caution with %q", c.name, words)
			}
		}
		if len(s.Cautions) > 8 {
			t.Errorf("%s: %d cautions before the answer", c.name, len(s.Cautions))
		}
		for i := 1; i < len(s.Cautions); i++ {
			if s.Cautions[i].Signal.Gravity() < s.Cautions[i-1].Signal.Gravity() {
				t.Errorf("%s: %s after %s", c.name, s.Cautions[i].Signal, s.Cautions[i-1].Signal)
			}
		}
		for n := 3; s.Cell("nextChecks", n, "question") != nil; n++ {
			if h := s.Cell("nextChecks", n, "hazard"); h != nil && strings.Contains(h.Text, "DANGER") && len(h.Text) < 20 {
				t.Errorf("%s: a hazard without words: %s", c.name, h.Text)
			}
		}
	}
}
