package contract

import (
	"strings"
	"testing"
)

func openBoat(t *testing.T) *Document {
	t.Helper()
	d, err := OpenDocument("boat")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func decoded(t *testing.T, text string) any {
	t.Helper()
	v, problems := Decode([]byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return v
}

// What a document holds beyond its contract is named, at its place, and is no
// problem; what it knows stays strict beside it.
func TestUnknownMembersAreNamedAndLetThrough(t *testing.T) {
	d := openBoat(t)
	v := decoded(t, `{"$schema": "boat.schema.json", "format": 1, "name": "Wren", "x-berth": {"a": [1]},
		"shaft": {"diametre": "25 mm", "key": {"witdh": "8 mm"}},
		"readings": [{"date": "2026-05-01"}, {"date": "2026-06-01", "drip rate": 3, "shaft": {"bor": 0}}]}`)
	if problems := d.Check(v); len(problems) > 0 {
		t.Errorf("it is refused: %v", problems)
	}
	want := []struct{ where, hint string }{
		{"/readings/1/drip rate", `"dripRate"`}, {"/readings/1/shaft/bor", `"bore"`},
		{"/shaft/diametre", `"diameter"`}, {"/shaft/key/witdh", `"width"`}, {"/x-berth", ""},
	}
	unknown := d.Unknown(v)
	if len(unknown) != len(want) {
		t.Fatalf("got %v", unknown)
	}
	for i, w := range want {
		if p := unknown[i]; p.Where != w.where || !strings.Contains(p.Hint, w.hint) || !strings.Contains(p.What, "kept") {
			t.Errorf("want %v, got %+v", w, p)
		}
	}
	wrong := decoded(t, `{"name": "Wren", "x": 1, "shaft": {"diameter": "25 kg", "y": 2}}`)
	if problems := d.Check(wrong); len(problems) != 1 || problems[0].Where != "/shaft/diameter" {
		t.Errorf("got %v", problems)
	}
}

// Of a later format only that is told: its members may mean something else.
func TestALaterFormatIsRefused(t *testing.T) {
	d := openBoat(t)
	problems := d.Check(decoded(t, `{"format": 2, "name": 5, "shaft": []}`))
	if len(problems) != 1 || problems[0].Where != "/format" ||
		!strings.Contains(problems[0].What, "format 2") || !strings.Contains(problems[0].What, "up to format 1") || problems[0].Hint == "" {
		t.Errorf("got %v", problems)
	}
	for _, wrong := range []string{"0", `"1"`, "1.5", "null"} {
		if len(d.Check(decoded(t, `{"name": "Wren", "format": `+wrong+`}`))) == 0 {
			t.Errorf("format %s is taken", wrong)
		}
	}
}
