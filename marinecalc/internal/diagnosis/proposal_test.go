package diagnosis_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
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
		{"bearing ashore", "ashore", []string{"rumble-aft", "shake-grows"}, []string{slings}, []string{"Make fast fore and aft"}},
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
		at := slices.IndexFunc(s.Cautions, func(o sheet.Caution) bool { return strings.HasPrefix(o.Text, "The shaft stays still") })
		if at > 0 {
			t.Errorf("%s: that the shaft stays still is number %d", c.name, at+1)
		}
		for i := at + 2; i < len(s.Cautions); i++ {
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

// Of every case story at most five cautions stand before the answer; the first
// is of what is dangerous now or else of the look that is proposed first, and
// where that look runs the engine carbon monoxide is named.
func TestFewCautionsBeforeTheAnswer(t *testing.T) {
	hazards := map[string]rules.List[string]{}
	for _, e := range rules.Standard().Evidence().All() {
		hazards[e.Title] = e.Hazards
	}
	for _, one := range caseStories(t) {
		var answers []string
		for _, a := range slices.Concat(yes(one.Yes...), no(one.No...), said("unknown", one.Unknown)) {
			answers = append(answers, `{"evidence":"`+a.Evidence+`","answer":"`+a.Answer+`"}`)
		}
		s := testboat.Run(t, "fault-finding", `{"lies":"`+one.Lies+`","answers":[`+strings.Join(answers, ",")+`]}`, marinecalc.Options{NoRanges: true})
		if len(s.Cautions) > 5 {
			t.Errorf("%s: %d cautions before the answer", one.Name, len(s.Cautions))
		}
		says := func(words string) bool {
			return slices.ContainsFunc(s.Cautions, func(o sheet.Caution) bool { return strings.Contains(o.Text, words) })
		}
		still := s.Result("heldBack") != nil && s.Result("heldBack").Text != ""
		if still != strings.HasPrefix(s.Cautions[0].Text, "The shaft stays still") {
			t.Errorf("%s: the first caution is %q", one.Name, s.Cautions[0].Text)
		}
		look := s.Cell("nextChecks", 0, "question")
		if look == nil {
			continue
		}
		if rules.Contains(hazards[look.Text], "carbon-monoxide") && !says("carbon monoxide") {
			t.Errorf("%s: %s without a word of carbon monoxide", one.Name, look.Text)
		}
		if rules.Contains(hazards[look.Text], "stop-the-engine") && !says("engine stopped") {
			t.Errorf("%s: %s without the engine stopped", one.Name, look.Text)
		}
	}
}

// What an answer would do names no cause that nothing noticed points to: worn
// packing does not knock going into gear.
func TestAnOutcomeNamesWhatIsSuspected(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("damper-seen", "knock-into-gear")...)
	for _, c := range out.NextChecks {
		if strings.Contains(c.IfNo, "Gland packing worn out") {
			t.Errorf("%s: if no: %s", c.Question, c.IfNo)
		}
	}
	if !slices.ContainsFunc(out.NextChecks[:], func(c diagnosis.NextCheck) bool { return strings.Contains(c.IfNo, "Spline of damper plate") }) {
		t.Errorf("%+v", out.NextChecks)
	}
}

// A flange that cracked is looked for where it knocks and frets all at once with
// its bolts tight and its faces even, and stray
// current where an anode is gone at a berth; each is found by its look, keeps what it
// must still, and is cured before what it ate is renewed.
func TestCrackedFlangeAndStrayCurrent(t *testing.T) {
	yes := func(ids ...string) string {
		var list []string
		for _, id := range ids {
			id, answer, no := strings.Cut(id, "=")
			if !no {
				answer = "yes"
			}
			list = append(list, `{"evidence": "`+id+`", "answer": "`+answer+`"}`)
		}
		return `{"answers": [` + strings.Join(list, ", ") + `]}`
	}
	for _, c := range []struct {
		input, look, cause string
		still              bool
	}{
		{yes("came-suddenly", "knock-in-gear", "red-dust", "peak-shaft-speed", "coupling-bolt-turns=no", "coupling-gaps=no"), "flange-crack-seen", "flange-cracked", true},
		{yes("anode-gone", "lay-long"), "current-read", "stray-current", false},
	} {
		s := testboat.Run(t, diagnosis.FaultFinding, c.input, marinecalc.Options{NoRanges: true})
		asked := false
		for n := 0; s.Cell("nextChecks", n, "evidence") != nil; n++ {
			asked = asked || s.Cell("nextChecks", n, "evidence").Text == c.look
		}
		if !asked {
			t.Errorf("%s is not looked for", c.cause)
		}
		s = testboat.Run(t, diagnosis.FaultFinding, yes(c.look), marinecalc.Options{NoRanges: true})
		if got := s.Result("cause").Text; got != c.cause || s.Result("known").Text != "found" {
			t.Errorf("found %s, want %s", got, c.cause)
		}
		if still := s.Result("heldBack") != nil; still != c.still {
			t.Errorf("%s: kept still %v", c.cause, still)
		}
	}
	s := testboat.Run(t, diagnosis.FaultFinding, yes("current-read", "metal-pink", "shaft-pits-seen"), marinecalc.Options{NoRanges: true})
	if first := s.Cell("cureOrder", 0, "cause"); first == nil || first.Text != "stray-current" {
		t.Errorf("cured first: %+v", first)
	}
}
