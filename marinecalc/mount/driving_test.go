package mount

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// With torque and no thrust, or thrust and no torque, nothing is said of
// driving: half of what drives is not what drives. With no thrust on the mounts
// torque is all.
func TestHalfTheDriveIsNotTheDrive(t *testing.T) {
	for _, k := range []struct {
		torque quantity.Torque
		thrust quantity.Force
		share  quantity.Ratio
		says   string
		known  bool
	}{{170, 2500, 1, BothDrive, true}, {170, 0, 1, ThrustMissing, false}, {0, 2500, 1, TorqueMissing, false}, {170, 0, 0, TorqueOnly, true}, {0, 0, 1, NotDriven, false}} {
		in := engine()
		for i := range in.Mounts {
			in.Mounts[i].RatedLoad = 1200
		}
		in.ShaftTorque, in.AsternTorque, in.Thrust, in.ThrustOnMounts = k.torque, k.torque, k.thrust, k.share
		out := carried(t, in)
		if out.Driving != k.says {
			t.Errorf("%+v: %q", k, out.Driving)
		}
		for _, v := range []float64{float64(out.MovedGapPerDiameter), float64(out.LowestDriving), float64(out.LoadUse)} {
			if math.IsNaN(v) == k.known {
				t.Errorf("%+v: %g", k, v)
			}
		}
	}
}

// With one way of driving known alone, only what is too much even so is told.
func TestOneWayOfDrivingIsNotBoth(t *testing.T) {
	for _, k := range []struct {
		ahead, astern quantity.Torque
		rated         quantity.Force
		lowest, use   bool // told
	}{{170, 170, 1200, true, true}, {170, 0, 1200, false, false}, {0, 170, 1200, false, false}, {170, 0, 300, false, true}, {2000, 0, 1200, true, true}, {0, 2000, 1200, true, true}} {
		in := engine()
		for i := range in.Mounts {
			in.Mounts[i].RatedLoad = k.rated
		}
		in.ShaftTorque, in.AsternTorque, in.Thrust, in.ThrustOnMounts = k.ahead, k.astern, 0, 0
		out := carried(t, in)
		if math.IsNaN(float64(out.LowestDriving)) == k.lowest || math.IsNaN(float64(out.LoadUse)) == k.use {
			t.Errorf("%+v: %v, %v", k, out.LowestDriving, out.LoadUse)
		}
	}
}

// Source: statics. Two pairs of mounts lean inward by 30°, stiff only along
// their axes: with nothing square to them each carries a quarter of the weight
// over cos 30° along its axis, 543 N where it carries 471 N of weight; thrust
// is shared by the stiffness fore and aft.
func TestLoadAlongALeaningMount(t *testing.T) {
	in := engine()
	in.EngineMass, in.CentreForward, in.CentreUp = 4*471/9.80665, 0.55, 0
	in.ShaftTorque, in.AsternTorque, in.Thrust = 0.1, 0, 8000
	for i := range in.Mounts {
		m := &in.Mounts[i]
		m.Up, m.Inclination, m.StiffnessSideways, m.RubberHeight, m.RatedLoad, m.RatedThrust = 0, math.Pi/6, 100, 0.04, 1200, 1900
	}
	out := carried(t, in)
	for i := range in.Mounts {
		to := out.Loads[i]
		parttest.Near(t, "weight", to.AtRest, 471, 0.5)
		parttest.Near(t, "along its axis", to.Axial, 471/math.Cos(math.Pi/6), 1)
		parttest.Near(t, "fore and aft", to.Thrust, 2000, 1)
	}
	parttest.Near(t, "of the rating", out.RestUse, 543.0/1200, 0.001)
	parttest.Near(t, "of the rating for thrust", out.ThrustUse, 2000.0/1900, 0.001)
	parttest.Near(t, "compression", out.Compression, 543.9/150e3/0.04, 1e-4)
}
