package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

func TestLinesAreAnsweredInOrder(t *testing.T) {
	var in strings.Builder
	want := []string{}
	for i := range 60 {
		request := fmt.Sprintf(`{"ask":"run","calculation":"shaft-torque","noRanges":true,"input":{"enginePower":"%d kW","engineSpeed":"3000 rpm","gearRatioAhead":2}}`, 10+i)
		switch {
		case i%20 == 7:
			request = `{"ask":"run",`
		case i%20 == 13:
			in.WriteString("\r\n  \n")
		}
		in.WriteString(request + "\n")
		want = append(want, string(marinecalc.Call([]byte(request))))
	}
	text := strings.TrimSuffix(in.String(), "\n") // the last line may end without
	for _, atOnce := range []string{"1", "7"} {
		s := say(text, "lines", "--at-once", atOnce)
		if s.out != strings.Join(want, "\n")+"\n" || s.code != exitBad {
			t.Fatalf("at once %s: exit code %d, and other replies than one by one", atOnce, s.code)
		}
		if strings.Count(s.errs, "\n") != 3 || !strings.HasPrefix(s.errs, "line 8: ") || !strings.Contains(s.errs, "line 30: ") {
			t.Errorf("told of: %s", s.errs)
		}
	}
	if s := say("", "lines", file(t, "requests", want[0][:0]+`{"ask":"contents"}`)); s.code != exitDone || !strings.HasPrefix(s.out, `{"ok":true`) || s.errs != "" {
		t.Errorf("from a file: %v", s)
	}
	for _, args := range [][]string{{"lines", "a", "b"}, {"lines", "--at-once", "0"}, {"lines", "--at-onse", "1"}} {
		if s := say("", args...); s.code != exitBad || s.errs == "" {
			t.Errorf("%q: %v", args, s)
		}
	}
	if s := say("", "lines", "nowhere"); s.code != exitFile {
		t.Error(s)
	}
}

// endless gives the same line so many times.
type endless struct {
	line []byte
	left int
	rest []byte
}

func (e *endless) Read(p []byte) (int, error) {
	if len(e.rest) == 0 {
		if e.left == 0 {
			return 0, io.EOF
		}
		e.left--
		e.rest = e.line
	}
	n := copy(p, e.rest)
	e.rest = e.rest[n:]
	return n, nil
}

// A line that is too long is refused without being held, and what is held does
// not grow with the lines.
func TestLinesHoldNoMoreThanTheyWorkOn(t *testing.T) {
	var errs bytes.Buffer
	long := append(bytes.Repeat([]byte("x"), longestLine+1), '\n')
	in := io.MultiReader(bytes.NewReader(long), strings.NewReader(`{"ask":"contents"}`))
	var out bytes.Buffer
	if code := run([]string{"lines"}, in, &out, &errs); code != exitBad || !strings.Contains(errs.String(), "line 1: ") {
		t.Fatalf("exit code %d, %s", code, errs.String())
	}
	replies := strings.Split(out.String(), "\n")
	if len(replies) != 3 || !json.Valid([]byte(replies[0])) || !strings.HasPrefix(replies[1], `{"ok":true`) {
		t.Errorf("replies: %.200q", replies)
	}
	held := func(n int) uint64 {
		code := run([]string{"lines", "--at-once", "4"}, &endless{line: []byte(`{"ask":"quantity","quantity":"length","text":"1/4 in"}` + "\n"), left: n}, io.Discard, &errs)
		if code == exitFile {
			t.Fatal(errs.String())
		}
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapSys
	}
	few := held(2000)
	if many := held(40000); many > few+(24<<20) {
		t.Errorf("%d bytes of heap for 2000 lines, %d for twenty times as many", few, many)
	}
}

func BenchmarkLines(b *testing.B) {
	line := []byte(`{"ask":"run","calculation":"bolt-preload","noRanges":true,"input":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled"}}` + "\n")
	if code := run([]string{"lines"}, &endless{line: line, left: b.N}, io.Discard, io.Discard); code != exitDone {
		b.Fatal(code)
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}
