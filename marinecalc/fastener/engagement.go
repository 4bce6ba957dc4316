// Stripping of a bolt in a tapped hole: Engagement.

package fastener

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Insert is what stands between bolt and tapped metal.
type Insert string

// The inserts.
const (
	NoInsert    Insert = "none"
	WireInsert  Insert = "wire"  // a coil of wire, in a thread of the bolt's pitch
	SolidInsert Insert = "solid" // a sleeve with a thread of its own outside
)

// EngagementInput is a bolt or stud in a tapped hole. A field marked optional
// is not given when it is zero.
type EngagementInput struct {
	NominalDiameter quantity.Length // of the bolt, above 0
	Pitch           quantity.Length // above 0
	ThreadForm      ThreadForm      // Metric (6g in 6H) or Inch (2A in 2B)

	EngagementLength quantity.Length // of thread in thread, above 0
	LostThreads      quantity.Ratio  // turns of it that do not bear, at its ends; 0 or more
	ThreadShare      quantity.Ratio  // of the tapped thread that is sound, above 0, up to 1

	TensileStrength       quantity.Stress // of the bolt, above 0
	TappedTensileStrength quantity.Stress // of the metal that is tapped; optional, and without it that thread is not judged
	ShearShare            quantity.Ratio  // strength in shear over that in tension, above 0, up to 1

	Preload             quantity.Force  // clamp of the bolt; optional
	TappedMinorDiameter quantity.Length // of the hole, measured; optional, the widest that the tolerance allows
	TappedDepth         quantity.Length // of full thread in the hole; optional

	Insert         Insert
	InsertDiameter quantity.Length // outside thread of a solid insert, nominal; needed with one
	InsertPitch    quantity.Length // likewise
	InsertLength   quantity.Length // of an insert, whole; optional, and without it the tapped thread outside it is not judged
}

// The codes of StripsFirst, for which the schema of thread-engagement has the
// words.
const (
	BoltBreaks     = "bolt-breaks"
	BoltStrips     = "bolt-strips"
	TappedStrips   = "tapped-strips"
	StripsNotKnown = "not-known"
	NothingBears   = "nothing-bears" // no whole turn is engaged
)

// EngagementResult is what Engagement finds. NaN marks a figure for which an
// optional input is missing.
type EngagementResult struct {
	EngagementMargin quantity.Ratio // what strips over what breaks the bolt; NaN while the tapped metal is not known and the bolt's own thread holds
	StripMargin      quantity.Ratio // what strips over the clamp; likewise
	BottomThreads    quantity.Ratio // turns of thread left below the bolt

	StripsFirst       string
	EngagementWanted  quantity.Length // so that the bolt breaks first; NaN while the tapped metal is not known
	EngagementMissing quantity.Length // to EngagementWanted; 0 where there is enough
	DiametersEngaged  quantity.Ratio  // engagement over diameter
	DiametersWanted   quantity.Ratio  // that which is wanted over diameter; past 2 to 2.5 more thread hardly helps, since the first turns bear the most
	StrippingLoad     quantity.Force  // the lesser of the two; NaN while one is not known
	BoltStripping     quantity.Force  // of the bolt's own thread
	TappedStripping   quantity.Force
	BreakingLoad      quantity.Force // of the bolt

	EngagementUsed  quantity.Length // without the turns lost
	BoltShearArea   quantity.Area   // area in shear of the bolt's thread
	TappedShearArea quantity.Area
	StressArea      quantity.Area

	// Limits of the threads by their tolerances.
	MajorLeast quantity.Length // of the bolt
	PitchLeast quantity.Length // of the bolt
	MinorMost  quantity.Length // of the hole
	PitchMost  quantity.Length // of the hole
}

// Engagement finds how much load strips a bolt out of its hole, which thread
// goes first, and how much of it has to be engaged so that the bolt breaks
// before either strips.
//
// Areas in shear, for each length L of engagement, at the widest hole and the
// thinnest bolt that their tolerances allow:
//
//	bolt:   π·K_n·L/P·(P/2 + (E_s − K_n)/√3)   at the hole's greatest minor diameter K_n
//	tapped: π·D_s·L/P·(P/2 + (D_s − E_n)/√3)   at the bolt's least major diameter D_s
//
// with E_s the least pitch diameter of the bolt and E_n the greatest of the hole
// (FED-STD-H28/2B; Machinery's Handbook, formulas for stress areas and length of
// engagement of screw threads). The handbook takes half of the tensile strength
// for shear, which is ShearShare; measured values lie at 0.55 to 0.65 and more,
// so that a half leaves something for the threads' bending and the swelling of
// the hole.
//
// Tolerances: 6g and 6H of ISO 965-1, 2A and 2B of ASME B1.1, by their formulas.
// Of a wire insert the tapped thread is 3/4 of the height of a sharp thread
// deeper on each side, at the bolt's pitch; of a solid one it is the insert's
// own outside. What an insert's own inside bears is its maker's.
//
// The error is a *problem.Error of everything that cannot be. Engagement does
// not allocate unless it refuses.
func Engagement(in EngagementInput) (out EngagementResult, err error) {
	if err = in.validate(); err != nil {
		return EngagementResult{}, err
	}
	out.areas(&in)
	out.loads(&in)
	out.depth(&in)
	return out, nil
}

const (
	internalDepth = 1.082532 // pitches, of the basic minor diameter: ISO 68-1
	wireGrowth    = 1.299038 // pitches, by which the thread for a wire insert is wider: twice 3/4 of a sharp thread's height
	sqrt3         = 1.7320508075688772
)

// sheared is the area in shear for each length, by the diameter where it lies
// and how far the other thread's flank begins from it.
func sheared(at, pitch, reach float64) float64 {
	return math.Pi * at / pitch * (pitch/2 + reach/sqrt3)
}

// areas finds what is sheared.
func (out *EngagementResult) areas(in *EngagementInput) {
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	bolt := tolerances(d, p, in.ThreadForm)
	out.MajorLeast, out.PitchLeast = quantity.Length(bolt.major), quantity.Length(bolt.pitch)
	minor := bolt.minor
	if in.TappedMinorDiameter > 0 {
		minor = float64(in.TappedMinorDiameter)
	}
	out.MinorMost, out.PitchMost = quantity.Length(minor), quantity.Length(bolt.tappedPitch)
	out.EngagementUsed = max(0, in.EngagementLength-quantity.Length(in.LostThreads)*in.Pitch)
	used := float64(out.EngagementUsed)
	out.BoltShearArea = quantity.Area(used * sheared(minor, p, max(0, bolt.pitch-minor)))
	major, pitch, over := bolt.major, p, bolt.tappedPitch
	switch in.Insert {
	case WireInsert:
		major, over = bolt.major+wireGrowth*p, bolt.tappedPitch+wireGrowth*p
	case SolidInsert:
		outer := tolerances(float64(in.InsertDiameter), float64(in.InsertPitch), in.ThreadForm)
		major, pitch, over = outer.major, float64(in.InsertPitch), outer.tappedPitch
	}
	out.TappedShearArea = quantity.Area(used * sheared(major, pitch, max(0, major-over)) * float64(in.ThreadShare))
	if in.Insert != NoInsert && in.InsertLength == 0 { // it may be shorter than what the bolt goes in
		out.TappedShearArea = quantity.Area(math.NaN())
	}
	out.StressArea = StressArea(in.NominalDiameter, in.Pitch, in.ThreadForm)
}

// loads finds what strips and what breaks.
func (out *EngagementResult) loads(in *EngagementInput) {
	out.BreakingLoad = quantity.Force(float64(out.StressArea) * float64(in.TensileStrength))
	out.BoltStripping = quantity.Force(float64(out.BoltShearArea) * float64(in.ShearShare) * float64(in.TensileStrength))
	out.TappedStripping = quantity.Force(float64(out.TappedShearArea) * float64(in.ShearShare) * quantity.OrNaN(float64(in.TappedTensileStrength)))
	known := !math.IsNaN(float64(out.TappedStripping))
	out.StrippingLoad = min(out.BoltStripping, out.TappedStripping) // NaN where one is
	first := out.BoltStripping
	out.StripsFirst = BoltStrips
	if known && out.TappedStripping < first {
		first, out.StripsFirst = out.TappedStripping, TappedStrips
	}
	switch {
	case first >= out.BreakingLoad && known:
		out.StripsFirst = BoltBreaks
	case first >= out.BreakingLoad:
		out.StripsFirst = StripsNotKnown
	}
	if out.EngagementUsed == 0 {
		out.StripsFirst = NothingBears
	}
	margin := func(load float64) quantity.Ratio {
		by := float64(first) / load
		if !known && by >= 1 {
			by = math.NaN()
		}
		return quantity.Ratio(by)
	}
	out.EngagementMargin = margin(float64(out.BreakingLoad))
	out.StripMargin = margin(quantity.OrNaN(float64(in.Preload)))
	lost := in.LostThreads * quantity.Ratio(in.Pitch)
	out.EngagementWanted = quantity.Length(math.NaN())
	if out.EngagementUsed > 0 {
		out.EngagementWanted = quantity.Length(lost) + out.EngagementUsed*quantity.Length(out.BreakingLoad/out.StrippingLoad)
	}
}

// depth finds how the bolt's length stands to the hole's.
func (out *EngagementResult) depth(in *EngagementInput) {
	out.EngagementMissing = max(0, out.EngagementWanted-in.EngagementLength) // NaN while that is not known
	out.DiametersWanted = quantity.Ratio(out.EngagementWanted / in.NominalDiameter)
	out.DiametersEngaged = quantity.Ratio(in.EngagementLength / in.NominalDiameter)
	out.BottomThreads = quantity.Ratio(quantity.OrNaN(float64(in.TappedDepth))-float64(in.EngagementLength)) / quantity.Ratio(in.Pitch)
}
