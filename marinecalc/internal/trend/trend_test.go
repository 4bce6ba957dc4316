package trend_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// dripping is a boat whose drips rise by 0.1 a day from 2026-05-01 on.
func dripping(extra string, values ...string) string {
	var rows []string
	for i, v := range values {
		rows = append(rows, fmt.Sprintf(`{"date":"2026-05-%02d","dripRate":%q}`, 1+7*i, v))
	}
	return `{"name":"Tern",` + extra + `"readings":[` + strings.Join(rows, ",") + `]}`
}

// Derived: 6 drips a minute and 0.7 a week more come to 20 twenty weeks after
// the first reading, on 2026-09-18.
func TestTrendOfTheBoatsReadings(t *testing.T) {
	boat := dripping("", "6 drips/min", "6.7 drips/min", "7.4 drips/min", "8.1 drips/min", "8.8 drips/min")
	s := testboat.RunOn(t, boat, "reading-trend", `{"reading":"dripRate","limit":"20 drips/min"}`)
	if got := s.Result("limitDate").Text; got != "2026-09-18" && got != "2026-09-17" { // whole days are rounded down
		t.Error(got)
	}
	if days := *s.Result("timeLeft").SI / 86400; math.Abs(days-112) > 1e-6 {
		t.Errorf("%g days", days)
	}
	if w := s.Verdict("trend-horizon"); w == nil || w.Word != "cannot tell" { // a rise of 2.8 counted to one, looked at four times as far ahead
		t.Errorf("%+v %+v", w, s.Verdicts)
	}
	soon := testboat.RunOn(t, boat, "reading-trend", `{"reading":"dripRate","limit":"20 drips/min","horizon":"5 days"}`)
	if w := soon.Verdict("trend-horizon"); w == nil || w.Word != "within" {
		t.Errorf("%+v", w)
	}
	if sure := s.Result("sureDate").Text; !(sure > "2026-06-02" && sure < s.Result("earliestDate").Text) {
		t.Errorf("sure until %s", sure)
	}
	if len(s.Drawings) != 1 || testboat.WellFormed(s.Drawings[0].SVG) != "" {
		t.Errorf("%v", s.Drawings)
	}
	if later := testboat.RunOn(t, boat, "reading-trend", `{"reading":"dripRate","limit":"20 drips/min","today":"2026-06-08"}`); math.Abs(*later.Result("timeLeft").SI/86400-102) > 1e-6 {
		t.Error(*later.Result("timeLeft").SI / 86400)
	}
}

func TestTrendPastAndAway(t *testing.T) {
	boat := dripping("", "6 drips/min", "6.7 drips/min", "7.4 drips/min", "8.1 drips/min")
	past := testboat.RunOn(t, boat, "reading-trend", `{"reading":"dripRate","limit":"7 drips/min"}`)
	if v := past.Verdict("trend-not-reached"); v == nil || v.Word != "beyond" || !strings.Contains(past.Result("says").Text, "has reached") {
		t.Errorf("%+v: %s", v, past.Result("says").Text)
	}
	falling := dripping("", "8.5 drips/min", "7.5 drips/min", "6.5 drips/min", "5.5 drips/min", "4.5 drips/min")
	away := testboat.RunOn(t, falling, "reading-trend", `{"reading":"dripRate","limit":"20 drips/min"}`)
	if !strings.Contains(away.Result("says").Text, "does not move toward") || away.Result("limitDate").Text != "not in a hundred years" || away.Result("timeLeft") != nil {
		t.Errorf("%s %+v", away.Result("says").Text, away.Result("limitDate"))
	}
}

// A limit that the next reading may well have passed by the range that is
// printed is not said to be not reached, however few the readings are. Derived:
// of three readings the range is that of Student's t with one degree of
// freedom, 12.7 standard deviations either way.
func TestWordAndRangeOfATrendAgree(t *testing.T) {
	for _, c := range []struct {
		name, input string
		word        sheet.Word
	}{
		{"scattered iron, range past the limit", `{"reading":"wearIron","limit":"100 ppm","readings":[
		 {"date":"2025-03-01","value":"20 ppm"},{"date":"2025-04-30","value":"36 ppm"},{"date":"2025-06-29","value":"41 ppm"}]}`, sheet.CannotTell},
		{"line past the limit today", `{"reading":"dripRate","limit":"9 drips/min","today":"2025-04-25","readings":[
		 {"date":"2025-03-01","value":"6 drips/min"},{"date":"2025-03-15","value":"7 drips/min"},{"date":"2025-03-29","value":"8 drips/min"}]}`, sheet.CannotTell},
		{"far below", `{"reading":"dripRate","limit":"60 drips/min","readings":[
		 {"date":"2025-03-01","value":"6 drips/min"},{"date":"2025-03-15","value":"7 drips/min"},{"date":"2025-03-29","value":"8 drips/min"}]}`, sheet.Within},
		{"four grooves, range short of the limit", `{"reading":"bearingGrooveDepth","limit":"6 mm","limitSide":"least","readings":[
		 {"date":"2023-05-01","value":"12 mm"},{"date":"2023-11-01","value":"11 mm"},{"date":"2024-05-01","value":"10 mm"},{"date":"2024-11-01","value":"9 mm"}]}`, sheet.Within},
	} {
		s := testboat.RunOn(t, "", "reading-trend", c.input)
		if v := s.Verdict("trend-not-reached"); v == nil || v.Word != c.word {
			t.Errorf("%s: %+v beside %s", c.name, v, s.Result("nextReading").Text)
		}
	}
}

// A slip of the unit is said and kept: inches read as millimetres.
func TestTrendNamesASlip(t *testing.T) {
	s := testboat.RunOn(t, "", "reading-trend", `{"reading":"bearingClearance","limit":"1.5 mm","readings":[
	 {"date":"2024-05-01","value":"0.30 mm"},{"date":"2024-11-01","value":"0.34 mm"},{"date":"2025-05-01","value":"0.016 mm"},
	 {"date":"2025-11-01","value":"0.44 mm"},{"date":"2026-05-01","value":"0.50 mm"},{"date":"2026-05-01","value":"0.51 mm"}]}`)
	text := ""
	for i := range 12 {
		if c := s.Cell("flags", i, "what"); c != nil {
			text += s.Cell("flags", i, "reading").Text + ": " + c.Text + "\n"
		}
	}
	if !strings.Contains(text, "no. 3, 2025-05-01, 0.016 mm: it is about a 25.4th") || !strings.Contains(text, "no. 6, 2026-05-01, 0.51 mm: there are two readings") {
		t.Error(text)
	}
	if !strings.HasPrefix(s.Result("basis").Text, "6 readings") {
		t.Error(s.Result("basis").Text)
	}
}

// An event begins a new run, and the newest reading off the band is told.
func TestTrendAfterAnEvent(t *testing.T) {
	boat := dripping(`"follow":{"reading":"dripRate","limit":"20 drips/min"},"events":[{"date":"2026-05-07","what":"packed afresh","renews":"dripRate"}],`,
		"18 drips/min", "4 drips/min", "4.2 drips/min", "4.3 drips/min", "19 drips/min")
	s := testboat.RunOn(t, boat, "reading-trend", `{"readingGauge":"drip-count"}`)
	if !strings.HasPrefix(s.Result("basis").Text, "4 readings since 2026-05-08") {
		t.Error(s.Result("basis").Text)
	}
	if v := s.Verdict("trend-newest"); v == nil || v.Word != "beyond" {
		t.Errorf("%+v", v)
	}
}

// A gland that ran dry is no worse for dripping again, and one that dripped
// enough is (1 drip a minute is the least, gland-drips of gland-heat).
func TestDryGlandIsCuredByDrips(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "jobs", "dry-gland.json"))
	if err != nil {
		t.Fatal(err)
	}
	for before, want := range map[string]string{"0 drips/min": "where it belongs", "2 drips/min": "no cure"} {
		var job struct{ Boat json.RawMessage }
		if err := json.Unmarshal([]byte(strings.Replace(string(text), `"dripRate": "0 drips/min"`, `"dripRate": "`+before+`"`, 1)), &job); err != nil {
			t.Fatal(err)
		}
		if s := testboat.RunOn(t, string(job.Boat), "reading-trend", `{}`); !strings.Contains(s.Result("heldSays").Text, want) {
			t.Errorf("%s before: %q, want %q", before, s.Result("heldSays").Text, want)
		}
	}
}

func TestTrendRefuses(t *testing.T) {
	for _, c := range []struct{ name, boat, input, where string }{
		{"a limit of another quantity", dripping("", "6 drips/min", "6 drips/min", "6 drips/min"), `{"reading":"dripRate","limit":"20 mm"}`, "/limit"},
		{"two readings", dripping("", "6 drips/min", "6 drips/min"), `{"reading":"dripRate"}`, "/readings"},
		{"no boat", "", `{"reading":"dripRate"}`, "/readings"},
		{"an unknown reading", "", `{"reading":"drips"}`, "/reading"},
		{"the wrong gauge", dripping("", "6 drips/min", "6 drips/min", "6 drips/min"), `{"reading":"dripRate","readingGauge":"feeler-gauge"}`, "/readingGauge"},
		{"a value without unit", "", `{"reading":"dripRate","readings":[{"date":"2026-05-01","value":"6"},{"date":"2026-05-02","value":"6 drips/min"},{"date":"2026-05-03","value":"6 drips/min"}]}`, "/readings/0/value"},
	} {
		o := marinecalc.Options{}
		if c.boat != "" {
			o.Boat = testboat.Read(t, c.boat)
		}
		_, err := marinecalc.Run("reading-trend", []byte(c.input), o)
		if list := problem.Of(err); !slices.ContainsFunc(list, func(p problem.Problem) bool { return p.Where == c.where }) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// Every reading that can be followed is one number in the boat file.
func TestReadingsToFollowAreThere(t *testing.T) {
	b := testboat.Read(t, `{"name":"Tern"}`)
	for _, row := range rules.Standard().Table("trend-readings").Rows.All() {
		if _, ok := b.Describe(row.Pick); !ok {
			t.Errorf("the boat file has no reading %s", row.Pick)
		}
	}
}

// Three falling readings say little, but nothing of a limit far above them is
// beyond; a steady rise to it within the time is.
func TestTrendThatMovesAwayIsNotBeyond(t *testing.T) {
	for _, values := range [][]string{
		{"8 drips/min", "6.4 drips/min", "6 drips/min"},
		{"12 drips/min", "6 drips/min", "7 drips/min"}, // too few: not measured
		{"8 drips/min", "7.4 drips/min", "5 drips/min", "4.6 drips/min", "4.5 drips/min"},
	} {
		s := testboat.RunOn(t, dripping("", values...), "reading-trend", `{"reading":"dripRate","limit":"10 drips/min"}`)
		if v := s.Verdict("trend-horizon"); v == nil || v.Word == "beyond" || len(values) < 5 && v.Word != "not measured" {
			t.Errorf("%v: %+v", values, v)
		}
	}
	rising := dripping("", "6 drips/min", "6.8 drips/min", "7.3 drips/min", "8.1 drips/min", "8.8 drips/min")
	s := testboat.RunOn(t, rising, "reading-trend", `{"reading":"dripRate","limit":"10 drips/min"}`)
	if v := s.Verdict("trend-horizon"); v == nil || v.Word != "beyond" {
		t.Errorf("%+v", v)
	}
}

// Whoever reads inches as millimetres or drips whole keeps the floor of the
// gauge that goes with the reading, however alike the readings are.
func TestTrendHasAFloorOfItsGauge(t *testing.T) {
	boat := dripping("", "6 drips/min", "7 drips/min", "8 drips/min", "9 drips/min", "10 drips/min")
	s := testboat.RunOn(t, boat, "reading-trend", `{"reading":"dripRate","limit":"60 drips/min","horizon":"200 days"}`)
	if early, late := s.Result("earliestDate").Text, s.Result("latestDate").Text; !(early < "2027-02" && late > "2028-01") {
		t.Errorf("from %s to %s", early, late)
	}
	if in := s.Input("readingGauge"); in == nil || in.Word != "drip-count" {
		t.Errorf("%+v", in)
	}
	wide := testboat.RunOn(t, boat, "reading-trend", `{"reading":"dripRate","limit":"60 drips/min","readings":[
	 {"date":"2026-05-01","value":"6 ± 4 drips/min"},{"date":"2026-05-08","value":"7 drips/min"},{"date":"2026-05-15","value":"8 drips/min"},
	 {"date":"2026-05-22","value":"9 drips/min"},{"date":"2026-05-29","value":"10 drips/min"}]}`)
	if early := wide.Result("earliestDate").Text; early >= s.Result("earliestDate").Text {
		t.Errorf("read to 4 drips, at the earliest on %s", early)
	}
}

// A gland that is 20 K above the sea stays as it is from spring to summer;
// in the warmest sea it would read 44 °C.
func TestTemperatureIsFollowedAboveTheSea(t *testing.T) {
	with := func(sea bool, values [6][2]float64) string {
		var rows []string
		for i, v := range values {
			water := ""
			if sea {
				water = fmt.Sprintf(`,"waterTemperature":"%g °C"`, v[1])
			}
			rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-01","glandTemperature":"%g °C"%s}`, 4+i, v[0], water))
		}
		return `{"name":"Tern","readings":[` + strings.Join(rows, ",") + `]}`
	}
	season := [6][2]float64{{30, 10}, {33, 13}, {37, 17}, {41, 21}, {44, 24}, {43, 23}}
	const asked = `{"reading":"glandTemperature","limit":"60 °C","horizon":"60 days"}`
	s := testboat.RunOn(t, with(true, season), "reading-trend", asked)
	if now := s.Result("now").Text; now != "44 °C" || !strings.Contains(s.Result("basis").Text, "a sea of 24 °C") || s.Result("pace").Text != "-0.54 to 0.54 °C over 30 days" {
		t.Errorf("%s, %s, %s", now, s.Result("pace").Text, s.Result("basis").Text)
	}
	if v := s.Verdict("trend-horizon"); v == nil || v.Word != "within" {
		t.Errorf("%+v", v)
	}
	plain := testboat.RunOn(t, with(false, season), "reading-trend", asked)
	if v := plain.Verdict("trend-horizon"); v.Word == "within" || !strings.Contains(plain.Result("basis").Text, "as read") {
		t.Errorf("followed as read: %+v, %s", v, plain.Result("basis").Text)
	}
	rise := testboat.RunOn(t, with(true, season), "reading-trend", `{"reading":"glandTemperature","limit":"25 K"}`)
	if held := rise.Result("limitHeld").Text; !strings.HasPrefix(held, "49 °C") {
		t.Error(held)
	}
	// What is over the limit as read is over it, and what a warmer sea would
	// bring there is not called over it.
	season[5] = [2]float64{62, 15}
	if v := testboat.RunOn(t, with(true, season), "reading-trend", asked).Verdict("trend-not-reached"); v.Word != "beyond" {
		t.Errorf("%+v", v)
	}
	season[5] = [2]float64{52, 10}
	if v := testboat.RunOn(t, with(true, season), "reading-trend", asked).Verdict("trend-not-reached"); v.Word != "cannot tell" {
		t.Errorf("%+v", v)
	}
	o := marinecalc.Options{Boat: testboat.Read(t, with(false, season))}
	if _, err := marinecalc.Run("reading-trend", []byte(`{"reading":"glandTemperature","limit":"25 K"}`), o); err == nil {
		t.Error("a rise without a sea is held against")
	}
}

// The limit of one reading is not held against another.
func TestEachReadingHasItsOwnLimit(t *testing.T) {
	boat := `{"name":"Tern","follow":{"reading":"glandTemperature","limit":"60 °C","limits":[{"reading":"dripRate","limit":"12 drips/min"}]},"readings":[`
	for i := range 5 {
		boat += fmt.Sprintf(`{"date":"2026-0%d-01","dripRate":"6 drips/min","glandTemperature":"40 °C","fluidTemperature":"70 °C"},`, 1+i)
	}
	boat = strings.TrimSuffix(boat, ",") + `]}`
	for reading, want := range map[string]string{"glandTemperature": "60 °C, from the boat file", "dripRate": "12 drips/min, from the boat file", "fluidTemperature": ""} {
		s := testboat.RunOn(t, boat, "reading-trend", `{"reading":"`+reading+`"}`)
		held := ""
		if r := s.Result("limitHeld"); r != nil {
			held = r.Text
		}
		if held != want || (s.Verdict("trend-horizon") == nil) != (want == "") {
			t.Errorf("%s is held against %q, %v", reading, held, s.Verdict("trend-horizon"))
		}
	}
}

// Drips that double: it says that it speeds up, the sooner date first.
func TestTrendSaysThatItSpeedsUp(t *testing.T) {
	s := testboat.RunOn(t, "", "reading-trend", `{"reading":"dripRate","limit":"60 drips/min","horizon":"30 days","readings":[
	 {"date":"2025-04-01","value":"1 drips/min"},{"date":"2025-04-15","value":"2 drips/min"},{"date":"2025-04-29","value":"3 drips/min"},
	 {"date":"2025-05-13","value":"5 drips/min"},{"date":"2025-05-27","value":"9 drips/min"},{"date":"2025-06-10","value":"16 drips/min"}]}`)
	says := s.Result("says").Text
	if !strings.HasPrefix(says, "It speeds up: at the pace of late") || !(s.Result("limitDate").Text < "2025-08-01") {
		t.Error(says)
	}
	if v := s.Verdict("trend-horizon"); v == nil || v.Word == "within" {
		t.Errorf("%+v", v)
	}
}

// An odd reading among the others is told where the date stands, and nothing is
// told where there is none.
func TestAnOddReadingIsToldBesideTheDate(t *testing.T) {
	for third, odd := range map[string]bool{"3.5 mm": true, "0.36 mm": false} {
		s := testboat.Run(t, "reading-trend", `{"reading": "bearingClearance", "limit": "1 mm", "horizon": "30 days", "readings": [
			{"date": "2026-01-05", "value": "0.30 mm"}, {"date": "2026-03-06", "value": "0.33 mm"}, {"date": "2026-05-05", "value": "`+third+`"},
			{"date": "2026-07-04", "value": "0.39 mm"}, {"date": "2026-09-02", "value": "0.42 mm"}, {"date": "2026-11-01", "value": "0.45 mm"}]}`, marinecalc.Options{})
		if says := s.Result("says").Text; strings.Contains(says, "A reading named below is odd") != odd {
			t.Errorf("%s: %s", third, says)
		}
	}
}
