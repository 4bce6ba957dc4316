// Turns of a mount's nut in words.

package mount

import (
	"math"
	"strconv"
)

// Turning is how far a mount's nut is turned, in flats of its hexagon; plus
// raises the engine. NaN: the thread is not known.
type Turning struct{ Flats float64 }

// MarshalText says the same as String.
func (t Turning) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// quarters are the parts of a flat that a hand can set.
var quarters = [4]string{"", "¼", "½", "¾"}

// String says it to the quarter of a flat: "1 turn 2½ flats up".
func (t Turning) String() string {
	if math.IsNaN(t.Flats) {
		return ""
	}
	rest := int(math.Round(4 * math.Abs(t.Flats)))
	if rest == 0 {
		return "leave"
	}
	turns := rest / 24
	flats := rest % 24
	text := ""
	if turns > 0 {
		text = strconv.Itoa(turns) + " turn"
		if turns > 1 {
			text += "s"
		}
		text += " "
	}
	if flats > 0 {
		if flats >= 4 {
			text += strconv.Itoa(flats / 4)
		}
		text += quarters[flats%4] + " flat"
		if flats > 4 {
			text += "s"
		}
		text += " "
	}
	if t.Flats < 0 {
		return text + "down"
	}
	return text + "up"
}
