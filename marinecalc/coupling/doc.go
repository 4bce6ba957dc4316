// Package coupling is the bolted flange coupling: whether it carries the
// torque by friction between its faces, what is left when a bolt is loose or
// of the next lower grade, and what its bolts bear when it slips.
//
//   - [Grip] (coupling-grip): slip torque and its margins, shear and bearing
//     stress of the bolts, and the fitted bolts that two class societies ask
//     for
//
// Sources: Shigley for bolts in shear; ABS 4-3-2/5.19 and GL I-1-2 section 4 D
// for fitted bolts. The clamp load comes from package fastener. Shear and
// bending of the flange itself, and flexible couplings, are not calculated.
package coupling
