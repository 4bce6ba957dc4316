package problem

import "testing"

// A slip of the fingers comes first, then the only name with the word in it,
// then what has the fewest other letters.
func TestClosest(t *testing.T) {
	names := []string{"gripLength", "airTemperature", "measuredGlandTemperature", "threadPitch", "gearRatioAhead", "gearRatioAstern", "thread"}
	for word, want := range map[string]string{
		"grip": "gripLength", "glandTemperature": "measuredGlandTemperature", "airTemperatur": "airTemperature", "pitch": "threadPitch",
		"threat": "thread", "gearRatioAsternn": "gearRatioAstern", "ratio": "", "gri": "", "zzz": "",
	} {
		if got, _ := Closest(word, names); got != want {
			t.Errorf("%s: %q, want %q", word, got, want)
		}
	}
}
