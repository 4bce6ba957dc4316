package day

import "testing"

// Day numbers of known dates: 1970-01-01 is day 0 of the Unix count (POSIX.1,
// "Seconds Since the Epoch"); 2000-01-01 is 10957 (30 years of 365 days and
// seven leap days).
func TestDays(t *testing.T) {
	for date, want := range map[string]int{"1970-01-01": 0, "1969-12-31": -1, "2000-01-01": 10957, "2024-02-29": 19782} {
		got, err := Parse(date)
		if err != nil || got != want || Text(got) != date || !Valid(date) {
			t.Errorf("%s: day %d, %v, written back %s, want day %d", date, got, err, Text(got), want)
		}
	}
	for _, date := range []string{"", "2026-02-30", "2026-13-01", "2026-1-1", "11.04.2026", "2026-04-11T10:00"} {
		if _, err := Parse(date); err == nil || Valid(date) {
			t.Errorf("%q is taken for a date", date)
		}
	}
}
