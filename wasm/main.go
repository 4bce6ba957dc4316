//go:build wasip1

// Command wasm is the calculator as one WebAssembly reactor for WASI preview 1:
//
//	GOOS=wasip1 GOARCH=wasm go build -buildmode=c-shared -o marinecalc.wasm ./wasm
//
// (build.flags lists the flags that the page is built with).
//
// A host calls _initialize once, then for each request:
//
//	p = alloc(n)           space for n bytes of request; 0 when n is 0 or above the cap,
//	                       or when too much was not released
//	(write the request, UTF-8 JSON, at p)
//	r = call(p, n)         reply at r>>32, r&0xffffffff bytes long
//	(copy the reply)
//	release(r>>32); release(p)
//
// Memory may have grown, and so moved in the host's eyes, after any of these.
// After a trap the instance must be dropped and a new one made.
package main

import (
	"fmt"
	goruntime "runtime"
	"runtime/debug"
	"unsafe"

	"example.org/driveline/marinecalc"
)

// lent keeps every buffer whose address the host knows alive until release.
var lent = map[uint32][]byte{}

// mostLent is how many bytes a host may hold at once, requests and replies: one
// that gives nothing back is refused before memory runs out.
const mostLent = 3 * largest

var lentBytes int

// large is the length of a request, in bytes, that needs the memory free.
const large = 256 << 10

// A host gives 256 MiB: the collector works harder before that is reached
// than let a large request trap.
func init() { debug.SetMemoryLimit(160 << 20) }

func main() {} // never called: a reactor has no start

//go:wasmexport version
func version() uint32 { return contract }

//go:wasmexport alloc
func alloc(size uint32) uint32 {
	if size == 0 || size > largest || lentBytes+int(size) > mostLent {
		return 0
	}
	return lend(make([]byte, size))
}

//go:wasmexport release
func release(ptr uint32) {
	lentBytes -= len(lent[ptr])
	delete(lent, ptr)
}

//go:wasmexport call
func call(ptr, size uint32) uint64 {
	request, ok := lent[ptr]
	if !ok || uint64(size) > uint64(len(request)) {
		return handOver(refusal("the request does not lie in memory given by alloc"))
	}
	if size > large {
		goruntime.GC() // what is left of the last request makes way
	}
	reply := handOver(marinecalc.Call(request[:size])) // which turns a panic into a reply
	tidy()
	return reply
}

// A reactor has no time of its own: Go's collector works beside the calls, and
// on a busy machine it has been seen to fall behind over thousands of them,
// until memory ran out. So between calls it is run to its end when the heap
// has grown large, which it seldom does.
const (
	largeHeap = 64 << 20 // bytes
	rarely    = 8        // calls from one look at the heap to the next
)

var calls int

func tidy() {
	if calls++; calls%rarely != 0 {
		return
	}
	var m goruntime.MemStats
	goruntime.ReadMemStats(&m)
	if m.HeapAlloc > largeHeap {
		goruntime.GC()
	}
}

func handOver(reply []byte) uint64 {
	if len(reply) == 0 {
		reply = refusal("the calculator gave no reply")
	}
	return uint64(lend(reply))<<32 | uint64(len(reply))
}

func lend(b []byte) uint32 {
	ptr := uint32(uintptr(unsafe.Pointer(unsafe.SliceData(b))))
	lent[ptr] = b
	lentBytes += len(b)
	return ptr
}

// refusal is a reply with one problem that belongs to no input.
func refusal(what string) []byte {
	return fmt.Appendf(nil, `{"ok":false,"problems":[{"where":"","what":%q,"allowed":"","hint":""}]}`, printable(what))
}

// printable keeps what %q would write otherwise than JSON does out of the text.
func printable(s string) string {
	b := []byte(s)
	for i, c := range b {
		if c < ' ' || c > '~' {
			b[i] = ' '
		}
	}
	return string(b)
}
