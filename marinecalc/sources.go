package marinecalc

import (
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/vibration"
)

// suspects are the sources of vibration of the rule data that a line can
// have, and the order in which they are listed.
type suspects struct {
	list    []vibration.Source
	ranking vibration.Ranking
}

// findSource finds what makes a frequency. The sources are listed in the
// order of the estimates, whatever a trial draws.
func findSource(s *session, in vibration.Running) (vibration.Match, error) {
	k, ok := s.kept.(*suspects)
	if !ok {
		k = &suspects{list: sourcesOf(s.book, &in)}
		s.kept = k
	}
	return vibration.Find(in, k.list, &k.ranking)
}

// sourcesOf reads the sources that go with the words of the running.
func sourcesOf(book *rules.Book, in *vibration.Running) []vibration.Source {
	known := func(name string) (float64, string, bool) {
		switch name {
		case "strokes":
			return 0, in.Strokes, true
		case "bearingTurns":
			return 0, in.BearingTurns, true
		}
		return 0, "", false
	}
	var list []vibration.Source
	for _, row := range book.Table("vibration-sources").Rows.All() {
		if !row.Valid.Meets(known) {
			continue
		}
		text := func(column string) string { return row.Values.Of(column).Text }
		list = append(list, vibration.Source{Name: row.Name, Base: text("base"), Multiple: row.Values.Of("multiple").SI,
			InNeutral: text("inNeutral"), AtSpeed: text("atSpeed"), InAstern: text("inAstern"), Look: text("look")})
	}
	return list
}
