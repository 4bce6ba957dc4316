//go:build unix

package marinecalc_test

import (
	"fmt"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sample"
)

// What is promised of any request of 1 MiB at the most: processor time and the
// length of the reply.
const (
	largestRequest = 1 << 20
	largestReply   = 2 << 20
	longestAnswer  = 2 * time.Second
)

// spent is the processor time of this process so far.
func spent() time.Duration {
	var u syscall.Rusage
	_ = syscall.Getrusage(syscall.RUSAGE_SELF, &u) // it knows of itself
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

func holdBounds(t *testing.T, name string, request []byte) {
	t.Helper()
	if len(request) > largestRequest {
		t.Fatalf("%s: %d bytes", name, len(request))
	}
	before := spent()
	reply := marinecalc.Call(request)
	if took := spent() - before; took > longestAnswer && !underRace {
		t.Errorf("%s took %v: %.300s", name, took, reply)
	}
	if len(reply) > largestReply {
		t.Errorf("%s: the reply to %d bytes has %d: %.300s", name, len(request), len(reply), reply)
	}
}

// Requests that are small, and whose replies were once large or late.
func TestSmallRequestsHaveSmallReplies(t *testing.T) {
	alone(t)
	list := func(entry string, n int) string { return "[" + strings.Repeat(entry+",", n-1) + entry + "]" }
	names := make([]string, 80000)
	for i := range names {
		names[i] = fmt.Sprintf(`"k%d":0`, i)
	}
	for name, request := range map[string]string{
		"makers' figures": `{"ask":"survey","boat":{"name":"x","makersFigures":` + list("{}", 100000) + `}}`,
		"sections":        `{"ask":"run","calculation":"shaft-whirl","input":{"sections":` + list("{}", 100000) + `}}`,
		"numbers":         `{"ask":"survey","boat":{"name":"x","readings":` + list("0", 300000) + `}}`,
		"unknown names":   `{"ask":"run","calculation":"gland-heat","input":{` + strings.Join(names, ",") + `}}`,
		"of a request":    `{"ask":"contents",` + strings.Join(names, ",") + `}`,
		"of a reading":    `{"ask":"log","boat":{"name":"x"},"reading":{` + strings.Join(names, ",") + `}}`,
		"rows":            `{"ask":"rules","overlays":[{"title":"Yard","limits":` + list("{}", 100000) + `}]}`,
		"readings":        `{"ask":"survey","boat":{"name":"x","readings":` + list("{}", 100000) + `}}`,
		"an ask":          `{"ask":"` + strings.Repeat("<", 1<<20-20) + `"}`,
		"a word":          `{"ask":"find","text":"` + strings.Repeat("x", 1<<20-40) + `"}`,
		"steps":           `{"ask":"procedure","remedies":["repack-gland"],"done":` + list(`"x"`, 200000) + `}`,
		"a boat's note":   `{"ask":"log","boat":{"name":"x","song":"` + strings.Repeat("<", 1<<20-200) + `"},"reading":{"reading":"dripRate","value":"7 drips/min","date":"2026-06-01"}}`,
	} {
		holdBounds(t, name, []byte(request))
	}
}

// Trials are capped by what they cost: as many as allowed take less than two
// seconds, one more is refused, for a boat at half of that.
func TestTrialsAreCappedByTheirWork(t *testing.T) {
	boat := testboat.File(t, "testdata", "boats", "kittiwake.json")
	for _, c := range []struct{ members, at string }{
		{`"ask":"run","calculation":"shaft-torque","input":{"enginePower":"20 kW","engineSpeed":"2400 rpm","gearRatioAhead":2},"trials":65537`, "/trials"},
		{`"ask":"survey","boat":{"name":"x"},"trials":32769`, "/trials"}, {`"ask":"procedure","remedies":["repack-gland"],"boat":{"name":"x"},"trials":32769`, "/trials"},
		{`"ask":"run","calculation":"shaft-torque","input":{"enginePower":"20 kW","engineSpeed":"2400 rpm","gearRatioAhead":2},"trials":65536`, ""},
		{`"ask":"survey","boat":{"name":"x"},"trials":32768`, ""},
	} {
		reply := string(marinecalc.Call([]byte("{" + c.members + "}")))
		if refused := strings.Contains(reply, `"where":"`+c.at+`"`) && strings.Contains(reply, `"too-large"`); refused != (c.at != "") || !refused && !strings.HasPrefix(reply, `{"ok":true`) {
			t.Errorf("%s: %.300s", c.members, reply)
		}
	}
	if !long("MARINECALC_HOSTILE") {
		return
	}
	holdBounds(t, "whirl", []byte(`{"ask":"run","calculation":"shaft-whirl","trials":65536,"boat":`+string(boat)+`}`))
	holdBounds(t, "a boat", []byte(`{"ask":"survey","trials":32768,"boat":`+string(boat)+`}`))
	holdBounds(t, "two states", []byte(`{"ask":"compare","before":"2025-10-04","after":"2026-06-20","trials":16384,"boat":`+string(boat)+`}`))
}

func long(name string) bool { return os.Getenv(name) != "" }

// Two hundred of what can be made of sound requests by putting something
// long at one of their places, spread evenly over all there are. A long check.
func TestHostileRequestsHaveSmallReplies(t *testing.T) {
	if !long("MARINECALC_HOSTILE") {
		t.Skip("a long check: MARINECALC_HOSTILE=1")
	}
	boat := testboat.File(t, "testdata", "boats", "kittiwake.json")
	var ids []string
	for _, e := range marinecalc.Calculations() {
		ids = append(ids, e.ID)
	}
	made := 0
	for name, request := range sample.Spread(sample.Requests(boat, ids), largestRequest, 200) {
		made++
		holdBounds(t, name, request)
	}
	if made < 100 {
		t.Errorf("only %d were made", made)
	}
}
