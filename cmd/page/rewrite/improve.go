package rewrite

import "math"

// improvement makes a function do the same in fewer steps or bytes.
type improvement struct {
	name  string
	apply func(*function)
}

// improvements are applied in this order. Behind each is what it gains: the
// part of the time of bolt preload, gland heat and coupling alignment with 4096
// trials in wazero, and the kB of the module and of the packed module, by which
// these grow when it alone is left out (TestGains; the same module measured
// twice differs by 1 %, on a busy machine by up to 6 %).
var improvements = []improvement{
	{"leave in panic", inBlocks((*basicBlock).leaveInPanic)},     // 3 to 6 %,    0 kB, packed -0.4 kB
	{"fold not", inBlocks((*basicBlock).foldNot)},                // 3 to 6 %,   16 kB, packed 0.7 kB
	{"jump if", inBlocks((*basicBlock).jumpIf)},                  // 2 to 4 %,  103 kB, packed 4 kB
	{"address on stack", inBlocks((*basicBlock).addressOnStack)}, // 2 to 5 %,  292 kB, packed 15 kB
	{"store on stack", inBlocks((*basicBlock).storeOnStack)},     // see places.go
	{"leave frame", inBlocks((*basicBlock).leaveFrame)},          // 1 to 3 %,   80 kB, packed 0.7 kB
	{"copy inline", (*function).copyInline},                      // 4 to 12 %, -174 kB, packed -25 kB
	{"leave at once", (*function).leaveAtOnce},                   // see places.go
	{"share number", (*function).shareNumber},                    // see places.go
	{"unrotate", (*function).unrotate},                           // 10 to 17 %,  9 kB, packed 5 kB
}

// inBlocks makes each basic block better for itself.
func inBlocks(better func(*basicBlock)) func(*function) {
	return func(f *function) {
		for i := range f.blocks {
			better(&f.blocks[i])
		}
	}
}

// leaveInPanic makes calls go out for good that stand within a WebAssembly
// block and after which the stack is unwound if they say so. They panic or let
// the stack grow, and always say so. As nothing comes back from there, a host
// that has checked an address before need not check it again behind.
func (b *basicBlock) leaveInPanic() {
	for i, s := range *b {
		if s.op == brIf && s.to == toOut && s.depth > 0 && (*b)[i+1].op == end {
			(*b)[i].op = br
		}
	}
}

// foldNot makes a comparison and its inversion one comparison.
func (b *basicBlock) foldNot() {
	folded := (*b)[:0]
	for _, s := range *b {
		if n := len(folded) - 1; s.op == i32Eqz && n >= 0 && inverse[folded[n].op] != 0 {
			folded[n].instruction = bare(inverse[folded[n].op])
			continue
		}
		folded = append(folded, s)
	}
	*b = folded
}

// inverse is the comparison that is true where another is false. Those of
// floating point numbers by size have none, for with NaN all are false.
var inverse = func() (inverse [256]byte) {
	for _, pair := range [][2]byte{
		{0x46, 0x47}, {0x48, 0x4e}, {0x49, 0x4f}, {0x4a, 0x4c}, {0x4b, 0x4d}, // i32
		{0x51, 0x52}, {0x53, 0x59}, {0x54, 0x5a}, {0x55, 0x57}, {0x56, 0x58}, // i64
		{0x5b, 0x5c}, {0x61, 0x62}, // f32 and f64: equal or not
	} {
		inverse[pair[0]], inverse[pair[1]] = pair[1], pair[0]
	}
	return inverse
}()

// jumpIf makes a conditional jump of a jump that stands alone in a condition.
func (b *basicBlock) jumpIf() {
	from := *b
	short := from[:0]
	for i := 0; i < len(from); i++ {
		s := from[i]
		if s.op == ifTrue && i+2 < len(from) && from[i+1].op == br && from[i+1].to != nowhere && from[i+2].op == end {
			s = from[i+1]
			s.op, s.depth = brIf, s.depth-1
			i += 2
		}
		short = append(short, s)
	}
	*b = short
}

// addressOnStack adds to the stack pointer in 32 bits at once, instead of in 64
// bits to shorten it then, and in the load itself where one comes next.
func (b *basicBlock) addressOnStack() {
	from := *b
	var short basicBlock
	for i := 0; i < len(from); i++ {
		short = append(short, from[i])
		if i+4 >= len(from) || from[i].op != localGet || from[i].value != sp ||
			from[i+1].op != i64ExtendI32U || from[i+2].op != i64Const || from[i+2].value < 0 || from[i+2].value > math.MaxInt32 || from[i+3].op != i64Add || from[i+4].op != i32WrapI64 {
			continue
		}
		offset := from[i+2].value
		i += 4
		if i+1 < len(from) && from[i+1].isLoad() {
			i++
			short = append(short, step{from[i].farther(offset), from[i].depth, nowhere})
			continue
		}
		short = append(short, step{constant(i32Const, offset), from[i].depth, nowhere}, step{bare(i32Add), from[i].depth, nowhere})
	}
	*b = short
}

// leaveFrame takes the stack pointer past the frame and the return address at
// once, before a return.
func (b *basicBlock) leaveFrame() {
	from := *b
	var short basicBlock
	for i := 0; i < len(from); i++ {
		past, ok := from.passes(i)
		if rest, then := from.passes(i + passing); ok && then && from[i+2*passing:].returns() {
			depth := from[i].depth
			for _, in := range []instruction{on(localGet, sp), constant(i32Const, past+rest), bare(i32Add), on(globalSet, 0)} {
				short = append(short, step{in, depth, nowhere})
			}
			i += 2*passing - 1
			continue
		}
		short = append(short, from[i])
	}
	*b = short
}

// returns tells that a number is given back next.
func (b basicBlock) returns() bool {
	return len(b) >= 2 && b[0].op == i32Const && b[1].op == ret
}

// passing is how many instructions add to the stack pointer.
const passing = 5

// passes tells by how much the instructions from i on add to the stack pointer.
func (b basicBlock) passes(i int) (by int64, ok bool) {
	if i+passing > len(b) {
		return 0, false
	}
	ok = b[i].is(localGet, sp) && b[i+1].op == i32Const && b[i+1].value > 0 && b[i+2].op == i32Add && b[i+3].is(localTee, sp) && b[i+4].is(globalSet, 0)
	return b[i+1].value, ok
}

// copyInline writes out the copying and clearing of few bytes, for which a
// host calls a function. It goes from back to front: when the first address is
// in bounds, so are the others. Where places may overlap in part, Go calls a
// function of its own instead.
func (f *function) copyInline() {
	for i := range f.blocks {
		f.blocks[i].copyInline()
	}
}

// copyInline does so in a basic block.
func (b *basicBlock) copyInline() {
	var out basicBlock
	for _, s := range *b {
		n := len(out)
		switch {
		case n < 2 || s.op != prefixed || out[n-1].op != i32Const || out[n-1].value <= 0 || out[n-1].value%8 != 0:
			out = append(out, s)
		case s.value == memoryCopy && out[n-1].value <= longestCopy:
			out = append(out[:n-1], copying(out[n-1].value)...)
		case s.value == memoryFill && out[n-1].value <= longestFill && out[n-2].is(i32Const, 0):
			out = append(out[:n-2], clearing(out[n-1].value)...)
		default:
			out = append(out, s)
		}
	}
	*b = out
}

// Beyond these many bytes it is left to the host. Measured in wazero: clearing
// 288 bytes for each trial of an alignment cost 7 % of its time.
const (
	longestCopy = 128
	longestFill = 512
)

// copying copies from the address on the top to the one below.
func copying(length int64) (c basicBlock) {
	const to, from = spare, spare + 1
	c.add(on(localSet, from))
	c.add(on(localSet, to))
	for at := length - 8; at >= 0; at -= 8 {
		c.add(on(localGet, to))
		c.add(on(localGet, from))
		c.add(access(i64Load, at))
		c.add(access(i64Store, at))
	}
	return c
}

// clearing clears from the address on the top.
func clearing(length int64) (c basicBlock) {
	c.add(on(localSet, spare))
	for at := length - 8; at >= 0; at -= 8 {
		c.add(on(localGet, spare))
		c.add(constant(i64Const, 0))
		c.add(access(i64Store, at))
	}
	return c
}

func (b *basicBlock) add(in instruction) {
	*b = append(*b, step{instruction: in, to: nowhere})
}
