// Checks of a running drivetrain.

package vibration

import (
	"fmt"
	"math"
	"slices"

	"example.org/driveline/marinecalc/problem"
)

// validate lists everything in the running that cannot be.
func validate(in *SourceInput, sources []Suspect) error {
	var bad problem.List
	for _, c := range [...]struct {
		where, name string
		v, lo, hi   float64
		allowed     string
		orNone      bool
	}{
		{"/engineSpeed", "engine speed", float64(in.EngineSpeed), 1, 1500, "10 rpm to 14 000 rpm", false},
		{"/cylinders", "number of cylinders", float64(in.Cylinders), 1, 24, "1 to 24", true},
		{"/gearRatioAhead", "ratio ahead", float64(in.GearRatioAhead), 0.1, 40, "0.2 to 30", true},
		{"/gearRatioAstern", "ratio astern", float64(in.GearRatioAstern), 0.1, 40, "0.2 to 30", true},
		{"/inputTeeth", "number of teeth", float64(in.InputTeeth), 5, 200, "5 to 200", true},
		{"/blades", "number of blades", float64(in.Blades), 1, 12, "1 to 12", true},
		{"/balls", "number of balls", float64(in.Balls), 3, 60, "3 to 60", true},
		{"/bearingPitch", "pitch circle of the bearing", float64(in.BearingPitch), 1e-3, 5, "1 mm to 5 m", in.Balls == 0},
		{"/contactAngle", "contact angle", float64(in.ContactAngle), -0.05, 1.06, "0° to 60°", true},
		{"/bearingSlip", "slip of the bearing", float64(in.BearingSlip), -0.01, 0.2, "0 % to 20 %", true},
		{"/mountFrequency", "natural frequency on the mounts", float64(in.MountFrequency), 0.1, 200, "0.1 Hz to 200 Hz", true},
		{"/mountAccuracy", "accuracy of the natural frequency", float64(in.MountAccuracy), 1e-4, 0.5, "above 0, up to 50 %", in.MountFrequency == 0},
		{"/frequency", "measured frequency", float64(in.Frequency), 0.01, 1e5, "0.01 Hz to 100 kHz", true},
		{"/frequencyAccuracy", "accuracy of the frequency", float64(in.FrequencyAccuracy), 1e-4, 1e4, "above 0, up to 10 kHz", in.Frequency == 0},
		{"/speedAccuracy", "accuracy of the engine speed", float64(in.SpeedAccuracy), 0, 0.5, "0 % to 50 %", true},
		{"/vibrationVelocity", "vibration", float64(in.VibrationVelocity), 0, 10, "0 to 10 m/s", true},
		{"/vibrationBaseline", "vibration when all was well", float64(in.VibrationBaseline), 0, 10, "0 to 10 m/s", true},
		{"/zoneAb", "limit of zone A", float64(in.ZoneAb), 0, 1, "above 0", true},
		{"/zoneBc", "limit of zone B", float64(in.ZoneBc), float64(in.ZoneAb), 1, "above that of zone A", in.ZoneCd == 0},
		{"/zoneCd", "limit of zone C", float64(in.ZoneCd), float64(in.ZoneBc), 1, "above that of zone B", true},
	} {
		if c.orNone && c.v == 0 {
			continue
		}
		if !(c.v >= c.lo && c.v <= c.hi) || math.IsInf(c.v, 0) {
			bad.Add(c.where, fmt.Sprintf("the %s is missing or out of range", c.name), c.allowed, "")
		}
	}
	words(&bad, "/gear", in.Gear, Ahead, Neutral, Astern)
	if in.Cylinders > 0 {
		words(&bad, "/strokes", in.Strokes, FourStroke, TwoStroke)
	}
	if in.Balls > 0 {
		words(&bad, "/bearingTurns", in.BearingTurns, WithShaft, WithEngine, "")
		if d, pitch := float64(in.BallDiameter), float64(in.BearingPitch); !(d > 0 && d < pitch) {
			bad.Add("/ballDiameter", "the balls are missing, or larger than the circle they run on", "above 0, below the pitch circle", "the bearing maker's table gives both")
		} else if float64(in.Balls)*math.Asin(d/pitch) > math.Pi*1.02 {
			bad.Add("/balls", "so many balls of this size do not fit on the circle", "fewer, or smaller ones", "")
		}
	}
	if len(sources) >= Most {
		bad.Add("", "there are too many kinds of sources in the rules", fmt.Sprintf("at most %d", Most-1), "")
	}
	return bad.Err()
}

func words(bad *problem.List, where, v string, allowed ...string) {
	for _, a := range allowed {
		if v == a {
			return
		}
	}
	bad.Add(where, fmt.Sprintf("%q is not known here", v), fmt.Sprint(slices.Clone(allowed)), "") // the list itself stays on the caller's stack
}
