package rewrite

import (
	"bytes"
	"encoding/binary"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestNamesAreShortAndOnce(t *testing.T) {
	was := []string{
		"",
		"runtime/debug.SetGCPercent",
		"example.org/line/internal/shaft.(*Beam).whirl.func1",
		"sort.keys[example.org/line.Mount,int]",
		"sort.keys[example.org/line.Bolt,int]",
		"example.org/line/cmp.by[go.shape.struct { example.org/line.X int }].func2",
		"encoding/json.(*Decoder).Decode",
		"example.org/never/called.Here",
	}
	var table []byte
	var calls []uint32
	for _, name := range was {
		calls = append(calls, uint32(len(table)))
		table = append(append(table, name...), 0)
	}
	n := namesOf(table)
	var got []string
	for i, from := range calls[:7] {
		place := binary.LittleEndian.AppendUint32(nil, from)
		n.move(place, i == 1)
		at := binary.LittleEndian.Uint32(place)
		got = append(got, string(n.after[at:][:bytes.IndexByte(n.after[at:], 0)]))
	}
	want := []string{"", "runtime/debug.SetGCPercent", "shaft.(*Beam).whirl.func1", "", "", "cmp.by[...].func2", ""}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("names (-want +got):\n%s", diff)
	}
	n.write()
	const whole = "\x00runtime/debug.SetGCPercent\x00shaft.(*Beam).whirl.func1\x00cmp.by[...].func2\x00"
	if got := string(table[:len(whole)]); got != whole {
		t.Errorf("the table begins with %q", got)
	}
	for i, b := range table[len(whole):] {
		if b != 0 {
			t.Fatalf("%q is left at %d", b, i)
		}
	}
}
