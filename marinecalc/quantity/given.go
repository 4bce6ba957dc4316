package quantity

import "math"

// OrNaN gives v itself, and NaN for 0. In the inputs of the machine parts 0
// stands for a figure that was not given, and NaN then marks every result that
// rests on it as not asked for.
func OrNaN(v float64) float64 {
	if v == 0 {
		return math.NaN()
	}
	return v
}
