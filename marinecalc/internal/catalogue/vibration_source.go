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
		out, err := vibration.Source(in, list, &ranking)
		if err == nil {
			nameSources(&out, list)
		}
		return out, err
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

// notListed is what people read for the source that is none of those listed.
const notListed = "Something not listed here"

// nameSources puts the codes of a result into words, with the names and looks of
// the rows.
func nameSources(out *vibration.SourceResult, list []vibration.Suspect) {
	name := func(name string) string {
		if name == vibration.NotListed {
			return notListed
		}
		return name
	}
	row := func(i int) (s vibration.Suspect) {
		for _, s := range list {
			if s.Name == out.Sources[i].Name {
				return s
			}
		}
		return s
	}
	first, second := row(0), row(1)
	says := func(run, x, y string) string {
		return run + ": “" + first.Name + "” " + x + ", “" + second.Name + "” " + y + "."
	}
	switch out.Parting {
	case vibration.ByNeutral:
		out.Parting = says("At the same engine speed in neutral", first.InNeutral, second.InNeutral)
	case vibration.BySpeed:
		out.Parting = says("At another engine speed", first.AtSpeed, second.AtSpeed)
	case vibration.ByAstern:
		out.Parting = says("At the same engine speed astern", first.InAstern, second.InAstern)
	case vibration.ByNoRun:
		out.Parting = "No other speed and no other gear parts “" + first.Name + "” from “" + second.Name + "”. For the first: " + first.Look + "; for the second: " + second.Look + "."
	case vibration.BySureLook:
		out.Parting = "To make sure: " + first.Look + "."
	case vibration.NoneFits:
		out.Parting = "None of the parts listed makes this frequency. Check the reading and the engine speed, then read again at another speed: what stays where it is, is a resonance."
	}
	if out.BestMatch == "" {
		return
	}
	if first.Healthy {
		out.Parting += " A sound drivetrain has this frequency too: what counts is whether it has grown."
	}
	for i := 1; i < out.Alike(); i++ {
		out.BestMatch += "; or as likely: " + out.Sources[i].Name
	}
	out.BestMatch, out.RunnerUp = name(out.BestMatch), name(out.RunnerUp)
	for i := range out.Sources {
		out.Sources[i].Name = name(out.Sources[i].Name)
	}
}
