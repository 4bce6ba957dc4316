// Units and their factors.

package quantity

import "math"

// unit is one unit of a kind: SI value = (x + shift) · mul / div. Where mul and
// div are whole numbers a short decimal converts with a single rounding, so
// that "32 mm" is 0.032 to the last bit.
type unit struct {
	name     string
	mul, div float64
	also     string  // other spellings, comma-separated
	shift    float64 // added before scaling; temperatures only
	style    style
	smaller  step // the unit that takes over where this one gives too small a number
	larger   step // and where it gives too large a one
}

// step leads from a unit to the next of its kind, for printing a value in a
// unit of its own size. The zero step leads nowhere.
type step struct {
	at   float64 // number of this unit below which, or from which on, the next is printed
	unit string
}

// style is how a unit departs from plain scaling and four digits.
type style uint8

const (
	plain    style = iota
	workshop       // inches: binary fractions where they are exact
	coarse         // thou: no digits below a tenth
	degrees        // temperatures: no digits below a hundredth
	clock          // positions on the clock face, 12 at the top
	currency       // money: two decimals, whole units kept
)

// toSI gives the SI value of x of this unit.
func (u *unit) toSI(x float64) float64 {
	if u.style == clock && x >= 12 {
		x -= 12
	}
	return (x + u.shift) * u.mul / u.div
}

// fromSI gives an SI value in this unit.
func (u *unit) fromSI(si float64) float64 {
	x := si*u.div/u.mul - u.shift
	if u.style == clock {
		if x = math.Mod(x, 12); x < 0 {
			x += 12
		}
	}
	return x
}

// width gives the SI width of a span of x units, leaving any shift aside.
func (u *unit) width(x float64) float64 { return x * u.mul / u.div }
