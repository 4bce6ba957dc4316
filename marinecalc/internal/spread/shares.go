// Shares of the inputs in the spread of a result.

package spread

import "math"

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

// variance is the analysis of variance of a result by the groups of one factor.
type variance struct {
	between float64 // sum of squares between groups
	groups  int     // that hold any trial
	each    float64 // trials to a group, where they are not alike as n0 of the random-effects model
}

// analyse takes sums, the results of each group less the mean of all, apart.
func analyse(sums *[maxGroups]float64, counts *tally, n int) (a variance) {
	squares := 0.0
	for g := range counts {
		if counts[g] == 0 {
			continue
		}
		a.groups++
		m := float64(counts[g])
		a.between += sums[g] * sums[g] / m
		squares += m * m
	}
	a.each = (float64(n) - squares/float64(n)) / float64(a.groups-1)
	return a
}

// inside is the mean square of n trials inside the groups; total is the sum of
// squares of all.
func (a *variance) inside(n int, total float64) float64 {
	return max(total-a.between, 0) / float64(n-a.groups)
}

// share is the part of the variance of a result that the draws of one factor
// explain by themselves: the first-order Sobol index, estimated from the trials
// at hand by grouping them by the stratum of the factor and comparing the
// variance between groups with that inside them (correlation ratio; Saltelli
// et al., Global Sensitivity Analysis, Wiley 2008). The part of the between
// variance that chance alone gives is taken off (one-way analysis of variance
// with random effects); what chance alone may give too, within two of its
// standard deviations, is no share.
//
// chance is the mean square of chance: that inside the groups where draws are
// shuffled, and what no factor explains where they are columns of an array.
//
// With 1024 trials its standard error is about 0.002 for a factor that does
// nothing. A normal factor reads at most 0.012 low, a rectangular one 0.001:
// what it does inside a group of strata is counted to the rest.
func (a *variance) share(n int, total, chance float64) float64 {
	if a.groups < 2 || n <= a.groups || !(total > 0) {
		return 0
	}
	free := float64(a.groups - 1)
	explained := a.between/free - chance
	if !(explained > 2*chance*math.Sqrt(2/free)) {
		return 0
	}
	explained /= a.each
	return min(explained/(explained+a.inside(n, total)), 1)
}

// chances is the mean square that chance alone leaves between the groups of a
// column of an array, from the mean square inside them. All columns are taken
// together, since each explains what no other does (analysis of variance of an
// orthogonal array: Hedayat, Sloane and Stufken, Orthogonal Arrays, 1999, 11.3,
// from memory). Trials that are missing of the array are missing by chance.
func chances(list []variance, n, missing int, total float64) func(inside float64) float64 {
	left, free := total, n-1
	for k := range list {
		left -= list[k].between
		free -= list[k].groups - 1
	}
	lost, rest := float64(missing)/float64(n+missing), 0.0
	if free > 0 {
		rest = max(left, 0) / float64(free)
	}
	return func(inside float64) float64 { return lost*inside + (1-lost)*rest }
}
