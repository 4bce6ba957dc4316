package align

import "math"

// vector is a direction across the coupling: up toward 12 o'clock, right
// toward 3 o'clock, looking forward.
type vector struct{ up, right float64 }

func (v vector) size() float64 { return math.Hypot(v.up, v.right) }

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
	scatter float64 // root of the squared residuals over the readings to spare; NaN when there are none
	worst   float64 // size of the largest residual
	worstAt float64 // its clock position; NaN when there is none or several are as large
	closure float64 // see points.closure
}

// leastPivot is how much of a reading's weight must be left for each unknown
// once the others are taken out. Four readings round the clock leave 0.5;
// two shaft turns 90° apart leave 0.25 for the run-out, 35° apart 0.05.
const leastPivot = 0.05

// fit is the least squares solution; ok is false where the readings do not
// pin down the fixed part.
//
// The mean of each shaft turn is taken out first, from the readings and from
// the sines and cosines alike, which leaves the same solution for the four
// other unknowns as fitting all together (Frisch and Waugh, Econometrica 1,
// 1933).
func (p *points) fit() (f plane, ok bool) {
	var group [most]int
	f.turns = p.groups(&group)

	// Columns: fixed up, fixed right, turning up, turning right, reading.
	var rows [most][5]float64
	var centre [mostPlaces][5]float64
	var size [mostPlaces]float64
	for i, r := range p.all[:p.n] {
		rows[i] = columns(r)
		g := group[i]
		size[g]++
		for c, v := range rows[i] {
			centre[g][c] += v
		}
	}
	for g := range f.turns {
		for c := range centre[g] {
			centre[g][c] /= size[g]
		}
	}
	var normal [4][5]float64
	for i := range p.n {
		row, mid := &rows[i], &centre[group[i]]
		for c := range row {
			row[c] -= mid[c]
		}
		for a, v := range row[:4] {
			sums := &normal[a]
			for b := a; b < 5; b++ {
				sums[b] += v * row[b]
			}
		}
	}
	for a := range normal {
		for b := range normal[a] {
			normal[a][b] /= float64(p.n)
		}
	}
	unknowns := 2
	x, ok := solve(normal, 2)
	if !ok {
		return f, false
	}
	if f.turns > 1 {
		if both, told := solve(normal, 4); told {
			x, f.apart, unknowns = both, true, 4
		}
	}
	f.mean = centre[group[0]][4]
	for c := range x {
		f.mean -= x[c] * centre[group[0]][c]
	}

	var left [most]float64
	var sum float64
	for i := range p.n {
		left[i] = rows[i][4]
		for c := range x {
			left[i] -= x[c] * rows[i][c]
		}
		sum += left[i] * left[i]
	}
	f.scatter = math.NaN()
	if spare := p.n - f.turns - unknowns; spare > 0 {
		f.scatter = tidy(math.Sqrt(sum / float64(spare)))
	}
	f.mean = tidy(f.mean)
	f.worst, f.worstAt = p.farthest(left[:p.n])
	f.closure = p.closure(&group, f.turns)
	f.fixed, f.turning = vector{tidy(x[0]), tidy(x[1])}, vector{tidy(x[2]), tidy(x[3])}
	return f, true
}

// farthest gives the size of the largest residual, and where it is if only
// one is as large: of four readings a quarter apart all four always are.
func (p *points) farthest(left []float64) (size, at float64) {
	for _, v := range left {
		size = max(size, math.Abs(v))
	}
	if size = tidy(size); size == 0 {
		return 0, math.NaN()
	}
	as := 0
	for i, v := range left {
		if math.Abs(v) > size*(1-1e-6) {
			as++
			at = turnOf(p.all[i].clock)
		}
	}
	if as > 1 {
		at = math.NaN()
	}
	return size, at
}

// closure is by how much the sums of opposite readings of one shaft turn
// disagree at most; flat faces have none. NaN where no turn has two pairs.
func (p *points) closure(group *[most]int, turns int) float64 {
	apartBy := math.NaN()
	for g := range turns {
		least, largest, pairs := math.Inf(1), math.Inf(-1), 0
		for i, r := range p.all[:p.n] {
			if group[i] != g {
				continue
			}
			for j, q := range p.all[:i] {
				if group[j] == g && apart(r.clock, q.clock) > math.Pi-sameReading {
					least, largest = min(least, r.value+q.value), max(largest, r.value+q.value)
					pairs++
				}
			}
		}
		if pairs > 1 && !(apartBy >= largest-least) {
			apartBy = tidy(largest - least)
		}
	}
	return apartBy
}

func columns(r point) [5]float64 {
	sin, cos := math.Sincos(r.clock)
	turningSin, turningCos := sin, cos
	if r.turn != 0 {
		turningSin, turningCos = math.Sincos(r.clock - r.turn)
	}
	return [5]float64{cos, sin, turningCos, turningSin, r.value}
}

// groups numbers the shaft turns, those closer than samePlace being one.
func (p *points) groups(group *[most]int) (count int) {
	var first [mostPlaces]float64
	for i, r := range p.all[:p.n] {
		g := 0
		for g < count && apart(r.turn, first[g]) >= samePlace {
			g++
		}
		if g == count {
			first[g] = r.turn
			count++
		}
		group[i] = g
	}
	return count
}

// solve does the normal equations for the first n unknowns by Cholesky's
// method; the last column is the right side, only the upper triangle is read.
// ok is false where a pivot comes out under leastPivot.
func solve(m [4][5]float64, n int) (x [4]float64, ok bool) {
	for a := range n {
		for k := range a {
			m[a][a] -= m[k][a] * m[k][a]
		}
		if !(m[a][a] >= leastPivot) {
			return x, false
		}
		root := math.Sqrt(m[a][a])
		m[a][a] = root
		for b := a + 1; b < 5; b++ {
			if b >= n && b < 4 {
				continue
			}
			for k := range a {
				m[a][b] -= m[k][a] * m[k][b]
			}
			m[a][b] /= root
		}
	}
	for a := n - 1; a >= 0; a-- {
		x[a] = m[a][4]
		for b := a + 1; b < n; b++ {
			x[a] -= m[a][b] * x[b]
		}
		x[a] /= m[a][a]
	}
	return x, true
}
