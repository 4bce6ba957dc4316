package torque

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Units of the printed examples, in SI: NIST SP 811, appendix B.8; 1 hp =
// 550 ft·lbf/s.
const (
	inch  = 0.0254
	pound = 4.4482216152605
	lbfIn = inch * pound
	lbfFt = 12 * lbfIn
	hp    = 550 * lbfFt
	rpm   = 2 * math.Pi / 60
	psi   = pound / (inch * inch)
)

// direct is a shaft driven without gearbox, loss or shock.
func direct(power quantity.Power, speed quantity.RotationSpeed) ShaftInput {
	return ShaftInput{EnginePower: power, EngineSpeed: speed, GearRatioAhead: 1, GearboxEfficiency: 1, ShockFactor: 1}
}

func load(t *testing.T, in ShaftInput) ShaftResult {
	t.Helper()
	return parttest.Must(t, Shaft, in)
}

func TestTorqueConstants(t *testing.T) {
	// Shigley, Mechanical Engineering Design, eq. 3-42: 63 025 lbf·in·rpm/hp,
	// exactly 33 000 × 12/(2π) = 63 025.357.
	horse := float64(load(t, direct(hp, rpm)).ShaftTorque)
	parttest.Within(t, "lbf·in per hp and rpm", horse/lbfIn, 63025, 1e-5)
	parttest.Within(t, "the same, exact", horse/lbfIn, 33000*12/(2*math.Pi), 1e-12)
	// Standard identities, recomputed from the definitions.
	parttest.Within(t, "lbf·ft per hp and rpm", horse/lbfFt, 5252.113, 1e-7)
	parttest.Within(t, "N·m per kW and rpm", float64(load(t, direct(1000, rpm)).ShaftTorque), 9549.29659, 1e-9)
}

// tube is the shear stress in a hollow shaft, 16 T D/(π (D⁴ − d⁴)): Hibbeler,
// Mechanics of Materials; Gere, Mechanics of Materials.
func tube(torque, outer, inner float64) float64 {
	return 16 * torque * outer / (math.Pi * (math.Pow(outer, 4) - math.Pow(inner, 4)))
}

func TestPublishedShafts(t *testing.T) {
	// Hibbeler, Mechanics of Materials, problem 5-50, SI variant: 2500 kW,
	// 1700 rpm, 200/180 mm: 14 043 N·m, 26.0 MPa.
	q := float64(load(t, direct(2.5e6, 1700*rpm)).ShaftTorque)
	parttest.Within(t, "Hibbeler 5-50 SI torque", q, 14043, 1e-4)
	parttest.Within(t, "Hibbeler 5-50 SI stress", tube(q, 0.2, 0.18), 26.0e6, 2e-3)
	// The same in US units, value from memory: 2500 hp, 8 in, wall 3/8 in:
	// 92 684 lbf·in, 2.83 ksi.
	q = float64(load(t, direct(2500*hp, 1700*rpm)).ShaftTorque)
	parttest.Within(t, "Hibbeler 5-50 US torque", q/lbfIn, 92684, 1e-5)
	parttest.Within(t, "Hibbeler 5-50 US stress", tube(q, 8*inch, 7.25*inch)/psi, 2830, 2e-3)
	// Gere, Mechanics of Materials, problem 3.7, value from memory: 18/12 in at
	// 100 rpm carries 6560 hp at 4500 psi; twice the speed halves the stress.
	q = float64(load(t, direct(6560*hp, 100*rpm)).ShaftTorque)
	parttest.Within(t, "Gere 3.7 stress", tube(q, 18*inch, 12*inch)/psi, 4500, 1e-3)
	twice := float64(load(t, direct(6560*hp, 200*rpm)).ShaftTorque)
	parttest.Within(t, "Gere 3.7 twice the speed", twice, q/2, 1e-15)
}

func sample() ShaftInput {
	return ShaftInput{
		EnginePower: 24e3, EngineSpeed: 2800 * rpm, GearRatioAhead: 2.15, GearRatioAstern: 2.4,
		BoatSpeed: 3.1, PropellerDiameter: 0.43, GearboxEfficiency: 0.96, ShockFactor: 2,
		AsternPowerShare: 1, PropulsiveEfficiency: 0.5, WaterDensity: 1025,
	}
}

// random is a drive inside the range that the schema allows.
func random(r *rand.Rand) ShaftInput {
	between := func(lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }
	return ShaftInput{
		EnginePower: quantity.Power(between(100, 1e7)), EngineSpeed: quantity.RotationSpeed(between(2, 1500)),
		GearRatioAhead: quantity.Ratio(between(0.2, 30)), GearRatioAstern: quantity.Ratio(between(0.2, 30)),
		BoatSpeed: quantity.Velocity(between(0.3, 40)), PropellerDiameter: quantity.Length(between(0.1, 5)),
		GearboxEfficiency: quantity.Ratio(between(0.5, 1)), ShockFactor: quantity.Ratio(between(1, 10)),
		AsternPowerShare: quantity.Ratio(between(0.05, 1)), PropulsiveEfficiency: quantity.Ratio(between(0.1, 0.9)),
		WaterDensity: quantity.Density(between(900, 1100)), ThrustDeduction: quantity.Ratio(0.5 * r.Float64()),
	}
}

func TestEnergyIsKept(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 2000 {
		in := random(r)
		out := load(t, in)
		parttest.Within(t, "power in the shaft", float64(out.ShaftTorque)*float64(out.ShaftSpeed), float64(out.ShaftPower), 1e-12)
		parttest.Within(t, "power astern", float64(out.AsternTorque)*float64(out.ShaftSpeedAstern), float64(out.AsternPower), 1e-12)
		parttest.Within(t, "power with heat", float64(out.ShaftPower+out.GearboxHeat), float64(in.EnginePower), 1e-12)
		parttest.Within(t, "power that moves the boat", float64(out.Thrust)*float64(1-in.ThrustDeduction)*float64(in.BoatSpeed), float64(in.PropulsiveEfficiency)*float64(out.ShaftPower), 1e-12)
		parttest.Within(t, "peak", float64(out.PeakTorque), float64(in.ShockFactor)*max(float64(out.ShaftTorque), float64(out.AsternTorque)), 1e-12)
	}
}

func TestScaling(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	for range 500 {
		in := random(r)
		once := load(t, in)
		in.EnginePower *= 2
		twice := load(t, in)
		parttest.Within(t, "torque at double power", float64(twice.ShaftTorque), 2*float64(once.ShaftTorque), 1e-14)
		parttest.Within(t, "thrust at double power", float64(twice.Thrust), 2*float64(once.Thrust), 1e-14)
		parttest.Within(t, "standstill thrust at double power", float64(twice.StandstillThrust), math.Pow(2, 2.0/3)*float64(once.StandstillThrust), 1e-13)
	}
}

// At the speed of its own jet an ideal disc's power is thrust × speed through
// the disc; the two sides of the momentum theory must agree.
func TestStandstillThrustMeetsMomentum(t *testing.T) {
	in := sample()
	out := load(t, in)
	disc := math.Pi / 4 * 0.43 * 0.43
	through := math.Sqrt(float64(out.StandstillThrust) / (2 * 1025 * disc))
	parttest.Within(t, "power through the disc", float64(out.StandstillThrust)*through, float64(out.ShaftPower), 1e-12)
}

func TestNotGivenIsNotANumber(t *testing.T) {
	in := sample()
	in.GearRatioAstern, in.BoatSpeed, in.PropellerDiameter = 0, 0, 0
	in.AsternPowerShare, in.PropulsiveEfficiency, in.WaterDensity = 0, 0, 0
	out := load(t, in)
	for name, v := range map[string]float64{
		"astern torque": float64(out.AsternTorque), "astern speed": float64(out.ShaftSpeedAstern), "astern power": float64(out.AsternPower),
		"thrust": float64(out.Thrust), "standstill thrust": float64(out.StandstillThrust),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s: got %v without its input", name, v)
		}
	}
	// A boat speed or a propeller that nobody gave makes no thrust without end,
	// nor one of nothing, with all else known.
	in = sample()
	in.BoatSpeed, in.PropellerDiameter = 0, 0
	if all := load(t, in); !math.IsNaN(float64(all.Thrust)) || !math.IsNaN(float64(all.StandstillThrust)) {
		t.Errorf("thrust %v, at standstill %v", all.Thrust, all.StandstillThrust)
	}
	parttest.Within(t, "peak without astern", float64(out.PeakTorque), 2*float64(out.ShaftTorque), 1e-15)
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		where  string
		change func(*ShaftInput)
	}{
		{"/enginePower", func(d *ShaftInput) { d.EnginePower = 0 }},
		{"/enginePower", func(d *ShaftInput) { d.EnginePower = quantity.Power(math.Inf(1)) }},
		{"/engineSpeed", func(d *ShaftInput) { d.EngineSpeed = -1 }},
		{"/engineSpeed", func(d *ShaftInput) { d.EngineSpeed = quantity.RotationSpeed(math.NaN()) }},
		{"/gearRatioAhead", func(d *ShaftInput) { d.GearRatioAhead = 0 }},
		{"/gearRatioAstern", func(d *ShaftInput) { d.GearRatioAstern = -2 }},
		{"/boatSpeed", func(d *ShaftInput) { d.BoatSpeed = -2 }},
		{"/propellerDiameter", func(d *ShaftInput) { d.PropellerDiameter = quantity.Length(math.NaN()) }},
		{"/gearboxEfficiency", func(d *ShaftInput) { d.GearboxEfficiency = 96 }},
		{"/shockFactor", func(d *ShaftInput) { d.ShockFactor = 0.5 }},
		{"/asternPowerShare", func(d *ShaftInput) { d.AsternPowerShare = 0 }},
		{"/propulsiveEfficiency", func(d *ShaftInput) { d.PropulsiveEfficiency = 1.2 }},
		{"/thrustDeduction", func(d *ShaftInput) { d.ThrustDeduction = 1 }},
		{"/waterDensity", func(d *ShaftInput) { d.WaterDensity = 0 }},
	} {
		in := sample()
		c.change(&in)
		_, err := Shaft(in)
		parttest.RefusedAt(t, err, c.where)
	}
	_, err := Shaft(ShaftInput{})
	if list := problem.Of(err); len(list) != 5 {
		t.Errorf("the empty drive: want its five needs refused at once, got %v", err)
	}
}

func TestDoesNotAllocate(t *testing.T) {
	in := sample()
	parttest.NoAllocations(t, func() { sink, _ = Shaft(in) })
}

var sink ShaftResult

func BenchmarkShaft(b *testing.B) {
	in := sample()
	b.ReportAllocs()
	for b.Loop() {
		sink, _ = Shaft(in)
	}
}
