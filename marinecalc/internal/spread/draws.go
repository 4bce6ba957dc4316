// Stratified draws of the uncertain inputs.

package spread

import (
	"math"
	"sync"
)

// Draws are stratified (Latin hypercube sampling: McKay, Beckman and Conover,
// Technometrics 21 (1979) 239-245): with n trials the distribution of each
// factor is cut into n strata of equal probability, one value is drawn at
// random in each, and the values are shuffled over the trials, each factor by
// itself, or by the columns of an orthogonal array (array.go). Means and
// quantiles then settle with far fewer trials than plain draws need.

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

// deck is where the draws of one factor lie: for each trial a place among the
// strata, whatever the factor is. Nobody changes it once it is dealt.
type deck struct {
	at    []float64 // place among the strata, 0 … n; its whole part is the stratum
	group []uint8   // group of strata, 0 … groups-1
	even  bool      // it is the column of an array: each group of another column comes once in each group
	once  sync.Once
	bell  []float64 // the same as a value of the standard normal distribution, when first asked for
}

// deal shuffles the strata over n trials.
//
// One 64-bit random number serves one stratum: its upper half is the place in
// the stratum, its lower half the place in the shuffle. With at most 2^20
// strata every intermediate is exact, so that a place is strictly inside its
// stratum, and the shuffle is even to 1 part in 4000.
func deal(random stream, n, groups int) *deck {
	d := &deck{at: make([]float64, n), group: make([]uint8, n)}
	s := 0
	for g := range groups {
		for end := firstOf(g+1, n, groups); s < end; s++ {
			r := random.next()
			j := r & 0xffffffff * uint64(s+1) >> 32
			d.at[s], d.group[s] = d.at[j], d.group[j]
			d.at[j] = (float64(int64(s<<32)|int64(r>>32)) + 0.5) * 0x1p-32
			d.group[j] = uint8(g)
		}
	}
	return d
}

// normal is the deck as values of the standard normal distribution.
//
// They are taken as evenly spread inside each stratum but the two outermost,
// which makes the standard deviation 0.02 % too large with 1024 strata and
// 0.1 % with 100.
func (d *deck) normal(edges func() []float64) []float64 {
	d.once.Do(func() {
		edges, n := edges(), float64(len(d.at))
		bell := make([]float64, len(d.at))
		for t, at := range d.at {
			switch s := int(at); s {
			case 0:
				bell[t] = standardNormal(at / n)
			case len(d.at) - 1:
				bell[t] = -standardNormal((n - at) / n)
			default:
				bell[t] = edges[s] + (at-float64(s))*(edges[s+1]-edges[s])
			}
		}
		d.bell = bell
	})
	return d.bell
}

// place fills values with the draws of f.
func (d *deck) place(f *Factor, values []float64, edges func() []float64) {
	at := d.at[:len(values)]
	n := float64(len(values))
	width := f.High - f.Low
	switch f.Shape {
	case Rectangular:
		low, step := f.Low, width/n
		for t, at := range at {
			values[t] = low + at*step
		}
	case Triangular:
		mode := n * ((f.Estimate - f.Low) / width)
		rising, falling := width/n*(f.Estimate-f.Low), width/n*(f.High-f.Estimate)
		low, high := f.Low, f.High
		for t, at := range at {
			if at < mode {
				values[t] = low + math.Sqrt(at*rising)
			} else {
				values[t] = high - math.Sqrt((n-at)*falling)
			}
		}
	case Normal:
		below, above := (f.Estimate-f.Low)/z95, (f.High-f.Estimate)/z95
		for t, z := range d.normal(edges)[:len(values)] {
			sd := above
			if z < 0 {
				sd = below
			}
			values[t] = f.Estimate + sd*z
		}
	case Listed:
		for t, at := range at {
			values[t] = f.List.at(at / n)
		}
	case Counted:
		sorted := make([]float64, len(at))
		for _, at := range at {
			sorted[int(at)] = at
		}
		placeCounted(f, sorted)
		for t, at := range at {
			values[t] = sorted[int(at)]
		}
	}
}

// edges are the n+1 quantiles of the standard normal distribution at the edges
// of n strata; the outermost, which are infinite, are not used.
func edges(n int) []float64 {
	list := make([]float64, n+1)
	for i, j := 1, n-1; i <= j; i, j = i+1, j-1 {
		z := standardNormal(float64(i) / float64(n))
		list[i], list[j] = z, -z
	}
	return list
}

// standardNormal is the quantile of the standard normal distribution, for
// 0 < u ≤ ½.
func standardNormal(u float64) float64 { return math.Sqrt2 * math.Erfinv(2*u-1) }
