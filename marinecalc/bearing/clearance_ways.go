// Clearance by a lifted shaft, by wire and by the drop from a fixed mark.

package bearing

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// first is the first clearance that is known.
func first(ways ...quantity.Length) quantity.Length {
	for _, c := range ways {
		if !math.IsNaN(float64(c)) {
			return c
		}
	}
	return quantity.Length(math.NaN())
}

// otherWays finds the clearance by lift, by wire and by the mark. Each is NaN
// where what it needs was not read.
func (in *ClearanceInput) otherWays(out *ClearanceResult) {
	nan := quantity.Length(math.NaN())
	out.ElasticTravel, out.ElasticFound = quantity.Length(in.ElasticShare)*in.LiftTravel, quantity.Ratio(math.NaN())
	if in.twoPulls() {
		out.ElasticTravel = in.elastic()
		out.ElasticFound = quantity.Ratio(out.ElasticTravel / quantity.Length(quantity.OrNaN(float64(in.LiftTravel))))
	}
	out.DialLever = in.lever()
	out.ClearanceFromLift = (in.LiftTravel - out.ElasticTravel) / quantity.Length(out.DialLever)
	out.ClearanceFromWire = nan
	if in.WireOut > 0 {
		out.ClearanceFromWire = in.WireIn + quantity.Length(in.WireShare)*(in.WireOut-in.WireIn)
	}
	out.DropSinceMark = nan
	if in.MarkDistance > 0 && in.MarkFirst > 0 {
		out.DropSinceMark = in.MarkDistance - in.MarkFirst
	}
	out.ClearanceFromMark = first(in.MarkClearance, in.NewClearance) + out.DropSinceMark
}

// twoPulls tells whether the shaft was lifted by two pulls.
func (in *ClearanceInput) twoPulls() bool {
	return in.LiftPull > 0 && in.SecondPull > 0 && !math.IsNaN(float64(in.SecondTravel))
}

// elastic is what of the travel bends and squeezes, which two pulls tell: the
// shaft against the top of its bearing is a beam on fixed supports, where each
// further newton lifts the dial by the same amount. The rubber below, which the
// weight squeezes while it lies, is let go by as much as the rubber above is
// squeezed by the pull less the weight, so that the line goes to the clearance
// at no pull at all (own derivation; a test bends the shaft by finite elements).
func (in *ClearanceInput) elastic() quantity.Length {
	return quantity.Length(float64(in.LiftPull) * float64(in.LiftTravel-in.SecondTravel) / float64(in.LiftPull-in.SecondPull))
}

// lever is the travel at the dial for one in the bearing. The shaft turns about
// what holds it ahead: as a straight line where it hinges there, and with half as
// much slope again where it is built in (Gere, Mechanics of Materials, appendix of
// beam deflections: a cantilever's end slope is 3/2 of its deflection over its length).
func (in *ClearanceInput) lever() quantity.Ratio {
	if in.DialAft == 0 {
		return 1
	}
	return quantity.Ratio(1 + float64(in.TiltFactor)*float64(in.DialAft)/quantity.OrNaN(float64(in.SpanAhead)))
}

// askWay asks for what is missing where the clearance is known by no way.
func (in *ClearanceInput) askWay(faults *problem.List) {
	var out ClearanceResult
	in.otherWays(&out)
	fromBore := quantity.Length(quantity.OrNaN(float64(in.ShellBore)))
	const allowed = "0 up to half the shaft diameter"
	switch {
	case !math.IsNaN(float64(first(fromBore, in.BearingClearance, out.ClearanceFromLift, out.ClearanceFromWire, out.ClearanceFromMark))):
	case in.WireOut > 0:
		faults.Add("/wireIn", "the largest wire that goes in is missing", allowed, "type 0 where not even the thinnest goes in")
	case !math.IsNaN(float64(in.SecondTravel)):
		faults.Add("/liftTravel", "a second travel is given without the first", "0 up to the shaft diameter", "")
	case in.MarkDistance > 0 && in.MarkFirst > 0:
		faults.Add("/markClearance", "the clearance when the mark was first read is missing", allowed, "the mark tells by how much the shaft has dropped since; the clearance when new does too, where the mark was first read then")
	case in.MarkFirst > 0:
		faults.Add("/markDistance", "the mark was read once and not again", "above 0", "from the same mark to the same place on the shaft, today")
	case in.MarkDistance > 0:
		faults.Add("/markFirst", "the distance from the mark is given without its first reading", "above 0", "without it the mark tells nothing yet: note today's reading, and lift the shaft against a dial")
	default:
		faults.Add("/bearingClearance", "the clearance is missing, and so is the bore", allowed, "lift the shaft against a dial, try wire or a feeler, or measure the bore of the bearing shell")
	}
}

const pulls = "two pulls, one at least a tenth above the other"

// checkLift lists what no lifted shaft shows.
func (in *ClearanceInput) checkLift(faults *problem.List, half float64) {
	for _, p := range [...]struct {
		where, name string
		v           float64
	}{{"/liftPull", "pull", float64(in.LiftPull)}, {"/secondPull", "second pull", float64(in.SecondPull)}, {"/spanAhead", "span ahead of the bearing", float64(in.SpanAhead)}} {
		faults.NotNegative(p.where, p.name, p.v)
	}
	if e := float64(in.ElasticShare); !math.IsNaN(e) {
		between(faults, "/elasticShare", "share that bends and squeezes", e, -1, 0.95, "-100 % to 95 %", "below 0: what the shaft was short of the top, over its travel")
	}
	if math.IsNaN(float64(in.LiftTravel)) {
		return
	}
	between(faults, "/dialAft", "place of the dial", float64(in.DialAft), -2, 2, "-2 m to 2 m", "from the end of the bearing, plus aft")
	if in.DialAft != 0 {
		between(faults, "/tiltFactor", "tilt factor", float64(in.TiltFactor), 1, 1.5, "1 to 1.5", "")
		if in.SpanAhead > 0 && !(in.lever() >= 0.5) {
			faults.Add("/dialAft", "the dial stands nearer to what holds the shaft ahead than to the bearing", "beside the bearing", "move it aft")
		}
	}
	if !between(faults, "/liftTravel", "travel of the lifted shaft", float64(in.LiftTravel), -hair, 2*half, "0 up to the shaft diameter", "lying and lifted, the difference on the dial") {
		return
	}
	if math.IsNaN(float64(in.SecondTravel)) || !between(faults, "/secondTravel", "travel at the second pull", float64(in.SecondTravel), -hair, 2*half, "0 up to the shaft diameter", "") {
		return
	}
	heavier, lighter := max(in.LiftPull, in.SecondPull), min(in.LiftPull, in.SecondPull)
	more := in.LiftTravel - in.SecondTravel
	if in.SecondPull > in.LiftPull {
		more = -more
	}
	switch {
	case in.LiftPull == 0:
		faults.Add("/liftPull", "two travels are given without their pulls", pulls, "a hanging scale on the lever; only how the two compare counts")
	case in.SecondPull == 0:
		faults.Add("/secondPull", "two travels are given without their pulls", pulls, "a hanging scale on the lever; only how the two compare counts")
	case !(heavier >= 1.1*lighter):
		faults.Add("/secondPull", "the two pulls are nearly alike and tell nothing of what bends", pulls, "take half as much, or twice")
	case more < -hair:
		faults.Add("/secondTravel", "the heavier pull lifts the shaft less than the lighter one", "more travel for more pull", "are the two swapped, or did the dial's foot move?")
	case in.LiftTravel-in.elastic() < -hair:
		faults.Add("/secondTravel", "the lighter pull did not bring the shaft up to the top", "travels that differ by less than the pulls do", "pull harder both times: until it stops hard")
	}
}

// checkWire lists what no two wires show.
func (in *ClearanceInput) checkWire(faults *problem.List, half float64) {
	if !faults.NotNegative("/wireOut", "wire that does not go in", float64(in.WireOut)) {
		return
	}
	between(faults, "/wireShare", "place between the two wires", float64(in.WireShare), 0, 1, "0 to 1", "")
	if math.IsNaN(float64(in.WireIn)) {
		return
	}
	switch ok := between(faults, "/wireIn", "wire that goes in", float64(in.WireIn), -hair, half, "0 up to half the shaft diameter", ""); {
	case !ok:
	case in.WireOut == 0:
		faults.Add("/wireOut", "the smallest wire that does not go in is missing", "above the one that goes in", "the clearance lies between the two: try thicker ones until one stays out")
	case in.WireOut < in.WireIn-hair:
		faults.Add("/wireOut", "a thinner wire stays out than the one that goes in", "above the one that goes in", "are the two swapped? Try both past the worn lip")
	case float64(in.WireOut) > half+hair:
		between(faults, "/wireOut", "wire that does not go in", float64(in.WireOut), 0, half, "up to half the shaft diameter", "")
	}
}

// checkMark lists what no shaft drops by.
func (in *ClearanceInput) checkMark(faults *problem.List, half float64) {
	today, then := faults.NotNegative("/markDistance", "distance from the mark", float64(in.MarkDistance)), faults.NotNegative("/markFirst", "first distance from the mark", float64(in.MarkFirst))
	if c := float64(in.MarkClearance); !math.IsNaN(c) {
		between(faults, "/markClearance", "clearance when the mark was first read", c, -hair, half, "0 up to half the shaft diameter", "")
	}
	if today && then && in.MarkDistance > 0 && in.MarkFirst > 0 {
		between(faults, "/markDistance", "drop of the shaft from its mark", float64(in.MarkDistance-in.MarkFirst), -half/2, half, "within half the shaft diameter of the first reading", "read it from the same mark to the same place, the shaft lying")
	}
}
