package diagnosis_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// A yard adds a cause, its question, its signs and its cure in one file.
func TestAYardAddsACause(t *testing.T) {
	const backing = `"source": {"document": "Yard log"}, "basis": "measured"`
	book := testboat.Overlay(t, `{"title": "Our yard",
		"evidence": [{"id": "yard-anode-knocks", "group": "sound", "kind": "symptom", "title": "Does the shaft anode knock on the strut?", "help": "Listen from under water.", "minutes": 2, "access": 1, "place": "either", "hazards": ["fault-diver"], "otherwise": 0.02, `+backing+`}],
		"causes": [{"id": "yard-anode-loose", "part": "shaft", "title": "Shaft anode loose", "text": "It slides along the shaft.", "prior": 30, "confirm": "yard-anode-knocks", "remedies": ["yard-refit-anode"], `+backing+`}],
		"signs": [{"id": "yard-1", "cause": "yard-anode-loose", "evidence": "yard-anode-knocks", "yes": 0.9, `+backing+`},
		          {"id": "yard-2", "cause": "yard-anode-loose", "evidence": "gone-in-neutral", "yes": 0.95, `+backing+`}],
		"remedies": [{"id": "yard-refit-anode", "title": "Refit the anode", "text": "Clean and clamp.", "kind": "repair", "cures": ["yard-anode-loose"], "steps": ["yard-clamp-anode"], `+backing+`}],
		"steps": [{"id": "yard-clamp-anode", "title": "Clamp the anode", "text": "Bare metal, both screws.", "hours": 0.5, "place": "ashore", "hazards": ["fault-boat-on-stands"], `+backing+`}]}`)
	out := found(t, marinecalc.Options{Rules: book}, yes("yard-anode-knocks", "gone-in-neutral")...)
	if out.Cause != "yard-anode-loose" || out.CureOrder[0].Remedies != "Refit the anode" {
		t.Errorf("first is %s, cured by %q", out.Cause, out.CureOrder[0].Remedies)
	}
	if !slices.ContainsFunc(diagnosis.Questions(book), func(q diagnosis.Question) bool { return q.ID == "yard-anode-knocks" }) {
		t.Error("the yard's question is not asked")
	}
}

// How a thing was looked at belongs to the answer: surer ways weigh more,
// hearsay shows nothing to be there, a way that is blind is not counted, and
// one that is none of the question's is refused.
func TestTheWayOfLookingWeighs(t *testing.T) {
	by := func(evidence, answer, way string) diagnosis.Symptom {
		return diagnosis.Symptom{Evidence: evidence, Answer: answer, By: way}
	}
	with := func(way string) diagnosis.Result {
		return found(t, marinecalc.Options{}, append(yes("gearbox-whine", "gone-in-neutral"), by("fluid-metal", "yes", way))...)
	}
	last := 0.0
	for _, way := range []string{"hearsay", "dipstick", "jar", "magnet", "patch", "laboratory"} {
		out := with(way)
		if p := float64(out.Probability); out.Cause != "gearbox-bearing" || p <= last {
			t.Errorf("%s: %s %v after %v", way, out.Cause, p, last)
		} else {
			last = p
		}
	}
	if out := with("magnet"); !slices.ContainsFunc(out.Weights[:], func(w diagnosis.Weighed) bool { return w.By == "magnet through the sample" }) {
		t.Errorf("the sheet does not tell how it was looked at: %+v", out.Weights[:3])
	}
	// A dipstick without metal says nothing; a jar without metal does.
	plain := found(t, marinecalc.Options{}, yes("gearbox-whine", "gearbox-hot")...)
	dip := found(t, marinecalc.Options{}, append(yes("gearbox-whine", "gearbox-hot"), by("fluid-metal", "no", "dipstick"))...)
	jar := found(t, marinecalc.Options{}, append(yes("gearbox-whine", "gearbox-hot"), by("fluid-metal", "no", "jar"))...)
	bearing := func(r diagnosis.Result) float64 {
		for _, c := range r.Ranking {
			if c.Cause == "gearbox-bearing" {
				return float64(c.Probability)
			}
		}
		return 0
	}
	if bearing(dip) != bearing(plain) || !strings.Contains(dip.SaysNothing, "dipstick") || dip.Answered != 2 {
		t.Errorf("a clean dipstick: %v, %v without; %q", bearing(dip), bearing(plain), dip.SaysNothing)
	}
	if bearing(jar) >= bearing(plain) || jar.SaysNothing != "" {
		t.Errorf("a clean jar: %v, %v without; %q", bearing(jar), bearing(plain), jar.SaysNothing)
	}
	// Told by somebody else, broken springs are suspected and to be looked at.
	told := found(t, marinecalc.Options{}, append(yes("clatter-at-idle"), by("damper-seen", "yes", "hearsay"))...)
	if told.Known != "suspected" || told.Cause != "damper-worn" || told.Found != "" || told.NextChecks[0].Question != titleOf(t, "damper-seen") || !strings.Contains(told.ConfirmBy, "look yourself") {
		t.Errorf("hearsay: %s %s, found %q, next %q, %q", told.Known, told.Cause, told.Found, told.NextChecks[0].Question, told.ConfirmBy)
	}
	seen := found(t, marinecalc.Options{}, append(yes("clatter-at-idle"), by("damper-seen", "yes", "eye"))...)
	if seen.Known != "found" {
		t.Errorf("seen: %s", seen.Known)
	}
	// Two ways that agree are surer than either; the same way twice is not.
	once, again := found(t, marinecalc.Options{}, by("damper-seen", "yes", "eye")), found(t, marinecalc.Options{}, by("damper-seen", "yes", "eye"), by("damper-seen", "yes", "eye"))
	if !same(once, again) || !strings.Contains(once.HowSure, "look a second time") {
		t.Errorf("looked at once: %q, the same way twice: %q", once.HowSure, again.HowSure)
	}
	both := found(t, marinecalc.Options{}, append(yes("clatter-at-idle"), by("damper-seen", "yes", "hearsay"), by("damper-seen", "yes", "eye"), by("damper-seen", "yes", "feel"))...)
	if both.Known != "found" || !strings.Contains(both.HowSure, "agree") || both.Weights[0].By != "told by somebody else; by eye, on purpose; by hand or ear, on purpose" {
		t.Errorf("three ways: %s, %q, %+v", both.Known, both.HowSure, both.Weights[0])
	}
	for _, wrong := range []string{`"by": "dipstick"`, `"by": "patch"`} {
		_, err := marinecalc.Run(diagnosis.FaultFinding, []byte(`{"answers": [{"evidence": "damper-seen", "answer": "yes", `+wrong+`}]}`), marinecalc.Options{})
		if list := problem.Of(err); len(list) == 0 || list[0].Where != "/answers/0/by" {
			t.Errorf("%s: %v", wrong, err)
		}
	}
	_, err := marinecalc.Run(diagnosis.FaultFinding, []byte(`{"answers": [{"evidence": "damper-seen", "answer": "yes", "by": "telescope"}]}`), marinecalc.Options{})
	if list := problem.Of(err); len(list) == 0 || list[0].Where != "/answers/0/by" {
		t.Errorf("an unknown way: %v", err)
	}
	for _, q := range diagnosis.Questions(rules.Standard()) {
		if len(q.Ways) < 2 {
			t.Errorf("%s is looked at in %v", q.ID, q.Ways)
		}
	}
	// In the boat file as well.
	b := testboat.Read(t, `{"name": "Test", "symptoms": [{"evidence": "fluid-metal", "answer": "yes", "by": "patch"}]}`)
	s := testboat.Run(t, diagnosis.FaultFinding, `{}`, marinecalc.Options{Boat: b, NoRanges: true})
	if c := s.Cell("weights", 0, "by"); c == nil || c.Text != "filter patch under a lens" {
		t.Errorf("from the boat file: %+v", c)
	}
}

// What a laboratory finds, and the shapes of particles, lead to parts: a rise
// over the sample before for each hour on the fluid, and never a single figure
// of a wear metal.
func TestTheFluidLeadsToParts(t *testing.T) {
	run := func(readings string) *sheet.Sheet {
		b := testboat.Read(t, `{"name": "Test", "readings": [`+readings+`]}`)
		return testboat.Run(t, diagnosis.FaultFinding, `{"answers": []}`, marinecalc.Options{Boat: b, NoRanges: true})
	}
	answer := func(s *sheet.Sheet, question string) string {
		for i := 0; s.Cell("weights", i, "question") != nil; i++ {
			if s.Cell("weights", i, "question").Text == titleOf(t, question) {
				return s.Cell("weights", i, "answer").Text + " by " + s.Cell("weights", i, "by").Text
			}
		}
		return ""
	}
	for _, c := range []struct{ what, readings, question, want string }{
		{"twice the iron for each hour", `{"date": "2026-03-01", "wearIron": "20 ppm", "fluidHours": "100 h"}, {"date": "2026-06-01", "wearIron": "30 ppm", "fluidHours": "50 h"}`, "lab-iron", "yes by laboratory"},
		{"more iron in more hours", `{"date": "2026-03-01", "wearIron": "20 ppm", "fluidHours": "50 h"}, {"date": "2026-06-01", "wearIron": "40 ppm", "fluidHours": "100 h"}`, "lab-iron", "no by laboratory"},
		{"hours unknown", `{"date": "2026-03-01", "wearIron": "20 ppm"}, {"date": "2026-06-01", "wearIron": "41 ppm"}`, "lab-iron", "yes by laboratory"},
		{"somewhat more", `{"date": "2026-03-01", "wearIron": "20 ppm"}, {"date": "2026-06-01", "wearIron": "32 ppm"}`, "lab-iron", ""},
		{"a single sample", `{"date": "2026-06-01", "wearIron": "400 ppm"}`, "lab-iron", ""},
		{"next to nothing twice", `{"date": "2026-03-01", "wearIron": "1 ppm"}, {"date": "2026-06-01", "wearIron": "3 ppm"}`, "lab-iron", ""},
		{"tin beside copper", `{"date": "2026-03-01", "wearTin": "2 ppm"}, {"date": "2026-06-01", "wearTin": "9 ppm"}`, "lab-copper", "yes by laboratory"},
		{"water", `{"date": "2026-06-01", "waterInFluid": "0.3 %"}`, "lab-water", "yes by laboratory"},
		{"hardly any water", `{"date": "2026-06-01", "waterInFluid": "200 ppm"}`, "lab-water", "no by laboratory"},
		{"between", `{"date": "2026-06-01", "waterInFluid": "700 ppm"}`, "lab-water", ""},
		{"thinner", `{"date": "2026-03-01", "fluidViscosity40": "36 mm²/s"}, {"date": "2026-06-01", "fluidViscosity40": "28 mm²/s"}`, "lab-viscosity", "yes by laboratory"},
		{"as new", `{"date": "2026-03-01", "fluidViscosity40": "36 mm²/s"}, {"date": "2026-06-01", "fluidViscosity40": "35 mm²/s"}`, "lab-viscosity", "no by laboratory"},
		{"chunks", `{"date": "2026-06-01", "particlesChunks": "many"}`, "particles-chunks", "yes by filter patch under a lens"},
		{"no chunks", `{"date": "2026-06-01", "particlesChunks": "none"}`, "particles-chunks", "no by filter patch under a lens"},
	} {
		if got := answer(run(c.readings), c.question); got != c.want {
			t.Errorf("%s: %q, not %q", c.what, got, c.want)
		}
	}
	for part, readings := range map[string]string{
		"gearbox-bearing":     `{"date": "2026-03-01", "wearIron": "20 ppm", "wearChromium": "1 ppm"}, {"date": "2026-06-01", "wearIron": "90 ppm", "wearChromium": "6 ppm", "particlesChunks": "many", "particlesSpheres": "some"}`,
		"gearbox-clutch-slip": `{"date": "2026-03-01", "wearCopper": "8 ppm"}, {"date": "2026-06-01", "wearCopper": "40 ppm", "particlesFibres": "many", "particlesChunks": "none"}`,
		"cooler-leaks":        `{"date": "2026-03-01", "wearSodium": "4 ppm", "wearCopper": "8 ppm"}, {"date": "2026-06-01", "wearSodium": "60 ppm", "waterInFluid": "0.5 %", "wearCopper": "30 ppm"}`,
		"gearbox-fluid-dirty": `{"date": "2026-03-01", "wearSilicon": "6 ppm", "wearIron": "10 ppm"}, {"date": "2026-06-01", "wearSilicon": "60 ppm", "wearIron": "30 ppm", "particlesCutting": "many"}`,
	} {
		s := run(readings)
		var first []string
		for i := range 2 {
			first = append(first, s.Cell("ranking", i, "cause").Text)
		}
		if !slices.Contains(first, part) {
			t.Errorf("%s: first are %v", part, first)
		}
	}
}
