package catalogue

import (
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/drawing/mounts"
	"example.org/driveline/marinecalc/mount"
)

// mountMoves finds how far to turn the nuts by the readings as they are, and
// in the trials what those turns leave.
func mountMoves(*calc.Session) calc.PerRun[mount.MovesInput, mount.MovesResult] {
	var chosen *mount.MovesResult
	return calc.PerRun[mount.MovesInput, mount.MovesResult]{Compute: func(in mount.MovesInput) (mount.MovesResult, error) {
		if chosen != nil {
			return mount.MovesTrial(in, chosen)
		}
		out, err := mount.Moves(in)
		if err == nil {
			chosen = &out
		}
		return out, err
	}, Draw: mounts.MountMoves}
}
