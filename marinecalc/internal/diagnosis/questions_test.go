package diagnosis_test

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A yard adds a cause, its question, its signs and its cure in one file.
func TestAYardAddsACause(t *testing.T) {
	const backing = `"source": {"document": "Yard log"}, "basis": "measured"`
	book := testboat.Overlay(t, `{"title": "Our yard",
		"evidence": [{"id": "yard-anode-knocks", "group": "sound", "kind": "symptom", "title": "Does the shaft anode knock on the strut?", "help": "Listen from under water.", "minutes": 2, "access": 1, "place": "either", "hazards": ["fault-diver"], "otherwise": 0.02, `+backing+`}],
		"causes": [{"id": "yard-anode-loose", "part": "shaft", "title": "Shaft anode loose", "text": "It slides along the shaft.", "prior": 3, "confirm": "yard-anode-knocks", "remedies": ["yard-refit-anode"], `+backing+`}],
		"signs": [{"id": "yard-1", "cause": "yard-anode-loose", "evidence": "yard-anode-knocks", "yes": 0.9, `+backing+`},
		          {"id": "yard-2", "cause": "yard-anode-loose", "evidence": "gone-in-neutral", "yes": 0.95, `+backing+`}],
		"remedies": [{"id": "yard-refit-anode", "title": "Refit the anode", "text": "Clean and clamp.", "kind": "repair", "cures": ["yard-anode-loose"], "steps": ["yard-clamp-anode"], `+backing+`}],
		"steps": [{"id": "yard-clamp-anode", "title": "Clamp the anode", "text": "Bare metal, both screws.", "hours": 0.5, "place": "ashore", "hazards": ["fault-boat-on-stands"], `+backing+`}]}`)
	out := found(t, marinecalc.Options{Rules: book}, yes("yard-anode-knocks", "gone-in-neutral")...)
	if out.Cause != "yard-anode-loose" || out.Remedies != "Refit the anode" {
		t.Errorf("first is %s, cured by %q", out.Cause, out.Remedies)
	}
	if !slices.ContainsFunc(diagnosis.Questions(book), func(q diagnosis.Question) bool { return q.ID == "yard-anode-knocks" }) {
		t.Error("the yard's question is not asked")
	}
}
