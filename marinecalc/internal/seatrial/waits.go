package seatrial

import (
	"fmt"
	"strings"
)

// waits says what stands against running the trial, or against going by one
// that was run: a reason to keep the shaft still, causes that were found and
// not cured, and work done after it. Still is about the first alone.
func (t *trial) waits() (still, found, since string) {
	if t.session.Boat == nil {
		return "", "", ""
	}
	if out := t.session.Earlier("fault-finding"); out != nil {
		var names []string
		for n := 0; out.Sheet.Cell("ranking", n, "name") != nil; n++ {
			if known := out.Sheet.Cell("ranking", n, "known"); known != nil && known.Text != "" {
				names = append(names, out.Sheet.Cell("ranking", n, "name").Text)
			}
		}
		found = strings.Join(names, "; ")
	}
	return t.session.Still(), found, t.workSince()
}

// workSince is the newest work on the boat after the day of the trial; "" for
// none, and where the trial has no day.
func (t *trial) workSince() string {
	newest, what := t.in.Date, ""
	if newest == "" {
		return ""
	}
	for e := range t.session.Boat.Readings() {
		if e.Changed() && e.Date > newest {
			newest, what = e.Date, "work before the readings of "+e.Date
		}
	}
	for e := range t.session.Boat.Events() {
		if e.Date > t.in.Date && e.Date >= newest {
			newest, what = e.Date, fmt.Sprintf("“%s” on %s", e.What, e.Date)
		}
	}
	return what
}
