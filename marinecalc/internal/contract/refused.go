package contract

import (
	"errors"

	"example.org/driveline/marinecalc/problem"
)

// NotRead adds what is wrong with a text that a property's quantity did not
// take, what is allowed there and how to mend it, as its parser says.
func NotRead(l *problem.List, p *Property, where string, err error) {
	var wrong problem.Problem
	if pp := (*problem.Problem)(nil); errors.As(err, &pp) {
		wrong = *pp
	} else if !errors.As(err, &wrong) {
		wrong.What = err.Error()
	}
	l.Add(where, label(p)+": "+wrong.What, wrong.Allowed, wrong.Hint)
}
