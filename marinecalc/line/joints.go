// The weakest joint of the line: Joints.

package line

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// JointsInput is what each joint of the line holds, NaN where that is not known,
// and what the line asks of them.
type JointsInput struct {
	ShaftTorque  quantity.Torque // steady ahead; optional
	AsternTorque quantity.Torque // steady astern; optional
	PeakTorque   quantity.Torque // shock, either way; optional

	BoreHold      string          // how the coupling flange is held on its shaft; "" for not known
	HubDrive      string          // how the output flange is driven beside friction: DriveNone where it has friction alone, "" for not known
	HubFriction   quantity.Torque `unset:"NaN"` // of the output flange's clamped faces
	HubFlanks     quantity.Torque `unset:"NaN"` // of its spline or key
	HubPullMargin quantity.Ratio  `unset:"NaN"` // its clamp over what the pull astern takes of it

	FacesAhead  quantity.Torque `unset:"NaN"` // of the coupling faces under the clamp of their bolts
	FacesAstern quantity.Torque `unset:"NaN"`
	BoreAhead   quantity.Torque `unset:"NaN"` // of the shaft in its coupling flange
	BoreAstern  quantity.Torque `unset:"NaN"`
	TaperAhead  quantity.Torque `unset:"NaN"` // of the propeller on its taper
	TaperAstern quantity.Torque `unset:"NaN"`

	BoreByFriction  quantity.Torque `unset:"NaN"` // of the shaft in its coupling flange: the least that it holds ahead, where no more is known
	TaperByFriction quantity.Torque `unset:"NaN"` // of the propeller on its taper, likewise

	CouplingKey  quantity.Torque `unset:"NaN"` // at which the coupling's key yields
	PropellerKey quantity.Torque `unset:"NaN"` // at which the propeller's key yields

	HubFrictionSides Sides `sidesOf:"hubFriction"`
	HubFlanksSides   Sides `sidesOf:"hubFlanks"`
	FacesAheadSides  Sides `sidesOf:"facesAhead"`
	FacesAsternSides Sides `sidesOf:"facesAstern"`
	BoreAheadSides   Sides `sidesOf:"boreAhead"`
	BoreAsternSides  Sides `sidesOf:"boreAstern"`
	TaperAheadSides  Sides `sidesOf:"taperAhead"`
	TaperAsternSides Sides `sidesOf:"taperAstern"`

	BoreByFrictionSides  Sides `sidesOf:"boreByFriction"`
	TaperByFrictionSides Sides `sidesOf:"taperByFriction"`
}

// Sides are how far the 95 % range of what a joint holds goes below and above its
// estimate; 0 where that is not known.
type Sides struct{ Below, Above quantity.Torque }

// The codes of how surely the weakest is named.
const (
	OfAll        = "of-all"         // every joint is known, and the others are stronger
	AlikeOfAll   = "alike"          // every joint is known, and another is as weak
	OfKnown      = "of-known"       // another that is not known could be weaker
	AlikeOfKnown = "alike-of-known" // both
	NothingKnown = "none-known"
	OfOthers     = "of-others"       // of those that were not found loose, every one is known
	AlikeOfOther = "alike-of-others" // the same, and another is as weak
)

// The codes of the figure that a joint lacks.
const (
	WantsNothing  = "none"
	WantsFlanks   = "flanks"        // allowed pressure of the output flange's spline or key
	WantsFriction = "friction"      // clamp and face wear of the output flange
	WantsFaces    = Faces           // bolts, bolt circle and faces
	WantsBore     = Bore            // how the coupling flange is held
	WantsTaper    = Taper           // cone, hub and nut
	WantsMending  = "holds-nothing" // no figure: it holds nothing, ahead or astern
	WantsKey      = "key"           // of a bore or taper whose friction is known: its key, or that there is none
	WantsPull     = "pull"          // of the propeller going astern
	WantsHold     = "pulled-off"    // nothing: the pull astern takes all of its clamp, or pulls it off its seat
	WantsTight    = "loose"         // nothing: it was found loose, and what holds it is put right first
	WantsRight    = "own-sheet"     // what its own sheet says is to be put right or told first
)

// Count is how many joints a line has.
const Count = 4

// Joint is one joint of the line. NaN marks what is not known.
type Joint struct {
	Joint       string
	HeldAhead   quantity.Torque
	HeldAstern  quantity.Torque // with the pull of the propeller
	Ahead       quantity.Ratio  // margins
	Astern      quantity.Ratio
	Shock       quantity.Ratio
	KeyAlone    quantity.Torque // at which its key yields, if friction is lost
	StandAhead  string
	StandAstern string
	StandShock  string
	Wanted      string // the figure without which it is not known
}

// JointsResult is what Joints finds. NaN marks a figure that is not known.
type JointsResult struct {
	FoundLoose    string // the joint that was found loose, Several, or ""
	WeakestAhead  string // of those known
	WeakestAstern string
	WeakestShock  string
	SureAhead     string
	SureAstern    string
	SureShock     string
	LeastAhead    quantity.Ratio // margin of the weakest; NaN where 1 or more and another could be weaker, or a look found one loose
	LeastAstern   quantity.Ratio
	LeastShock    quantity.Ratio

	LeastKnownAhead  quantity.Ratio // the same where another could be weaker: margin of the weakest of those known; NaN elsewhere
	LeastKnownAstern quantity.Ratio
	LeastKnownShock  quantity.Ratio

	Known  quantity.Ratio // how many joints are known ahead
	First  [Count]Failing // found loose, or with less than the torque asks: worst first
	Joints [Count]Joint
}

// held is what a joint holds in one case: a torque and the sides of its range, or
// at least that torque where the rest of it is not known; NaN for nothing known.
type held struct {
	torque  float64
	sides   Sides
	atLeast bool
}

// Joints finds the joint of the line that holds the least torque ahead, astern
// and in a shock, and its margin.
//
// The joints stand one behind the other, so that each bears the same torque
// (statics) and the least of what they hold is what the line holds. Friction
// and what bears by its flanks are not added in one joint: the greater holds,
// as each joint's own calculation has it. A shock comes either way and is held
// against what holds astern. Of an output flange whose spline or key is not known,
// and ahead of a bore or taper whose key is not, only the friction is known, which
// is the least that it holds. Where the pull
// takes all of its clamp, nut and lock alone hold it astern and in a shock: that
// counts as nothing, whatever spline or key bear.
// Where the pull astern is not known, a joint holds no more than ahead.
//
// Two joints are told apart where the difference of what they hold is more than
// what the sides of their ranges that face each other make of it, the weaker one's
// upper and the stronger one's lower side (the root of their squares: JCGM 100, of
// two independent quantities), so that those whose ranges lie apart always are. A joint that is not known could be the weakest, unless what it
// holds at least is surely more.
//
// The error is a *problem.Error of everything that cannot be. Joints does not
// allocate unless it refuses.
func Joints(in JointsInput) (JointsResult, error) { return JointsFound(in, Loose{}) }

// JointsFound does the same on a line some joints of which were found loose: these
// go before all others, have no margins, and the weakest is that of the others.
func JointsFound(in JointsInput, found Loose) (out JointsResult, err error) {
	if err = in.validate(); err != nil {
		return JointsResult{}, err
	}
	ahead, astern := in.held()
	nan := quantity.Torque(math.NaN())
	keys := [Count]quantity.Torque{nan, nan, in.CouplingKey, in.PropellerKey}
	var back, shock [Count]held
	nothing := quantity.Ratio(math.NaN())
	none := quantity.Ratio(math.Inf(1))
	short := [3]quantity.Ratio{none, none, none} // the least margin that is calculated of what is loose
	for i, code := range [Count]string{Hub, Faces, Bore, Taper} {
		j := &out.Joints[i]
		j.Joint, j.KeyAlone = code, keys[i]
		j.HeldAhead, j.HeldAstern = quantity.Torque(ahead[i].torque), quantity.Torque(astern[i].torque)
		j.Wanted = ahead[i].wanted(astern[i], in.own(i), float64(in.HubFlanks))
		back[i], shock[i] = astern[i].under(in.AsternTorque, ahead[i]), astern[i].under(in.PeakTorque, ahead[i])
		j.Ahead, j.Astern, j.Shock = ahead[i].over(in.ShaftTorque), back[i].over(in.AsternTorque), shock[i].over(in.PeakTorque)
		if !ahead[i].atLeast && !math.IsNaN(ahead[i].torque) {
			out.Known++
		}
		if found.at(i) {
			for n, m := range [3]quantity.Ratio{j.Ahead, j.Astern, j.Shock} {
				if m < short[n] { // never for NaN
					short[n] = m
				}
			}
			j.HeldAhead, j.HeldAstern, j.Ahead, j.Astern, j.Shock, j.Wanted = nan, nan, nothing, nothing, nothing, WantsTight
		}
	}
	out.FoundLoose, out.First = found.code(), out.first(found)
	var stand [Count]string
	out.WeakestAhead, out.SureAhead, out.LeastAhead, out.LeastKnownAhead = rank(&ahead, found, in.ShaftTorque, &stand)
	for i := range out.Joints {
		out.Joints[i].StandAhead = stand[i]
	}
	out.WeakestAstern, out.SureAstern, out.LeastAstern, out.LeastKnownAstern = rank(&back, found, in.AsternTorque, &stand)
	for i := range out.Joints {
		out.Joints[i].StandAstern = stand[i]
	}
	out.WeakestShock, out.SureShock, out.LeastShock, out.LeastKnownShock = rank(&shock, found, in.PeakTorque, &stand)
	for i := range out.Joints {
		out.Joints[i].StandShock = stand[i]
	}
	if found.Looked {
		for n, at := range [...][2]*quantity.Ratio{{&out.LeastAhead, &out.LeastKnownAhead}, {&out.LeastAstern, &out.LeastKnownAstern}, {&out.LeastShock, &out.LeastKnownShock}} {
			besideLoose(at[0], at[1], short[n])
		}
	}
	return out, nil
}

// over is the margin: NaN where the torque is not known, or where it is 1 or
// more by nothing but the least that is known; less than 1 by that tells nothing
// either.
func (h held) over(torque quantity.Torque) quantity.Ratio {
	by := h.torque / quantity.OrNaN(float64(torque))
	if h.atLeast && by < 1 {
		by = math.NaN()
	}
	return quantity.Ratio(by)
}

// under is what a joint holds astern: where the pull is not known no more than
// ahead, which tells once that is less than the torque.
func (h held) under(torque quantity.Torque, ahead held) held {
	if math.IsNaN(h.torque) && !ahead.atLeast && ahead.torque < float64(torque) {
		return ahead
	}
	return h
}

// wanted is the figure without which a joint is not known: its own ahead, or
// the pull astern; none where it holds nothing. Of an output flange of which one way
// is known, its friction or its flanks, it is the other.
func (h held) wanted(astern held, own string, flanks float64) string {
	switch {
	case math.IsNaN(h.torque):
		return own
	case h.torque == 0 && !h.atLeast:
		return WantsMending
	case h.atLeast && own == WantsFriction && math.IsNaN(flanks):
		return WantsFlanks
	case h.atLeast && own == WantsFriction:
		return WantsFriction
	case h.atLeast:
		return WantsKey
	case math.IsNaN(astern.torque), astern.atLeast:
		return WantsPull
	case astern.torque == 0:
		return WantsHold
	}
	return WantsNothing
}

// own is what a joint lacks of which nothing is known: of a flange on set screws, which
// is told, its key.
func (in *JointsInput) own(joint int) string {
	if joint == 2 && in.BoreHold == BoreByScrews {
		return WantsKey
	}
	return [Count]string{WantsFriction, WantsFaces, WantsBore, WantsTaper}[joint]
}

// held is what each joint holds ahead and astern, from forward aft.
func (in *JointsInput) held() (ahead, astern [Count]held) {
	friction, flanks := float64(in.HubFriction), float64(in.HubFlanks)
	left := max(0, 1-1/float64(in.HubPullMargin)) // of its clamp, and so of its friction; NaN where the pull is not known
	open := in.HubPullMargin < 1                  // the face parts, and the hub can slide on its flanks
	hub := func(friction float64) held {
		h := held{friction, in.HubFrictionSides, false}
		switch {
		case in.HubDrive == DriveNone:
		case math.IsNaN(flanks):
			h.atLeast = true
		case !(friction > flanks): // NaN too: at least the flanks
			h = held{flanks, in.HubFlanksSides, math.IsNaN(friction)}
		}
		return h
	}
	ahead = [Count]held{hub(friction), {float64(in.FacesAhead), in.FacesAheadSides, false},
		orFriction(in.BoreAhead, in.BoreAheadSides, in.BoreByFriction, in.BoreByFrictionSides), orFriction(in.TaperAhead, in.TaperAheadSides, in.TaperByFriction, in.TaperByFrictionSides)}
	hubAstern := hub(friction * left)
	if open {
		hubAstern = held{}
	}
	astern = [Count]held{hubAstern, {float64(in.FacesAstern), in.FacesAsternSides, false},
		{float64(in.BoreAstern), in.BoreAsternSides, false}, {float64(in.TaperAstern), in.TaperAsternSides, false}}
	return ahead, astern
}

// orFriction is what a joint holds, or at least its friction.
func orFriction(whole quantity.Torque, sides Sides, friction quantity.Torque, of Sides) held {
	if math.IsNaN(float64(whole)) && !math.IsNaN(float64(friction)) {
		return held{float64(friction), of, true}
	}
	return held{float64(whole), sides, false}
}

// rank finds the weakest joint of those known, how surely it is the weakest of
// all, its margin over a torque, the same of those known alone where another could
// be weaker, and how each joint stands. What was found loose is left out.
func rank(joints *[Count]held, found Loose, torque quantity.Torque, stand *[Count]string) (weakest, sure string, least, ofKnown quantity.Ratio) {
	first := -1
	for i, h := range joints {
		if !found.at(i) && !h.atLeast && !math.IsNaN(h.torque) && (first < 0 || h.torque < joints[first].torque) {
			first = i
		}
	}
	if first < 0 {
		for i := range stand {
			if stand[i] = NotRanked; found.at(i) {
				stand[i] = StandsLoose
			}
		}
		return NoneKnown, NothingKnown, quantity.Ratio(math.NaN()), quantity.Ratio(math.NaN())
	}
	alike, open := false, false
	for i, h := range joints {
		apart := h.torque-joints[first].torque > math.Hypot(float64(h.sides.Below), float64(joints[first].sides.Above))
		switch unknown := h.atLeast || math.IsNaN(h.torque); {
		case found.at(i):
			stand[i] = StandsLoose
		case i == first:
			stand[i] = Weakest
		case unknown && !apart:
			stand[i], open = CouldBe, true
		case !apart:
			stand[i], alike = Alike, true
		default:
			stand[i] = Stronger
		}
	}
	sure = OfAll
	switch others := found != (Loose{}); {
	case alike && open:
		sure = AlikeOfKnown
	case open:
		sure = OfKnown
	case alike && others:
		sure = AlikeOfOther
	case alike:
		sure = AlikeOfAll
	case others:
		sure = OfOthers
	}
	least = joints[first].over(torque)
	ofKnown = quantity.Ratio(math.NaN())
	if open && least >= 1 {
		least, ofKnown = ofKnown, least
	}
	return [Count]string{Hub, Faces, Bore, Taper}[first], sure, least, ofKnown
}

// validate lists everything that cannot be.
func (in *JointsInput) validate() error {
	var faults problem.List
	for _, f := range [...]struct {
		where, name string
		value       float64
	}{
		{"/shaftTorque", "torque ahead", float64(in.ShaftTorque)}, {"/asternTorque", "torque astern", float64(in.AsternTorque)}, {"/peakTorque", "peak torque", float64(in.PeakTorque)},
		{"/hubFriction", "friction of the output flange", known(float64(in.HubFriction))}, {"/hubFlanks", "torque of spline or key", known(float64(in.HubFlanks))},
		{"/hubPullMargin", "clamp over the pull", known(float64(in.HubPullMargin))},
		{"/facesAhead", "torque of the coupling faces", known(float64(in.FacesAhead))}, {"/facesAstern", "torque of the coupling faces astern", known(float64(in.FacesAstern))},
		{"/boreAhead", "torque of the bore", known(float64(in.BoreAhead))}, {"/boreAstern", "torque of the bore astern", known(float64(in.BoreAstern))},
		{"/taperAhead", "torque of the taper", known(float64(in.TaperAhead))}, {"/taperAstern", "torque of the taper astern", known(float64(in.TaperAstern))},
		{"/boreByFriction", "friction of the bore", known(float64(in.BoreByFriction))}, {"/taperByFriction", "friction of the taper", known(float64(in.TaperByFriction))},
		{"/couplingKey", "torque of the coupling's key", known(float64(in.CouplingKey))}, {"/propellerKey", "torque of the propeller's key", known(float64(in.PropellerKey))},
	} {
		faults.NotNegative(f.where, f.name, f.value)
	}
	return faults.Err()
}

// known is a figure, or 0 for one that is not known.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}
