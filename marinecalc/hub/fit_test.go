package hub

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
	"gonum.org/v1/gonum/mat"
)

// ring is a ring from a to b of elements that grow along the radius, in plane
// stress: what its edges move under pressures inside and outside. It is the
// finite-element answer to what Lamé solved in closed form.
func ring(a, b, modulus, poisson, inside, outside float64, elements int) (moves []float64, hoopAtA float64) {
	n := elements + 1
	at := func(i int) float64 { return a + (b-a)*float64(i)/float64(elements) }
	k, f := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil)
	c := modulus / (1 - poisson*poisson)
	for e := range elements {
		r0, r1 := at(e), at(e+1)
		h := r1 - r0
		for _, g := range [...]float64{-1 / math.Sqrt(3), 1 / math.Sqrt(3)} { // two points of Gauss
			r := (r0 + r1 + g*h) / 2
			shape := [2]float64{(1 - g) / 2, (1 + g) / 2}
			slope := [2]float64{-1 / h, 1 / h}
			for i := range 2 {
				for j := range 2 {
					er, et, fr, ft := slope[i], shape[i]/r, slope[j], shape[j]/r
					k.Set(e+i, e+j, k.At(e+i, e+j)+c*(er*fr+et*ft+poisson*(er*ft+et*fr))*r*h/2)
				}
			}
		}
	}
	f.SetVec(0, inside*a)
	f.SetVec(n-1, f.AtVec(n-1)-outside*b)
	var u mat.VecDense
	if err := u.SolveVec(k, f); err != nil {
		panic(err)
	}
	strain, slope := u.AtVec(0)/a, (u.AtVec(1)-u.AtVec(0))/(at(1)-a)
	return []float64{u.AtVec(0), u.AtVec(n - 1)}, c * (strain + poisson*slope)
}

// The pressure that an interference brings on closes the gap between a ring and
// a shaft of finite elements, and their hoop tension is Lamé's.
func TestFitAgreesWithFiniteElements(t *testing.T) {
	for _, f := range []Fit{
		{Diameter: 0.05, Outside: 0.08, HubModulus: 210e9, ShaftModulus: 210e9, HubPoisson: 0.3, ShaftPoisson: 0.3},
		{Diameter: 0.03, Outside: 0.06, HubModulus: 103e9, ShaftModulus: 193e9, HubPoisson: 0.34, ShaftPoisson: 0.3},
		{Diameter: 0.1, Outside: 0.25, Bore: 0.05, HubModulus: 70e9, ShaftModulus: 210e9, HubPoisson: 0.25, ShaftPoisson: 0.3},
		{Diameter: 0.0254, Outside: 0.0381, Bore: 0.01, HubModulus: 168e9, ShaftModulus: 193e9, HubPoisson: 0.28, ShaftPoisson: 0.3},
	} {
		const pressure = 40e6
		d := float64(f.Diameter)
		hub, hoop := ring(d/2, float64(f.Outside)/2, float64(f.HubModulus), float64(f.HubPoisson), pressure, 0, 400)
		inner := max(float64(f.Bore)/2, 1e-5*d) // a solid shaft has no middle to start from
		if f.Bore == 0 {
			inner = 1e-3 * d
		}
		shaft, _ := ring(inner, d/2, float64(f.ShaftModulus), float64(f.ShaftPoisson), 0, pressure, 400)
		if f.Bore == 0 { // pressed all round it is as if at rest in a pressure: u = −p·r·(1 − ν)/E
			shaft[1] = -pressure * d / 2 * (1 - float64(f.ShaftPoisson)) / float64(f.ShaftModulus)
		}
		parttest.Within(t, "interference", f.Give()*pressure, 2*(hub[0]-shaft[1]), 1e-4)
		parttest.Within(t, "hoop", Hoop(f.Diameter, f.Outside)*pressure, hoop, 5e-3)
		// Distortion energy of σ_t and −p with nothing along the shaft.
		parttest.Within(t, "equivalent", Equivalent(f.Diameter, f.Outside)*pressure, math.Sqrt(hoop*hoop+hoop*pressure+pressure*pressure), 5e-3)
	}
}

// The cone's figures against small patches of its surface: pressure square to
// the cone, friction along the slip, added up round and along.
func TestConeAgreesWithPatches(t *testing.T) {
	c := Cone{Taper: 0.1, Friction: 0.15, Mean: 0.036}
	const length, pressure, patches = 0.08, 22e6, 400
	half := math.Atan(float64(c.Taper) / 2)
	var pressed, push, pull, twist float64
	for i := range patches {
		x := (float64(i)+0.5)/patches*length - length/2
		r := float64(c.Mean)/2 - x*float64(c.Taper)/2
		area := 2 * math.Pi * r * length / patches / math.Cos(half)
		n := pressure * area
		pressed += n
		push += n * (math.Sin(half) + float64(c.Friction)*math.Cos(half))
		pull += n * (float64(c.Friction)*math.Cos(half) - math.Sin(half))
		twist += n * r * math.Sqrt(float64(c.Friction*c.Friction)-math.Tan(half)*math.Tan(half))
	}
	parttest.Within(t, "pressed", float64(c.Pressed(quantity.Force(push))), pressed, 1e-9)
	parttest.Within(t, "push", float64(c.Push(quantity.Force(pressed))), push, 1e-9)
	parttest.Within(t, "pull", float64(c.Pull(quantity.Force(pressed))), pull, 1e-9)
	parttest.Within(t, "slip", float64(c.Slip(quantity.Force(pressed), 0)), twist, 0.005) // the mean radius stands for the moment's, by 0.4 %
	// What slips along with no torque is what pulls it off.
	parttest.Within(t, "pull with no torque", float64(c.PullTwisted(quantity.Force(pressed), 0)), pull, 1e-9)
	if c.Slip(quantity.Force(pressed), quantity.Force(pull*1.01)) != 0 || c.PullTwisted(quantity.Force(pressed), quantity.Torque(2*twist)) != 0 {
		t.Error("a cone that has let go holds")
	}
	// Steeper than its friction angle it jumps off by itself.
	if (Cone{Taper: 0.4, Friction: 0.15, Mean: 0.03}).Pull(1000) >= 0 {
		t.Error("a steep cone holds itself")
	}
}

// Friction acts along one line on the cone: turned by an angle from round to
// along it stands against a torque and a pull at once. Slip and PullTwisted
// find either from the other.
func TestConeAgainstTorqueAndPull(t *testing.T) {
	c := Cone{Taper: 1. / 12, Friction: 0.17, Mean: 0.05}
	const n = 30e3
	half := math.Atan(float64(c.Taper) / 2)
	for _, turned := range []float64{0.26, 0.5, 1, 1.4} {
		round, along := 0.17*n*math.Cos(turned), 0.17*n*math.Sin(turned)
		torque, pull := round*0.05/2, along*math.Cos(half)-n*math.Sin(half)
		if pull < 0 {
			t.Fatalf("turned by %g the wedge alone is more than friction along", turned)
		}
		parttest.Within(t, "torque beside a pull", c.Slip(n, quantity.Force(pull)), torque, 1e-9)
		parttest.Within(t, "pull beside a torque", c.PullTwisted(n, quantity.Torque(torque)), pull, 1e-9)
	}
	if got := c.PullTwisted(0, 0); got != 0 {
		t.Errorf("a cone that nothing presses holds %g N", got)
	}
}

// Astern: friction held over the torque asked, unless it rests on a pull that
// nobody told and no key holds alone.
func TestMargin(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		held, key, asked quantity.Torque
		told             bool
		want             float64
	}{
		{300, 0, 200, true, 1.5},
		{150, 0, 200, true, 0.75},
		{150, 0, 200, false, 0.75}, // slips even without the pull
		{300, 0, 200, false, nan},
		{200, 0, 200, false, nan},
		{300, 150, 200, false, nan}, // the key alone does not hold
		{300, 200, 200, false, 1.5},
		{300, 250, 200, false, 1.5},
		{300, 250, 0, true, nan},
	} {
		got := float64(Margin(c.held, c.key, c.asked, c.told))
		if math.IsNaN(got) != math.IsNaN(c.want) || got != c.want && !math.IsNaN(got) {
			t.Errorf("%+v: %g", c, got)
		}
	}
}
