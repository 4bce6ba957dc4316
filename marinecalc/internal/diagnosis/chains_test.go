package diagnosis_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// judgedSheet is a sheet with one verdict.
func judgedSheet(t *testing.T, limit, word string) *sheet.Sheet {
	t.Helper()
	for _, l := range rules.Standard().AllLimits().All() {
		if l.ID == limit {
			return &sheet.Sheet{Calculation: l.Calculation, Verdicts: []sheet.Verdict{{Limit: limit, Title: l.Title, Word: sheet.Word(word), Reads: sheet.Word(word).Reads(sheet.AtMost)}}}
		}
	}
	t.Fatalf("there is no limit %s", limit)
	return nil
}

func has(list []string, from, to string) bool {
	return slices.ContainsFunc(list, func(s string) bool {
		a, b, link := strings.Cut(s, " → ")
		return link && strings.HasPrefix(a, from) && strings.HasPrefix(b, to)
	})
}

// expects tells whether one trouble may have brought on what nobody has seen.
func expects(list []string, from, what string) bool {
	return slices.ContainsFunc(list, func(s string) bool {
		a, b, _ := strings.Cut(s, " may have brought on: ")
		return strings.HasPrefix(a, "Look for what “"+from) && strings.Contains("; "+b, "; "+what)
	})
}

// From pressed rubber over the coupling to the metal in the fluid: each link
// between two troubles seen is told, though those between have no verdict.
func TestChainsRunFromTroubleToTrouble(t *testing.T) {
	sheets := []*sheet.Sheet{judgedSheet(t, "mount-compression", "beyond"), judgedSheet(t, "wear-depth", "near the limit")}
	got := diagnosis.Chains(rules.Standard(), nil, sheets)
	for _, link := range [][2]string{
		{"Mount deflection", "Engine mounts settled"},
		{"Engine mounts settled", "Coupling misaligned"},
		{"Coupling misaligned", "Gearbox bearing worn"},
		{"Gearbox bearing worn", "Wear against the maker's limit (OK but close)"},
	} {
		if !has(got, link[0], link[1]) {
			t.Errorf("no link from %s to %s in\n%s", link[0], link[1], strings.Join(got, "\n"))
		}
	}
	if !expects(got, "Wear against the maker's limit", "Gear teeth") {
		t.Errorf("what wear may bring on is not told:\n%s", strings.Join(got, "\n"))
	}
	if has(got, "Gland too tight", "") || has(got, "Coupling misaligned", "Gland packing") {
		t.Errorf("a link that no trouble explains:\n%s", strings.Join(got, "\n"))
	}
	for _, s := range got {
		if !strings.HasSuffix(s, "[common practice]") {
			t.Errorf("its authority is not told: %s", s)
		}
	}
}

// A verdict of within ends a chain, and without troubles there is none.
func TestChainsStopAtWhatIsWithin(t *testing.T) {
	got := diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{judgedSheet(t, "gland-rise-measured", "within"), judgedSheet(t, "soft-foot", "within")})
	if len(got) != 0 {
		t.Errorf("chains without trouble: %v", got)
	}
	sheets := []*sheet.Sheet{judgedSheet(t, "rigid-gap-per-diameter", "beyond"), judgedSheet(t, "gland-rise-measured", "within")}
	got = diagnosis.Chains(rules.Standard(), nil, sheets)
	if !expects(got, "Coupling misaligned", "Stern bearing worn;") {
		t.Errorf("a verdict that confirms a cause starts no chain: %v", got)
	}
	if has(got, "Coupling misaligned", "Gland above") || expects(got, "Coupling misaligned", "Gland above") {
		t.Errorf("expected although within: %v", got)
	}
}

// What was measured and tells nothing yet is said to be so, and not to be
// nothing: wear without the maker's limit, a mount between its bounds.
func TestChainsSayWhatIsOpen(t *testing.T) {
	got := diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{judgedSheet(t, "bearing-life-wanted", "beyond"), judgedSheet(t, "wear-depth", "not measured")})
	if !expects(got, "Life of the bearing", "Gearbox bearing worn.") {
		t.Errorf("what nobody looked for: %v", got)
	}
	got = diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{judgedSheet(t, "hard-skin", "beyond"), judgedSheet(t, "soft-foot", "beyond"), judgedSheet(t, "rigid-gap-per-diameter", "cannot tell")})
	if !expects(got, "Gap under a slackened foot", "Coupling misaligned (the verdict on “") {
		t.Errorf("a coupling that was read: %v", got)
	}
	found := testboat.Run(t, diagnosis.FaultFinding, `{"answers": [{"evidence": "output-flange-play", "answer": "yes"}]}`, marinecalc.Options{})
	got = diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{found, judgedSheet(t, "wear-depth", "not measured")})
	if !expects(got, "Gearbox bearing worn", "Wear against the maker's limit (no verdict yet)") {
		t.Errorf("wear without the maker's limit: %v", got)
	}
}

// The first cause of the fault finding starts a chain once it is likelier
// than all the others.
func TestChainsStartAtTheFaultFound(t *testing.T) {
	for _, c := range []struct {
		input string
		want  bool
	}{
		{`{"answers": [{"evidence": "shaft-runout", "answer": "yes"}, {"evidence": "gland-wanders", "answer": "yes"}]}`, true},
		{`{"answers": []}`, false},
	} {
		s := testboat.Run(t, diagnosis.FaultFinding, c.input, marinecalc.Options{})
		if got := expects(diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{s}), "Shaft bent", "Stern bearing worn"); got != c.want {
			t.Errorf("%s: a chain is told: %v", c.input, got)
		}
	}
}

// What is near its limit alone sets nobody looking: nothing is wrong there. Once
// something is over, what is near is part of the chain.
func TestNothingIsBlamedWhileNothingIsWrong(t *testing.T) {
	near := judgedSheet(t, "isolation-at-idle", "near the limit")
	if got := diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{near}); len(got) != 0 {
		t.Errorf("chains of a boat in order: %v", got)
	}
	if got := diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{near, judgedSheet(t, "rigid-gap-per-diameter", "beyond")}); !expects(got, "Transmitted vibration", "A mount or its holding-down bolt loose") {
		t.Errorf("beside a trouble: %v", got)
	}
}

// Found troubles that explain one another need nothing between them that nobody
// has seen, and what was looked at and not found is not to be looked for again.
func TestChainsLeaveOutWhatNobodySaw(t *testing.T) {
	input := `{"answers": [{"evidence": "output-flange-play", "answer": "yes"}, {"evidence": "mount-rubber", "answer": "yes"}, {"evidence": "coupling-gaps", "answer": "yes"}, {"evidence": "coupling-bolt-turns", "answer": "no"}]}`
	s := testboat.Run(t, diagnosis.FaultFinding, input, marinecalc.Options{})
	rigid := testboat.Read(t, `{"name": "Rigid", "coupling": {"kind": "rigid"}}`)
	for _, b := range []*boat.Boat{nil, rigid} {
		got := diagnosis.Chains(rules.Standard(), b, []*sheet.Sheet{s})
		if !has(got, "Engine mounts settled or perished (found)", "Coupling misaligned (found)") || !has(got, "Coupling misaligned (found)", "Gearbox bearing worn (found)") {
			t.Errorf("the chain of what was found: %v", got)
		}
		links := slices.DeleteFunc(slices.Clone(got), func(s string) bool { return !strings.Contains(s, " → ") })
		if len(links) != 2 {
			t.Errorf("links that nobody saw: %v", links)
		}
		if expects(got, "Coupling misaligned", "Coupling bolts loose") {
			t.Errorf("looked at and not there: %v", got)
		}
		if want := b == nil; expects(got, "Coupling misaligned", "Flexible coupling element torn") != want {
			t.Errorf("an elastic piece is expected: %v, want %v", !want, want)
		}
	}
}

// Two troubles of which each brings on the other are one circle, and one line.
func TestCircleIsToldOnce(t *testing.T) {
	s := testboat.Run(t, diagnosis.FaultFinding, `{"answers": [{"evidence": "output-nut-turns", "answer": "yes"}, {"evidence": "output-face-seen", "answer": "yes"}]}`, marinecalc.Options{})
	got := diagnosis.Chains(rules.Standard(), nil, []*sheet.Sheet{s})
	const nut, face = "Output flange nut loose", "Clamping face of the output flange worn"
	circles := 0
	for _, line := range got {
		if strings.Contains(line, nut+" (found) ↔ "+face+" (found), each brings on the other: ") {
			circles++
		}
	}
	if circles != 1 || has(got, nut, face) || has(got, face, nut) {
		t.Errorf("%d circles:\n%s", circles, strings.Join(got, "\n"))
	}
}
