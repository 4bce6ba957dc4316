package rules

import "testing"

func TestOverlayLeavesTheStandardAlone(t *testing.T) {
	before := Standard().AllCautions().Len()
	next, faults := Standard().Overlay([]byte(`{"title": "Yard", "cautions": [{"id": "yard-crane", "calculations": ["bolt-preload"], "signal": "WARNING", "text": "Stand clear of the crane.", "source": {"document": "Yard rules"}, "basis": "maker"}]}`))
	if faults != nil {
		t.Fatal(faults)
	}
	if Standard().AllCautions().Len() != before || next.AllCautions().Len() != before+1 {
		t.Errorf("%d before, %d and %d after", before, Standard().AllCautions().Len(), next.AllCautions().Len())
	}
	if o := next.Overlays(); len(o) != 1 || o[0] != "Yard" {
		t.Errorf("overlays are named %v", o)
	}
}

// A row of the job that cannot be believed, or leads nowhere, does not load.
func TestUnsoundRowsOfTheJobAreRefused(t *testing.T) {
	const backing = `"source": {"document": "Yard"}, "basis": "common-practice"`
	for name, text := range map[string]string{
		"no source":       `{"causes": [{"id": "a", "title": "A", "prior": 1, "confirm": "gear-seen", "remedies": []}]}`,
		"no prior":        `{"causes": [{"id": "a", "title": "A", "confirm": "gear-seen", "remedies": [], ` + backing + `}]}`,
		"no such check":   `{"causes": [{"id": "a", "title": "A", "prior": 1, "confirm": "no-such", "remedies": [], ` + backing + `}]}`,
		"quite sure":      `{"signs": [{"id": "a", "cause": "shaft-bent", "evidence": "gear-seen", "yes": 1, ` + backing + `}]}`,
		"no such cause":   `{"signs": [{"id": "a", "cause": "no-such", "evidence": "gear-seen", "yes": 0.5, ` + backing + `}]}`,
		"no minutes":      `{"evidence": [{"id": "a", "title": "A?", "access": 1, "place": "either", "otherwise": 0.5, ` + backing + `}]}`,
		"no such place":   `{"evidence": [{"id": "a", "title": "A?", "minutes": 1, "access": 1, "place": "moon", "otherwise": 0.5, ` + backing + `}]}`,
		"no such caution": `{"evidence": [{"id": "a", "title": "A?", "minutes": 1, "access": 1, "place": "either", "hazards": ["no-such"], "otherwise": 0.5, ` + backing + `}]}`,
		"no such end":     `{"chains": [{"id": "a", "from": "shaft-bent", "to": "no-such", "because": "so", ` + backing + `}]}`,
		"silent hazards":  `{"steps": [{"id": "a", "title": "A", "hours": 1, "place": "either", ` + backing + `}]}`,
		"other table":     `{"table": "evidence", "rows": [{"id": "a", "name": "A?", ` + backing + `}]}`,
		"no such step":    `{"remedies": [{"id": "a", "title": "A", "kind": "repair", "cures": ["shaft-bent"], "steps": ["no-such"], ` + backing + `}]}`,
	} {
		if _, faults := Standard().Overlay([]byte(text)); faults == nil {
			t.Errorf("%s: the row was taken", name)
		}
	}
}
