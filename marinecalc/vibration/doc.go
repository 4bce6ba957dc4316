// Package vibration finds which part of a boat's drivetrain makes a frequency:
// the orders of engine, gears, shaft, blades and a rolling bearing, and how
// likely each of them is the one that was measured.
//
//   - [Source] (vibration-source): the frequency of each source, and its
//     likelihood
//   - [Bearing]: the orders of a rolling bearing
//
// Sources: standard kinematics of rolling bearings (from memory, checked
// against a published bearing), JCGM 100 for the likelihoods, ISO 10816-1 for
// the zones of severity. It reads no spectra and knows no amplitudes of single
// lines.
package vibration
