package export_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

func TestJobSheetIsOnePlainFile(t *testing.T) {
	b := testboat.Read(t, strings.Replace(testboat.TwoStates, "Two states", "Two <states> & more", 1))
	s := testboat.Check(t, b.AsOf("2026-03-01"), marinecalc.Options{})
	html := marinecalc.JobSheet(s)
	for _, want := range []string{"Two &lt;states&gt; &amp; more", "most urgent first", "Not judged yet", "DANGER", "@page", "<svg", "Gauge:"} {
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

// A plan on paper is steps to tick off under their days, with what can hurt in
// words; what is detail stays off the paper.
func TestJobSheetHasThePlanToTickOff(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "lies": "afloat", "work": {"remedies": [{"remedy": "adjust-gland"}]}, "readings": [{"date": "2026-05-04"}]}`)
	html := marinecalc.JobSheet(testboat.Check(t, b, marinecalc.Options{NoRanges: true}))
	for _, want := range []string{"<h4>2026-05-07</h4>", `<span class="box"></span><b>Make safe to work</b>`, "DANGER: Nobody may start the engine while hands are at the shaft", "Soft-wood plug"} {
		if !strings.Contains(html, want) {
			t.Errorf("%q is not on the job sheet", want)
		}
	}
	for _, not := range []string{"Day by day", "Row of", "DANGER 1"} {
		if strings.Contains(html, not) {
			t.Errorf("%q is on the job sheet", not)
		}
	}
}
