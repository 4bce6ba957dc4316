// How probable it is that just these causes are at work.

package bayes

import (
	"math"
	"math/bits"
	"slices"
)

// mostExact is how many causes are taken together exactly.
const mostExact = 6

// priors works out the probability of sets of causes.
type priors struct {
	m     *Model
	stays []float64 // 1 − Arises
	none  float64   // Π stays
	keeps []float64 // Π over d of 1 − Brings[c][d]
	alone []float64 // keeps/stays·Arises: its part where no chain links it to the others
	links []bool    // by two causes: one brings on the other
}

func newPriors(m *Model) *priors {
	p := &priors{m: m, none: 1}
	for c, b := range m.Arises {
		p.stays = append(p.stays, 1-b)
		p.none *= 1 - b
		k := 1.0
		for _, l := range m.Brings[c] {
			k *= 1 - l
		}
		p.keeps, p.alone = append(p.keeps, k), append(p.alone, k*b/(1-b))
	}
	n := len(m.Arises)
	p.links = make([]bool, n*n)
	for c, row := range m.Brings {
		for d, l := range row {
			if l > 0 {
				p.links[c*n+d], p.links[d*n+c] = true, true
			}
		}
	}
	return p
}

// Together is the probability that exactly these causes are at work, before
// any answer. Each cause arises by itself or is brought on by one at work, all
// independent of one another: for links without a ring a noisy-or network, and
// in a ring one of its causes must have arisen by itself.
//
// P(S) = R(S) · Π over c outside of (1 − b_c) · Π over p in S of (1 − l_pc),
// where R(S), that all of S come to be at work by themselves and each other, is
// 1 less the same probabilities for every smaller set within S.
func (m *Model) Together(causes []int) float64 { return newPriors(m).of(causes) }

func (p *priors) of(causes []int) float64 {
	out := p.none
	if len(causes) > mostParted {
		return out * p.part(causes)
	}
	var part [mostParted]int
	for left := uint32(1)<<len(causes) - 1; left != 0; {
		first := bits.TrailingZeros32(left)
		part[0], left = causes[first], left&(left-1)
		n := 1
		for k := 0; k < n && left != 0; k++ { // what a chain links to part[k]
			row := p.links[part[k]*len(p.stays):]
			for rest := left; rest != 0; rest &= rest - 1 {
				i := bits.TrailingZeros32(rest)
				if row[causes[i]] {
					part[n], left = causes[i], left&^(1<<i)
					n++
				}
			}
		}
		if n == 1 {
			out *= p.alone[part[0]]
		} else {
			slices.Sort(part[:n])
			out *= p.part(part[:n])
		}
	}
	return out
}

// mostParted is how many causes are gone through for those that no chain links.
const mostParted = 16

// part is what causes that chains link among each other, and to none besides,
// make of the probability that nothing is at work.
func (p *priors) part(causes []int) float64 {
	out := 1.0
	for _, c := range causes {
		out *= p.keeps[c] / p.stays[c]
		for _, d := range causes {
			if l := p.m.Brings[c][d]; l > 0 {
				out /= 1 - l
			}
		}
	}
	switch n := len(causes); {
	case n > mostExact:
		return out * p.apart(causes)
	case n == 2:
		return out * p.reachTwo(causes[0], causes[1])
	case n == 3:
		return out * p.reachThree(causes[0], causes[1], causes[2])
	}
	return out * p.reach(causes)
}

// reachTwo is R(S) of two: both arose, or one did and brought the other on.
func (p *priors) reachTwo(a, b int) float64 {
	l := p.m.Brings
	stayA, stayB := p.stays[a], p.stays[b]
	return (1-stayA)*(1-stayB) + (1-stayA)*stayB*l[a][b] + stayA*(1-stayB)*l[b][a]
}

// reachThree is R(S) of three, by which of them arose.
func (p *priors) reachThree(a, b, c int) float64 {
	l := p.m.Brings
	sa, sb, sc := p.stays[a], p.stays[b], p.stays[c]
	two := func(x, y, z int) float64 { return 1 - (1-l[x][z])*(1-l[y][z]) } // z by x or y
	one := func(x, y, z int) float64 {                                      // y and z by x and each other
		return l[x][y]*l[x][z] + l[x][y]*(1-l[x][z])*l[y][z] + l[x][z]*(1-l[x][y])*l[z][y]
	}
	return (1-sa)*(1-sb)*(1-sc) +
		(1-sa)*(1-sb)*sc*two(a, b, c) + (1-sa)*sb*(1-sc)*two(a, c, b) + sa*(1-sb)*(1-sc)*two(b, c, a) +
		(1-sa)*sb*sc*one(a, b, c) + sa*(1-sb)*sc*one(b, a, c) + sa*sb*(1-sc)*one(c, a, b)
}

// apart takes each cause for itself: arisen, or brought on by any of the
// others: close enough beyond mostExact.
func (p *priors) apart(causes []int) float64 {
	all := 1.0
	for _, c := range causes {
		not := p.stays[c]
		for _, d := range causes {
			not *= 1 - p.m.Brings[d][c]
		}
		all *= 1 - not
	}
	return all
}

// reach is R(S), worked up from the smaller sets; bit i of a mask is causes[i].
func (p *priors) reach(causes []int) float64 {
	var r [1 << mostExact]float64
	var quiet [1 << mostExact][mostExact]float64 // [at work][c]: c does not come by it
	full := 1<<len(causes) - 1
	r[0] = 1
	for i, c := range causes {
		quiet[0][i] = p.stays[c]
	}
	for mask := 1; mask <= full; mask++ {
		last := 0
		for mask>>last&1 == 0 {
			last++
		}
		for i, c := range causes {
			quiet[mask][i] = quiet[mask&(mask-1)][i] * (1 - p.m.Brings[causes[last]][c])
		}
		rest := 1.0
		for sub := (mask - 1) & mask; ; sub = (sub - 1) & mask {
			term := r[sub]
			for i := range causes {
				if (mask&^sub)>>i&1 == 1 {
					term *= quiet[sub][i]
				}
			}
			rest -= term
			if sub == 0 {
				break
			}
		}
		r[mask] = math.Max(rest, 0)
	}
	return r[full]
}
