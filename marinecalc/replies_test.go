package marinecalc_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sample"
	"example.org/driveline/schemas"
)

// doorSchemas compiles schemas as a host would: with no knowledge of Go.
type doorSchemas struct{ compiler *jsonschema.Compiler }

func newDoorSchemas(t testing.TB) doorSchemas {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	for _, name := range append(schemas.ReplyNames(), "annotations") {
		text, err := schemas.ReadReply(name)
		if name == "annotations" {
			text, err = schemas.Read(name)
		}
		if err != nil {
			t.Fatal(err)
		}
		if err := c.AddResource(schemas.Base+name+".schema.json", bytes.NewReader(text)); err != nil {
			t.Fatal(err)
		}
	}
	return doorSchemas{c}
}

// refusal is what a schema ("reply", "reply#/$defs/runReply") has against a
// JSON text, or nil.
func (d doorSchemas) refusal(t testing.TB, schema string, text []byte) error {
	t.Helper()
	name, inside, _ := strings.Cut(schema, "#")
	s, err := d.compiler.Compile(schemas.Base + name + ".schema.json#" + inside)
	if err != nil {
		t.Fatal(err)
	}
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.UseNumber()
	var v any
	if err := decoder.Decode(&v); err != nil {
		return err
	}
	if err := s.Validate(v); err != nil {
		return fmt.Errorf("%#v", err)
	}
	return nil
}

// asked puts a request through Call. The request must meet its schema, and
// the reply that of its ask. What it returns tells whether it was answered.
func (d doorSchemas) asked(t testing.TB, members map[string]any) bool {
	t.Helper()
	request, err := json.Marshal(members)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.refusal(t, "request", request); err != nil {
		t.Errorf("%.200s does not meet its schema: %v", request, err)
	}
	reply := marinecalc.Call(request)
	if err := d.refusal(t, "reply", reply); err != nil {
		t.Errorf("the reply to %.200s: %.2000v", request, err)
	}
	ok := bytes.HasPrefix(reply, []byte(`{"ok":true`))
	ask := "refusal"
	if ok {
		ask = replyName(members["ask"].(string))
	}
	if err := d.refusal(t, "reply#/$defs/"+ask, reply); err != nil {
		t.Errorf("the reply to %.200s as %s: %.2000v", request, ask, err)
	}
	return ok
}

// replyName is the definition of the reply to an ask: addReadingsReply is
// that to add-readings.
func replyName(ask string) string {
	parts := strings.Split(ask, "-")
	for i, p := range parts[1:] {
		parts[i+1] = strings.ToUpper(p[:1]) + p[1:]
	}
	return strings.Join(parts, "") + "Reply"
}

// Every reply about the demonstration boats meets the schemas, with ranges and
// without, brief and whole, in every system of units.
func TestRepliesOnBoatsMeetTheirSchemas(t *testing.T) {
	alone(t)
	d := newDoorSchemas(t)
	overlay := json.RawMessage(`{"title": "Yard", "limits": [{"id": "yard-torque", "calculation": "shaft-torque", "on": "shaftTorque", "title": "Yard's limit", "max": "1 kN·m", "source": {"document": "Yard sheet"}, "basis": "maker", "how": "calculate it", "why": "the coupling slips"}]}`)
	for _, b := range goldenBoats {
		text := testboat.File(t, "testdata", "boats", b.name+".json")
		ask := func(ask string, members map[string]any) {
			t.Helper()
			whole := map[string]any{"ask": ask, "boat": json.RawMessage(text)}
			maps.Copy(whole, members)
			if !d.asked(t, whole) {
				t.Errorf("%s: %s is refused", b.name, ask)
			}
		}
		work := map[string]any{"today": b.before, "remedies": []any{
			map[string]any{"remedy": "repack-gland"}, map[string]any{"remedy": "align-coupling"}}}
		for _, how := range []map[string]any{
			{"trials": 256}, {"trials": 256, "brief": true, "units": "us", "seed": 7}, {"noRanges": true, "units": "both"},
			{"trials": 256, "overlays": []any{overlay}},
		} {
			with := func(members map[string]any) map[string]any {
				maps.Copy(members, how)
				return members
			}
			ask("survey", with(map[string]any{}))
			ask("jobsheet", with(map[string]any{}))
			ask("compare", with(map[string]any{"before": b.before, "after": b.after}))
			ask("run", with(map[string]any{"calculation": "work-plan", "input": work}))
			ask("calendar", with(map[string]any{"input": work}))
			ask("csv", with(map[string]any{"calculation": "work-plan", "input": work}))
		}
		for _, ids := range [][]string{{"align-coupling"}, {"replace-gearbox", "replace-mounts"}} {
			ask("procedure", map[string]any{"remedies": ids, "trials": 256})
		}
		ask("procedures", nil)
		ask("line", map[string]any{"date": "2027-06-01"})
		ask("parts", map[string]any{"trials": 256})
		ask("part", map[string]any{"part": "coupling", "date": "2027-06-01", "trials": 256})
		ask("tick", map[string]any{"remedies": []string{"repack-gland"}, "step": "make-safe", "ticked": true, "date": "2027-06-01", "time": "09:30", "note": "dry"})
		ask("boat", nil)
		ask("readings", nil)
		ask("add-readings", map[string]any{"csv": "date,dripRate\n2027-06-01,7 drips/min\n"})
		ask("keep", map[string]any{"calculation": "gland-heat", "date": "2027-06-01", "input": map[string]any{"dripRate": "7 drips/min", "wantedRise": "15 °C"}})
		for _, e := range marinecalc.Calculations() {
			ask("blank", map[string]any{"calculation": e.ID})
			ask("form", map[string]any{"calculation": e.ID})
			ask("fits", map[string]any{"calculation": e.ID})
		}
	}
}

// Every reply that needs no boat meets the schemas: that about each schema's
// own examples, and those to what no calculation takes.
func TestRepliesOnExamplesMeetTheirSchemas(t *testing.T) {
	alone(t)
	d := newDoorSchemas(t)
	answered := 0
	for _, e := range marinecalc.Calculations() {
		if !d.asked(t, map[string]any{"ask": "blank", "calculation": e.ID}) {
			t.Errorf("%s has no form", e.ID)
		}
		for _, examples := range []func(string) (map[string]any, error){sample.Typed, sample.Every} {
			input, err := examples(e.ID)
			if err != nil {
				t.Fatal(err)
			}
			for _, trials := range []int{0, 256} {
				if d.asked(t, map[string]any{"ask": "run", "calculation": e.ID, "input": input, "units": "both", "trials": max(trials, 100), "noRanges": trials == 0}) {
					answered++
				}
			}
		}
		d.asked(t, map[string]any{"ask": "run", "calculation": e.ID})
		d.asked(t, map[string]any{"ask": "run", "calculation": e.ID, "input": map[string]any{"songs": []any{1, "two", nil}}})
	}
	if answered < 60 {
		t.Errorf("only %d sheets were checked", answered)
	}
	for _, r := range []map[string]any{
		{"ask": "contents"}, {"ask": "boat"}, {"ask": "quantity", "quantity": "length", "text": "1-11/16 in"},
		{"ask": "quantity", "quantity": "length", "text": "5", "unit": "mm"},
		{"ask": "convert", "text": "45 lbf·ft ± 5 %", "to": "N·m"}, {"ask": "convert", "quantity": "temperature-difference", "text": "18 °F", "to": "K"},
		{"ask": "fits", "calculation": "bolt-preload", "input": map[string]any{"thread": "3/8-24 UNF", "grade": 5}},
		{"ask": "schemas"}, {"ask": "schemas", "document": "boat"}, {"ask": "rules"}, {"ask": "rules", "table": "threads"}, {"ask": "rules", "table": "waters", "calculation": "gland-heat"},
		{"ask": "rules", "text": "{}"}, {"ask": "check-overlay", "text": "{}", "file": "yard.json"}, {"ask": "checks", "checks": []any{map[string]any{"expect": map[string]any{"x": 1}, "source": "-"}}}, {"ask": "warm"},
		{"ask": "survey", "boat": map[string]any{"name": "X"}}, {"ask": "jobsheet", "boat": map[string]any{"name": "X"}},
		{"ask": "readings", "boat": map[string]any{"name": "X"}}, {"ask": "line", "date": "2026-06-01"}, {"ask": "part", "part": "shaft", "date": "2026-06-01"},
		{"ask": "find", "text": "clunk"}, {"ask": "find", "text": "3/8-24"}, {"ask": "find", "text": "xyzzy"},
	} {
		if !d.asked(t, r) {
			t.Errorf("%v is refused", r)
		}
	}
}

// Requests that are well formed and cannot be answered.
func TestRefusalsMeetTheirSchemas(t *testing.T) {
	d := newDoorSchemas(t)
	boat := map[string]any{"name": "X"}
	for _, r := range []map[string]any{
		{"ask": "run", "calculation": "shaft-tork"}, {"ask": "blank", "calculation": ""}, {"ask": "run", "calculation": "shaft-torque", "trials": 5},
		{"ask": "run", "calculation": "shaft-torque", "input": map[string]any{"enginePower": "20 kg", "engineSpeed": "fast"}},
		{"ask": "run", "calculation": "shaft-torque", "boat": map[string]any{"name": 5}},
		{"ask": "run", "calculation": "shaft-torque", "overlays": []any{map[string]any{"rows": 5}}},
		{"ask": "compare", "boat": boat, "before": "2026-01-01", "after": "2026-99-99"},
		{"ask": "add-readings", "boat": boat, "csv": "date,dripRate\nnever,7\n"},
		{"ask": "csv", "calculation": "work-plan", "table": "songs"}, {"ask": "calendar"},
		{"ask": "add-signal-k", "boat": boat, "signalK": "song"}, {"ask": "add-signal-k", "boat": boat, "signalK": recorded, "engine": "port"},
		{"ask": "part", "part": "keel", "date": "2026-06-01"}, {"ask": "line", "date": "2026-02-30"},
		{"ask": "procedure", "remedies": []any{"repack-glnd"}}, {"ask": "tick", "boat": boat, "remedies": []any{"repack-gland"}, "step": "trial", "date": "2026-01-01"},
		{"ask": "close-work", "boat": boat, "remedies": []any{"repack-gland"}, "date": "2026-01-01"},
		{"ask": "convert", "text": "5 mm", "to": "kg"}, {"ask": "convert", "text": "long", "to": "mm"}, {"ask": "convert", "quantity": "song", "text": "5 mm", "to": "in"},
		{"ask": "form", "calculation": "shaft-tork"}, {"ask": "schemas", "document": "bote"}, {"ask": "rules", "table": "thread"}, {"ask": "rules", "calculation": "shaft-tork"}, {"ask": "check-overlay", "text": ""},
		{"ask": "quantity", "quantity": "song", "text": "5"}, {"ask": "quantity", "quantity": "length", "text": "long"},
	} {
		if d.asked(t, r) {
			t.Errorf("%v is answered", r)
		}
	}
	for _, text := range []string{``, `[]`, `{`, `null`, `{"ask":1}`, `{"ask":"sing"}`, `{"ask":"run","ask":"run"}`, "{\"ask\":\"\xff\"}", strings.Repeat("[", 10000)} {
		reply := marinecalc.Call([]byte(text))
		if err := d.refusal(t, "reply#/$defs/refusal", reply); err != nil {
			t.Errorf("the reply to %.100s: %v", text, err)
		}
		if err := d.refusal(t, "reply", reply); err != nil {
			t.Errorf("the reply to %.100s: %v", text, err)
		}
	}
}

// A request is refused by its schema exactly where Call refuses it for its
// members: each ask with each member, with each left out, and with each of
// another type.
func TestRequestSchemaRefusesWhatCallRefuses(t *testing.T) {
	alone(t)
	d := newDoorSchemas(t)
	boat := json.RawMessage(strings.Replace(testboat.Logged, `"name":"Tern",`, `"name":"Tern","work":{"steps":[{"step":"make-safe","done":"2026-05-20"}]},`, 1))
	good := map[string]any{"calculation": "work-plan", "input": json.RawMessage(testboat.SpringWork), "boat": boat, "units": "us", "trials": 100, "noRanges": true, "leaveOut": true, "seed": 3,
		"brief": true, "overlays": []any{}, "before": "2026-05-02", "after": "2026-06-01", "table": "", "csv": "date,dripRate\n2027-06-01,7 drips/min\n",
		"reading": map[string]any{"reading": "wearIron", "value": "32 ppm", "date": "2026-06-01", "time": "10:30", "baseline": true},
		"date":    "2026-06-01", "quantity": "length", "text": "5", "unit": "mm", "to": "in", "document": "boat", "file": "yard.json", "part": "gland", "signalK": recorded, "engine": "main", "every": "2 h",
		"remedies": []any{"repack-gland"}, "done": []any{"make-safe"}, "step": "make-safe", "ticked": true, "time": "14:05", "note": "dry", "record": []any{},
		"checks": []any{map[string]any{"id": "x", "calculation": "shaft-torque", "source": "-", "expect": map[string]any{"shaftTorque": 1}, "tolerance": 0.1}}}
	for name := range memberSchemas(t, "request", "") {
		if _, has := good[name]; !has && name != "ask" {
			t.Errorf("the test has no value for %s", name)
		}
	}
	asks := enumOf(t, "request", "ask")
	sameWords(t, "asks", asks, allowed(t, `{"ask": "sing"}`))
	for _, ask := range asks {
		takes, needs := askMembers(t, ask)
		sameWords(t, "members of "+ask, takes, allowed(t, `{"ask": "`+ask+`", "song": 1}`))
		whole := map[string]any{"ask": ask}
		for _, name := range takes {
			if name != "ask" {
				whole[name] = good[name]
			}
		}
		text, _ := json.Marshal(whole)
		if reply := marinecalc.Call(text); !bytes.HasPrefix(reply, []byte(`{"ok":true`)) || d.refusal(t, "request", text) != nil {
			t.Errorf("%s with all it takes: %v, %.300s", ask, d.refusal(t, "request", text), reply)
		}
		for _, name := range append(slices.Sorted(maps.Keys(good)), "asks", "Ask", "song") {
			if !slices.Contains(takes, name) {
				d.agree(t, with(whole, name, good[name]), name, false)
				continue
			}
			d.agree(t, without(whole, name), name, !slices.Contains(needs, name))
			for _, odd := range []any{nil, true, 1.5, -1, 7, 1e300, "", "metrical", "US", []any{}, []any{1}, map[string]any{}, map[string]any{"name": "X"}} {
				request := with(whole, name, odd)
				text, _ := json.Marshal(request)
				_, words := odd.(string)
				d.agree(t, request, name, words && slices.Contains(free, name) || !refusedFor(text, name))
			}
		}
	}
}

// allowed lists what Call would take instead, by its only problem.
func allowed(t *testing.T, request string) []string {
	t.Helper()
	var r struct{ Problems marinecalc.Problems }
	if err := json.Unmarshal(marinecalc.Call([]byte(request)), &r); err != nil || len(r.Problems) != 1 {
		t.Fatalf("%s gives %v (%v)", request, r.Problems, err)
	}
	return strings.Split(r.Problems[0].Allowed, ", ")
}

func sameWords(t *testing.T, of string, inSchema, inGo []string) {
	t.Helper()
	if a, b := slices.Sorted(slices.Values(inSchema)), slices.Sorted(slices.Values(inGo)); !slices.Equal(a, b) {
		t.Errorf("the %s are %q in the schema, %q in Go", of, a, b)
	}
}

// free are the members whose texts only their meaning can refuse.
var free = []string{"calculation", "table", "csv", "quantity", "text", "unit", "step", "time", "signalK", "engine", "every", "part", "to", "document"}

// agree holds that the schema lets a request through where that is wanted, and
// that Call refuses it for that member where it is not.
func (d doorSchemas) agree(t *testing.T, request map[string]any, member string, want bool) {
	t.Helper()
	text, err := json.Marshal(request)
	if err != nil {
		t.Fatal(err)
	}
	err = d.refusal(t, "request", text)
	if (err == nil) != want {
		t.Errorf("%s in %.300s, by the schema: %v, by Call: %.300s", member, text, err, marinecalc.Call(text))
	}
	if !want && !refusedFor(text, member) {
		t.Errorf("%s in %.300s is not refused: %.300s", member, text, marinecalc.Call(text))
	}
	if _, has := request[member]; !has && want && refusedFor(text, member) {
		t.Errorf("%.300s is refused without %s: %.300s", text, member, marinecalc.Call(text))
	}
}

func with(members map[string]any, name string, v any) map[string]any {
	out := maps.Clone(members)
	out[name] = v
	return out
}

func without(members map[string]any, name string) map[string]any {
	out := maps.Clone(members)
	delete(out, name)
	return out
}

// refusedFor tells whether Call refuses a request for one of its members, and
// not for what stands deeper in it.
func refusedFor(text []byte, member string) bool {
	var r struct{ Problems marinecalc.Problems }
	if json.Unmarshal(marinecalc.Call(text), &r) != nil {
		return true
	}
	return slices.ContainsFunc(r.Problems, func(p marinecalc.Problem) bool {
		return p.Where == "/"+member || p.Where == "/"+member+"/0" || member == "input" && strings.HasPrefix(p.What, "the input is not")
	})
}
