package boat_test

import (
	"encoding/json"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A section of the boat in a dated reading holds from that day on, member by
// member, and not before it.
func TestDatedSectionsHoldFromTheirDay(t *testing.T) {
	b := testboat.Read(t, `{"name": "X", "gland": {"packing": "flax", "boxBore": "41 mm"}, "symptoms": [{"evidence": "gland-hot", "answer": "yes"}],
		"readings": [
		{"date": "2026-05-01", "gland": {"packing": "ptfe"}, "symptoms": []},
		{"date": "2026-03-01", "gland": {"boxBore": "42 mm", "packing": "graphite"}},
		{"date": "2026-06-01", "dripRate": "5 drips/min"}]}`)
	for _, c := range []struct {
		day, pointer string
		value        any
		where, date  string
	}{
		{"2026-06-01", "/gland/packing", "ptfe", "/boat/readings/0/gland/packing", "2026-05-01"},
		{"2026-06-01", "/gland/boxBore", "42 mm", "/boat/readings/1/gland/boxBore", "2026-03-01"},
		{"2026-04-01", "/gland/packing", "graphite", "/boat/readings/0/gland/packing", "2026-03-01"},
		{"2026-02-01", "/gland/packing", "flax", "/boat/gland/packing", ""},
		{"2026-02-01", "/gland/boxBore", "41 mm", "/boat/gland/boxBore", ""},
	} {
		if v, where, date, ok := b.AsOf(c.day).Find(c.pointer); !ok || v != c.value || where != c.where || date != c.date {
			t.Errorf("%s on %s: %v %s %s", c.pointer, c.day, v, where, date)
		}
	}
	if v, _, _, _ := b.Find("/symptoms"); len(v.([]any)) != 0 {
		t.Errorf("an empty list of symptoms is %v", v)
	}
	if v, _, _, _ := b.AsOf("2026-04-30").Find("/symptoms"); len(v.([]any)) != 1 {
		t.Errorf("before it they are %v", v)
	}
	slip := `{"name":"X","readings":[{"date":"2026-05-01","gland":{"paking":"ptfe"}}]}`
	x, err := marinecalc.ReadBoat([]byte(slip))
	if err != nil {
		t.Fatal(err)
	}
	warnings := x.Warnings()
	if len(warnings) != 1 || warnings[0].Where != "/readings/0/gland/paking" || warnings[0].Hint != `did you mean "packing"?` {
		t.Errorf("a slip in a dated section: %v", warnings)
	}
	if kept, err := json.Marshal(x); err != nil || string(kept) != slip {
		t.Errorf("it is kept as %s (%v)", kept, err)
	}
}

// A sea trial and care of a later day are not there yet.
func TestTrialAndCareOfALaterDay(t *testing.T) {
	b := testboat.Read(t, `{"name":"Tern","seaTrial":{"date":"2026-05-01"},"service":{"done":[{"item":"fluid-change","date":"2026-04-01"},{"item":"gland-hose","date":"2026-05-02"}]}}`)
	for _, c := range []struct {
		day   string
		trial bool
		done  int
	}{{"2026-03-31", false, 0}, {"2026-04-30", false, 1}, {"2026-05-01", true, 1}, {"2026-05-02", true, 2}} {
		then := b.AsOf(c.day)
		_, _, _, trial := then.Find("/seaTrial/date")
		done, _, _, _ := then.Find("/service/done")
		if list, _ := done.([]any); trial != c.trial || len(list) != c.done {
			t.Errorf("on %s: a trial %v, done %v", c.day, trial, done)
		}
	}
	if done, _, _, _ := b.Find("/service/done"); len(done.([]any)) != 2 {
		t.Error("the boat itself was changed")
	}
}
