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

// One that jumps by less is no fault: it is to be read again, its part is not OK for that
// long, and it is not told that all is well without that. On the good side it is nothing.
func TestAReadingThatJumpsALittleIsToBeReadAgain(t *testing.T) {
	for _, c := range []struct {
		newest int
		again  bool
	}{{58, false}, {60, true}, {46, false}, {90, false}} {
		var log []string
		for i, at := range []int{55, 54, 56, 55, 55, 56, 54, c.newest} {
			log = append(log, fmt.Sprintf(`{"date": "2026-%02d-10", "engineHours": "%d h", "waterTemperature": "15 °C", "gearboxTemperature": "%d °C"}`, i+2, 100+10*i, at))
		}
		s := testboat.Check(t, testboat.Read(t, `{"name": "Plover", "readings": [`+strings.Join(log, ",")+`]}`), marinecalc.Options{})
		told := 0
		for _, f := range s.Findings {
			if f.Verdict.Word == sheet.CannotTell && strings.Contains(f.Verdict.Sentence, fmt.Sprintf("%d °C on 2026-09-10, higher than the earlier ones: read it again", c.newest)) {
				told++
			}
		}
		if unsure := strings.Contains(s.Nothing, "not enough to tell: 1"); (told == 1) != c.again || unsure != c.again {
			t.Errorf("%d °C: told %d times, and: %s", c.newest, told, s.Nothing)
		}
		if found := len(s.Found) > 0; found != (c.newest == 90) {
			t.Errorf("%d °C: found %+v", c.newest, s.Found)
		}
		for _, p := range s.Parts {
			if p.Part == "gearbox" && (p.Reads == "read again") != c.again {
				t.Errorf("%d °C: the gearbox is %s, %s", c.newest, p.Word, p.Reads)
			}
		}
	}
}

// A season's sea that nobody read beside it, or another speed of the engine, is no jump;
// the same sea, or far more than a season does, is.
func TestWhatWasNotReadAlikeIsNoJump(t *testing.T) {
	for _, c := range []struct {
		name                 string
		newest               int
		speed, before, after string
		found                bool
	}{
		{"a season, the sea not read", 62, "2000", "", "", false},
		{"a season, the sea read once", 62, "2000", "", "20", false},
		{"a season, the sea as warm as before", 62, "2000", "9", "9", true},
		{"more than a season", 75, "2000", "", "", true},
		{"at full throttle", 75, "2800", "", "", false},
		{"at nearly the same speed", 75, "2100", "", "", true},
		{"speed not noted", 75, "", "", "", true},
	} {
		entry := func(month, at int, speed, sea string) string {
			e := fmt.Sprintf(`{"date": "2026-%02d-10", "engineHours": "%d h", "gearboxTemperature": "%d °C"`, month, 100+10*month, at)
			if speed != "" {
				e += `, "engineSpeed": "` + speed + ` rpm"`
			}
			if sea != "" {
				e += `, "waterTemperature": "` + sea + ` °C"`
			}
			return e + "}"
		}
		var log []string
		for i, at := range []int{48, 49, 48, 49, 48} {
			log = append(log, entry(i+1, at, "2000", c.before))
		}
		boat := testboat.Read(t, `{"name": "Plover", "readings": [`+strings.Join(append(log, entry(8, c.newest, c.speed, c.after)), ",")+`]}`)
		found := false
		for _, f := range testboat.Check(t, boat, marinecalc.Options{}).Found {
			found = found || f.Limit == "trend-newest" && f.Kind == survey.FoundMeasured
		}
		if found != c.found {
			t.Errorf("%s: found %v", c.name, found)
		}
	}
}

// Readings that crept away from those of when all was well are found without a jump and
// though nobody follows them; those that stayed are not.
func TestReadingsThatCreptFromAllWellAreFound(t *testing.T) {
	for creeps, found := range map[int]bool{0: false, 5: true} {
		var log []string
		for i := range 7 {
			good := ""
			if i < 2 {
				good = `, "baseline": true`
			}
			log = append(log, fmt.Sprintf(`{"date": "202%d-06-10", "engineHours": "%d h", "waterTemperature": "15 °C", "gearboxTemperature": "%d °C"%s}`, i, 100+100*i, 60+i%2+creeps*i, good))
		}
		s := testboat.Check(t, testboat.Read(t, `{"name": "Ruff", "readings": [`+strings.Join(log, ",")+`]}`), marinecalc.Options{})
		is := false
		for _, f := range s.Found {
			is = is || f.Limit == "trend-baseline" && strings.Contains(f.Title, "Gearbox temperature")
		}
		if is != found {
			t.Errorf("by %d K a year: %+v", creeps, s.Found)
		}
	}
}
