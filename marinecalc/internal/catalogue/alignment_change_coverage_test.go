package catalogue_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Independent simulation: a coupling with a crooked face is read twice by feeler, having
// moved by a known amount meanwhile; the intervals of the change hold it in about 95 of
// 100, and one that stands is called moved in about 2.5 of 100.
func TestChangeIntervalsCover(t *testing.T) {
	long(t)
	const d, blade, crooked = 0.1, 0.02e-3, 0.15e-3
	for n, k := range []struct {
		name  string
		moved float64
		alike bool // the flanges stood at their marks
	}{{"moved by 0.1 mm, at their marks", 0.1e-3, true}, {"stood, at their marks", 0, true}, {"moved by 0.1 mm, turned otherwise", 0.1e-3, false}} {
		r := rand.New(rand.NewPCG(uint64(n), 43+coverageSeed))
		c := covered{t, k.name, map[string]int{}}
		told := 0
		for range coverageRuns {
			right, up := math.Sincos(2 * math.Pi * r.Float64())
			runs, at := crooked, 2*math.Pi*r.Float64()
			turn := at
			if !k.alike { // a run-out as the sheet brackets it, each way
				runs = 0
			}
			read := func(share float64, face float64, tiltUp, tiltRight float64) (rows []map[string]any) {
				for place := range 4 {
					clock := float64(place) * math.Pi / 2
					sin, cos := math.Sincos(clock)
					gap := 0.5e-3 + (share*k.moved*up+tiltUp)/2*cos + (share*k.moved*right+tiltRight)/2*sin + runs/2*math.Cos(clock-face)
					rows = append(rows, map[string]any{"clock": clock, "gap": gap + even(r, blade)})
				}
				return rows
			}
			input := map[string]any{"couplingDiameter": d, "gapsBefore": read(0, at, 0, 0), "samePosition": "same"}
			if k.alike {
				input["gapsNow"] = read(1, turn, 0, 0)
			} else {
				input["samePosition"] = "other"
				input["gapsNow"] = read(1, turn, 0.1e-3*(r.Float64()-r.Float64()), 0.1e-3*(r.Float64()-r.Float64()))
			}
			text, err := json.Marshal(input)
			if err != nil {
				t.Fatal(err)
			}
			s := testboat.Run(t, "alignment-change", string(text), marinecalc.Options{})
			for result, truth := range map[string]float64{"gapChangeVertical": k.moved * up, "gapChangeHorizontal": k.moved * right, "gapChange": k.moved} {
				c.holds(s, result, truth)
			}
			if s.Result("seen").Text == "it moved" {
				told++
			}
		}
		t.Logf("%s: called moved in %d of %d", k.name, told, coverageRuns)
		if k.moved == 0 && told > coverageRuns*5/100 {
			t.Errorf("a coupling that stands is called moved in %d of %d", told, coverageRuns)
		}
		c.tell("gapChangeVertical", "gapChangeHorizontal", "gapChange")
	}
}
