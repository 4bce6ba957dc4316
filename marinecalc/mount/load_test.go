package mount

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// sprung is a mount with its stiffness in three directions.
func sprung(name string, forward, starboard, up, k float64) Mount {
	m := at(name, forward, starboard)
	m.Up = quantity.Length(up)
	m.Stiffness, m.StiffnessSideways, m.StiffnessAlong = quantity.Stiffness(k), quantity.Stiffness(0.4*k), quantity.Stiffness(1.3*k)
	return m
}

func engine() LoadInput {
	return LoadInput{
		Mounts:     []Mount{sprung("front port", 0.85, -0.25, 0.06, 150e3), sprung("front starboard", 0.85, 0.25, 0.06, 150e3), sprung("aft port", 0.25, -0.25, 0.06, 150e3), sprung("aft starboard", 0.25, 0.25, 0.06, 150e3)},
		EngineMass: 190, CentreForward: 0.56, CentreUp: 0.15,
		EngineLength: 0.85, EngineWidth: 0.5, EngineHeight: 0.6, BoxFactor: 1,
		UsualDeflection: 4e-3, SidewaysRatio: 0.4, AlongRatio: 1, DynamicRatio: 1.3, DampingRatio: 0.06,
		Cylinders: 3, Strokes: FourStroke, IdleSpeed: 850 * math.Pi / 30, EngineSpeed: 2800 * math.Pi / 30,
		ShaftTorque: 170, AsternTorque: 150, Thrust: 2500, AsternThrust: 0.7, ThrustOnMounts: 1, ShaftTurns: Right, CouplingDiameter: 0.102,
	}
}

func carried(t testing.TB, in LoadInput) LoadResult {
	t.Helper()
	return parttest.Must(t, Load, in)
}

// Source: f = (1/2π)√(g/δ) = 15.761/√(δ in mm) Hz (linear spring; City
// University of Hong Kong notes, constants derived): 1, 3, 5, 10 and 25.4 mm.
func TestFrequencyFromDeflection(t *testing.T) {
	for deflection, want := range map[float64]float64{1: 15.761, 3: 9.100, 5: 7.048, 10: 4.984, 25.4: 3.127} {
		in := engine()
		in.DynamicRatio = 1
		for i := range in.Mounts {
			in.Mounts[i].Stiffness = quantity.Stiffness(190 * 9.80665 / 4 / (deflection * 1e-3))
		}
		out := carried(t, in)
		parttest.Near(t, "deflection", out.MeanDeflection, deflection*1e-3, 1e-12)
		parttest.Near(t, "frequency", out.BounceFrequency, want, 0.0006)
		parttest.Near(t, "frequency", out.BounceFrequency, 15.761/math.Sqrt(deflection), 2e-4)
	}
}

// Source: transmissibility formula (Ogata, System Dynamics, 4th ed., eq.
// 9-14, formula from memory; values derived), and exactly 1 at r = √2.
func TestTransmissibility(t *testing.T) {
	for _, k := range []struct{ r, damping, want float64 }{
		{2, 0, 0.33333}, {2, 0.05, 0.33918}, {2, 0.1, 0.35586}, {3, 0, 0.125}, {3, 0.05, 0.13041}, {3, 0.1, 0.14537},
		{1, 0.05, 10.0499}, {1, 0.1, 5.0990}, {0.5, 0, 1.33333},
	} {
		parttest.Near(t, "T", Transmissibility(quantity.Ratio(k.r), quantity.Ratio(k.damping)), k.want, 0.00006)
	}
	for damping := quantity.Ratio(0); damping < 1; damping += 0.05 {
		parttest.Near(t, "T at √2", Transmissibility(math.Sqrt2, damping), 1, 1e-12)
	}
}

// Source: Thomson, Theory of Vibration, ch. 3 problem (inputs from memory):
// 65 lb on three springs, 580 r/min, 10 % passed, no damping: r² = 11 and
// 18.8 lb/in for each spring.
func TestThomsonIsolation(t *testing.T) {
	const pound, lbf = 0.45359237, 0.45359237 * 9.80665
	speed := 580 * math.Pi / 30
	natural := speed / math.Sqrt(11)
	each := 65 * pound * natural * natural / 3
	parttest.Near(t, "stiffness", each/(lbf/inch), 18.8, 0.05)

	in := engine()
	in.Mounts = in.Mounts[:3]
	in.Mounts[0] = sprung("ahead", 0.6, 0, 0, each) // three mounts round the centre of gravity: only heave moves up and down
	in.Mounts[1], in.Mounts[2] = sprung("port", 0, -0.5, 0, each), sprung("starboard", 0, 0.5, 0, each)
	in.EngineMass, in.CentreForward, in.CentreUp, in.DynamicRatio, in.DampingRatio = 65*pound, 0.2, 0, 1, 0.001
	out := carried(t, in)
	_, bounce := Passed(&out.Modes, 580.0/60, in.DampingRatio)
	parttest.Near(t, "passed", bounce, 0.1, 0.0002)
}

// Source: statics (derived): 200 kg, centre of gravity at 0.45 of the length
// behind the front pair: 539.37 N on each front mount, 441.30 N on each aft.
func TestWeightShare(t *testing.T) {
	in := engine()
	in.EngineMass, in.CentreForward = 200, 0.25+0.55*0.6
	out := carried(t, in)
	for i, want := range []float64{539.37, 539.37, 441.30, 441.30} {
		parttest.Near(t, "load", out.Loads[i].AtRest, want, 0.006)
	}
	parttest.Near(t, "lowest", out.LowestLoad, 441.30, 0.006)
}

// Source: statics (derived): 20 kW at a shaft of 1200 r/min is 159.15 N·m;
// over mounts 0.45 m apart, 353.7 N up on one side and down on the other.
func TestTorqueReaction(t *testing.T) {
	in := engine()
	in.Thrust, in.ThrustOnMounts, in.CentreUp = 0, 0, 0
	for i := range in.Mounts {
		in.Mounts[i].Starboard = quantity.Length(math.Copysign(0.225, float64(in.Mounts[i].Starboard)))
		in.Mounts[i].Up = 0
	}
	in.ShaftTorque = quantity.Torque(20e3 / (1200 * math.Pi / 30))
	parttest.Near(t, "torque", in.ShaftTorque, 159.15, 0.01)
	out := carried(t, in)
	// The shaft turns clockwise looking forward, so the engine heels to port.
	port := out.Loads[0].Ahead + out.Loads[2].Ahead - out.Loads[0].AtRest - out.Loads[2].AtRest
	starboard := out.Loads[1].Ahead + out.Loads[3].Ahead - out.Loads[1].AtRest - out.Loads[3].AtRest
	parttest.Near(t, "port", port, 353.7, 0.05)
	parttest.Near(t, "starboard", starboard, -353.7, 0.05)
	if out.FaceMoves[0].Roll >= 0 || out.FaceMoves[1].Roll <= 0 || out.Driving != TorqueOnly {
		t.Errorf("roll ahead %g, astern %g, %q", out.FaceMoves[0].Roll, out.FaceMoves[1].Roll, out.Driving)
	}
}

// Source: engine dynamics, f = rpm·cylinders/120 (derived): 3000/2 is 50 Hz,
// 3000/3 75, 1800/4 60, 800/2 13.33, 3600/3 90; a two-stroke twice that.
func TestFiringFrequency(t *testing.T) {
	for _, k := range []struct {
		rpm       float64
		cylinders int
		want      float64
	}{{3000, 2, 50}, {3000, 3, 75}, {1800, 4, 60}, {800, 2, 13.333}, {3600, 3, 90}} {
		in := engine()
		in.Cylinders, in.EngineSpeed = k.cylinders, quantity.RotationSpeed(k.rpm*math.Pi/30)
		parttest.Near(t, "firing", carried(t, in).FiringFull, k.want, 0.001)
		in.Strokes = TwoStroke
		parttest.Near(t, "firing, two-stroke", carried(t, in).FiringFull, 2*k.want, 0.001)
	}
}

// A push straight through the middle of springs all alike moves the engine by
// force over stiffness and turns it nowhere.
func TestThrustThroughTheMiddle(t *testing.T) {
	in := engine()
	in.ShaftTorque, in.AsternTorque, in.CentreUp = 0.1, 0, 0 // next to none, which rolls it about the middle
	for i := range in.Mounts {
		in.Mounts[i].Up = 0
	}
	face := carried(t, in).FaceMoves[0]
	parttest.Near(t, "forward", face.Forward, 2500/(4*1.3*150e3), 1e-12)
	parttest.Near(t, "up", face.Up, 0, 1e-15)
	parttest.Near(t, "gap", face.GapPerDiameter, 0, 1e-15)
}

func allTired(mounts []Mount) bool {
	first := mounts[0].DeflectionNow / max(mounts[0].DeflectionNew, 1e-9)
	return !slices.ContainsFunc(mounts, func(m Mount) bool {
		return m.DeflectionNew == 0 || math.Abs(float64(m.DeflectionNow/m.DeflectionNew-first)) > 1e-9
	})
}

// Tired mounts: half as much deflection again means two thirds of the stiffness, so
// everything moves half as far again.
func TestTiredMounts(t *testing.T) {
	in := engine()
	for i := range in.Mounts {
		in.Mounts[i].DeflectionNew, in.Mounts[i].DeflectionNow = 3e-3, 4.5e-3
	}
	out := carried(t, in)
	parttest.Near(t, "tired factor", out.TiredFactor, 1.5, 1e-9)
	parttest.Near(t, "deflection ratio", out.DeflectionRatio, 1.5, 1e-12)
	parttest.Near(t, "stiffness now", out.Loads[0].StiffnessNow, 100e3, 1e-6)
	parttest.Near(t, "new offset", out.NewOffset, float64(out.MovedOffset)/1.5, 1e-12)
	fresh := carried(t, engine())
	parttest.Near(t, "as new", fresh.MovedGapPerDiameter, float64(out.NewGapPerDiameter), 1e-15)
	if !math.IsNaN(float64(fresh.TiredFactor)) || !math.IsNaN(float64(fresh.DeflectionRatio)) {
		t.Error("nothing was said of deflection")
	}
	in.MountAge, in.CreepPerDecade = 1000*day, 0.05
	parttest.Near(t, "creep", carried(t, in).CreepRatio, 1.15, 1e-12)
}

// A mirrored boat with a left-handed shaft does everything mirrored.
func TestMirroredEngine(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	for range 100 {
		in := anyEngine(r)
		other := in
		other.Mounts = slices.Clone(in.Mounts)
		for i := range other.Mounts {
			other.Mounts[i].Starboard = -other.Mounts[i].Starboard
		}
		other.CentreStarboard, other.ShaftTurns = -in.CentreStarboard, Left
		a, b := carried(t, in), carried(t, other)
		for i := range in.Mounts {
			parttest.Near(t, "load", a.Loads[i].Ahead, float64(b.Loads[i].Ahead), 1e-6)
			parttest.Near(t, "load astern", a.Loads[i].Astern, float64(b.Loads[i].Astern), 1e-6)
		}
		parttest.Near(t, "starboard", a.FaceMoves[0].Starboard, -float64(b.FaceMoves[0].Starboard), 1e-12)
		parttest.Near(t, "up", a.FaceMoves[0].Up, float64(b.FaceMoves[0].Up), 1e-12)
		parttest.Near(t, "frequency", a.HighestFrequency, float64(b.HighestFrequency), 1e-9)
	}
}

// A centre of gravity ahead of all mounts lifts the aft ones.
func TestEngineThatLifts(t *testing.T) {
	in := engine()
	in.CentreForward = 1
	out := carried(t, in)
	if out.LowestLoad >= 0 || !strings.HasPrefix(out.LowestLoadAt, "aft") {
		t.Errorf("lowest load %g at %q", out.LowestLoad, out.LowestLoadAt)
	}
}

// Without stiffness the deflection stands in, and all mounts share alike.
func TestStiffnessFromDeflection(t *testing.T) {
	in := engine()
	for i := range in.Mounts {
		in.Mounts[i].Stiffness = 0
	}
	parttest.Near(t, "usual deflection", carried(t, in).MeanDeflection, 4e-3, 1e-12)
	for i := range in.Mounts {
		in.Mounts[i].DeflectionNow = 5e-3
	}
	parttest.Near(t, "deflection now", carried(t, in).MeanDeflection, 5e-3, 1e-12)
	for i := range in.Mounts {
		in.Mounts[i].DeflectionNew = 3e-3
	}
	parttest.Near(t, "deflection now, new known", carried(t, in).MeanDeflection, 5e-3, 1e-12)
}

// Where nothing is known of drive, cylinders, ratings, nothing is said.
func TestNothingSaidOfNothing(t *testing.T) {
	in := engine()
	in.ShaftTorque, in.AsternTorque, in.Thrust, in.Cylinders = 0, 0, 0, 0
	for i := range in.Mounts {
		in.Mounts[i].RatedLoad, in.Mounts[i].RatedThrust = 1200, 800
	}
	out := carried(t, in)
	if !(out.RestUse > 0) {
		t.Errorf("at rest: %g", out.RestUse)
	}
	for name, v := range map[string]float64{"moved": float64(out.MovedGapPerDiameter), "offset": float64(out.MovedOffset), "gap": float64(out.MovedGap),
		"thrust": float64(out.ThrustUse), "firing": float64(out.FiringIdle), "passed": float64(out.PassedFull), "use": float64(out.LoadUse), "compression": float64(out.Compression), "driving load": float64(out.LowestDriving)} {
		if !math.IsNaN(v) {
			t.Errorf("%s = %g", name, v)
		}
	}
	if out.Driving != NotDriven || out.FaceMoves[0].Name != "" {
		t.Errorf("%q, %q", out.Driving, out.FaceMoves[0].Name)
	}
}

func TestLoadRefuses(t *testing.T) {
	for _, k := range []struct {
		name   string
		spoil  func(*LoadInput)
		places []string
		says   string
	}{
		{"two mounts", func(in *LoadInput) { in.Mounts = in.Mounts[:2] }, []string{"/mounts"}, "2 mounts"},
		{"all in one line", func(in *LoadInput) {
			for i := range in.Mounts {
				in.Mounts[i].Forward, in.Mounts[i].Starboard = quantity.Length(0.2*float64(i)), quantity.Length(0.1*float64(i)+0.004*float64(i%2))
			}
		}, []string{"/mounts"}, "1.6 mm of one line"},
		{"light", func(in *LoadInput) { in.EngineMass = 0.19 }, []string{"/engineMass"}, "0.19"},
		{"no box, no inertia", func(in *LoadInput) { in.EngineLength = 0 }, []string{"/engineLength"}, "0"},
		{"soft and undamped", func(in *LoadInput) { in.Mounts[1].Stiffness, in.DampingRatio = 10, 0 }, []string{"/mounts/1/stiffness", "/dampingRatio"}, "10"},
		{"NaN", func(in *LoadInput) {
			in.CentreUp, in.UsualDeflection = quantity.Length(nan), quantity.Length(nan)
			in.Mounts[0].Stiffness = 0
		}, []string{"/centreUp", "/usualDeflection"}, "NaN"},
		{"words", func(in *LoadInput) { in.Strokes, in.ShaftTurns = "six", "" }, []string{"/strokes", "/shaftTurns"}, "six"},
	} {
		in := engine()
		in.Mounts = slices.Clone(in.Mounts)
		k.spoil(&in)
		_, err := Load(in)
		parttest.RefusedAt(t, err, k.places...)
		if err == nil || !strings.Contains(err.Error(), k.says) {
			t.Errorf("%s: %v, want %q", k.name, err, k.says)
		}
	}
}

// Extreme but valid input stays finite.
func TestExtremesStayFinite(t *testing.T) {
	for _, soft := range []bool{true, false} {
		in := engine()
		for i := range in.Mounts {
			m := &in.Mounts[i]
			m.Stiffness, m.StiffnessSideways, m.StiffnessAlong = 1e9, 1e2, 1e2
			if soft {
				m.Stiffness = 1e3
			}
			m.Inclination, m.DeflectionNew, m.DeflectionNow = math.Pi/3, 0.05e-3, 0.1
		}
		in.EngineMass, in.DampingRatio, in.CentreForward, in.CentreUp = 50000, 0.001, 8, 3
		out := carried(t, in)
		for _, v := range []float64{float64(out.LowestLoad), float64(out.MovedOffset), float64(out.MovedGap), float64(out.PassedIdle), float64(out.BouncePassedFull),
			float64(out.HighestFrequency), float64(out.LowestFrequency), float64(out.TiredFactor)} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%+v", out)
			}
		}
	}
}

func TestLoadAllocatesNothing(t *testing.T) {
	in := engine()
	parttest.NoAllocations(t, func() { _, _ = Load(in) })
}

func BenchmarkLoad(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	all := anyEngine(r)
	for len(all.Mounts) < 8 {
		all = anyEngine(r)
	}
	for name, in := range map[string]LoadInput{"four alike": engine(), "eight, tired": all} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Load(in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A mount that stands higher than when new, or as high as one without load, is
// told, and its deflection softens nothing.
func TestAMountThatRose(t *testing.T) {
	in := engine()
	for i := range in.Mounts {
		in.Mounts[i].DeflectionNew, in.Mounts[i].DeflectionNow = 3e-3, 3.6e-3
	}
	for now, ratio := range map[quantity.Length]quantity.Ratio{3.3e-3: 1.1, 1.5e-3: 0.5, 0: 0, -1.5e-3: -0.5} {
		in.Mounts[1].DeflectionNow = now
		out := carried(t, in)
		parttest.Near(t, "least", out.LeastRatio, float64(ratio), 1e-12)
		parttest.Near(t, "most", out.DeflectionRatio, 1.2, 1e-12)
		if out.LeastRatioAt != in.Mounts[1].Name || now <= 0 && out.Loads[1].StiffnessNow != in.Mounts[1].Stiffness {
			t.Errorf("%g: %q, %g", now, out.LeastRatioAt, out.Loads[1].StiffnessNow)
		}
	}
	in.Mounts[1].DeflectionNow = quantity.Length(math.NaN())
	parttest.Near(t, "of the others", carried(t, in).LeastRatio, 1.2, 1e-12)
}

// Stiffness times deflection is the load (Hooke), of all mounts the weight.
func TestWeightByTheMounts(t *testing.T) {
	in := engine()
	sum := 0.0
	for i := range in.Mounts {
		m := &in.Mounts[i]
		m.DeflectionNew, m.DeflectionNow = quantity.Length(2e-3+float64(i)*0.5e-3), quantity.Length(4e-3)
		sum += float64(m.Stiffness) * float64(m.DeflectionNew)
	}
	out := carried(t, in)
	parttest.Near(t, "carried", out.CarriedRatio, sum/(float64(in.EngineMass)*9.80665), 1e-12)
	for i := range in.Mounts {
		in.Mounts[i].DeflectionNow = quantity.Length(math.NaN())
	}
	parttest.Near(t, "as new", carried(t, in).CarriedRatio, float64(out.CarriedRatio), 1e-12)
	in.Mounts[0].DeflectionNew = 0
	if r := carried(t, in).CarriedRatio; !math.IsNaN(float64(r)) {
		t.Errorf("without one deflection: %g", r)
	}
}
