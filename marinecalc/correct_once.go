package marinecalc

import "example.org/driveline/marinecalc/mount"

// correctOnce finds the moves of the mounts, and what one such move leaves:
// the move is chosen by the readings as they are, and in the trials the
// coupling stands as it may truly stand. Were a move chosen anew in each trial,
// every gauge would bring the coupling true.
func correctOnce(s *session, in mount.Misfit) (mount.Moves, error) {
	out, err := mount.Correct(in)
	if err != nil {
		return out, err
	}
	if chosen, is := s.kept.(*mount.Moves); is {
		out.Foresee(&in, chosen)
	} else {
		first := out
		s.kept = &first
	}
	return out, nil
}
