// Clock positions in words.

package align

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// hours puts the twelve clock positions into words.
var hours = [12]string{
	"about 12 o'clock", "about 1 o'clock", "about 2 o'clock", "about 3 o'clock",
	"about 4 o'clock", "about 5 o'clock", "about 6 o'clock", "about 7 o'clock",
	"about 8 o'clock", "about 9 o'clock", "about 10 o'clock", "about 11 o'clock",
}

// hourOf is the nearest hour to an angle from the top; 0 is 12 o'clock.
func hourOf(clock float64) int {
	return int(turnOf(clock)/(math.Pi/6)+0.5) % 12
}

// hour is the nearest hour to where a vector points, which is at, or no words
// for a vector that points nowhere.
func hour(v vector, at quantity.Direction) string {
	if v.up == 0 && v.right == 0 {
		return ""
	}
	return hours[hourOf(float64(at))]
}
