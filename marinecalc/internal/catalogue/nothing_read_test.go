package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// Nothing typed where something must have been read is refused with what to do:
// Hooke's law makes a bolt without stretch one without clamp.
func TestNothingReadIsExplained(t *testing.T) {
	for input, says := range map[string]string{`"stretchMeasured": "0 mm"`: "A bolt without stretch clamps nothing", `"turnMeasured": "0°"`: "clamps nothing: tighten it", `"gripLength": "0 mm"`: "leave it out where it was not measured"} {
		_, err := marinecalc.Run("bolt-preload", []byte(`{"thread": "M10", "grade": "iso-8.8", "finish": "oiled", `+input+`}`), marinecalc.Options{})
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", input, err)
		}
	}
}
