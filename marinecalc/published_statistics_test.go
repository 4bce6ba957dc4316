package marinecalc_test

import (
	"testing"

	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/internal/trend/series"
)

// runStatistics holds a distribution or a line against its table.
func (row *publishedRow) runStatistics(t *testing.T) {
	number := func(name string) float64 { v, _ := row.Input[name].(float64); return v }
	list := func(name string) (values []float64) {
		items, _ := row.Input[name].([]any)
		for _, v := range items {
			f, _ := v.(float64)
			values = append(values, f)
		}
		return values
	}
	got := map[string]float64{}
	switch row.Check {
	case "count":
		// What lies below the most is found from the draws of a count.
		most, below := number("most"), 0
		out, err := spread.Propagate([]spread.Factor{spread.Count(number("counted"), 1)}, 1, spread.Plan{Trials: 100000}, func(x, y []float64) bool {
			if y[0] = x[0]; x[0] <= most {
				below++
			}
			return true
		})
		if err != nil {
			t.Fatal(err)
		}
		got["below"] = float64(below) / float64(out.Trials)
	case "student":
		got["t"] = series.Student(number("probability"), int(number("freedom")))
	case "theil-sen":
		got["slope"], got["intercept"] = series.TheilSen(list("x"), list("y"))
	}
	for name, want := range row.Expect {
		row.holds(t, name, got[name], testboat.Amount(t, want, nil))
	}
}
