package series

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// Against a general statistics library.
func TestStudentAgainstGonum(t *testing.T) {
	for freedom := 1; freedom <= 400; freedom += 1 + freedom/8 {
		for _, p := range []float64{0.6, 0.9, 0.95, 0.975, 0.995} {
			want := distuv.StudentsT{Sigma: 1, Nu: float64(freedom)}.Quantile(p)
			if got := Student(p, freedom); math.Abs(got-want) > 1e-7*want {
				t.Errorf("%d degrees, %g: %.10g, want %.10g", freedom, p, got, want)
			}
		}
	}
}
