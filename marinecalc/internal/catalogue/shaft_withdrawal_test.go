package catalogue_test

import "testing"

// A propeller puller takes more room than a hand.
func TestAPullerTakesRoom(t *testing.T) {
	for task, want := range map[string]float64{"propeller-off": 0.1, "coupling-off": 0.02, "seal-renewal": 0.02, "shaft-out": 0.02} {
		s := runInput(t, "shaft-withdrawal", `{"task":"`+task+`","roomAft":"150 mm","socketDepth":"60 mm","sealLength":"90 mm","shaftInboard":"2 m","propellerHubLength":"85 mm"}`, "metric")
		if got := *s.Input("workingClearance").SI; got != want {
			t.Errorf("%s: %g", task, got)
		}
	}
}
