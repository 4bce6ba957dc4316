// Package problem is the one form in which marinecalc says that something
// given to it cannot be used: where it stands, what is wrong with it, what is
// allowed, and how to mend it.
//
// A [Problem] is one such thing, a [List] gathers them while an input is
// checked, and an [Error] is what a function then returns: all of them at
// once. A program tests what it got with the standard library:
//
//	errors.Is(err, problem.ErrMissing)  // is something not given?
//	var e *problem.Error
//	errors.As(err, &e)                  // e.Problems, each at its place
package problem

import (
	"strconv"
	"strings"
)

// Problem is one thing wrong with an input. It is an error by itself, and two
// problems are equal when all their texts are.
type Problem struct {
	Where   string `json:"where"`             // JSON pointer into the input ("/shaftDiameter") or a flag ("--shaft-diameter")
	What    string `json:"what"`              // what is wrong
	Allowed string `json:"allowed,omitempty"` // what would be accepted
	Hint    string `json:"hint,omitempty"`    // how to mend it
	Kind    Kind   `json:"kind,omitempty"`    // what sort of problem it is, for programs; "" is [Wrong]
	Input   string `json:"input,omitempty"`   // name of the input that it is about, where Where does not point to it
	Choose  string `json:"choose,omitempty"`  // name of the input whose choice would give what is missing
	Bare    string `json:"bare,omitempty"`    // the SI unit in which a bare number is read here, which Allowed leaves out
	File    string `json:"file,omitempty"`    // name of the file that it is in, where the caller gave one
	Line    int    `json:"line,omitempty"`    // of that file or text, counted from 1; 0 where none is known
}

// Kind is the sort of a problem, by which a program decides what to do about
// it. The words are the same in JSON.
type Kind string

// The kinds of problems.
const (
	Wrong     Kind = "wrong"     // given, and cannot be used; the zero Kind means the same
	Missing   Kind = "missing"   // not given
	Unknown   Kind = "unknown"   // names a calculation, list or file that there is not
	TooLarge  Kind = "too-large" // beyond the size or the count that is read
	Cancelled Kind = "cancelled" // stopped from outside before it was done
	Failed    Kind = "failed"    // by a mistake of the calculator's own, whatever was given
)

// Is tells whether a problem is of the kind that one of this package's
// errors stands for, as [errors.Is] asks.
func (p Problem) Is(target error) bool {
	switch p.Kind {
	case Missing:
		return target == ErrMissing
	case Unknown:
		return target == ErrUnknown
	case TooLarge:
		return target == ErrTooLarge
	case Cancelled:
		return target == ErrCancelled
	case Failed:
		return target == ErrFailed
	}
	return false
}

// String gives the problem as one line for people.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		if p.File == "" {
			b.WriteString("line ")
		} else {
			b.WriteByte(':')
		}
		b.WriteString(strconv.Itoa(p.Line))
	}
	if b.Len() > 0 {
		b.WriteString(": ")
	}
	if p.Where != "" {
		b.WriteString(p.Where)
		b.WriteString(": ")
	}
	b.WriteString(p.What)
	if p.Allowed != "" {
		b.WriteString("; allowed: ")
		b.WriteString(p.Allowed)
	}
	if p.Bare != "" {
		b.WriteString(", or a bare number in ")
		b.WriteString(p.Bare)
	}
	if p.Hint != "" {
		b.WriteString("; ")
		b.WriteString(p.Hint)
	}
	return b.String()
}

// Error makes a single Problem usable as an error.
func (p Problem) Error() string { return p.String() }
