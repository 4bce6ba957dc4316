// Package mount is the engine on its mounts: how to move it to cure a
// misaligned coupling, how the mounts share its weight, how it moves under
// torque and thrust, and at which frequencies it vibrates.
//
// Places are measured from the middle of the coupling face: forward along the
// shaft line, to starboard, and up square to it.
//
//   - [Moves] (mount-moves): raise and shift of every mount, in quarter flats
//     of its nut chosen together, inside the travel of its stud
//   - [Target] (alignment-target): gap and offset to set cold that come true
//     warm, settled, afloat and driving
//   - [MovesTrial]: what those turns leave of a coupling as it may truly stand
//   - [Load] (mount-load): load and deflection of every mount at rest and
//     under way, the six natural modes, and the vibration that passes at firing
//     frequency
//   - [Transmissibility]: force passed over force applied, for one damped
//     spring
//
// Sources: Bloch and Geitner for moves, linear springs and a rigid body for
// the rest. The hull is taken as rigid, the rubber as linear; snubbers that
// touch and shock are not calculated.
package mount
