package fastener

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// What a torque breaks is what the tensile strength bears with the twist: at
// that torque the clamp stops growing, and past it nothing is left to count on.
func TestBreakingTorque(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	for range 500 {
		in := random(r)
		in.PrevailingTorque, in.TorqueScatter = 3, quantity.Ratio(0.7+0.6*r.Float64())
		out := tighten(t, in)
		// von Mises: tension and the twist of the thread come to the tensile strength.
		tension := float64(out.BreakingClamp / quantity.Force(out.StressArea))
		shear := tension * float64(out.TwistRatio)
		parttest.Within(t, "equivalent stress", math.Sqrt(tension*tension+3*shear*shear), float64(in.TensileStrength), 1e-12)
		in.TorqueUsed = out.BreakingTorque
		parttest.Within(t, "clamp there", float64(tighten(t, in).PreloadFromTorqueUsed), float64(out.BreakingClamp), 1e-9)
		parttest.Within(t, "share of what breaks it", float64(tighten(t, in).BreakingUse), 1, 1e-9)
		in.TorqueUsed *= 0.9
		if tighten(t, in).PreloadFromTorqueUsed >= out.BreakingClamp {
			t.Error("a tenth less breaks it too")
		}
		in.TorqueUsed *= 3
		far := tighten(t, in)
		if clamp := float64(far.PreloadFromTorqueUsed); !math.IsNaN(clamp) {
			t.Errorf("a broken bolt clamps %v", clamp)
		}
		// What is asked of the bolt goes on growing with the torque.
		asked := float64((in.TorqueUsed - 3) / (out.BreakingTorque - 3))
		parttest.Within(t, "share of what breaks it, beyond", float64(far.BreakingUse), asked, 1e-9)
		parttest.Within(t, "share of the proof load, beyond", float64(far.ProofUseFromTorqueUsed), asked*float64(out.BreakingClamp)/(float64(out.ProofStress)*float64(out.StressArea)), 1e-9)
	}
	in := whole()
	in.TensileStrength = 0
	if out := tighten(t, in); !math.IsNaN(float64(out.BreakingTorque)) || math.IsNaN(float64(out.PreloadFromTorqueUsed)) {
		t.Errorf("without a tensile strength: breaks at %v, clamps %v", out.BreakingTorque, out.PreloadFromTorqueUsed)
	}
	in.TorqueUsed *= 20
	if out := tighten(t, in); !math.IsNaN(float64(out.PreloadFromTorqueUsed)) || !math.IsNaN(float64(out.JointClamp)) {
		t.Errorf("far past the yield strength, without a tensile strength: clamps %v", out.PreloadFromTorqueUsed)
	}
}

// One setting, whatever nature does: the clamp at a setting that was worked
// out for another nut is that setting less the nut's own prevailing torque,
// over the torque that a unit of clamp takes.
func TestASettingStays(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 500 {
		in := random(r)
		in.Method, in.PrevailingTorque, in.TensileStrength = Short, 2, 0
		set := tighten(t, in)
		other := in
		other.PrevailingTorque, other.NutFactor, other.WrenchScatter = 3, in.NutFactor*1.2, 0.8
		out, err := PreloadAt(other, set.Setting())
		if err != nil {
			t.Fatal(err)
		}
		if a, b := out.Setting(), set.Setting(); a != b {
			t.Errorf("the setting moves from %+v to %+v", b, a)
		}
		want := 0.8 * max(float64(set.WrenchSetting)-3, 0) / (float64(other.NutFactor) * float64(in.NominalDiameter))
		parttest.Within(t, "clamp", float64(out.AchievedPreload), want, 1e-9)
		other.Control = ByStretch
		if out, err = PreloadAt(other, set.Setting()); err != nil {
			t.Fatal(err)
		}
		parttest.Within(t, "clamp by turn", float64(out.AchievedPreload), 0.8*float64(set.Preload), 1e-12)
	}
}

// An own simulation of 200 000 nuts at the one setting: 1/4-20 A4-50, oiled, a
// lock nut of 1.5 to 40 lbf·in (ASME B18.16.6), 25 % of scatter. A quarter of
// the bolts are taken past the yield that stands in the proof column, a
// quarter do not get half of it.
func TestOneSettingOnManyNuts(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	in := unified(1./4, 20, 1, 210e6/ksi)
	in.ProofStrength, in.YieldStrength, in.NutFactor = 210e6, 210e6, 0.15
	in.PrevailingTorque = 20.75 * lbfIn
	first := tighten(t, in)
	set := first.Setting()
	const nuts = 200_000
	over, slack := 0, 0
	for range nuts {
		prevailing := (1.5 + 38.5*r.Float64()) * lbfIn
		k := 0.15 * (1 + 0.25/1.96*r.NormFloat64())
		want := (float64(set.Wrench) - prevailing) / (k * float64(in.NominalDiameter))
		// The same nut by the function: its friction as scatter of the clamp.
		in.PrevailingTorque, in.TorqueScatter = quantity.Torque(prevailing), quantity.Ratio(0.15/k)
		out, err := PreloadAt(in, set)
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(out.AchievedPreload); math.Abs(got-max(want, 0)) > 1e-9*math.Abs(want) {
			t.Fatalf("prevailing %v N·m, K %v: clamp %v N, want %v", prevailing, k, got, want)
		}
		if out.ProofUse > 1 {
			over++
		}
		if out.ProofUse < 0.5 {
			slack++
		}
	}
	for name, n := range map[string]int{"past yield": over, "under half": slack} {
		if share := float64(n) / nuts; share < 0.2 || share > 0.3 {
			t.Errorf("%s: %.3f of the bolts", name, share)
		}
	}
}

// A joint whose bolts stand at a torque of their own holds by that: clamp is in
// proportion to torque (Shigley, 9th ed., eq. 8-27), so half of the setting
// leaves half of the clamp.
func TestTheJointGoesByTheTorqueItHas(t *testing.T) {
	in := whole()
	in.TorqueUsed, in.PrevailingTorque = 0, 0
	advised := tighten(t, in)
	parttest.Within(t, "without a torque in question", float64(advised.JointClamp), float64(advised.AchievedPreload), 0)
	in.TorqueUsed = advised.WrenchSetting / 2
	loose := tighten(t, in)
	parttest.Within(t, "at half the torque", float64(loose.JointClamp), float64(in.TorqueScatter)*float64(advised.MiddlePreload)/2, 1e-9)
}
