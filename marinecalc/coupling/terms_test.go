package coupling

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// A bore that a split clamp presses evenly: the pressure p over half the bore
// stands against the clamp of the bolts (thin ring, any statics text), 2·F of
// each pair on both sides, so that p·d·l = n·F; added up all round it is π·n·F,
// and friction acts at the radius. Summed over small pieces.
func TestSplitClampAsASum(t *testing.T) {
	in := split()
	in.ClampFactor, in.PinchClamp = math.Pi, 12e3
	out := parttest.Must(t, Bore, in)
	const n = 10000
	d, l := 0.03, 0.06
	p := 4 * 12e3 / (d * l)
	pressed := 0.0
	for range n {
		pressed += p * l * math.Pi * d / n
	}
	parttest.Within(t, "pressed", out.Pressed, pressed, 1e-9)
	parttest.Within(t, "friction", out.FrictionTorque, 0.15*pressed*d/2, 1e-9)
	parttest.Within(t, "margin ahead", out.MarginAhead, 0.15*pressed*d/2/170, 1e-9)
}

// A taper cut into slices: the mean diameter, and the pressure that its nut makes
// over the cone.
func TestTaperedBoreAsSlices(t *testing.T) {
	in := coned()
	out := parttest.Must(t, Bore, in)
	const n = 1000
	middle, area := 0.0, 0.0
	for i := range n {
		d := 0.03 - 0.1*0.06*(float64(i)+0.5)/n
		middle += d / n
		area += math.Pi * d * 0.06 / n
	}
	parttest.Within(t, "mean diameter", out.MeanDiameter, middle, 1e-12)
	half := math.Atan(0.05)
	parttest.Within(t, "pressed", out.Pressed, 30e3/(math.Sin(half)+0.15*math.Cos(half)), 1e-9)
	parttest.Within(t, "pressure", out.BorePressure, float64(out.Pressed)/area, 1e-9)
	in.HubDiameter = 0
	if out = parttest.Must(t, Bore, in); !math.IsNaN(float64(out.HubStress)) {
		t.Errorf("a boss nobody measured bears %g Pa", out.HubStress)
	}
	in.EngagedLength = 0.31
	_, err := Bore(in)
	parttest.Says(t, err, "less than 300 mm")
}

// An interference fit is warmed until it is wider than the shaft by its
// clearance, a thousandth of the diameter where nobody says (DIN 7190, from
// memory); it comes off when what is left of the interference has gone.
func TestWarmedBore(t *testing.T) {
	in := pressed()
	in.RoomTemperature = 293.15
	for clearance, wanted := range map[quantity.Length]float64{30e-6: 30e-6, 0: 30e-6, 45e-6: 45e-6} {
		in.FittingClearance = clearance
		out := parttest.Must(t, Bore, in)
		grown := 0.03 * (1 + 11.7e-6*(float64(out.HeatOn)-293.15))
		parttest.Near(t, "bore warm", grown, 0.03+30e-6+wanted, 1e-10)
		parttest.Near(t, "bore free", 0.03*11.7e-6*float64(out.HeatOff), 24e-6, 1e-12)
		parttest.Within(t, "press", out.PressForce, 0.15*float64(out.Pressed), 1e-12)
	}
	if out := parttest.Must(t, Bore, split()); !math.IsNaN(float64(out.PressForce)) || !math.IsNaN(float64(out.HeatOn)) || !math.IsNaN(float64(out.HeatOff)) {
		t.Errorf("a clamp is pressed on with %g N", out.PressForce)
	}
}

// The greater of friction and key holds, whichever it is; where there is
// no key, friction alone.
func TestGreaterOfFrictionAndKey(t *testing.T) {
	keyed := func(clamp quantity.Force) BoreInput {
		in := split()
		in.PinchClamp, in.PinchDiameter, in.PinchPitch = clamp, 0.03, 0.0035 // a thread that bears it
		in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = 0.008, 0.007, 0.045, 250e6, 205e6
		return in
	}
	weak := parttest.Must(t, Bore, keyed(1e3))
	if weak.HeldBy != HeldByKey || weak.SlipTorque != weak.KeyTorque {
		t.Errorf("a slack clamp: held by %s", weak.HeldBy)
	}
	strong := parttest.Must(t, Bore, keyed(200e3))
	if strong.HeldBy != HeldByFriction || strong.SlipTorque != strong.FrictionTorque {
		t.Errorf("a hard clamp: held by %s", strong.HeldBy)
	}
	in := keyed(1e3)
	in.KeyWidth, in.Keyed = 0, hub.NoKey
	if out := parttest.Must(t, Bore, in); out.KeyTorque != 0 || out.HeldBy != HeldByFriction {
		t.Errorf("no key holds %g N·m", out.KeyTorque)
	}
	if better(math.NaN(), 3) != 3 || better(3, math.NaN()) != 3 || better(2, 3) != 3 || better(3, 2) != 3 || !math.IsNaN(better(math.NaN(), math.NaN())) {
		t.Error("of two figures the greater known one counts")
	}
}

// Astern without a pull that anybody told: what slips even so is the friction's
// own share, to the last digit.
func TestSlipsWithoutAPull(t *testing.T) {
	in := split()
	in.Thrust, in.ThrustAstern, in.PinchClamp, in.Keyed = 0, 0, 5e3, hub.NoKey
	out := parttest.Must(t, Bore, in)
	parttest.Within(t, "in a shock", out.MarginPeak, 2*4*5e3*0.15*0.015/340, 1e-12)
}

// What draws a clamped shaft out while it is twisted: of the friction all round,
// what the torque leaves (Coulomb, at right angles).
func TestPullBesideATorque(t *testing.T) {
	in := split()
	in.PinchClamp = 15e3
	out := parttest.Must(t, Bore, in)
	grip := 0.15 * 8 * 15e3
	left := func(torque float64) float64 { return math.Sqrt(grip*grip - math.Pow(torque/0.015, 2)) }
	parttest.Within(t, "with the torque astern", out.PullOff, left(150), 1e-9)
	parttest.Within(t, "margin", out.PullMargin, left(150)/1800, 1e-9)
	in.PeakTorque = 200
	out = parttest.Must(t, Bore, in)
	parttest.Within(t, "fouled", out.PullOffFoul, left(200), 1e-9)
	parttest.Within(t, "fouled, margin", out.FoulMargin, left(200)/6000, 1e-9)
	// A key that just bears the torque leaves all of it.
	in = split()
	in.PinchClamp = 15e3
	in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = 0.008, 0.007, 0.045, 250e6, 205e6
	in.AsternTorque = parttest.Must(t, Bore, in).KeyTorque
	parttest.Within(t, "beside a key", parttest.Must(t, Bore, in).PullOff, grip, 1e-9)
	// A torque that nobody told makes no margin of 1 or more sure, and hides none below.
	in = split()
	in.PinchClamp, in.AsternTorque = 15e3, 0
	for pull, told := range map[quantity.Force]bool{1e3: false, 0.6 * quantity.Force(grip): false, quantity.Force(grip): false, 20e3: true} {
		in.ThrustAstern = pull
		if out = parttest.Must(t, Bore, in); math.IsNaN(float64(out.PullMargin)) == told {
			t.Errorf("pull %g N of %g N, no torque told: %g", pull, grip, out.PullMargin)
		}
	}
	in.AsternTorque, in.ThrustAstern = 1, 1e3
	if out = parttest.Must(t, Bore, in); !(out.PullMargin > 17) {
		t.Errorf("a torque of 1 N·m: %g", out.PullMargin)
	}
	// Set screws hold along the shaft, but not of a flange that turns, or may.
	in = screwed()
	in.AsternTorque = 0
	out = parttest.Must(t, Bore, in)
	parttest.Within(t, "screws", out.ScrewMargin, 1.5*6600/1800, 1e-12)
	if !math.IsNaN(float64(out.PullMargin)) {
		t.Errorf("screws, no torque told: %g", out.PullMargin)
	}
	parttest.Within(t, "screws, a key that holds", parttest.Must(t, Bore, screwed()).PullMargin, 1.5*6600/1800, 1e-12)
	in.SetScrews = 1
	parttest.Within(t, "one screw", parttest.Must(t, Bore, in).ScrewHold, 6600, 1e-12)
	in.SetScrews = quantity.Ratio(math.NaN())
	if out = parttest.Must(t, Bore, in); !math.IsNaN(float64(out.ScrewHold)) {
		t.Errorf("screws that nobody counted hold %g N", out.ScrewHold)
	}
}

// A shaft that the pull draws out holds no torque astern, whichever way it is
// asked.
func TestShaftDrawnOut(t *testing.T) {
	in := split()
	in.PinchClamp = 1e3 // 1200 N of friction
	in.KeyWidth, in.KeyHeight, in.KeyLength, in.KeyYieldStrength, in.ShaftYieldStrength = 0.008, 0.007, 0.045, 250e6, 205e6
	for pull, held := range map[quantity.Force]bool{1199: true, 1201: false} {
		in.ThrustAstern = pull
		out := parttest.Must(t, Bore, in)
		if (out.SlipAstern > 0) != held || (out.MarginAstern > 0) != held || (out.MarginPeak > 0) != held || math.IsNaN(float64(out.MarginAstern+out.MarginPeak)) {
			t.Errorf("at %g N: %g N·m, %g, %g", pull, out.SlipAstern, out.MarginAstern, out.MarginPeak)
		}
	}
}

// Two circles of bolts: friction bolt by bolt at its own radius, and the clamp
// that just holds the hardest torque beside the pull.
func TestTwoCirclesBoltByBolt(t *testing.T) {
	in := small()
	in.InnerBoltCount, in.InnerBoltCircle, in.HoleDiameter = 3, 0.050, 0.011
	capacity := func(clamp, pull float64) (sum float64) {
		for range 4 {
			sum += 0.15 * (clamp - pull/7) * 0.0825 / 2
		}
		for range 3 {
			sum += 0.15 * (clamp - pull/7) * 0.050 / 2
		}
		return sum
	}
	out := hold(t, in)
	parttest.Within(t, "ahead", out.FrictionCapacity, capacity(25e3, 0), 1e-12)
	parttest.Within(t, "astern", out.CapacityAstern, capacity(25e3, 1200), 1e-12)
	parttest.Within(t, "clamp that just holds", capacity(float64(out.PreloadToHold), 1200), 340, 1e-12)
	in.InnerBoltCount = 1
	in.InnerBoltCircle = 0.040
	out = hold(t, in)
	parttest.Within(t, "one bolt inside", out.FrictionCapacity, 0.15*25e3*(4*0.0825+0.040)/2, 1e-12)
	parttest.Within(t, "its shear, by its distance", out.ShearStressInner, float64(out.ShearStress)*0.040/0.0825, 1e-12)
	in.InnerBoltCircle = 0.083
	_, err := Grip(in)
	parttest.RefusedAt(t, err, "/innerBoltCircle")
	in.InnerBoltCount, in.InnerBoltCircle, in.ShearPlane = 0, 0, Shank
	if out = hold(t, in); !math.IsNaN(float64(out.ShearStressInner)) {
		t.Errorf("no bolts inside are sheared by %g Pa", out.ShearStressInner)
	}
}

// A plain shank needs no pitch, however coarse one was typed; a thread without a
// bolt's diameter neither.
func TestPitchOfAPlainShank(t *testing.T) {
	in := small()
	in.ShearPlane, in.Pitch = Shank, 0.009
	hold(t, in)
	in.Pitch = 0
	hold(t, in)
	in.ShearPlane, in.NominalDiameter = Thread, 0
	hold(t, in)
	in.Pitch = 0.0015
	hold(t, in)
	in.NominalDiameter, in.Pitch, in.HoleDiameter = inchRootDepth/1024, 1./1024, 0 // nothing is rounded
	_, err := Grip(in)
	parttest.RefusedAt(t, err, "/pitch")
	// One bolt on a second circle asks for that circle, and has no neighbour.
	in = small()
	in.InnerBoltCount = 1
	_, err = Grip(in)
	parttest.RefusedAt(t, err, "/innerBoltCircle")
	in.InnerBoltCircle = 0.005
	hold(t, in)
	in.InnerBoltCount, in.InnerBoltCircle, in.HoleDiameter, in.NominalDiameter, in.ShearPlane = 2, 0.0001, 0, 0, Shank
	hold(t, in) // of holes that nobody measured nothing is said
}

// A peak that lies below the steady torque, either way, by more than a fifth is
// none; of torques alike the peak is named, and ahead before astern.
func TestPeakBelowTheSteadyTorque(t *testing.T) {
	in := small()
	in.ShaftTorque, in.AsternTorque = 170, 200
	for peak, told := range map[quantity.Torque]bool{159: false, 160: true, 161: true} {
		in.PeakTorque = peak
		if out := hold(t, in); math.IsNaN(float64(out.MarginPeak)) == told {
			t.Errorf("a peak of %g beside 200 N·m: %g", peak, out.MarginPeak)
		}
	}
	in.ShaftTorque, in.PeakTorque = 200, 200
	if out := hold(t, in); out.HardestCase != PeakIsHardest {
		t.Errorf("all alike: %s", out.HardestCase)
	}
	in.PeakTorque = 0
	if out := hold(t, in); out.HardestCase != AheadIsHardest {
		t.Errorf("ahead and astern alike: %s", out.HardestCase)
	}
}
