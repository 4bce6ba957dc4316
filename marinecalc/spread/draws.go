package spread

import "math/rand/v2"

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

// stream gives the random numbers of one factor: a PCG generator seeded from
// the plan's seed and the factor's place, so that the draws of a factor do not
// depend on what the other factors are.
func stream(pcg *rand.PCG, seed uint64, place int) {
	state := mix(seed) + uint64(place)
	pcg.Seed(mix(state), mix(^state))
}

// mix spreads close seeds far apart (finaliser of SplitMix64: Steele, Lea and
// Flood, OOPSLA 2014).
func mix(z uint64) uint64 {
	z += 0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// drawFactor fills values with the shuffled stratified draws of f and group
// with the group of strata (0 … groups-1) each came from.
//
// One 64-bit random number serves one stratum: its upper half is the place in
// the stratum, its lower half the place in the shuffle. With at most 2^20
// strata every intermediate is exact, so that 0 < u < 1 strictly, and the
// shuffle is even to 1 part in 4000.
func drawFactor(f *Factor, pcg *rand.PCG, values []float64, group []uint8, groups int) {
	n := len(values)
	group = group[:n]
	for s := range n {
		r := pcg.Uint64()
		within := (float64(r>>32) + 0.5) * 0x1p-32
		v := f.quantile((float64(s) + within) / float64(n))
		j := int(r & 0xffffffff * uint64(s+1) >> 32)
		values[s], group[s] = values[j], group[j]
		values[j], group[j] = v, uint8(s*groups/n)
	}
}
