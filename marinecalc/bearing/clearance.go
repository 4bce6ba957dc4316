// Wear of the water-lubricated stern bearing: Clearance.

package bearing

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// SternBearing is what the shaft runs in; it decides which limits apply.
type SternBearing string

// The kinds of bearing.
const (
	Rubber    SternBearing = "rubber"    // in a metal or plastic shell
	Synthetic SternBearing = "synthetic" // approved by a class society
	Other     SternBearing = "other"     // wood, metal, phenolic …
)

// ClearanceInput is a water-lubricated shaft bearing as it is found. A field marked
// optional is not given when it is zero; a clearance may be drawn a hair
// below nothing. Of ShellBore, LiftTravel, WireIn, BearingClearance and
// MarkDistance one is needed; the first that leads to a clearance is used.
type ClearanceInput struct {
	BearingKind      SternBearing
	ShaftDiameter    quantity.Length // above 0
	BearingClearance quantity.Length `unset:"NaN"` // between shaft and bearing shell, across the whole, as read; NaN for not read
	BladeWidth       quantity.Length // of the flat feeler it and EarlierClearance were read with; 0 for what is round, or a dial
	ShellBore        quantity.Length // inside diameter of the bearing shell; optional, goes before BearingClearance
	WornLimit        quantity.Length // at which it is renewed; optional

	NewClearance     quantity.Length `unset:"NaN"` // when the bearing was new; NaN for not known
	EarlierClearance quantity.Length `unset:"NaN"` // of an earlier reading; NaN for none
	RunningTime      quantity.Time   // with the shaft turning, since that reading; needed with it

	BearingLength  quantity.Length // optional
	GrooveDepth    quantity.Length `unset:"NaN"` // of the water grooves; NaN for not measured
	GrooveDepthNew quantity.Length // the same when new; needed with GrooveDepth

	LiftTravel   quantity.Length `unset:"NaN"` // of the shaft under a dial, from lying to lifted hard against the top; NaN for not read
	LiftPull     quantity.Force  // that lifted it so; in any measure, as long as SecondPull is in the same
	SecondTravel quantity.Length `unset:"NaN"` // the same with another pull, which also lifts it to the top; NaN for not read
	SecondPull   quantity.Force
	ElasticShare quantity.Ratio  `unset:"NaN"` // of LiftTravel that is bending and squeeze, below 0 what it was short of the top; goes for one pull alone
	DialAft      quantity.Length // of the bearing's end, where the dial stands; minus: forward of it
	SpanAhead    quantity.Length // from the bearing to what holds the shaft ahead of it; needed with DialAft
	TiltFactor   quantity.Ratio  // 1 where the shaft hinges ahead, 1.5 where it is built in; needed with DialAft

	WireIn    quantity.Length `unset:"NaN"` // the largest wire that goes in; NaN for not tried
	WireOut   quantity.Length // the smallest that does not; needed with WireIn
	WireShare quantity.Ratio  // where between the two, 0 to 1

	MarkDistance  quantity.Length // from a fixed mark above the shaft down to it, today; optional
	MarkFirst     quantity.Length // the same when it was first read; needed with MarkDistance
	MarkClearance quantity.Length `unset:"NaN"` // the clearance then; NaN for NewClearance
}

// ClearanceResult is what Clearance finds. A figure for which a reading is missing is NaN.
type ClearanceResult struct {
	Clearance         quantity.Length // the first that is known of those from bore, lift and wire, read, and from the mark
	ClearanceRead     quantity.Length // as read, and what the blade hides
	ClearanceFromBore quantity.Length // bore less shaft
	BladeHides        quantity.Length // what a flat feeler reads short by
	EarlierUsed       quantity.Length // the earlier reading, and what the blade hid then
	ClearanceUse      quantity.Ratio  // Clearance over WornLimit
	ClearanceRatio    quantity.Ratio  // Clearance over shaft diameter
	WearSinceNew      quantity.Length
	WearPerThousand   quantity.Length // in a thousand hours of running
	TimeLeft          quantity.Time   // of running, to WornLimit at the same rate; Never at most
	GrooveLeft        quantity.Ratio  // groove depth over the depth when new
	LengthRatio       quantity.Ratio  // bearing length over shaft diameter

	ClearanceFromLift quantity.Length
	ElasticTravel     quantity.Length // of LiftTravel: what bends and squeezes
	ElasticFound      quantity.Ratio  // the same as a share of LiftTravel; NaN where it was not found by two pulls
	DialLever         quantity.Ratio  // travel at the dial for one in the bearing
	ClearanceFromWire quantity.Length
	ClearanceFromMark quantity.Length
	DropSinceMark     quantity.Length
}

// hair is a feeler's or a calliper's accuracy, drawn.
const hair = 0.0003

// Never stands for what does not come in ten years of running, in seconds: a
// bearing that shows no wear, or next to none. It is no figure to be shown.
const Never = 10 * 365.25 * 86400

// Clearance finds how far a water-lubricated bearing is worn, how fast, and how
// long it lasts to its limit when it wears on as it did (a straight line
// through two readings). The limits are data: ABYC P-6, 46 CFR 61.20-23 and
// common practice.
//
// A flat blade pushed in along a shaft that lies at the bottom of its bearing
// rests on the crown of the shaft, and its edges touch the hollow above: it
// reads short by the height of the arc over its width. With blade thickness t,
// width w and shaft diameter d the bore is d + t + s, and the chord w in it has
// the sagitta s = w²/(4·(d + t)): Euclid III 35, the parts of chords that cross.
//
// The shaft lifted under a dial moves by the clearance and by what bends and
// squeezes, which grows as the pull: two pulls give the straight line, whose
// travel at no pull is the clearance, times DialLever where the dial stands off.
// A wire that goes in and one that does not bracket it. A shaft that has dropped
// from a fixed mark has so much more of it than when the mark was first read.
//
// The error is a *problem.Error of everything that cannot be. Clearance does not
// allocate unless it refuses.
func Clearance(in ClearanceInput) (ClearanceResult, error) {
	if err := in.validate(); err != nil {
		return ClearanceResult{}, err
	}
	limit := quantity.OrNaN(float64(in.WornLimit))
	out := ClearanceResult{
		BladeHides:        in.hides(in.BearingClearance),
		ClearanceFromBore: quantity.Length(quantity.OrNaN(float64(in.ShellBore))) - in.ShaftDiameter,
		EarlierUsed:       in.EarlierClearance + in.hides(in.EarlierClearance),
		WearPerThousand:   quantity.Length(math.NaN()),
		TimeLeft:          quantity.Time(math.NaN()),
		GrooveLeft:        quantity.Ratio(float64(in.GrooveDepth) / quantity.OrNaN(float64(in.GrooveDepthNew))),
		LengthRatio:       quantity.Ratio(quantity.OrNaN(float64(in.BearingLength)) / float64(in.ShaftDiameter)),
	}
	out.ClearanceRead = in.BearingClearance + out.BladeHides
	in.otherWays(&out)
	out.Clearance = first(out.ClearanceFromBore, out.ClearanceFromLift, out.ClearanceFromWire, out.ClearanceRead, out.ClearanceFromMark)
	c := float64(out.Clearance)
	out.ClearanceUse = quantity.Ratio(c / limit)
	out.ClearanceRatio = quantity.Ratio(c / float64(in.ShaftDiameter))
	out.WearSinceNew = out.Clearance - in.NewClearance
	if earlier := float64(out.EarlierUsed); !math.IsNaN(earlier) {
		worn, hours := c-earlier, float64(in.RunningTime)
		out.WearPerThousand = quantity.Length(worn * 3.6e6 / hours)
		switch {
		case in.WornLimit == 0: // stays not known
		case c >= limit: // passed, whatever it did since the earlier reading
			out.TimeLeft = 0
		case worn > 0:
			out.TimeLeft = quantity.Time(min(Never, (limit-c)*hours/worn))
		default:
			out.TimeLeft = Never
		}
	}
	return out, nil
}

// hides is what the blade reads short by at a reading; nothing goes in where
// nothing is read.
func (in *ClearanceInput) hides(reading quantity.Length) quantity.Length {
	switch {
	case math.IsNaN(float64(reading)):
		return reading
	case !(reading > 0):
		return 0
	}
	return quantity.Length(in.BladeWidth * in.BladeWidth / (4 * (in.ShaftDiameter + reading)))
}

// validate lists everything in the readings that cannot be.
func (in *ClearanceInput) validate() error {
	var faults problem.List
	faults.Above("/shaftDiameter", "shaft diameter", float64(in.ShaftDiameter))
	if in.BearingKind != Rubber && in.BearingKind != Synthetic && in.BearingKind != Other {
		faults.Add("/bearingKind", "what the shaft runs in is missing or unknown", "rubber, synthetic, other", "")
	}
	half := float64(in.ShaftDiameter) / 2
	if !(half > 0) { // one fault is enough
		half = math.Inf(1)
	}
	if faults.NotNegative("/shellBore", "bore of the bearing shell", float64(in.ShellBore)) && in.ShellBore > 0 {
		between(&faults, "/shellBore", "clearance, bore less shaft diameter,", float64(in.ShellBore-in.ShaftDiameter), -hair, half, "a bore from the shaft diameter up to half as much again", "measure bore and shaft in the same unit, the shaft beside its worn place")
	}
	if c := float64(in.BearingClearance); !math.IsNaN(c) {
		between(&faults, "/bearingClearance", "clearance", c, -hair, half, "0 up to half the shaft diameter", "it is the whole play across, in millimetres or thousandths of an inch")
	}
	in.checkLift(&faults, half)
	in.checkWire(&faults, half)
	in.checkMark(&faults, half)
	if len(faults) == 0 {
		in.askWay(&faults)
	}
	between(&faults, "/bladeWidth", "width of the blade", float64(in.BladeWidth), 0, 2*half, "0 up to the shaft diameter", "a wider one does not go in: take a wire or a drill shank")
	faults.NotNegative("/wornLimit", "worn limit", float64(in.WornLimit))
	if !math.IsNaN(float64(in.NewClearance)) {
		between(&faults, "/newClearance", "clearance when new", float64(in.NewClearance), -hair, half, "0 up to half the shaft diameter", "")
	}
	read := !math.IsNaN(float64(in.EarlierClearance))
	if read {
		between(&faults, "/earlierClearance", "earlier clearance", float64(in.EarlierClearance), -hair, half, "0 up to half the shaft diameter", "")
	}
	if faults.NotNegative("/runningTime", "running time", float64(in.RunningTime)) && read && in.RunningTime == 0 {
		faults.Add("/runningTime", "an earlier clearance is given without the hours run since", "above 0", "the engine's hour meter, less the hours in neutral")
	}
	faults.NotNegative("/bearingLength", "bearing length", float64(in.BearingLength))
	faults.NotNegative("/grooveDepthNew", "groove depth when new", float64(in.GrooveDepthNew))
	if !math.IsNaN(float64(in.GrooveDepth)) && faults.NotNegative("/grooveDepth", "groove depth", float64(in.GrooveDepth)) {
		switch {
		case in.GrooveDepthNew == 0:
			faults.Add("/grooveDepthNew", "the groove depth is given without its depth when new", "above 0", "measure at the end that does not bear, or ask the maker")
		case in.GrooveDepth > in.GrooveDepthNew+2*hair:
			faults.Add("/grooveDepth", "the grooves are deeper than when they were new", "up to the depth when new", "")
		}
	}
	return faults.Err()
}
