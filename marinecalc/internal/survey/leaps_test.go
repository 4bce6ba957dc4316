package survey_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A reading that nobody follows and that jumps is found, named, and counts for its
// part; one that scatters as before is not, nor one of fewer than four, nor is the
// followed one said twice.
func TestAReadingThatJumpsIsFound(t *testing.T) {
	for _, c := range []struct {
		temperatures []int
		follow       string
		found        int
	}{
		{[]int{55, 54, 56, 55, 55, 56, 54, 90}, "", 1},
		{[]int{55, 54, 56, 55, 55, 56, 54, 57}, "", 0},
		{[]int{55, 54, 90}, "", 0},
		{[]int{55, 54, 56, 55, 55, 56, 88, 89}, "", 1}, // read again, and it stands
		{[]int{55, 54, 56, 55, 55, 56, 54, 31}, "", 0}, // not warm yet
		{[]int{55, 54, 56, 55, 55, 56, 54, 90}, `"follow": {"reading": "gearboxTemperature", "limit": "120 °C"},`, 1},
	} {
		var log []string
		for i, at := range c.temperatures {
			log = append(log, fmt.Sprintf(`{"date": "2026-%02d-10", "engineHours": "%d h", "gearboxTemperature": "%d °C"}`, i+2, 100+10*i, at))
		}
		boat := testboat.Read(t, fmt.Sprintf(`{"name": "Plover", %s "readings": [%s]}`, c.follow, strings.Join(log, ",")))
		s := testboat.Check(t, boat, marinecalc.Options{})
		found := 0
		for _, f := range s.Found {
			if f.Limit == "trend-newest" && f.Kind == survey.FoundMeasured && strings.Contains(f.Title, "Gearbox temperature") && strings.Contains(strings.ToLower(f.Sheet), "gearbox temperature") {
				found++
			}
		}
		if found != c.found {
			t.Errorf("%v, %s: found %d times: %+v", c.temperatures, c.follow, found, s.Found)
		}
		for _, p := range s.Parts {
			if p.Part == "gearbox" && (p.Word == sheet.CannotTell || p.Word == sheet.Beyond) != (c.found > 0) {
				t.Errorf("%v, %s: the gearbox is %s, %s", c.temperatures, c.follow, p.Word, p.Reads)
			}
		}
	}
}
