package marinecalc_test

import (
	"context"
	"encoding/json"
	"errors"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/testboat"
)

// asked is a request for a sheet of a boat, with more members.
func asked(t testing.TB, calculation string, boat any, more map[string]any) []byte {
	t.Helper()
	all := map[string]any{"ask": "run", "calculation": calculation, "boat": boat}
	maps.Copy(all, more)
	text, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// sameAsFresh holds that an engine which was asked much before answers as one that
// was asked nothing.
func sameAsFresh(t *testing.T, engine *marinecalc.Engine, request []byte) {
	t.Helper()
	fresh := new(marinecalc.Engine)
	want := fresh.Call(context.Background(), request)
	if got := engine.Call(context.Background(), request); string(got) != string(want) {
		t.Fatalf("after other requests the answer to\n%.300s\nis another:\n%s\nin place of\n%s", request, got, want)
	}
}

// What an engine keeps of the boat of the request before changes no answer: every
// calculation of both boats, in any order, by every option, and of boats that
// change by one reading.
func TestAnswersAreTheSameAfterOthers(t *testing.T) {
	alone(t)
	random := rand.New(rand.NewPCG(3, 5))
	engine := new(marinecalc.Engine)
	yard := testboat.File(t, "testdata", "yard.json")
	ways := []map[string]any{nil, {"units": "us"}, {"units": "both"}, {"noRanges": true}, {"trials": 64}, {"seed": 9}, {"date": "2026-06-01"}, {"brief": true}, {"leaveOut": true},
		{"overlays": []any{json.RawMessage(yard)}}}
	for _, name := range []string{"kittiwake", "juniper"} {
		text := testboat.File(t, "testdata", "boats", name+".json")
		for _, i := range random.Perm(len(catalogue.Calculations)) {
			id := catalogue.Calculations[i].ID
			sameAsFresh(t, engine, asked(t, id, json.RawMessage(text), ways[max(0, random.IntN(2*len(ways))-len(ways))])) // every other one without
		}
	}
}

// A boat that differs by one answer is another boat: what stops her shaft counts
// from the next request on, and no longer than that.
func TestAChangeOfTheBoatCountsAtOnce(t *testing.T) {
	files, err := filepath.Glob(testboat.Root("testdata", "cases", "*.json"))
	if err != nil || len(files) < 20 {
		t.Fatalf("%d cases: %v", len(files), err)
	}
	engine := new(marinecalc.Engine)
	differ := 0
	last := ""
	for i, file := range files {
		if i%3 > 0 {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var boat map[string]any
		if err := json.Unmarshal(text, &boat); err != nil {
			t.Fatal(err)
		}
		for _, part := range []string{"symptoms", "readings"} {
			for range 2 { // with it, then without it
				request := asked(t, "shaft-torque", boat, map[string]any{"noRanges": true})
				sameAsFresh(t, engine, request)
				reply := string(engine.Call(context.Background(), request))
				if reply != last {
					differ++
				}
				last = reply
				delete(boat, part)
			}
		}
	}
	if differ < len(files)/3 {
		t.Errorf("only %d answers differ: the test sees no change", differ)
	}
}

// Nothing is kept of a request that was stopped, nor of a boat with a fault.
func TestNothingIsKeptOfAStoppedRequest(t *testing.T) {
	text := testboat.File(t, "testdata", "boats", "kittiwake.json")
	request := asked(t, "coupling-alignment", json.RawMessage(text), nil)
	want := new(marinecalc.Engine).Call(context.Background(), request)
	for after := range 12 {
		engine := new(marinecalc.Engine)
		ended := &endsAfter{Context: context.Background(), left: 1 + 9*after*after}
		engine.Call(ended, request)
		if got := engine.Call(context.Background(), request); string(got) != string(want) {
			t.Fatalf("stopped at look %d, the next answer is another", 1+9*after*after)
		}
	}
	engine := new(marinecalc.Engine)
	half := map[string]any{"name": "X", "shaft": map[string]any{"diameter": "30 mm", "length": "blue"}}
	for range 2 { // what one request leaves out another does not
		sameAsFresh(t, engine, asked(t, "shaft-strength", half, map[string]any{"leaveOut": true}))
		sameAsFresh(t, engine, asked(t, "shaft-strength", half, nil))
	}
	wrong := asked(t, "coupling-alignment", map[string]any{"name": "X", "shaft": map[string]any{"diameter": "blue"}}, nil)
	first := engine.Call(context.Background(), wrong)
	if second := engine.Call(context.Background(), wrong); string(first) != string(second) {
		t.Errorf("a boat with a fault, asked twice: %s, then %s", first, second)
	}
}

// endsAfter is a context that ends once it was looked at so often.
type endsAfter struct {
	context.Context
	left int
}

func (e *endsAfter) Done() <-chan struct{} { return make(chan struct{}) }

func (e *endsAfter) Err() error {
	if e.left--; e.left < 0 {
		return errors.New("ended for the test")
	}
	return nil
}
