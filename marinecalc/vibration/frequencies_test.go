package vibration

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// By hand: 1800 r/min are 30 turns a second, of which three cylinders fire 45
// times with four strokes; 23 teeth meet 690 times, a ratio of 2 leaves 15
// turns of the shaft and 45 of its three blades. The bearing's multipliers are
// those of the data centre's 6205, less 2 % for slip.
func TestFrequenciesByHand(t *testing.T) {
	in := line()
	in.InputTeeth = 23
	m := find(t, in)
	for what, c := range map[string]struct{ got, want float64 }{
		"engine": {float64(m.EngineFrequency), 30}, "firing": {float64(m.FiringFrequency), 45}, "mesh": {float64(m.MeshFrequency), 690},
		"shaft": {float64(m.ShaftFrequency), 15}, "blade": {float64(m.BladeFrequency), 45}, "bearing": {float64(m.BearingFrequency), 15},
		"outer": {float64(m.OuterRaceFrequency), 15 * 3.5848 * 0.98}, "inner": {float64(m.InnerRaceFrequency), 15 * 5.4152 * 0.98},
		"cage": {float64(m.CageFrequency), 15 * 0.39828 * 0.98}, "ball": {float64(m.BallFrequency), 15 * 4.7135 * 0.98},
	} {
		parttest.Within(t, what, c.got, c.want, 1e-4)
	}
	in.Strokes, in.Gear, in.BearingTurns = TwoStroke, Astern, WithEngine
	m = find(t, in)
	parttest.Within(t, "two strokes", m.FiringFrequency, 90, 1e-12)
	parttest.Within(t, "astern", m.ShaftFrequency, 30/1.9, 1e-12)
	parttest.Within(t, "bearing on the engine's side", m.BearingFrequency, 30, 1e-12)
	in.Gear = Neutral
	if m = find(t, in); !math.IsNaN(float64(m.ShaftFrequency)) || !math.IsNaN(float64(m.GearRatio)) {
		t.Errorf("in neutral the shaft turns at %v", m.ShaftFrequency)
	}
}

// The share of one source alone, measured where it lies: its normal density
// over that and the thousandth of what is not listed. The variance is by hand
// that of reading, speed and, of the bearing's four alone, slip.
func TestEverySourceOfTheBearingSlips(t *testing.T) {
	in := line()
	in.InputTeeth = 23
	for base, slips := range map[string]bool{"outer-race": true, "inner-race": true, "ball": true, "cage": true, "shaft": false, "mesh": false, "engine": false} {
		one := []Suspect{{Name: "one", Base: base, Multiple: 1}}
		out, err := Source(in, one, &Ranking{})
		if err != nil {
			t.Fatal(err)
		}
		measured := in
		for _, c := range out.Sources {
			if c.Name == "one" {
				measured.Frequency = c.Frequency
			}
		}
		f := float64(measured.Frequency)
		out, err = Source(measured, one, &Ranking{})
		if err != nil {
			t.Fatal(err)
		}
		variance := (0.5*0.5 + 0.02*f*0.02*f) / 3
		if slips {
			variance += 0.01 * f * 0.01 * f / 3
		}
		density := 1 / math.Sqrt(2*math.Pi*variance)
		if out.BestMatch != "one" {
			t.Errorf("%s: %s", base, out.BestMatch)
		}
		parttest.Within(t, base, out.BestShare, density/(density+1e-3), 1e-9)
		// The share is so near 1 that its distance from it is what tells.
		parttest.Within(t, base+", not listed", out.RunnerUpShare, 1e-3/(density+1e-3), 1e-9)
	}
}

// ISO 10816-1, annex B, class I: 0.71, 1.8 and 4.5 mm/s. A velocity on a limit
// is in the better zone.
func TestZones(t *testing.T) {
	in := line()
	in.VibrationVelocity = 1e-3
	if m := find(t, in); m.Zone != "" {
		t.Errorf("without limits: %q", m.Zone)
	}
	in.ZoneAb, in.ZoneBc, in.ZoneCd = 0.71e-3, 1.8e-3, 4.5e-3
	for velocity, want := range map[float64]string{0: "", 0.1e-3: zoneA, 0.71e-3: zoneA, 0.72e-3: zoneB, 1.8e-3: zoneB, 1.81e-3: zoneC, 4.5e-3: zoneC, 4.51e-3: zoneD, 0.1: zoneD} {
		in.VibrationVelocity = quantity.Velocity(velocity)
		if m := find(t, in); m.Zone != want {
			t.Errorf("%g m/s: %q, want %q", velocity, m.Zone, want)
		}
	}
}
