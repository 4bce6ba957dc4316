package letters

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"
)

// decode is site/kit/letters.js in Go.
func decode(text string, size int) []byte {
	var data []byte
	var bits, held uint
	for _, c := range text {
		n := uint(c) - 1
		if c > surrogates {
			n -= surrogateCount
		}
		if c > '<' {
			n--
		}
		if c > '\r' {
			n--
		}
		if n < 2*long {
			bits |= (n>>1 | n&1<<15) << held
			held += 16
		} else {
			bits |= (n - long) << held
			held += 15
		}
		for ; held >= 8; held -= 8 {
			data = append(data, byte(bits))
			bits >>= 8
		}
	}
	return data[:size]
}

// Every number has a character of its own, and none of them is one that the
// parser of HTML changes or ends the element at.
func TestEveryNumberHasItsCharacter(t *testing.T) {
	seen := map[rune]bool{}
	for n := range uint(count) {
		c := character(n)
		if c > 0xffff || seen[c] || utf16.IsSurrogate(c) || strings.ContainsRune("\x00\r<", c) {
			t.Fatalf("number %d is %U", n, c)
		}
		seen[c] = true
	}
	if character(count-1) != 0xffff {
		t.Errorf("the last one is %U", character(count-1))
	}
}

// A page comes back from its file as it was, and what is no such file is
// refused.
func TestPageInItsFile(t *testing.T) {
	for _, page := range []string{"", "<p>¼ flat</p>", Encode([]byte{0, 255, 254, 13, 60})} {
		if got, err := Page(File(page)); err != nil || got != page {
			t.Errorf("%q came back as %q (%v)", page, got, err)
		}
	}
	for _, wrong := range [][]byte{nil, []byte("<!doctype html>"), append(File("a"), 'b'), File("a")[2:]} {
		if _, err := Page(wrong); err == nil {
			t.Errorf("%q is taken for a page", wrong)
		}
	}
}

func TestLettersCarryEveryByte(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	check := func(data []byte) {
		t.Helper()
		text := Encode(data)
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\x00\r<") {
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
	if ratio := float64(len(File(Encode(data)))) / float64(len(data)); ratio > 1.0045 {
		t.Errorf("%.4f bytes of file for a byte of data, want 1.004", ratio)
	}
}
