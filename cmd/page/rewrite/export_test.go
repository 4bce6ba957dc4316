package rewrite

import (
	"slices"
	"testing"
)

// Improvements names what Jumps does beside making jumps direct.
func Improvements() (names []string) {
	for _, i := range improvements {
		names = append(names, i.name)
	}
	return names
}

// JumpsWithout is Jumps with these improvements left out.
func JumpsWithout(module []byte, left ...string) ([]byte, error) {
	all := improvements
	defer func() { improvements = all }()
	improvements = slices.DeleteFunc(slices.Clone(all), func(i improvement) bool { return slices.Contains(left, i.name) })
	return Jumps(module)
}

// withoutRace leaves a test to the run without the race detector, which .ci/run has too:
// the detector makes the runs of a module five times as long, and one goroutine races
// with none.
func withoutRace(t *testing.T) {
	if underRace {
		t.Skip("run without the race detector")
	}
}
