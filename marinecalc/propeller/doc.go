// Package propeller is the propeller on the taper of its shaft: how hard it
// has to be pushed up so that it does not slip, and how hard it may be so that
// its hub does not burst.
//
//   - [Taper] (propeller-taper): push-up and nut torque, torque held by friction
//     and by the key, hub stress, thread of the nut, fit by the marks with and
//     without key, pull-off force
//
// Sources: Lamé's equations and the friction of a cone (package hub); SAE J755
// and ISO 4566 for the tapers. Hydraulic fitting, the blades and the water are
// not calculated.
package propeller
