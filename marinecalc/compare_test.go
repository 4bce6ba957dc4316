package marinecalc

import (
	"strings"
	"testing"
)

const twoStates = `{"name": "Two states",
	"coupling": {"kind": "rigid", "diameter": "100 mm"},
	"readings": [
		{"date": "2026-03-01", "couplingGaps": [{"clock": "0°", "gap": "0.60 mm"}, {"clock": "90°", "gap": "0.40 mm"}, {"clock": "180°", "gap": "0.20 mm"}, {"clock": "270°", "gap": "0.40 mm"}]},
		{"date": "2026-05-01", "couplingGaps": [{"clock": "0°", "gap": "0.31 mm"}, {"clock": "90°", "gap": "0.30 mm"}, {"clock": "180°", "gap": "0.29 mm"}, {"clock": "270°", "gap": "0.30 mm"}]},
		{"date": "2026-06-01", "couplingGaps": [{"clock": "0°", "gap": "0.32 mm"}, {"clock": "90°", "gap": "0.30 mm"}, {"clock": "180°", "gap": "0.29 mm"}, {"clock": "270°", "gap": "0.30 mm"}]}
	]}`

func TestCompareTellsMovementFromGauges(t *testing.T) {
	b, err := ReadBoat([]byte(twoStates))
	if err != nil {
		t.Fatal(err)
	}
	repaired, err := Compare(b, "2026-03-01", "2026-05-15", Options{})
	if err != nil {
		t.Fatal(err)
	}
	if m := findMoved(repaired.Moved, "gapVertical"); m == nil || m.Times < 5 || m.Change != "down" {
		t.Errorf("the repair moved the gap by %+v", m)
	}
	if len(repaired.Turned) == 0 || repaired.Turned[0].Before != "beyond" {
		t.Errorf("verdicts turned: %+v", repaired.Turned)
	}
	settled, err := Compare(b, "2026-05-01", "2026-06-01", Options{})
	if err != nil {
		t.Fatal(err)
	}
	if findMoved(settled.Moved, "gapVertical") != nil || findMoved(settled.Still, "gapVertical") == nil {
		t.Errorf("a hundredth of a millimetre by feeler counts as moved: %+v", settled.Moved)
	}
}

func findMoved(list []Moved, result string) *Moved {
	for i := range list {
		if list[i].Result == result {
			return &list[i]
		}
	}
	return nil
}

func TestCompareRefusesDaysItCannotUse(t *testing.T) {
	b, err := ReadBoat([]byte(twoStates))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ before, after, where string }{
		{"March", "2026-05-01", "/before"}, {"2025-01-01", "2026-05-01", "/before"}, {"2026-05-01", "2026-05-01", "/after"}, {"2026-06-01", "2026-05-01", "/after"},
	} {
		_, err := Compare(b, c.before, c.after, Options{})
		if err == nil || err.(Problems)[0].Where != c.where {
			t.Errorf("%s and %s: %v", c.before, c.after, err)
		}
	}
}

func TestJobSheetIsOnePlainFile(t *testing.T) {
	b, err := ReadBoat([]byte(strings.Replace(twoStates, "Two states", "Two <states> & more", 1)))
	if err != nil {
		t.Fatal(err)
	}
	s, err := Check(b.asOf("2026-03-01"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	html := JobSheet(s)
	for _, want := range []string{"Two &lt;states&gt; &amp; more", "most urgent first", "Not measured yet", "DANGER", "@page", "<svg", "Gauge:"} {
		if !strings.Contains(html, want) {
			t.Errorf("%q is not on the job sheet", want)
		}
	}
	for _, not := range []string{"<states>", "<script", "http://www.example", "src=", "href="} {
		if strings.Contains(html, not) {
			t.Errorf("%q is on the job sheet", not)
		}
	}
}
