package rewrite

import (
	"bytes"
	"encoding/binary"
	"math"
	"slices"
)

// What is here is for size: together 183 kB of the packed module of 2.63 MB, and
// some 50 more since the locals that are added are the same in every function.
// Sheets take no longer in V8; in wazero the machine was too busy to tell.

// firstNumber is that of the module's first function where Go keeps a place in
// the code: the function's number shifted by 16, and the point in it.
const firstNumber = 0x1000

// shareNumber keeps the function's own number in a local. Before each call Go
// writes the place where it goes on after it, six bytes of which all but one
// are the same throughout the function.
func (f *function) shareNumber() {
	own := (f.number + firstNumber) << 16
	isPlace := func(b basicBlock, i int) bool {
		return b[i].op == i64Const && b[i].value&^0xffff == own && i+1 < len(b) && b[i+1].op == i64Store
	}
	places := 0
	for _, b := range f.blocks {
		for i := range b {
			if isPlace(b, i) {
				places++
			}
		}
	}
	const fewest = 2 // for which it pays
	if places < fewest {
		return
	}
	f.head = slices.Concat(constant(i64Const, own).code, on(localSet, ownNumber).code)
	for k, from := range f.blocks {
		var b basicBlock
		for i, s := range from {
			if !isPlace(from, i) {
				b = append(b, s)
				continue
			}
			for _, in := range []instruction{on(localGet, ownNumber), constant(i64Const, s.value&0xffff), bare(i64Add)} {
				b = append(b, step{in, s.depth, nowhere})
			}
		}
		f.blocks[k] = b
	}
}

// storeOnStack adds to the stack pointer in the store itself that the address
// is for, where nothing but plain values stands between.
func (b *basicBlock) storeOnStack() {
	from := *b
	for i := 0; i+3 < len(from); i++ {
		if !from[i].is(localGet, sp) || from[i+1].op != i32Const || from[i+1].value < 0 || from[i+2].op != i32Add {
			continue
		}
		at := from.storeAt(i + 3)
		if at < 0 {
			continue
		}
		if stored, ok := from[at].fartherStore(from[i+1].value); ok {
			from[at].instruction = stored
			from[i+1].op, from[i+2].op = gone, gone
		}
	}
	kept := from[:0]
	for _, s := range from {
		if s.op != gone {
			kept = append(kept, s)
		}
	}
	*b = kept
}

// gone marks an instruction that is left out. No instruction has this byte.
const gone = 0xff

// storeAt finds the store to the address that lies on the top before the
// instruction at i; -1 where anything else takes it, or where it is not plain.
func (b basicBlock) storeAt(i int) int {
	above := 0 // values above the address
	for ; i < len(b); i++ {
		in := b[i]
		if in.isStore() {
			if above == 1 {
				return i
			}
			above -= 2
		} else {
			takes, gives, ok := in.takesAndGives()
			if !ok || takes > above {
				return -1
			}
			above += gives - takes
		}
		if above < 0 {
			return -1
		}
	}
	return -1
}

// takesAndGives is how many values an instruction takes off the top and puts
// there; ok is false for those that are no plain values.
func (in instruction) takesAndGives() (takes, gives int, ok bool) {
	switch op := in.op; {
	case op == gone:
		return 0, 0, true
	case op == localGet || op == globalGet || op == i32Const || op == i64Const || op == 0x43 || op == 0x44:
		return 0, 1, true
	case op == localSet || op == globalSet:
		return 1, 0, true
	case op == localTee || in.isLoad():
		return 1, 1, true
	case op == i32Eqz || op == 0x50 || 0x67 <= op && op <= 0x69 || 0x79 <= op && op <= 0x7b || 0x8b <= op && op <= 0x91 || 0x99 <= op && op <= 0x9f || 0xa7 <= op && op <= 0xc4: // tests, counts, roots, conversions
		return 1, 1, true
	case 0x46 <= op && op <= 0x66 || 0x6a <= op && op <= 0x78 || 0x7c <= op && op <= 0x8a || 0x92 <= op && op <= 0x98 || 0xa0 <= op && op <= 0xa6: // comparisons and arithmetic
		return 2, 1, true
	}
	return 0, 0, false
}

func (in instruction) isStore() bool { return 0x36 <= in.op && in.op <= 0x3e }

// fartherStore is a store to a place farther on.
func (in instruction) fartherStore(by int64) (_ instruction, ok bool) {
	r := reader{rest: in.code[1:]}
	align, offset := r.number(), r.number()
	if offset+uint64(by) > math.MaxInt32 {
		return in, false
	}
	code := binary.AppendUvarint([]byte{in.op}, align)
	return instruction{in.op, in.value, binary.AppendUvarint(code, offset+uint64(by))}, true
}

// leaveAtOnce makes a function that is being unwound give 1 back where it
// stands, in place of a jump to the end where it does: how many blocks the jump
// leaves is another number after each call.
func (f *function) leaveAtOnce() {
	leave := []instruction{constant(i32Const, 1), bare(ret)}
	around, behind, ok := bytes.Cut(f.tail, []byte{end})
	if !f.unwind || !ok || !bytes.Equal(behind, slices.Concat(leave[0].code, []byte{end})) || len(around) > 0 && !bytes.Equal(around, []byte{unreachable}) {
		return
	}
	for k, from := range f.blocks {
		var b basicBlock
		for _, s := range from {
			if s.to != toOut {
				b = append(b, s)
				continue
			}
			steps := leave
			if s.op == brIf {
				steps = slices.Concat([]instruction{{op: ifTrue, code: []byte{ifTrue, noResult}}}, leave, []instruction{bare(end)})
			}
			for i, in := range steps {
				depth := s.depth
				if s.op == brIf && i > 0 {
					depth++
				}
				b = append(b, step{in, depth, nowhere})
			}
		}
		f.blocks[k] = b
	}
	f.unwind, f.tail = false, slices.Concat(around, behind)
}
