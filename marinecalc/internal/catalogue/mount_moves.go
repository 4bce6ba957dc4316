package catalogue

import (
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/mount"
)

// mountMoves finds the moves of the mounts, and what one such move leaves:
// the move is chosen by the readings as they are, and in the trials the
// coupling stands as it may truly stand. Were a move chosen anew in each trial,
// every gauge would bring the coupling true.
func mountMoves(*calc.Session) calc.PerRun[mount.MovesInput, mount.MovesResult] {
	var chosen *mount.MovesResult
	return calc.PerRun[mount.MovesInput, mount.MovesResult]{Compute: func(in mount.MovesInput) (mount.MovesResult, error) {
		out, err := mount.Moves(in)
		if err != nil {
			return out, err
		}
		if chosen != nil {
			out.Foresee(&in, chosen)
		} else {
			first := out
			chosen = &first
		}
		return out, nil
	}, Draw: drawing.MountMoves}
}
