package rewrite

import "slices"

// unrotate puts the check of a loop before its body again. Go puts it behind,
// and enters the loop by a jump to it: a loop entered in the middle, which
// WebAssembly does not know.
func (f *function) unrotate() {
	for body := 0; body < len(f.order); body++ {
		last := f.lastJumpTo(f.order[body], body)
		if last < 0 {
			continue
		}
		check, ok := f.onlyEntry(body, last)
		if !ok || check == body {
			continue
		}
		// Where a basic block goes on with the next, it needs a jump now.
		f.goOnByJump(last)
		f.goOnByJump(check - 1)
		f.order = slices.Concat(f.order[:body], f.order[check:last+1], f.order[body:check], f.order[last+1:])
		f.turn(body + last - check)
		if body > 0 {
			f.dropJumpToNext(body - 1)
		}
	}
}

// lastJumpTo is the last place in the order, from a place on, with a jump to a
// basic block; -1 if there is none.
func (f *function) lastJumpTo(to, from int) int {
	for at := len(f.order) - 1; at >= from; at-- {
		if slices.ContainsFunc(f.blocks[f.order[at]], func(s step) bool { return s.to == to }) {
			return at
		}
	}
	return -1
}

// onlyEntry finds the place, from first to last, to which all go that enter
// there from elsewhere; ok is false when they go to several.
func (f *function) onlyEntry(first, last int) (place int, ok bool) {
	entry := -1 // a basic block
	several := false
	enter := func(b int) {
		if at := slices.Index(f.order, b); at < first || at > last {
			return
		}
		several = several || entry >= 0 && entry != b
		entry = b
	}
	for p := range f.entries {
		enter(f.blockOf(p))
	}
	if first > 0 && !f.blocks[f.order[first-1]].endsAway() {
		enter(f.order[first])
	}
	f.eachJump(func(at int, s step) {
		if at < first || at > last {
			enter(s.to)
		}
	})
	return slices.Index(f.order, entry), entry >= 0 && !several
}

// dropJumpToNext drops a jump at the end of a basic block to the next.
func (f *function) dropJumpToNext(at int) {
	b := f.blocks[f.order[at]]
	if n := len(b) - 1; n >= 0 && b[n].op == br && b[n].depth == 0 && b[n].to == f.order[at+1] {
		f.blocks[f.order[at]] = b[:n]
	}
}

// goOnByJump ends the basic block at a place with a jump to the next.
func (f *function) goOnByJump(at int) {
	b := &f.blocks[f.order[at]]
	if b.endsAway() {
		return
	}
	if at+1 == len(f.order) {
		*b = append(*b, step{bare(unreachable), 0, nowhere})
		return
	}
	*b = append(*b, step{instruction{op: br}, 0, f.order[at+1]})
}

// endsAway tells that the next basic block is not gone on with.
func (b basicBlock) endsAway() bool {
	if len(b) == 0 {
		return false
	}
	s := b[len(b)-1]
	return s.depth == 0 && (s.op == br || s.op == ret || s.op == unreachable)
}

// turn turns a conditional jump to the next basic block with a jump behind it
// into the opposite one alone.
func (f *function) turn(at int) {
	b := f.blocks[f.order[at]]
	n := len(b) - 2
	if n < 1 || b[n].op != brIf || b[n].depth > 0 || b[n].to != f.order[at+1] || b[n+1].op != br {
		return
	}
	b[n].to = b[n+1].to
	if not := inverse[b[n-1].op]; not != 0 {
		b[n-1].instruction = bare(not)
		b = b[:n+1]
	} else {
		b[n+1] = b[n]
		b[n] = step{bare(i32Eqz), 0, nowhere}
	}
	f.blocks[f.order[at]] = b
}
