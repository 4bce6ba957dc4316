package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// The drips are blamed for an empty battery only where they have a part in it.
func TestTheDripsAreBlamedForTheirPart(t *testing.T) {
	const off, slow, other = "what stays switched on", "slow the drips at rest", "other water than the gland's"
	for _, c := range []struct {
		what, rest       string
		wanted, unwanted []string
	}{
		{"a standing load", `, "dripRateAtRest": "2 drips/min", "standingPower": "1.2 W", "pumpFlow": "20 L/min"`, []string{off}, []string{slow, other}},
		{"a fast drip", `, "dripRateAtRest": "600 drips/min", "standingPower": "0 W", "pumpFlow": "2 L/min"`, []string{slow}, []string{off, other}},
		{"a leak elsewhere", `, "dripRateAtRest": "2 drips/min", "otherInflow": "60 L/day", "standingPower": "0 W", "pumpFlow": "2 L/min"`, []string{other}, []string{off, slow}},
		{"a fast drip and a load", `, "dripRateAtRest": "600 drips/min", "standingPower": "1.2 W", "pumpFlow": "2 L/min"`, []string{off, slow}, []string{other}},
	} {
		s := testboat.Run(t, "gland-drip", `{"dripRate": "8 drips/min", "timeUnderWay": "6 h", "switchVolume": "20 L", "cycleVolume": "12 L", "floodVolume": "300 L", "pumpPower": "48 W", "batteryEnergy": "600 W·h", "timeAway": "90 day"`+c.rest+`}`, marinecalc.Options{})
		if v := s.Verdict("battery-outlasts-absence"); v == nil || v.Word != "beyond" {
			t.Errorf("%s: the battery is %+v", c.what, v)
		}
		advises(t, c.what, s, c.wanted, c.unwanted)
	}
}

// No battery lasts for ever: what is not said of other loads is not none.
func TestABatteryFeedsMoreThanThePump(t *testing.T) {
	const boat = `{"dripRate":"10 drips/min","dripRateAtRest":"4 drips/min","switchVolume":"15 L","cycleVolume":"10 L","floodVolume":"200 L","pumpFlow":"30 L/min","pumpPower":"40 W","batteryEnergy":"600 W·h","timeAway":"60 days"`
	for standing, want := range map[string]string{``: "cannot tell", `,"standingPower":"0.05 W"`: "within", `,"standingPower":"1 W"`: "beyond"} {
		s := testboat.Run(t, "gland-drip", boat+standing+`}`, marinecalc.Options{})
		if got := wordOf(s, "battery-outlasts-absence"); got != want {
			t.Errorf("%s: %s, want %s", standing, got, want)
		}
	}
}
