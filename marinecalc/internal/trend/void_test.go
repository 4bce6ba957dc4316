package trend_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// worn is a boat whose bearing is read five times, the newest or an earlier time
// by wire too.
func worn(t *testing.T, wireOn int, wire, out string) *marinecalc.Boat {
	var rows []string
	for i := range 6 {
		by := ""
		if i == wireOn {
			by = `,"bearingWireIn":"` + wire + ` mm","bearingWireOut":"` + out + ` mm"`
		}
		rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-10","engineHours":"%d h","bearingClearance":"0.%d mm","bearingBladeWidth":"0 mm"%s}`, 1+i, 500+20*i, 40+2*i, by))
	}
	return testboat.Read(t, `{"name":"Dunlin","shaft":{"diameter":"30 mm"},"readings":[`+strings.Join(rows, ",")+`],"follow":{"reading":"bearingClearance","limit":"0.76 mm"}}`)
}

// A reading that its own sheet contradicts leads nowhere: no date, no chance, no
// day in the schedule, and no look that was taken; an earlier one is left out.
func TestAReadingThatIsVoidIsNotFollowed(t *testing.T) {
	sound := testboat.Run(t, "reading-trend", `{}`, marinecalc.Options{Boat: worn(t, 5, "0.48", "0.52")})
	if sound.Result("sureDate") == nil || strings.Contains(sound.Result("says").Text, "tells nothing") {
		t.Errorf("sound: %s", sound.Result("says").Text)
	}
	newest := worn(t, 5, "1.3", "1.35")
	s := testboat.Run(t, "reading-trend", `{}`, marinecalc.Options{Boat: newest})
	if says := s.Result("says").Text; !strings.Contains(says, "0.5 mm of 2026-06-10, which tells nothing") || s.Result("sureDate") != nil || s.Result("now") != nil || s.Result("newestDeviation") != nil {
		t.Errorf("%s", says)
	}
	if v := s.Verdict("trend-not-reached"); v == nil || v.Word != "cannot tell" {
		t.Errorf("%+v", v)
	}
	list := testboat.Run(t, "service-schedule", `{"today":"2026-06-20"}`, marinecalc.Options{Boat: newest}).Table("schedule")
	told := false
	for _, r := range list.Rows {
		told = told || strings.Contains(list.Reader(r)("lastDone"), "2026-06-10 tells nothing") && strings.HasPrefix(list.Reader(r)("lastDone"), "2026-05-10")
	}
	if !told {
		t.Error("the schedule takes it for a look")
	}
	earlier := testboat.Run(t, "reading-trend", `{}`, marinecalc.Options{Boat: worn(t, 2, "1.3", "1.35")})
	if basis := earlier.Result("basis").Text; !strings.Contains(basis, "5 readings") || !strings.Contains(basis, "left out: 0.44 mm of 2026-03-10") || earlier.Result("sureDate") == nil {
		t.Errorf("%s", basis)
	}
}

// What runs is no colder than the sea, but for cold air; and a rise above the sea
// that is none is no limit.
func TestColderThanTheSeaIsNoReading(t *testing.T) {
	run := func(limit, newest, air string) *marinecalc.Sheet {
		var rows []string
		for i, v := range []string{"20", "21", "21", "22", "22", newest} {
			rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-10","glandTemperature":"%s °C","waterTemperature":"%d °C"%s}`, 1+i, v, 14+i/2, air))
		}
		b := testboat.Read(t, `{"name":"Smew","readings":[`+strings.Join(rows, ",")+`]}`)
		return testboat.Run(t, "reading-trend", `{"reading":"glandTemperature","limit":"`+limit+`"}`, marinecalc.Options{Boat: b})
	}
	if says := run("20 K", "10", "").Result("says").Text; !strings.Contains(says, "colder than the sea") {
		t.Error(says)
	}
	for _, sound := range []*marinecalc.Sheet{run("20 K", "23", ""), run("20 K", "15", ""), run("20 K", "10", `,"airTemperature":"2 °C"`)} {
		if says := sound.Result("says").Text; strings.Contains(says, "colder than the sea") {
			t.Error(says)
		}
	}
	for _, limit := range []string{"-5 K", "0 K"} {
		_, err := marinecalc.Run("reading-trend", []byte(`{"reading":"glandTemperature","limit":"`+limit+`","readings":[{"date":"2026-01-01","value":"20 °C","waterTemperature":"15 °C"},{"date":"2026-02-01","value":"20 °C","waterTemperature":"15 °C"},{"date":"2026-03-01","value":"20 °C","waterTemperature":"15 °C"}]}`), marinecalc.Options{})
		if err == nil || !strings.Contains(err.Error(), "/limit") {
			t.Errorf("%s: %v", limit, err)
		}
	}
}

// Of what was renewed after its newest reading nothing is told, also where its
// readings had reached the limit; a renewal still to come changes nothing.
func TestNothingIsToldOfWhatWasRenewedSince(t *testing.T) {
	const boat = `{"name":"Tern","follow":{"reading":"bearingClearance","limit":"0.5 mm"},"events":[{"date":"2026-08-01","what":"new bearing","renews":"bearingLift"}],
		"readings":[{"date":"2026-01-01","bearingClearance":"0.3 mm"},{"date":"2026-03-01","bearingClearance":"0.4 mm"},{"date":"2026-05-01","bearingClearance":"0.55 mm"}%s]}`
	for _, c := range []struct{ later, today, says string }{
		{"", "2026-09-01", "renewed or set on 2026-08-01"},
		{"", "2026-07-01", ""},
		{`,{"date":"2026-08-02","bearingClearance":"0.1 mm"}`, "2026-09-01", "there is one reading"},
	} {
		_, err := marinecalc.Run("reading-trend", []byte(`{"today":"`+c.today+`"}`), marinecalc.Options{Boat: testboat.Read(t, fmt.Sprintf(boat, c.later))})
		if (err != nil) != (c.says != "") || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s, by %s: %v", c.later, c.today, err)
		}
	}
}
