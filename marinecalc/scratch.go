package marinecalc

import (
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
)

// scratch is the room that a run works in until its sheet is written. The
// sheet keeps nothing of it, so that the next run can have it.
type scratch struct {
	inputs   []known
	leaves   []leaf
	measures []measure
	results  []*measure           // by the property's index
	doubtful []*contract.Property // of the results, one after the other
	limits   []*rules.Limit
	advice   []*rules.Advice
	sources  []string
	formula  []byte
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// lend gives a filling its room.
func (r *scratch) lend(f *filling, inputs int) {
	if cap(r.inputs) < inputs {
		r.inputs = make([]known, inputs)
	}
	f.room, f.inputs, f.leaves = r, r.inputs[:inputs], r.leaves[:0]
}

// takeBack takes the room back, without what was in it.
func (r *scratch) takeBack(f *filling) {
	clear(f.inputs)
	clear(f.leaves)
	clear(r.measures)
	clear(r.results)
	clear(r.doubtful)
	clear(r.limits)
	clear(r.advice)
	clear(r.sources)
	r.leaves, r.measures, r.results = f.leaves[:0], r.measures[:0], r.results[:0]
	r.limits, r.advice, r.sources = r.limits[:0], r.advice[:0], r.sources[:0]
	scratches.Put(r)
}
