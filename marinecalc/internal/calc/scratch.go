package calc

import (
	"sync"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/rules"
)

// scratch is the memory that a run works in until its sheet is written. The
// sheet keeps nothing of it, so that the next run can have it.
type scratch struct {
	inputs     []known
	variates   []variate
	measures   []measure
	results    []*measure           // by the property's index
	unverified []*contract.Property // of the results, one after the other
	limits     []rules.Limit
	advice     []rules.Advice
	chosen     []*rules.Advice // of the advice
	sources    []string
	formula    []byte
	factors    []spread.Factor // of the trials at one end of a bracket
	places     []*float64
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// lend gives the inputs of a run their memory.
func (b *scratch) lend(in *inputs, inputs int) {
	if cap(b.inputs) < inputs {
		b.inputs = make([]known, inputs)
	}
	in.buf, in.values, in.variates = b, b.inputs[:inputs], b.variates[:0]
}

// takeBack takes the memory back, without what was in it.
func (b *scratch) takeBack(in *inputs) {
	clear(in.values)
	clear(in.variates)
	clear(b.measures)
	clear(b.results)
	clear(b.unverified)
	clear(b.limits)
	clear(b.advice)
	clear(b.chosen)
	clear(b.sources)
	clear(b.places)
	b.variates, b.measures, b.results = in.variates[:0], b.measures[:0], b.results[:0]
	b.limits, b.sources = b.limits[:0], b.sources[:0]
	b.advice, b.chosen = b.advice[:0], b.chosen[:0]
	scratches.Put(b)
}
