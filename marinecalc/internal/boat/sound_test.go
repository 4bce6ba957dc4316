package boat_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/testboat"
)

func sound(t *testing.T, text string) (*boat.Boat, error) {
	t.Helper()
	value, problems := contract.Decode([]byte(text))
	if len(problems) > 0 {
		t.Fatal(problems.Err())
	}
	return boat.FromSound(value)
}

// What cannot be used is left out alone, told by its place, and the rest is
// read as it is; a row that lacks what it must have goes whole.
func TestFromSoundLeavesOutWhatIsWrong(t *testing.T) {
	b, err := sound(t, `{"name":"Plover","engine":{"power":"lots","speed":"2800 rpm"},"note":"`+strings.Repeat("x", 3000)+`",
		"readings":[{"date":"2026-04-01","engineHours":"100 h"},{"engineHours":"110 h"},{"date":"2026-06-01","engineHours":"wide"},{"date":"2026-07-01","engineHours":"130 h"}]}`)
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	for _, w := range b.Warnings() {
		said[w.Where] = w.What
	}
	for _, where := range []string{"/engine/power", "/note", "/readings/1/date", "/readings/2/engineHours"} {
		if !strings.HasPrefix(said[where], "left out until it is mended: ") {
			t.Errorf("%s: it says %q", where, said[where])
		}
	}
	if len(said) != 4 {
		t.Errorf("left out %q", said)
	}
	if b.Name() != "Plover" {
		t.Errorf("the name is %q", b.Name())
	}
	var hours []any
	for _, day := range []string{"2026-04-01", "2026-06-01", "2026-07-01"} {
		v, _, _, _ := b.AsOf(day).Find("/readings/latest/engineHours")
		hours = append(hours, v)
	}
	if !slices.Equal(hours, []any{"100 h", "100 h", "130 h"}) {
		t.Errorf("the hours on three days are %q", hours)
	}
}

// A sound file is the same by both ways.
func TestFromSoundOfASoundFile(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "boats", "kittiwake.json"))
	if err != nil {
		t.Fatal(err)
	}
	b, err := sound(t, string(text))
	if err != nil {
		t.Fatal(err)
	}
	whole, err := boat.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	if len(b.Warnings()) != len(whole.Warnings()) || len(b.Dates()) != len(whole.Dates()) {
		t.Error("a sound file is not read whole")
	}
}

// What is no boat file stays refused.
func TestFromSoundRefuses(t *testing.T) {
	for _, text := range []string{`[]`, `7`, `{}`, `{"engine":{"power":"30 kW"}}`, `{"name":"Plover","format":99}`, `{"name":7}`} {
		if b, err := sound(t, text); err == nil {
			t.Errorf("%s is read as %q", text, b.Name())
		}
	}
}
