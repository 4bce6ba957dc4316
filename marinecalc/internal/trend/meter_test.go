package trend_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// An hour meter that was renewed or misread makes no slope: the line runs over
// days, as of the same readings without a meter, and the sheet says so.
func TestAMeterThatIsOffMakesNoSlope(t *testing.T) {
	drips := []int{7, 8, 9, 10, 11, 12}
	run := func(hours ...string) *marinecalc.Sheet {
		var rows []string
		for i, d := range drips {
			meter := ""
			if hours != nil {
				meter = fmt.Sprintf(`,"engineHours":"%s h"`, hours[i])
			}
			rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-01","value":"%d drips/min"%s}`, 1+i, d, meter))
		}
		return testboat.Run(t, "reading-trend", `{"reading":"dripRate","limit":"30 drips/min","readings":[`+strings.Join(rows, ",")+`]}`, marinecalc.Options{})
	}
	none := run()
	for name, hours := range map[string][]string{
		"renewed":      {"1500", "1520", "1541", "2", "22", "43"},
		"misread low":  {"1500", "1520", "154", "1560", "1580", "1600"},
		"misread high": {"1500", "1520", "15410", "1560", "1580", "1600"},
		"newest low":   {"1500", "1520", "1540", "1560", "1580", "160"},
		"newest high":  {"1500", "1520", "1540", "1560", "1580", "16000"},
	} {
		s := run(hours...)
		if a, b := s.Result("pace").Text, none.Result("pace").Text; a != b {
			t.Errorf("%s: %s, by the dates %s", name, a, b)
		}
		if s.Result("hoursLeft") != nil || !strings.Contains(s.Result("basis").Text, "hour meter was renewed or misread") || s.Table("flags") == nil {
			t.Errorf("%s: %s", name, s.Result("basis").Text)
		}
	}
	if s := run("1500", "1520", "1541", "1560", "1580", "1600"); s.Result("hoursLeft") == nil || strings.Contains(s.Result("basis").Text, "misread") {
		t.Errorf("sound: %s", s.Result("basis").Text)
	}
}

// What comes into the fluid an hour, and the hours from which a wear rate comes,
// are not counted across a meter that was renewed.
func TestNoHoursAreCountedAcrossMeters(t *testing.T) {
	b := testboat.Read(t, `{"name":"Plover","fluid":{"volume":"2 L"},"readings":[
		{"date":"2026-01-01","engineHours":"10 h","fluidChanged":true},
		{"date":"2026-02-01","engineHours":"30 h","wearIron":"10 ppm"},
		{"date":"2026-03-01","engineHours":"1 h","wearIron":"20 ppm"},
		{"date":"2026-04-01","engineHours":"60 h","wearIron":"30 ppm"},
		{"date":"2026-05-01","engineHours":"80 h","wearIron":"40 ppm"}]}`)
	s := testboat.Run(t, "reading-trend", `{"reading":"wearIron"}`, marinecalc.Options{Boat: b})
	if r := s.Result("perHour"); r != nil {
		t.Errorf("%s", r.Text)
	}
	b = testboat.Read(t, `{"name":"Plover","shaft":{"diameter":"30 mm"},"readings":[
		{"date":"2026-01-01","engineHours":"100 h","bearingClearance":"0.3 mm"},
		{"date":"2026-02-01","engineHours":"5 h","bearingClearance":"0.4 mm"},
		{"date":"2026-04-01","engineHours":"200 h","bearingClearance":"0.5 mm"}]}`)
	if in := testboat.Run(t, "bearing-clearance", `{}`, marinecalc.Options{Boat: b}).Input("runningTime"); in != nil {
		t.Errorf("%+v", in)
	}
}
