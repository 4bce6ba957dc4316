package lzma

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	reader "github.com/ulikunitz/xz/lzma"
)

// sample is data to pack, of a kind with a name.
type sample struct {
	name string
	data []byte
}

func samples() []sample {
	random := rand.New(rand.NewPCG(3, 4))
	noise := make([]byte, 40_000)
	for i := range noise {
		noise[i] = byte(random.Uint32())
	}
	few := make([]byte, 5000)
	for i := range few {
		few[i] = "aab\x00"[random.IntN(4)]
	}
	var table []byte // records that differ in one byte
	for i := range 3000 {
		table = append(table, 7, 0, 0, byte(i), 0, 0, 0x40, 0)
	}
	var reps []byte // the same distances, again and again, in turn
	for range 2000 {
		distance := []int{400, 900, 1700, 3000}[random.IntN(4)]
		for range 1 + random.IntN(40) {
			if len(reps) < 3000 {
				reps = append(reps, byte(random.Uint32()))
			} else {
				reps = append(reps, reps[len(reps)-distance])
			}
		}
	}
	return []sample{
		{"nothing", nil},
		{"one byte", []byte{7}},
		{"two bytes", []byte{0, 0}},
		{"text", []byte(strings.Repeat("shaft, coupling, gland, ", 100))},
		{"zeros", make([]byte, 100_000)},
		{"noise", noise[:3000]},
		{"few letters", few},
		{"table", table},
		{"last distances", reps},
		{"a stretch", noise[:stretch]},
		{"one more", noise[:stretch+1]},
		{"far away", slices.Concat(noise[:700], make([]byte, 1<<20), noise[:700])},
		{"all lengths", allLengths(noise)},
	}
}

// allLengths repeats pieces of every length that a match can have, and more.
func allLengths(noise []byte) (data []byte) {
	data = append(data, noise[:600]...)
	for length := range maxMatch + 20 {
		data = append(data, noise[600+length])
		data = append(data, noise[:length]...)
	}
	return data
}

// unpacked is what a reader that is not ours makes of packed data.
func unpacked(t *testing.T, packed []byte) []byte {
	t.Helper()
	if nothing := Pack(nil); bytes.Equal(packed, nothing) {
		return nil // this reader wants a token in any case; ours in site/ does not
	}
	r, err := reader.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestPackComesBack(t *testing.T) {
	for _, s := range samples() {
		t.Run(s.name, func(t *testing.T) {
			packed := Pack(s.data)
			if back := unpacked(t, packed); !bytes.Equal(back, s.data) {
				t.Errorf("%d bytes came back as %d others", len(s.data), len(back))
			}
			if most := 32 + len(s.data) + len(s.data)/50; len(packed) > most {
				t.Errorf("%d bytes of %d, want at most %d", len(packed), len(s.data), most)
			}
		})
	}
}

// Its own source packs tighter than with the standard library, by a good deal.
func TestPackIsSmall(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var data []byte
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		data = append(data, text...)
	}
	var theirs bytes.Buffer
	w, err := gzip.NewWriterLevel(&theirs, gzip.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	w.Write(data)
	w.Close()
	if ours := len(Pack(data)); ours > theirs.Len()*95/100 {
		t.Errorf("%d bytes of %d, gzip makes it %d", ours, len(data), theirs.Len())
	}
}

// The page unpacks, in Node, what is packed here: site/site.test.mjs reads the
// packed samples from a file, and this test holds that file to what Pack
// writes. MARINECALC_WRITE=1 writes it anew.
func TestPackedSamplesAreNew(t *testing.T) {
	type packed struct {
		Name   string `json:"name"`
		Packed []byte `json:"packed"`
		Size   int    `json:"size"`
		SHA256 string `json:"sha256"`
	}
	var list []packed
	for _, s := range samples() {
		sum := sha256.Sum256(s.data)
		list = append(list, packed{s.name, Pack(s.data), len(s.data), hex.EncodeToString(sum[:])})
	}
	want, err := json.MarshalIndent(list, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	want = append(want, '\n')
	file := filepath.Join("..", "..", "..", "site", "testdata", "lzma.json")
	if os.Getenv("MARINECALC_WRITE") != "" {
		if err := os.WriteFile(file, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := os.ReadFile(file); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%s is not what is packed today (%v): run this test with MARINECALC_WRITE=1", file, err)
	}
}

func FuzzPack(f *testing.F) {
	for _, s := range samples() {
		if len(s.data) < 10_000 {
			f.Add(s.data, uint16(1))
		}
	}
	f.Add([]byte("abc"), uint16(3000))
	f.Fuzz(func(t *testing.T, data []byte, times uint16) {
		data = bytes.Repeat(data, 1+int(times)%(1+100_000/(1+len(data)))) // across stretches
		if back := unpacked(t, Pack(data)); !bytes.Equal(back, data) {
			t.Errorf("%d bytes came back as %d others", len(data), len(back))
		}
	})
}
