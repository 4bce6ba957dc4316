// Package coupling is the bolted flange coupling: whether it carries the
// torque by friction between its faces, what is left when a bolt is loose or
// of the next lower grade, what its bolts bear when it slips, and whether its
// flange stays on the shaft.
//
//   - [Grip] (coupling-grip): slip torque and its margins, shear and bearing
//     stress of the bolts, and the fitted bolts that two class societies ask
//     for
//   - [Bore] (coupling-bore): the shaft in the bore of its flange by pinch
//     bolts, key and set screws, interference or taper: torque held, pull-off
//     force, stress in the boss, temperature to shrink it on
//
// Sources: Shigley for bolts in shear; ABS 4-3-2/5.19 and GL I-1-2 section 4 D
// for fitted bolts; Lamé and DIN 7190 for pressed flanges. The clamp load comes
// from package fastener, the key from package shaft, the pressure from package
// hub. Shear and
// bending of the flange itself, and flexible couplings, are not calculated.
package coupling
