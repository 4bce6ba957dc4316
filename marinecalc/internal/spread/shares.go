// Shares of the inputs in the spread of a result.

package spread

// tally counts trials by group of strata.
type tally [maxGroups]int32

// evenly is the tally of n trials, one to each stratum.
func evenly(n, groups int) (c tally) {
	for g := range groups {
		c[g] = int32(firstOf(g+1, n, groups) - firstOf(g, n, groups))
	}
	return c
}

// lanes is how many factors sums takes at a time.
const lanes = 4

// sums adds a result up by group of strata, for a few factors at a time.
type sums [lanes][maxGroups]float64

// add adds the results v, less their mean, to the group of each trial by each
// of the factors, four trials a round (see scatter).
func (s *sums) add(groups [lanes][]uint8, v []float64, mean float64) {
	s0, s1, s2, s3 := &s[0], &s[1], &s[2], &s[3]
	g0, g1, g2, g3 := groups[0], groups[1], groups[2], groups[3]
	t := 0
	for ; t <= len(v)-4; t += 4 {
		y := (*[4]float64)(v[t:])
		a, b, c, d := (*[4]uint8)(g0[t:]), (*[4]uint8)(g1[t:]), (*[4]uint8)(g2[t:]), (*[4]uint8)(g3[t:])
		off := y[0] - mean
		s0[a[0]%maxGroups] += off
		s1[b[0]%maxGroups] += off
		s2[c[0]%maxGroups] += off
		s3[d[0]%maxGroups] += off
		off = y[1] - mean
		s0[a[1]%maxGroups] += off
		s1[b[1]%maxGroups] += off
		s2[c[1]%maxGroups] += off
		s3[d[1]%maxGroups] += off
		off = y[2] - mean
		s0[a[2]%maxGroups] += off
		s1[b[2]%maxGroups] += off
		s2[c[2]%maxGroups] += off
		s3[d[2]%maxGroups] += off
		off = y[3] - mean
		s0[a[3]%maxGroups] += off
		s1[b[3]%maxGroups] += off
		s2[c[3]%maxGroups] += off
		s3[d[3]%maxGroups] += off
	}
	for ; t < len(v); t++ {
		off := v[t] - mean
		s0[g0[t]%maxGroups] += off
		s1[g1[t]%maxGroups] += off
		s2[g2[t]%maxGroups] += off
		s3[g3[t]%maxGroups] += off
	}
}

// share is the part of the variance of a result that the draws of one factor
// explain by themselves: the first-order Sobol index, estimated from the trials
// at hand by grouping them by the stratum of the factor and comparing the
// variance between groups with that inside them (correlation ratio; Saltelli
// et al., Global Sensitivity Analysis, Wiley 2008). The part of the between
// variance that chance alone gives is taken off (one-way analysis of variance
// with random effects), and the answer is held to 0 … 1.
//
// With 4096 trials its standard error is about 0.003 for a factor that does
// nothing. A normal factor reads at most 0.006 low, a rectangular one 0.0003:
// what it does inside a group of strata is counted to the rest.
//
// sums and counts are by group; total is the sum of squares of the result
// about the value from which sums are taken, its mean.
func share(sums *[maxGroups]float64, counts *tally, n int, total float64) float64 {
	groups := 0
	between, squares := 0.0, 0.0
	for b := range counts {
		if counts[b] == 0 {
			continue
		}
		groups++
		m := float64(counts[b])
		between += sums[b] * sums[b] / m
		squares += m * m
	}
	if groups < 2 || n <= groups || !(total > 0) {
		return 0
	}
	all := float64(n)
	perGroup := (all - squares/all) / float64(groups-1)
	inside := (total - between) / (all - float64(groups))
	explained := (between/float64(groups-1) - inside) / perGroup
	part := explained / (explained + inside)
	if !(part > 0) {
		return 0
	}
	return min(part, 1)
}
