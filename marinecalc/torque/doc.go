// Package torque follows the engine's power through the gearbox into the
// propeller shaft: torque and speed ahead and astern, what a shock makes of
// them, and the thrust of the propeller.
//
//   - [Shaft] (shaft-torque): torque, speed, power and thrust at the shaft
//   - [PullAstern]: what the propeller pulls going astern
//
// Sources: Shigley eq. 3-42 and Hibbeler for torque, the momentum theory of
// Rankine and Froude for the thrust at standstill. The propeller curve, the
// engine's torque curve and torsional vibration are not calculated.
package torque
