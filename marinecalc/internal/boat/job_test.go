package boat_test

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/boat"
)

// What the file says of the job is read with its types; what is of another type than
// the schema has is not there.
func TestTheJobIsRead(t *testing.T) {
	b, err := boat.Read([]byte(`{"name": "Tern",
		"follow": {"reading": "dripRate", "limit": "30 drips/min", "limits": [{"reading": "wearIron", "limit": "80 ppm"}, {"reading": "dripRate", "limit": "20 drips/min"}]},
		"work": {"remedies": [{"remedy": "repack-gland"}], "parts": [{"part": "packing", "onBoard": true}, {"part": "engine-mount", "makerAsks": true}]},
		"seaTrial": {"date": "2026-05-02", "runs": [{"stage": "idle", "engineSpeed": "1500 rpm"}, {"stage": "cruise", "engineSpeed": "2500 rpm", "glandTemperature": "35 °C"}]}}`))
	if err != nil {
		t.Fatal(err)
	}
	want := []boat.Follow{{"wearIron", "80 ppm", "/follow/limits/0/limit"}, {"dripRate", "20 drips/min", "/follow/limits/1/limit"}, {"dripRate", "30 drips/min", "/follow/limit"}}
	if got := b.Follows(); !slices.Equal(got, want) {
		t.Errorf("followed are %v", got)
	}
	if got := b.HeldParts(); !slices.Equal(got, []boat.HeldPart{{Part: "packing", OnBoard: true}, {Part: "engine-mount", MakerAsks: true}}) {
		t.Errorf("parts in hand are %v", got)
	}
	if got, is := b.ChosenWork(); !is || !slices.Equal(got, []string{"repack-gland"}) {
		t.Errorf("chosen is %v, %v", got, is)
	}
	if on := b.TrialRead([]string{"boatSpeed", "glandTemperature"}); on != "2026-05-02" {
		t.Errorf("read on the trial of %q", on)
	}
	if on := b.TrialRead([]string{"boatSpeed"}); on != "" {
		t.Errorf("nothing was read on the trial of %q", on)
	}
	var none *boat.Boat
	if _, is := none.ChosenWork(); is || none.Follows() != nil || none.HeldParts() != nil || none.TrialRead([]string{"boatSpeed"}) != "" {
		t.Error("no boat has a job")
	}
	if empty, err := boat.Read([]byte(`{"name": "Tern", "work": {"remedies": []}}`)); err != nil {
		t.Error(err)
	} else if list, is := empty.ChosenWork(); !is || len(list) > 0 {
		t.Errorf("an empty list of work is %v, %v", list, is)
	}
}
