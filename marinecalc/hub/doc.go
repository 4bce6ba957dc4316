// Package hub is the mechanics of a hub pressed on a shaft, which coupling
// flange and propeller share: the pressure of an interference fit, the stress
// it leaves in the hub, and the friction of a cone.
//
//   - [Fit]: thick cylinders one in the other (Lamé), with hub and shaft of
//     different metals
//   - [Cone]: a taper by its angle and friction: what a push along the shaft
//     presses, and what twist and pull make it slip
//   - [Margin]: the torque held astern over the one asked
//
// Sources: Lamé's equations as Shigley has them for press and shrink fits, and
// DIN 7190 for the smoothing of the surfaces. The ends of the hub, where the
// pressure is higher, the keyway in it and the spin of the shaft are not
// calculated.
package hub
