package inputs

import (
	"context"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Request is what the runs of one request go by. It serves one goroutine.
type Request struct {
	Boat       *boat.Boat
	Book       *rules.Book
	Units      quantity.System
	Trials     int    // 0 where no ranges are asked for
	Few        int    // trials that do where they leave no verdict in doubt; 0: all are run
	Seed       uint64 // of the trials
	Day        string // on which the input was typed, or ""
	Ctx        context.Context
	OtherSheet func(id string) *Outcome // of another calculation, or nil
	// WhyWithheld says why the sheet that gives an input gives none, or "".
	WhyWithheld func(*contract.Property) string
	// WhyNone says likewise what is to be put right or told there first, or "".
	WhyNone  func(*contract.Property) string
	disagree []agree.Disagreement // of the boat file, once compared
	compared bool
}

// Outcome is a sheet and what later calculations must know of it.
type Outcome struct {
	Sheet      *sheet.Sheet
	Unverified []Unverified
	Newest     string // day of the newest reading in it, or ""
	Oldest     string // day of the oldest among the newest readings that it takes, or ""
	// Bracket is where a result that rests on unverified figures lies over the
	// whole of their brackets, or nil.
	Bracket func(result string) *Bracket
	Lists   map[string]*spread.List // how the trials of a result lie, where no bell stands for them
}

// Unverified is a result that rests on unverified figures, by their titles.
type Unverified struct {
	Result  string
	RestsOn []string
}

// UntilCancelled stops calling a function of the trials once the context of
// the session has ended. What is left of the trials then costs next to
// nothing, and the run says that it was stopped.
func (q *Request) UntilCancelled(run func() error) func() error {
	if q.Ctx.Done() == nil {
		return run
	}
	const every = 64 // trials between two looks
	left, stopped := every, error(nil)
	return func() error {
		if left--; left == 0 {
			left, stopped = every, q.Ctx.Err()
		}
		if stopped != nil {
			return stopped
		}
		return run()
	}
}

// Stopped tells whether the session's context has ended.
func (q *Request) Stopped() bool { return q.Ctx.Err() != nil }

// Disagreements are those of the boat file, looked for once.
func (q *Request) Disagreements() []agree.Disagreement {
	if !q.compared {
		q.disagree, q.compared = agree.Of(q.Boat, q.Book), true
	}
	return q.disagree
}
