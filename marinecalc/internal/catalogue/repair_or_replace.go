package catalogue

import (
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/decision"
	"example.org/driveline/marinecalc/internal/decision/cost"
	"example.org/driveline/marinecalc/internal/diagnosis"
)

// repairOrReplace weighs a look first by what the fault finding knows of looks.
func repairOrReplace(s *calc.Session) calc.PerRun[cost.Input, cost.Result] {
	return decision.Weigh(s, diagnosis.Settler)
}
