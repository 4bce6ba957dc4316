package trend_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// monthly asks for a trend of readings of the first of each month of 2026.
func monthly(t *testing.T, reading, unit, limit, extra string, values ...string) *marinecalc.Sheet {
	t.Helper()
	var rows []string
	for i, v := range values {
		rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-01","value":"%s %s"}`, 1+i, v, unit))
	}
	return testboat.Run(t, "reading-trend", fmt.Sprintf(`{"reading":%q,"limit":%q,"horizon":"90 days"%s,"readings":[%s]}`, reading, limit, extra, strings.Join(rows, ",")), marinecalc.Options{})
}

// What is no trend is not looked ahead by: no date, no level, no OK. Beside
// each stands the sound series next to it. Two readings by feeler gauge differ
// by 0.04 mm at most (twice the 0.02 mm of its row).
func TestWhatIsNoTrendIsNotLookedAheadBy(t *testing.T) {
	for _, c := range []struct{ name, extra, values, says string }{
		{"wear that goes back", "", "0.75 0.66 0.58 0.5 0.4", "Wear does not go back"},
		{"back within the gauge", "", "0.40 0.42 0.44 0.42 0.44", ""},
		{"the newest back", "", "0.30 0.45 0.60 0.74 0.30", "Wear does not go back"},
		{"the newest on the line", "", "0.20 0.25 0.30 0.35 0.40", ""},
		{"a jump", "", "0.5 0.5 0.5 0.5 0.75", "A jump, no trend"},
		{"a jump over it", "", "0.3 0.3 0.3 0.3 0.76", "A jump, no trend"},
		{"growing twofold", "", "0.05 0.10 0.20 0.40 0.75", ""},
		{"silent for longer than read", `,"today":"2026-09-10"`, "0.3 0.33 0.36 0.39 0.42", "Nothing was read since 2026-05-01"},
		{"silent for less", `,"today":"2026-08-20"`, "0.3 0.33 0.36 0.39 0.42", ""},
	} {
		s := monthly(t, "bearingClearance", "mm", "0.76 mm", c.extra, strings.Fields(c.values)...)
		says := s.Result("says").Text
		if c.says == "" {
			if s.Result("now") == nil || strings.Contains(says, "no trend") || strings.Contains(says, "No trend") {
				t.Errorf("%s: %s", c.name, says)
			}
			continue
		}
		if !strings.Contains(says, c.says) || s.Result("now") != nil || s.Result("nextReading") != nil || s.Result("pace") != nil || s.Result("sureDate") != nil {
			t.Errorf("%s: %s, %+v", c.name, says, s.Result("now"))
		}
		reached := strings.HasSuffix(c.values, "0.76")
		for _, id := range []string{"trend-not-reached", "trend-horizon"} {
			switch v := s.Verdict(id); {
			case reached && v.Word != "beyond", !reached && v.Word != "cannot tell":
				t.Errorf("%s: %+v", c.name, v)
			}
		}
	}
	s := monthly(t, "dripRate", "drips/min", "12 drips/min", "", "3", "6", "9", "11", "3") // drips may go back
	if v := s.Verdict("trend-not-reached"); v.Word != "cannot tell" || !strings.Contains(s.Result("says").Text, "contradicts") {
		t.Errorf("%+v: %s", v, s.Result("says").Text)
	}
}

// Drips that fall to nothing are past the other side, and no level is below
// nothing; drips that rise have no word of it. One drip a minute is the least
// (gland-drips-kind-unknown of gland-heat).
func TestAGlandThatRunsDryIsTold(t *testing.T) {
	dry := monthly(t, "dripRate", "drips/min", "20 drips/min", `,"today":"2026-06-01"`, "8", "6", "4", "2", "0")
	if v := dry.Verdict("trend-floor"); v == nil || v.Word != "beyond" || !strings.Contains(v.Sentence, "overheats") {
		t.Errorf("%+v", v)
	}
	if now := dry.Result("now"); now != nil && strings.HasPrefix(now.Text, "-") {
		t.Error(now.Text)
	}
	falling := monthly(t, "dripRate", "drips/min", "20 drips/min", "", "14", "12", "10", "8", "6")
	if v := falling.Verdict("trend-floor"); v == nil || v.Word == "within" || !strings.Contains(falling.Result("floorSays").Text, "falling to nothing") {
		t.Errorf("%+v", v)
	}
	if v := monthly(t, "dripRate", "drips/min", "20 drips/min", "", "14", "12", "10", "8", "2").Verdict("trend-floor"); v == nil || v.Word == "within" {
		t.Errorf("falling faster than before: %+v", v)
	}
	for _, values := range [][]string{{"4", "5", "6", "7", "8"}, {"6", "6", "5", "6", "6"},
		{"14", "12", "10", "8", "25"}, {"8", "7", "6", "5", "19"}} { // fallen, and up again with the newest
		if v := monthly(t, "dripRate", "drips/min", "20 drips/min", "", values...).Verdict("trend-floor"); v != nil {
			t.Errorf("%v: %+v", values, v)
		}
	}
}
