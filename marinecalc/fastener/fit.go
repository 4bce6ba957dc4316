// Which stock length of bolt goes through a stack: Fit.

package fastener

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/stock"
)

// Make is how far up a bolt is threaded.
type Make string

// The makes.
const (
	PartlyThreaded Make = "partly" // plain shank below the head: ASME B18.2.1, ISO 4014
	FullyThreaded  Make = "fully"  // thread up to the head: ISO 4017
)

// FitInput is what one coupling bolt goes through, and the room round it. A
// field marked optional is not given when it is zero. Lengths that are
// measured may be drawn slightly below zero.
type FitInput struct {
	NominalDiameter quantity.Length // above 0
	Pitch           quantity.Length // above 0
	ThreadForm      ThreadForm

	HeadFlangeThickness quantity.Length // of the flange under the head, above 0
	NutFlangeThickness  quantity.Length // of the flange under the nut, above 0
	SpacerThickness     quantity.Length // between the flanges; optional
	WashersAtHead       int             // 0 to 4
	WashersAtNut        int             // 0 to 4
	WasherThickness     quantity.Length // of one; needed with washers
	NutHeight           quantity.Length // above 0
	HeadHeight          quantity.Length // optional; needed with HeadRoom

	ProtrudingThreads quantity.Ratio  // wanted beyond the nut, 0 or more
	Made              Make            // PartlyThreaded or FullyThreaded
	ThreadLength      quantity.Length // measured on the bolt; optional, the standard's stands in

	HeadRoom     quantity.Length // free behind the flange on the head's side; optional
	NutRoom      quantity.Length // free behind the flange on the nut's side; optional
	SocketHeight quantity.Length // of the socket with its drive over the nut; 0: a spanner from the side
	SocketWidth  quantity.Length // outside diameter; optional
	RoundRoom    quantity.Length // from the bolt's middle to the nearest thing beside it; optional

	StockLengths stock.List      // to choose from
	BoltLength   quantity.Length // in hand, to be judged; optional, the chosen one stands in

	BoltCount     int             // 0 not given, or 2 to 48
	FirstPass     quantity.Ratio  // of the wrench setting, above 0 up to 1
	SecondPass    quantity.Ratio  // FirstPass up to 1
	WrenchSetting quantity.Torque // optional

	MeasuredPrevailingTorque quantity.Torque // of a nylon-insert lock nut before it seats; optional
	ReuseTorque              quantity.Torque // below which an authority scraps it; optional
	ThreadSize               string          // inch size that ReuseTorque is for, such as "7/16-14"; optional
}

// FitResult is what Fit finds. NaN marks a figure for which an optional input
// is missing; a text then is empty.
type FitResult struct {
	ChosenLength  quantity.Length // shortest stock length that goes; NaN when none does
	LengthsThatGo string          // those that go, from the list
	NoneGoes      string          // why none does

	GripLength     quantity.Length // flanges, spacer and washers
	ShortestLength quantity.Length // with the wanted threads beyond the nut
	LongestByRoom  quantity.Length // NaN when no room is given

	ShorterLength  quantity.Length // next stock length below those that go; NaN when there is none
	ShorterThreads quantity.Ratio  // that it would show beyond the nut; NaN where it does not reach that
	WhyNotShorter  string
	LongerLength   quantity.Length // next stock length above those that go; NaN when there is none
	LongerBy       quantity.Length // that it is too long
	WhyNotLonger   string

	JudgedLength   quantity.Length // BoltLength, or ChosenLength
	Protrusion     quantity.Length // beyond the nut
	ThreadsBeyond  quantity.Ratio  // the same in pitches
	ThreadBelowNut quantity.Length // thread inside the grip, which lets the nut clamp
	ShankPastJoint quantity.Length // plain shank beyond the joint of the faces; minus: thread in the joint
	HeadRoomLeft   quantity.Length
	NutRoomLeft    quantity.Length
	SocketRoomLeft quantity.Length // beside the socket

	TighteningOrder BoltOrder // 0 where nobody counted the bolts
	FirstTorque     quantity.Torque
	SecondTorque    quantity.Torque
	ReuseMargin     quantity.Ratio // prevailing torque over the scrap limit

	ThreadAddition quantity.Length // of the standard's thread length over two diameters
	ThreadedLength quantity.Length // of the judged bolt
}

// The codes of WhyNotShorter, WhyNotLonger and NoneGoes, for which the schema of
// bolt-fit has the words.
const (
	TooFewThreads  = "too-few-threads"
	NutMeetsShank  = "nut-meets-shank"
	NoRoomForHead  = "no-room-for-head"
	NoRoomForNut   = "no-room-for-nut"
	NoneIsLong     = "all-too-short"
	NoneIsShort    = "all-too-long"
	FallsInBetween = "falls-between"
	NoLengthCan    = "no-length-can" // with thread enough any is longer than its room
	EndOfList      = "end-of-list"
	NothingHinders = "nothing-hinders"
)

// Fit finds which stock lengths of bolt go through a stack.
//
// The shortest shows the wanted threads beyond the nut: two complete ones by
// US Army TM 5-2330-325-13&P, work package 0095. The longest still clamps,
// its full thread reaching into the grip (ASME B18.2.1: thread two diameters
// and 1/4 in, 1/2 in more than that over 6 in, the latter from memory; ISO
// 888: two diameters and 6 mm up to 125 mm, 12 mm up to 200 mm, 25 mm above),
// and there is room to put it in straight and for a socket to be lifted over
// its end.
//
// The error is a *problem.Error of everything that cannot be. Fit does not
// allocate unless it refuses.
func Fit(in FitInput) (out FitResult, err error) {
	if err = validateStack(&in); err != nil {
		return FitResult{}, err
	}
	out.bounds(&in)
	if err := out.choose(&in); err != nil {
		return FitResult{}, err
	}
	out.judge(&in)
	out.tighten(&in)
	return out, nil
}

// FitAt is Fit of a stack for which the lengths were chosen before, when it was
// thought to measure something else: the bolt is bought, and sits as it does.
func FitAt(in FitInput, chosen FitResult) (out FitResult, err error) {
	if err = validateStack(&in); err != nil {
		return FitResult{}, err
	}
	out.bounds(&in)
	out.ChosenLength, out.LengthsThatGo, out.NoneGoes = chosen.ChosenLength, chosen.LengthsThatGo, chosen.NoneGoes
	out.ShorterLength, out.WhyNotShorter = chosen.ShorterLength, chosen.WhyNotShorter
	out.LongerLength, out.WhyNotLonger = chosen.LongerLength, chosen.WhyNotLonger
	out.beside(&in)
	out.judge(&in)
	out.tighten(&in)
	return out, nil
}

// beside sets what the lengths beside those that go lack, and have too much.
func (out *FitResult) beside(in *FitInput) {
	out.ShorterThreads = quantity.Ratio((out.ShorterLength - out.GripLength - in.NutHeight) / in.Pitch)
	if out.ShorterLength < out.GripLength {
		out.ShorterThreads = quantity.Ratio(math.NaN()) // it does not reach the nut
	}
	if out.LongerBy = quantity.Length(math.NaN()); out.LongerLength > 0 {
		_, by := out.hinders(in, float64(out.LongerLength))
		out.LongerBy = quantity.Length(by)
	}
}

// bounds sets grip, shortest length, and what the room allows.
func (out *FitResult) bounds(in *FitInput) {
	washers := quantity.Length(in.WashersAtHead+in.WashersAtNut) * in.WasherThickness
	out.GripLength = in.HeadFlangeThickness + in.NutFlangeThickness + in.SpacerThickness + washers
	out.ShortestLength = out.GripLength + in.NutHeight + quantity.Length(in.ProtrudingThreads)*in.Pitch
	out.LongestByRoom = quantity.Length(math.NaN())
	head, nut := longestByHead(in), longestByNut(in)
	if !math.IsInf(head, 1) || !math.IsInf(nut, 1) {
		out.LongestByRoom = quantity.Length(min(head, nut))
	}
}

// longestByHead is the length that can still be put in, or infinity.
func longestByHead(in *FitInput) float64 {
	if in.HeadRoom == 0 {
		return math.Inf(1)
	}
	return float64(in.HeadRoom - in.HeadHeight)
}

// longestByNut is the length whose end a socket still passes, or infinity.
func longestByNut(in *FitInput) float64 {
	if in.NutRoom == 0 {
		return math.Inf(1)
	}
	body := in.HeadFlangeThickness + in.NutFlangeThickness + in.SpacerThickness + quantity.Length(in.WashersAtHead)*in.WasherThickness
	return float64(in.NutRoom - in.SocketHeight + body)
}

// addition is what the standard's thread length adds to two diameters.
func addition(form ThreadForm, length float64) float64 {
	switch {
	case form == Inch && length <= 0.1524*(1+1e-12):
		return 0.00635
	case form == Inch:
		return 0.0127
	case length <= 0.125*(1+1e-12):
		return 0.006
	case length <= 0.2*(1+1e-12):
		return 0.012
	}
	return 0.025
}

// threaded is the full thread of a bolt of that length.
func threaded(in *FitInput, length float64) float64 {
	switch {
	case in.ThreadLength > 0:
		return min(length, float64(in.ThreadLength))
	case in.Made == FullyThreaded:
		return length
	}
	return min(length, 2*float64(in.NominalDiameter)+addition(in.ThreadForm, length))
}

const hair = 1e-9 // m: lengths in inches and millimetres meet to the last digit only

// hinders says why a length does not go, and by how much it is too long.
func (out *FitResult) hinders(in *FitInput, length float64) (why string, by float64) {
	if length < float64(out.ShortestLength)-hair {
		return TooFewThreads, 0
	}
	for _, bound := range [3]struct {
		most float64
		why  string
	}{
		{float64(out.GripLength) + threaded(in, length), NutMeetsShank},
		{longestByHead(in), NoRoomForHead},
		{longestByNut(in), NoRoomForNut},
	} {
		if length-bound.most > max(by, hair) {
			why, by = bound.why, length-bound.most
		}
	}
	return why, by
}

// choose runs along the list from short to long, once, and refuses a list
// that cannot be read.
func (out *FitResult) choose(in *FitInput) error {
	nan := quantity.Length(math.NaN())
	out.ChosenLength, out.ShorterLength, out.LongerLength = nan, nan, nan
	defer out.beside(in)
	out.WhyNotShorter, out.WhyNotLonger = EndOfList, EndOfList
	from, to, last := 0, 0, quantity.Length(0)
	for rest := in.StockLengths; rest != ""; {
		at := len(in.StockLengths) - len(rest)
		size, words, after := rest.Cut()
		if !(size > last) { // nor is NaN
			return validateList(in.StockLengths)
		}
		rest, last = after, size
		if out.LongerLength > 0 {
			continue // only read, to find a fault
		}
		switch why, _ := out.hinders(in, float64(size)); why {
		case TooFewThreads:
			out.ShorterLength, out.WhyNotShorter = size, why
		case "":
			if to == 0 {
				out.ChosenLength, from = size, at
			}
			to = at + len(words)
		default:
			out.LongerLength, out.WhyNotLonger = size, why
		}
	}
	if !math.IsNaN(float64(out.ChosenLength)) {
		out.LengthsThatGo = string(in.StockLengths[from:to])
		if math.IsNaN(float64(out.LongerLength)) {
			out.WhyNotLonger = NothingHinders
		}
		return nil
	}
	switch {
	case out.LongestByRoom < out.ShortestLength-hair: // never for NaN
		out.NoneGoes = NoLengthCan
	case math.IsNaN(float64(out.LongerLength)):
		out.NoneGoes = NoneIsLong
	case math.IsNaN(float64(out.ShorterLength)):
		out.NoneGoes = NoneIsShort
	default:
		out.NoneGoes = FallsInBetween
	}
	return nil
}

// judge sets how the bolt in hand, or the chosen one, sits.
func (out *FitResult) judge(in *FitInput) {
	length := in.BoltLength
	if length == 0 {
		length = out.ChosenLength
	}
	out.JudgedLength = length
	out.Protrusion = length - out.GripLength - in.NutHeight
	out.ThreadsBeyond = quantity.Ratio(out.Protrusion / in.Pitch)
	if out.ThreadAddition = length; length > 0 { // else there is no bolt
		out.ThreadAddition = quantity.Length(addition(in.ThreadForm, float64(length)))
	}
	out.ThreadedLength = quantity.Length(threaded(in, float64(length)))
	out.ThreadBelowNut = out.GripLength - (length - out.ThreadedLength)
	if length <= out.GripLength {
		out.ThreadBelowNut = quantity.Length(math.NaN()) // the nut does not go on at all
	}
	out.ShankPastJoint = length - out.ThreadedLength - in.HeadFlangeThickness - quantity.Length(in.WashersAtHead)*in.WasherThickness
	out.HeadRoomLeft = quantity.Length(longestByHead(in)) - length
	out.NutRoomLeft = quantity.Length(longestByNut(in)) - length
	nan := quantity.Length(math.NaN())
	if in.HeadRoom == 0 {
		out.HeadRoomLeft = nan
	}
	if in.NutRoom == 0 {
		out.NutRoomLeft = nan
	}
	out.SocketRoomLeft = nan
	if in.RoundRoom > 0 && in.SocketWidth > 0 {
		out.SocketRoomLeft = in.RoundRoom - in.SocketWidth/2
	}
}

// tighten sets order, passes and the fate of a used nylon-insert lock nut.
func (out *FitResult) tighten(in *FitInput) {
	out.TighteningOrder = BoltOrder(in.BoltCount)
	setting := quantity.Torque(quantity.OrNaN(float64(in.WrenchSetting)))
	out.FirstTorque = quantity.Torque(in.FirstPass) * setting
	out.SecondTorque = quantity.Torque(in.SecondPass) * setting
	out.ReuseMargin = quantity.Ratio(quantity.OrNaN(float64(in.MeasuredPrevailingTorque)) / quantity.OrNaN(float64(in.ReuseTorque)))
}
