// Numbers by trial and column.

package spread

// table holds a number for each trial, a row, and each factor or result, a
// column. The columns lie one behind the other.
type table struct {
	cells  []float64 // by column, then row
	stride int       // from one column to the next
}

// ready gives the table its size. What is in it is left over from before.
func (t *table) ready(rows, columns int) {
	t.stride = rows + 8 - rows%4 // with a power of two, all columns would fight for the same places in the cache
	t.cells = resize(t.cells, columns*t.stride)
}

// column gives the rows of a column.
func (t *table) column(i, rows int) []float64 { return t.cells[i*t.stride:][:rows] }

// scatter writes the numbers of a row to their places, one for each column. It
// takes four a round, as gather, sums.add, summarise and tails take a few:
// together that takes 10 to 15 % off a run with 4096 trials in wazero (coupling
// grip 5.1 to 4.6 ms, bolt preload 7.5 to 6.4 ms, the least of 12 runs), where
// a jump back is slow, and natively from nothing to 14 %.
func (t *table) scatter(row int, to []*float64) {
	cells, stride, at := t.cells, t.stride, row
	for len(to) >= 4 {
		*to[0] = cells[at]
		*to[1] = cells[at+stride]
		*to[2] = cells[at+2*stride]
		*to[3] = cells[at+3*stride]
		to, at = to[4:], at+4*stride
	}
	for _, p := range to {
		*p = cells[at]
		at += stride
	}
}

// gather takes the numbers of a row from their places.
func (t *table) gather(row int, from []*float64) {
	cells, stride, at := t.cells, t.stride, row
	for len(from) >= 4 {
		cells[at] = *from[0]
		cells[at+stride] = *from[1]
		cells[at+2*stride] = *from[2]
		cells[at+3*stride] = *from[3]
		from, at = from[4:], at+4*stride
	}
	for _, p := range from {
		cells[at] = *p
		at += stride
	}
}
