// Errors made of problems.

package problem

import (
	"errors"
	"fmt"
)

// The errors that a program can test for with [errors.Is]. An [Error] is one
// of them when at least one of its problems is of that kind.
var (
	ErrMissing   = errors.New("something that is needed is not given")
	ErrUnknown   = errors.New("what was asked for is not known")
	ErrTooLarge  = errors.New("what was given is too large")
	ErrCancelled = errors.New("the work was cancelled")
	ErrFailed    = errors.New("the calculator failed inside")
)

// Error is everything wrong with an input. It is used by pointer, so that
// errors can be compared.
type Error struct {
	Problems List // at least one
}

// Panicked is the error of work that a panic ended, which what was thrown tells of.
// in names the work.
func Panicked(in string, thrown any) List {
	return List{{What: fmt.Sprintf("the calculator failed inside, in %s: %v", in, thrown), Kind: Failed,
		Hint: "this is a mistake of the calculator: report it with what was asked, and go by nothing that it said of this"}}
}

// Error gives one problem a line.
func (e *Error) Error() string { return Of(e).String() }

// Unwrap gives each problem as an error of its own.
func (e *Error) Unwrap() []error {
	if e == nil {
		return nil
	}
	all := make([]error, len(e.Problems))
	for i, p := range e.Problems {
		all[i] = p
	}
	return all
}

// Of gives the problems that an error is made of: those of an [Error], a
// [Problem] alone, and for any other error one problem with its text. No error
// is no problem.
func Of(err error) List {
	if err == nil {
		return nil
	}
	var several *Error
	if errors.As(err, &several) {
		if several == nil { // in an error that is not
			return nil
		}
		return several.Problems
	}
	var one Problem
	if errors.As(err, &one) {
		return List{one}
	}
	return List{{What: err.Error()}}
}
