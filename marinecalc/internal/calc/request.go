package calc

import (
	"context"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// Request is what the runs of one request go by. It serves one goroutine.
type Request struct {
	Boat     *boat.Boat
	Book     *rules.Book
	Units    quantity.System
	trials   int    // 0 where no ranges are asked for
	seed     uint64 // of the trials
	day      string // on which the input was typed, or ""
	ctx      context.Context
	earlier  func(id string) *Outcome // of another calculation, or nil
	disagree []boat.Disagreement      // of the boat file, once compared
	compared bool
}

// Outcome is a sheet and what later calculations must know of it.
type Outcome struct {
	Sheet      *sheet.Sheet
	Unverified []Unverified
	newest     string // day of the newest reading in it, or ""
}

// Unverified is a result that rests on unverified figures, by their titles.
type Unverified struct {
	Result  string
	RestsOn []string
}

// untilCancelled stops calling a function of the trials once the context of
// the session has ended. What is left of the trials then costs next to
// nothing, and the run says that it was stopped.
func (q *Request) untilCancelled(run func() error) func() error {
	if q.ctx.Done() == nil {
		return run
	}
	const every = 64 // trials between two looks
	left, stopped := every, error(nil)
	return func() error {
		if left--; left == 0 {
			left, stopped = every, q.ctx.Err()
		}
		if stopped != nil {
			return stopped
		}
		return run()
	}
}

// disagreements are those of the boat file, looked for once.
func (q *Request) disagreements() []boat.Disagreement {
	if !q.compared {
		q.disagree, q.compared = q.Boat.Disagreements(), true
	}
	return q.disagree
}
