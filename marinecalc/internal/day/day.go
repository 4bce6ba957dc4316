// Package day reads and writes calendar days as ISO 8601 has them,
// year-month-day, and counts them from 1970-01-01. It reads no clock.
package day

import (
	"fmt"
	"time"
)

const secondsPerDay = 86400

// Parse counts the days from 1970-01-01 to a date. The error says that the
// text is no date of the calendar.
func Parse(date string) (int, error) {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return 0, fmt.Errorf("%q is not a date", date)
	}
	return int(t.Unix() / secondsPerDay), nil
}

// Text writes the date of a day.
func Text(day int) string {
	return time.Unix(int64(day)*secondsPerDay, 0).UTC().Format(time.DateOnly)
}

// Valid tells whether a text is a date of the calendar.
func Valid(date string) bool {
	_, err := Parse(date)
	return err == nil
}
