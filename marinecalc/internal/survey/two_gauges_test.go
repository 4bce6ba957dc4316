package survey_test

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Feeler and dial of one day that lie apart are told; those of the demonstration
// boat, which agree, are not.
func TestTwoGaugesOfOneDay(t *testing.T) {
	told := func(b *marinecalc.Boat) (n int) {
		for _, d := range testboat.Check(t, b, marinecalc.Options{}).Disagree {
			if strings.Contains(d.Conflict.Text, "by two gauges on one day") {
				n++
			}
		}
		return n
	}
	if n := told(testboat.Demo(t, "kittiwake")); n != 0 {
		t.Errorf("readings that agree: %d", n)
	}
	text, err := os.ReadFile(testboat.Root("testdata", "boats", "kittiwake.json"))
	if err != nil {
		t.Fatal(err)
	}
	dial := `"couplingDial": [`
	for _, r := range [][3]string{{"12", "0", "0"}, {"3", "0.30", "-0.50"}, {"6", "0.60", "-1.00"}, {"9", "0.30", "-0.50"}, {"12", "0", "0"}} {
		dial += fmt.Sprintf(`{"clock": "%s o'clock", "face": "%s mm", "rim": "%s mm"},`, r[0], r[1], r[2])
	}
	apart := regexp.MustCompile(`"couplingDial": \[[^\]]*\]`).ReplaceAllString(string(text), strings.TrimSuffix(dial, ",")+"]")
	if apart == string(text) {
		t.Fatal("the boat's dial reads otherwise now")
	}
	if n := told(testboat.Read(t, apart)); n != 2 {
		t.Errorf("readings that lie apart: %d, want gap and offset", n)
	}
	b := testboat.Read(t, apart)
	for _, id := range []string{"coupling-alignment", "mount-moves"} {
		one := testboat.Run(t, id, `{}`, marinecalc.Options{Boat: b})
		told := false
		for _, c := range one.Conflicts {
			told = told || strings.Contains(c.Text, "by two gauges on one day")
		}
		if !told {
			t.Errorf("%s does not tell it", id)
		}
		for _, v := range one.Verdicts {
			if v.On != "closureUse" && (v.Word.Plain() == "within" || v.Word == "near the limit") { // that of the feelers among themselves
				t.Errorf("%s: %s", id, v.Sentence)
			}
		}
		for _, n := range one.Next {
			if strings.Contains(n.Text, "good enough to bolt up") {
				t.Errorf("%s: %s", id, n.Text)
			}
		}
	}
}
