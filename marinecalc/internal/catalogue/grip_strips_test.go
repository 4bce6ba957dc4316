package catalogue_test

import (
	"fmt"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// Bolts in tapped holes clamp no more than strips their threads: the slip torque and
// the weakest joint of the line go by the lesser of the two, and fall to nothing where
// no turn bears.
func TestSlipTorqueGoesByTheThreadThatStrips(t *testing.T) {
	boat := func(length string) string {
		return fmt.Sprintf(`{"name":"Knot","units":"metric","engine":{"power":"20 kW","speed":"3000 rpm"},"gearbox":{"ratioAhead":"2.5","ratioAstern":"2.5"},"coupling":{"boltCount":4,"boltCircle":"80 mm","faces":"steel-dry","bolts":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","grip":"12 mm"},"tapped":{"metal":"aluminium-cast","engagementLength":"%s","condition":"sound","fastener":"bolt"}}}`, length)
	}
	held := map[string]float64{}
	for _, length := range []string{"1 mm", "4 mm", "25 mm"} {
		s := testboat.RunOn(t, boat(length), "coupling-grip", `{}`)
		held[length] = *s.Result("frictionCapacity").SI
		strips := *testboat.RunOn(t, boat(length), "thread-engagement", `{}`).Result("strippingLoad").SI
		used := *s.Result("clampUsed").SI
		if want := min(*s.Input("preload").SI, max(strips, 1e-6)); used > want*1.0001 || used < want*0.9999 {
			t.Errorf("%s: %g N used, want %g", length, used, want)
		}
		line := testboat.RunOn(t, boat(length), "line-joints", `{}`)
		if ahead := line.Result("leastAhead"); length != "25 mm" && (ahead == nil || *ahead.SI > 1) || length == "25 mm" && ahead != nil && ahead.SI != nil && *ahead.SI < 1 {
			t.Errorf("%s: the line holds %+v ahead", length, ahead)
		}
	}
	if !(held["1 mm"] < 0.1 && held["4 mm"] < held["25 mm"]/2) {
		t.Errorf("held: %v", held)
	}
}
