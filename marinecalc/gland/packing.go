// Rings of packing for a stuffing box: Packing.

package gland

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/stock"
)

// PackingInput is a stuffing box that is to be packed. All lengths are in metres; the
// range that Packing accepts stands beside each. What is measured may be drawn a
// slightly below zero.
type PackingInput struct {
	ShaftDiameter  quantity.Length // where it is not worn, 10 mm to 200 mm
	BoxBore        quantity.Length // 14 mm to 300 mm, at least 2 mm more than the shaft
	BoxDepth       quantity.Length // from the mouth to the bottom, 5 mm to 600 mm
	FollowerDepth  quantity.Length // that the follower takes up inside the mouth, 0 to 200 mm
	GrooveDiameter quantity.Length // of the shaft where packing has worn it; 0: not worn, else half to the whole of the shaft

	StockSections  stock.List      // to choose from
	MostOver       quantity.Length // that a section may be thicker than the room, 0 to 10 mm
	MostUnder      quantity.Length // that it may be thinner, 0 to 10 mm
	SkiveAllowance quantity.Length // added to a ring for its cut, 0 to 50 mm
	SpareRings     int             // 0 to 20
}

// PackingResult is what Packing finds. A figure for which a reading is missing is NaN.
type PackingResult struct {
	Section       quantity.Length // room between shaft and bore
	StockSection  quantity.Length // the nearest that is sold
	SoldAs        string          // the same as written in the list
	SectionExcess quantity.Length // stock less room; minus: thinner than the room
	SectionShort  quantity.Length // room less stock
	SectionFit    string          // whether it can be used

	RingCount    quantity.Ratio // whole rings that go in
	RingLength   quantity.Length
	TotalLength  quantity.Length // to buy, spare rings with it
	JointStagger quantity.Angle  // from one joint to the next
	PackedLength quantity.Length
	DepthLeft    quantity.Length
	PackedRatio  quantity.Ratio // packed length over shaft diameter

	NeckDiameter  quantity.Length // GrooveDiameter; NaN: no groove was measured
	GrooveDepth   quantity.Length
	GrooveSection quantity.Length // room between the worn shaft and the bore
	GrooveShare   quantity.Ratio  // groove depth over section
	StrengthLeft  quantity.Ratio  // torsional, of the shaft at the groove
}

// The codes of SectionFit, for which the schema of gland-packing has the words.
const (
	Fits     = "fits"
	TooThick = "thick"
	TooThin  = "thin"
)

// Packing finds packing size, number of rings, and their length.
//
// The section is half of bore less shaft, the stock section the nearest that
// is at most MostOver thicker or MostUnder thinner, or just the nearest where
// none is; the length of a ring π·(shaft +
// section) and what its bevelled cut adds (Mobley, Root Cause Failure
// Analysis, 1999, p. 226). As many whole rings of the stock section go in as
// the depth less the follower holds. In torsion a round shaft's strength goes
// with the third power of its diameter (16·T/(π·d³): Shigley eq. 3-37).
//
// The error is a *problem.Error of everything that cannot be. Packing allocates
// nothing when it succeeds.
func Packing(in PackingInput) (out PackingResult, err error) {
	if err = in.usable(); err != nil {
		return PackingResult{}, err
	}
	d, bore := float64(in.ShaftDiameter), float64(in.BoxBore)
	section := (bore - d) / 2
	out.Section = quantity.Length(section)
	room := float64(in.BoxDepth - in.FollowerDepth)
	if out.StockSection, out.SoldAs = in.nearest(out.Section); !(float64(out.StockSection) <= room*(1+1e-9)) {
		return PackingResult{}, in.noRing(out.StockSection, out.SoldAs)
	}
	out.SectionExcess = out.StockSection - out.Section
	out.SectionShort = -out.SectionExcess
	switch out.SectionFit = Fits; {
	case in.fits(out.SectionExcess):
	case out.SectionExcess > 0:
		out.SectionFit = TooThick
	default:
		out.SectionFit = TooThin
	}
	rings := math.Floor(room/float64(out.StockSection) + 1e-9)
	out.RingCount = quantity.Ratio(rings)
	out.RingLength = quantity.Length(math.Pi*(d+section)) + in.SkiveAllowance
	out.TotalLength = quantity.Length(rings+float64(in.SpareRings)) * out.RingLength
	out.JointStagger = stagger(rings)
	out.PackedLength = quantity.Length(rings) * out.StockSection
	out.DepthLeft = in.BoxDepth - in.FollowerDepth - out.PackedLength
	out.PackedRatio = quantity.Ratio(out.PackedLength / in.ShaftDiameter)

	worn := math.NaN()
	if in.GrooveDiameter > 0 {
		worn = float64(in.GrooveDiameter)
	}
	out.NeckDiameter = quantity.Length(worn)
	out.GrooveDepth = quantity.Length((d - worn) / 2)
	out.GrooveSection = quantity.Length((bore - worn) / 2)
	out.GrooveShare = quantity.Ratio((d - worn) / 2 / section)
	out.StrengthLeft = quantity.Ratio(worn / d * worn / d * worn / d)
	return out, nil
}

// fits tells whether a packing so much thicker than the room can be used.
func (in *PackingInput) fits(excess quantity.Length) bool {
	return excess <= in.MostOver+1e-9 && excess >= -in.MostUnder-1e-9
}

// nearest finds the stock size nearest to the room of those that fit, or of
// all where none does; the smaller of two that are as near. It is NaN for a
// list that does not rise or cannot be read.
func (in *PackingInput) nearest(room quantity.Length) (best quantity.Length, words string) {
	best = quantity.Length(math.Inf(1))
	last := quantity.Length(0)
	for rest := in.StockSections; rest != ""; {
		size, sold, after := rest.Cut()
		if !(size > last) {
			return quantity.Length(math.NaN()), ""
		}
		nearer := math.Abs(float64(size-room)) < math.Abs(float64(best-room))-1e-9
		if this, other := in.fits(size-room), in.fits(best-room); this && !other || this == other && nearer {
			best, words = size, sold
		}
		rest, last = after, size
	}
	return best, words
}

// noRing says why no size of the list will do.
func (in *PackingInput) noRing(best quantity.Length, sold string) error {
	var bad problem.List
	const allowed = `rising sizes with commas between them, such as "6 mm, 8 mm" or "1/4 in, 5/16 in"`
	switch {
	case in.StockSections == "":
		bad.Add("/stockSections", "there is nothing to choose from", allowed, "")
	case math.IsNaN(float64(best)):
		bad.Add("/stockSections", in.StockSections.Fault(), allowed, "")
	default:
		bad.Add("/boxDepth", fmt.Sprintf("not one ring of %s goes in: the follower leaves %.4g mm", sold, 1000*(in.BoxDepth-in.FollowerDepth)), "deeper than the follower and one ring", "measure the depth with the old packing out and the follower off")
	}
	return bad.Err()
}

// stagger spreads the joints: a quarter turn from four rings on, evenly below
// that. Common practice, no source.
func stagger(rings float64) quantity.Angle {
	switch {
	case rings < 2:
		return quantity.Angle(math.NaN())
	case rings < 4:
		return quantity.Angle(2 * math.Pi / rings)
	}
	return math.Pi / 2
}

// usable says whether Packing can work with what is given.
func (in *PackingInput) usable() error {
	const hair = 0.002 // a depth of nothing, drawn with the accuracy of a rule
	var bad problem.List
	bad.Between("/shaftDiameter", "the shaft diameter", float64(in.ShaftDiameter), 0.0099, 0.201, "10 mm to 200 mm")
	bad.Between("/boxBore", "the bore of the box", float64(in.BoxBore), 0.0139, 0.301, "14 mm to 300 mm")
	bad.Between("/boxDepth", "the depth of the box", float64(in.BoxDepth), 0.003, 0.602, "5 mm to 600 mm")
	bad.Between("/followerDepth", "the depth of the follower", float64(in.FollowerDepth), -hair, 0.202, "0 to 200 mm")
	bad.Between("/mostOver", "how much thicker the packing may be", float64(in.MostOver), 0, 0.01, "0 to 10 mm")
	bad.Between("/mostUnder", "how much thinner the packing may be", float64(in.MostUnder), 0, 0.01, "0 to 10 mm")
	bad.Between("/skiveAllowance", "the addition for the cut", float64(in.SkiveAllowance), -hair, 0.05, "0 to 50 mm")
	if in.SpareRings < 0 || in.SpareRings > 20 {
		bad.Add("/spareRings", fmt.Sprintf("%d spare rings", in.SpareRings), "0 to 20", "")
	}
	if len(bad) > 0 {
		return bad.Err()
	}
	if !(in.BoxBore-in.ShaftDiameter >= 0.0018) { // 2 mm, less what two callipers may be out
		bad.Add("/boxBore", fmt.Sprintf("the bore of the box leaves %.4g mm on each side for the packing", 500*(in.BoxBore-in.ShaftDiameter)), "at least 2 mm more than the shaft diameter", "is the bore the ring's outside diameter, not its section?")
		return bad.Err()
	}
	if in.GrooveDiameter != 0 && !problem.Within(float64(in.GrooveDiameter/in.ShaftDiameter), 0.5, 1.01) {
		bad.Add("/grooveDiameter", fmt.Sprintf("a groove of %.4g mm cannot be in a shaft of %.4g mm", 1000*in.GrooveDiameter, 1000*in.ShaftDiameter), "half the shaft diameter up to the whole", "type the diameter that is left in the groove, not its depth")
	}
	return bad.Err()
}
