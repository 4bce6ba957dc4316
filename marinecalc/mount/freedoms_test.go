package mount

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// reference is the engine's stiffness and mass put together the long way:
// each mount's stiffness turned by rotation matrices, moved to the centre of
// gravity by BᵀkB, in gonum. A row of feet gives a mount's upward force for
// each freedom.
func reference(in LoadInput) (k, feet *mat.Dense, mass []float64) {
	k, feet = mat.NewDense(6, 6, nil), mat.NewDense(len(in.Mounts), 6, nil)
	for n, m := range in.Mounts {
		deflection := 1.0
		if m.DeflectionNew > 0 && m.DeflectionNow > 0 {
			deflection = float64(m.DeflectionNew / m.DeflectionNow)
		}
		own := mat.NewDiagDense(3, []float64{float64(m.StiffnessAlong) * deflection, float64(m.StiffnessSideways) * deflection, float64(m.Stiffness) * deflection})
		angle := float64(m.Inclination) // about the axis forward; a mount to port leans to starboard
		if m.Starboard > 0 {
			angle = -angle
		}
		sin, cos := math.Sincos(angle)
		turn := mat.NewDense(3, 3, []float64{1, 0, 0, 0, cos, -sin, 0, sin, cos})
		var turned mat.Dense
		turned.Product(turn, own, turn.T())
		x, y, z := float64(m.Forward-in.CentreForward), -float64(m.Starboard-in.CentreStarboard), float64(m.Up-in.CentreUp)
		b := mat.NewDense(3, 6, []float64{1, 0, 0, 0, z, -y, 0, 1, 0, -z, 0, x, 0, 0, 1, y, -x, 0})
		var part, force mat.Dense
		force.Mul(&turned, b)
		feet.SetRow(n, force.RawRowView(2))
		part.Mul(b.T(), &force)
		k.Add(k, &part)
	}
	m, l, w, h := float64(in.EngineMass), float64(in.EngineLength), float64(in.EngineWidth), float64(in.EngineHeight)
	f := float64(in.BoxFactor) * m / 12
	return k, feet, []float64{m, m, m, f * (w*w + h*h), f * (l*l + h*h), f * (l*l + w*w)}
}

func anyEngine(r *rand.Rand) LoadInput {
	in := engine()
	in.Mounts = nil
	for n := range 3 + r.IntN(6) {
		side := float64(1 - 2*(n%2))
		m := sprung(strings.Repeat("m", n+1), r.Float64()*1.2, side*(0.15+0.2*r.Float64()), 0.2*r.Float64()-0.1, 5e4+3e5*r.Float64())
		m.Inclination = quantity.Angle(r.Float64() * 0.7)
		if r.IntN(2) == 0 {
			m.DeflectionNew, m.DeflectionNow = 3e-3, quantity.Length(3e-3+3e-3*r.Float64())
		}
		in.Mounts = append(in.Mounts, m)
	}
	if offLine(in.Mounts) < 0.05 {
		return anyEngine(r)
	}
	in.CentreForward, in.CentreStarboard, in.CentreUp = quantity.Length(0.3+0.5*r.Float64()), quantity.Length(0.04*r.Float64()-0.02), quantity.Length(0.3*r.Float64())
	return in
}

// The movement under load and the six natural frequencies are those of
// gonum's solver and eigenvalues on matrices put together apart.
func TestSixFreedomsAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 7))
	for range 300 {
		in := anyEngine(r)
		out := carried(t, in)
		k, feet, mass := reference(in)
		scaled := mat.NewSymDense(6, nil)
		for i := range 6 {
			for j := range i + 1 {
				scaled.SetSym(i, j, float64(in.DynamicRatio)*k.At(i, j)/math.Sqrt(mass[i]*mass[j]))
			}
		}
		var eigen mat.EigenSym
		if !eigen.Factorize(scaled, true) {
			t.Fatal("gonum finds no eigenvalues")
		}
		var vectors mat.Dense
		eigen.VectorsTo(&vectors)
		sumRoll, sumBounce := 0.0, 0.0
		for n, value := range eigen.Values(nil) { // ascending
			f := math.Sqrt(value) / (2 * math.Pi)
			parttest.Near(t, "frequency", out.Modes[n].Frequency, f, 1e-9*f)
			parttest.Near(t, "roll share", out.Modes[n].RollShare, vectors.At(3, n)*vectors.At(3, n), 1e-7)
			parttest.Near(t, "bounce share", out.Modes[n].BounceShare, vectors.At(2, n)*vectors.At(2, n), 1e-7)
			sumRoll, sumBounce = sumRoll+float64(out.Modes[n].RollShare), sumBounce+float64(out.Modes[n].BounceShare)
		}
		parttest.Near(t, "roll shares", sumRoll, 1, 1e-9)
		parttest.Near(t, "bounce shares", sumBounce, 1, 1e-9)

		// Ahead: thrust and torque at the coupling.
		cg := []float64{float64(in.CentreForward), -float64(in.CentreStarboard), float64(in.CentreUp)}
		load := mat.NewVecDense(6, []float64{2500, 0, 0, -170, -cg[2] * 2500, cg[1] * 2500})
		var by mat.VecDense
		if err := by.SolveVec(k, load); err != nil {
			t.Fatal(err)
		}
		var rest, carried mat.VecDense
		if err := rest.SolveVec(k, mat.NewVecDense(6, []float64{0, 0, -float64(out.Weight), 0, 0, 0})); err != nil {
			t.Fatal(err)
		}
		carried.MulVec(feet, &rest)
		for i := range in.Mounts {
			parttest.Near(t, "load", out.Loads[i].AtRest, -carried.AtVec(i), 1e-8*float64(out.Weight))
		}
		face := out.FaceMoves[0]
		scale := 1e-9 * mat.Norm(&by, 2)
		parttest.Near(t, "pitch", face.FrontUp, -by.AtVec(4), scale)
		parttest.Near(t, "yaw", face.FrontStarboard, -by.AtVec(5), scale)
		parttest.Near(t, "roll", face.Roll, by.AtVec(3), scale)
		parttest.Near(t, "up", face.Up, by.AtVec(2)-by.AtVec(3)*cg[1]+by.AtVec(4)*cg[0], scale)
		parttest.Near(t, "starboard", face.Starboard, -(by.AtVec(1) - by.AtVec(5)*cg[0] + by.AtVec(3)*cg[2]), scale)
		parttest.Near(t, "forward", face.Forward, by.AtVec(0)-by.AtVec(4)*cg[2]+by.AtVec(5)*cg[1], scale)
	}
}

// The passed share of the firing torque is that of the six coupled freedoms
// with stiffness k·(1+2iζ·f/f_n) in every mode, solved whole as a system of
// twelve real equations in gonum.
func TestPassedAgainstWholeSystem(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 5))
	for range 60 {
		in := anyEngine(r)
		out := carried(t, in)
		k, _, mass := reference(in)
		scaled := mat.NewSymDense(6, nil)
		for i := range 6 {
			for j := range i + 1 {
				scaled.SetSym(i, j, float64(in.DynamicRatio)*k.At(i, j)/math.Sqrt(mass[i]*mass[j]))
			}
		}
		var eigen mat.EigenSym
		eigen.Factorize(scaled, true)
		var v, damper, half mat.Dense
		eigen.VectorsTo(&v)
		roots := mat.NewDiagDense(6, nil)
		for i, value := range eigen.Values(nil) {
			roots.SetDiag(i, 2*float64(in.DampingRatio)*math.Sqrt(value))
		}
		half.Mul(&v, roots)
		damper.Mul(&half, v.T())
		for _, f := range []float64{3, 8, 14, 21, 70} {
			w := 2 * math.Pi * f
			whole, right := mat.NewDense(12, 12, nil), mat.NewVecDense(12, nil)
			for i := range 6 {
				for j := range 6 {
					a := scaled.At(i, j)
					if i == j {
						a -= w * w
					}
					whole.Set(i, j, a)
					whole.Set(i+6, j+6, a)
					whole.Set(i, j+6, -w*damper.At(i, j))
					whole.Set(i+6, j, w*damper.At(i, j))
				}
			}
			right.SetVec(3, 1)
			var x mat.VecDense
			if err := x.SolveVec(whole, right); err != nil {
				t.Fatal(err)
			}
			// What the mounts pass is the moment less what speeds up the mass.
			want := math.Hypot(1+w*w*x.AtVec(3), w*w*x.AtVec(9))
			firing, _ := Passed(&out.Modes, quantity.Frequency(f), in.DampingRatio)
			parttest.Near(t, "passed", firing, want, 1e-7*max(want, 1))
		}
	}
}

// Rayleigh's bounds: no coupled mode swings slower than the slowest or faster
// than the fastest that K and M allow; loads add up to the weight; torque
// alone adds none; a stiffer set of mounts moves the coupling less.
func TestLoadProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 1))
	for range 300 {
		in := anyEngine(r)
		out := carried(t, in)
		rest, ahead := 0.0, 0.0
		for i := range in.Mounts {
			rest += float64(out.Loads[i].AtRest)
			ahead += float64(out.Loads[i].Ahead)
		}
		weight := float64(out.Weight)
		parttest.Near(t, "loads", rest, weight, 1e-9*weight)
		parttest.Near(t, "loads ahead", ahead, weight, 1e-9*weight)
		stiffer := in
		stiffer.Mounts = slices.Clone(in.Mounts)
		for i := range stiffer.Mounts {
			m := &stiffer.Mounts[i]
			m.Stiffness, m.StiffnessSideways, m.StiffnessAlong = 2*m.Stiffness, 2*m.StiffnessSideways, 2*m.StiffnessAlong
		}
		twice := carried(t, stiffer)
		parttest.Near(t, "half as far", twice.MovedOffset, float64(out.MovedOffset)/2, 1e-9*float64(out.MovedOffset))
		parttest.Near(t, "half the gap", twice.MovedGapPerDiameter, float64(out.MovedGapPerDiameter)/2, 1e-9)
		parttest.Near(t, "√2 as fast", twice.HighestFrequency, math.Sqrt2*float64(out.HighestFrequency), 1e-9*float64(out.HighestFrequency))
		if out.TiredFactor < 1-1e-9 && allTired(in.Mounts) {
			t.Errorf("softer mounts all alike move less: %g", out.TiredFactor)
		}
	}
}

// Cholesky and eigen against gonum on random matrices, also nearly singular
// and with repeated eigenvalues.
func TestMatrixAgainstGonum(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 4))
	for n := range 500 {
		root := mat.NewDense(6, 6, nil)
		for i := range 6 {
			for j := range 6 {
				root.Set(i, j, r.NormFloat64()*math.Pow(10, float64(n%4)*float64(j%3)/2))
			}
			if n%7 == 0 {
				root.Set(i, 5, root.At(i, 4)*(1+1e-3*r.Float64()))
			}
		}
		var square mat.SymDense
		square.SymOuterK(1, root)
		if n%11 == 0 {
			square = *mat.NewSymDense(6, []float64{2, 0, 0, 0, 0, 0, 0, 2, 1, 0, 0, 0, 0, 1, 2, 0, 0, 0, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0, 2})
		}
		var m matrix
		for i := range 6 {
			for j := range 6 {
				m[i][j] = square.At(i, j)
			}
		}
		values, vectors := m.eigen()
		var eigen mat.EigenSym
		eigen.Factorize(&square, true)
		want := eigen.Values(nil)
		got := slices.Clone(values[:])
		slices.SortFunc(got, cmp.Compare[float64])
		for i := range want {
			parttest.Near(t, "eigenvalue", got[i], want[i], 1e-11*want[5])
		}
		for i := range 6 { // m·v = λ·v
			for k := range 6 {
				sum := 0.0
				for j := range 6 {
					sum += m[k][j] * vectors[i][j]
				}
				parttest.Near(t, "eigenvector", sum, values[i]*vectors[i][k], 1e-11*want[5])
			}
		}
		l, ok := m.factor()
		if ok != (want[0] > 1e-11*want[5]) && want[0] > 1e-8*want[5] {
			t.Fatalf("factor: %v with eigenvalues %g", ok, want)
		}
		if !ok {
			continue
		}
		load := motion{1, -2, 3, -4, 5, -6}
		x := l.solve(load)
		for i := range 6 {
			sum, size := 0.0, 0.0
			for j := range 6 {
				sum += m[i][j] * x[j]
				size += math.Abs(m[i][j] * x[j])
			}
			parttest.Near(t, "solution", sum, load[i], 1e-10*(size+1))
		}
	}
	if _, ok := (&matrix{}).factor(); ok {
		t.Error("an engine without mounts stands")
	}
}
