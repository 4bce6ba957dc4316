package catalogue

import (
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/wholeline"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/vibration"
)

// vibrationSource finds what makes a frequency. The sources are listed in the
// order of the estimates, whatever a trial draws.
func vibrationSource(s *calc.Session) calc.PerRun[vibration.SourceInput, vibration.SourceResult] {
	var list []vibration.Suspect
	var ranking vibration.Ranking
	return calc.PerRun[vibration.SourceInput, vibration.SourceResult]{Compute: func(in vibration.SourceInput) (vibration.SourceResult, error) {
		if list == nil {
			list = sourcesOf(s.Book, &in)
		}
		return vibration.Source(in, list, &ranking)
	}, Draw: wholeline.VibrationSource}
}

// sourcesOf reads the sources that go with the words of the running.
func sourcesOf(book *rules.Book, in *vibration.SourceInput) []vibration.Suspect {
	known := func(name string) (float64, string, bool) {
		switch name {
		case "strokes":
			return 0, in.Strokes, true
		case "bearingTurns":
			return 0, in.BearingTurns, true
		}
		return 0, "", false
	}
	var list []vibration.Suspect
	for _, row := range book.Table("vibration-sources").Rows.All() {
		if !row.Valid.Meets(known) {
			continue
		}
		text := func(column string) string { return row.Values.Of(column).Text }
		list = append(list, vibration.Suspect{Name: row.Name, Base: text("base"), Multiple: row.Values.Of("multiple").SI,
			InNeutral: text("inNeutral"), AtSpeed: text("atSpeed"), InAstern: text("inAstern"), Look: text("look"), Healthy: text("healthy") == "yes"})
	}
	return list
}
