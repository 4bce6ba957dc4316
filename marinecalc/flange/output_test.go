package flange

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// stackOfBars is the same joint cut into bars and solved as one system, with
// nothing taken from the code but the input: a chain of bars for the shaft, one
// for the stack, both fixed at the shoulder, a nut that sits so much farther on
// the shaft than the stack is long, and a layer gone from the stack. It gives
// the force between them, and none where they do not touch.
func stackOfBars(t *testing.T, in OutputInput, advance, worn float64) float64 {
	t.Helper()
	var shaft, stack []float64
	cut := func(list []float64, length, area, e float64) []float64 {
		const parts = 24
		if length <= 0 {
			return list
		}
		for range parts {
			list = append(list, e*area*parts/length)
		}
		return list
	}
	area := func(o, i float64) float64 { return math.Pi * (o - i) * (o + i) / 4 }
	e, seat := float64(in.ShaftModulus), float64(in.SeatDiameter)
	length, thread := float64(in.HubLength+in.RingLength+in.SpacerLength), float64(in.ThreadInside)
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	// ISO 898-1: d2 = d − 0.6495 P, d3 = d − 1.2269 P.
	d2, d3 := d-0.649519*p, d-1.226869*p
	shaft = cut(shaft, length-thread, area(seat, 0), e)
	shaft = cut(shaft, thread, area((d2+d3)/2, 0), e)
	shaft = cut(shaft, 0.5*d, area(d3, 0), e)
	shaft = cut(shaft, 0.4*d, area(d, 0), e)
	for _, part := range [][2]quantity.Length{{in.RingLength, in.RingDiameter}, {in.HubLength, in.HubDiameter}, {in.SpacerLength, in.SpacerDiameter}} {
		stack = cut(stack, float64(part[0]), area(float64(part[1]), seat), float64(in.StackModulus))
	}
	// Unknowns: the free ends of all bars, and the force between the ends.
	n := len(shaft) + len(stack)
	k := mat.NewDense(n+1, n+1, nil)
	add := func(from int, list []float64) int {
		last := -1
		for i, b := range list {
			at := from + i
			k.Set(at, at, k.At(at, at)+b)
			if last >= 0 {
				k.Set(last, last, k.At(last, last)+b)
				k.Set(at, last, -b)
				k.Set(last, at, -b)
			}
			last = at
		}
		return last
	}
	bolt := add(0, shaft)
	top := add(len(shaft), stack)
	right := mat.NewVecDense(n+1, nil)
	const scale = 1e10     // N, in which the force is sought
	k.Set(bolt, n, -scale) // it pulls the shaft aft
	k.Set(top, n, scale)   // and presses the stack forward
	k.Set(n, bolt, scale)  // ends together: stretch and squeeze are the advance less what is worn
	k.Set(n, top, -scale)
	right.SetVec(n, scale*(advance-worn))
	var x mat.VecDense
	if err := x.SolveVec(k, right); err != nil {
		t.Fatal(err)
	}
	return max(0, scale*x.AtVec(n))
}

func TestClampAgainstAModelOfBars(t *testing.T) {
	for _, change := range []func(*OutputInput){
		func(*OutputInput) {},
		func(in *OutputInput) { in.SpacerLength, in.RingLength, in.ThreadInside = 0, 0, 0 },
		func(in *OutputInput) { in.HubLength, in.HubDiameter, in.StackModulus = 0.12, 0.07, 100e9 },
	} {
		in := smallGearbox()
		in.NutTurn, in.LooseningTorque = 0.21, 0
		change(&in)
		advance := float64(in.NutTurn) * float64(in.Pitch) / (2 * math.Pi)
		for _, worn := range []float64{0, 0.00001, 0.00003, 0.0002} {
			in.FaceWear = quantity.Length(worn)
			out := parttest.Must(t, Output, in)
			parttest.Within(t, "clamp by turn", out.FittedClamp, stackOfBars(t, in, advance, 0), 1e-8)
			parttest.Near(t, "clamp left", out.ClampLeft, stackOfBars(t, in, advance, worn), 1e-7*float64(out.FittedClamp))
			// The turn that takes the wear up brings the clamp back.
			back := advance + float64(out.RetorqueTurn)*float64(in.Pitch)/(2*math.Pi)
			parttest.Within(t, "after the turn", out.FittedClamp, stackOfBars(t, in, back, worn), 1e-8)
		}
		out := parttest.Must(t, Output, in)
		if f := stackOfBars(t, in, advance, 0.999*float64(out.WearToLoss)); !(f > 0) {
			t.Error("gone before it is")
		}
		if f := stackOfBars(t, in, advance, 1.001*float64(out.WearToLoss)); f != 0 {
			t.Errorf("not gone when it is: %v N", f)
		}
	}
}

// sleeve is the stiffness of a round sleeve as a solid: rings of four nodes,
// linear in both directions, 2 × 2 points (Cook, Concepts and Applications of
// Finite Element Analysis, solids of revolution; from memory). The foot stands
// on its whole face; the top is pressed down evenly out to the nut's face.
func sleeve(t *testing.T, inside, outside, length, face, e, nu float64) float64 {
	t.Helper()
	const nr, nz = 12, 24
	ri, ro := inside/2, outside/2
	node := func(i, j int) int { return i*(nz+1) + j }
	r := func(i int) float64 { return ri + (ro-ri)*float64(i)/nr }
	z := func(j int) float64 { return length * float64(j) / nz }
	dofs := 2 * (nr + 1) * (nz + 1)
	k := mat.NewDense(dofs, dofs, nil)
	f := e / ((1 + nu) * (1 - 2*nu))
	law := mat.NewDense(4, 4, []float64{f * (1 - nu), f * nu, f * nu, 0, f * nu, f * (1 - nu), f * nu, 0, f * nu, f * nu, f * (1 - nu), 0, 0, 0, 0, f * (1 - 2*nu) / 2})
	g := 1 / math.Sqrt(3)
	for i := range nr {
		for j := range nz {
			nodes := []int{node(i, j), node(i+1, j), node(i+1, j+1), node(i, j+1)}
			dr, dz := r(i+1)-r(i), z(j+1)-z(j)
			for _, q := range [][2]float64{{-g, -g}, {g, -g}, {g, g}, {-g, g}} {
				at := r(i) + dr*(1+q[0])/2
				b := mat.NewDense(4, 8, nil)
				for n, s := range [][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
					shape := (1 + s[0]*q[0]) * (1 + s[1]*q[1]) / 4
					nr, nz := s[0]*(1+s[1]*q[1])/(2*dr), s[1]*(1+s[0]*q[0])/(2*dz)
					b.Set(0, 2*n, nr)
					b.Set(1, 2*n, shape/at)
					b.Set(2, 2*n+1, nz)
					b.Set(3, 2*n, nz)
					b.Set(3, 2*n+1, nr)
				}
				var db, ke mat.Dense
				db.Mul(law, b)
				ke.Mul(b.T(), &db)
				weight := 2 * math.Pi * at * dr * dz / 4
				for a := range 8 {
					for c := range 8 {
						x, y := 2*nodes[a/2]+a%2, 2*nodes[c/2]+c%2
						k.Set(x, y, k.At(x, y)+weight*ke.At(a, c))
					}
				}
			}
		}
	}
	right := mat.NewVecDense(dofs, nil)
	stiff := 1e6 * e // by which places are held
	hold := func(dof int, to float64) {
		k.Set(dof, dof, k.At(dof, dof)+stiff)
		right.SetVec(dof, stiff*to)
	}
	for i := range nr + 1 {
		hold(2*node(i, 0)+1, 0)
		if r(i) <= face/2+1e-9 {
			hold(2*node(i, nz)+1, -1e-5)
		}
	}
	var u mat.VecDense
	if err := u.SolveVec(k, right); err != nil {
		t.Fatal(err)
	}
	force := 0.0
	for i := range nr + 1 {
		force += stiff * -u.AtVec(2*node(i, 0)+1)
	}
	return math.Abs(force) / 1e-5
}

// A hub is taken as a sleeve pressed over its whole face. As a solid it is as
// stiff as that where the nut covers it, and no more than a fifth softer where
// the nut covers half of its wall.
func TestHubAsASolid(t *testing.T) {
	in := smallGearbox()
	in.RingLength, in.SpacerLength, in.ThreadInside = 0, 0, 0
	for _, c := range []struct{ face, low, high float64 }{{0.046, 0.99, 1.01}, {0.042, 0.88, 1}, {0.038, 0.8, 1}} {
		taken := float64(parttest.Must(t, Output, in).StackSpring)
		solid := sleeve(t, float64(in.SeatDiameter), float64(in.HubDiameter), float64(in.HubLength), c.face, float64(in.StackModulus), 0.3)
		if ratio := solid / taken; ratio < c.low || ratio > c.high {
			t.Errorf("nut of %g mm: as a solid %.3f of the stiffness taken", c.face*1000, ratio)
		}
	}
}

// A nut on its thread is a block on an incline (any statics text): tightened it
// takes F·d₂/2·tan(λ + ρ), undone F·d₂/2·tan(ρ − λ), and the face its friction
// besides. The sum of lead and frictions stays within 1 % of it.
func TestTorqueAgainstTheIncline(t *testing.T) {
	in := smallGearbox()
	in.ThreadFriction, in.NutFriction = 0.13, 0.11
	out := parttest.Must(t, Output, in)
	d2 := 0.024 - 0.649519*0.0015
	lead, rho := math.Atan(0.0015/(math.Pi*d2)), math.Atan(0.13/math.Cos(math.Pi/6))
	face := 0.11 * (0.044 + 0.030) / 4
	parttest.Within(t, "tightened", out.ClampFromTorque, 240/(d2/2*math.Tan(lead+rho)+face), 0.01)
	parttest.Within(t, "undone", out.ClampFromLoosening, 220/(d2/2*math.Tan(rho-lead)+face), 0.01)
}

// Friction and bending of the face, summed over small pieces of the ring.
func TestFaceAgainstASum(t *testing.T) {
	in := smallGearbox()
	out := parttest.Must(t, Output, in)
	ro, ri := 0.021, 0.015 // the bearing ring is the smallest
	area, friction, inertia := 0.0, 0.0, 0.0
	const n = 400
	for i := range n {
		r := ri + (ro-ri)*(float64(i)+0.5)/n
		for j := range n {
			a, phi := r*(ro-ri)/n*2*math.Pi/n, 2*math.Pi*(float64(j)+0.5)/n
			area += a
			friction += a * r
			inertia += a * math.Pow(r*math.Sin(phi), 2)
		}
	}
	pressure := float64(out.ClampLeft) / area
	parttest.Within(t, "friction", out.FrictionTorque, 0.1*pressure*friction, 1e-5)
	// At this moment the pressure at the edge is just nothing.
	parttest.Within(t, "clamp for bending", out.ClampForBending, 50*ro/inertia*area, 1e-4)
	parttest.Within(t, "margin", out.MarginBending, float64(out.ClampLeft)/(float64(out.ClampForBending)+2000*(1-float64(out.LoadShare))), 1e-12)
}

// The bar in balance: three unknowns, the two bolts and the rest, of which the
// flange takes the torque.
func TestBarInBalance(t *testing.T) {
	in := smallGearbox()
	out := parttest.Must(t, Output, in)
	a := mat.NewDense(3, 3, []float64{
		1, 1, 1, // forces on the bar
		0.040, -0.040, 0.5, // moments about the shaft's middle
		0.040, -0.040, 0, // the bolts give the flange the nut's torque
	})
	var x mat.VecDense
	if err := x.SolveVec(a, mat.NewVecDense(3, []float64{0, 0, 240})); err != nil {
		t.Fatal(err)
	}
	near, far, rest := x.AtVec(0), x.AtVec(1), x.AtVec(2)
	parttest.Within(t, "rest", out.BarForce, -rest, 1e-12)
	// The rest's own force goes through the bolts into the shaft's bearing.
	parttest.Within(t, "bolt", out.HoldBoltForce, max(math.Abs(near), math.Abs(far)), 1e-12)
	moment := float64(out.BarForce) * (0.5 - 0.040)
	parttest.Within(t, "bar", out.BarUse, moment*0.025/(0.012*(math.Pow(0.050, 3)-math.Pow(0.008, 3))/12)/235e6, 1e-12)
}

// A clamp that is gone holds nothing, and what is not known is not told.
func TestSilenceOfTheFlange(t *testing.T) {
	in := smallGearbox()
	in.FaceWear = 0.001
	out := parttest.Must(t, Output, in)
	if out.ClampLeft != 0 || out.MarginPull != 0 || out.FrictionTorque != 0 || out.TimeToLoss != 0 || !(out.LostAgo > 0) {
		t.Errorf("worn through: %+v", out)
	}
	in.FaceWear = quantity.Length(math.NaN())
	out = parttest.Must(t, Output, in)
	for name, v := range map[string]float64{"clamp left": float64(out.ClampLeft), "share": float64(out.ShareLeft), "pull": float64(out.MarginPull), "friction": float64(out.MarginFriction), "time": float64(out.TimeToLoss)} {
		if !math.IsNaN(v) {
			t.Errorf("%s told without a reading of the face: %v", name, v)
		}
	}
	in = smallGearbox()
	in.HubDiameter, in.PullAstern = 0, quantity.Force(math.NaN())
	out = parttest.Must(t, Output, in)
	if !math.IsNaN(float64(out.WearToLoss)) || !math.IsNaN(float64(out.MarginPull)) || !(out.FittedClamp > 0) {
		t.Errorf("a hub whose diameter nobody measured: %+v", out)
	}
	in = smallGearbox()
	in.PullAstern = 0
	if out = parttest.Must(t, Output, in); out.MarginPull != plenty {
		t.Errorf("no pull at all: %v", out.MarginPull)
	}
}

func TestOutputDoesNotAllocate(t *testing.T) {
	in := smallGearbox()
	parttest.NoAllocations(t, func() { _, _ = Output(in) })
}
