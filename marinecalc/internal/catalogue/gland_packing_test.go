package catalogue_test

import (
	"fmt"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/stock"
)

// What is bought, what the verdict says of it and what is advised agree: a size
// is judged beyond only where no size of the list is inside both limits.
func TestPackingBoughtIsPackingAdvised(t *testing.T) {
	usual := func(row, input string) float64 {
		return rules.Standard().Usual("gland-packing").Find(row, nil).Values.Of(input).SI
	}
	bound := map[string]float64{"packing-over": usual("packing-over", "mostOver"), "packing-under": -usual("packing-under", "mostUnder")}
	for _, l := range rules.Standard().Limits("gland-packing").All() {
		if l.ID == "packing-under" && l.Min.SI != bound[l.ID] {
			t.Errorf("sizes are chosen down to %g m, and judged down to %g m", bound[l.ID], l.Min.SI)
		}
	}
	const noSize = "None of these sizes fits"
	usable, not := 0, 0
	for room := 5.0; room < 13; room += 0.083 {
		s := testboat.Run(t, "gland-packing", fmt.Sprintf(`{"shaftDiameter": "32 mm", "boxBore": "%.6f mm", "boxDepth": "60 mm", "followerDepth": "8 mm", "sizes": "either", "cut": "bevel", "spareRings": 1}`, 32+2*room), marinecalc.Options{NoRanges: true})
		fits := false
		for rest := stock.List(s.Input("stockSections").Text); rest != ""; {
			var size quantity.Length
			size, _, rest = rest.Cut()
			over := float64(size) - room/1000
			fits = fits || over <= bound["packing-over"] && over >= bound["packing-under"]
		}
		beyond := s.Verdict("packing-over").Word == "beyond" || s.Verdict("packing-under").Word == "beyond"
		if beyond == fits || advised(s, noSize) == fits {
			t.Errorf("room of %.3f mm: %s bought, a size fits: %v; beyond: %v, advised: %+v", room, s.Result("soldAs").Text, fits, beyond, s.Next)
		}
		if fits {
			usable++
		} else {
			not++
		}
	}
	if usable == 0 || not == 0 {
		t.Errorf("%d rooms with a size, %d without", usable, not)
	}
}
