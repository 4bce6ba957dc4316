package rewrite

import (
	"bytes"
	"encoding/binary"
	"errors"
	"maps"
	"slices"
)

// Traces takes out of a module whose segments are joined what the Go runtime
// reads for the trace of a crash alone: names of files, numbers of lines, which
// calls were inlined, and how arguments lie. The trace then has the names of
// the functions, and "?:0" in place of a line (runtime.funcline1). Where the
// runtime may stop a function from outside goes too, as nothing stops one in
// WebAssembly. The zeros left behind pack to nothing.
//
// What was inlined stays with wrappers, where recover counts it
// (runtime.gorecover). No other function needs it for that: one that calls
// recover is never inlined (cmd/compile/internal/inline).
//
// The table is laid out as in runtime/symtab.go and runtime/runtime2.go
// (pcHeader, _func, moduledata), written by cmd/link/internal/ld/pcln.go.
func Traces(module []byte) ([]byte, error) {
	const dataSection = 11
	found := 0
	out, err := mapSections(module, func(kind byte, body []byte) ([]byte, error) {
		if kind != dataSection {
			return body, nil
		}
		segments, err := readSegments(body)
		if err != nil {
			return nil, err
		}
		for i := range segments {
			segments[i].data = slices.Clone(segments[i].data)
		}
		for _, s := range segments {
			at := bytes.Index(s.data, functionTable)
			if at < 0 {
				continue
			}
			found++
			from, to, err := besideFunctions(segments, s.address+int64(at))
			if err != nil {
				return nil, err
			}
			beside := make([]byte, to-from)
			overlay(segments, from, to, func(there []byte, offset int64) { copy(beside[offset:], there) })
			if err := dropTraces(s.data[at:], beside); err != nil {
				return nil, err
			}
			overlay(segments, from, to, func(there []byte, offset int64) { copy(there, beside[offset:]) })
		}
		return writeSegments(segments), nil
	})
	if err == nil && found != 1 {
		err = errors.New("the module has not one table of functions in a segment of its own form")
	}
	return out, err
}

// functionTable begins the runtime's table of functions: magic number, two
// zeros, instructions of one byte, pointers of eight.
var functionTable = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

var errTable = errors.New("the table of functions is not as the Go runtime reads it")

// besideFunctions is where in memory functions have what their table names by
// its distance, go:func.*: runtime.moduledata says so, which begins with the
// address of the table.
func besideFunctions(segments []segment, table int64) (from, to int64, err error) {
	const gofunc, findfunctab = 8 * 40, 8 * 19 // places in runtime.moduledata
	// In memory as the runtime finds it: zeros are in no segment, and a segment
	// may end or begin within moduledata.
	var size int64
	for _, s := range segments {
		size = max(size, s.end())
	}
	memory := make([]byte, size)
	overlay(segments, 0, size, func(there []byte, offset int64) { copy(memory[offset:], there) })
	address := binary.LittleEndian.AppendUint64(nil, uint64(table))
	for at := bytes.Index(memory, address); at >= 0; {
		from, to = int64(word64(memory[at:], gofunc)), int64(word64(memory[at:], findfunctab))
		const most = 1 << 26
		if table < from && from < to && to-from < most {
			return from, to, nil
		}
		next := bytes.Index(memory[at+1:], address)
		if next < 0 {
			break
		}
		at += 1 + next
	}
	return 0, 0, errTable
}

// overlay hands over what each segment has between two addresses, and how far
// from the first it lies.
func overlay(segments []segment, from, to int64, do func(there []byte, offset int64)) {
	for _, s := range segments {
		if begin, end := max(from, s.address), min(to, s.end()); begin < end {
			do(s.data[begin-s.address:end-s.address], begin-from)
		}
	}
}

// What a function has by place in its code, what it has beside the functions,
// and the kind of those that the compiler makes (internal/abi/symtab.go).
const (
	stackMaps, inlinedFrom          = 1, 2
	inlined, arguments, argumentsIn = 3, 5, 6
	wrapper                         = 23
)

// dropTraces clears what only a trace reads of each function of the table, and
// beside them.
func dropTraces(t, beside []byte) error {
	number := func(i int) int { return int(min(word64(t, 8+8*i), uint64(len(t)))) }
	functions, units, values, entries := number(0), number(4), number(6), number(7)
	if !(units < values && values < entries && functions < (len(t)-entries)/8) {
		return errTable
	}
	needed := make([]bool, entries-values)
	names := namesOf(t[min(number(3), units):units])
	renamed := map[int]bool{}
	kept, dropped := map[uint32]bool{}, map[uint32]int{} // beside the functions; with their lengths
	for i := range functions {
		at := entries + int(word32(t, entries+8*i+4))
		const (
			called, stack, file, line, count, unit, first = 4, 16, 20, 24, 28, 32, 36 // places in runtime._func
			id, besides                                   = 40, 43
			tables                                        = 44
		)
		if at+tables > len(t) {
			return errTable
		}
		names.move(t[at+called:], t[at+id] == wrapper)
		drop := func(place int, none uint32) { binary.LittleEndian.PutUint32(t[at+place:], none) }
		own := []uint32{word32(t, at+stack)}
		byPlace := int(min(word32(t, at+count), 64))
		others := tables + 4*byPlace
		if at+others+4*int(t[at+besides]) > len(t) {
			return errTable
		}
		inlinedAt := 0
		if byPlace > inlinedFrom {
			inlinedAt = int(word32(t, at+tables+4*inlinedFrom))
		}
		for k := range byPlace {
			if k == stackMaps || k == inlinedFrom && t[at+id] == wrapper {
				own = append(own, word32(t, at+tables+4*k))
				continue
			}
			drop(tables+4*k, 0)
		}
		for _, from := range own {
			if err := mark(needed, t[values:entries], int(from)); err != nil {
				return err
			}
		}
		for k := range int(t[at+besides]) {
			place := others + 4*k
			from, least := word32(t, at+place), 0
			const size, calledIn = 16, 4 // of runtime.inlinedCall, and a place in it
			length := 0
			if k == inlined {
				length = size * (1 + highest(t[values:entries], inlinedAt))
			}
			switch {
			case k == inlined && t[at+id] != wrapper:
				least = length
			case k == inlined:
				kept[from] = true
				for call := int(from); call < int(from)+length && call+size <= len(beside); call += size {
					if !renamed[call] {
						names.move(beside[call+calledIn:], false)
						renamed[call] = true
					}
				}
				continue
			case k == arguments && int(from) < len(beside):
				least = 1 + bytes.IndexByte(beside[from:], 255)
			case k != argumentsIn:
				kept[from] = true
				continue
			}
			drop(place, ^uint32(0))
			dropped[from] = max(dropped[from], least)
		}
		for _, place := range []int{file, line, unit, first} {
			drop(place, 0)
		}
	}
	names.write()
	clear(t[units:values]) // the names of files, by unit of compilation
	for i, is := range needed {
		if !is {
			t[values+i] = 0
		}
	}
	clearBeside(beside, kept, dropped)
	return nil
}

// clearBeside clears what no function names any more, as far as the next thing
// that one still names.
func clearBeside(beside []byte, kept map[uint32]bool, dropped map[uint32]int) {
	starts := slices.Sorted(maps.Keys(kept))
	for from, length := range dropped {
		next, still := slices.BinarySearch(starts, from)
		if still || int(from) > len(beside) {
			continue
		}
		end := min(int(from)+length, len(beside))
		if next < len(starts) {
			end = min(end, int(starts[next]))
		}
		clear(beside[from:end])
	}
}

// highest is the highest value in the table that begins at from, -1 for none:
// its steps are written as in mark, each with its sign last.
func highest(values []byte, from int) int {
	value, most := -1, -1
	for at := from; from > 0; {
		step, n := binary.Uvarint(values[min(at, len(values)):])
		if n <= 0 || step == 0 && at > from {
			break
		}
		at += n
		value += int(step>>1) ^ -int(step&1)
		most = max(most, value)
		if _, n = binary.Uvarint(values[min(at, len(values)):]); n <= 0 {
			break
		}
		at += n
	}
	return most
}

// mark marks the table that begins at from: pairs of a step of the value and
// one of the place, until a step of the value is zero which is not the first.
// No table begins at 0.
func mark(needed []bool, values []byte, from int) error {
	if from == 0 {
		return nil
	}
	for at := from; ; {
		for pair := range 2 {
			if at >= len(values) {
				return errTable
			}
			v, n := binary.Uvarint(values[at:])
			if n <= 0 {
				return errTable
			}
			for range n {
				needed[at] = true
				at++
			}
			if pair == 0 && v == 0 && at > from+1 {
				return nil
			}
		}
	}
}

func word32(t []byte, at int) uint32 {
	if at < 0 || at+4 > len(t) {
		return 0
	}
	return binary.LittleEndian.Uint32(t[at:])
}

func word64(t []byte, at int) uint64 {
	if at+8 > len(t) {
		return 0
	}
	return binary.LittleEndian.Uint64(t[at:])
}
