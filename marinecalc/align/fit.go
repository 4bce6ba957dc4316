// The least-squares plane through the readings.

package align

import (
	"math"
	"slices"
)

// vector is a direction across the coupling: up toward 12 o'clock, right
// toward 3 o'clock, looking forward.
type vector struct{ up, right float64 }

func (v vector) size() float64 { return math.Sqrt(v.up*v.up + v.right*v.right) }

// clock is the direction as an angle from the top, 0 to 2π.
func (v vector) clock() float64 {
	a := math.Atan2(v.right, v.up)
	if v.right < 0 {
		a += 2 * math.Pi
	}
	return a
}

// tidy makes 0 of a length that is nothing but rounding, so that a direction
// does not hang on the last digit.
func tidy(metres float64) float64 {
	if math.Abs(metres) < 1e-12 {
		return 0
	}
	return metres
}

func (v vector) tidied() vector { return vector{tidy(v.up), tidy(v.right)} }

// at is what the vector gives at a clock position.
func (v vector) at(clock float64) float64 {
	sin, cos := math.Sincos(clock)
	return v.up*cos + v.right*sin
}

// plane is the pair of flat faces that fits the readings best:
// value = mean of that shaft turn + fixed.at(clock) + turning.at(clock - turn).
type plane struct {
	fixed   vector // stands in the boat: misalignment
	turning vector // turns with the shaft: run-out; only where apart
	apart   bool   // the readings tell the two apart
	turns   int    // different shaft turns
	mean    float64
	sum     float64 // of the squared residuals
	spare   int     // readings less unknowns
	scatter float64 // root of sum over spare; NaN when there are none to spare
	chi     float64 // sum of the squared residuals, each over its gauge's; NaN where a gauge is not known
	worst   float64 // size of the largest residual
	worstAt float64 // its clock position; NaN when there is none or several are as large
	closure float64 // see points.closure
	checked bool    // a misreading of any place could show: there are more of them than unknowns
}

// leastPivot is how much of a reading's weight must be left for each unknown
// once the others are taken out. Four readings round the clock leave 0.5;
// two shaft turns 90° apart leave 0.25 for the run-out, 35° apart 0.05.
const leastPivot = 0.05

// row is what one reading says of the unknowns.
type row struct{ value, up, right, turningUp, turningRight float64 }

// products is the sum over all readings of each row times itself.
type products struct {
	upUp, upRight, rightRight, upValue, rightValue float64 // of the fixed part

	turningUpUp, turningUpRight, turningRightRight float64
	upTurningUp, upTurningRight                    float64
	rightTurningUp, rightTurningRight              float64
	turningUpValue, turningRightValue              float64
}

// fit finds the least squares solution f, which comes in empty; ok is false
// where the readings do not pin down the fixed part. Points known have their
// sines already.
//
// The mean of each shaft turn is taken out first, from the readings and from
// the sines and cosines alike, which leaves the same solution for the four
// other unknowns as fitting all together (Frisch and Waugh, Econometrica 1,
// 1933).
func (p points) fit(f *plane, known points) (ok bool) {
	var mean [mostPlaces]row
	f.turns = p.fillRows(known, &mean)
	sums := p.centred(&mean, f.turns > 1)
	if !f.solve(&sums, len(p)) {
		return false
	}
	f.mean = tidy(mean[0].value - f.of(&mean[0]))
	return true
}

// solve finds what the products of so many readings give.
func (f *plane) solve(sums *products, readings int) (ok bool) {
	least := leastPivot * float64(readings)
	if f.fixed, ok = sums.fixed(least); !ok {
		return false
	}
	unknowns := 2
	if f.turns > 1 {
		if fixed, turning, told := sums.both(least); told {
			f.fixed, f.turning, f.apart, unknowns = fixed, turning, true, 4
		}
	}
	f.fixed, f.turning = f.fixed.tidied(), f.turning.tidied()
	f.spare = readings - f.turns - unknowns
	return true
}

// residuals finds what the fit leaves of each reading.
func (p points) residuals(f *plane) {
	f.sum, f.chi = 0, 0
	for i := range p {
		r := &p[i].row
		r.value -= f.of(r) // what is left
		square := r.value * r.value
		f.sum += square
		if sd := p[i].sd; sd > 0 {
			f.chi += square / (sd * sd)
		} else {
			f.chi = math.NaN()
		}
	}
}

// inspect looks at what is left of the readings.
func (p points) inspect(f *plane) {
	p.residuals(f)
	f.scatter = math.NaN()
	if f.spare > 0 {
		f.scatter = tidy(math.Sqrt(f.sum / float64(f.spare)))
	}
	f.worst, f.worstAt = p.farthest()
	f.closure = p.closure(f.turns)
	f.checked = f.spare > p.repeats()
}

// repeats counts the readings that were taken before at the same place: they tell
// how well one place is read, and nothing of another.
func (p points) repeats() (n int) {
	for i := range p {
		before := func(q point) bool {
			return apart(q.clock, p[i].clock) < sameReading && apart(q.turn, p[i].turn) < sameReading
		}
		if slices.ContainsFunc(p[:i], before) {
			n++
		}
	}
	return n
}

// of is what the fixed and the turning part give for a row.
func (f *plane) of(r *row) float64 {
	return f.fixed.up*r.up + f.fixed.right*r.right + f.turning.up*r.turningUp + f.turning.right*r.turningRight
}

// fillRows writes down what each reading says, numbers the shaft turns, those
// closer than samePlace being one, and gives the mean of each.
func (p points) fillRows(known points, mean *[mostPlaces]row) (turns int) {
	var turn, count [mostPlaces]float64
	last, turnSin, turnCos := 0.0, 0.0, 1.0
	for i := range p {
		r := &p[i]
		r.sin, r.cos = sines(r.clock, known, p[:i])
		if r.turn != last {
			last = r.turn
			turnSin, turnCos = math.Sincos(last)
		}
		r.row.value, r.row.up, r.row.right = r.value, r.cos, r.sin
		r.row.turningUp = r.cos*turnCos + r.sin*turnSin    // cosine of clock - turn
		r.row.turningRight = r.sin*turnCos - r.cos*turnSin // sine of it
		g := 0
		if i > 0 && r.turn == p[i-1].turn {
			g = p[i-1].group // readings mostly come turn by turn
		}
		for g < turns && r.turn != turn[g] && apart(r.turn, turn[g]) >= samePlace {
			g++
		}
		if g == turns {
			turn[g] = r.turn
			turns++
		}
		r.group = g
		count[g]++
		m := &mean[g]
		m.value += r.row.value
		m.up += r.row.up
		m.right += r.row.right
		m.turningUp += r.row.turningUp
		m.turningRight += r.row.turningRight
	}
	for g := range turns {
		m, n := &mean[g], count[g]
		m.value /= n
		m.up /= n
		m.right /= n
		m.turningUp /= n
		m.turningRight /= n
	}
	return turns
}

// sines gives sine and cosine of a clock position. They are slow, so those of
// a point at the same position are taken where there is one.
func sines(clock float64, known, more points) (sin, cos float64) {
	for i := range known {
		if known[i].clock == clock {
			return known[i].sin, known[i].cos
		}
	}
	for i := range more {
		if more[i].clock == clock {
			return more[i].sin, more[i].cos
		}
	}
	return math.Sincos(clock)
}

// centred takes the means out of the rows and adds up their products, those
// of the turning part only where asked for.
func (p points) centred(mean *[mostPlaces]row, turning bool) (s products) {
	for i := range p {
		r, m := &p[i].row, &mean[p[i].group]
		value, up, right := r.value-m.value, r.up-m.up, r.right-m.right
		r.value, r.up, r.right = value, up, right
		s.upUp += up * up
		s.upRight += up * right
		s.rightRight += right * right
		s.upValue += up * value
		s.rightValue += right * value
		if !turning {
			continue
		}
		turningUp, turningRight := r.turningUp-m.turningUp, r.turningRight-m.turningRight
		r.turningUp, r.turningRight = turningUp, turningRight
		s.turningUpUp += turningUp * turningUp
		s.turningUpRight += turningUp * turningRight
		s.turningRightRight += turningRight * turningRight
		s.upTurningUp += up * turningUp
		s.upTurningRight += up * turningRight
		s.rightTurningUp += right * turningUp
		s.rightTurningRight += right * turningRight
		s.turningUpValue += turningUp * value
		s.turningRightValue += turningRight * value
	}
	return s
}

// fixed solves for the fixed part alone. ok is false where a pivot of the
// normal equations comes out under least.
func (s *products) fixed(least float64) (v vector, ok bool) {
	if !(s.upUp >= least) {
		return v, false
	}
	left := s.rightRight - s.upRight*s.upRight/s.upUp
	if !(left >= least) {
		return v, false
	}
	v.right = (s.rightValue - s.upRight*s.upValue/s.upUp) / left
	v.up = (s.upValue - s.upRight*v.right) / s.upUp
	return v, true
}

// both solves for the fixed and the turning part together.
func (s *products) both(least float64) (fixed, turning vector, ok bool) {
	x, ok := solve([4][5]float64{
		{s.upUp, s.upRight, s.upTurningUp, s.upTurningRight, s.upValue},
		{1: s.rightRight, s.rightTurningUp, s.rightTurningRight, s.rightValue},
		{2: s.turningUpUp, s.turningUpRight, s.turningUpValue},
		{3: s.turningRightRight, s.turningRightValue},
	}, least)
	return vector{x[0], x[1]}, vector{x[2], x[3]}, ok
}

// solve does the normal equations by Cholesky's method; the last column is
// the right side, only the upper triangle is read. ok is false where a pivot
// comes out under least.
func solve(m [4][5]float64, least float64) (x [4]float64, ok bool) {
	for a := range m {
		for k := range a {
			m[a][a] -= m[k][a] * m[k][a]
		}
		if !(m[a][a] >= least) {
			return x, false
		}
		root := math.Sqrt(m[a][a])
		m[a][a] = root
		for b := a + 1; b < 5; b++ {
			for k := range a {
				m[a][b] -= m[k][a] * m[k][b]
			}
			m[a][b] /= root
		}
	}
	for a := len(m) - 1; a >= 0; a-- {
		x[a] = m[a][4]
		for b := a + 1; b < len(m); b++ {
			x[a] -= m[a][b] * x[b]
		}
		x[a] /= m[a][a]
	}
	return x, true
}

// farthest gives the size of the largest of what is left, and where it is if only
// one is as large: of four readings a quarter apart all four always are.
func (p points) farthest() (size, at float64) {
	for i := range p {
		if v := math.Abs(p[i].row.value); v > size {
			size = v
		}
	}
	if size = tidy(size); size == 0 {
		return 0, math.NaN()
	}
	as := 0
	for i := range p {
		if math.Abs(p[i].row.value) > size*(1-1e-6) {
			as++
			at = turnOf(p[i].clock)
		}
	}
	if as > 1 {
		at = math.NaN()
	}
	return size, at
}

// closure is by how much the sums of opposite readings of one shaft turn
// disagree at most; flat faces have none. NaN where no turn has two pairs across
// one another: a pair that is read again tells nothing of the rest.
func (p points) closure(turns int) float64 {
	apartBy := math.NaN()
	for g := range turns {
		least, largest, pairs := math.Inf(1), math.Inf(-1), 0
		first, across := (*point)(nil), false // pairs that are no repeat of the first
		for i := range p {
			r := &p[i]
			if r.group != g {
				continue
			}
			for j := range i {
				q := &p[j]
				if q.group != g || r.sin*q.sin+r.cos*q.cos > opposite {
					continue
				}
				pairs++
				across = across || pairs > 1 && math.Abs(r.sin*first.cos-r.cos*first.sin) > sinSamePlace
				if pairs == 1 {
					first = r
				}
				sum := r.value + q.value
				if sum < least {
					least = sum
				}
				if sum > largest {
					largest = sum
				}
			}
		}
		if across && !(apartBy >= largest-least) {
			apartBy = tidy(largest - least)
		}
	}
	return apartBy
}

// opposite is the cosine, of the arc between them, from which down two clock
// positions face each other: all but sameReading from half a turn apart.
var opposite = -math.Cos(sameReading)

// sinSamePlace is the sine of the arc from which on two pairs lie across one another.
var sinSamePlace = math.Sin(samePlace)
