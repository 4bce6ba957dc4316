package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sample"
)

// One instance answers as many calls as asked for, each as it did first, in
// the memory that it had after a tenth of them; every eighth is malformed. A
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
	for _, r := range requests {
		raw, _ := g.mustCall(r)
		first = append(first, raw)
	}
	before := uint32(0)
	for i := range calls {
		raw, err := g.call(requests[i%len(requests)])
		if err != nil {
			t.Fatalf("call %d: %v", i, err)
		}
		if !bytes.Equal(raw, first[i%len(requests)]) {
			t.Fatalf("call %d has another answer", i)
		}
		if i == calls/10 {
			before = g.instance.Memory().Size()
		}
	}
	after := g.instance.Memory().Size()
	t.Logf("%d calls in one instance: %d kB of memory after a tenth of them, %d kB at the end", calls, before>>10, after>>10)
	if after > before+4<<20 { // a few blocks more or less stand between collections
		t.Errorf("memory grew from %d to %d kB", before>>10, after>>10)
	}
}
