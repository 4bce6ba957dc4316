package boat_test

import (
	"encoding/json"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
)

func typed(input, pointer string, value any) boat.Typed {
	return boat.Typed{Input: input, Pointer: pointer, Value: value}
}

func TestPlacesThatKeepAValue(t *testing.T) {
	for pointer, want := range map[string]bool{
		"/shaft/diameter": true, "/symptoms": true, "/readings/latest/dripRate": true,
		"": false, "/readings/latest/date": false, "/readings/first-of-run/bearingClearance": false, "/readings/hours-of-run/bearingClearance": false,
	} {
		if got := boat.Keeps(pointer); got != want {
			t.Errorf("%q: %t", pointer, got)
		}
	}
}

// What was typed goes to its place, readings under their day, and everything
// else stands as the owner wrote it.
func TestKeepWritesToThePlace(t *testing.T) {
	b := testboat.Read(t, `{"readings": [{"date": "2026-05-01", "coupling": {"kind": "flexible"}}], "shaft": {"freeLength": "0.3 m"}, "name": "Tern"}`)
	list := []boat.Typed{
		typed("shaftDiameter", "/shaft/diameter", "30 mm"),
		typed("dripRate", "/readings/latest/dripRate", "6 drips/min"),
		typed("couplingKind", "/coupling/kind", "rigid"),
		typed("answers", "/symptoms", []any{map[string]any{"evidence": "gland-hot", "answer": "yes"}}),
		typed("boxBore", "/gland/boxBore", "46 mm"),
	}
	for _, c := range []struct {
		day  string
		list []boat.Typed
		want string
	}{
		// A reading of May says what kind the coupling is since, so the new kind is dated too.
		{"2026-06-01", list, `{"readings":[{"date":"2026-05-01","coupling":{"kind":"flexible"}},` +
			`{"date":"2026-06-01","dripRate":"6 drips/min","coupling":{"kind":"rigid"}}],` +
			`"shaft":{"freeLength":"0.3 m","diameter":"30 mm"},"name":"Tern","symptoms":[{"answer":"yes","evidence":"gland-hot"}],"gland":{"boxBore":"46 mm"}}`},
		{"2026-05-01", list[1:3], `{"readings":[{"date":"2026-05-01","coupling":{"kind":"rigid"},"dripRate":"6 drips/min"}],"shaft":{"freeLength":"0.3 m"},"name":"Tern"}`},
		{"2026-06-01", nil, `{"readings":[{"date":"2026-05-01","coupling":{"kind":"flexible"}}],"shaft":{"freeLength":"0.3 m"},"name":"Tern"}`},
	} {
		kept, err := b.Keep(c.list, c.day)
		if err != nil {
			t.Fatal(problem.Of(err))
		}
		if got, err := json.Marshal(kept); err != nil || string(got) != c.want {
			t.Errorf("on %s (%v):\n%s\nwant\n%s", c.day, err, got, c.want)
		}
	}
	again, err := b.Keep(list[1:2], "2026-06-01")
	if err == nil {
		again, err = again.Keep([]boat.Typed{typed("dripRate", "/readings/latest/dripRate", "4 drips/min")}, "2026-06-01")
	}
	if err != nil {
		t.Fatal(problem.Of(err))
	}
	if v, _, date, _ := again.Find("/readings/latest/dripRate"); v != "4 drips/min" || date != "2026-06-01" || len(again.Dates()) != 2 {
		t.Errorf("typed again on the day: %v of %s, days %v", v, date, again.Dates())
	}
}

// What the boat's schema does not take is told at the inputs, and nothing is
// kept.
func TestKeepRefusesWhatTheBoatDoes(t *testing.T) {
	b := testboat.Read(t, `{"name": "Tern", "readings": [{"date": "2026-05-01"}]}`)
	kept, err := b.Keep([]boat.Typed{
		typed("boxBore", "/gland/boxBore", "46 mm"),
		typed("diameter", "/shaft/diameter", "9 km"),
		typed("gaps", "/readings/latest/couplingGaps", json.RawMessage(`[{"clock": "0°", "gap": "0.4 kg"}, {"clock": "90°", "gap": "0.4 mm"}, {"clock": "180°", "gap": "0.4 mm"}, {"clock": "270°", "gap": "0.4 mm"}]`)),
	}, "2026-06-01")
	var where []string
	for _, p := range problem.Of(err) {
		where = append(where, p.Where)
	}
	if want := []string{"/diameter", "/gaps/0/gap"}; !slices.Equal(where, want) || kept != nil {
		t.Errorf("problems at %q, want %q", where, want)
	}
	if _, _, _, has := b.Find("/gland/boxBore"); has {
		t.Error("something was kept all the same")
	}
}
