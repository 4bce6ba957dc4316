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

// sweeps is more than Jacobi's method ever needs for six rows.
const sweeps = 30

// eigen gives the eigenvalues and, in the columns of v, the unit eigenvectors
// of a symmetric matrix by Jacobi's rotations, in no order (Jacobi 1846; the
// rotation with the smaller angle, as in Golub and Van Loan, Matrix
// Computations, 4th ed., alg. 8.5.1, clause from memory).
func (m matrix) eigen() (values motion, v matrix) {
	size := 0.0
	for i := range freedoms {
		v[i][i] = 1
		size = max(size, math.Abs(m[i][i]))
	}
	for range sweeps {
		turned := false
		for p := range freedoms - 1 {
			for q := p + 1; q < freedoms; q++ {
				if math.Abs(m[p][q]) > 1e-14*size {
					m.rotate(&v, p, q)
					turned = true
				}
			}
		}
		if !turned {
			break
		}
	}
	for i := range freedoms {
		values[i] = m[i][i]
	}
	return values, v
}

// rotate makes the element p, q nothing and turns the vectors along.
func (m *matrix) rotate(v *matrix, p, q int) {
	half := (m[q][q] - m[p][p]) / (2 * m[p][q])
	t := 1 / (math.Abs(half) + math.Sqrt(half*half+1))
	if half < 0 {
		t = -t
	}
	c := 1 / math.Sqrt(t*t+1)
	s := t * c
	m[p][p] -= t * m[p][q]
	m[q][q] += t * m[p][q]
	m[p][q], m[q][p] = 0, 0
	for k := range freedoms {
		if k != p && k != q {
			mp, mq := m[k][p], m[k][q]
			m[k][p], m[k][q] = c*mp-s*mq, s*mp+c*mq
			m[p][k], m[q][k] = m[k][p], m[k][q]
		}
		vp, vq := v[k][p], v[k][q]
		v[k][p], v[k][q] = c*vp-s*vq, s*vp+c*vq
	}
}
