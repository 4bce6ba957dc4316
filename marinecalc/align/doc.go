// Package align is the flange coupling between gearbox and propeller shaft:
// how far the two shaft lines are misaligned, from what a feeler gauge and a
// straightedge or dial indicator read round the flanges.
//
//   - [Coupling] (coupling-alignment): angular and parallel misalignment, told
//     apart from the run-out of the flanges where the shaft was turned
//   - [Dial] (dial-alignment): the same by dials that one flange carries round
//     the other, rim and face, with bar sag, closure and pilot
//   - [Change] (alignment-change): two states of one coupling, and whether the
//     gauge tells that it moved
//   - [Trial]: the coupling as it may truly stand about that, the readings
//     being off by what their gauge does not see
//   - [GapAt]: the face gap to expect at any clock position
//
// The misalignment is the least-squares plane through the readings (own
// derivation, checked against the worked examples of Bloch and Geitner). The
// package has no tolerances: those are rule data. It knows nothing of the
// mounts that cure a misalignment; see package mount.
package align
