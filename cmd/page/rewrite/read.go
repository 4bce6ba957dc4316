package rewrite

import (
	"fmt"
	"slices"
)

func readFunctions(body []byte) ([]function, error) {
	r := reader{rest: body}
	var functions []function
	for i := range r.count() {
		f := function{code: r.bytes(r.number()), number: int64(i)}
		if r.err != nil {
			return nil, r.err
		}
		if !f.readRow() {
			if err := f.readConsts(); err != nil {
				return nil, fmt.Errorf("function %d: %w", i, err)
			}
		}
		functions = append(functions, f)
	}
	return functions, r.done()
}

func (f *function) readConsts() error {
	r := reader{rest: f.code}
	r.locals()
	for len(r.rest) > 0 {
		if in := r.instruction(); in.op == i64Const {
			f.consts = append(f.consts, in.value)
		}
	}
	return r.err
}

// readRow tells whether the function is a row of basic blocks, and reads it.
func (f *function) readRow() bool {
	r := reader{rest: f.code}
	f.locals = r.locals()
	// Every such function begins with a copy of the stack pointer.
	if a, b := r.instruction(), r.instruction(); a.op != globalGet || a.value != 0 || b.op != localSet || b.value != sp {
		return false
	}
	looped := false
	outer, inner := 0, 0 // WebAssembly blocks before the loop and after it
	in := r.instruction()
	for ; in.op == block || in.op == loop && !looped; in = r.instruction() {
		if in.op == loop {
			looped, outer, inner = true, inner, 0
		} else {
			inner++
		}
	}
	table := r.instruction()
	if r.err != nil || in.op != localGet || in.value != wantedPoint || table.op != brTable {
		return false
	}
	t := reader{rest: table.code[1:]}
	for range t.count() + 1 {
		f.table = append(f.table, int64(t.number()))
	}
	// The last entry of the table leads to the last basic block, and one
	// WebAssembly block ends before each.
	last := int(f.table[len(f.table)-1])
	if !looped { // then those for the basic blocks stand right within that around all
		outer, inner = inner-(last+1), last+1
	}
	f.unwind = outer == 1
	if inner != last+1 || outer != 0 && outer != 1 || slices.Min(f.table) < 0 || int(slices.Max(f.table)) > last || r.instruction().op != end {
		return false
	}
	blocks, ok := f.readBlocks(&r, last, looped)
	if ok = ok && f.addLocals(blocks); ok {
		f.blocks = blocks
		for i := range blocks {
			f.order = append(f.order, i)
		}
	}
	return ok
}

func (f *function) readBlocks(r *reader, last int, looped bool) (blocks []basicBlock, ok bool) {
	blocks = make([]basicBlock, 1, last+1)
	depth := 0
	for len(r.rest) > 0 {
		s := step{instruction: r.instruction(), depth: depth, to: nowhere}
		at := len(blocks) - 1
		switch s.op {
		case block, loop, ifTrue:
			depth++
		case end:
			switch {
			case depth > 0:
				depth--
			case at < last:
				blocks = append(blocks, nil)
				continue
			case looped: // the end of the loop
				f.tail = r.rest
				return blocks, r.err == nil
			default: // the end of the block around all, or of the function
				f.tail = append([]byte{end}, r.rest...)
				return blocks, r.err == nil
			}
		case br, brIf:
			out := int(s.value) - depth - (last - at) // of what stands around all basic blocks
			switch {
			case int(s.value) < depth:
			case out == 0 && looped:
				point, ok := blocks[at].takePoint()
				if !ok || s.op != br {
					return nil, false
				}
				s.to = f.blockOf(point)
			case f.unwind && (out == 0 || out == 1 && looped):
				s.to = toOut
			default:
				return nil, false
			}
		case brTable:
			return nil, false
		}
		blocks[at] = append(blocks[at], s)
	}
	return nil, false
}

// takePoint takes the point off that a jump to the head sets before it.
func (b *basicBlock) takePoint() (point int64, ok bool) {
	n := len(*b) - 2
	if n < 0 || (*b)[n].op != i32Const || (*b)[n].value < 0 || (*b)[n+1].op != localSet || (*b)[n+1].value != wantedPoint {
		return 0, false
	}
	point = (*b)[n].value
	*b = (*b)[:n]
	return point, true
}

// blockOf is the basic block of a point.
func (f *function) blockOf(point int64) int {
	return int(f.table[min(point, int64(len(f.table)-1))])
}

// pointOf is the first point of a basic block.
func (f *function) pointOf(b int) int64 { return int64(slices.Index(f.table, int64(b))) }
