// How probable it is that just these causes are at work.

package bayes

import "math"

// mostExact is how many causes are taken together exactly.
const mostExact = 6

// priors works out the probability of sets of causes.
type priors struct {
	m     *Model
	stays []float64 // 1 − Arises
	none  float64   // Π stays
	keeps []float64 // Π over d of 1 − Brings[c][d]
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
		p.keeps = append(p.keeps, k)
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
	linked := false
	for _, c := range causes {
		out *= p.keeps[c] / p.stays[c]
		for _, d := range causes {
			if l := p.m.Brings[c][d]; l > 0 {
				out /= 1 - l
				linked = true
			}
		}
	}
	if !linked || len(causes) > mostExact {
		return out * p.apart(causes)
	}
	return out * p.reach(causes)
}

// apart takes each cause for itself: arisen, or brought on by any of the
// others. It is exact without links, and close enough beyond mostExact.
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
