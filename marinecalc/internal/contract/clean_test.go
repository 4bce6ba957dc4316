package contract

import "testing"

// Ends of lines as either system writes them are text; a carriage return by
// itself would be obeyed by a terminal.
func TestUnclean(t *testing.T) {
	for text, want := range map[string]rune{"Tern": 0, "a\tb\nc\r\nd": 0, "\rern": '\r', "a\r": '\r', "a\r\r\nb": '\r', "a\x1b[2J": 0x1b, "a\u202eb": 0x202e, "a\u0085b": 0x85} {
		if r, is := Unclean(text); r != want || is != (want != 0) {
			t.Errorf("%q: %U %v, want %U", text, r, is, want)
		}
	}
}
