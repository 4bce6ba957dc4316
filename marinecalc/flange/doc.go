// Package flange is what sits on the end of a shaft by nut, spline or key: the
// gearbox's output flange, how true it runs, and the play in the joints of the
// line.
//
//   - [Output] (output-flange): clamp of the stack under the flange's
//     nut, what wear of a clamped face leaves of it, what the stack passes by
//     friction and by spline or key, how it is held for the wrench, and the
//     gap that socket and puller need
//   - [RunOut] (flange-run-out): run-out of face and rim before and after
//     the flange was moved on its spline, split into the part that goes with
//     the flange and the part that stays with the shaft
//   - [Backlash] (backlash): free play read at places of the line, and each
//     joint's share of it
//
// Sources: Shigley and VDI 2230 for the springs of a bolted stack and for the
// torque of a nut, Motosh for its parts; Shigley for friction of a ring under
// even pressure; the spline formula of SAE as Machinery's Handbook has it.
// Bending of the flange itself, bearing preload set by the nut, tapers and
// interference are not calculated.
package flange
