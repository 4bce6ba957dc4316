package marinecalc_test

import "testing"

// alone skips a long test under the race detector, which takes ten times as
// long and has nothing to find where nothing runs side by side. CI runs these
// without it.
func alone(t *testing.T) {
	t.Helper()
	if underRace {
		t.Skip("nothing here runs side by side: it is run without the race detector")
	}
}
