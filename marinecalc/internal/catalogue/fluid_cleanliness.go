package catalogue

import (
	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/spread"
)

// fluidCleanliness gives a sample its code by the scale of the rule data.
func fluidCleanliness(s *calc.Session, in fluid.CleanlinessInput) (fluid.CleanlinessResult, error) {
	rows := s.Book.Table("cleanliness-codes").Rows
	scale := make([]fluid.Step, rows.Len())
	for i, row := range rows.All() {
		scale[i] = fluid.Step{Code: int(row.Values.Of("code").SI), Most: row.Values.Of("most").SI}
	}
	return fluid.Cleanliness(in, scale, spread.RateBelow)
}
