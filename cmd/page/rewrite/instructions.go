package rewrite

import (
	"encoding/binary"
	"fmt"
)

// The instructions that matter here, by their first byte.
const (
	unreachable   = 0x00
	nop           = 0x01
	block         = 0x02
	loop          = 0x03
	ifTrue        = 0x04
	end           = 0x0b
	br            = 0x0c
	brIf          = 0x0d
	brTable       = 0x0e
	ret           = 0x0f
	localGet      = 0x20
	localSet      = 0x21
	localTee      = 0x22
	globalGet     = 0x23
	globalSet     = 0x24
	i64Load       = 0x29
	i64Store      = 0x37
	i32Const      = 0x41
	i64Const      = 0x42
	i32Eqz        = 0x45
	i32Add        = 0x6a
	i64Add        = 0x7c
	i32WrapI64    = 0xa7
	i64ExtendI32U = 0xad
	prefixed      = 0xfc
)

// Those with a prefix, by the number behind it.
const (
	memoryCopy = 10
	memoryFill = 11
)

// noResult is the type of a block.
const noResult = 0x40

// instruction is one of a function's code.
type instruction struct {
	op    byte
	value int64  // the first operand of those with whole numbers
	code  []byte // all of it
}

// instruction reads one. Those that Go's compiler never writes are an error.
func (r *reader) instruction() (in instruction) {
	from := r.rest
	in.op = r.byte()
	switch op := in.op; {
	case op <= nop || op == 0x05 || op == end || op == ret || op == 0x1a || op == 0x1b || 0x45 <= op && op <= 0xc4: // no operand
	case op == block || op == loop || op == ifTrue:
		in.value = int64(r.byte())
	case op == br || op == brIf || op == 0x10 || 0x20 <= op && op <= 0x24:
		in.value = int64(r.number())
	case op == brTable:
		for range r.count() + 1 {
			r.number()
		}
	case op == 0x11 || 0x28 <= op && op <= 0x3e: // call_indirect, loads and stores
		in.value = int64(r.number())
		r.number()
	case op == 0x3f || op == 0x40: // memory.size and grow
		r.byte()
	case op == i32Const || op == i64Const:
		in.value = r.signed()
	case op == 0x43:
		r.bytes(4)
	case op == 0x44:
		r.bytes(8)
	case op == prefixed:
		switch in.value = int64(r.number()); in.value {
		case 0, 1, 2, 3, 4, 5, 6, 7: // truncations
		case memoryCopy:
			r.bytes(2)
		case memoryFill:
			r.byte()
		default:
			r.fail(fmt.Errorf("instruction %#x %d is not known", op, in.value))
		}
	default:
		r.fail(fmt.Errorf("instruction %#x is not known", op))
	}
	if r.err == nil {
		in.code = from[:len(from)-len(r.rest)]
	}
	return in
}

// bare is an instruction without an operand.
func bare(op byte) instruction { return instruction{op: op, code: []byte{op}} }

// on is an instruction on a local or a global.
func on(op byte, index int64) instruction {
	return instruction{op, index, binary.AppendUvarint([]byte{op}, uint64(index))}
}

// constant is an instruction that gives a whole number.
func constant(op byte, value int64) instruction {
	return instruction{op, value, appendSigned([]byte{op}, value)}
}

func (in instruction) is(op byte, value int64) bool { return in.op == op && in.value == value }

func (in instruction) isLoad() bool { return 0x28 <= in.op && in.op <= 0x35 }

// farther is a load from a place farther on.
func (in instruction) farther(by int64) instruction {
	r := reader{rest: in.code[1:]}
	align, offset := r.number(), r.number()
	code := binary.AppendUvarint([]byte{in.op}, align)
	return instruction{in.op, in.value, binary.AppendUvarint(code, offset+uint64(by))}
}

// access is a load or store of 8 bytes.
func access(op byte, offset int64) instruction {
	const aligned = 3 // to 2^3 bytes
	return instruction{op, aligned, binary.AppendUvarint([]byte{op, aligned}, uint64(offset))}
}
