package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// The codes of the typed function are put into the words and names of the rows:
// what a sound engine makes too is said to be so, ties are named together, and
// what is not listed has its words.
func TestSourcesOfVibrationInWords(t *testing.T) {
	for _, c := range []struct{ frequency, best, parting string }{
		{"45 Hz", "; or as likely: ", "A sound drivetrain has this frequency too"},
		{"400 Hz", "Something not listed here", "None of the parts listed makes this frequency."},
		{"15 Hz", "haft", "."},
	} {
		s := testboat.Run(t, "vibration-source", `{"engineSpeed": "1800 rpm", "cylinders": 3, "strokes": "four-stroke", "gear": "ahead", "gearRatioAhead": 2, "blades": 3, "frequency": "`+c.frequency+`"}`, marinecalc.Options{NoRanges: true})
		if got := s.Result("bestMatch").Text; !strings.Contains(got, c.best) || strings.Contains(got, "not-listed") {
			t.Errorf("%s: %s", c.frequency, got)
		}
		if got := s.Result("parting").Text; !strings.Contains(got, c.parting) || !strings.HasSuffix(got, ".") {
			t.Errorf("%s: %s", c.frequency, got)
		}
	}
}
