// Package line is the shaft line as a chain: the joints between gearbox and
// propeller hand one torque along, and the one that holds least decides.
//
//   - [Joints] (line-joints): which joint of the line is the weakest ahead,
//     astern and in a shock, and how surely
//
// What each joint holds is worked out by its own calculation. The shaft itself
// between them, fatigue and play are not calculated here.
package line
