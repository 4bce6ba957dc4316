// Package rewrite makes a WebAssembly module that the Go toolchain built
// smaller and quicker, and leaves what it does as it is.
//
// What it gains the module of the page, 10.5 MB and packed 2.13 MB:
//
//   - Jumps: calculations in wazero take about 0.6 of the time, with 4096 trials
//     or none (0.53 to 0.68; bolt preload with trials 0.60 to 0.68), and the
//     packed module is 156 kB smaller (7 %).
//   - Segments: the packed module is 150 kB smaller (7 %; alone, on the module
//     as compiled, 6 %). Unpacked it is 0.8 MB larger, by the zeros.
//   - Traces: the packed module, of 2.80 MB by then, is 0.3 MB smaller (11 %).
//     The trace of a crash names functions, and no lines.
//
// To measure it, and each improvement that Jumps makes, with the module as it
// is now:
//
//	MARINECALC_GAINS=1 go test -timeout 40m -run Gains -v ./cmd/page/rewrite
package rewrite

import (
	"encoding/binary"
	"errors"
)

// mapSections gives the module with the body of each section as change makes it.
func mapSections(module []byte, change func(kind byte, body []byte) ([]byte, error)) ([]byte, error) {
	const head = 8 // magic number and version
	if len(module) < head {
		return nil, errShort
	}
	mapped := module[:head:head]
	for r := (reader{rest: module[head:]}); len(r.rest) > 0; {
		kind := r.byte()
		body := r.bytes(r.number())
		if r.err != nil {
			return nil, r.err
		}
		body, err := change(kind, body)
		if err != nil {
			return nil, err
		}
		mapped = append(mapped, kind)
		mapped = appendSized(mapped, body)
	}
	return mapped, nil
}

func appendSized(to, body []byte) []byte {
	return append(binary.AppendUvarint(to, uint64(len(body))), body...)
}

// reader reads the binary format of WebAssembly. After an error it gives
// zeros.
type reader struct {
	rest []byte
	err  error
}

var errShort = errors.New("the module ends too early")

// done is an error where anything is left.
func (r *reader) done() error {
	if r.err == nil && len(r.rest) > 0 {
		return errors.New("there is more in a section than it counts")
	}
	return r.err
}

func (r *reader) bytes(n uint64) []byte {
	if n > uint64(len(r.rest)) {
		r.fail(errShort)
		return nil
	}
	taken := r.rest[:n]
	r.rest = r.rest[n:]
	return taken
}

func (r *reader) byte() byte {
	if b := r.bytes(1); r.err == nil {
		return b[0]
	}
	return 0
}

// count reads how many things follow, each of at least a byte.
func (r *reader) count() int {
	n := r.number()
	if n > uint64(len(r.rest)) {
		r.fail(errShort)
		return 0
	}
	return int(n)
}

// number reads an unsigned LEB128.
func (r *reader) number() uint64 {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 {
		r.fail(errShort)
		return 0
	}
	r.rest = r.rest[n:]
	return v
}

// signed reads a signed LEB128.
func (r *reader) signed() (v int64) {
	for shift := 0; shift < 64; shift += 7 {
		b := r.byte()
		v |= int64(b&0x7f) << shift
		if b < 0x80 {
			if b&0x40 != 0 && shift+7 < 64 {
				v |= -1 << (shift + 7)
			}
			return v
		}
	}
	return v
}

func (r *reader) fail(err error) { r.rest, r.err = nil, err }

// appendSigned writes a signed LEB128.
func appendSigned(to []byte, v int64) []byte {
	for {
		b := byte(v & 0x7f)
		v >>= 7
		if v == 0 && b&0x40 == 0 || v == -1 && b&0x40 != 0 {
			return append(to, b)
		}
		to = append(to, b|0x80)
	}
}

// locals reads the declarations of a function's locals.
func (r *reader) locals() (declared []byte) {
	from := r.rest
	for range r.count() {
		r.number()
		r.byte()
	}
	return from[:len(from)-len(r.rest)]
}
