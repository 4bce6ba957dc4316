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
	if len(s.Drawings) != 1 || !strings.Contains(s.Drawings[0].Description, s.Result("leadingCause").Text) {
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
	out = found(t, marinecalc.Options{}, yes("growth-seen", "clatter-at-idle", "knock-in-gear", "knock-into-gear", "shake-at-idle")...)
	if out.Cause != "damper-worn" || out.Known != "suspected" || !strings.Contains(out.Found, "Growth") {
		t.Errorf("%s, %s; found %q", out.Cause, out.Known, fmt.Sprint(out.Found, out.Ranking[:3]))
	}
}

// Several things found that chains link are one chain, told in the order of
// cure: mounts, then alignment, then the bearing.
func TestAChainIsToldInOrder(t *testing.T) {
	out := found(t, marinecalc.Options{}, yes("output-flange-play", "gearbox-whine", "coupling-gaps", "mount-rubber")...)
	for i, want := range []string{"mounts-settled", "coupling-misaligned", "gearbox-bearing", ""} {
		if got := out.CureOrder[i].Cause; got != want {
			t.Errorf("%d: %s, not %s", i, got, want)
		}
	}
	if out.Cause != "gearbox-bearing" || !strings.HasPrefix(out.MadeBy, "Engine mounts settled or perished (found) → Coupling misaligned (found) → Gearbox bearing worn (found)") {
		t.Errorf("%s made by %q", out.Cause, out.MadeBy)
	}
	if out.CureOrder[0].Because == "" || out.CureOrder[1].Remedies == "" {
		t.Errorf("%+v", out.CureOrder[:2])
	}
	// The broken part alone: its makers are named to look for.
	out = found(t, marinecalc.Options{}, yes("output-flange-play", "gearbox-whine", "fluid-metal")...)
	if !strings.Contains(out.MadeBy, "Coupling misaligned") {
		t.Errorf("made by %q", out.MadeBy)
	}
}
