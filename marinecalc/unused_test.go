package marinecalc_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// What a boat file holds in vain is told by every way in: a misspelt name would
// vanish otherwise, and the published limit decide in place of the maker's.
func TestWhatIsNotUsedIsTold(t *testing.T) {
	const text = `{"name":"Tern","shaft":{"diamter":"30 mm","owner":1},"readings":[{"date":"2026-05-01","skipper":"A"},{"date":"2026-05-02","skipper":"B"},{"date":"2026-05-03","skipper":"C"}],
		"makersFigures":[{"of":"gland-rise-mesured","value":"20 K","source":{"document":"Manual"}},{"of":"bolt-preload/wrenchSeting","value":"40 N·m","source":{"document":"Manual"}},
		{"of":"gland-rise-measured","value":"20 K","source":{"document":"Manual"}},{"of":"bolt-preload/wrenchSetting","value":"40 N·m","source":{"document":"Manual"}}]}`
	b, err := marinecalc.ReadBoat([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	want := []struct{ where, says string }{
		{"/readings/0/skipper", "and 2 more like it"},
		{"/shaft/diamter", `did you mean "diameter"?`},
		{"/shaft/owner", "allowed: "},
		{"/makersFigures/0/of", `did you mean "gland-rise-measured"?`},
		{"/makersFigures/1/of", `did you mean "bolt-preload/wrenchSetting"?`},
	}
	holds := func(from string, got marinecalc.Problems, before string) {
		t.Helper()
		if len(got) != len(want) {
			t.Fatalf("%s: %d warnings: %v", from, len(got), got)
		}
		for i, w := range want {
			if got[i].Where != before+w.where || !strings.Contains(got[i].String(), w.says) {
				t.Errorf("%s: %v, want %s: … %s", from, got[i], w.where, w.says)
			}
		}
	}
	e, ctx := new(marinecalc.Engine), context.Background()
	holds("Unused", e.Unused(b, marinecalc.Options{}), "")
	o := marinecalc.Options{NoRanges: true}
	s, err := e.Check(ctx, b, o)
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Warnings) != len(want)+2 || !strings.Contains(s.Warnings[len(want)].What, "gland-heat cannot be worked out") {
		t.Fatalf("Check: %v", s.Warnings)
	}
	holds("Check", s.Warnings[:len(want)], "") // and the figures that are right, for sheets that this boat does not allow
	if page := marinecalc.JobSheet(s); !strings.Contains(page, "diamter") || !strings.Contains(page, "gland-rise-mesured") {
		t.Error("the job sheet does not tell")
	}
	c, err := e.Compare(ctx, b, "2026-05-01", "2026-05-03", o)
	if err != nil {
		t.Fatal(err)
	}
	holds("Compare", c.Warnings[:len(want)], "")
	for _, request := range []string{`{"ask":"survey","noRanges":true,"boat":%s}`, `{"ask":"run","calculation":"shaft-torque","input":{},"boat":%s}`} {
		var r struct {
			OK                 bool
			Problems, Warnings marinecalc.Problems
		}
		if err := json.Unmarshal(e.Call(ctx, fmt.Appendf(nil, request, text)), &r); err != nil {
			t.Fatal(err)
		}
		if refused := strings.Contains(request, "run"); r.OK == refused || refused != (len(r.Problems) > 0) {
			t.Errorf("%s: %+v", request, r)
		}
		holds(request, r.Warnings, "/boat")
	}
}

// A maker's figure many times the limit in whose place it stands is told, one
// that is a few times it is not: 70 is 7000 %, and 70 % is meant.
func TestFiguresFarOffAreTold(t *testing.T) {
	for value, told := range map[string]bool{`"70"`: true, `70`: true, `"2000 %"`: true, `"1900 %"`: false, `"70 %"`: false, `0.7`: false, `"5.1 %"`: false, `"5 %"`: true} {
		b, err := marinecalc.ReadBoat([]byte(`{"name":"X","makersFigures":[{"of":"bolt-proof-load","value":` + value + `,"source":{"document":"plate"}}]}`))
		if err != nil {
			t.Fatal(err)
		}
		list := new(marinecalc.Engine).Unused(b, marinecalc.Options{})
		if (len(list) == 1) != told || told && !strings.Contains(list[0].String(), "where 100 % is usual") {
			t.Errorf("%s: %v", value, list)
		}
	}
}

// However much a file holds in vain, one reads of it no more than that.
func TestWarningsAreFew(t *testing.T) {
	var names strings.Builder
	for i := range 2000 {
		fmt.Fprintf(&names, `,"own%04d":1`, i)
	}
	b, err := marinecalc.ReadBoat([]byte(`{"name":"Tern"` + names.String() + `}`))
	if err != nil {
		t.Fatal(err)
	}
	w := b.Warnings()
	if len(w) != 51 || w[0].Where != "/own0000" || w[50].What != "1950 more members are not used" {
		t.Errorf("%d warnings, the last one: %v", len(w), w[len(w)-1])
	}
}
