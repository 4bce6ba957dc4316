package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// Growth and settling are judged on both sides, and the way that measures goes
// before the way that estimates.
func TestBoltReadingsAreJudgedOnBothSides(t *testing.T) {
	const bolt = `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "gripLength": "24 mm", `
	for _, c := range []struct {
		rest, limit string
		want        sheet.Word
	}{
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.403 ± 0.002 mm"}`, "bolt-grown", sheet.Within},
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.43 ± 0.002 mm"}`, "bolt-grown", sheet.Beyond},
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.396 ± 0.002 mm"}`, "bolt-shrunk", sheet.Within},
		{`"freeLengthNew": "46.400 ± 0.002 mm", "freeLength": "46.37 ± 0.002 mm"}`, "bolt-shrunk", sheet.Beyond},
		{`"clampedFaces": 1, "stretchMeasured": "70 µm"}`, "bolt-settled", sheet.Within},
		{`"clampedFaces": 1, "stretchMeasured": "20 µm"}`, "bolt-settled", sheet.Beyond},
		{`"clampedFaces": 1, "retorque": "not-yet", "stretchMeasured": "70 µm"}`, "bolt-settled-not-yet", sheet.Within},
		{`"clampedFaces": 1, "retorque": "not-yet", "stretchMeasured": "20 µm"}`, "bolt-settled-not-yet", sheet.Beyond},
	} {
		s := runInput(t, "bolt-preload", bolt+c.rest, "metric")
		if got := verdictsOf(s)[c.limit].Word; got != c.want && !(c.want == sheet.Within && got == sheet.NearLimit) {
			t.Errorf("%s of %s: %s, want %s", c.limit, c.rest, got, c.want)
		}
	}
	s := runInput(t, "bolt-preload", `{"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "gripLength": "24 mm", "clampedFaces": 1, "retorque": "done"}`, "metric")
	if _, judged := verdictsOf(s)["bolt-settled"]; judged {
		t.Error("what was taken up is judged as lost")
	}
}
