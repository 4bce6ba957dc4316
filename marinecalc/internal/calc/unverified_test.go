package calc_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// What rests on figures that no source confirms is never judged.
func TestUnsureFiguresAreNotJudged(t *testing.T) {
	overlay := testboat.Overlay(t, `{"limits": [{"id": "test-rise", "calculation": "gland-heat", "on": "temperatureRise", "title": "Computed rise", "max": "1 K", "source": {"document": "Test"}, "basis": "maker"}]}`)
	v := testboat.Run(t, "gland-heat", `{}`, marinecalc.Options{Boat: testboat.Demo(t, "kittiwake"), Rules: overlay}).Verdict("test-rise")
	if v == nil || v.Word != "cannot tell" || !strings.Contains(v.Sentence, "friction") {
		t.Errorf("got %+v", v)
	}
}
