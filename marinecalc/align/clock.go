// Clock positions by their hour.

package align

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// hours are the codes of the twelve clock positions, for which the schema of
// coupling-alignment has the words.
var hours = [12]string{"12", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11"}

// hourOf is the nearest hour to an angle from the top; 0 is 12 o'clock.
func hourOf(clock float64) int {
	return int(turnOf(clock)/(math.Pi/6)+0.5) % 12
}

// hour is the nearest hour to where a vector points, which is at, or no code
// for a vector that points nowhere.
func hour(v vector, at quantity.Direction) string {
	if v.up == 0 && v.right == 0 {
		return ""
	}
	return hours[hourOf(float64(at))]
}
