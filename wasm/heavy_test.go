package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sample"
)

// What a text of the greatest weight becomes fits into the memory that a host
// gives, whatever its shape; one value more is refused, and so is the same many
// times over.
func TestTheHeaviestTextsFit(t *testing.T) {
	alone(t)
	names := func(n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, `"k%d":0,`, i)
		}
		return `{` + b.String() + `"z":0}`
	}
	list := func(entry string, n int) string { return "[" + strings.Repeat(entry+",", n) + entry + "]" }
	const most = 1_000_000 // what a text weighs at the most, and 400 names a thousand; contract/limits.go
	for name, shape := range map[string]func(n int) string{
		"numbers":       func(n int) string { return list("0", n) },
		"long numbers":  func(n int) string { return list("1234567890.12345678", n) },
		"texts":         func(n int) string { return list(`"abcdefghijklmn"`, n) },
		"empty lists":   func(n int) string { return list("[]", n/2) },
		"empty objects": func(n int) string { return list("{}", n/6) },
		"objects":       func(n int) string { return list(`{"a":0}`, n/6) },
		"wider objects": func(n int) string { return list(`{"a":0,"b":0,"c":0,"d":0,"e":0,"f":0,"g":0,"h":0,"i":0}`, n/14) },
		"names":         func(n int) string { return names(n * 2 / 5) },
	} {
		t.Run(name, func(t *testing.T) {
			g := newGuest(t)
			for _, n := range []int{most - 100, most + 1000, 4 * most} {
				for _, before := range []string{`{"ask":"run","calculation":"bolt-preload","input":`, `{"ask":"run","calculation":"coupling-alignment","input":{"readings":`,
					`{"ask":"boat","boat":`, `{"ask":"survey","boat":{"name":"x","readings":`} {
					text := before + shape(n) + strings.Repeat("}", strings.Count(before, "{"))
					if len(text) > marinecalc.MaxBytes {
						continue
					}
					if raw, r := g.mustCall([]byte(text)); r.OK || len(r.Problems) == 0 || len(raw) > 64<<10 {
						t.Fatalf("%d: %s: want problems, got %.300s", n, before, raw)
					}
				}
			}
		})
	}
}

// A hundred of what can be made of sound requests by putting something long at
// one of their places trap in no module of 256 MiB. A long check.
func TestHostileRequestsDoNotTrap(t *testing.T) {
	if os.Getenv("MARINECALC_HOSTILE") == "" {
		t.Skip("a long check: MARINECALC_HOSTILE=1")
	}
	boat, err := os.ReadFile("../testdata/boats/kittiwake.json")
	if err != nil {
		t.Fatal(err)
	}
	var ids []string
	for _, e := range marinecalc.Calculations() {
		ids = append(ids, e.ID)
	}
	g := newGuest(t)
	made := 0
	for name, request := range sample.Spread(sample.Requests(boat, ids), 1<<20, 150) {
		made++
		raw, err := g.call(request)
		if err != nil {
			t.Errorf("%s: %.2000v", name, err)
		}
		if len(raw) > 2<<20 {
			t.Errorf("%s: %d bytes: %.300s", name, len(raw), raw)
		}
	}
	if made < 100 {
		t.Errorf("only %d were made", made)
	}
}
