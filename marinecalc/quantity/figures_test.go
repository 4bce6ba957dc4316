package quantity

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The quick way to the figures of a number and the one by strconv, whose digits
// are those of the exact value of the float, write the same: over random
// numbers, powers of ten and their neighbours, and ties.
func TestFiguresAreThoseOfStrconv(t *testing.T) {
	var list []float64
	r := rand.New(rand.NewPCG(1, 1))
	for range 200000 {
		list = append(list, math.Pow(10, 25*r.Float64()-10))
	}
	for e := -10; e < 16; e++ {
		p := math.Pow10(e)
		list = append(list, p, math.Nextafter(p, 0), math.Nextafter(p, math.Inf(1)), 9.9994*p, 9.9995*p, 9.99951*p)
		for whole := 1000; whole < 1100; whole++ {
			list = append(list, (float64(whole)+0.5)*p, math.Nextafter((float64(whole)+0.5)*p, 0))
		}
	}
	quick := 0
	for _, x := range list {
		for n := 1; n <= 6; n++ {
			if _, _, ok := figures(x, n); ok {
				quick++
			}
			if x < dust {
				continue
			}
			if got, want := string(appendSignificant(nil, x, n)), string(appendTies(nil, x, n)); got != want {
				t.Fatalf("%v to %d: %s, not %s", x, n, got, want)
			}
		}
	}
	if quick < len(list) {
		t.Errorf("only %d of %d take the quick way", quick, 6*len(list))
	}
}
