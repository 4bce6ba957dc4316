// Package letters writes binary data as text that may stand in a script
// element of a UTF-8 page. site/kit/letters.js reads it back.
//
// Base64 spends a byte of file on 6 bits of data; here it carries 7, which
// takes more than 0.4 MB off the page.
//
// Every 7 bits are the ASCII character of that number. The three that HTML
// does not let through (NUL and CR, which the parser changes, and <, which
// could begin an end tag) go together with the 7 bits after them into one
// character of two bytes.
package letters

import (
	"strings"
	"unicode/utf8"
)

// barred are the characters that may not stand in the text.
const barred = "\x00\r<"

// pairs is the first of the characters of two bytes: 128 for each barred one.
const pairs = 0x100

// Encode gives data in letters, 7 bits at a time, lowest bits first, the last
// group filled up with zeros.
func Encode(data []byte) string {
	text := make([]byte, 0, len(data)*8/7+2)
	var bits, held uint
	next := func() byte { return byte(bits & 127) }
	drop := func() { bits, held = bits>>7, held-min(held, 7) }
	for len(data) > 0 || held > 0 {
		for ; held < 14 && len(data) > 0; held += 8 {
			bits |= uint(data[0]) << held
			data = data[1:]
		}
		v := next()
		drop()
		if i := strings.IndexByte(barred, v); i >= 0 {
			text = utf8.AppendRune(text, rune(pairs+i<<7)|rune(next()))
			drop()
		} else {
			text = append(text, v)
		}
	}
	return string(text)
}
