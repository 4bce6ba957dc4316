// What all of the package speaks of: types of the inner packages, errors, caps.

package marinecalc

import (
	"context"
	"errors"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

type (
	// Sheet is the document that every calculation returns.
	Sheet = sheet.Sheet
	// Table is a result that is a list.
	Table = sheet.Table
	// Problem is one thing wrong with an input.
	Problem = problem.Problem
	// Problems is a list of them.
	Problems = problem.List
	// Error, used by pointer, is the error of every function here that takes
	// input: all its problems at once.
	Error = problem.Error
)

type (
	// Options say how a calculation is run. The zero value runs it without a
	// boat, in metric units, with 1024 trials, by the engine's rules.
	//
	//  - Boat: the boat file that gives what is not typed; nil for none
	//  - Units: "metric", "us" or "both"; "" is the boat's choice, or metric
	//  - Trials: behind the ranges; 0 is DefaultTrials
	//  - NoRanges: no trials are run, and verdicts go by the estimates
	//  - Seed: of the trials; 0 is 1
	//  - Rules: nil is the engine's
	//  - Day: on which the input was typed, year-month-day; "" where that is not known
	//  - Brief: the sheet without worked lines and drawings
	Options = calc.Options
	// Boat is a boat file: the drivetrain written down once, with its maker's
	// figures and dated readings. A Boat is never changed after it is read,
	// and its JSON is the file as the owner wrote it.
	Boat = boat.Boat
	// Survey is everything a boat file allows to be calculated, in one pass.
	// Its members are Awaited, Boat, Cautions, Chains, Choice, Disagree, Faults,
	// Findings, Found, Made, Measure, Missing, Nothing, Open, Parts, Sheets, Still, Summary
	// and Warnings: what each is stands with survey.Survey of the inner packages.
	Survey = survey.Survey
	// Found is something that is wrong with the boat.
	// Its members are Calculation, Kind, Limit, Row, Sheet, Text and Title: what each is
	// stands with survey.Found of the inner packages.
	Found = survey.Found
	// Comparison is two dated states of one boat side by side.
	// Its members are After, Before, Boat, Came, Dates, Gone, Moved, Still, Turned and
	// Warnings: what each is stands with survey.Comparison of the inner packages.
	Comparison = survey.Comparison
)

// What errors.Is can tell of an [*Error]: one of its problems is of that kind.
var (
	ErrUnknown   = problem.ErrUnknown   // no such calculation, table or ask
	ErrMissing   = problem.ErrMissing   // an input that no origin gave
	ErrTooLarge  = problem.ErrTooLarge  // a text, list or number of trials above what is taken
	ErrCancelled = problem.ErrCancelled // the context ended
	ErrFailed    = problem.ErrFailed    // a mistake of the calculator's own, that would have been a panic
)

// ProblemsOf gives the problems that an error is made of, and none for nil.
func ProblemsOf(err error) Problems { return problem.Of(err) }

// Version is marinecalc's own version and that of its standard rules.
const Version = calc.Version

// MaxBytes caps any one text that is read: a request, a boat file, a table of
// readings, a rule file.
const MaxBytes = contract.MaxBytes

// DefaultTrials is how many Monte Carlo trials a calculation runs when
// nothing else is asked for.
const DefaultTrials = calc.DefaultTrials

func noObject() error {
	return problem.List{{What: "the input is not an object", Allowed: `an object such as {"name": "value"}`, Hint: "put the inputs between braces"}}.Err()
}

func noBoat() error {
	return problem.List{{Where: "/boat", What: "this needs a boat", Allowed: "a boat file", Hint: "read one with ReadBoat, or send it with the request", Kind: problem.Missing}}.Err()
}

func noSheet() error {
	return problem.List{{What: "this needs a sheet", Hint: "run a calculation first", Kind: problem.Missing}}.Err()
}

// stopped is the error of work that the context may have ended, whether the work
// tells of it or not: what it left out then would read as not known. It puts the
// context's own error beside one that says so, so that errors.Is finds both.
func stopped(ctx context.Context, err error) error {
	if ctx == nil {
		return err
	}
	if cause := ctx.Err(); err == nil && cause != nil {
		return &stop{problem.List{{What: "the work was stopped: " + cause.Error(), Kind: problem.Cancelled}}.Err(), cause}
	}
	if errors.Is(err, problem.ErrCancelled) {
		return &stop{err, ctx.Err()}
	}
	return err
}

// made is what work came to, or nothing and the error of stopped: what was made by
// the time that the context ended is not the whole.
func made[T any](ctx context.Context, of T, err error) (T, error) {
	if err := stopped(ctx, err); err != nil {
		var nothing T
		return nothing, err
	}
	return of, nil
}

// stop is the error of work that was stopped, whose text says the cause too.
type stop struct {
	error
	cause error
}

// Unwrap gives both.
func (s *stop) Unwrap() []error { return []error{s.error, s.cause} }
