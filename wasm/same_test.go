package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sample"
)

// closeness is how near the guest's numbers come to the native ones. Both run
// the same code; exp and pow differ in the last digits between platforms.
const closeness = 1e-9

// same holds a guest's reply against the native one: the same members, the
// same words, numbers to closeness.
func same(native, guest []byte) error {
	if bytes.Equal(native, guest) {
		return nil
	}
	var a, b any
	if err := json.Unmarshal(native, &a); err != nil {
		return err
	}
	if err := json.Unmarshal(guest, &b); err != nil {
		return err
	}
	return sameValue("", a, b)
}

func sameValue(at string, a, b any) error {
	switch x := a.(type) {
	case map[string]any:
		y, ok := b.(map[string]any)
		if !ok || len(x) != len(y) {
			return fmt.Errorf("%s: %v and %v", at, a, b)
		}
		for k, v := range x {
			if err := sameValue(at+"/"+k, v, y[k]); err != nil {
				return err
			}
		}
	case []any:
		y, ok := b.([]any)
		if !ok || len(x) != len(y) {
			return fmt.Errorf("%s: %v and %v", at, a, b)
		}
		for i, v := range x {
			if err := sameValue(fmt.Sprintf("%s/%d", at, i), v, y[i]); err != nil {
				return err
			}
		}
	case float64:
		y, ok := b.(float64)
		if !ok || math.Abs(x-y) > closeness*math.Max(math.Abs(x), math.Abs(y)) && math.Abs(x-y) > 1e-15 {
			return fmt.Errorf("%s: native %v, guest %v", at, a, b)
		}
	default:
		if a != b {
			return fmt.Errorf("%s: native %v, guest %v", at, a, b)
		}
	}
	return nil
}

func compare(t *testing.T, g *guest, request []byte) (ok bool) {
	t.Helper()
	raw, reply := g.mustCall(request)
	if err := same(marinecalc.Call(request), raw); err != nil {
		t.Errorf("%s\n%v", request, err)
	}
	return reply.OK
}

// Every published value is asked of the guest too, with its ranges, and it
// answers as the native build does, which marinecalc's own tests hold against
// the publication.
func TestPublishedValuesInTheGuest(t *testing.T) {
	alone(t)
	g := newGuest(t)
	files, err := filepath.Glob("../testdata/published/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no published values: %v", err)
	}
	rows := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var topic struct {
			Rows []struct {
				ID, Calculation, Check string
				Input                  json.RawMessage
			}
		}
		if err := json.Unmarshal(text, &topic); err != nil {
			t.Fatal(err)
		}
		for _, row := range topic.Rows {
			if row.Calculation == "" || row.Check != "" {
				continue
			}
			rows++
			request := fmt.Appendf(nil, `{"ask":"run","calculation":%q,"input":%s,"trials":200}`, row.Calculation, row.Input)
			if !compare(t, g, request) {
				t.Errorf("%s: row %s is refused", file, row.ID)
			}
		}
	}
	t.Logf("%d published calculations", rows)
}

// The demo boats give the same survey in both.
func TestBoatsInTheGuest(t *testing.T) {
	alone(t)
	g := newGuest(t)
	files, err := filepath.Glob("../testdata/boats/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no boats: %v", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !compare(t, g, fmt.Appendf(nil, `{"ask":"survey","boat":%s,"trials":4096}`, text)) {
			t.Errorf("%s is refused", file)
		}
	}
}

// Random valid inputs of every calculation, and the refused ones met on the
// way, give the native answer: a thousand each, a hundred under the race
// detector, or as many as MARINECALC_INPUTS says; ten thousand take half an
// hour. CI runs both.
func TestRandomInputsInTheGuest(t *testing.T) {
	inputs := 1000
	if underRace {
		inputs = 100
	}
	if n, err := strconv.Atoi(os.Getenv("MARINECALC_INPUTS")); err == nil {
		inputs = n
	}
	for _, entry := range marinecalc.Calculations() {
		t.Run(entry.ID, func(t *testing.T) {
			t.Parallel()
			source, err := sample.New(entry.ID, 20260411)
			if err != nil {
				t.Fatal(err)
			}
			g, sheets := newGuest(t), 0
			tries := 0
			for ; sheets < inputs && tries < 12*inputs; tries++ {
				input, err := json.Marshal(source.Next())
				if err != nil {
					t.Fatal(err)
				}
				request := fmt.Appendf(nil, `{"ask":"run","calculation":%q,"input":%s,"noRanges":true}`, entry.ID, input)
				if compare(t, g, request) {
					sheets++
				}
				if t.Failed() {
					return
				}
			}
			t.Logf("%d sheets and %d refusals, alike in both", sheets, tries-sheets)
			if sheets < inputs {
				t.Errorf("only %d of %d random inputs were taken", sheets, tries)
			}
		})
	}
}
