package procedure

import (
	"fmt"
	"strings"

	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/rules"
)

// due says when a step after the trial is due.
func (m *maker) due(row rules.Step) *Due {
	if row.DueHours == 0 && row.DueDays == 0 {
		return nil
	}
	d := &Due{Hours: row.DueHours, Days: row.DueDays}
	var after []string
	if row.DueHours > 0 {
		after = append(after, hoursText(row.DueHours)+" of engine running")
	}
	if row.DueDays > 0 {
		after = append(after, days(row.DueDays))
	}
	d.Text = strings.Join(after, " or ") + " after the trial"
	if len(after) > 1 {
		d.Text += ", whichever comes first"
	}
	trial := m.trialDay()
	if trial == "" {
		return d
	}
	if n, err := day.Parse(trial); err == nil && row.DueDays > 0 {
		d.By = day.Text(n + row.DueDays)
	}
	if seconds, ok := m.meterOn(trial); ok && row.DueHours > 0 {
		d.Meter = hoursText(float64(int(seconds/3600+0.5)) + row.DueHours)
	}
	var by []string
	if d.By != "" {
		by = append(by, "by "+d.By)
	}
	if d.Meter != "" {
		by = append(by, "at "+d.Meter+" on the meter")
	}
	if len(by) > 0 {
		d.Text += ": " + strings.Join(by, ", or ")
	}
	return d
}

func days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// trialDay is the day on which the last step of the trial was ticked off, ""
// while one is open.
func (m *maker) trialDay() (last string) {
	for _, s := range m.steps {
		if s.Phase != "trial" {
			continue
		}
		t := m.ticked(s.ID)
		if t == nil || !day.Valid(t.Done) {
			return ""
		}
		last = max(last, t.Done)
	}
	return last
}

// meterOn is the hour meter as it was last read up to a day.
func (m *maker) meterOn(until string) (seconds float64, ok bool) {
	newest := ""
	for e := range m.session.Boat.Readings() {
		if h, has := e.EngineHours(); has && e.Date <= until && e.Date >= newest {
			seconds, ok, newest = h, true, e.Date
		}
	}
	return seconds, ok
}
