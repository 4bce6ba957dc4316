// Package spread carries what is not known exactly through a calculation: from
// the accuracy of each input to a range for each result (Monte Carlo
// propagation of distributions, JCGM 101:2008), from a range and a limit to a
// judgement (JCGM 106:2012), and from a doubtful judgement to the reading that
// would settle it.
//
// Inputs are taken as independent of each other. The same factors, plan and
// model give the same numbers on every platform to a relative 1e-9; on one
// platform bit for bit. There are no goroutines and there is no clock.
package spread
