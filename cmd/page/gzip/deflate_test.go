package gzip

import (
	"bytes"
	"compress/gzip"
	"io"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// The standard library reads back whatever Pack writes, and would not have
// written much less.
func TestPackedComesBack(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	noise := make([]byte, 2*sliceSize)
	for i := range noise {
		noise[i] = byte(random.Uint32())
	}
	few := make([]byte, 150_000)
	for i := range few {
		few[i] = "aab\x00"[random.IntN(4)]
	}
	steep := make([]byte, 0, 200_000) // counts like Fibonacci's make the longest codes
	for i, n := 0, 1; len(steep) < 200_000; i, n = i+1, min(n+n/2+1, 40_000) {
		steep = append(steep, bytes.Repeat([]byte{byte(i)}, n%257+1)...)
	}
	for name, data := range map[string][]byte{
		"nothing":        {},
		"one byte":       {7},
		"one block":      []byte(strings.Repeat("shaft, coupling, gland, ", 100)),
		"zeros":          make([]byte, 300_000),
		"of two kinds":   slices.Concat(few, []byte(strings.Repeat("shaft, coupling, gland, ", 3000)), noise[:70_000], few),
		"noise":          noise,
		"few letters":    few,
		"steep":          steep,
		"block's edge":   noise[:sliceSize],
		"one more":       noise[:sliceSize+1],
		"far repetition": append(append(bytes.Clone(noise[:window]), noise[:window]...), noise[:100]...),
	} {
		small := Pack(data)
		z, err := gzip.NewReader(bytes.NewReader(small))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		back, err := io.ReadAll(z)
		if err != nil || !bytes.Equal(back, data) {
			t.Errorf("%s: %d bytes came back as %d, %v", name, len(data), len(back), err)
		}
		var theirs bytes.Buffer
		w, _ := gzip.NewWriterLevel(&theirs, gzip.BestCompression)
		w.Write(data)
		w.Close()
		if len(small) > theirs.Len()+theirs.Len()/500+200 { // space for the codes of more blocks
			t.Errorf("%s: %d bytes, the standard library needs %d", name, len(small), theirs.Len())
		}
	}
}

func TestCodesFitTheirLimit(t *testing.T) {
	counts := make([]int, 40)
	a, b := 1, 1
	for i := range counts { // Fibonacci numbers make the deepest tree
		counts[i] = a
		a, b = b, a+b
	}
	for _, most := range []int{7, 15} {
		lengths := codeLengths(counts, most)
		left := 1 << most
		for _, l := range lengths {
			if l < 1 || l > most {
				t.Fatalf("at most %d: a code of %d bits", most, l)
			}
			left -= 1 << (most - l)
		}
		if left != 0 {
			t.Errorf("at most %d: the code is not whole, %d left (Kraft)", most, left)
		}
	}
}

// What is of two kinds gets blocks of its own for each: each costs as much as it
// does by itself, and a little to tell the codes.
func TestBlocksGoByWhatIsInThem(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 7))
	one, two := make([]byte, 60_000), make([]byte, 60_000)
	for i := range one {
		one[i], two[i] = byte('a'+random.IntN(4)), byte('w'+random.IntN(4))
	}
	apart := len(Pack(one)) + len(Pack(two))
	if both := len(Pack(slices.Concat(one, two))); both > apart+apart/50 { // with one code for both a third more
		t.Errorf("together %d bytes, apart %d", both, apart)
	}
}
