// Package fastener is a bolted joint: how hard to tighten a bolt, what clamp
// load that gives, what the clamp load does to bolt, nut and flange, and which
// stock length of bolt goes through the stack.
//
//   - [Preload] (bolt-preload): target torque by nut factor or by thread
//     friction, clamp load with its scatter, the stresses it makes, and how an
//     external load divides; the clamp by stretch and turn, what settling
//     takes of it, and whether a bolt has grown
//   - [Fit] (bolt-fit): bolt length, threads beyond the nut, room to put it
//     in, and the reuse of a lock nut
//   - [Engagement] (thread-engagement): bolts and studs in tapped holes and
//     inserts, which thread strips and how much engagement is wanted
//   - [TighteningOrder]: the order in which the bolts of a circle are tightened
//
// Sources: Shigley ch. 8, FED-STD-H28/2B and ISO 965-1 for stripping, VDI 2230 part 1, ISO 898-1 and ASME B1.1 for threads
// and stress areas, ASME PCC-1 for order and passes. Fatigue, thermal
// expansion and gaskets are not calculated.
package fastener
