package shaft

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// fineModel is the same shaft cut anew, with nothing taken from the code but
// the input: 120 elements in its length, consistent mass, dense matrices,
// every place where it lies. Shorter elements would lose more digits than
// they gain. It gives the first critical speed and where the mode is
// greatest.
func fineModel(t *testing.T, in WhirlInput, clamped bool) (omega, at float64) {
	t.Helper()
	type mass struct{ at, kg float64 }
	stations, length := []float64{0}, 0.0
	for _, s := range in.Sections {
		length += float64(s.Length)
		stations = append(stations, length)
	}
	var bearings []float64
	for _, b := range in.Bearings {
		bearings = append(bearings, float64(b.At))
	}
	slices.Sort(bearings)
	stations = append(stations, bearings...)
	propeller := length
	if in.PropellerAt > 0 {
		propeller = float64(in.PropellerAt)
	} else if in.PropellerOverhang > 0 {
		propeller = bearings[len(bearings)-1] + float64(in.PropellerOverhang)
	}
	masses := []mass{{propeller, float64(in.PropellerMass) * float64(1+in.EntrainedWater)}, {float64(in.CouplingAt), float64(in.CouplingMass)}}
	for _, m := range in.Masses {
		masses = append(masses, mass{float64(m.At), float64(m.Mass)})
	}
	for _, m := range masses {
		stations = append(stations, m.at)
	}
	slices.Sort(stations)
	x := []float64{0}
	for i := 1; i < len(stations); i++ {
		if gap := stations[i] - stations[i-1]; gap > 1e-4*length {
			parts := math.Ceil(120 * gap / length)
			for k := 1.0; k <= parts; k++ {
				x = append(x, stations[i-1]+gap*k/parts)
			}
		}
	}
	near := func(at float64) int {
		best := 0
		for i := range x {
			if math.Abs(x[i]-at) < math.Abs(x[best]-at) {
				best = i
			}
		}
		return best
	}
	n := 2 * len(x)
	k, m := mat.NewSymDense(n, nil), mat.NewSymDense(n, nil)
	for i := range len(x) - 1 {
		h, middle := x[i+1]-x[i], (x[i+1]+x[i])/2
		section, end := 0, float64(in.Sections[0].Length)
		for middle > end {
			section++
			end += float64(in.Sections[section].Length)
		}
		d, b := float64(in.Sections[section].Diameter), float64(in.Sections[section].Bore)
		ei := float64(in.ElasticModulus) * math.Pi / 64 * (math.Pow(d, 4) - math.Pow(b, 4))
		rho := float64(in.ShaftDensity) * math.Pi / 4 * (d*d - b*b)
		stiff := [4][4]float64{{12, 6 * h, -12, 6 * h}, {6 * h, 4 * h * h, -6 * h, 2 * h * h}, {-12, -6 * h, 12, -6 * h}, {6 * h, 2 * h * h, -6 * h, 4 * h * h}}
		heavy := [4][4]float64{{156, 22 * h, 54, -13 * h}, {22 * h, 4 * h * h, 13 * h, -3 * h * h}, {54, 13 * h, 156, -22 * h}, {-13 * h, -3 * h * h, -22 * h, 4 * h * h}}
		for p := range 4 {
			for q := p; q < 4; q++ {
				k.SetSym(2*i+p, 2*i+q, k.At(2*i+p, 2*i+q)+ei/(h*h*h)*stiff[p][q])
				m.SetSym(2*i+p, 2*i+q, m.At(2*i+p, 2*i+q)+rho*h/420*heavy[p][q])
			}
		}
	}
	for _, one := range masses {
		i := 2 * near(one.at)
		m.SetSym(i, i, m.At(i, i)+one.kg)
	}
	gone := map[int]bool{}
	for _, b := range bearings {
		gone[2*near(b)] = true
	}
	if clamped {
		gone[2*near(bearings[0])+1] = true
	}
	var left []int
	for i := range n {
		if !gone[i] {
			left = append(left, i)
		}
	}
	kf, mf := mat.NewSymDense(len(left), nil), mat.NewSymDense(len(left), nil)
	for p, i := range left {
		for q, j := range left[:p+1] {
			kf.SetSym(p, q, k.At(i, j))
			mf.SetSym(p, q, m.At(i, j))
		}
	}
	// Power iteration on K⁻¹·M from a shape without symmetry.
	var chol mat.Cholesky
	if !chol.Factorize(kf) {
		t.Fatal("gonum cannot factor the stiffness")
	}
	u, load := mat.NewVecDense(len(left), nil), mat.NewVecDense(len(left), nil)
	r := rand.New(rand.NewPCG(99, 1))
	for i := range len(left) {
		u.SetVec(i, r.NormFloat64())
	}
	flex := 0.0
	for range 20000 {
		load.MulVec(mf, u)
		if err := chol.SolveVecTo(u, load); err != nil {
			if _, ill := err.(mat.Condition); !ill {
				t.Fatal(err)
			}
		}
		var next mat.VecDense
		next.MulVec(mf, u)
		before := flex
		flex = mat.Dot(u, &next) / mat.Dot(u, load)
		u.ScaleVec(1/math.Sqrt(mat.Dot(u, &next)), u)
		if math.Abs(flex-before) < 1e-12*flex {
			break
		}
	}
	most := 0.0
	for p, i := range left {
		if v := math.Abs(u.AtVec(p)); i%2 == 0 && v > most {
			most, at = v, x[i/2]
		}
	}
	return 1 / math.Sqrt(flex), at
}

// The critical speeds lie within 0.3 % of those of a fine model, the high
// estimate never below them, the low one never above, and the greatest
// deflection within 2 % of the length.
func TestWhirlAgainstAFineModel(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	cases := []WhirlInput{cruiser(), span(0.03, 6, 193e9, 8000)}
	for range 40 {
		cases = append(cases, randomLine(r))
	}
	worst := 0.0
	for _, in := range cases {
		out := parttest.Must(t, Whirl, in)
		want, at := fineModel(t, in, false)
		worst = max(worst, math.Abs(float64(out.Critical)/want-1))
		parttest.Within(t, "free to turn", out.Critical, want, 3e-3)
		if float64(out.CriticalUpper) < want*(1-1e-9) || float64(out.CriticalLower) > want*(1+2e-3) {
			t.Errorf("%v to %v does not hold %v: %+v", out.CriticalLower, out.CriticalUpper, want, in)
		}
		length := float64(out.ShaftLength)
		if off := math.Abs(float64(out.GreatestDeflectionAt) - at); off > 0.02*length {
			t.Errorf("greatest at %v, by the fine model %v of %v: %+v", out.GreatestDeflectionAt, at, length, in)
		}
	}
	t.Logf("worst %.2g", worst)
	// The span of 6 m bends most in its middle, by symmetry.
	parttest.Within(t, "middle", parttest.Must(t, Whirl, cases[1]).GreatestDeflectionAt, 3, 1e-6)
}

// Clamped at the gearbox: against the fine model, and against the exact root
// 3.92660 of tan x = tanh x for a span clamped at one end and pinned at the
// other (Blevins, Formulas for Natural Frequency and Mode Shape, table 8-1,
// from memory; here solved).
func TestClampedAtTheGearbox(t *testing.T) {
	root := 3.9
	for range 50 {
		root -= (math.Tan(root) - math.Tanh(root)) / (math.Tan(root)*math.Tan(root) + math.Tanh(root)*math.Tanh(root))
	}
	in := span(0.03, 1.2, 193e9, 8000)
	want := math.Pow(root/1.2, 2) * math.Sqrt(193e9*secondMoment(0.03, 0)/(8000*area(0.03, 0)))
	parttest.Within(t, "one span", parttest.Must(t, Whirl, in).CriticalClamped, want, 2e-4)

	r := rand.New(rand.NewPCG(13, 1))
	clamped := 0
	for range 40 {
		in := randomLine(r)
		in.Bearings[0].At = 0
		out, err := Whirl(in)
		if err != nil {
			continue
		}
		want, _ := fineModel(t, in, true)
		parttest.Within(t, "clamped", out.CriticalClamped, want, 3e-3)
		if out.CriticalClamped < out.Critical*(1-1e-6) {
			t.Errorf("clamping lowers %v to %v", out.Critical, out.CriticalClamped)
		}
		if out.CriticalClamped > out.Critical*1.001 {
			clamped++
		}
	}
	if clamped < 20 {
		t.Errorf("only %d lines gain by clamping", clamped)
	}

	in = cruiser()
	in.EndFixity, in.SupportFactor = 0.5, 0.9
	out := parttest.Must(t, Whirl, in)
	parttest.Within(t, "half way", out.CriticalUsed, 0.9*(float64(out.Critical)+float64(out.CriticalClamped))/2, 1e-12)
	parttest.Within(t, "use", out.SpeedUse, float64(in.ShaftSpeed/out.CriticalUsed), 1e-12)
	// A shaft whose first bearing stands far from the forward end has no flange to hold it.
	in.Bearings[0].At = 0.3
	if out := parttest.Must(t, Whirl, in); out.CriticalClamped != out.Critical {
		t.Errorf("clamped without a gearbox: %v, %v", out.Critical, out.CriticalClamped)
	}
}

// The blades meet the critical speed at a part of it, and whether that is in
// use goes by idle and full speed.
func TestOrders(t *testing.T) {
	in := cruiser()
	out := parttest.Must(t, Whirl, in)
	if out.BladeCrossing != BladesUnknown || out.Orders[1].Order != "" || out.Orders[0].Order != OncePerTurn || out.Orders[0].Crossing != ClearOfUse {
		t.Errorf("blades not known: %+v", out)
	}
	in.Blades = 3
	out = parttest.Must(t, Whirl, in)
	parttest.Within(t, "three blades", out.Orders[1].From, float64(out.Critical)/3, 1e-12)
	parttest.Within(t, "three blades, clamped", out.Orders[1].To, float64(out.CriticalClamped)/3, 1e-12)
	parttest.Within(t, "twice three blades", out.Orders[2].From, float64(out.Critical)/6, 1e-12)
	if out.BladeCrossing != InUse { // some 700 rpm between 395 and 1300
		t.Errorf("%+v", out)
	}
	for crossing, change := range map[string]func(*WhirlInput){
		UpToFull:   func(in *WhirlInput) { in.IdleSpeed = 0 },
		ClearOfUse: func(in *WhirlInput) { in.IdleSpeed = 2000 * rpm },
		InUse:      func(in *WhirlInput) { in.ShaftSpeed = out.Orders[1].From },
	} {
		one := in
		change(&one)
		if got := parttest.Must(t, Whirl, one).BladeCrossing; got != crossing {
			t.Errorf("%s, want %s", got, crossing)
		}
	}
	in.ShaftSpeed = out.Orders[1].From * 0.99
	if got := parttest.Must(t, Whirl, in).BladeCrossing; got != ClearOfUse {
		t.Errorf("below the crossing: %s", got)
	}
}

// The propeller hangs where it was typed, else by its overhang, else at the
// after end; how far the shaft goes on beyond it is told.
func TestPlaceOfThePropeller(t *testing.T) {
	in := cruiser()
	in.PropellerOverhang = 0.11
	out := parttest.Must(t, Whirl, in)
	parttest.Within(t, "by the overhang", out.PropellerPlace, 2.66, 1e-12)
	parttest.Within(t, "shaft beyond", out.ShaftBeyond, 0.09, 1e-9)
	want, _ := fineModel(t, in, false)
	parttest.Within(t, "critical", out.Critical, want, 3e-3)
	in.PropellerAt = 2.7
	parttest.Within(t, "typed", parttest.Must(t, Whirl, in).PropellerPlace, 2.7, 1e-12)
	in.PropellerAt, in.PropellerOverhang = 0, 0.4
	_, err := Whirl(in)
	parttest.RefusedAt(t, err, "/propellerOverhang")
	in.PropellerMass = 0
	if out := parttest.Must(t, Whirl, in); !math.IsNaN(float64(out.PropellerPlace)) || !math.IsNaN(float64(out.ShaftBeyond)) {
		t.Errorf("a place without a propeller: %+v", out)
	}
	in.PropellerMass, in.PropellerOverhang = 6, quantity.Length(math.NaN())
	_, err = Whirl(in)
	parttest.RefusedAt(t, err, "/propellerOverhang")
}

// A shaft looked at from its other end whirls alike: bearings 0.3 and 2.0 m
// along one of 2.6 m are 0.6 and 2.3 m along it from aft.
func TestAShaftFromItsOtherEnd(t *testing.T) {
	in := span(0.03, 2.6, 193e9, 8000)
	in.Bearings = []Bearing{{0.3, 0}, {2.0, 0}}
	want := parttest.Must(t, Whirl, in).Critical
	in.Bearings = []Bearing{{0.6, 0}, {2.3, 0}}
	parttest.Within(t, "from aft", parttest.Must(t, Whirl, in).Critical, float64(want), 1e-7)
	free, _ := fineModel(t, in, false)
	parttest.Within(t, "by the fine model", want, free, 3e-3)
}

// Nodes that lie nearer than a thousandth of the shaft are one.
func TestStationsThatAreOne(t *testing.T) {
	var s stations
	for _, c := range []struct {
		at float64
		n  int
	}{{0, 1}, {20, 2}, {0.019, 2}, {19.981, 2}, {25, 2}, {-1, 2}, {0.021, 3}, {10, 4}, {10.5, 5}, {10.25, 6}} {
		if s.add(c.at, 20); s.n != c.n {
			t.Errorf("%g m: %d stations, want %d", c.at, s.n, c.n)
		}
	}
	if !slices.IsSorted(s.at[:s.n]) {
		t.Errorf("%v", s.at[:s.n])
	}
}

// Where a mode deflects most, against many places of the same cubic between its nodes.
func TestGreatestDeflectionBetweenNodes(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	inside := 0
	for range 300 {
		b := beam{nodes: 3}
		copy(b.x[:], []float64{0, 0.7, 1.6})
		for i := range 6 {
			b.mode[i] = r.NormFloat64() * (1 + 3*float64(i%2))
		}
		deflection := func(x float64) float64 {
			i := 0
			if x > b.x[1] {
				i = 1
			}
			h := b.x[i+1] - b.x[i]
			s, at := (x-b.x[i])/h, 2*i
			return math.Abs(b.mode[at]*(1-3*s*s+2*s*s*s) + b.mode[at+1]*h*s*(1-s)*(1-s) + b.mode[at+2]*s*s*(3-2*s) + b.mode[at+3]*h*s*s*(s-1))
		}
		at, node := b.greatest(), 0
		for i := range 3 {
			if math.Abs(b.mode[2*i]) > math.Abs(b.mode[2*node]) {
				node = i
			}
		}
		from, to := b.x[max(0, node-1)], b.x[min(node+1, 2)] // it is looked for beside the node that moves most
		most := 0.0
		for n := range 20001 {
			most = max(most, deflection(from+(to-from)*float64(n)/20000))
		}
		parttest.Within(t, "deflection", deflection(at), most, 1e-6)
		if at != b.x[node] {
			inside++
		}
	}
	if inside < 50 {
		t.Errorf("only %d between the nodes", inside)
	}
}
