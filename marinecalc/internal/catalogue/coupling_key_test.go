package catalogue_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// result is a sheet's result as a number in SI; NaN where it is not told.
func result(s *marinecalc.Sheet, key string) float64 {
	for _, r := range s.Results {
		if _, si, _ := r.Stands(); r.Name == key && si != nil {
			return *si
		}
	}
	return math.NaN()
}

// The two keys of a boat are two keys: the bore holds by the coupling's, the
// taper by the propeller's, and changing one changes nothing at the other end.
func TestEachEndHasItsOwnKey(t *testing.T) {
	const boat = `{"name": "Two keys", "engine": {"power": "21 kW", "speed": "2800 rpm"}, "gearbox": {"ratioAhead": "2.15"},
		"shaft": {"diameter": "25 mm", "alloy": "s31600-annealed", "key": {"width": "8 mm", "height": "7 mm", "length": "45 mm", "yieldStrength": "205 MPa"}},
		"propeller": {"hubMetal": "manganese-bronze", "taper": "iso-4566", "taperLength": "54 mm", "hubLength": "85 mm", "hubDiameter": "52 mm", "taperSurfaces": "bronze-dry", "nutThread": "M16x1.5", "nutTorque": "60 N·m"},
		"coupling": {"bore": {"holdMethod": "set-screws", "hubMetal": "mild-steel", "setScrewSize": "3/8", "setScrews": 2, "key": {"width": "8 mm", "height": "7 mm", "length": "%s", "yieldStrength": "250 MPa"}}}}`
	held := func(couplingKey string) (own, bore, propeller, taper float64) {
		run := func(id, key string) float64 {
			return result(testboat.RunOn(t, fmt.Sprintf(boat, couplingKey), id, "{}"), key)
		}
		return run("coupling-key", "torqueHeld"), run("coupling-bore", "keyTorque"), run("key-strength", "torqueHeld"), run("propeller-taper", "slipTorque")
	}
	own, bore, propeller, taper := held("30 mm")
	if !(own > 0) || math.Abs(own/bore-1) > 1e-9 {
		t.Errorf("the coupling's key holds %g on its own sheet and %g in the bore", own, bore)
	}
	if own == propeller {
		t.Errorf("both keys hold %g", own)
	}
	shorter, boreShorter, same, sameTaper := held("15 mm")
	if math.Abs(shorter/own-0.5) > 1e-9 || boreShorter != shorter {
		t.Errorf("half of the coupling's key holds %g of %g, and %g in the bore", shorter, own, boreShorter)
	}
	if same != propeller || sameTaper != taper {
		t.Errorf("a shorter key in the coupling moves the propeller's from %g to %g, its taper from %g to %g", propeller, same, taper, sameTaper)
	}
}
