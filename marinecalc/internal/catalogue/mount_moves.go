package catalogue

import (
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/mount"
)

// correctOnce finds the moves of the mounts, and what one such move leaves:
// the move is chosen by the readings as they are, and in the trials the
// coupling stands as it may truly stand. Were a move chosen anew in each trial,
// every gauge would bring the coupling true.
func correctOnce(*calc.Session) calc.PerRun[mount.Misfit, mount.Moves] {
	var chosen *mount.Moves
	return calc.PerRun[mount.Misfit, mount.Moves]{Compute: func(in mount.Misfit) (mount.Moves, error) {
		out, err := mount.Correct(in)
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
