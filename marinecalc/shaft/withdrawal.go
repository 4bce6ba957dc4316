// Room to withdraw the shaft: Withdrawal.

package shaft

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Task says what the shaft is moved for.
type Task string

// The tasks.
const (
	CouplingOff  Task = "coupling-off"  // take the shaft coupling flange off the shaft, the shaft stays in the boat
	SealRenewal  Task = "seal-renewal"  // take the coupling off and slide a whole seal over the shaft's forward end
	ShaftOut     Task = "shaft-out"     // draw the whole shaft out of the boat
	PropellerOff Task = "propeller-off" // draw the propeller, the shaft stays where it is

	OutputFlangeOff Task = "output-flange-off" // open a gap to the gearbox's output flange, for socket and puller
)

// WithdrawalInput is a shaft to be moved and the room there is. Lengths are measured
// along the shaft line; a field marked optional is not given when it is zero.
type WithdrawalInput struct {
	Task             Task
	RoomAft          quantity.Length // from the aftmost thing that stays on the shaft to rudder or skeg, rudder amidships
	RoomRudderOver   quantity.Length // the same with the rudder hard over; optional
	RoomForward      quantity.Length // by which engine or gearbox can be moved forward; optional
	WorkingClearance quantity.Length // for hands and tools

	SocketDepth        quantity.Length // by which the shaft sits in the coupling; needed for CouplingOff and SealRenewal
	PilotDepth         quantity.Length // of the spigot between the flanges; optional
	CouplingLength     quantity.Length // of the half on the shaft, face to end; optional
	SealLength         quantity.Length // of what must pass the shaft's forward end; needed for SealRenewal
	ShaftInboard       quantity.Length // from the shaft's forward end to the aft end of the aftmost bearing; needed for ShaftOut
	PropellerHubLength quantity.Length // needed for PropellerOff
	FlangeGap          quantity.Length // between the flanges; needed for OutputFlangeOff
}

// WithdrawalResult is what Withdrawal finds. NaN marks a figure that the task does not
// need.
type WithdrawalResult struct {
	RoomSpare     quantity.Length // what is left over, minus: short by
	RoomNeeded    quantity.Length // travel and working clearance
	RoomHere      quantity.Length // the greater of both positions of the rudder
	Way           string          // how it goes
	ForwardNeeded quantity.Length // by which the engine must come forward when the room aft is short; 0 for none; NaN where that does not help
	ForwardSpare  quantity.Length // of RoomForward; NaN without it
	Travel        quantity.Length // of the shaft, or of the hub
	FaceToShaft   quantity.Length // from the coupling's face to the shaft's end inside it; NaN without the coupling's length
}

// The codes of Way, for which the schema of shaft-withdrawal has the words.
const (
	AftAmidships = "aft"
	AftHardOver  = "aft-hard-over"
	WithForward  = "with-forward"
	RudderMust   = "rudder-must"
	EngineOrElse = "engine-or-rudder"
)

// readOff is how far its accuracy may take a length below what it can be, in
// m, before it is refused.
const readOff = 0.005

// Withdrawal finds whether a shaft can go aft far enough for a task.
//
// For CouplingOff the shaft leaves the socket, and the coupling its pilot.
// For SealRenewal there must also be a gap as long as the seal between the
// gearbox flange and the shaft's end, to slide it on. For ShaftOut the
// forward end must pass the aftmost bearing. For PropellerOff the hub needs
// its own length behind the shaft's end. For OutputFlangeOff the shaft goes aft by
// the gap that socket, puller and hub need (package flange). Plain geometry along the shaft line;
// a rudder beside the line, or a shaft that may be swung past it, is not
// used.
//
// The error is a *problem.Error of everything that cannot be. Withdrawal
// allocates nothing when it succeeds.
func Withdrawal(in WithdrawalInput) (WithdrawalResult, error) {
	if err := in.validate(); err != nil {
		return WithdrawalResult{}, err
	}
	nan := quantity.Length(math.NaN())
	out := WithdrawalResult{FaceToShaft: nan, ForwardNeeded: nan, ForwardSpare: nan}
	before := quantity.Length(0) // gap ahead of the shaft's end before it is moved
	if in.CouplingLength > 0 {
		before = max(0, in.CouplingLength-in.SocketDepth)
		out.FaceToShaft = before
	}
	switch in.Task {
	case CouplingOff:
		out.Travel = in.SocketDepth + in.PilotDepth
	case SealRenewal:
		out.Travel = max(in.SocketDepth+in.PilotDepth, in.SealLength-before)
	case ShaftOut:
		out.Travel = in.ShaftInboard
	case PropellerOff:
		out.Travel = in.PropellerHubLength
	case OutputFlangeOff:
		out.Travel = max(in.PilotDepth, in.FlangeGap)
	}
	out.RoomNeeded = out.Travel + in.WorkingClearance
	out.RoomHere = max(in.RoomAft, in.RoomRudderOver)
	out.RoomSpare = out.RoomHere - out.RoomNeeded
	if in.Task == CouplingOff || in.Task == SealRenewal || in.Task == OutputFlangeOff {
		out.ForwardNeeded = max(0, -out.RoomSpare)
		if in.RoomForward > 0 {
			out.ForwardSpare = in.RoomForward - out.ForwardNeeded
		}
	}
	out.Way = in.way(&out)
	return out, nil
}

func (in *WithdrawalInput) way(out *WithdrawalResult) string {
	switch {
	case in.RoomAft >= out.RoomNeeded:
		return AftAmidships
	case out.RoomSpare >= 0:
		return AftHardOver
	case out.ForwardSpare >= 0: // never for NaN
		return WithForward
	case in.RoomForward == 0 && !math.IsNaN(float64(out.ForwardNeeded)):
		return EngineOrElse
	}
	return RudderMust
}

// validate lists everything that cannot be.
func (in *WithdrawalInput) validate() error {
	var faults problem.List
	faults.NotNegative("/roomAft", "room aft", float64(in.RoomAft)+readOff)
	faults.NotNegative("/roomRudderOver", "room with the rudder hard over", float64(in.RoomRudderOver)+readOff)
	faults.NotNegative("/roomForward", "room forward", float64(in.RoomForward)+readOff)
	faults.NotNegative("/workingClearance", "working clearance", float64(in.WorkingClearance))
	faults.NotNegative("/pilotDepth", "depth of the pilot", float64(in.PilotDepth))
	faults.NotNegative("/couplingLength", "length of the coupling", float64(in.CouplingLength))
	switch in.Task {
	case CouplingOff, SealRenewal:
		faults.Above("/socketDepth", "depth of the coupling's socket", float64(in.SocketDepth))
		if in.Task == SealRenewal {
			faults.Above("/sealLength", "length of the seal", float64(in.SealLength))
		}
		if l, s := float64(in.CouplingLength), float64(in.SocketDepth); l > 0 && s > l+readOff {
			faults.Add("/socketDepth", fmt.Sprintf("a shaft %s deep in a coupling %s long would stand out of its face", problem.Millimetres(s), problem.Millimetres(l)), "up to "+problem.Millimetres(l), "")
		}
	case ShaftOut:
		faults.Above("/shaftInboard", "length of shaft inside the boat", float64(in.ShaftInboard))
	case PropellerOff:
		faults.Above("/propellerHubLength", "length of the propeller's hub", float64(in.PropellerHubLength))
	case OutputFlangeOff:
		faults.Above("/flangeGap", "gap for the output flange's tools", float64(in.FlangeGap))
	default:
		faults.Add("/task", "that is not one of the tasks", "coupling-off, seal-renewal, shaft-out, propeller-off, output-flange-off", "")
	}
	return faults.Err()
}
