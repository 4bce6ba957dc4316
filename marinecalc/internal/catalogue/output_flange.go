package catalogue

import (
	"math"

	"example.org/driveline/marinecalc/flange"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/gearing"
	"example.org/driveline/marinecalc/internal/drawing/joints"
	"example.org/driveline/marinecalc/quantity"
)

// outputFlange asks for what the nut was tightened by, rather than refuse a boat
// on which that is not known yet. Of a clamp that is there, by the estimates, no
// time is told since when it was gone.
func outputFlange(*calc.Session) calc.PerRun[flange.OutputInput, flange.OutputResult] {
	first, there := true, false
	return calc.PerRun[flange.OutputInput, flange.OutputResult]{Compute: func(in flange.OutputInput) (flange.OutputResult, error) {
		if in.NutTorque == 0 && in.NutTurn == 0 {
			return flange.OutputResult{}, calc.Lacking{Input: "nutTorque", What: "neither torque nor turn of the flange nut is known", Hint: "the gearbox maker's torque for this nut"}
		}
		out, err := flange.Output(in)
		if first {
			first, there = false, out.LostAgo == 0
		}
		if there {
			out.LostAgo = quantity.Time(math.NaN())
		}
		return out, err
	}, Draw: joints.OutputFlange}
}

// flangeRunOut asks for a reading, rather than refuse a boat without one. The
// trials keep the tooth of the estimates: it is what a person sets.
func flangeRunOut(*calc.Session) calc.PerRun[flange.RunOutInput, flange.RunOutResult] {
	chosen := quantity.Ratio(-1)
	return calc.PerRun[flange.RunOutInput, flange.RunOutResult]{Compute: func(in flange.RunOutInput) (flange.RunOutResult, error) {
		if math.IsNaN(float64(in.FaceRunOut)) && math.IsNaN(float64(in.RimRunOut)) {
			return flange.RunOutResult{}, calc.Lacking{Input: "faceRunOut", What: "neither face nor rim run-out was read", Hint: "dial on the face near its rim, one turn by hand"}
		}
		if chosen >= 0 {
			return flange.RunOutOn(in, chosen)
		}
		out, err := flange.RunOut(in)
		if err == nil && out.BestTeeth >= 0 {
			chosen = out.BestTeeth
		}
		return out, err
	}, Draw: joints.FlangeRunOut}
}

// backlash does likewise.
func backlash(*calc.Session) calc.PerRun[flange.BacklashInput, flange.BacklashResult] {
	return calc.PerRun[flange.BacklashInput, flange.BacklashResult]{Compute: func(in flange.BacklashInput) (flange.BacklashResult, error) {
		if !in.Read() {
			return flange.BacklashResult{}, calc.Lacking{Input: "atPropeller", What: "no free play was read", Hint: "engine held, in gear, turned lightly by hand from stop to stop"}
		}
		return flange.Backlash(in)
	}, Draw: gearing.Backlash}
}
