package survey_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
)

func TestCompareTellsMovementFromGauges(t *testing.T) {
	b := testboat.Read(t, testboat.TwoStates)
	repaired, err := marinecalc.Compare(b, "2026-03-01", "2026-05-15", marinecalc.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if m := findMoved(repaired.Moved, "gapVertical"); m == nil || m.Times < 5 || m.Change != "down" {
		t.Errorf("the repair moved the gap by %+v", m)
	}
	if len(repaired.Turned) == 0 || repaired.Turned[0].Before != "beyond" {
		t.Errorf("verdicts turned: %+v", repaired.Turned)
	}
	kinds := map[survey.FoundKind]bool{} // the measured gap, and the fault that it is
	for _, f := range repaired.Gone {
		kinds[f.Kind] = true
	}
	if !kinds[survey.FoundMeasured] || !kinds[survey.FoundCause] || len(repaired.Came) > 0 {
		t.Errorf("the repair took away %+v and brought %+v", repaired.Gone, repaired.Came)
	}
	settled, err := marinecalc.Compare(b, "2026-05-01", "2026-06-01", marinecalc.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if findMoved(settled.Moved, "gapVertical") != nil || findMoved(settled.Still, "gapVertical") == nil {
		t.Errorf("a hundredth of a millimetre by feeler counts as moved: %+v", settled.Moved)
	}
}

func findMoved(list []survey.Moved, result string) *survey.Moved {
	for i := range list {
		if list[i].Result == result {
			return &list[i]
		}
	}
	return nil
}

func TestCompareRefusesDaysItCannotUse(t *testing.T) {
	b := testboat.Read(t, testboat.TwoStates)
	for _, c := range []struct{ before, after, where string }{
		{"March", "2026-05-01", "/before"}, {"2025-01-01", "2026-05-01", "/before"}, {"2026-05-01", "2026-05-01", "/after"}, {"2026-06-01", "2026-05-01", "/after"},
	} {
		_, err := marinecalc.Compare(b, c.before, c.after, marinecalc.Options{})
		if err == nil || problem.Of(err)[0].Where != c.where {
			t.Errorf("%s and %s: %v", c.before, c.after, err)
		}
	}
}

// Directions are counted by the shorter way round, and only where what they
// are the direction of is more than the gauges can explain; what the schema
// opts out is not there.
func TestCompareOfDirections(t *testing.T) {
	gaps := func(top, starboard, bottom, port string) string {
		return `"couplingGaps": [{"clock": "0°", "gap": "` + top + ` mm"}, {"clock": "90°", "gap": "` + starboard + ` mm"}, {"clock": "180°", "gap": "` + bottom + ` mm"}, {"clock": "270°", "gap": "` + port + ` mm"}]`
	}
	b, err := marinecalc.ReadBoat([]byte(`{"name": "Round", "coupling": {"kind": "rigid", "diameter": "100 mm"}, "readings": [
		{"date": "2026-03-01", ` + gaps("0.80", "0.45", "0.20", "0.55") + `},
		{"date": "2026-04-01", ` + gaps("0.80", "0.55", "0.20", "0.45") + `},
		{"date": "2026-05-01", ` + gaps("0.30", "0.30", "0.30", "0.30") + `}]}`))
	if err != nil {
		t.Fatal(err)
	}
	turned, err := marinecalc.Compare(b, "2026-03-01", "2026-04-01", marinecalc.Options{})
	if err != nil {
		t.Fatal(err)
	}
	both := append(turned.Moved, turned.Still...)
	if m := findMoved(both, "widestAt"); m == nil || m.Change != "round" || m.Times > 10 { // by the long way it would be eighty
		t.Errorf("from 351° to 9° it went %+v", m)
	}
	level, err := marinecalc.Compare(b, "2026-04-01", "2026-05-01", marinecalc.Options{})
	if err != nil {
		t.Fatal(err)
	}
	both = append(level.Moved, level.Still...)
	for _, not := range []string{"widestAt", "meanGap", "gapTopAfter"} {
		if m := findMoved(both, not); m != nil {
			t.Errorf("%s is compared: %s", not, m.Sentence)
		}
	}
	if findMoved(level.Moved, "gapVertical") == nil {
		t.Error("the gap has not moved")
	}
}
