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
