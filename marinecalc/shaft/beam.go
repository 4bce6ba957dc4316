// A shaft as a beam of finite elements.

package shaft

import "math"

// beam is a shaft cut into elements of constant section between nodes, each
// element with the cubic deflection of a loaded beam (Hermite), so that point
// loads at nodes give the exact deflection at nodes. Its mass is that of the
// same cubic (consistent), so that every frequency found lies on the high
// side of the true one. Bearings are points that hold the deflection at zero
// and let the shaft turn.
//
// A shape or a load has two entries a node: deflection and slope, force and
// moment.
type beam struct {
	nodes int
	x     [mostNodes]float64 // from the forward end
	own   [mostNodes]float64 // mass of the element behind the node, over 420
	hung  [mostNodes]float64 // masses at the nodes
	held  [mostNodes]bool
	// lower is the lower half of the stiffness matrix, whose rows are deflection
	// and slope of one node after the other, and then its factors; it reaches 3
	// to the left of the diagonal, lower[i][3]. Three empty rows below save
	// asking for the end.
	lower [2*mostNodes + 3][4]float64

	load, mode     entries // of lowest and what comes after it
	nextLoad, next entries // of its next round
	turn           entries // the shape under a moment at the clamp
}

// entries are those of a shape or a load.
type entries [2 * mostNodes]float64

const (
	mostNodes  = 128
	inASpan    = 6     // elements in the longest distance between neighbouring bearings
	sameNode   = 1e-3  // of the shaft's length: nodes nearer than this are one, as far shorter elements lose digits
	mostRounds = 400   // of the iteration for a mode
	lost       = 1e-11 // what is left of a pivot when too many digits are gone
	settled    = 1e-6  // of 1/ω², what the rounds to come would still add
	steady     = 1e-5  // of 1/ω², a change of a round after which the next shrink as this one did
	alike      = 1e-9  // of the product of two works, below which rounding tells two shapes apart
	free       = -1    // no clamp
)

// addElement adds the stiffness of one element between nodes i and i+1.
func (b *beam) addElement(i int, ei float64) {
	h := b.x[i+1] - b.x[i]
	k := ei / (h * h * h)
	element := [4][4]float64{ // symmetric; the lower half is used
		{12 * k},
		{6 * k * h, 4 * k * h * h},
		{-12 * k, -6 * k * h, 12 * k},
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

// factor turns the matrix into its factors, a lower one with ones on the
// diagonal and a diagonal whose reciprocal stands in their place. With two
// bearings apart it is positive definite; it fails when stiff and soft lengths
// differ so much that the digits of the soft ones are lost.
func (b *beam) factor() bool {
	for i := range 2 * b.nodes {
		row := &b.lower[i]
		full, left := row[3], row[3]
		for j := max(0, i-3); j < i; j++ {
			for k := max(0, i-3); k < j; k++ {
				row[3+j-i] -= row[3+k-i] * b.lower[j][3+k-j]
			}
		}
		for j := max(0, i-3); j < i; j++ {
			scaled := row[3+j-i] * b.lower[j][3]
			left -= scaled * row[3+j-i]
			row[3+j-i] = scaled
		}
		if !(left > lost*full) {
			return false
		}
		row[3] = 1 / left
	}
	for i, held := range b.held[:b.nodes] {
		if held {
			b.lower[2*i][3] = 0 // whatever the load there, it stays where it is
		}
	}
	return true
}

// bend finds the shape under a load, and the work of the load on it. What a
// step takes from the one before it comes last, since the next one waits for it.
func (b *beam) bend(load, shape *entries) (work float64) {
	n := 2 * b.nodes
	x, y, z := 0.0, 0.0, 0.0 // of the last three rows
	for i := range b.lower[:n] {
		row := &b.lower[i]
		x, y, z = y, z, load[i]-row[0]*x-row[1]*y-row[2]*z
		shape[i] = z * row[3]
	}
	x, y, z = 0, 0, 0
	for i := n - 1; i >= 0; i-- {
		x, y, z = y, z, shape[i]-b.lower[i+3][0]*x-b.lower[i+2][1]*y-b.lower[i+1][2]*z
		shape[i] = z
		work += load[i] * z
	}
	return work
}

// bendClamped is bend with the slope at the clamp held at zero as well, by
// taking off what a moment there turns. turn must be known.
func (b *beam) bendClamped(load, shape *entries, clamp int) (work float64) {
	work = b.bend(load, shape)
	if clamp == free {
		return work
	}
	slope := 2*clamp + 1
	part := shape[slope] / b.turn[slope]
	work -= part * shape[slope] // the load turns the clamp as the moment there moves the load (Betti)
	for i := range 2 * b.nodes {
		shape[i] -= part * b.turn[i]
	}
	return work
}

// clampAt prepares for clamping at a node.
func (b *beam) clampAt(node int) { b.unit(2*node + 1) }

// unit finds into turn the shape under a unit force or moment at one entry.
func (b *beam) unit(entry int) {
	clear(b.load[:2*b.nodes])
	b.load[entry] = 1
	b.bend(&b.load, &b.turn)
}

// weigh gives the inertia load of a shape, mass times shape, and the product of
// the two.
func (b *beam) weigh(shape, load *entries, withHung bool) (motion float64) {
	force, moment := 0.0, 0.0 // of the element before
	for i := range b.nodes {
		at := 2 * i
		f, q := force, moment
		if i < b.nodes-1 {
			m, h := b.own[i], b.x[i+1]-b.x[i]
			v1, t1, v2, t2 := shape[at], shape[at+1]*h, shape[at+2], shape[at+3]*h
			f += m * (156*v1 + 22*t1 + 54*v2 - 13*t2)
			q += m * h * (22*v1 + 4*t1 + 13*v2 - 3*t2)
			force = m * (54*v1 + 13*t1 + 156*v2 - 22*t2)
			moment = m * h * (-13*v1 - 3*t1 - 22*v2 + 4*t2)
		}
		if withHung {
			f += b.hung[i] * shape[at]
		}
		load[at], load[at+1] = f, q
		motion += f*shape[at] + q*shape[at+1]
	}
	return motion
}

// begin shapes the mode with the spans bent to opposite sides, one end more
// than the other, so that no symmetry hides the first mode.
func (b *beam) begin() {
	side, length := 1.0, b.x[b.nodes-1]
	for i := range b.nodes {
		if b.held[i] {
			side = -side
		}
		b.mode[2*i], b.mode[2*i+1] = side*(1+0.3*b.x[i]/length), 0
	}
}

// lowest finds the first mode by iteration (Stodola) from the mode as it
// stands, and returns 1/ω². Each round takes the best of all sums of the shape
// before it and the one under its inertia load, which is Rayleigh and Ritz with
// two shapes and settles in half to two thirds of the rounds. It ends when the
// changes, each a like part of the one before, would not add up to what
// matters (their sum is step²/(last − step)). 1/ω² is Rayleigh's quotient of
// the shape, so it is never above that of the model's own mode.
func (b *beam) lowest(withHung bool, clamp int) float64 {
	b.weigh(&b.mode, &b.load, withHung)
	work := b.bendClamped(&b.load, &b.mode, clamp)
	motion := b.weigh(&b.mode, &b.load, withHung)
	if work == 0 || motion == 0 {
		return 0 // no mass that can move
	}
	flex, step := motion/work, 0.0 // of no round yet
	for range mostRounds {
		mixed := b.bendClamped(&b.load, &b.next, clamp)
		more := b.weigh(&b.next, &b.nextLoad, withHung)
		old := best(work, motion, mixed, more)
		scale := 1 / flex // the next shape is about flex times this one
		for i := range 2 * b.nodes {
			b.mode[i] = scale * (b.next[i] + old*b.mode[i])
			b.load[i] = scale * (b.nextLoad[i] + old*b.load[i])
		}
		work, motion = (mixed+old*(2*motion+old*work))*scale*scale, (more+old*(2*mixed+old*motion))*scale*scale
		before, last := flex, step
		flex = motion / work
		step = math.Abs(flex - before)
		if step <= settled*flex || step <= steady*flex && step*step <= settled*flex*(last-step) {
			break
		}
	}
	return flex
}

// best finds the sum of a shape x and the shape y under its inertia load, y +
// old·x, whose quotient of motion and work is greatest. work and motion are
// those of x, more is the motion of y, and mixed both its work and the motion
// between the two. Where the two are nearly one shape, it is y.
func best(work, motion, mixed, more float64) (old float64) {
	// det(M − q·K) = 0 with M = (motion mixed; mixed more) and K = (work motion; motion mixed).
	a, b, c := work*mixed-motion*motion, work*more-motion*mixed, motion*more-mixed*mixed
	root := b*b - 4*a*c
	if !(a > alike*work*mixed) || !(root > 0) {
		return 0
	}
	quotient := (b + math.Sqrt(root)) / (2 * a)
	return (mixed - quotient*motion) / (quotient*work - motion)
}

// rayleigh gives 1/ω² from the deflection under the shaft's own and the hung
// weights, each pulling to the side to which the mode bends there. It
// overwrites the mode.
func (b *beam) rayleigh() float64 {
	b.load[0], b.load[1] = 0, 0
	for i := range b.nodes - 1 {
		h, at := b.x[i+1]-b.x[i], 2*i
		middle := 4*(b.mode[at]+b.mode[at+2]) + h*(b.mode[at+1]-b.mode[at+3]) // eight times the cubic there, of which the side counts
		half := math.Copysign(210*b.own[i], middle)
		b.load[at] += half
		b.load[at+1] += half * h / 6
		b.load[at+2], b.load[at+3] = half, -half*h/6
	}
	for i := range b.nodes {
		b.load[2*i] += math.Copysign(b.hung[i], b.mode[2*i])
	}
	work := b.bend(&b.load, &b.mode)
	if work == 0 {
		return 0
	}
	return b.weigh(&b.mode, &b.load, true) / work
}

// influence is the deflection at a node under a unit force there.
func (b *beam) influence(node int) float64 {
	b.unit(2 * node)
	return b.turn[2*node]
}

// greatest finds where the mode deflects most, within the elements beside
// the node that moves most.
func (b *beam) greatest() float64 {
	most, node := 0.0, 0
	for i := range b.nodes {
		if v := math.Abs(b.mode[2*i]); v > most*(1+1e-9) {
			most, node = v, i
		}
	}
	at := b.x[node]
	for i := max(0, node-1); i < min(node+1, b.nodes-1); i++ {
		h, from := b.x[i+1]-b.x[i], 2*i
		v1, t1, v2, t2 := b.mode[from], b.mode[from+1]*h, b.mode[from+2], b.mode[from+3]*h
		// The cubic is v1 + t1·s + p·s² + q·s³; its slope is zero where it is greatest.
		p, q := 3*(v2-v1)-2*t1-t2, 2*(v1-v2)+t1+t2
		root := p*p - 3*q*t1
		if root < 0 {
			continue
		}
		for _, sign := range [...]float64{1, -1} {
			s := -t1 / (p + sign*math.Copysign(math.Sqrt(root), p))
			if !(s > 0 && s < 1) {
				continue
			}
			if v := math.Abs(v1 + s*(t1+s*(p+s*q))); v > most {
				most, at = v, b.x[i]+s*h
			}
		}
	}
	return at
}
