package verdict

import "math"

// turnSteps is how often the way on which a verdict turns may be halved.
const turnSteps = 7

// search finds where on a way a word is told no more. Halving it seven times
// would do; where what is left of the limit without trials, with what the trials
// took off it where it was tried last, comes to nothing is nearer, so that three
// or four tries do, and each is 128 runs of the calculation. Finer than that it
// need not be: it is shown to two figures.
type search struct {
	in, out, last point
	left          func(at float64) float64 // of the limit, without trials; nil where there are none
}

// point is where a word was tried, and what is then spare of what telling it
// asks for: below nothing where it is not told, NaN where that is not known.
type point struct{ at, spare float64 }

// edge is the farthest place from in to out at which the word is told, to a
// 128th of the way.
func (s *search) edge(told func(at float64) (bool, float64)) float64 {
	fine := math.Abs(s.out.at-s.in.at) / (1 << turnSteps)
	s.last = s.in
	long := 0 // how often in turn less than half was cut off
	for way := math.Abs(s.out.at - s.in.at); way > fine*1.001; {
		t := 0.5
		if s.left != nil && long < 3 {
			t = s.guess(fine / way)
		}
		s.last.at = s.in.at + t*(s.out.at-s.in.at)
		var ok bool
		if ok, s.last.spare = told(s.last.at); ok {
			s.in = s.last
		} else {
			s.out = s.last
		}
		now := math.Abs(s.out.at - s.in.at)
		if long++; now <= way/2 {
			long = 0
		}
		way = now
	}
	return s.in.at
}

// guess is the part of the way from in to out at which the spare should come to
// nothing, and a little beyond that, so that the longer end of the way is cut
// off. It is the middle where that cannot be said. fine is the part that is to
// be found.
func (s *search) guess(fine float64) float64 {
	off := s.left(s.last.at) - s.last.spare
	at := func(t float64) float64 { return s.left(s.in.at+t*(s.out.at-s.in.at)) - off }
	switch first, last := at(0), at(1); {
	case s.last.at == s.in.at && first <= 0 && last < 0: // told with nothing to spare: it turns here
		return fine
	case s.last.at == s.out.at && first > 0 && last >= 0: // not told, with nothing wanting
		return 1 - fine
	case !(first > 0) || !(last < 0):
		return 0.5
	}
	in, out := 0.0, 1.0
	for out-in > fine/4 {
		if middle := (in + out) / 2; at(middle) > 0 {
			in = middle
		} else {
			out = middle
		}
	}
	if in < 0.5 {
		return in + max(fine/2, in/8)
	}
	return in - max(fine/2, (1-in)/8)
}
