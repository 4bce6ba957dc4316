package upkeep_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// An hour meter that was renewed counts no hours across: what was done on the
// old one is due by how much she is run, as on a boat that is run as much on one
// meter, and the sheet says so.
func TestAMeterThatWasRenewedPartsTheHours(t *testing.T) {
	boat := func(hours ...int) *marinecalc.Sheet {
		var rows []string
		for i, h := range hours {
			rows = append(rows, fmt.Sprintf(`{"date":"2026-%02d-01","engineHours":"%d h"}`, i+1, h))
		}
		b := testboat.Read(t, `{"name":"Plover","readings":[`+strings.Join(rows, ",")+`],"service":{"done":[{"item":"fluid-change","date":"2026-02-01","engineHours":"1520 h"}],`+
			`"intervals":[{"item":"fluid-change","hours":"250 h","document":"Gearbox manual (invented), p. 3"}]}}`)
		return testboat.Run(t, "service-schedule", `{"today":"2026-06-01"}`, marinecalc.Options{Boat: b})
	}
	one, two := boat(1500, 1520, 1540, 1560, 1580, 1600), boat(1500, 1520, 1540, 5, 25, 45)
	a, b := lineOf(t, one, "Gearbox fluid"), lineOf(t, two, "Gearbox fluid")
	if a["hoursLeft"] != "170 h" || b["hoursLeft"] != "170 h" && b["hoursLeft"] != "169 h" && b["hoursLeft"] != "171 h" {
		t.Errorf("%v\n%v", a, b)
	}
	if says := two.Result("says").Text; !strings.Contains(says, "hour meter stood at 1540 h on 2026-03-01 and at 5 h on 2026-04-01") {
		t.Error(says)
	}
	if strings.Contains(one.Result("says").Text, "hour meter") {
		t.Error(one.Result("says").Text)
	}
}
