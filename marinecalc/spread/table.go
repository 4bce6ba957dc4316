package spread

import "math"

// blockRows is how many trials lie row by row at a time: few enough to stay in
// the processor's nearest cache.
const blockRows = 64

// table holds a number for each trial, a row, and each factor or result, a
// column. A model meets the numbers row by row, everything else column by
// column; so the columns are kept, and a block of rows is open for the model.
type table struct {
	columns int
	cells   []float64 // by column, then row
	stride  int       // from one column to the next
	block   []float64 // by row, then column
	width   int       // from one row of the block to the next
	blank   []float64 // a block with NaN in every column, 0 beside them
}

// ready gives the table its size. What is in it is left over from before.
func (t *table) ready(rows, columns int) {
	t.stride = upToFour(rows) + 8 // with a power of two, all columns would fight for the same places in the cache
	t.cells = resize(t.cells, upToFour(columns)*t.stride)
	if t.columns == columns {
		return
	}
	t.columns, t.width = columns, upToFour(columns)
	t.block = resize(t.block, blockRows*t.width)
	t.blank = resize(t.blank, blockRows*t.width)
	for i := range t.blank {
		t.blank[i] = 0
		if i%t.width < columns {
			t.blank[i] = math.NaN()
		}
	}
}

// column gives the rows of a column.
func (t *table) column(i, rows int) []float64 { return t.cells[i*t.stride:][:rows] }

// row gives a row of the open block.
func (t *table) row(i int) []float64 { return t.block[i*t.width:][:t.columns] }

// load opens the block that begins with a row.
func (t *table) load(first int) {
	transpose(t.block, t.width, t.cells[first:], t.stride, t.width, min(blockRows, t.stride-first))
}

// clear opens an empty block: every column is NaN.
func (t *table) clear() { copy(t.block, t.blank) }

// store puts the open block away from a row on.
func (t *table) store(first int) {
	transpose(t.cells[first:], t.stride, t.block, t.width, min(blockRows, t.stride-first), t.width)
}

// transpose makes rows of columns: to[c*toStride+r] = from[r*fromStride+c], in
// tiles of four by four. Rows and columns are multiples of four.
func transpose(to []float64, toStride int, from []float64, fromStride, rows, columns int) {
	for c := 0; c < columns; c += 4 {
		for r := 0; r < rows; r += 4 {
			at := r*fromStride + c
			a0 := (*[4]float64)(from[at:])
			a1 := (*[4]float64)(from[at+fromStride:])
			a2 := (*[4]float64)(from[at+2*fromStride:])
			a3 := (*[4]float64)(from[at+3*fromStride:])
			at = c*toStride + r
			b0 := (*[4]float64)(to[at:])
			b1 := (*[4]float64)(to[at+toStride:])
			b2 := (*[4]float64)(to[at+2*toStride:])
			b3 := (*[4]float64)(to[at+3*toStride:])
			b0[0], b0[1], b0[2], b0[3] = a0[0], a1[0], a2[0], a3[0]
			b1[0], b1[1], b1[2], b1[3] = a0[1], a1[1], a2[1], a3[1]
			b2[0], b2[1], b2[2], b2[3] = a0[2], a1[2], a2[2], a3[2]
			b3[0], b3[1], b3[2], b3[3] = a0[3], a1[3], a2[3], a3[3]
		}
	}
}

func upToFour(n int) int { return (n + 3) / 4 * 4 }
