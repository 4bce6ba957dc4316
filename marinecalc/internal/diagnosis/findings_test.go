package diagnosis_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// The sheet's tables agree with each other: found ones first, probabilities
// fall, the weightiest answer first.
func TestSheetOfTheFaultFinding(t *testing.T) {
	answers := yes("knock-into-gear", "red-dust", "gone-in-neutral")
	text, err := json.Marshal(map[string]any{"answers": symptomsJSON(answers)})
	if err != nil {
		t.Fatal(err)
	}
	s, err := marinecalc.Run(diagnosis.FaultFinding, text, marinecalc.Options{})
	if err != nil {
		t.Fatal(err)
	}
	last := 1.0
	for i := 0; s.Cell("ranking", i, "name") != nil; i++ {
		p := *s.Cell("ranking", i, "probability").SI
		if p > last {
			t.Errorf("row %d is more probable than the one before", i)
		}
		last = p
	}
	weight := math.Inf(1)
	for i := 0; s.Cell("weights", i, "decibans") != nil; i++ {
		w := math.Abs(*s.Cell("weights", i, "decibans").SI)
		if w > weight {
			t.Errorf("answer %d weighs more than the one before", i)
		}
		weight = w
	}
	if len(s.Drawings) != 1 || !strings.Contains(s.Drawings[0].Description, s.Cell("ranking", 0, "name").Text) {
		t.Errorf("drawings: %+v", s.Drawings)
	} else if what := testboat.WellFormed(s.Drawings[0].SVG); what != "" {
		t.Error(what)
	}
}

func symptomsJSON(answers []diagnosis.Symptom) []map[string]string {
	list := []map[string]string{}
	for _, a := range answers {
		list = append(list, map[string]string{"evidence": a.Evidence, "answer": a.Answer})
	}
	return list
}

// Two looks that show two things are two findings: neither is improbable, and
// they do not contradict each other.
func TestWhatWasSeenIsFound(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("damper-seen", "bearing-play")...)
	if out.Contradiction != "" || out.Known != "found" || !strings.Contains(out.Found, "Damper plate worn") || !strings.Contains(out.Found, "Stern bearing worn") {
		t.Errorf("%q, %s, %q", out.Found, out.Known, out.Contradiction)
	}
	for i, r := range out.Ranking[:3] {
		if is := !math.IsNaN(float64(r.Probability)); is != (i == 2) || (r.Known == "found") == is {
			t.Errorf("%d: %+v", i, r)
		}
	}
	// What was seen and explains nothing does not lead what the answers point to.
	out = found(t, marinecalc.Options{}, yes("growth-seen", "clatter-at-idle", "bell-dust", "knock-in-gear", "knock-into-gear", "shake-at-idle")...)
	if out.Cause != "damper-worn" || out.Known != "suspected" || !strings.Contains(out.Found, "Growth") {
		t.Errorf("%s, %s; found %q", out.Cause, out.Known, fmt.Sprint(out.Found, out.Ranking[:3]))
	}
}

// Several things found that chains link are one chain; they are cured as the
// work goes, mounts and bearing before the alignment.
func TestAChainIsToldInOrder(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("output-flange-play", "gearbox-whine", "coupling-gaps", "mount-rubber")...)
	for i, want := range []string{"mounts-settled", "gearbox-bearing", "coupling-misaligned", ""} {
		if got := out.CureOrder[i].Cause; got != want {
			t.Errorf("%d: %s, not %s", i, got, want)
		}
	}
	if out.Cause != "gearbox-bearing" || !strings.HasPrefix(out.MadeBy, "Engine mounts settled or perished (found) → Coupling misaligned (found) → Gearbox bearing worn (found)") {
		t.Errorf("%s made by %q", out.Cause, out.MadeBy)
	}
	if out.CureOrder[0].Because == "" || out.CureOrder[2].Because == "" || out.CureOrder[1].Remedies == "" {
		t.Errorf("%+v", out.CureOrder[:2])
	}
	// The broken part alone: its makers are named to look for.
	out = found(t, marinecalc.Options{}, yes("output-flange-play", "gearbox-whine", "fluid-metal")...)
	if !strings.Contains(out.MadeBy, "Coupling misaligned") {
		t.Errorf("made by %q", out.MadeBy)
	}
}

// What made a part fail is looked for up the chain: old mounts behind the
// misalignment that a worn bearing makes likely. What was looked at is not.
func TestTheMountsBehindAWornBearing(t *testing.T) {
	const mounts = "Engine mounts settled or perished"
	answers := yes("gearbox-whine", "gearbox-hot", "fluid-metal", "output-flange-play", "mounts-old")
	if out := found(t, marinecalc.Options{}, answers...); !strings.Contains(out.MadeBy, mounts) || !strings.Contains(out.MadeBy, "by way of coupling misaligned") {
		t.Errorf("old mounts are not suspected: %s", out.MadeBy)
	}
	if out := found(t, marinecalc.Options{}, append(answers, no("mount-rubber")...)...); strings.Contains(out.MadeBy, mounts) {
		t.Errorf("mounts that were looked at: %s", out.MadeBy)
	}
	if out := found(t, marinecalc.Options{}, append(answers, yes("mount-rubber", "coupling-gaps")...)...); !strings.HasPrefix(out.MadeBy, "Engine mounts settled or perished (found) → Coupling misaligned (found) → Gearbox bearing worn") {
		t.Errorf("the chain of what was found: %s", out.MadeBy)
	}
}

// What the boat does not have is not suspected, nor proposed to be looked at:
// an elastic piece in a rigid coupling, a face seal where packing is. Who has
// seen it all the same is believed.
func TestWhatTheBoatDoesNotHave(t *testing.T) {
	const knocks = `{"answers": [{"evidence": "after-rope", "answer": "yes"}, {"evidence": "knock-into-gear", "answer": "yes"}, {"evidence": "knock-in-gear", "answer": "yes"}, {"evidence": "came-suddenly", "answer": "yes"}%s]}`
	const sprays = `{"answers": [{"evidence": "gland-drips-much", "answer": "yes"}, {"evidence": "came-suddenly", "answer": "yes"}, {"evidence": "drip-returns", "answer": "no"}, {"evidence": "follower-home", "answer": "no"}%s]}`
	for _, c := range []struct {
		boat, answers, cause string
		listed               bool
	}{
		{`"coupling": {"kind": "rigid"}`, knocks, "coupling-insert-torn", false},
		{`"coupling": {"kind": "flexible"}`, knocks, "coupling-insert-torn", true},
		{`"gland": {"packing": "flax"}`, sprays, "face-seal-leaks", false},
		{`"gland": {"boxBore": "41 mm"}`, sprays, "face-seal-leaks", true},
	} {
		b := testboat.Read(t, `{"name": "Wren", `+c.boat+`}`)
		s := testboat.Run(t, diagnosis.FaultFinding, fmt.Sprintf(c.answers, ""), marinecalc.Options{Boat: b})
		listed := false
		for n := 0; s.Cell("ranking", n, "cause") != nil; n++ {
			listed = listed || s.Cell("ranking", n, "cause").Text == c.cause
		}
		if listed != c.listed {
			t.Errorf("%s with %s: suspected %v, want %v", c.cause, c.boat, listed, c.listed)
		}
	}
	b := testboat.Read(t, `{"name": "Wren", "coupling": {"kind": "rigid"}}`)
	s := testboat.Run(t, diagnosis.FaultFinding, fmt.Sprintf(knocks, `, {"evidence": "coupling-insert-seen", "answer": "yes"}`), marinecalc.Options{Boat: b})
	if r := s.Result("found"); r == nil || !strings.Contains(r.Text, "Flexible coupling element torn") {
		t.Errorf("what a person saw: %+v", r)
	}
}

// A judgement is told in whole per cent, and never as none or all.
func TestWholePerCent(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("gearbox-whine", "gearbox-hot", "fluid-leaks")...)
	for _, r := range out.Ranking {
		if p := 100 * float64(r.Probability); !math.IsNaN(p) && r.Name != "" && (math.Abs(p-math.Round(p)) > 1e-9 || p < 1 || p > 99) {
			t.Errorf("%s: %v %%", r.Name, p)
		}
	}
}

// Under even odds a suspicion is looked at: no cure is named for it, and where
// chains lead both ways the likelier one tells what made it fail.
func TestNoCureUnderEvenOdds(t *testing.T) {
	out := found(t, marinecalc.Options{}, append(yes("came-suddenly", "shake-grows"), no("after-touching", "shaft-runout", "blade-seen", "bearing-play", "rope-seen", "coupling-gaps")...)...)
	if p := float64(out.Probability); !(p < 0.5) || out.Remedies != "" {
		t.Errorf("%s at %v is cured by %q", out.Cause, p, out.Remedies)
	}
	out = found(t, marinecalc.Options{}, yes("gland-hot", "gland-no-drip", "gland-drawn-up", "gland-ease")...)
	if out.Known != "found" || out.Remedies == "" {
		t.Errorf("%s, %s, cured by %q", out.Cause, out.Known, out.Remedies)
	}
	out = found(t, marinecalc.Options{}, yes("gland-hot", "gland-drawn-up", "packing-hard")...)
	if strings.Contains(out.MadeBy, "Shaft worn where the packing runs") {
		t.Errorf("burnt packing: made by %q", out.MadeBy)
	}
}

// Packing that is seen to be burnt is renewed, not set.
func TestBurntPackingIsRenewed(t *testing.T) {
	soft := found(t, marinecalc.Options{}, append(yes("gland-hot", "gland-ease"), no("packing-hard")...)...)
	burnt := found(t, marinecalc.Options{}, yes("gland-hot", "gland-ease", "packing-hard")...)
	cure := func(r diagnosis.Result, cause string) string {
		for _, c := range r.CureOrder {
			if c.Cause == cause {
				return c.Cure
			}
		}
		return ""
	}
	if got := cure(soft, "gland-tight"); got != "adjust-gland" {
		t.Errorf("soft packing: %s", got)
	}
	if tight, packing := cure(burnt, "gland-tight"), cure(burnt, "gland-packing-burnt"); tight != "repack-gland" || packing != "repack-gland" {
		t.Errorf("burnt packing: %s and %s", tight, packing)
	}
	// Until it was looked at, that look is what is proposed first.
	open := found(t, marinecalc.Options{}, yes("gland-hot", "gland-no-drip", "gland-drawn-up", "gland-ease")...)
	if !strings.Contains(open.NextChecks[0].Question, "hard, glazed or burnt") {
		t.Errorf("proposed first: %q", open.NextChecks[0].Question)
	}
}

// What the sheet says in words it says by id too: programs go by that.
func TestQuestionsAreNamedByTheirRows(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("knock-into-gear", "red-dust", "gone-in-neutral")...)
	title := map[string]string{}
	for _, e := range rules.Standard().Evidence().All() {
		title[e.ID] = e.Title
	}
	same := func(where, id, words string) {
		if title[id] == "" || !strings.HasPrefix(words, title[id]) {
			t.Errorf("%s: the row %q is %q, the words are %q", where, id, title[id], words)
		}
	}
	same("confirmBy", out.ConfirmEvidence, out.ConfirmBy)
	for _, c := range out.NextChecks {
		if c.Question != "" {
			same("nextChecks", c.Evidence, c.Question)
		}
	}
	for _, q := range out.QuickQuestions {
		if q.Question != "" {
			same("quickQuestions", q.Evidence, q.Question)
		}
	}
	for _, w := range out.Weights {
		if w.Question != "" {
			same("weights", w.Evidence, w.Question)
		}
	}
	for _, r := range out.Ranking {
		if r.Name != "" && (r.State == "found") != (r.Known != "") {
			t.Errorf("%s is %s, and known by %q", r.Name, r.State, r.Known)
		}
	}
}

// Every cure of a cause that was found is named by its id, not its first alone.
func TestEveryCureIsNamed(t *testing.T) {
	tried := false
	for _, c := range rules.Standard().Causes().All() {
		if c.Remedies.Len() < 2 {
			continue
		}
		out := found(t, marinecalc.Options{}, yes(c.Confirm)...)
		if out.Cause != c.ID || out.Known != "found" || !strings.Contains(out.Remedies, "; or: ") {
			continue
		}
		tried = true
		if named := len(out.Procedures()); named < 1+strings.Count(out.Remedies, "; or: ") {
			t.Errorf("%s: %d of the cures are named: %s", c.ID, named, out.Remedies)
		}
	}
	if !tried {
		t.Error("no cause has two cures")
	}
}

// While a broken damper plate keeps the shaft still, nobody is sent to look for
// an uneven engine or a low idle, which only a running engine shows, before the
// cure; where the shaft may run, both are looked for before.
func TestWhatMadeItFailWaitsWhereItMustRun(t *testing.T) {
	if says := found(t, marinecalc.Options{}, yes("damper-seen", "knock-into-gear")...).MadeBy; strings.Contains(says, "Look, before a new part runs") || !strings.Contains(says, "At the first start after the cure, see to: Engine runs unevenly") {
		t.Error(says)
	}
}
