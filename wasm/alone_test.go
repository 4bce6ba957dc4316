package main

import "testing"

// alone skips under the race detector what uses one instance after another: it
// takes many times as long there, and has nothing to find. CI runs it without.
func alone(t *testing.T) {
	t.Helper()
	if underRace {
		t.Skip("nothing here runs side by side: it is run without the race detector")
	}
}
