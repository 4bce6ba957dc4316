// Six-by-six matrices of a rigid engine.

package mount

import "math"

// The six freedoms of a rigid engine about its centre of gravity: along the
// axes forward, to port and up, then turns about them, all right-handed.
const (
	surge = iota
	sway
	heave
	roll
	pitch
	yaw
	freedoms
)

// motion holds one value for each freedom: a movement in m and rad, or a
// load in N and N·m.
type motion [freedoms]float64

// matrix is a symmetric 6×6 matrix; both triangles are kept.
type matrix [freedoms]motion

// cholesky is the lower factor L of a positive definite matrix, L·Lᵀ, with the
// reciprocals of its diagonal on it.
type cholesky matrix

// factor is Cholesky's method. ok is false where the matrix is not positive
// definite: an engine that is free to move some way.
func (m *matrix) factor() (l cholesky, ok bool) {
	for i := range freedoms {
		for j := range i + 1 {
			sum := m[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			if i > j {
				l[i][j] = sum * l[j][j]
				continue
			}
			if !(sum > 1e-12*m[i][i]) {
				return l, false
			}
			l[i][i] = 1 / math.Sqrt(sum)
		}
	}
	return l, true
}

// solve gives the movement x under a load: L·Lᵀ·x = load.
func (l *cholesky) solve(load motion) (x motion) {
	for i := range freedoms {
		sum := load[i]
		for k := range i {
			sum -= l[i][k] * x[k]
		}
		x[i] = sum * l[i][i]
	}
	for i := freedoms - 1; i >= 0; i-- {
		sum := x[i]
		for k := i + 1; k < freedoms; k++ {
			sum -= l[k][i] * x[k]
		}
		x[i] = sum * l[i][i]
	}
	return x
}

// eigen gives the eigenvalues of a symmetric matrix and, in the rows of v, the
// unit eigenvectors, in no order: Householder's reflections leave three diagonals,
// and rotations with an implicit shift take the outer ones away (Golub and Van Loan,
// Matrix Computations, 4th ed., 8.3, clause from memory).
func (m matrix) eigen() (values motion, v matrix) {
	for i := range freedoms {
		v[i][i] = 1
	}
	var beside motion // the diagonal beside the main one
	for k := range freedoms - 2 {
		m.reflect(&v, k)
	}
	for i := range freedoms {
		values[i] = m[i][i]
		if i < freedoms-1 {
			beside[i] = m[i+1][i]
		}
	}
	for l := range freedoms {
		for range rounds {
			end := l
			for end < freedoms-1 && math.Abs(beside[end]) > 1e-16*(math.Abs(values[end])+math.Abs(values[end+1])) {
				end++
			}
			if end == l {
				break
			}
			chase(&values, &beside, &v, l, end)
		}
	}
	return values, v
}

// rounds are more than any eigenvalue of six rows needs.
const rounds = 60

// reflect makes column k nothing below the second diagonal, and turns the vectors along.
func (m *matrix) reflect(v *matrix, k int) {
	var u, p motion
	rest := 0.0
	for i := k + 2; i < freedoms; i++ {
		rest += m[i][k] * m[i][k]
	}
	if rest == 0 {
		return
	}
	length := math.Sqrt(m[k+1][k]*m[k+1][k] + rest)
	to := -math.Copysign(length, m[k+1][k])
	u[k+1] = m[k+1][k] - to
	for i := k + 2; i < freedoms; i++ {
		u[i] = m[i][k]
	}
	scale := 2 / (u[k+1]*u[k+1] + rest)
	half := 0.0
	for i := k + 1; i < freedoms; i++ {
		for j := k + 1; j < freedoms; j++ {
			p[i] += m[i][j] * u[j]
		}
		p[i] *= scale
		half += p[i] * u[i]
	}
	half *= scale / 2
	for i := k + 1; i < freedoms; i++ {
		p[i] -= half * u[i]
	}
	for i := k + 1; i < freedoms; i++ {
		for j := k + 1; j < freedoms; j++ {
			m[i][j] -= u[i]*p[j] + p[i]*u[j]
		}
	}
	m[k+1][k] = to // of the column nothing else is looked at again
	for j := range freedoms {
		sum := 0.0
		for i := k + 1; i < freedoms; i++ {
			sum += u[i] * v[i][j]
		}
		sum *= scale
		for i := k + 1; i < freedoms; i++ {
			v[i][j] -= sum * u[i]
		}
	}
}

// chase is one round of rotations from row end up to row l of the three diagonals.
func chase(values, beside *motion, v *matrix, l, end int) {
	g := (values[l+1] - values[l]) / (2 * beside[l])
	g = values[end] - values[l] + beside[l]/(g+math.Copysign(math.Sqrt(g*g+1), g)) // less the shift
	s, c, off := 1.0, 1.0, 0.0
	for i := end - 1; i >= l; i-- {
		f, b := s*beside[i], c*beside[i]
		r := math.Sqrt(f*f + g*g)
		beside[i+1] = r
		if r == 0 { // the rows part here
			values[i+1] -= off
			beside[end] = 0
			return
		}
		s, c = f/r, g/r
		g = values[i+1] - off
		r = (values[i]-g)*s + 2*c*b
		off = s * r
		values[i+1] = g + off
		g = c*r - b
		one, next := &v[i], &v[i+1]
		for k, x := range one {
			y := next[k]
			one[k], next[k] = c*x-s*y, s*x+c*y
		}
	}
	values[l] -= off
	beside[l], beside[end] = g, 0
}
