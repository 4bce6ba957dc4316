// Draws from an orthogonal array.

package spread

// With 256, 1024 or 4096 trials the strata are not shuffled freely but lie by an
// orthogonal array of strength two (Owen, Statistica Sinica 2 (1992) 439-452;
// Tang, Journal of the American Statistical Association 88 (1993) 1392-1397). With n = q² trials the strata of
// a factor make q groups of q neighbours, and of any two factors each pair of
// groups comes together exactly once. What two factors do, alone or together,
// then averages out evenly, and inside a group of one factor every other factor
// takes each of its groups once, so that no factor passes for another in the
// shares. Levels and the order inside each are shuffled, each factor by itself.

// arraySide is q for n trials: the groups of a factor in an array of n rows. It is
// 0 where there is none.
func arraySide(n int) int {
	for _, q := range [...]int{16, 32, 64} {
		if n == q*q {
			return q
		}
	}
	return 0
}

// arrayColumns is how many factors lie by an array; those after them are
// shuffled freely. It has side+1 columns, all of which together would leave
// nothing to tell chance from (see chances).
func arrayColumns(side int) int { return side * 7 / 8 }

// dealArray deals column place of the array to side² trials.
func dealArray(random stream, side, place int) *deck {
	n := side * side
	d := &deck{at: make([]float64, n), group: make([]uint8, n), even: true}
	levels, inside := make([]int, side), make([]int, side)
	random.shuffle(levels)
	for g, level := range levels {
		random.shuffle(inside)
		for row, s := range inside {
			t := arrayTrial(level, row, side, place)
			d.at[t] = float64(g*side+s) + (float64(random.next()>>32)+0.5)*0x1p-32
			d.group[t] = uint8(g)
		}
	}
	return d
}

// arrayTrial is one of the side trials that have a level in column place: trial
// i·side + j has j + place·i there, in the field of side elements.
func arrayTrial(level, row, side, place int) int {
	return row*side + (level ^ fieldProduct(place, row, side))
}

// fieldProduct multiplies two elements of the field of 16, 32 or 64 elements:
// polynomials with coefficients 0 and 1, modulo x⁴+x+1, x⁵+x²+1 or x⁶+x+1.
func fieldProduct(a, b, side int) (product int) {
	modulus := side | 3
	if side == 32 {
		modulus = side | 5
	}
	for ; b > 0; b >>= 1 {
		if b&1 == 1 {
			product ^= a
		}
		if a <<= 1; a >= side {
			a ^= modulus
		}
	}
	return product
}

// shuffle fills list with 0 … len(list)-1 in random order.
func (s *stream) shuffle(list []int) {
	for i := range list {
		j := int(s.next() & 0xffffffff * uint64(i+1) >> 32)
		list[i] = list[j]
		list[j] = i
	}
}
