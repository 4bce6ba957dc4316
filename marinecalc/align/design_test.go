package align

import (
	"math/rand/v2"
	"testing"
)

// What the places give once for all trials is to the last bit what each trial
// would work out anew, in one turn of the shaft and in several, and where a
// place is another of a sudden.
func TestADesignGivesTheSameFit(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	var d design
	made := 0
	for range 300 {
		var p points
		for _, turn := range round(1 + random.IntN(6)) {
			for _, clock := range round(4 + random.IntN(4)) {
				p = append(p, point{clock: clock + 0.1*random.Float64(), turn: turn})
			}
		}
		for range 5 {
			for i := range p {
				p[i].value = 1e-3 * random.Float64()
			}
			if random.IntN(8) == 0 {
				p[0].clock += 0.01
			}
			if !d.of(p) {
				d.take(p, nil)
				made++
			}
			var once, anew plane
			fits := d.fit(&once, p)
			if p.fit(&anew, nil) != fits || once != anew {
				t.Fatalf("by the design %+v, anew %+v", once, anew)
			}
		}
	}
	if made < 300 || made > 600 {
		t.Errorf("%d designs were made for 300 sets of places", made)
	}
}
