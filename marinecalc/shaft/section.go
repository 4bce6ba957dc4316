// Area and second moment of a round section.

package shaft

import "math"

// The figures of a round section of diameter d with a bore b along it, 0 for
// a solid shaft (Shigley, Mechanical Engineering Design, 9th ed., table A-18,
// from memory).

// area is the metal in the section, in m².
func area(d, b float64) float64 { return math.Pi / 4 * (d*d - b*b) }

// secondMoment is the second moment of area about a diameter, in m⁴; half
// of the polar one.
func secondMoment(d, b float64) float64 { return math.Pi / 64 * (d*d*d*d - b*b*b*b) }

// gravity is the standard acceleration of free fall in m/s² (ISO 80000-3).
const gravity = 9.80665
