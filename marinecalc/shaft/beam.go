// A shaft as a beam of finite elements.

package shaft

import "math"

// beam is a shaft cut into elements of constant section between nodes, each
// element with the cubic deflection of a loaded beam (Hermite), so that point
// loads at nodes give the exact deflection at nodes. Its mass is lumped at
// the nodes: half of each element to either end. Bearings are points that
// hold the deflection at zero and let the shaft turn.
type beam struct {
	nodes int
	x     [mostNodes]float64 // from the forward end
	own   [mostNodes]float64 // mass of the shaft itself
	hung  [mostNodes]float64 // masses on it
	held  [mostNodes]bool
	// lower is the Cholesky factor of the stiffness matrix, whose rows are
	// deflection and slope of one node after the other; it reaches 3 to the
	// left of the diagonal, lower[i][3], which factor turns into its
	// reciprocal. Three empty rows below save asking for the end.
	lower [2*mostNodes + 3][4]float64
	v     [2*mostNodes + 6]float64 // what bend solves for, three zeros before and behind
}

const (
	mostNodes  = 128
	inASpan    = 5     // elements in the longest distance between neighbouring bearings
	sameNode   = 1e-3  // of the shaft's length: nodes nearer than this are one, as far shorter elements lose digits
	mostRounds = 400   // of the iteration for a mode
	lost       = 1e-11 // what is left of a pivot when too many digits are gone
	settled    = 1e-7  // change of 1/ω² from one round to the next
)

// addElement adds the stiffness of one element between nodes i and i+1.
func (b *beam) addElement(i int, ei float64) {
	h := b.x[i+1] - b.x[i]
	k := ei / (h * h * h)
	element := [4][4]float64{
		{12 * k, 6 * k * h, -12 * k, 6 * k * h},
		{6 * k * h, 4 * k * h * h, -6 * k * h, 2 * k * h * h},
		{-12 * k, -6 * k * h, 12 * k, -6 * k * h},
		{6 * k * h, 2 * k * h * h, -6 * k * h, 4 * k * h * h},
	}
	for row := range 4 {
		for col := 0; col <= row; col++ {
			b.lower[2*i+row][3+col-row] += element[row][col]
		}
	}
}

// hold takes the deflection of held nodes out of the matrix.
func (b *beam) hold() {
	for n := range b.nodes {
		if !b.held[n] {
			continue
		}
		i := 2 * n
		b.lower[i] = [4]float64{0, 0, 0, 1}
		for row := i + 1; row <= min(i+3, 2*b.nodes-1); row++ {
			b.lower[row][3+i-row] = 0
		}
	}
}

// factor turns the matrix into its Cholesky factor. With two bearings apart it
// is positive definite; it fails when stiff and soft lengths differ so much
// that the digits of the soft ones are lost.
func (b *beam) factor() bool {
	for i := range 2 * b.nodes {
		full := b.lower[i][3]
		for j := max(0, i-3); j <= i; j++ {
			sum := b.lower[i][3+j-i]
			for k := max(0, i-3); k < j; k++ {
				sum -= b.lower[i][3+k-i] * b.lower[j][3+k-j]
			}
			if i == j {
				if !(sum > lost*full) {
					return false
				}
				b.lower[i][3] = 1 / math.Sqrt(sum)
			} else {
				b.lower[i][3+j-i] = sum * b.lower[j][3]
			}
		}
	}
	return true
}

// bend finds the deflections under forces at the nodes.
func (b *beam) bend(force, deflection *[mostNodes]float64) {
	v, n := &b.v, 2*b.nodes
	for i := 0; i < n; i++ {
		sum, row := 0.0, &b.lower[i]
		if i%2 == 0 && !b.held[i/2] {
			sum = force[i/2]
		}
		v[i+3] = (sum - row[0]*v[i] - row[1]*v[i+1] - row[2]*v[i+2]) * row[3]
	}
	for i := n - 1; i >= 0; i-- {
		v[i+3] = (v[i+3] - b.lower[i+1][2]*v[i+4] - b.lower[i+2][1]*v[i+5] - b.lower[i+3][0]*v[i+6]) * b.lower[i][3]
		if i%2 == 0 {
			deflection[i/2] = v[i+3]
		}
	}
}

// lowest finds the first mode of the masses m by iteration (Stodola) and
// returns 1/ω²; mode holds its shape. It begins with the spans bent to
// opposite sides, one end more than the other, so that no symmetry hides the
// first mode.
func (b *beam) lowest(m, mode *[mostNodes]float64) float64 {
	side, length := 1.0, b.x[b.nodes-1]
	for i := range b.nodes {
		if b.held[i] {
			side = -side
		}
		mode[i] = side * (1 + 0.3*b.x[i]/length)
	}
	var force [mostNodes]float64
	flex := 0.0
	for range mostRounds {
		for i := range b.nodes {
			force[i] = m[i] * mode[i]
		}
		b.bend(&force, mode)
		work, motion, largest := 0.0, 0.0, 0.0
		for i := range b.nodes {
			work += force[i] * mode[i]
			motion += m[i] * mode[i] * mode[i]
			largest = max(largest, math.Abs(mode[i]))
		}
		if work == 0 {
			return 0 // no mass that can move
		}
		before := flex
		flex = motion / work
		for i := range b.nodes {
			mode[i] /= largest
		}
		if math.Abs(flex-before) <= settled*flex {
			break
		}
	}
	return flex
}

// rayleigh gives 1/ω² from the deflection under the masses' own weight, each pulling
// to the side to which the mode bends there.
func (b *beam) rayleigh(m, mode *[mostNodes]float64) float64 {
	var force, sag [mostNodes]float64
	for i := range b.nodes {
		force[i] = math.Copysign(m[i], mode[i])
	}
	b.bend(&force, &sag)
	work, motion := 0.0, 0.0
	for i := range b.nodes {
		work += force[i] * sag[i]
		motion += m[i] * sag[i] * sag[i]
	}
	if work == 0 {
		return 0
	}
	return motion / work
}

// influence is the deflection at a node under a unit force there.
func (b *beam) influence(node int) float64 {
	var force, sag [mostNodes]float64
	force[node] = 1
	b.bend(&force, &sag)
	return sag[node]
}
