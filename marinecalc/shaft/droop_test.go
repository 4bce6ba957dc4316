package shaft

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// cutter is a scenario of our own: 700 mm of 30 mm stainless bar and a 3 kg
// shaft coupling flange.
func cutter() DroopInput {
	return DroopInput{ShaftDiameter: 0.030, FreeLength: 0.7, CouplingMass: 3, CouplingDiameter: 0.102, CouplingCentre: 0.03,
		StepLength: 0.1, StepDiameter: 0.025, SpanBehind: 1.4, ShaftIncline: 0.15, ElasticModulus: 193e9, ShaftDensity: 8000}
}

// bar is the 1-1/4 in bar of the derived examples: E 28 Mpsi, 0.286 lb/in³.
func bar() DroopInput {
	return DroopInput{ShaftDiameter: 1.25 * inch, FreeLength: 30 * inch, ElasticModulus: 28e6 * psi, ShaftDensity: 0.286 * pound / (inch * inch * inch)}
}

// Derived, regression only.
func TestDroopDerived(t *testing.T) {
	in := bar()
	parttest.Within(t, "bare bar", parttest.Must(t, Droop, in).DroopSag, 0.01059*inch, 5e-4)
	in.CouplingMass = 10 * pound
	out := parttest.Must(t, Droop, in)
	parttest.Within(t, "with 10 lb", out.DroopSag, 0.03741*inch, 2e-4)
	parttest.Within(t, "slope", out.DroopSlope, 1.812e-3, 3e-4)
	in.FreeLength, in.CouplingMass, in.SpanBehind, in.ShaftDensity = 6*inch, 50*pound, 48*inch, 1e-9
	out = parttest.Must(t, Droop, in)
	parttest.Within(t, "overhang", out.DroopSag, 0.009656*inch, 2e-4)
	parttest.Within(t, "far support", out.BackReaction, -6.25*lbf, 1e-6)
	parttest.Within(t, "near support", out.SupportReaction, 56.25*lbf, 1e-6)
}

// The closed form against the beam elements of Whirl, for stepped shafts with
// a span behind, on random cases.
func TestDroopAgainstBeamElements(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	for range 200 {
		in := DroopInput{ShaftDiameter: quantity.Length(between(0.02, 0.05)), FreeLength: quantity.Length(between(0.2, 0.9)), CouplingMass: quantity.Mass(between(0, 8)),
			SpanBehind: quantity.Length(between(0.3, 2)), ElasticModulus: 193e9, ShaftDensity: 8000}
		in.StepLength = in.FreeLength * quantity.Length(between(0.15, 0.85))
		in.StepDiameter = in.ShaftDiameter * quantity.Length(between(0.6, 1.4))
		in.CouplingCentre = in.StepLength * quantity.Length(between(0.2, 0.8))
		in.ShaftBore = in.StepDiameter * 0.3
		in.PropellerMass, in.PropellerOverhang = quantity.Mass(between(0, 15)), quantity.Length(between(0.05, 0.3))
		in.ShaftIncline = quantity.Angle(between(-0.3, 0.3))
		square := gravity * math.Cos(float64(in.ShaftIncline)) // what of a weight bends the shaft

		// The same as a beam: aft end, span behind, thick part, second section.
		var b beam
		span, thick, step := float64(in.SpanBehind), float64(in.FreeLength-in.StepLength), float64(in.StepLength)
		parts := []struct{ length, d float64 }{{float64(in.PropellerOverhang), float64(in.ShaftDiameter)}, {span, float64(in.ShaftDiameter)}, {thick, float64(in.ShaftDiameter)}, {step - float64(in.CouplingCentre), float64(in.StepDiameter)}, {float64(in.CouplingCentre), float64(in.StepDiameter)}}
		const cuts = 20
		b.nodes = 1
		at := 0.0
		for _, p := range parts {
			for range cuts {
				at += p.length / cuts
				b.x[b.nodes] = at
				b.nodes++
			}
		}
		var force, shape entries
		for i := range b.nodes - 1 {
			p, h, at := parts[i/cuts], b.x[i+1]-b.x[i], 2*i
			b.addElement(i, float64(in.ElasticModulus)*secondMoment(p.d, float64(in.ShaftBore)))
			w := float64(in.ShaftDensity) * square * area(p.d, float64(in.ShaftBore)) * h / 2
			force[at] += w
			force[at+1] += w * h / 6
			force[at+2] += w
			force[at+3] -= w * h / 6
		}
		force[2*4*cuts] += float64(in.CouplingMass) * square
		force[0] += float64(in.PropellerMass) * square
		b.held[cuts], b.held[2*cuts] = true, true
		b.hold()
		b.factor()
		b.bend(&force, &shape)
		out := parttest.Must(t, Droop, in)
		if got, want := float64(out.DroopSag), shape[2*(b.nodes-1)]; math.Abs(got-want) > 1e-5*math.Abs(want)+1e-8 {
			t.Errorf("droop %g, by elements %g: %+v", got, want, in)
		}
		if got, want := float64(out.DroopSlope), shape[2*(b.nodes-1)+1]; math.Abs(got-want) > 1e-5*math.Abs(want)+1e-8 {
			t.Errorf("slope %g, by elements %g: %+v", got, want, in)
		}
		parttest.Within(t, "end stiffness", out.EndStiffness, 1/b.influence(b.nodes-1), 5e-4)
	}
}

// The lift takes the droop out: a light coupling that pulls up with that force
// leaves none, and the slope it leaves is the one that is told.
func TestLiftTakesTheSagOut(t *testing.T) {
	heavy := cutter()
	heavy.SpanBehind = 3                             // whose weight carries a part, so that the lift is less than the coupling weighs
	heavy.CouplingCentre, heavy.CouplingMass = 0, 10 // the lift acts at the face
	before := parttest.Must(t, Droop, heavy)
	heavy.CouplingMass -= quantity.Mass(float64(before.LiftForce) / gravity / math.Cos(float64(heavy.ShaftIncline)))
	after := parttest.Must(t, Droop, heavy)
	parttest.Within(t, "droop", after.DroopSag+1, 1, 1e-12)
	parttest.Within(t, "slope left", after.DroopSlope, float64(before.SlopeLifted), 1e-9)
}

// A bar held fast that carries nothing but itself lifts by 3/8 of its weight,
// and keeps a slope of -w·l³/(48·E·I): table A-9, propped cantilever, from
// memory.
func TestLiftOfABareBar(t *testing.T) {
	in := bar()
	out := parttest.Must(t, Droop, in)
	parttest.Within(t, "lift", out.LiftForce, 3.0/8*float64(out.ThickWeight), 1e-12)
	parttest.Within(t, "slope left", out.SlopeLifted, -float64(out.DroopSlope)/8, 1e-12)
}

// Longer and heavier droops more; more incline droops less; thicker droops less
// under a coupling.
func TestDroopGoesTheRightWay(t *testing.T) {
	base := parttest.Must(t, Droop, cutter()).DroopSag
	for name, c := range map[string]struct {
		change func(*DroopInput)
		more   bool
	}{
		"longer":  {func(o *DroopInput) { o.FreeLength *= 1.2 }, true},
		"heavier": {func(o *DroopInput) { o.CouplingMass *= 2 }, true},
		"steeper": {func(o *DroopInput) { o.ShaftIncline *= 2 }, false},
		"thicker": {func(o *DroopInput) { o.ShaftDiameter, o.StepDiameter = 0.04, 0.035 }, false},
		"stiffer": {func(o *DroopInput) { o.ElasticModulus *= 2 }, false},
	} {
		in := cutter()
		c.change(&in)
		if sag := parttest.Must(t, Droop, in).DroopSag; (sag > base) != c.more {
			t.Errorf("%s: %v from %v", name, sag, base)
		}
	}
}

// A long span behind lifts the end: the gap opens at the top.
func TestSpanBehindMayLift(t *testing.T) {
	in := bar()
	in.FreeLength, in.SpanBehind, in.CouplingDiameter = 0.1, 2, 0.1
	out := parttest.Must(t, Droop, in)
	if !(out.DroopSlope < 0 && out.DroopGap < 0) || out.DroopOpens != OpensAbove {
		t.Errorf("slope %v, gap %v, %q", out.DroopSlope, out.DroopGap, out.DroopOpens)
	}
}

func TestDroopRefuses(t *testing.T) {
	refusals(t, Droop, cutter, []refusal[DroopInput]{
		{"/shaftDiameter", "", func(o *DroopInput) { o.ShaftDiameter = 0 }},
		{"/freeLength", "", func(o *DroopInput) { o.FreeLength = quantity.Length(math.NaN()) }},
		{"/elasticModulus", "", func(o *DroopInput) { o.ElasticModulus = 0 }},
		{"/shaftDensity", "", func(o *DroopInput) { o.ShaftDensity = -1 }},
		{"/couplingMass", "", func(o *DroopInput) { o.CouplingMass = -1 }},
		{"/propellerMass", "", func(o *DroopInput) { o.PropellerMass = -1 }},
		{"/propellerOverhang", "", func(o *DroopInput) { o.PropellerOverhang = quantity.Length(math.Inf(1)) }},
		{"/stepLength", "700 mm does not go into a free length of 700 mm", func(o *DroopInput) { o.StepLength = 0.7 }},
		{"/stepDiameter", "", func(o *DroopInput) { o.StepDiameter = 0 }},
		{"/couplingCentre", "200 mm aft of the face, beyond the 100 mm", func(o *DroopInput) { o.CouplingCentre = 0.2 }},
		{"/shaftBore", "", func(o *DroopInput) { o.ShaftBore = 0.028 }},
		{"/shaftIncline", "", func(o *DroopInput) { o.ShaftIncline = 9 }},
		{"/freeLength", "on a free length of 6000 mm", func(o *DroopInput) { o.FreeLength = 6 }},
	})
}

var sagSink DroopResult

func TestDroopDoesNotAllocate(t *testing.T) {
	in := cutter()
	parttest.NoAllocations(t, func() { sagSink, _ = Droop(in) })
}

func BenchmarkDroop(b *testing.B) {
	in := cutter()
	b.ReportAllocs()
	for b.Loop() {
		sagSink, _ = Droop(in)
	}
}

// A propeller aft of the bearing behind loads it, unloads the near one by what
// its lever brings, and lets the coupling end droop: statics by hand. Without its
// overhang it does not count.
func TestPropellerBehind(t *testing.T) {
	in := bar()
	in.ShaftDensity, in.SpanBehind, in.CouplingMass = 1e-9, 20*inch, 10*pound
	without := parttest.Must(t, Droop, in)
	in.PropellerMass = 20 * pound
	if placeless := parttest.Must(t, Droop, in); !math.IsNaN(float64(placeless.BackReaction)) || placeless.DroopSag != without.DroopSag {
		t.Errorf("a propeller that hangs nobody knows where: %+v", placeless)
	}
	in.PropellerOverhang = 5 * inch
	with := parttest.Must(t, Droop, in)
	parttest.Within(t, "bearing behind", with.BackReaction-without.BackReaction, 25*lbf, 1e-9)
	parttest.Within(t, "near bearing", with.SupportReaction-without.SupportReaction, -5*lbf, 1e-9)
	stiff := float64(in.ElasticModulus) * secondMoment(float64(in.ShaftDiameter), 0)
	parttest.Within(t, "slope", with.DroopSlope-without.DroopSlope, 100*lbf*inch*20*inch/(6*stiff), 1e-9)
	parttest.Within(t, "lift", with.LiftForce, float64(with.DroopSag)*float64(with.EndStiffness), 1e-9)
}

// What hangs is carried: the two reactions are all weights together, and the moments
// about the first bearing cancel. Without a bearing behind neither is known, and a
// propeller whose overhang nobody measured leaves the aft one open.
func TestReactionsCarryTheWeights(t *testing.T) {
	in := DroopInput{ShaftDiameter: 0.03, FreeLength: 0.6, ElasticModulus: 193e9, ShaftDensity: 8000, CouplingMass: 5, CouplingCentre: 0.03, SpanBehind: 1.4, PropellerMass: 12, PropellerOverhang: 0.2}
	out := parttest.Must(t, Droop, in)
	weights := out.ThickWeight + out.TipWeight + out.CouplingWeight + out.SpanWeight + out.PropellerWeight + out.AftShaftWeight
	parttest.Within(t, "both reactions", float64(out.SupportReaction+out.BackReaction), float64(weights), 1e-12)
	about := -float64(out.ThickWeight)*0.3 - float64(out.CouplingWeight)*(0.6-0.03) + float64(out.SpanWeight)*0.7 + float64(out.PropellerWeight)*1.6 + float64(out.AftShaftWeight)*1.5
	parttest.Within(t, "moments", float64(out.BackReaction)*1.4, about, 1e-9)
	in.PropellerOverhang = 0
	if out = parttest.Must(t, Droop, in); out.PropellerWeight != 0 || !math.IsNaN(float64(out.BackReaction)) {
		t.Errorf("a propeller nobody knows where: %g N, reaction %g", out.PropellerWeight, out.BackReaction)
	}
	in.SpanBehind, in.PropellerMass = 0, 0
	if out = parttest.Must(t, Droop, in); !math.IsNaN(float64(out.SpanWeight)) || !math.IsNaN(float64(out.SupportReaction)) || !math.IsNaN(float64(out.AftMoment)) || !math.IsNaN(float64(out.PropellerWeight)) {
		t.Errorf("no bearing behind: %+v", out)
	}
}
