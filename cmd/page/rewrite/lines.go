package rewrite

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

// Lines takes the names of files and the numbers of lines out of a module whose
// segments are joined. The Go runtime reads them for the trace of a crash
// alone, which then has the names of the functions, and "?:0" in place of a
// line (runtime.funcline1). The zeros left behind pack to nothing.
//
// The table is laid out as in runtime/symtab.go and runtime/runtime2.go
// (pcHeader, _func), written by cmd/link/internal/ld/pcln.go.
func Lines(module []byte) ([]byte, error) {
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
			if at := bytes.Index(segments[i].data, functionTable); at >= 0 {
				found++
				segments[i].data = slices.Clone(segments[i].data)
				if err := dropLines(segments[i].data[at:]); err != nil {
					return nil, err
				}
			}
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

// dropLines has every function of the table without a table of files and of
// lines, and clears what no other table needs.
func dropLines(t []byte) error {
	number := func(i int) int { return int(min(word64(t, 8+8*i), uint64(len(t)))) }
	functions, units, values, entries := number(0), number(4), number(6), number(7)
	if !(units < values && values < entries && functions < (len(t)-entries)/8) {
		return errTable
	}
	needed := make([]bool, entries-values)
	for i := range functions {
		at := entries + int(word32(t, entries+8*i+4))
		const (
			stack, file, line, count = 16, 20, 24, 28 // places in runtime._func
			tables                   = 44
		)
		if at+tables > len(t) {
			return errTable
		}
		own := []uint32{word32(t, at+stack)}
		for k := range int(min(word32(t, at+count), 64)) {
			own = append(own, word32(t, at+tables+4*k))
		}
		for _, from := range own {
			if err := mark(needed, t[values:entries], int(from)); err != nil {
				return err
			}
		}
		clear(t[at+file : at+file+4])
		clear(t[at+line : at+line+4])
	}
	clear(t[units:values]) // the names of files, by unit of compilation
	for i, is := range needed {
		if !is {
			t[values+i] = 0
		}
	}
	return nil
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
