package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strconv"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sample"
)

// slow is from when on a request is asked in one round of allEvery only: what
// enumerates causes and days takes nearly all of the time otherwise.
const (
	slow     = 4 * time.Millisecond
	allEvery = 20
)

func every(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

// One instance answers as many calls as asked for, each as it did first, in
// the memory that it had after a tenth of them; malformed ones are among them. A
// long check.
func TestManyCallsInOneInstance(t *testing.T) {
	calls, err := strconv.Atoi(os.Getenv("MARINECALC_CALLS"))
	if err != nil || calls < 1000 {
		t.Skip("set MARINECALC_CALLS=1000000 to call as often")
	}
	g := newGuest(t)
	var requests, first [][]byte
	for i, entry := range marinecalc.Calculations() {
		input, err := sample.Typed(entry.ID)
		if err != nil {
			t.Fatal(err)
		}
		text, err := json.Marshal(input)
		if err != nil {
			t.Fatal(err)
		}
		requests = append(requests, fmt.Appendf(nil, `{"ask":"run","calculation":%q,"noRanges":true,"input":%s}`, entry.ID, text))
		if i%7 == 0 {
			requests = append(requests, fmt.Appendf(nil, `{"ask":"run","calculation":%q,"input":{"none":[`, entry.ID))
		}
	}
	var quick []int // requests of the rounds, but for one round of many with all of them
	for i, r := range requests {
		raw, _ := g.mustCall(r)
		first = append(first, raw)
		began := time.Now()
		g.mustCall(r)
		if time.Since(began) < slow {
			quick = append(quick, i)
		}
	}
	before, asked, round, left := uint32(0), make([]int, len(requests)), 0, []int(nil)
	for i := range calls {
		if len(left) == 0 {
			if left = quick; round%allEvery == 0 || len(quick) == 0 {
				left = every(len(requests))
			}
			round++
		}
		ask := left[0]
		left = left[1:]
		asked[ask]++
		raw, err := g.call(requests[ask])
		if err != nil {
			t.Fatalf("call %d: %v", i, err)
		}
		if !bytes.Equal(raw, first[ask]) {
			t.Fatalf("call %d has another answer", i)
		}
		if i == calls/10 {
			before = g.instance.Memory().Size()
		}
	}
	after := g.instance.Memory().Size()
	t.Logf("%d calls of %d requests in one instance, %d times the least asked and %d the most: %d kB of memory after a tenth of them, %d kB at the end",
		calls, len(requests), slices.Min(asked), slices.Max(asked), before>>10, after>>10)
	if after > before+4<<20 { // a few blocks more or less stand between collections
		t.Errorf("memory grew from %d to %d kB", before>>10, after>>10)
	}
}
