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

// scatter writes the numbers of a row to their places, one for each column.
func (t *table) scatter(row int, to []*float64) {
	at := row
	for _, p := range to {
		*p = t.cells[at]
		at += t.stride
	}
}

// gather takes the numbers of a row from their places.
func (t *table) gather(row int, from []*float64) {
	at := row
	for _, p := range from {
		t.cells[at] = *p
		at += t.stride
	}
}
