package marinecalc_test

import (
	"bytes"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// A request has two hundred published values computed at the most, of which
// thirty take many draws; one more of either is refused.
func TestChecksOfARequestAreCapped(t *testing.T) {
	const (
		row   = `{"id":"x","check":"rule","table":"threads","pick":"M6x1","expect":{"acrossFlats":"10 mm"},"tolerance":1e-6,"source":"ISO 4014"}`
		drawn = `{"id":"y","check":"count","input":{"counted":0,"most":-1},"expect":{"below":0},"absolute":0.1,"source":"a count is no less than nothing"}`
	)
	list := func(rows, draws int) []byte {
		return []byte(`{"ask":"checks","checks":[` + strings.TrimSuffix(strings.Repeat(row+",", rows)+strings.Repeat(drawn+",", draws), ",") + `]}`)
	}
	for _, c := range []struct {
		rows, draws int
		ok          bool
	}{{200, 0, true}, {201, 0, false}, {1, 30, true}, {1, 31, false}, {0, 0, false}} {
		reply := marinecalc.Call(list(c.rows, c.draws))
		if ok := bytes.HasPrefix(reply, []byte(`{"ok":true`)); ok != c.ok || ok && bytes.Contains(reply, []byte(`"holds":false`)) {
			t.Errorf("%d and %d: %.300s", c.rows, c.draws, reply)
		}
	}
}
