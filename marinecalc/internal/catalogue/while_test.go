package catalogue_test

import (
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A clamp that cannot be reached holds no coupling: where the tapped thread
// strips under it, or the nut is not full, the slip torque is OK only once that
// is put right, and is said so; with the thread long enough it is OK as it was.
func TestSlipTorqueHangsOnTheThread(t *testing.T) {
	for _, c := range []struct{ file, from, to, word, says string }{
		{"short-thread", ``, ``, "cannot tell", "OK only once this is put right: what strips the thread over the clamp"},
		{"short-thread", `"engagementLength": "5 mm"`, `"engagementLength": "18 mm"`, "within", "OK"},
		{"bolt-too-short", ``, ``, "cannot tell", "OK only once this is put right: threads beyond the nut"},
		{"bolt-too-short", `"length": "38 mm"`, `"length": "45 mm"`, "within", "OK"},
	} {
		text, err := os.ReadFile(testboat.Root("testdata", "cases", c.file+".json"))
		if err != nil {
			t.Fatal(err)
		}
		b := testboat.Read(t, strings.Replace(string(text), c.from, c.to, 1))
		v := testboat.Run(t, "coupling-grip", "{}", marinecalc.Options{Boat: b}).Verdict("grip-ahead")
		if string(v.Word) != c.word || !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s %s: %s", c.file, c.to, v.Sentence)
		}
	}
}
