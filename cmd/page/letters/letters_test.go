package letters

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"
)

// decode is site/kit/letters.js in Go.
func decode(text string, size int) []byte {
	var data []byte
	var bits, held uint
	take := func(seven rune) {
		bits |= uint(seven) << held
		for held += 7; held >= 8; held -= 8 {
			data = append(data, byte(bits))
			bits >>= 8
		}
	}
	for _, c := range text {
		if c < pairs {
			take(c)
		} else {
			take(rune(barred[(c-pairs)>>7]))
			take(c & 127)
		}
	}
	return data[:size]
}

func TestLettersCarryEveryByte(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	check := func(data []byte) {
		t.Helper()
		text := Encode(data)
		if !utf8.ValidString(text) || strings.ContainsAny(text, barred) {
			t.Fatalf("text that may not stand in a script element: %q", text)
		}
		if got := decode(text, len(data)); !bytes.Equal(got, data) {
			t.Fatalf("%d bytes: %x came back as %x", len(data), data, got)
		}
	}
	for size := range 300 {
		data := make([]byte, size)
		check(data) // nothing but barred characters
		for i := range data {
			data[i] = byte(random.Uint32())
		}
		check(data)
	}
	data := make([]byte, 1<<20)
	for i := range data {
		data[i] = byte(random.Uint32())
	}
	check(data)
	if ratio := float64(len(Encode(data))) / float64(len(data)); ratio > 1.145 {
		t.Errorf("%.3f bytes of text for a byte of data, want 8/7", ratio)
	}
}
