package calc_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sample"
)

// The memory of one run serves the next: a sheet keeps nothing of it, so that what
// runs after it changes no letter of it, and the same input gives the same sheet.
func TestARunLeavesNothingBehind(t *testing.T) {
	text := func(s *marinecalc.Sheet) string {
		out, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		return string(out)
	}
	const bolt = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "gripLength": "24 mm"}`
	first := testboat.Run(t, "bolt-preload", bolt, marinecalc.Options{})
	before := text(first)
	ran := 0
	for _, c := range marinecalc.Calculations() {
		input, err := sample.Typed(c.ID)
		if err != nil {
			t.Fatal(err)
		}
		raw, err := json.Marshal(input)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := marinecalc.Run(c.ID, raw, marinecalc.Options{Trials: 256}); err == nil {
			ran++
		}
	}
	if ran < 20 {
		t.Errorf("only %d other calculations ran", ran)
	}
	if text(first) != before {
		t.Error("runs of other calculations changed a sheet that was handed out")
	}
	if again := text(testboat.Run(t, "bolt-preload", bolt, marinecalc.Options{})); again != before {
		t.Errorf("the same input gives another sheet after other runs:\n%s\n%s", before, again)
	}
}

// What no origin gave is named, and is told apart from what is wrong.
func TestARunNamesWhatIsMissing(t *testing.T) {
	_, err := marinecalc.Run("bolt-preload", []byte(`{"thread": "M10x1.5"}`), marinecalc.Options{})
	if !errors.Is(err, marinecalc.ErrMissing) {
		t.Errorf("inputs that lack: %v", err)
	}
	_, err = marinecalc.Run("bolt-preload", []byte(`{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "gripLength": "24 kg"}`), marinecalc.Options{})
	if err == nil || errors.Is(err, marinecalc.ErrMissing) {
		t.Errorf("a grip in kg: %v", err)
	}
}
