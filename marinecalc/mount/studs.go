// Moves held inside the travel of the studs.

package mount

import "math"

// line is a move of a rigid engine seen from one side: every point moves by
// slope times its distance forward of the coupling, plus what the coupling
// itself moves.
type line struct{ slope, at float64 }

func (l line) move(x float64) float64 { return l.slope*x + l.at }

// stud is one mount as the move sees it: where it is and how far it can go.
type stud struct{ x, least, most float64 }

// studs holds the mounts of one engine without allocating.
type studs struct {
	all [Most]stud
	n   int
}

// hair is what two lengths may differ by and still be the same.
const hair = 1e-12 // m

func (s *studs) allow(l line) bool {
	for _, one := range s.all[:s.n] {
		if m := l.move(one.x); m < one.least-hair || m > one.most+hair {
			return false
		}
	}
	return true
}

// nearest is the allowed move that leaves the least misalignment: the sum of
// the squares of the gap left across the coupling diameter and the offset
// left is smallest. Standing still is always allowed, so there is one.
//
// Allowed moves fill a convex polygon, and when the wanted one lies outside
// it, the nearest lies on a side that the wanted one oversteps: inside that
// side, or at a corner of it.
func (s *studs) nearest(want line, diameter float64) line {
	if s.allow(want) {
		return want
	}
	best, least := line{}, math.Inf(1)
	try := func(l line) {
		gap, offset := diameter*(l.slope-want.slope), l.at-want.at
		if left := gap*gap + offset*offset; left < least && s.allow(l) {
			best, least = l, left
		}
	}
	for i, one := range s.all[:s.n] {
		stop := one.least
		if m := want.move(one.x); m > one.most+hair {
			stop = one.most
		} else if m >= one.least-hair {
			continue
		}
		// The nearest point of this side, with the slope in gap over diameter.
		lean := one.x / diameter
		over := (want.move(one.x) - stop) / (lean*lean + 1)
		try(line{want.slope - over*lean/diameter, want.at - over})
		for j, other := range s.all[:s.n] {
			if reach := other.x - one.x; j != i && reach != 0 {
				for _, end := range [2]float64{other.least, other.most} {
					slope := (end - stop) / reach
					try(line{slope, stop - slope*one.x})
				}
			}
		}
	}
	return best
}

// pivoted is the allowed move that comes nearest to a slope, whatever becomes
// of the offset; among those the one with the least sum of squared moves.
//
// A slope can be had when for every pair of mounts the travel of both
// together is enough for it.
func (s *studs) pivoted(slope float64) line {
	for i, one := range s.all[:s.n] {
		for _, other := range s.all[:i] {
			back, front := one, other
			if back.x > front.x {
				back, front = other, one
			}
			if reach := front.x - back.x; reach > 0 {
				slope = min(slope, (front.most-back.least)/reach)
				slope = max(slope, (front.least-back.most)/reach)
			}
		}
	}
	mean, low, high := 0.0, math.Inf(-1), math.Inf(1)
	for _, one := range s.all[:s.n] {
		mean += one.x / float64(s.n)
		low = max(low, one.least-slope*one.x)
		high = min(high, one.most-slope*one.x)
	}
	return line{slope, min(max(-slope*mean, low), high)}
}
