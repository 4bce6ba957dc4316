package rules

import (
	"strings"
	"testing"
)

func TestOverlayLeavesTheStandardAlone(t *testing.T) {
	before := Standard().AllCautions().Len()
	next, faults := Standard().Overlay([]byte(`{"title": "Yard", "cautions": [{"id": "yard-crane", "calculations": ["bolt-preload"], "signal": "WARNING", "text": "Stand clear of the crane.", "source": {"document": "Yard rules"}, "basis": "maker"}]}`))
	if faults != nil {
		t.Fatal(faults)
	}
	if Standard().AllCautions().Len() != before || next.AllCautions().Len() != before+1 {
		t.Errorf("%d before, %d and %d after", before, Standard().AllCautions().Len(), next.AllCautions().Len())
	}
	if o := next.Overlays(); len(o) != 1 || o[0].Title != "Yard" || o[0].Fingerprint == "" {
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
		"word and number": `{"signs": [{"id": "a", "cause": "shaft-bent", "evidence": "gear-seen", "weight": "fair", "yes": 0.5, ` + backing + `}]}`,
		"neither":         `{"signs": [{"id": "a", "cause": "shaft-bent", "evidence": "gear-seen", ` + backing + `}]}`,
		"no such word":    `{"signs": [{"id": "a", "cause": "shaft-bent", "evidence": "gear-seen", "weight": "heavy", ` + backing + `}]}`,
		"no such way":     `{"evidence": [{"id": "a", "title": "A?", "minutes": 1, "access": 1, "place": "either", "otherwise": 0.5, "ways": ["telescope"], ` + backing + `}]}`,
		"asks nothing":    `{"evidence": [{"id": "a", "title": "A?", "minutes": 1, "access": 1, "place": "either", "otherwise": 0.5, "readings": [{"reading": "wearIron", "answer": "yes"}], ` + backing + `}]}`,
		"no such cause":   `{"signs": [{"id": "a", "cause": "no-such", "evidence": "gear-seen", "yes": 0.5, ` + backing + `}]}`,
		"no minutes":      `{"evidence": [{"id": "a", "title": "A?", "access": 1, "place": "either", "otherwise": 0.5, ` + backing + `}]}`,
		"no such place":   `{"evidence": [{"id": "a", "title": "A?", "minutes": 1, "access": 1, "place": "moon", "otherwise": 0.5, ` + backing + `}]}`,
		"no such caution": `{"evidence": [{"id": "a", "title": "A?", "minutes": 1, "access": 1, "place": "either", "hazards": ["no-such"], "otherwise": 0.5, ` + backing + `}]}`,
		"no such end":     `{"chains": [{"id": "a", "from": "shaft-bent", "to": "no-such", "because": "so", ` + backing + `}]}`,
		"silent hazards":  `{"steps": [{"id": "a", "title": "A", "hours": 1, "place": "either", ` + backing + `}]}`,
		"other table":     `{"table": "evidence", "rows": [{"id": "a", "name": "A?", ` + backing + `}]}`,
		"care cures none": `{"table": "service-intervals", "rows": [{"id": "a", "name": "A", "values": {"part": "gland", "kind": "renew", "how": "All of it.", "within": "300 days", "cures": "no-such"}, ` + backing + `}]}`,
		"no such step":    `{"remedies": [{"id": "a", "title": "A", "kind": "repair", "cures": ["shaft-bent"], "steps": ["no-such"], ` + backing + `}]}`,
	} {
		if _, faults := Standard().Overlay([]byte(text)); faults == nil {
			t.Errorf("%s: the row was taken", name)
		}
	}
	if _, faults := Standard().Overlay([]byte(`{"table": "service-intervals", "rows": [{"id": "a", "name": "A", "values": {"part": "gland", "kind": "renew", "how": "All of it.", "within": "300 days", "cures": "gland-packing-worn"}, ` + backing + `}]}`)); faults != nil {
		t.Errorf("care that cures something is not taken: %v", faults)
	}
}

// A yard that counted writes a number in place of the word, and may give a
// word another figure.
func TestYardsWeighSignsByWordOrNumber(t *testing.T) {
	const backing = `"source": {"document": "Yard log, 61 boats"}, "basis": "measured"`
	book, err := Standard().Overlay([]byte(`{"signs": [{"id": "damper-worn/clatter-at-idle", "cause": "damper-worn", "evidence": "clatter-at-idle", "yes": 0.62, ` + backing + `}]}`))
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range book.Signs().All() {
		if s.ID == "damper-worn/clatter-at-idle" && (s.Weight != "" || book.SignYes(s, 0.06) != 0.62) {
			t.Errorf("%+v counts %v", s, book.SignYes(s, 0.06))
		}
	}
	book, err = Standard().Overlay([]byte(`{"table": "sign-weights", "rows": [{"id": "strong", "name": "Strong", "values": {"figure": 0.8}, ` + backing + `}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if got := book.SignYes(Sign{Weight: "strong"}, 0.5); got < 0.9-1e-12 || got > 0.9+1e-12 {
		t.Errorf("another figure for a word: %v, not 1 - 0.5*0.2", got)
	}
}

// What is wrong with a file is said where it is, and what would be right
// there.
func TestFaultsOfOverlaysFit(t *testing.T) {
	const source = `"source": {"document": "Yard"}, "basis": "maker"`
	for _, c := range []struct{ name, text, want string }{
		{"a comma too many", "{\n  \"title\": \"Yard\",\n  \"limits\": [,]\n}", "line 3: this rule file cannot be read at column 14: "},
		{"an end too early", `{"limits": [`, "line 1: this rule file cannot be read at column 12: "},
		{"a text for a number", `{"limits": [{"id": "a", "near": "x"}]}`, "/limits/0: near: a JSON string stands here; allowed: a number without quotes"},
		{"a number for a document", `{"advice": [{"id": "a", "source": {"document": 3}}]}`, "/advice/0: "},
		{"a number for a basis", `{"advice": [{"id": "a", "basis": 3}]}`, "/advice/0: basis: a JSON number"},
		{"a number for a text", `{"cautions": [{"id": "a", "text": 3}]}`, "/cautions/0: text: a JSON number stands here; allowed: a text in quotes"},
		{"rows without brackets", `{"advice": {}}`, "/advice: it is not a list of rows"},
		{"not an object", `[]`, "is not an object"},
		{"a title that is none", `{"title": 3}`, "title: a JSON number stands here; allowed: a text"},
		{"a wrong unit", `{"limits": [{"id": "a", "max": "5 furlongs"}]}`, "/limits/0: "},
		{"a probability", `{"signs": [{"id": "a", "yes": 1.5, ` + source + `}]}`, "is not over 0 and under 1; allowed: over 0 and under 1"},
		{"a word", `{"signs": [{"id": "a", "weight": "heavy", ` + source + `}]}`, `allowed: "weight": "certain", "strong", "fair", "weak", "against", "rules-out"`},
		{"a word and a number", `{"signs": [{"id": "a", "weight": "fair", "yes": 0.5, ` + source + `}]}`, `has both a weight and a probability; allowed: "weight" or "yes"`},
		{"a basis", `{"advice": [{"id": "a", "source": {"document": "Yard"}, "basis": "boss"}]}`, `"boss" is not known; allowed: maker, law, small-craft-standard`},
		{"a signal", `{"cautions": [{"id": "a", "signal": "ALERT", ` + source + `}]}`, `"ALERT" is not known; allowed: DANGER, WARNING`},
		{"a value", `{"table": "bolt-grades", "rows": [{"id": "a", "values": {"proofStrength": "5 kg"}, ` + source + `}]}`, "allowed: a stress with its unit"},
		{"an id twice", `{"advice": [{"id": "a", ` + source + `}, {"id": "a", ` + source + `}]}`, "/advice/1: row a: an earlier row of this file has the same id"},
		{"no id", `{"advice": [{` + source + `}]}`, "it has no id; allowed: "},
	} {
		_, err := Standard().Overlay([]byte(c.text))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// A byte order mark is no fault.
func TestOverlayMayBeginWithAByteOrderMark(t *testing.T) {
	if _, err := Standard().Overlay([]byte("\ufeff{\"title\": \"Yard\"}")); err != nil {
		t.Error(err)
	}
}
