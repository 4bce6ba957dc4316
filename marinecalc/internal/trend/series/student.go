// Student's t distribution.

package series

import "math"

// Student gives the value that a Student t variable of so many
// degrees of freedom stays below with probability p (0.5 < p < 1). It solves
// the distribution function, which for whole degrees of freedom is a finite
// sum (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and
// 26.7.4), by halving.
func Student(p float64, freedom int) float64 {
	low, high := 0.0, 1.0
	for studentBelow(high, freedom) < p {
		high *= 2
	}
	for range 80 {
		mid := (low + high) / 2
		if studentBelow(mid, freedom) < p {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// studentBelow is the distribution function. Both sums are odd in t, so that it
// holds below nought as well.
func studentBelow(t float64, freedom int) float64 {
	n := float64(freedom)
	theta := math.Atan(t / math.Sqrt(n))
	sin, cos := math.Sincos(theta)
	var between float64 // probability of lying between -t and t
	if freedom%2 == 1 {
		sum, term := 0.0, cos
		for k := 3; k <= freedom; k += 2 {
			sum += term
			term *= float64(k-1) / float64(k) * cos * cos
		}
		between = 2 / math.Pi * (theta + sin*sum)
	} else {
		sum, term := 0.0, 1.0
		for k := 2; k <= freedom; k += 2 {
			sum += term
			term *= float64(k-1) / float64(k) * cos * cos
		}
		between = sin * sum
	}
	return (1 + between) / 2
}

// studentShare is the distribution function; a half where nothing is known.
func studentShare(t float64, freedom int) float64 {
	if math.IsNaN(t) {
		return 0.5
	}
	return studentBelow(t, freedom)
}
