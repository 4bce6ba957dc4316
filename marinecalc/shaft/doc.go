// Package shaft is the propeller shaft itself: whether it is thick enough, how
// far its free end droops, at which speed it whirls, whether its key holds,
// and whether it can be withdrawn.
//
//   - [Strength] (shaft-strength): shear stress, safety factors, fatigue in
//     bending that turns, and the diameter that class and yacht rules ask for
//   - [KeyStrength] (key-strength): shear and crushing of a parallel key
//   - [Droop] (shaft-droop): deflection and slope of the free end at the
//     coupling
//   - [Whirl] (shaft-whirl): the lowest critical speed in bending, and where the
//     blades excite it
//   - [Withdrawal] (shaft-withdrawal): room to withdraw the shaft, and what must give
//     way
//
// Sources: Shigley for beams, keys and critical speeds, IACS UR M68, ABS and
// Gerr for diameters, ABYC P-6 for the strength in torsion. Torsional
// vibration, the bending by the wake and corrosion are not calculated.
package shaft
