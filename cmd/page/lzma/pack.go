// Package lzma packs data in the .lzma format (LZMA specification by I. Pavlov,
// public domain); site/lzma.js unpacks it. It takes a third less room than
// DEFLATE.
//
// The data is cut into tokens, and each token is told by a few bits. A range
// coder writes a bit that was likely in a fraction of a bit.
//
//	finder.go  where data was seen before
//	price.go   what a token costs
//	ways.go    the ways to a place
//	parse.go   the cheapest tokens
//	token.go   the bits of a token
//	model.go   the probabilities of these bits
//	range.go   the range coder
//
// The functions where the time goes are left out of race detection, which
// makes them ten times slower. They work on what one goroutine has alone; the
// only thing that goes to another is a finished list of matches.
package lzma

import (
	"encoding/binary"
	"math/bits"
)

// Pack packs data. It takes its time: some 2 µs a byte.
func Pack(data []byte) []byte {
	const properties = (positionBits*5+0)*9 + literalBits
	window := 1 << bits.Len(uint(max(len(data), 4096)-1)) // all of the data, in one of the sizes that readers take
	head := []byte{properties}
	head = binary.LittleEndian.AppendUint32(head, uint32(window))
	head = binary.LittleEndian.AppendUint64(head, uint64(len(data)))

	w := &tokenWriter{rangeEncoder: rangeEncoder{bytes: head, width: 1<<32 - 1}, model: newModel(), past: nothingYet, data: data}
	parse(w)
	w.finish()
	return w.bytes
}
