// Nuts are turned by quarter flats: which ones leave least.

package mount

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// quarter is the smallest part of a turn that a hand sets on a nut.
const quarter = 1.0 / 24

// lift is what a mount raises the engine by for each length its foot is
// driven along the stud. An upright stud gives all of it. A leaning one pushes
// by k·t along its axis against the mount's stiffness up and down, k·cos²φ +
// χ·k·sin²φ, while the mount across the engine takes the push sideways
// (statics, as Load): cos φ/(cos²φ + χ·sin²φ), with the stiffness square to
// the axis χ times that along it.
func (m *Mount) lift(sidewaysRatio quantity.Ratio) float64 {
	if m.Inclination == 0 || m.Starboard == 0 {
		return 1
	}
	sin, cos := math.Sincos(float64(m.Inclination))
	return cos / (cos*cos + m.squareTo(sidewaysRatio)*sin*sin)
}

// squareTo is a mount's stiffness square to its axis over that along it.
func (m *Mount) squareTo(sidewaysRatio quantity.Ratio) float64 {
	if m.Stiffness > 0 && m.StiffnessSideways > 0 {
		return float64(m.StiffnessSideways / m.Stiffness)
	}
	return float64(sidewaysRatio)
}

// settled is how the engine comes to stand when its feet are set by at: the
// line that is pressed least off it, by the mounts' stiffness where all of
// them give it. The load on a mount changes with what is left.
func settled(mounts []Mount, at *[Most]float64) line {
	known := true
	for i := range mounts {
		known = known && mounts[i].Stiffness > 0
	}
	var sum, x, y, xx, xy float64
	for i := range mounts {
		m := &mounts[i]
		k := 1.0
		if known {
			k = float64(m.Stiffness)
		}
		forward, up := float64(m.Forward), at[i]
		kx := k * forward
		sum, x, y, xx, xy = sum+k, x+kx, y+k*up, xx+kx*forward, xy+kx*up
	}
	slope := (sum*xy - x*y) / (sum*xx - x*x)
	return line{slope, (y - slope*x) / sum}
}

// station is mounts abreast of each other, whose nuts are turned alike so that
// each keeps its share of the weight.
type station struct {
	stud
	step     float64 // lift of a quarter flat; 0: the thread is not known, and any lift can be set
	quarters int     // that its nuts are turned
	lifted   float64
}

func (s *station) set(quarters int) {
	s.quarters, s.lifted = quarters, float64(quarters)*s.step
}

// nearest sets the quarter flats that come nearest to a lift, inside the
// travel.
func (s *station) nearest(lift float64) {
	lift = min(max(lift, s.least), s.most)
	if s.step == 0 {
		s.lifted = lift
		return
	}
	n := int(math.Round(lift / s.step))
	for float64(n)*s.step > s.most+hair {
		n--
	}
	for float64(n)*s.step < s.least-hair {
		n++
	}
	if float64(n)*s.step > s.most+hair {
		n = 0 // less travel than a quarter flat: standing still is always allowed
	}
	s.set(n)
}

func (s *station) allows(quarters int) bool {
	lift := float64(quarters) * s.step
	return lift >= s.least-hair && lift <= s.most+hair
}

// nuts are the stations of one engine, without allocating.
type nuts struct {
	all    [Most]station
	n      int
	of     [Most]int // the station of each mount
	mounts []Mount
}

// abreast is how far apart along the shaft mounts of one station may stand.
const abreast = 2e-3 // m

func (in *MovesInput) nuts(upright *studs, all *nuts) {
	all.mounts = in.Mounts
next:
	for i := range in.Mounts {
		m, one := &in.Mounts[i], upright.all[i]
		step := float64(m.ThreadPitch) * quarter * m.lift(in.SidewaysRatio)
		for s := range all.n {
			if to := &all.all[s]; step > 0 && math.Abs(to.x-one.x) < abreast && math.Abs(to.step-step) < 1e-9 {
				to.least, to.most = max(to.least, one.least), min(to.most, one.most)
				all.of[i] = s
				continue next
			}
		}
		all.all[all.n], all.of[i] = station{stud: one, step: step}, all.n
		all.n++
	}
}

func (a *nuts) line() line {
	var lifted [Most]float64
	for i := range a.mounts {
		lifted[i] = a.all[a.of[i]].lifted
	}
	return settled(a.mounts, &lifted)
}

// window is how many quarter flats either side of the nearest are tried at the
// two ends of the engine.
const window = 3

// choose turns the nuts so that the least is left of the wanted move, gap
// across the diameter and offset counted alike. Nearest quarter flats one by
// one are not it: what one nut leaves another can take up. The foremost and
// the aftmost nuts are tried together round the nearest, those between follow;
// then each is tried a quarter flat up and down until nothing improves.
func (a *nuts) choose(want, ideal line, diameter float64) {
	aft, fore := 0, 0
	for s := range a.n {
		if a.all[s].x < a.all[aft].x {
			aft = s
		}
		if a.all[s].x > a.all[fore].x {
			fore = s
		}
	}
	for s := range a.n {
		a.all[s].nearest(ideal.move(a.all[s].x))
	}
	left := func() float64 {
		l := a.line()
		gap, offset := diameter*(l.slope-want.slope), l.at-want.at
		sum := gap*gap + offset*offset
		for s := range a.n { // of moves that leave as much, those nearest to the line
			off := a.all[s].lifted - ideal.move(a.all[s].x)
			sum += 1e-6 * off * off
		}
		return sum
	}
	best, least := *a, left()
	keep := func() {
		if l := left(); l < least*(1-1e-12) {
			best, least = *a, l
		}
	}
	back, front := &a.all[aft], &a.all[fore]
	firstBack, firstFront := back.quarters, front.quarters
	for i := -window; i <= window; i++ {
		if back.step > 0 && !back.allows(firstBack+i) || back.step == 0 && i != 0 {
			continue
		}
		for j := -window; j <= window; j++ {
			if front.step > 0 && !front.allows(firstFront+j) || front.step == 0 && j != 0 {
				continue
			}
			if back.step > 0 {
				back.set(firstBack + i)
			}
			if front.step > 0 {
				front.set(firstFront + j)
			}
			slope := (front.lifted - back.lifted) / (front.x - back.x)
			through := line{slope, back.lifted - slope*back.x}
			for s := range a.n {
				if s != aft && s != fore {
					a.all[s].nearest(through.move(a.all[s].x))
				}
			}
			keep()
		}
	}
	for better := true; better; {
		before := least
		for s := range a.n {
			for _, by := range [2]int{-1, 1} {
				*a = best
				if one := &a.all[s]; one.step > 0 && one.allows(one.quarters+by) {
					one.set(one.quarters + by)
					keep()
				}
			}
		}
		better = least < before
	}
	*a = best
}
