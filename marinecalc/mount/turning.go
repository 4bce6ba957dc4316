// Turns of a mount's nut in words.

package mount

import (
	"math"
	"strconv"
	"strings"
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

// NutTurns is what is done at every nut. As text it is empty where a mount is
// moved whose thread is not known.
type NutTurns struct {
	all [Most]struct {
		name string
		turn Turning
	}
	count   int
	unknown bool
}

func nutTurns(moves []Move) (t NutTurns) {
	t.count = len(moves)
	for i := range moves {
		m := &moves[i]
		t.all[i].name, t.all[i].turn = m.Name, m.Nut
		if math.IsNaN(m.Nut.Flats) {
			t.all[i].turn = Turning{}
			t.unknown = t.unknown || m.Raise != 0
		}
	}
	return t
}

// MarshalText says the same as String.
func (t NutTurns) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// String names the nuts, those that turn alike together: "fore port, fore
// starboard: 5 flats up; aft: leave".
func (t NutTurns) String() string {
	if t.unknown {
		return ""
	}
	var text strings.Builder
	for i, one := range t.all[:t.count] {
		switch turn := one.turn.String(); {
		case i+1 < t.count && t.all[i+1].turn.String() == turn:
			text.WriteString(one.name + ", ")
		case i+1 < t.count:
			text.WriteString(one.name + ": " + turn + "; ")
		default:
			text.WriteString(one.name + ": " + turn)
		}
	}
	return text.String()
}
