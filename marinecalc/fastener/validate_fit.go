// Checks of a stack.

package fastener

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/stock"
)

// validateStack lists everything in the stack that cannot be.
func validateStack(in *FitInput) error {
	var faults problem.List
	faults.Above("/nominalDiameter", "thread diameter", float64(in.NominalDiameter))
	if faults.Above("/pitch", "pitch", float64(in.Pitch)) && float64(in.NominalDiameter) <= inchRootDepth*float64(in.Pitch) {
		faults.Add("/pitch", "the pitch is so coarse that the thread has no root left", "well below the thread diameter", "an inch thread's pitch is one inch divided by its threads per inch")
	}
	if in.ThreadForm != Metric && in.ThreadForm != Inch {
		faults.Add("/threadForm", "the thread standard is missing or unknown", "metric, inch", "")
	}
	if in.Made != PartlyThreaded && in.Made != FullyThreaded {
		faults.Add("/made", "how far the bolt is threaded is missing or unknown", "partly, fully", "")
	}
	validateLayers(&faults, in)
	validateRoom(&faults, in)
	if in.BoltCount != 0 && (in.BoltCount < 2 || in.BoltCount > mostBolts) {
		faults.Add("/boltCount", fmt.Sprintf("%d bolts", in.BoltCount), fmt.Sprintf("2 to %d", mostBolts), "")
	}
	faults.Share("/firstPass", "first pass", float64(in.FirstPass))
	faults.Share("/secondPass", "second pass", float64(in.SecondPass))
	if in.SecondPass < in.FirstPass {
		faults.Add("/secondPass", "the second pass is lighter than the first", "from the first pass up to 1", "")
	}
	faults.NotNegative("/wrenchSetting", "wrench setting", float64(in.WrenchSetting))
	faults.NotNegative("/measuredPrevailingTorque", "prevailing torque", float64(in.MeasuredPrevailingTorque))
	faults.NotNegative("/reuseTorque", "least prevailing torque", float64(in.ReuseTorque))
	validateReuse(&faults, in)
	return faults.Err()
}

// validateReuse asks that a scrap limit be that of the bolt's own size.
func validateReuse(faults *problem.List, in *FitInput) {
	if in.ThreadSize == "" {
		return
	}
	const slack = 0.0003 // between a thread's nominal and its real diameter
	diameter, threads := splitSize(in.ThreadSize)
	inch, bolt := 0.0254*stock.Amount(diameter), 0.0254/float64(in.Pitch)
	if in.ThreadForm != Inch || !(math.Abs(inch-float64(in.NominalDiameter)) <= slack) || threads > 0 && math.Abs(bolt-threads) > 0.02*threads {
		of := fmt.Sprintf("a metric thread of %.4g mm", 1000*in.NominalDiameter)
		if in.ThreadForm == Inch {
			of = fmt.Sprintf("%.4g in and %.4g threads per inch", in.NominalDiameter/0.0254, bolt)
		}
		faults.Add("/reuseRule", fmt.Sprintf("the scrap limit is for %s, the bolt has %s", in.ThreadSize, of),
			"the row of the bolt's own size", "the authorities give inch sizes only; type the limit of the nut's maker for a metric one")
	}
}

// splitSize splits "1-1/8-12" into diameter and threads per inch, which are 0
// where they are not named.
func splitSize(size string) (diameter string, threads float64) {
	if i := strings.LastIndexByte(size, '-'); i >= 0 && !strings.Contains(size[i:], "/") {
		return size[:i], stock.Amount(size[i+1:])
	}
	return size, 0
}

func validateLayers(faults *problem.List, in *FitInput) {
	faults.Above("/headFlangeThickness", "flange under the head", float64(in.HeadFlangeThickness))
	faults.Above("/nutFlangeThickness", "flange under the nut", float64(in.NutFlangeThickness))
	notBelow(faults, "/spacerThickness", "spacer", float64(in.SpacerThickness))
	faults.NotNegative("/washerThickness", "washer", float64(in.WasherThickness))
	for _, w := range [2]struct {
		where string
		count int
	}{{"/washersAtHead", in.WashersAtHead}, {"/washersAtNut", in.WashersAtNut}} {
		if w.count < 0 || w.count > 4 {
			faults.Add(w.where, fmt.Sprintf("%d washers", w.count), "0 to 4", "")
		}
	}
	if in.WashersAtHead+in.WashersAtNut > 0 && in.WasherThickness == 0 {
		faults.Add("/washerThickness", "washers are given without their thickness", "above 0", "")
	}
	faults.Above("/nutHeight", "height of the nut", float64(in.NutHeight))
	faults.NotNegative("/headHeight", "height of the head", float64(in.HeadHeight))
	faults.NotNegative("/protrudingThreads", "threads beyond the nut", float64(in.ProtrudingThreads))
	faults.NotNegative("/threadLength", "thread length", float64(in.ThreadLength))
	faults.NotNegative("/boltLength", "length of the bolt", float64(in.BoltLength))
	if in.StockLengths == "" && in.BoltLength == 0 {
		faults.Add("/stockLengths", "there is nothing to choose from", `sizes with commas between them, such as "40 mm, 45 mm"`, "or type the length of the bolt in hand")
	}
	if in.BoltLength > 0 && in.ThreadLength > in.BoltLength {
		faults.Add("/threadLength", fmt.Sprintf("the thread is longer (%.4g mm) than the bolt (%.4g mm)", 1000*in.ThreadLength, 1000*in.BoltLength), "up to the length of the bolt", "the length of a bolt is counted from under its head")
	}
}

// validateList says what is wrong with a list of stock lengths.
func validateList(list stock.List) error {
	return problem.List{{Where: "/stockLengths", What: list.Fault(), Allowed: `rising sizes with commas between them, such as "40 mm, 45 mm" or "1-1/2 in, 1-3/4 in"`}}.Err()
}

func validateRoom(faults *problem.List, in *FitInput) {
	faults.NotNegative("/headRoom", "room on the head's side", float64(in.HeadRoom))
	faults.NotNegative("/nutRoom", "room on the nut's side", float64(in.NutRoom))
	notBelow(faults, "/socketHeight", "height of the socket", float64(in.SocketHeight))
	faults.NotNegative("/socketWidth", "width of the socket", float64(in.SocketWidth))
	faults.NotNegative("/roundRoom", "room beside the bolt", float64(in.RoundRoom))
	if in.HeadRoom > 0 && in.HeadHeight == 0 {
		faults.Add("/headHeight", "the room on the head's side is given without the height of the head", "above 0", "choose the head, or measure it")
	}
	if in.RoundRoom > 0 && in.RoundRoom < in.NominalDiameter/2 {
		faults.Add("/roundRoom", fmt.Sprintf("the nearest thing stands inside the bolt: %.4g mm from its middle, the bolt reaches %.4g mm", 1000*in.RoundRoom, 500*in.NominalDiameter), "at least half the thread diameter", "measure from the middle of the bolt")
	}
}

// notBelow asks for a finite length that is not below nothing by more than a
// gauge may be out.
func notBelow(faults *problem.List, where, name string, v float64) {
	const hair = 0.002
	if !(v >= -hair) || math.IsInf(v, 1) {
		faults.Add(where, "the "+name+" is negative or not a number", "0 for none, or above 0", "")
	}
}
