// Checks that the parts share.

package problem

import (
	"math"
	"strconv"
)

// The checks run in every trial of a calculation. What passes costs a
// comparison in the caller, as a finite number less itself is 0 and any other
// is NaN; all else stands in functions of its own.

// Above asks for a finite number above zero, adds a problem where it is none,
// and tells whether it is one. The name is that of the input in mid-sentence:
// "diameter of the shaft".
func (l *List) Above(where, name string, v float64) bool {
	return v > v-v || l.notAbove(where, name)
}

// NotNegative asks for a finite number of zero (not given, or none) or more,
// as Above does.
func (l *List) NotNegative(where, name string, v float64) bool {
	return v >= v-v || l.negative(where, name)
}

// Share asks for a number above zero and not above one, as Above does.
func (l *List) Share(where, name string, v float64) bool {
	return v > 0 && v <= 1 || l.noShare(where, name)
}

// Between asks for a number from lo to hi (see Within), as Above does. The
// name begins the sentence, and allowed says the bounds in words.
func (l *List) Between(where, name string, v, lo, hi float64, allowed string) bool {
	return v >= lo && v <= hi || l.outside(where, name, v, lo, hi, allowed)
}

//go:noinline
func (l *List) notAbove(where, name string) bool {
	l.Add(where, "the "+name+" is missing, negative or not a number", "above 0", "")
	return false
}

//go:noinline
func (l *List) negative(where, name string) bool {
	l.Add(where, "the "+name+" is negative or not a number", "0 for not given, or above 0", "")
	return false
}

//go:noinline
func (l *List) noShare(where, name string) bool {
	l.Add(where, "the "+name+" is not a share", "above 0, up to 1", "half is 0.5 or 50 %")
	return false
}

//go:noinline
func (l *List) outside(where, name string, v, lo, hi float64, allowed string) bool {
	if Within(v, lo, hi) {
		return true
	}
	l.Add(where, name+" is out of range", allowed, "")
	return false
}

// Millimetres words a length in metres for a problem: "0.15 mm".
func Millimetres(metres float64) string { return strconv.FormatFloat(1000*metres, 'g', 4, 64) + " mm" }

// Within tells whether a number lies from lo to hi. It allows the last digit
// of a bound that came from another unit, and refuses NaN and the infinities
// beyond its bounds.
func Within(v, lo, hi float64) bool {
	const digit = 1e-12
	return lo <= v && v <= hi || v >= lo-digit*math.Abs(lo) && v <= hi+digit*math.Abs(hi)
}
