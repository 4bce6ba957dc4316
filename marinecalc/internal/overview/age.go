package overview

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/day"
)

// Fresh says how old the newest reading is, for a mark.
type Fresh string

// The ages that have a mark of their own.
const (
	FreshNow    Fresh = "now"    // of the last two weeks
	FreshSeason Fresh = "season" // of the last half year
	FreshOld    Fresh = "old"
	FreshNever  Fresh = "never"
)

const (
	nowDays    = 14
	seasonDays = 183
)

// newest says how long before today a day is. A day still to come is one of
// today: the clock of this device or that of the boat is off.
func newest(read, today string) Newest {
	a, err := day.Parse(read)
	b, err2 := day.Parse(today)
	if err != nil || err2 != nil {
		if read == "" {
			return Newest{Age: "never", Ago: "never", Brief: "never", Fresh: FreshNever}
		}
		return Newest{Read: read, Age: read, Ago: read, Brief: read, Fresh: FreshOld}
	}
	n, what := ago(max(b-a, 0))
	out := Newest{Read: read, Age: counted(n, what), Brief: fmt.Sprintf("%d %s", n, units[what]), Fresh: FreshOld}
	out.Ago = out.Age + " ago"
	if b <= a {
		out.Age, out.Ago, out.Brief = "today", "today", "today"
	}
	switch {
	case b-a <= nowDays:
		out.Fresh = FreshNow
	case b-a <= seasonDays:
		out.Fresh = FreshSeason
	}
	return out
}

// units are the letters for a span of time in a small place.
var units = map[string]string{"day": "d", "week": "wk", "month": "mo", "year": "y"}

// ago is a number of days as people count them.
func ago(days int) (n int, what string) {
	switch {
	case days < 14:
		return days, "day"
	case days < 61:
		return days / 7, "week"
	case days < 730:
		return days * 12 / 365, "month"
	}
	return days / 365, "year"
}

func counted(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return fmt.Sprintf("%d %s", n, what)
}
