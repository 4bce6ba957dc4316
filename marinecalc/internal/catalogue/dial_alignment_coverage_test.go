package catalogue_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Independent simulation: a coupling whose lie is known is read by dials as good
// as they are said to be, with a bar that sags and, where one flange stands,
// with its run-out; the interval on the sheet holds the truth in about 95 of
// 100.
func TestDialIntervalsCover(t *testing.T) {
	long(t)
	const d, radius, dial = 0.102, 0.044, 0.01e-3
	peaked := func(r *rand.Rand, half float64) float64 { return half * (r.Float64() - r.Float64()) } // triangular
	for n, k := range []struct {
		name        string
		gap, offset float64
		places      int
		half        bool
		results     []string
	}{
		{"dials together, 12-3-6-9, gap 0.1, offset 0.1 mm", 0.1e-3, 0.1e-3, 4, false, []string{"gapVertical", "gapHorizontal", "gapDifference", "offsetVertical", "offset"}},
		{"the same and 12 again", 0.1e-3, 0.1e-3, 5, false, []string{"gapVertical", "offsetVertical", "offset"}},
		{"dials together, all true", 0, 0, 4, false, []string{"gapDifference", "offset"}},
		{"dials together, next to nothing", 0.01e-3, 0.01e-3, 4, false, []string{"gapDifference", "offset"}},
		{"one flange stands, gap 0.1, offset 0.1 mm", 0.1e-3, 0.1e-3, 4, true, []string{"gapVertical", "gapHorizontal", "offsetVertical", "offsetHorizontal"}},
	} {
		r := rand.New(rand.NewPCG(uint64(n), 41+coverageSeed))
		c := covered{t, k.name, map[string]int{}}
		for range coverageRuns {
			right, up := math.Sincos(2 * math.Pi * r.Float64())
			swept := "together"
			var faceUp, faceRight, rimUp, rimRight float64
			if k.half {
				swept = "dial-half"
				faceUp, faceRight, rimUp, rimRight = peaked(r, 0.1e-3), peaked(r, 0.1e-3), peaked(r, 0.05e-3), peaked(r, 0.05e-3)
			}
			sagRim, sagFace := -0.08e-3*r.Float64(), even(r, 0.02e-3)
			var rows []map[string]any
			for place := range k.places {
				clock := math.Mod(float64(place), 4) * math.Pi / 2
				sin, cos := math.Sincos(clock)
				gap := (k.gap*up+faceUp)/d*radius*cos + (k.gap*right+faceRight)/d*radius*sin
				face := -gap + sagFace*(1-cos)/2
				rim := (k.offset*up+rimUp)*cos + (k.offset*right+rimRight)*sin + sagRim*(1-cos)/2
				rows = append(rows, map[string]any{"clock": clock, "face": face + even(r, dial), "rim": rim + even(r, dial)})
			}
			text, err := json.Marshal(map[string]any{"couplingKind": "rigid", "couplingDiameter": d, "dialRadius": radius, "swept": swept, "pilot": "parted", "dialReadings": rows,
				"barSagRim": sagRim + even(r, dial), "barSagFace": sagFace + even(r, dial)})
			if err != nil {
				t.Fatal(err)
			}
			s := testboat.Run(t, "dial-alignment", string(text), marinecalc.Options{})
			for result, truth := range map[string]float64{"gapVertical": k.gap * up, "gapHorizontal": k.gap * right, "gapDifference": k.gap,
				"offset": k.offset, "offsetVertical": k.offset * up, "offsetHorizontal": k.offset * right} {
				c.holds(s, result, truth)
			}
		}
		c.tell(k.results...)
	}
}
