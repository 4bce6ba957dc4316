// Strength of a parallel key: KeyStrength.

package shaft

import (
	"cmp"
	"fmt"
	"math"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// KeyStrengthInput is a parallel key between a shaft and a hub. A field marked optional
// is not given when it is zero.
type KeyStrengthInput struct {
	ShaftDiameter quantity.Length // above 0
	ShaftTorque   quantity.Torque // steady, above 0
	KeyWidth      quantity.Length // above 0
	KeyLength     quantity.Length // that bears, without round ends; above 0
	KeyHeight     quantity.Length // optional; without it HeightShare of the width
	HeightShare   quantity.Ratio  // of KeyWidth, of a key whose height is not known; optional, 1: a square key
	PeakTorque    quantity.Torque // optional; without it nothing is said of the peak, and the steady torque counts when it is greater
	KeyCount      int             // keys that share the load, 1 or 2; 0 is 1

	SmallEndDiameter quantity.Length // of a taper, measured or by its table; optional
	LargeEndDiameter quantity.Length // of that taper by its table, the same as ShaftDiameter; optional
	TaperRatio       quantity.Ratio  `unset:"NaN"` // its loss of diameter over length, 0 of a parallel shaft; NaN where that is not known
	TaperLength      quantity.Length // of that taper, or of the shaft in its bore; optional
	MeanShare        quantity.Ratio  // mean diameter of a taper of which neither its small end nor ratio and length are known, over ShaftDiameter; optional, 1
	KeySeat          quantity.Length // depth of the keyway at its side in the shaft; optional, without it SeatShare of the height
	SeatShare        quantity.Ratio  // of the key's height, of a keyway whose depth is not known; optional, a half

	KeyYieldStrength   quantity.Stress // above 0
	ShaftYieldStrength quantity.Stress // optional; without it the shaft's keyway is not judged
	HubYieldStrength   quantity.Stress // optional; without it the hub's keyway is not judged

	WantedSafety quantity.Ratio // at the steady torque, for the lengths wanted; optional
}

// KeyStrengthResult is what KeyStrength finds. NaN marks a figure whose optional input is
// missing.
type KeyStrengthResult struct {
	LeastSafety   quantity.Ratio  // the least of the four, at the peak; NaN without a peak torque and while a strength is not known
	SteadySafety  quantity.Ratio  // the least of the four, at the steady torque; NaN while a strength is not known
	TorqueHeld    quantity.Torque // at which the weakest of the four yields; NaN while a strength is not known
	WeakestPlace  string          // of those known
	NotJudged     string          // which places are not judged
	KnownSafety   quantity.Ratio  // while a strength is not known, the least of those places whose strength is, at the steady torque: SteadySafety is no more; else NaN
	KnownTorque   quantity.Torque // at which these yield: TorqueHeld is no more; else NaN
	TaperMeasured quantity.Ratio  // loss of diameter over length of the taper, by its ends and length; NaN while one is not known
	LengthWanted  quantity.Length // for WantedSafety at the steady torque and for the peak; NaN while a strength is not known
	PeakUse       quantity.Ratio  // the load at the weakest place over the allowable one; known as LeastSafety is
	KeyUse        quantity.Ratio  // the load on the key itself at the peak over the allowable one; NaN without a peak torque
	ShaftUse      quantity.Ratio  // the same for the keyway in the shaft; NaN while its strength is not known
	HubUse        quantity.Ratio  // the same for the keyway in the hub
	WidthForShaft quantity.Ratio  // key width over shaft diameter
	LengthUsed    quantity.Length // of KeyLength, no more than longestKey diameters

	KeyForce      quantity.Force  // of all keys together, at the mean diameter
	DesignTorque  quantity.Torque // the greater of steady and peak torque, as far as they are known
	DesignCase    string          // which of them that is, as for a shaft
	SizingTorque  quantity.Torque // the greater of WantedSafety times the steady torque and the peak torque, which the lengths wanted are for
	SmallEnd      quantity.Length // of the taper; of a parallel shaft its diameter
	ForceDiameter quantity.Length
	KeyRise       quantity.Length // the key's height used
	SeatInShaft   quantity.Length // depth that bears in the shaft
	SeatInHub     quantity.Length // depth that bears in the hub
	AcrossKeyway  quantity.Length // from the bottom of the shaft's keyway to the far side of the shaft
	KeysBearing   quantity.Ratio  // how many keys are counted

	KeyShear         quantity.Stress
	ShaftSideBearing quantity.Stress // on key and shaft
	HubSideBearing   quantity.Stress // on key and hub
	ShearSafety      quantity.Ratio  // of the key in shear
	KeyBearingSafety quantity.Ratio  // of the key against crushing
	ShaftSafety      quantity.Ratio
	HubSafety        quantity.Ratio
	ShearLength      quantity.Length // for SizingTorque
	BearingLength    quantity.Length // for SizingTorque
}

// The codes of WeakestPlace, for which the schema of key-strength has the words.
const (
	KeyShears  = "key-shears"
	KeyCrushes = "key-crushed"
	ShaftGives = "shaft-crushed"
	HubGives   = "hub-crushed"
)

// The codes of NotJudged.
const (
	AllJudged      = "none"
	HubNotJudged   = "hub"
	ShaftNotJudged = "shaft"
	NeitherJudged  = "hub-and-shaft"
)

const (
	shearPerPull = 0.577 // yield in shear over yield in pull, distortion energy, as the handbook rounds it
	longestKey   = 1.5   // diameters of the shaft, beyond which its twist keeps the far end from bearing: Shigley, sec. 7-7, from memory
	sameEnd      = 0.02  // by which a shaft may differ from the taper of a table
	halfSeat     = 0.05  // of the width, by which a keyway may differ from that of a square key
)

// KeyStrength finds whether a parallel key holds the torque.
//
// The force F = 2·T/d shears the key over width times length and crushes it
// over length times the depth that bears on either side; yield in shear is
// 0.577 of the yield strength, and no more than 1.5 diameters of length count
// (Shigley, Mechanical Engineering Design, 9th ed., sec. 7-7, example 7-6,
// from memory). On a taper the force is taken at the mean diameter, by its small
// end where that is known, else by its ratio and length, and the
// grip of the taper itself counts for nothing, which is the safe side. Of a taper of
// which neither is known MeanShare says what its mean may be, of a key that was not
// measured HeightShare and SeatShare how high it may be and how deep it may sit. The
// keys of two are taken to share evenly. A place whose strength is not known
// is not judged, and then nothing is said of the least of them.
//
// The error is a *problem.Error of everything that cannot be. KeyStrength
// allocates nothing when it succeeds.
func KeyStrength(in KeyStrengthInput) (out KeyStrengthResult, err error) {
	if err = in.validate(); err != nil {
		return KeyStrengthResult{}, err
	}
	out.load(&in)
	out.hold(&in)
	known, least := out.weakest()
	out.known(&in, known)
	out.atPeak(&in, least)
	out.wanted(&in)
	return out, nil
}

// load finds the force and what it presses on.
func (out *KeyStrengthResult) load(in *KeyStrengthInput) {
	out.DesignTorque, out.DesignCase = designTorque(in.ShaftTorque, in.PeakTorque)
	out.SmallEnd = in.smallEnd()
	out.TaperMeasured = quantity.Ratio(math.NaN())
	if in.SmallEndDiameter > 0 && in.TaperLength > 0 {
		large := in.LargeEndDiameter // of its table: a shaft typed a little off that is no other taper
		if large == 0 {
			large = in.ShaftDiameter
		}
		out.TaperMeasured = quantity.Ratio((large - in.SmallEndDiameter) / in.TaperLength)
	}
	out.ForceDiameter = (in.ShaftDiameter + out.SmallEnd) / 2
	out.KeyRise, out.SeatInShaft = in.rise()
	out.SeatInHub = out.KeyRise - out.SeatInShaft
	d, w := float64(in.ShaftDiameter), float64(in.KeyWidth)
	out.AcrossKeyway = quantity.Length((d+math.Sqrt(d*d-w*w))/2) - out.SeatInShaft
	out.KeysBearing = quantity.Ratio(max(1, in.KeyCount))
	out.KeyForce = quantity.Force(2 * float64(out.DesignTorque) / float64(out.ForceDiameter))
	out.WidthForShaft = quantity.Ratio(in.KeyWidth / in.ShaftDiameter)
	out.LengthUsed = min(in.KeyLength, longestKey*in.ShaftDiameter)
}

// smallEnd is the small end of the taper; of a parallel shaft its diameter.
func (in *KeyStrengthInput) smallEnd() quantity.Length {
	switch {
	case in.SmallEndDiameter > 0:
		return in.SmallEndDiameter
	case in.TaperRatio == 0:
	case in.TaperRatio > 0 && in.TaperLength > 0:
		return hub.SmallEnd(in.ShaftDiameter, in.TaperRatio, in.TaperLength)
	case in.MeanShare > 0:
		return in.ShaftDiameter * quantity.Length(2*in.MeanShare-1)
	}
	return in.ShaftDiameter
}

// rise is how high the key is, and how much of that sits in the shaft.
func (in *KeyStrengthInput) rise() (height, seat quantity.Length) {
	height = cmp.Or(in.KeyHeight, in.KeyWidth*quantity.Length(cmp.Or(in.HeightShare, 1)))
	return height, cmp.Or(in.KeySeat, height*quantity.Length(cmp.Or(in.SeatShare, 0.5)))
}

// hold finds stresses and safeties at the design torque.
func (out *KeyStrengthResult) hold(in *KeyStrengthInput) {
	each := float64(out.KeyForce) / float64(out.KeysBearing) / float64(out.LengthUsed) // per length of one key
	out.KeyShear = quantity.Stress(each / float64(in.KeyWidth))
	out.ShaftSideBearing = quantity.Stress(each / float64(out.SeatInShaft))
	out.HubSideBearing = quantity.Stress(each / float64(out.SeatInHub))
	key := in.KeyYieldStrength
	out.ShearSafety = quantity.Ratio(shearPerPull * key / out.KeyShear)
	out.KeyBearingSafety = quantity.Ratio(key / max(out.ShaftSideBearing, out.HubSideBearing))
	out.ShaftSafety = quantity.Ratio(quantity.OrNaN(float64(in.ShaftYieldStrength)) / float64(out.ShaftSideBearing))
	out.HubSafety = quantity.Ratio(quantity.OrNaN(float64(in.HubYieldStrength)) / float64(out.HubSideBearing))
}

// weakest finds the place that gives first of those whose strength is known,
// with its safety factor at the design torque, and the least of all: NaN while a
// strength is not known.
func (out *KeyStrengthResult) weakest() (known, least quantity.Ratio) {
	least = out.ShearSafety
	out.WeakestPlace = KeyShears
	for _, place := range [...]struct {
		safety quantity.Ratio
		name   string
	}{{out.KeyBearingSafety, KeyCrushes}, {out.ShaftSafety, ShaftGives}, {out.HubSafety, HubGives}} {
		if place.safety < least { // never for NaN
			least, out.WeakestPlace = place.safety, place.name
		}
	}
	hub, shaft := math.IsNaN(float64(out.HubSafety)), math.IsNaN(float64(out.ShaftSafety))
	switch {
	case hub && shaft:
		out.NotJudged = NeitherJudged
	case hub:
		out.NotJudged = HubNotJudged
	case shaft:
		out.NotJudged = ShaftNotJudged
	default:
		out.NotJudged = AllJudged
		return least, least
	}
	return least, quantity.Ratio(math.NaN())
}

// known says what the places whose strength is known hold while another's is not:
// the whole holds no more.
func (out *KeyStrengthResult) known(in *KeyStrengthInput, least quantity.Ratio) {
	if out.NotJudged == AllJudged {
		least = quantity.Ratio(math.NaN())
	}
	out.KnownSafety = least * quantity.Ratio(out.DesignTorque/in.ShaftTorque)
	out.KnownTorque = quantity.Torque(least) * out.DesignTorque
}

// atPeak says what the safeties at the design torque mean at the peak and at
// the steady torque.
func (out *KeyStrengthResult) atPeak(in *KeyStrengthInput, least quantity.Ratio) {
	out.SteadySafety = least * quantity.Ratio(out.DesignTorque/in.ShaftTorque)
	out.TorqueHeld = quantity.Torque(least) * out.DesignTorque
	out.LeastSafety, out.PeakUse = least, 1/least
	out.KeyUse, out.ShaftUse, out.HubUse = 1/min(out.ShearSafety, out.KeyBearingSafety), 1/out.ShaftSafety, 1/out.HubSafety
	if in.PeakTorque == 0 {
		if !(out.PeakUse > 1) {
			out.LeastSafety = quantity.Ratio(math.NaN())
		}
		for _, use := range [...]*quantity.Ratio{&out.PeakUse, &out.KeyUse, &out.ShaftUse, &out.HubUse} {
			if !(*use > 1) { // what yields without a shock does with one
				*use = quantity.Ratio(math.NaN())
			}
		}
	}
}

// wanted finds the lengths for the safety wanted at the steady torque, which
// also hold the peak; each place's safety grows with the length.
func (out *KeyStrengthResult) wanted(in *KeyStrengthInput) {
	out.SizingTorque = max(in.ShaftTorque*quantity.Torque(quantity.OrNaN(float64(in.WantedSafety))), in.PeakTorque)
	length := func(safety quantity.Ratio) quantity.Length {
		return out.LengthUsed * quantity.Length(float64(out.SizingTorque/out.DesignTorque)/float64(safety))
	}
	out.ShearLength = length(out.ShearSafety)
	out.BearingLength = length(out.KeyBearingSafety)
	out.LengthWanted = length(out.SteadySafety * quantity.Ratio(in.ShaftTorque/out.DesignTorque))
}

// validate lists everything that cannot be.
func (in *KeyStrengthInput) validate() error {
	var faults problem.List
	d, w, h := float64(in.ShaftDiameter), float64(in.KeyWidth), float64(in.KeyHeight)
	faults.Above("/shaftDiameter", "shaft diameter", d)
	faults.Above("/shaftTorque", "shaft torque", float64(in.ShaftTorque))
	faults.Above("/keyWidth", "key width", w)
	faults.Above("/keyLength", "key length", float64(in.KeyLength))
	faults.Above("/keyYieldStrength", "yield strength of the key", float64(in.KeyYieldStrength))
	faults.NotNegative("/keyHeight", "key height", h)
	faults.NotNegative("/peakTorque", "peak torque", float64(in.PeakTorque))
	faults.NotNegative("/smallEndDiameter", "small end of the taper", float64(in.SmallEndDiameter))
	faults.NotNegative("/largeEndDiameter", "large end of the taper", float64(in.LargeEndDiameter))
	faults.NotNegative("/taperLength", "length of the taper", float64(in.TaperLength))
	faults.NotNegative("/keySeat", "depth of the keyway", float64(in.KeySeat))
	faults.NotNegative("/shaftYieldStrength", "yield strength of the shaft", float64(in.ShaftYieldStrength))
	faults.NotNegative("/hubYieldStrength", "yield strength of the hub", float64(in.HubYieldStrength))
	faults.NotNegative("/wantedSafety", "safety wanted", float64(in.WantedSafety))
	if k := float64(in.TaperRatio); k < 0 || k > hub.SteepestTaper { // never for NaN
		faults.Add("/taperRatio", "a taper like that is no shaft end", "0 to 0.25", "0.1 means 1 mm less for each 10 mm; 0 is a parallel shaft")
	}
	for _, share := range [...]struct {
		where, name, allowed string
		value                quantity.Ratio
		least, most          float64
	}{
		{"/meanShare", "mean of the taper over its large end", "0.6 to 1", in.MeanShare, 0.6, 1},
		{"/heightShare", "height of the key over its width", "0.3 to 2", in.HeightShare, 0.3, 2},
		{"/seatShare", "share of the key's height that sits in the shaft", "0.3 to 0.8", in.SeatShare, 0.3, 0.8},
	} {
		if share.value != 0 {
			faults.Between(share.where, share.name, float64(share.value), share.least, share.most, share.allowed)
		}
	}
	if in.KeyCount < 0 || in.KeyCount > 2 {
		faults.Add("/keyCount", fmt.Sprintf("%d keys cannot be taken to share the load", in.KeyCount), "1 or 2", "")
	}
	if len(faults) > 0 {
		return faults.Err()
	}
	if seat := float64(in.KeySeat); h == 0 && seat > 0 && math.Abs(seat-w/2) > halfSeat*w {
		faults.Add("/keyHeight", fmt.Sprintf("a keyway %s deep is not that of a square key %s wide", problem.Millimetres(seat), problem.Millimetres(w)), "the key's height", "measure the key: it is a flat or a tall one")
		h = 2 * seat
	}
	if h == 0 {
		rise, _ := in.rise()
		h = float64(rise)
	}
	if large := float64(in.LargeEndDiameter); large > 0 && math.Abs(d-large) > sameEnd*large {
		faults.Add("/shaftDiameter", fmt.Sprintf("a shaft of %s does not end in a taper of %s", problem.Millimetres(d), problem.Millimetres(large)), "about "+problem.Millimetres(large), "choose the taper of the shaft's own size, or leave it out and type its measures")
	}
	if l, taper := float64(in.KeyLength), float64(in.TaperLength); taper > 0 && l > taper {
		faults.Add("/keyLength", fmt.Sprintf("a key %s long does not bear in a taper or bore of %s", problem.Millimetres(l), problem.Millimetres(taper)), "up to "+problem.Millimetres(taper), "the length that bears in shaft and hub together")
	}
	if w > d/2 {
		faults.Add("/keyWidth", fmt.Sprintf("a key %s wide does not go into a shaft of %s", problem.Millimetres(w), problem.Millimetres(d)), "up to half the shaft, "+problem.Millimetres(d/2), "about a quarter of the shaft is usual")
	}
	if h/2 > d/4 {
		faults.Add("/keyHeight", fmt.Sprintf("a key %s high would reach through a shaft of %s", problem.Millimetres(h), problem.Millimetres(d)), "up to half the shaft, "+problem.Millimetres(d/2), "")
	}
	if seat := float64(in.KeySeat); seat > 0 && seat >= h {
		faults.Add("/keySeat", fmt.Sprintf("a keyway %s deep swallows a key %s high", problem.Millimetres(seat), problem.Millimetres(h)), "less than "+problem.Millimetres(h), "measured at the side of the keyway; about half the key's height")
	}
	if small := float64(in.SmallEndDiameter); small > 0 && (small >= d || math.IsNaN(small)) {
		faults.Add("/smallEndDiameter", fmt.Sprintf("the small end of the taper, %s, is not smaller than the shaft of %s", problem.Millimetres(small), problem.Millimetres(d)), "less than "+problem.Millimetres(d), "")
	}
	if in.SmallEndDiameter == 0 && !(in.smallEnd() > 0) {
		faults.Add("/taperLength", "a taper so long comes to a point", "less than "+problem.Millimetres(d/float64(in.TaperRatio)), "the length of the cone on the shaft")
	}
	return faults.Err()
}
