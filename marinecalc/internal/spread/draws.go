// Stratified draws of the uncertain inputs.

package spread

import "math"

// Draws are stratified (Latin hypercube sampling: McKay, Beckman and Conover,
// Technometrics 21 (1979) 239-245): with n trials the distribution of each
// factor is cut into n strata of equal probability, one value is drawn at
// random in each, and the values are shuffled over the trials, each factor by
// itself. Means and quantiles then settle with far fewer trials than plain
// draws need.

// maxGroups bounds the groups of neighbouring strata used for the shares.
const maxGroups = 64

// groupsFor is the number of groups for n trials: about √n, 4 to 64.
func groupsFor(n int) int {
	groups := 4
	for groups < maxGroups && (groups+1)*(groups+1) <= n {
		groups++
	}
	return groups
}

// firstOf is the first of n strata in a group: the first s with
// s·groups/n ≥ group.
func firstOf(group, n, groups int) int { return (group*n + groups - 1) / groups }

// stream is the random numbers of one factor: SplitMix64 (Steele, Lea and
// Flood, OOPSLA 2014). It is quick in WebAssembly too, where generators that
// multiply to 128 bits are not.
type stream uint64

// newStream starts the stream of a factor from the plan's seed and the
// factor's place, so that the draws of a factor do not depend on what the
// other factors are.
func newStream(seed uint64, place int) stream {
	return stream(mix(mix(seed) + uint64(place)))
}

func (s *stream) next() uint64 {
	r := mix(uint64(*s))
	*s += golden
	return r
}

// golden is the step of SplitMix64: 2^64 over the golden ratio, made odd.
const golden = 0x9e3779b97f4a7c15

// mix spreads close numbers far apart (the finaliser of SplitMix64).
func mix(z uint64) uint64 {
	z += golden
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// drawer makes the draws of a plan. The zero value is ready.
type drawer struct {
	sorted []float64 // draws of one factor, by stratum
	swap   []uint32  // by stratum, the stratum up to it that it changes places with
	bell   []float64 // n+1 quantiles of the standard normal distribution at the edges of the strata; the outermost, which are infinite, are not used
}

// draw fills values with the shuffled stratified draws of f, and group with
// the group of strata (0 … groups-1) that each came from.
//
// One 64-bit random number serves one stratum: its upper half is the place in
// the stratum, its lower half the place in the shuffle. With at most 2^20
// strata every intermediate is exact, so that a place is strictly inside its
// stratum, and the shuffle is even to 1 part in 4000.
func (d *drawer) draw(f *Factor, random stream, values []float64, group []uint8, groups int) {
	n := len(values)
	d.sorted, d.swap = resize(d.sorted, n), resize(d.swap, n)
	sorted, swap, group := d.sorted, d.swap[:n], group[:n]
	for s := range sorted {
		r := random.next()
		sorted[s] = (float64(int64(s<<32)|int64(r>>32)) + 0.5) * 0x1p-32
		swap[s] = uint32(r & 0xffffffff * uint64(s+1) >> 32)
	}
	d.place(f)
	s := 0
	for g := range groups {
		for end := firstOf(g+1, n, groups); s < end; s++ {
			j := swap[s]
			values[s] = values[j]
			values[j] = sorted[s]
			group[s] = group[j]
			group[j] = uint8(g)
		}
	}
}

// place turns places among the strata, 0 to n, into values of f.
//
// A normal factor is taken as evenly spread inside each stratum but the two
// outermost, which makes its standard deviation 0.005 % too large with 4096
// strata and 0.1 % with 100.
func (d *drawer) place(f *Factor) {
	sorted := d.sorted
	n := float64(len(sorted))
	width := f.High - f.Low
	switch f.Shape {
	case Rectangular:
		low, step := f.Low, width/n
		for s, at := range sorted {
			sorted[s] = low + at*step
		}
	case Triangular:
		mode := n * ((f.Estimate - f.Low) / width)
		rising, falling := width/n*(f.Estimate-f.Low), width/n*(f.High-f.Estimate)
		low, high := f.Low, f.High
		for s, at := range sorted {
			if at < mode {
				sorted[s] = low + math.Sqrt(at*rising)
			} else {
				sorted[s] = high - math.Sqrt((n-at)*falling)
			}
		}
	case Normal:
		d.tabulate()
		last := len(sorted) - 1
		lowest, highest := standardNormal(sorted[0]/n), -standardNormal((n-sorted[last])/n)
		below, above := (f.Estimate-f.Low)/z95, (f.High-f.Estimate)/z95
		from := d.bell[0]
		for s, to := range d.bell[1:] {
			z, sd := from+(sorted[s]-float64(s))*(to-from), above
			if z < 0 {
				sd = below
			}
			sorted[s] = f.Estimate + sd*z
			from = to
		}
		sorted[0], sorted[last] = f.Estimate+below*lowest, f.Estimate+above*highest
	case Counted:
		placeCounted(f, sorted)
	}
}

// tabulate fills bell, unless it is already there for that many strata.
func (d *drawer) tabulate() {
	n := len(d.sorted)
	if len(d.bell) == n+1 {
		return
	}
	d.bell = resize(d.bell, n+1)
	d.bell[0], d.bell[n] = 0, 0
	for i, j := 1, n-1; i <= j; i, j = i+1, j-1 {
		z := standardNormal(float64(i) / float64(n))
		d.bell[i], d.bell[j] = z, -z
	}
}

// standardNormal is the quantile of the standard normal distribution, for
// 0 < u ≤ ½.
func standardNormal(u float64) float64 { return math.Sqrt2 * math.Erfinv(2*u-1) }
