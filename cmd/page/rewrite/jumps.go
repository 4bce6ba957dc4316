package rewrite

import (
	"encoding/binary"
)

// Jumps makes the jumps direct in a module that Go's compiler wrote, and gives
// one whose functions do the same in fewer steps and bytes.
//
// Go writes a function as a row of basic blocks inside one loop, with a table
// at its head: a jump sets the point it wants, goes back to the head and
// through the table. The row stands in nested WebAssembly blocks, each of
// which ends where the next basic block begins, so that a jump forward can as
// well leave the right one at once. A jump back can go to a loop of its own,
// where nothing enters that loop but at its beginning. Here both do, and the
// table keeps only what else is needed: where a goroutine goes on after a
// call. What is undone here is done in cmd/internal/obj/wasm/wasmobj.go of the
// Go toolchain. A function of another form is left as it is.
func Jumps(module []byte) ([]byte, error) {
	const codeSection = 10
	return mapSections(module, func(kind byte, body []byte) ([]byte, error) {
		if kind != codeSection {
			return body, nil
		}
		functions, err := readFunctions(body)
		if err != nil {
			return nil, err
		}
		findEntries(functions)
		code := binary.AppendUvarint(nil, uint64(len(functions)))
		for i := range functions {
			if f := &functions[i]; f.blocks != nil {
				for _, better := range improvements {
					better.apply(f)
				}
				f.write()
			}
			code = appendSized(code, functions[i].code)
		}
		return code, nil
	})
}

// function is one of the module.
type function struct {
	code   []byte
	number int64 // among those that are not imported

	// Of a row of basic blocks:
	blocks  []basicBlock
	order   []int          // of the basic blocks, by their numbers
	entries map[int64]bool // the points where it may be entered
	table   []int64        // the basic block of each point; the last is for all points above
	locals  []byte         // as declared
	head    []byte         // instructions that it begins with
	unwind  bool           // whether a block stands around all, which calls leave to unwind the stack
	tail    []byte         // the code behind the basic blocks
	consts  []int64        // of another form than a row: its 64-bit constants
}

// basicBlock has one way in, at its beginning.
type basicBlock []step

// step is an instruction of a basic block.
type step struct {
	instruction
	depth int // of the WebAssembly blocks around it within its basic block
	to    int // where a jump goes: a basic block, or one of the following
}

// The locals of a function: its parameter, the copy of the stack pointer, and
// those that are added. Since these come before Go's others they are the same
// in every function, and equal steps equal bytes.
const (
	wantedPoint = 0
	sp          = 1
	spare       = 2 // the first of two
	ownNumber   = 4
	added       = 3
)

// addLocals gives a function these locals. ok is false where the first that it
// declares is not the stack pointer alone.
func (f *function) addLocals(blocks []basicBlock) (ok bool) {
	const i32, i64 = 0x7f, 0x7e
	r := reader{rest: f.locals}
	groups, count, kind := r.number(), r.number(), r.byte()
	if r.err != nil || groups == 0 || count != 1 || kind != i32 {
		return false
	}
	f.locals = append(binary.AppendUvarint(nil, groups+1), 1+2, i32, 1, i64)
	f.locals = append(f.locals, r.rest...)
	for _, b := range blocks {
		for i, s := range b {
			if (s.op == localGet || s.op == localSet || s.op == localTee) && s.value > sp {
				b[i].instruction = on(s.op, s.value+added)
			}
		}
	}
	return true
}

const (
	nowhere = -1 - iota // no jump, or one within the basic block
	toOut               // out of the block around all
	toHead              // back to the table; only while the code is written
	toTrap              // to where nothing should go; only while the code is written
)

func (b basicBlock) withoutNops() basicBlock {
	for len(b) > 0 && b[0].op == nop {
		b = b[1:]
	}
	return b
}

// findEntries finds for each function the points where it may be entered: its
// beginning, and where it goes on after a call. Go keeps such a place as the
// function's number, from 0x1000 on, shifted by 16, and the point in it. Each
// constant that may be one counts, but not for a call that stands within a
// WebAssembly block: it panics or lets the stack grow, and what is then gone
// on with is another point. A function that defers also goes on at the point
// before its call of deferreturn, and a goroutine ends in a call in the middle
// of goexit; both have no arguments and begin a basic block.
func findEntries(functions []function) {
	for i := range functions {
		functions[i].entries = map[int64]bool{0: true}
	}
	enter := func(place int64, before bool) {
		n, at := place>>16-firstNumber, place&0xffff
		if n < 0 || n >= int64(len(functions)) {
			return
		}
		functions[n].entries[at] = true
		if before && at > 0 {
			functions[n].entries[at-1] = true
		}
	}
	for _, f := range functions {
		for _, c := range f.consts {
			enter(c, true)
		}
		for _, b := range f.blocks {
			for i, s := range b.withoutNops() {
				const before = 6 // instructions of a call before the place where it goes on
				if s.op == i64Const && s.depth == 0 {
					enter(s.value, i == before)
				}
			}
		}
	}
}
