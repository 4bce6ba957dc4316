package rewrite

import (
	"encoding/binary"
	"slices"
)

// writer writes the code of a function.
type writer struct {
	*function
	*layout
	code []byte
	open []frame // the WebAssembly blocks and loops around what comes next
}

// frame is a WebAssembly block that ends before a place, or a loop that begins
// at one; toOut and toHead are those around all.
type frame struct {
	op    byte
	place int
}

// write writes the code anew, with only the WebAssembly blocks that something
// goes to. A point that nothing should go to traps.
func (f *function) write() {
	w := &writer{function: f, layout: f.lay()}
	w.code = append(w.code, f.locals...)
	w.add(globalGet, 0)
	w.add(localSet, sp)
	w.code = append(w.code, f.head...)
	if f.unwind {
		w.begin(frame{block, toOut})
	}
	if len(w.back) > 0 {
		w.begin(frame{loop, toHead})
	}
	w.beginBlocks(noLoop, len(f.order)-1)
	w.table()
	for at, b := range f.order {
		if w.wanted[at] {
			w.end()
		}
		if last, ok := w.loops[at]; ok {
			w.begin(frame{loop, at})
			w.beginBlocks(at, last)
		}
		for _, s := range f.blocks[b] {
			w.step(at, s)
		}
		for w.endsLoop(at) {
			w.end()
		}
	}
	if len(w.back) > 0 {
		w.end()
	}
	f.code = append(w.code, f.tail...)
}

func (w *writer) add(op byte, operand int64) {
	w.code = append(w.code, op)
	w.code = binary.AppendUvarint(w.code, uint64(operand))
}

func (w *writer) begin(f frame) {
	w.code = append(w.code, f.op, noResult)
	w.open = append(w.open, f)
}

func (w *writer) end() {
	w.code = append(w.code, end)
	w.open = w.open[:len(w.open)-1]
}

// beginBlocks begins the blocks that stand right in a loop, or in none, the
// outermost first.
func (w *writer) beginBlocks(home, last int) {
	for at := last; at >= 0; at-- {
		if w.wanted[at] && w.home[at] == home {
			w.begin(frame{block, at})
		}
	}
}

func (w *writer) endsLoop(at int) bool {
	n := len(w.open) - 1
	return n >= 0 && w.open[n].op == loop && w.open[n].place >= 0 && w.loops[w.open[n].place] == at
}

// outTo is how many blocks and loops a jump to a frame leaves behind.
func (w *writer) outTo(f frame) int64 {
	return int64(len(w.open) - 1 - slices.Index(w.open, f))
}

// table writes the way to the points where the function is entered.
func (w *writer) table() {
	w.begin(frame{block, toTrap}) // of the points that nothing should go to
	points := map[int64]int{}     // the place of each
	for p := range w.entries {
		points[p] = w.place[w.blockOf(p)]
	}
	for at, p := range w.back {
		points[p] = at
	}
	last := int64(0)
	for p := range points {
		last = max(last, p)
	}
	if len(w.back) == 0 { // nearly always it is the beginning, to which a plain jump is quicker
		w.add(localGet, wantedPoint)
		w.code = append(w.code, i32Eqz)
		w.add(brIf, w.outTo(frame{block, points[0]}))
	}
	w.add(localGet, wantedPoint)
	w.add(brTable, last+1)
	for p := range last + 1 {
		to := int64(0)
		if at, ok := points[p]; ok {
			to = w.outTo(frame{block, at})
		}
		w.code = binary.AppendUvarint(w.code, uint64(to))
	}
	w.code = append(w.code, 0)
	w.end()
	w.code = append(w.code, unreachable)
}

func (w *writer) step(at int, s step) {
	if s.to == nowhere {
		w.code = append(w.code, s.code...)
		return
	}
	to := frame{block, toOut}
	if s.to >= 0 {
		to.place = w.place[s.to]
		if to.place <= at {
			to.op = loop
		}
	}
	if p, ok := w.back[to.place]; ok && to.op == loop {
		w.jumpBack(p, s)
		return
	}
	w.add(s.op, int64(s.depth)+w.outTo(to))
}

// jumpBack writes a jump through the table.
func (w *writer) jumpBack(point int64, s step) {
	depth := int64(s.depth)
	if s.op == brIf {
		w.code = append(w.code, ifTrue, noResult)
		depth++
	}
	w.code = append(w.code, constant(i32Const, point).code...)
	w.add(localSet, wantedPoint)
	w.add(br, depth+w.outTo(frame{loop, toHead}))
	if s.op == brIf {
		w.code = append(w.code, end)
	}
}
