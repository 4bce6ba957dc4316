package main

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"
)

const contents = `{"ask":"contents"}`

func TestVersion(t *testing.T) {
	got, err := newGuest(t).export("version")
	if err != nil {
		t.Fatal(err)
	}
	if got != contract {
		t.Errorf("version() = %d, want %d", got, contract)
	}
}

func TestContents(t *testing.T) {
	raw, r := newGuest(t).mustCall([]byte(contents))
	if !r.OK || !bytes.Contains(raw, []byte(`"bolt-preload"`)) {
		t.Errorf("contents: %s", raw)
	}
}

func TestMalformedRequestsGiveProblems(t *testing.T) {
	run := func(input string) string {
		return `{"ask":"run","calculation":"bolt-preload","input":` + input + `}`
	}
	requests := map[string]string{
		"empty":                  ``,
		"blank":                  " \n ",
		"truncated":              `{"ask":"run","calculation":"bolt-pre`,
		"two documents":          contents + contents,
		"trailing comma":         `{"ask":"contents",}`,
		"NaN literal":            run(`{"nominalDiameter":NaN}`),
		"Infinity literal":       run(`{"nominalDiameter":-Infinity}`),
		"huge exponent":          run(`{"nominalDiameter":1e9999999}`),
		"long number":            run(`{"nominalDiameter":` + strings.Repeat("7", 1<<17) + `}`),
		"duplicate key":          `{"ask":"contents","ask":"survey"}`,
		"invalid UTF-8":          "{\"ask\":\"run\",\"calculation\":\"\xff\xfe\",\"input\":{}}",
		"lone surrogate":         run(`{"thread":"\ud800"}`),
		"null":                   `null`,
		"number":                 `42`,
		"text":                   `"contents"`,
		"array":                  `[]`,
		"no ask":                 `{}`,
		"unknown ask":            `{"ask":"sing"}`,
		"ask of wrong type":      `{"ask":7}`,
		"unknown calculation":    `{"ask":"run","calculation":"no-such","input":{}}`,
		"calculation missing":    `{"ask":"run","input":{}}`,
		"input an array":         run(`[]`),
		"input a number":         run(`7`),
		"quantity an object":     run(`{"nominalDiameter":{}}`),
		"boat a text":            `{"ask":"survey","boat":"Petrel"}`,
		"trials negative":        `{"ask":"run","calculation":"bolt-preload","input":{},"trials":-1}`,
		"trials without end":     `{"ask":"run","calculation":"bolt-preload","input":{},"trials":1e15}`,
		"deep arrays":            run(strings.Repeat("[", 100_000) + strings.Repeat("]", 100_000)),
		"deep objects":           run(strings.Repeat(`{"a":`, 100_000) + "1" + strings.Repeat("}", 100_000)),
		"deep and cut off":       strings.Repeat("[", 1<<20),
		"long name":              run(`{"` + strings.Repeat("x", 1<<20) + `":1}`),
		"overlays of wrong type": `{"ask":"run","calculation":"bolt-preload","input":{},"overlays":{"a":1}}`,
	}
	g := newGuest(t)
	for name, request := range requests {
		t.Run(name, func(t *testing.T) {
			g.t = t
			raw, r := g.mustCall([]byte(request))
			if r.OK || len(r.Problems) == 0 {
				t.Fatalf("want problems, got %.300s", raw)
			}
			for _, p := range r.Problems {
				if p.What == "" {
					t.Errorf("a problem that does not say what: %+v", p)
				}
			}
			if len(raw) > 64<<10 {
				t.Errorf("the reply to a bad request is %d bytes long", len(raw))
			}
		})
	}
	g.t = t
	if _, r := g.mustCall([]byte(contents)); !r.OK {
		t.Error("the same instance no longer answers after bad requests")
	}
}

func TestTooLongIsRefused(t *testing.T) {
	g := newGuest(t)
	if _, err := g.try(make([]byte, largest+1)); !errors.Is(err, errTooLong) {
		t.Errorf("one byte too long: %v, want alloc to refuse", err)
	}
	if at, err := g.export("alloc", 0); err != nil || at != 0 {
		t.Errorf("alloc(0) = %d, %v", at, err)
	}
	// The longest that alloc grants is still answered.
	filler := `{"ask":"contents","x":"` + strings.Repeat("y", largest) + `"}`
	g.mustCall([]byte(filler)[:largest])
	if _, r := g.mustCall([]byte(contents)); !r.OK {
		t.Error("no answer after a long request")
	}
}

// A host that releases nothing is refused long before memory runs out, and
// served again once it does.
func TestNothingReleasedIsRefused(t *testing.T) {
	g := newGuest(t)
	var held []uint64
	for range 40 {
		at, err := g.export("alloc", largest/2)
		if err != nil {
			t.Fatal(err)
		}
		if at == 0 {
			break
		}
		held = append(held, at)
	}
	if len(held) != 6 {
		t.Errorf("%d halves of the longest request were granted, want 6", len(held))
	}
	if _, err := g.try([]byte(contents)); !errors.Is(err, errTooLong) {
		t.Errorf("with all lent out: %v, want alloc to refuse", err)
	}
	for range 2 { // the second time for nothing
		for _, at := range held {
			if _, err := g.export("release", at); err != nil {
				t.Fatal(err)
			}
		}
	}
	for range 3 {
		if _, r := g.mustCall([]byte(contents)); !r.OK {
			t.Error("no answer after all was released")
		}
	}
}

// A host may hand over any numbers.
func TestForeignPointers(t *testing.T) {
	g := newGuest(t)
	for _, give := range [][2]uint64{{0, 0}, {0, 10}, {12345, 4}, {1<<32 - 1, 1<<32 - 1}} {
		packed, err := g.export("call", give[0], give[1])
		if err != nil {
			t.Fatal(err)
		}
		said, _ := g.instance.Memory().Read(uint32(packed>>32), uint32(packed))
		if !bytes.Contains(said, []byte(`"ok":false`)) {
			t.Errorf("call%v: %q", give, said)
		}
		if _, err := g.export("release", give[0]); err != nil {
			t.Fatal(err)
		}
	}
	at, _ := g.export("alloc", 8)
	if packed, err := g.export("call", at, 9); err != nil || packed == 0 {
		t.Errorf("call beyond the buffer: %d, %v", packed, err)
	}
}

func TestMemoryGrowsAndComesToRest(t *testing.T) {
	g := newGuest(t)
	before := g.instance.Memory().Size()
	long := []byte(`{"ask":"contents","x":"` + strings.Repeat("y", 4<<20) + `"}`)
	g.mustCall(long)
	grown := g.instance.Memory().Size()
	if grown <= before {
		t.Fatalf("memory did not grow (%d bytes): the test proves nothing", grown)
	}
	var sizes []uint32
	for range 20 {
		g.mustCall(long)
		g.mustCall([]byte(contents))
		sizes = append(sizes, g.instance.Memory().Size())
	}
	if last := slices.Max(sizes); last > 8*grown {
		t.Errorf("memory went from %d to %d bytes in 20 equal rounds: buffers are not let go", grown, last)
	}
}

func TestOneInstanceAGoroutine(t *testing.T) {
	want, _ := newGuest(t).mustCall([]byte(contents))
	var group sync.WaitGroup
	for range 4 {
		g := newGuest(t)
		group.Go(func() {
			for range 20 {
				got, err := g.call([]byte(contents))
				if err != nil || !bytes.Equal(got, want) {
					t.Errorf("%v %.100s", err, got)
					return
				}
			}
		})
	}
	group.Wait()
}

func TestTrapGivesANewInstance(t *testing.T) {
	g := newGuest(t)
	old := g.instance
	old.Close(t.Context()) // every call on a closed instance fails as after a trap
	if _, err := g.call([]byte(contents)); err == nil {
		t.Fatal("a closed instance answered")
	}
	if g.instance == old {
		t.Fatal("the instance was kept")
	}
	if _, r := g.mustCall([]byte(contents)); !r.OK {
		t.Error("the new instance does not answer")
	}
}

func BenchmarkContents(b *testing.B) {
	g := newGuest(b)
	for b.Loop() {
		if _, err := g.call([]byte(contents)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkStart(b *testing.B) {
	for b.Loop() {
		newGuest(b).instance.Close(b.Context())
	}
}
