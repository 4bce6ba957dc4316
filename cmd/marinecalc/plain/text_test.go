package plain

import (
	"strings"
	"testing"
)

// A control character that came in with a name does nothing to a terminal.
func TestTameTakesWhatATerminalObeys(t *testing.T) {
	var out strings.Builder
	if _, err := (Tame{&out}).Write([]byte("Tern\x1b[2J\u202e é\n")); err != nil || out.String() != "Tern?[2J? é\n" {
		t.Errorf("%q, %v", out.String(), err)
	}
}

// Lines break between words; one that is longer than a line stays whole.
func TestWrappedBreaksBetweenWords(t *testing.T) {
	defer func(was int) { Width = was }(Width)
	Width = 12
	if got, want := Wrapped("  ", "mounts and a gland of unusual length"), "  mounts and\n  a gland of\n  unusual\n  length"; got != want {
		t.Errorf("%q", got)
	}
	if got := Wrapped("", "3/8-24×1-1/4 nut"); got != "3/8-24×1-1/4\nnut" {
		t.Errorf("%q", got)
	}
}
