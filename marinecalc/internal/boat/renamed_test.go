package boat_test

import (
	"encoding/json"
	"testing"

	"example.org/driveline/marinecalc"
)

// A file written with older names gives the same sheets, with a warning for
// each, and stays as its owner wrote it.
func TestOlderNamesAreRead(t *testing.T) {
	old := `{"name":"Tern","mounts":[{"name":"fore","forward":"800 mm","starboard":"0 mm","sagNow":"4 mm"},{"name":"aft","forward":"200 mm","starboard":"0 mm"}],"symptoms":[{"evidence":"key-reckoned","answer":"no"}],"follow":{"reading":"mountSag"},"readings":[{"date":"2026-05-01","mountSag":"4 mm"}]}`
	now := `{"name":"Tern","mounts":[{"name":"fore","forward":"800 mm","starboard":"0 mm","deflectionNow":"4 mm"},{"name":"aft","forward":"200 mm","starboard":"0 mm"}],"symptoms":[{"evidence":"key-calculated","answer":"no"}],"follow":{"reading":"mountDeflection"},"readings":[{"date":"2026-05-01","mountDeflection":"4 mm"}]}`
	b, err := marinecalc.ReadBoat([]byte(old))
	if err != nil {
		t.Fatal(err)
	}
	if w := b.Warnings(); len(w) != 4 {
		t.Errorf("warnings: %v", w)
	}
	if text, err := json.Marshal(b); err != nil || string(text) != old {
		t.Errorf("it is kept as %s (%v)", text, err)
	}
	for _, place := range []string{"/mounts", "/symptoms", "/readings/latest/mountDeflection"} {
		got, _, _, _ := b.Find(place)
		newer, err := marinecalc.ReadBoat([]byte(now))
		if err != nil || len(newer.Warnings()) != 0 {
			t.Fatal(err, newer.Warnings())
		}
		want, _, _, _ := newer.Find(place)
		g, _ := json.Marshal(got)
		w, _ := json.Marshal(want)
		if string(g) != string(w) {
			t.Errorf("%s is read as %s, by the newer names as %s", place, g, w)
		}
	}
}
