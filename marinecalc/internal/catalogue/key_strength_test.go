package catalogue_test

import (
	"math"
	"strings"
	"testing"
)

// The two key tables disagree for four sizes, and the sheet says so: 7/8, 1-3/4
// and 2-1/4 in, and 1-1/4 in, where the row of ASME B17.1 for 1/4 in keys ends.
func TestKeyTablesDisagree(t *testing.T) {
	for size, tells := range map[string]bool{"3/4": false, "7/8": true, "1": false, "1-1/8": false, "1-1/4": true, "1-3/8": false, "1-1/2": false, "1-3/4": true, "2": false, "2-1/4": true, "2-1/2": false, "2-3/4": false, "3": false} {
		height := ""
		if size == "3" {
			height = `"keyHeight":"1/2 in",` // whose keyway by J755 is not that of a square key
		}
		width := func(pick string) float64 {
			s := runInput(t, "key-strength", `{"shaftDiameter":"`+size+` in","shaftTorque":"100 N·m","keyLength":"50 mm","keyYieldStrength":"200 MPa",`+height+pick+`}`, "us")
			said := false
			for _, n := range s.Next {
				said = said || strings.Contains(n.Text, "the tables disagree")
			}
			if said != tells {
				t.Errorf("%s in: disagreement told: %v", size, said)
			}
			return *s.Input("keyWidth").SI
		}
		j755, b17 := width(`"shaftEndTable":"j755-`+size+`"`), width(`"keyTable":"b17.1-square"`)
		if (math.Abs(j755-b17) > 1e-9) != tells {
			t.Errorf("%s in: J755 %g, B17.1 %g", size, j755, b17)
		}
	}
}
