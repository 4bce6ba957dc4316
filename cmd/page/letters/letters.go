// Package letters writes binary data as text that may stand in a script
// element, and a page with such text in it as a file. site/kit/letters.js reads
// the data back.
//
// The file is UTF-16, little end first, with its byte order mark. Base64 in
// UTF-8 spends a byte of file on 6 bits of data, and no text in UTF-8 carries
// more than 7; two bytes of UTF-16 carry 15.9. The mark goes before what a
// server says of the encoding (HTML Standard, 13.2.3.2, "determining the
// character encoding"; Encoding Standard, "decode"), so that any host will do.
//
// The characters that may stand there are numbered. 15 bits are the number of
// one, and as there are more of them than these, most numbers take a sixteenth
// bit along: a truncated binary code.
package letters

import (
	"bytes"
	"encoding/binary"
	"errors"
	"unicode/utf16"
)

// The characters are those of one UTF-16 unit without NUL and CR, which the
// parser changes, < which could begin an end tag, and the surrogates, which
// mean nothing alone.
const (
	surrogates, surrogateCount = 0xd800, 0x800

	count = 1<<16 - surrogateCount - 3
	long  = count - 1<<15 // numbers of 15 bits below it take a bit along
)

// character is the one of that number.
func character(n uint) rune {
	c := n + 1 // past NUL
	for _, barred := range []struct{ from, many uint }{{'\r', 1}, {'<', 1}, {surrogates, surrogateCount}} {
		if c >= barred.from {
			c += barred.many
		}
	}
	return rune(c)
}

// Encode gives data in letters, lowest bits first, the last letter filled up
// with zeros.
func Encode(data []byte) string {
	text := make([]rune, 0, len(data)*8/15+2)
	var bits uint64
	var held int
	take := func(n int) uint {
		v := uint(bits) & (1<<n - 1)
		bits, held = bits>>n, max(held-n, 0)
		return v
	}
	for len(data) > 0 || held > 0 {
		for ; held <= 16 && len(data) > 0; held += 8 {
			bits |= uint64(data[0]) << held
			data = data[1:]
		}
		if v := take(15); v < long {
			text = append(text, character(v<<1|take(1)))
		} else {
			text = append(text, character(v+long))
		}
	}
	return string(text)
}

// mark is the byte order mark that a file begins with.
const mark = "\ufeff"

// File is a page as it lies on the disk.
func File(page string) []byte {
	var file bytes.Buffer
	_ = binary.Write(&file, binary.LittleEndian, utf16.Encode([]rune(mark+page))) // a buffer takes all
	return file.Bytes()
}

// Page is what a file made by File holds.
func Page(file []byte) (string, error) {
	units := make([]uint16, len(file)/2)
	if _, err := binary.Decode(file, binary.LittleEndian, units); err != nil {
		return "", err
	}
	page, ok := bytes.CutPrefix([]byte(string(utf16.Decode(units))), []byte(mark))
	if !ok || len(file)%2 != 0 {
		return "", errors.New("the page is no UTF-16 with its mark, little end first: build it with go run ./cmd/page")
	}
	return string(page), nil
}
