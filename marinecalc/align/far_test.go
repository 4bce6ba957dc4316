package align

import (
	"math"
	"testing"
)

// Chi-square of two degrees of freedom is exp(-χ²/2) in its upper tail, so that
// its 99 % point is -2·ln 0.01 = 9.21 (closed form).
func TestFarIsNinetyNineInAHundred(t *testing.T) {
	if want := -2 * math.Log(0.01); math.Abs(far-want) > 0.005 {
		t.Errorf("%g, want %g", far, want)
	}
}
