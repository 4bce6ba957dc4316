// What the coupling shows after a move: MovesTrial.

package mount

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// MovesTrial is what a move leaves where the coupling stands, and the mounts
// are, as they may truly be. The move is that of chosen: nuts are turned once,
// by the readings. Were a move chosen anew for each trial, every gauge would
// bring the coupling true. What is left lies about what the readings leave as
// the truth lies about the readings, so that sizes of trials need no more.
func MovesTrial(in MovesInput, chosen *MovesResult) (MovesResult, error) {
	if bad := in.validate(); len(bad) > 0 {
		return MovesResult{}, bad.Err()
	}
	out := *chosen
	out.foresee(&in, chosen)
	out.feet(in.Mounts)
	return out, nil
}

// foresee writes what the coupling shows after the nuts are turned and the
// feet shifted as chosen.
func (out *MovesResult) foresee(in *MovesInput, chosen *MovesResult) {
	var raised, shifted [Most]float64
	for i := range in.Mounts { // nut by nut
		raised[i] = in.raised(i, &chosen.Moves[i])
		so := settled(in.Mounts, &raised)
		out.Moves[i].GapThen = tidy(in.GapVertical - in.CouplingDiameter*quantity.Length(so.slope))
		out.Moves[i].OffsetThen = tidy(in.OffsetVertical + quantity.Length(so.at))
	}
	for i := range in.Mounts {
		raised[i], shifted[i] = in.raised(i, &chosen.Moves[i]), float64(chosen.Moves[i].Shift)
	}
	up, across := settled(in.Mounts, &raised), settled(in.Mounts, &shifted)
	up, across = line{tidy(up.slope), tidy(up.at)}, line{tidy(across.slope), tidy(across.at)}
	out.SlopeUp, out.RaiseAtCoupling = quantity.Angle(up.slope), quantity.Length(up.at)
	out.SlopeStarboard, out.ShiftAtCoupling = quantity.Angle(across.slope), quantity.Length(across.at)

	d := in.CouplingDiameter
	out.GapVerticalAfter = tidy(in.GapVertical - d*quantity.Length(up.slope))
	out.GapHorizontalAfter = tidy(in.GapHorizontal - d*quantity.Length(across.slope))
	out.OffsetVerticalAfter = tidy(in.OffsetVertical + out.RaiseAtCoupling)
	out.OffsetHorizontalAfter = tidy(in.OffsetHorizontal + out.ShiftAtCoupling)
	out.GapDifferenceAfter = quantity.Length(math.Hypot(float64(out.GapVerticalAfter-in.WantedGapVertical), float64(out.GapHorizontalAfter-in.WantedGapHorizontal)))
	out.GapPerDiameterAfter = quantity.Ratio(out.GapDifferenceAfter / d)
	out.OffsetAfter = quantity.Length(math.Hypot(float64(out.OffsetVerticalAfter-in.WantedOffsetVertical), float64(out.OffsetHorizontalAfter-in.WantedOffsetHorizontal)))
	out.OffsetMade = in.offsetMade(out)

	out.WorstGapAfter = out.GapDifferenceAfter + in.GapRunOut
	out.WorstGapPerDiameterAfter = quantity.Ratio(out.WorstGapAfter / d)
	out.WorstOffsetAfter = out.OffsetAfter + in.OffsetRunOut + in.PilotOffset

	mean := in.MeanGap
	if mean == 0 {
		mean = quantity.Length(math.NaN())
	}
	read := (out.GapVerticalAfter - in.DroopGapTaken) / 2 // the feeler still meets the drooping face
	out.GapTopAfter, out.GapBottomAfter = mean+read, mean-read
	out.GapStarboardAfter, out.GapPortAfter = mean+out.GapHorizontalAfter/2, mean-out.GapHorizontalAfter/2
}

// raised is what a mount's nut raises it by, as far as it was turned.
func (in *MovesInput) raised(i int, to *Move) float64 {
	m := &in.Mounts[i]
	if math.IsNaN(float64(to.Turns)) {
		return float64(to.Raise)
	}
	return float64(to.Turns) / (2 * math.Pi) * float64(m.ThreadPitch) * m.lift(in.SidewaysRatio)
}

// offsetMade is what a move does to an offset that was not read.
func (in *MovesInput) offsetMade(out *MovesResult) quantity.Length {
	up, right := 0.0, 0.0
	readUp, readAcross := !math.IsNaN(float64(in.OffsetVertical)), !math.IsNaN(float64(in.OffsetHorizontal))
	if readUp && readAcross {
		return quantity.Length(math.NaN())
	}
	if !readUp {
		up = float64(out.RaiseAtCoupling)
	}
	if !readAcross {
		right = float64(out.ShiftAtCoupling)
	}
	return quantity.Length(math.Hypot(up, right))
}
