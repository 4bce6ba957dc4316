package contract

import "example.org/driveline/marinecalc/problem"

var (
	Closest    = problem.Closest
	DidYouMean = problem.DidYouMean
	Distance   = problem.Distance
)
