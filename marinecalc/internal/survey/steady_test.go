package survey

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/trend/series"
)

// Of readings that only scatter few are told to be read again, and fewer are found:
// simulated steady series, read every thirty days.
func TestSteadyReadingsAreSeldomToBeReadAgain(t *testing.T) {
	const runs, most, fewest = 2500, 0.01, 0.0005
	draw := rand.New(rand.NewPCG(7, 11))
	for _, gauge := range []float64{0, 0.5, 1} { // accuracy, of the standard deviation of the scatter
		for _, n := range []int{4, 6, 8, 12} {
			again, found := 0, 0
			for range runs {
				in := series.Series{Limit: math.NaN(), Rising: true, Accuracy: gauge, Today: 30 * n}
				var x, y []float64
				for i := range n {
					p := series.Point{Day: 30 * i, Hours: math.NaN(), Value: 50 + draw.NormFloat64()}
					in.Points, x, y = append(in.Points, p), append(x, float64(p.Day)), append(y, p.Value)
				}
				f, err := series.Follow(in)
				if err != nil {
					t.Fatal(err)
				}
				before := series.Lay(x[:n-1], y[:n-1], gauge)
				switch bad := y[n-1] > before.At(x[n-1]); {
				case bad && f.Deviation >= farLeap:
					found++
				case bad && f.Deviation >= someLeap:
					again++
				}
			}
			share := float64(again) / runs
			t.Logf("gauge %g, %2d readings: read again %.2f %%, found %.2f %%", gauge, n, 100*share, 100*float64(found)/runs)
			if share > most {
				t.Errorf("gauge %g, %d readings: %.2f %% are told to be read again", gauge, n, 100*share)
			}
			if gauge == 0 && share < fewest {
				t.Errorf("%d readings: %.2f %%, so that the test tries nothing", n, 100*share)
			}
		}
	}
}
