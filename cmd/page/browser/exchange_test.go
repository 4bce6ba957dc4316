package browser

import (
	"strconv"
	"strings"
	"testing"
)

// A file of readings may be Signal K or a table: both go into the log, and
// what was not used of it is told.
func TestReadingsFromFiles(t *testing.T) {
	b := newTab(t, 360)
	b.keepDemonstration()
	before := kept[int](b, "boats[0].boat.readings.length")
	b.open("#/readings")
	b.give("jsonl", "logged.jsonl", `{"context":"vessels.self","updates":[{"timestamp":"2026-11-27T10:00:00Z","values":[{"path":"propulsion.main.revolutions","value":20},{"path":"propulsion.main.oilPressure","value":300000},{"path":"environment.wind.speedApparent","value":5}]}]}`)
	b.until(`document.querySelector("[aria-labelledby=readings-title] [role=alert] p")?.textContent.includes("added to the log")`)
	if said := b.text("[aria-labelledby=readings-title] [role=alert]"); !strings.Contains(said, "propulsion.main.") || !strings.Contains(said, "environment.wind.speedApparent") {
		t.Errorf("it says %q", said)
	}
	b.untilKept(strings.Replace(`boats[0].boat.readings.length > BEFORE`, "BEFORE", strconv.Itoa(before), 1))
	b.open("#/readings")
	b.give("jsonl", "table.csv", "date,dripRate\r\n2026-11-26,7 drips/min\r\n")
	b.untilKept(strings.Replace(`boats[0].boat.readings.length > BEFORE + 1`, "BEFORE", strconv.Itoa(before), 1))
	b.give("jsonl", "broken.json", `{"context":`)
	b.until(`document.querySelector("[aria-labelledby=readings-title] [role=alert] .wrong")`)
}
