package rewrite

import (
	"bytes"
	"context"
	"encoding/binary"
	"math/rand/v2"
	"testing"

	"github.com/tetratelabs/wazero"
)

// moduleOf is a WebAssembly module of memory and data only.
func moduleOf(segments []segment) []byte {
	section := func(kind byte, body []byte) []byte {
		return append(binary.AppendUvarint([]byte{kind}, uint64(len(body))), body...)
	}
	return bytes.Join([][]byte{
		[]byte("\x00asm\x01\x00\x00\x00"),
		section(5, []byte{1, 0, 2}), // a memory of two pages
		section(7, []byte{1, 1, 'm', 2, 0}),
		section(11, writeSegments(segments)),
		section(0, []byte("\x04note and what else a section of no meaning may hold")),
	}, nil)
}

// memoryOf is what the memory of a module holds at the start.
func memoryOf(t *testing.T, module []byte) []byte {
	t.Helper()
	ctx := context.Background()
	runtime := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfigInterpreter())
	defer runtime.Close(ctx)
	m, err := runtime.Instantiate(ctx, module)
	if err != nil {
		t.Fatal(err)
	}
	memory, _ := m.ExportedMemory("m").Read(0, 2<<16)
	return bytes.Clone(memory)
}

// Joined segments put the same into memory, also where they touch,
// are empty or come in any order.
func TestJoinedSegmentsFillMemoryAlike(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 50 {
		var segments []segment
		at := 0
		for range random.IntN(200) {
			at += random.IntN(100) * random.IntN(3)
			data := make([]byte, random.IntN(40))
			for i := range data {
				data[i] = byte(random.Uint32())
			}
			segments = append(segments, segment{int64(at), data})
			at += len(data)
		}
		random.Shuffle(len(segments), func(i, j int) { segments[i], segments[j] = segments[j], segments[i] })
		module := moduleOf(segments)
		joined, err := Segments(module)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(memoryOf(t, joined), memoryOf(t, module)) {
			t.Fatalf("other memory after joining %v", segments)
		}
	}
}

func TestSegmentsThatLieNearAreJoined(t *testing.T) {
	a, b := []byte("shaft"), []byte("gland")
	for _, c := range []struct {
		at   int64 // of the second
		want int
	}{{5, 1}, {5 + 64, 1}, {5 + 65, 2}} {
		if got, err := joinNear([]segment{{0, a}, {c.at, b}}); err != nil || len(got) != c.want {
			t.Errorf("segments at 0 and %d: %d left, want %d (%v)", c.at, len(got), c.want, err)
		}
	}
	if string(a) != "shaft" || string(b) != "gland" {
		t.Error("joining changed the segments it was given")
	}
}

func TestJoiningRefusesWhatItDoesNotKnow(t *testing.T) {
	module := moduleOf([]segment{{70_000, []byte("packing")}})
	for n := range module {
		if joined, err := Segments(module[:n]); err == nil && !bytes.Equal(joined, module[:n]) {
			t.Errorf("the first %d bytes were joined to something else", n)
		}
	}
	negative := bytes.Replace(module, []byte{0x41, 0xf0, 0xa2, 0x04}, []byte{0x41, 0xf0, 0xa2, 0x44}, 1)
	passive := bytes.Replace(module, []byte{1, active, i32Const}, []byte{1, 1, i32Const}, 1)
	overlapping := moduleOf([]segment{{70_000, []byte("packing")}, {70_006, []byte("gland")}})
	counted := append(bytes.Clone(module), 12, 1, 1)
	for name, m := range map[string][]byte{"a negative address": negative, "a passive segment": passive, "a count of segments": counted, "an overlap": overlapping} {
		if bytes.Equal(m, module) {
			t.Fatalf("%s: the test did not make it", name)
		}
		if _, err := Segments(m); err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}
