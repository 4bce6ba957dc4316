// Strength of a parallel key: KeyStrength.

package shaft

import (
	"fmt"
	"math"

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
	KeyHeight     quantity.Length // optional; a square key's is its width
	PeakTorque    quantity.Torque // optional; without it nothing is said of the peak, and the steady torque counts when it is greater
	KeyCount      int             // keys that share the load, 1 or 2; 0 is 1

	SmallEndDiameter quantity.Length // of a taper; optional
	KeySeat          quantity.Length // depth of the keyway at its side in the shaft; optional, half the height

	KeyYieldStrength   quantity.Stress // above 0
	ShaftYieldStrength quantity.Stress // optional
	HubYieldStrength   quantity.Stress // optional

	WantedSafety quantity.Ratio // for the lengths wanted; optional
}

// KeyStrengthResult is what KeyStrength finds. NaN marks a figure whose optional input is
// missing.
type KeyStrengthResult struct {
	LeastSafety   quantity.Ratio // the least of the four, at the peak; NaN without a peak torque
	SteadySafety  quantity.Ratio // the least of the four, at the steady torque
	WeakestPlace  string
	LengthWanted  quantity.Length // for WantedSafety at the design torque
	KeyUse        quantity.Ratio  // the load at the peak over the allowable load at the weakest place; NaN without a peak torque
	WidthForShaft quantity.Ratio  // key width over shaft diameter

	KeyForce      quantity.Force  // of all keys together, at the mean diameter
	DesignTorque  quantity.Torque // the greater of steady and peak torque, as far as they are known
	DesignCase    string          // which of them that is, as for a shaft
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
	ShearLength      quantity.Length // for WantedSafety
	BearingLength    quantity.Length // for WantedSafety
}

// The codes of WeakestPlace, for which the schema of key-strength has the words.
const (
	KeyShears    = "key-shears"
	KeyCrushes   = "key-crushed"
	ShaftGives   = "shaft-crushed"
	HubGives     = "hub-crushed"
	shearPerPull = 0.577 // yield in shear over yield in pull, distortion energy, as the handbook rounds it
)

// KeyStrength finds whether a parallel key holds the torque.
//
// The force F = 2·T/d shears the key over width times length and crushes it
// over length times the depth that bears on either side; yield in shear is
// 0.577 of the yield strength (Shigley, Mechanical Engineering Design, 9th
// ed., sec. 7-7, example 7-6, from memory). On a taper the force is taken at
// the mean diameter, and the grip of the taper itself counts for nothing,
// which is the safe side. The keys of two are taken to share evenly.
//
// The error is a *problem.Error of everything that cannot be. Key allocates
// nothing when it succeeds.
func KeyStrength(in KeyStrengthInput) (out KeyStrengthResult, err error) {
	if err = in.validate(); err != nil {
		return KeyStrengthResult{}, err
	}
	out.load(&in)
	out.hold(&in)
	least := out.weakest()
	out.wanted(&in, least)
	return out, nil
}

// load finds the force and what it presses on.
func (out *KeyStrengthResult) load(in *KeyStrengthInput) {
	out.DesignTorque, out.DesignCase = designTorque(in.ShaftTorque, in.PeakTorque)
	out.ForceDiameter = in.ShaftDiameter
	if in.SmallEndDiameter > 0 {
		out.ForceDiameter = (in.ShaftDiameter + in.SmallEndDiameter) / 2
	}
	out.KeyRise = in.KeyHeight
	if out.KeyRise == 0 {
		out.KeyRise = in.KeyWidth
	}
	out.SeatInShaft = in.KeySeat
	if out.SeatInShaft == 0 {
		out.SeatInShaft = out.KeyRise / 2
	}
	out.SeatInHub = out.KeyRise - out.SeatInShaft
	d, w := float64(in.ShaftDiameter), float64(in.KeyWidth)
	out.AcrossKeyway = quantity.Length((d+math.Sqrt(d*d-w*w))/2) - out.SeatInShaft
	out.KeysBearing = quantity.Ratio(max(1, in.KeyCount))
	out.KeyForce = quantity.Force(2 * float64(out.DesignTorque) / float64(out.ForceDiameter))
	out.WidthForShaft = quantity.Ratio(in.KeyWidth / in.ShaftDiameter)
}

// hold finds stresses and safeties at the design torque.
func (out *KeyStrengthResult) hold(in *KeyStrengthInput) {
	each := float64(out.KeyForce) / float64(out.KeysBearing) / float64(in.KeyLength) // per length of one key
	out.KeyShear = quantity.Stress(each / float64(in.KeyWidth))
	out.ShaftSideBearing = quantity.Stress(each / float64(out.SeatInShaft))
	out.HubSideBearing = quantity.Stress(each / float64(out.SeatInHub))
	key := in.KeyYieldStrength
	out.ShearSafety = quantity.Ratio(shearPerPull * key / out.KeyShear)
	out.KeyBearingSafety = quantity.Ratio(key / max(out.ShaftSideBearing, out.HubSideBearing))
	out.ShaftSafety = quantity.Ratio(quantity.OrNaN(float64(in.ShaftYieldStrength)) / float64(out.ShaftSideBearing))
	out.HubSafety = quantity.Ratio(quantity.OrNaN(float64(in.HubYieldStrength)) / float64(out.HubSideBearing))
}

// weakest finds the place that gives first, and its safety at the design
// torque. A figure that is not known counts for none.
func (out *KeyStrengthResult) weakest() quantity.Ratio {
	least := out.ShearSafety
	out.WeakestPlace = KeyShears
	for _, place := range [...]struct {
		safety quantity.Ratio
		name   string
	}{{out.KeyBearingSafety, KeyCrushes}, {out.ShaftSafety, ShaftGives}, {out.HubSafety, HubGives}} {
		if place.safety < least { // never for NaN
			least, out.WeakestPlace = place.safety, place.name
		}
	}
	return least
}

// wanted says what the minimum safety factor at the design torque means at the peak
// and at the steady torque, and finds the lengths for the safety wanted; each
// place's safety grows with the length.
func (out *KeyStrengthResult) wanted(in *KeyStrengthInput, least quantity.Ratio) {
	out.SteadySafety = least * quantity.Ratio(out.DesignTorque/in.ShaftTorque)
	out.LeastSafety, out.KeyUse = least, 1/least
	if in.PeakTorque == 0 {
		out.LeastSafety, out.KeyUse = quantity.Ratio(math.NaN()), quantity.Ratio(math.NaN())
	}
	n := quantity.OrNaN(float64(in.WantedSafety))
	length := func(safety quantity.Ratio) quantity.Length {
		return quantity.Length(n * float64(in.KeyLength) / float64(safety))
	}
	out.ShearLength = length(out.ShearSafety)
	out.BearingLength = length(out.KeyBearingSafety)
	out.LengthWanted = length(least)
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
	faults.NotNegative("/keySeat", "depth of the keyway", float64(in.KeySeat))
	faults.NotNegative("/shaftYieldStrength", "yield strength of the shaft", float64(in.ShaftYieldStrength))
	faults.NotNegative("/hubYieldStrength", "yield strength of the hub", float64(in.HubYieldStrength))
	faults.NotNegative("/wantedSafety", "safety wanted", float64(in.WantedSafety))
	if in.KeyCount < 0 || in.KeyCount > 2 {
		faults.Add("/keyCount", fmt.Sprintf("%d keys cannot be taken to share the load", in.KeyCount), "1 or 2", "")
	}
	if len(faults) > 0 {
		return faults.Err()
	}
	if h == 0 {
		h = w
	}
	if w > d/2 {
		faults.Add("/keyWidth", fmt.Sprintf("a key %s wide does not go into a shaft of %s", mm(w), mm(d)), "up to half the shaft, "+mm(d/2), "about a quarter of the shaft is usual")
	}
	if h/2 > d/4 {
		faults.Add("/keyHeight", fmt.Sprintf("a key %s high would reach through a shaft of %s", mm(h), mm(d)), "up to half the shaft, "+mm(d/2), "")
	}
	if seat := float64(in.KeySeat); seat > 0 && seat >= h {
		faults.Add("/keySeat", fmt.Sprintf("a keyway %s deep swallows a key %s high", mm(seat), mm(h)), "less than "+mm(h), "measured at the side of the keyway; about half the key's height")
	}
	if small := float64(in.SmallEndDiameter); small > 0 && (small >= d || math.IsNaN(small)) {
		faults.Add("/smallEndDiameter", fmt.Sprintf("the small end of the taper, %s, is not smaller than the shaft of %s", mm(small), mm(d)), "less than "+mm(d), "")
	}
	return faults.Err()
}
