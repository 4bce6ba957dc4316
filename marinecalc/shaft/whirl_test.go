package shaft

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// cruiser is a scenario of our own: a 30 mm shaft in three bearings with an
// overhung propeller.
func cruiser() WhirlInput {
	return WhirlInput{
		Sections: []Section{{2.6, 0.030, 0}, {0.15, 0.028, 0}}, Bearings: []Bearing{{0, 0.04}, {1.25, 0.1}, {2.55, 0.12}}, Masses: []Load{{0.6, 2}},
		PropellerMass: 6, EntrainedWater: 0.25, CouplingMass: 3, CouplingAt: 0.04, ShaftSpeed: 1300 * rpm,
		IdleSpeed: 850 * rpm, GearRatioAhead: 2.15, ElasticModulus: 193e9, ShaftDensity: 8000, SpanGuideFast: 5200, SpanGuideSlow: 280,
	}
}

// span is a uniform shaft simply supported at its ends, with nothing on it.
func span(d, length, e, density float64) WhirlInput {
	return WhirlInput{Sections: []Section{{quantity.Length(length), quantity.Length(d), 0}}, Bearings: []Bearing{{0, 0}, {quantity.Length(length), 0}},
		ShaftSpeed: 100, ElasticModulus: quantity.Stress(e), ShaftDensity: quantity.Density(density)}
}

// Derived, regression only: 30 mm bar of S31600 over 1.2 m.
func TestWhirlOfABareSpanDerived(t *testing.T) {
	out := parttest.Must(t, Whirl, span(0.030, 1.2, 193e9, 8000))
	parttest.Within(t, "critical", out.Critical, 252.48, 1e-4)
}

// Shigley, Mechanical Engineering Design, eq. 7-22 (from memory): ω = (π/l)²·√(E·I/m).
// Two spans alike whip at the speed of one, to opposite sides: symmetry does
// not hide that.
func TestUniformSpans(t *testing.T) {
	want := math.Pow(math.Pi/1.2, 2) * math.Sqrt(193e9*secondMoment(0.03, 0)/(8000*area(0.03, 0)))
	parttest.Within(t, "one span", parttest.Must(t, Whirl, span(0.03, 1.2, 193e9, 8000)).Critical, want, 1e-4)
	for spans := 2; spans <= 6; spans++ {
		in := span(0.03, 1.2*float64(spans), 193e9, 8000)
		in.Bearings = nil
		for i := range spans + 1 {
			in.Bearings = append(in.Bearings, Bearing{At: quantity.Length(1.2 * float64(i))})
		}
		parttest.Within(t, "several spans", parttest.Must(t, Whirl, in).Critical, want, 1e-4)
	}
	// The span rule names the very span that whirls at the shaft's speed.
	in := span(0.03, 1.2, 193e9, 8000)
	in.ShaftSpeed = quantity.RotationSpeed(want)
	parttest.Within(t, "span rule", parttest.Must(t, Whirl, in).SpanAtSpeed, 1.2, 1e-12)
}

// Cantilever past a long stiff span: an overhung mass on a massless shaft,
// ω² = 3·E·I/(m·a²·(l + a)): Shigley, table A-9, case 10.
func TestOverhungMass(t *testing.T) {
	in := span(0.03, 1.5, 193e9, 1e-9)
	in.Bearings[1].At, in.PropellerMass = 1.2, 8
	want := math.Sqrt(3 * 193e9 * secondMoment(0.03, 0) / (8 * 0.3 * 0.3 * 1.5))
	out := parttest.Must(t, Whirl, in)
	parttest.Within(t, "model", out.Critical, want, 1e-8)
	parttest.Within(t, "Rayleigh", out.CriticalUpper, want, 1e-8)
	parttest.Within(t, "Dunkerley", out.CriticalLower, want, 1e-8)
	parttest.Within(t, "where", out.GreatestDeflectionAt, 1.5, 1e-12)
}

// A line turned end for end is the same line: what hangs on its free ends, and
// between its bearings, counts alike from either end.
func TestALineTurnedEndForEnd(t *testing.T) {
	in := span(0.03, 1.5, 193e9, 8000)
	in.Bearings = []Bearing{{0.25, 0}, {1.3, 0}}
	in.Masses = []Load{{0, 3}, {0.7, 5}, {1.5, 1}}
	one := parttest.Must(t, Whirl, in)
	in.Bearings = []Bearing{{0.2, 0}, {1.25, 0}}
	in.Masses = []Load{{0, 1}, {0.8, 5}, {1.5, 3}}
	other := parttest.Must(t, Whirl, in)
	parttest.Within(t, "model", one.Critical, float64(other.Critical), 1e-5)
	parttest.Within(t, "Rayleigh", one.CriticalUpper, float64(other.CriticalUpper), 1e-5)
	parttest.Within(t, "Dunkerley", one.CriticalLower, float64(other.CriticalLower), 1e-5)
}

// randomLine is a shaft line with two to five bearings and some masses.
func randomLine(r *rand.Rand) WhirlInput {
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	in := WhirlInput{ShaftSpeed: 100, ElasticModulus: 193e9, ShaftDensity: 8000, PropellerMass: quantity.Mass(between(0, 20)), EntrainedWater: 0.3}
	length := 0.0
	for range 1 + r.IntN(4) {
		s := Section{quantity.Length(between(0.3, 2)), quantity.Length(between(0.02, 0.06)), 0}
		s.Bore = s.Diameter * quantity.Length(between(0, 0.8))
		in.Sections = append(in.Sections, s)
		length += float64(s.Length)
	}
	bearings := 2 + r.IntN(4)
	for i := range bearings {
		in.Bearings = append(in.Bearings, Bearing{At: quantity.Length(length * (float64(i) + between(0.1, 0.9)) / float64(bearings))})
	}
	for range r.IntN(4) {
		in.Masses = append(in.Masses, Load{quantity.Length(between(0, length)), quantity.Mass(between(0.1, 10))})
	}
	return in
}

// Dunkerley is low and Rayleigh is high, on any line.
func TestEstimatesEncloseTheModel(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	for range 500 {
		in := randomLine(r)
		out := parttest.Must(t, Whirl, in)
		if !(float64(out.CriticalLower) <= float64(out.Critical)*(1+1e-6) && float64(out.Critical) <= float64(out.CriticalUpper)*(1+1e-6)) {
			t.Errorf("%v, %v, %v: %+v", out.CriticalLower, out.Critical, out.CriticalUpper, in)
		}
		in.PropellerMass += 5
		if more := parttest.Must(t, Whirl, in); more.Critical > out.Critical*(1+1e-6) {
			t.Errorf("a heavier propeller raises the critical speed from %v to %v", out.Critical, more.Critical)
		}
	}
}

// The stiffness matrix itself against one assembled dense for gonum: a
// clamped check would hide a wrong element, a random load does not.
func TestBeamAgainstGonum(t *testing.T) {
	in := cruiser()
	var b beam
	if _, err := in.lay(&b); err != nil {
		t.Fatal(err)
	}
	n := 2 * b.nodes
	k := mat.NewDense(n, n, nil)
	add := func(i, j int, v float64) { k.Set(i, j, k.At(i, j)+v) }
	for i := range b.nodes - 1 {
		h := b.x[i+1] - b.x[i]
		d := 0.030
		if (b.x[i]+b.x[i+1])/2 > 2.6 {
			d = 0.028
		}
		ei := 193e9 * secondMoment(d, 0)
		e := [4][4]float64{{12, 6 * h, -12, 6 * h}, {6 * h, 4 * h * h, -6 * h, 2 * h * h}, {-12, -6 * h, 12, -6 * h}, {6 * h, 2 * h * h, -6 * h, 4 * h * h}}
		for p := range 4 {
			for q := range 4 {
				add(2*i+p, 2*i+q, e[p][q]*ei/(h*h*h))
			}
		}
	}
	load := mat.NewVecDense(n, nil)
	var force, shape entries
	for i := range b.nodes {
		if b.held[i] {
			for j := range n {
				k.Set(2*i, j, 0)
				k.Set(j, 2*i, 0)
			}
			k.Set(2*i, 2*i, 1)
			continue
		}
		force[2*i] = math.Sin(float64(7 * i))
		load.SetVec(2*i, force[2*i])
	}
	var want mat.VecDense
	if err := want.SolveVec(k, load); err != nil {
		t.Fatal(err)
	}
	b.bend(&force, &shape)
	for i := range n {
		if math.Abs(shape[i]-want.AtVec(i)) > 1e-7*math.Abs(want.AtVec(i))+1e-12 {
			t.Errorf("entry %d: %g, gonum %g", i, shape[i], want.AtVec(i))
		}
	}
}

// The blades meet the first bending frequency of a uniform bar on two bearings,
// (π/L)²·√(EI/ρA) (Den Hartog, Mechanical Vibrations, 4th ed., table V of the
// appendix), at that over their number: 0.03 m of steel over 1.2 m, 3 blades.
func TestBladesApartFromTheWhirl(t *testing.T) {
	const d, length, e, density = 0.03, 1.2, 200e9, 7850.0
	first := math.Pow(math.Pi/length, 2) * math.Sqrt(e*d*d/16/density)
	for share, apart := range map[float64]float64{1: 0, 0.8: 0.25, 1.25: 0.2} {
		in := span(d, length, e, density)
		in.Blades, in.ShaftSpeed = 3, quantity.RotationSpeed(share*first/3)
		parttest.Near(t, "apart", float64(parttest.Must(t, Whirl, in).BladesApart), apart, 2e-3)
	}
	if out := parttest.Must(t, Whirl, span(d, length, e, density)); !math.IsNaN(float64(out.BladesApart)) {
		t.Errorf("of no blades: %g", out.BladesApart)
	}
}

func TestWhirlSmallThings(t *testing.T) {
	out := parttest.Must(t, Whirl, cruiser())
	parttest.Within(t, "length", out.ShaftLength, 2.75, 1e-12)
	parttest.Within(t, "longest", out.LongestSpan, 1.3, 1e-12)
	parttest.Within(t, "shortest", out.ShortestSpan, 1.25, 1e-12)
	parttest.Within(t, "idle", out.ShaftSpeedIdle, 850*rpm/2.15, 1e-12)
	parttest.Within(t, "propeller with water", out.EntrainedPropellerMass, 7.5, 1e-12)
	parttest.Within(t, "class span", out.ClassSpan, 5.2*math.Sqrt(28.0/1300), 1e-12)
	in := cruiser()
	in.ShaftSpeed, in.IdleSpeed = 300*rpm, 0
	out = parttest.Must(t, Whirl, in)
	parttest.Within(t, "class span at low speed", out.ClassSpan, 0.28*math.Sqrt(28), 1e-12)
	if !math.IsNaN(float64(out.ShaftSpeedIdle)) {
		t.Error("an idle speed that nobody gave")
	}
	in.Bearings[0], in.Bearings[2] = in.Bearings[2], in.Bearings[0]
	if again := parttest.Must(t, Whirl, in); again != out && again.Critical != out.Critical {
		t.Error("the order of the bearings changes the result")
	}
}

func TestWhirlRefuses(t *testing.T) {
	refusals(t, Whirl, cruiser, []refusal[WhirlInput]{
		{"/sections", "", func(l *WhirlInput) { l.Sections = nil }},
		{"/bearings", "1 bearings", func(l *WhirlInput) { l.Bearings = l.Bearings[:1] }},
		{"/masses", "", func(l *WhirlInput) { l.Masses = make([]Load, 13) }},
		{"/sections/1/bore", "30 mm leaves nothing of a shaft of 28 mm", func(l *WhirlInput) { l.Sections[1].Bore = 0.03 }},
		{"/sections/0/length", "", func(l *WhirlInput) { l.Sections[0].Length = 0 }},
		{"/bearings/2/at", "3500 mm lies beyond the shaft, whose sections add up to 2750 mm", func(l *WhirlInput) { l.Bearings[2].At = 3.5 }},
		{"/bearings/1/at", "is 50 mm, shorter than the bearings", func(l *WhirlInput) { l.Bearings[1].At = 0.05 }},
		{"/propellerAt", "", func(l *WhirlInput) { l.PropellerAt = 4 }},
		{"/masses/0/at", "", func(l *WhirlInput) { l.Masses[0].At = -1 }},
		{"/masses/0/mass", "", func(l *WhirlInput) { l.Masses[0].Mass = -1 }},
		{"/shaftSpeed", "", func(l *WhirlInput) { l.ShaftSpeed = 0 }},
		{"/elasticModulus", "", func(l *WhirlInput) { l.ElasticModulus = quantity.Stress(math.NaN()) }},
		{"/entrainedWater", "", func(l *WhirlInput) { l.EntrainedWater = -0.1 }},
	})
}

var whirlSink WhirlResult

func BenchmarkWhirl(b *testing.B) {
	in := cruiser()
	b.ReportAllocs()
	for b.Loop() {
		whirlSink, _ = Whirl(in)
	}
}

// The shape of the best quotient among the sums of two has no greater one
// beside it, and two that are one are taken as they are.
func TestBestOfTwoShapes(t *testing.T) {
	quotient := func(work, motion, mixed, more, old float64) float64 {
		return (more + old*(2*mixed+old*motion)) / (mixed + old*(2*motion+old*work))
	}
	// Two modes of 1/ω² 1 and 0.3 in one shape, and what it bends to.
	a, b := 0.8, 0.6
	work, motion := a*a/1+b*b/0.3, a*a+b*b
	mixed, more := a*a*1+b*b*0.3, a*a*1+b*b*0.09
	parttest.Within(t, "quotient", quotient(work, motion, mixed, more, best(work, motion, mixed, more)), 1, 1e-12)
	if old := best(1/0.3, 1, 0.3, 0.09); old != 0 {
		t.Errorf("%v of the shape before is left", old)
	}
}

// Class rules space bearings by √(d/n) above 350 rpm and by √d up to there: 30 mm at
// 351 rpm are 5200·√(30/351) mm, at 349 rpm 280·√30 mm. Bearings on one another are named.
func TestSpansEitherSideOfThreeHundredAndFifty(t *testing.T) {
	in := cruiser()
	in.Sections = []Section{{2.75, 0.030, 0}}
	for turns, want := range map[float64]float64{349: 280 * math.Sqrt(30), 350.5: 5200 * math.Sqrt(30/350.5), 351.5: 5200 * math.Sqrt(30/351.5)} {
		in.ShaftSpeed = quantity.RotationSpeed(turns) * rpm
		parttest.Within(t, "span", float64(parttest.Must(t, Whirl, in).ClassSpan), want/1000, 1e-9)
	}
	in.Bearings[1].At = 0.01
	_, err := Whirl(in)
	parttest.Says(t, err, "the span between bearings 1 and 2 is 10 mm")
}
