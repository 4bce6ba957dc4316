package marinecalc_test

import (
	"context"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Every method of the engine that takes a context gives its error once that has ended,
// and nothing beside it: what it left out would read as not known.
func TestEveryMethodHeedsItsContext(t *testing.T) {
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	b := testboat.Demo(t, "kittiwake")
	with := map[string][]any{
		"Run":   {"bolt-preload", []byte(boltInput), marinecalc.Options{}},
		"Fits":  {"bolt-preload", []byte(boltInput), marinecalc.Options{}},
		"Check": {b, marinecalc.Options{}}, "CheckToPrint": {b, marinecalc.Options{}}, "TorqueCard": {b, marinecalc.Options{}}, "Parts": {b, marinecalc.Options{}},
		"Compare": {b, "2025-10-04", "2026-06-20", marinecalc.Options{}},
		"Line":    {b, "2026-06-20", marinecalc.Options{}}, "Part": {b, "coupling", "2026-06-20", marinecalc.Options{}},
		"Form": {"bolt-preload", b}, "Find": {"clunk"}, "Warm": {},
		"Procedure":  {b, marinecalc.ProcedureRequest{Remedies: []string{"repack-gland"}}, marinecalc.Options{}},
		"CheckRules": {[]byte(`{"title": "yard"}`), "yard.json"},
		"Call":       {[]byte(`{"ask": "contents"}`)},
	}
	e, err := marinecalc.New()
	if err != nil {
		t.Fatal(err)
	}
	of := reflect.ValueOf(e)
	context := reflect.TypeFor[context.Context]()
	for i := range of.NumMethod() {
		name, method := of.Type().Method(i).Name, of.Method(i)
		if method.Type().NumIn() == 0 || method.Type().In(0) != context {
			continue
		}
		args, known := with[name]
		if !known {
			t.Errorf("%s takes a context and is not tried here", name)
			continue
		}
		delete(with, name)
		for _, without := range []bool{false, true} {
			in := []reflect.Value{reflect.ValueOf(ended)}
			for k, a := range args {
				if _, is := a.(*marinecalc.Boat); is && without && strings.Contains("Line Part Form Procedure", name) { // which bear none
					a = (*marinecalc.Boat)(nil)
				}
				in = append(in, reflect.ValueOf(a).Convert(method.Type().In(k+1)))
			}
			out := method.Call(in)
			switch last := out[len(out)-1].Interface().(type) {
			case *marinecalc.RulesReport:
				if !errors.Is(last.Problems.Err(), marinecalc.ErrCancelled) {
					t.Errorf("%s: %v", name, last.Problems)
				}
			case []byte:
				if !strings.Contains(string(last), `"kind":"cancelled"`) {
					t.Errorf("%s: %s", name, last)
				}
			case error:
				if !errors.Is(last, marinecalc.ErrCancelled) || !errors.Is(last, ended.Err()) || strings.Count(last.Error(), "context canceled") != 1 {
					t.Errorf("%s: %v", name, last)
				}
				if len(out) > 1 && !out[0].IsNil() {
					t.Errorf("%s hands out something beside its error", name)
				}
			default:
				t.Errorf("%s gives no error", name)
			}
		}
	}
	if len(with) > 0 {
		t.Errorf("no such methods: %v", with)
	}
	if _, err := marinecalc.Checks(ended, []byte(`{"rows": []}`)); !errors.Is(err, marinecalc.ErrCancelled) || !strings.Contains(err.Error(), "context canceled") {
		t.Errorf("Checks: %v", err)
	}
}

// Between the draws and before the sorting of many trials it is looked whether the
// context has ended: to their end these take ten times as long and more.
func TestTrialsStopSoon(t *testing.T) {
	alone(t)
	input := []byte(boltInput)
	run := func(ctx context.Context) (time.Duration, error) {
		start := time.Now()
		_, err := new(marinecalc.Engine).Run(ctx, "bolt-preload", input, marinecalc.Options{Trials: 1 << 16})
		return time.Since(start), err
	}
	whole, least := time.Hour, time.Hour
	for range 3 {
		d, err := run(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		whole = min(whole, d)
		ctx, cancel := context.WithTimeout(context.Background(), 5*time.Millisecond)
		d, err = run(ctx)
		cancel()
		if !errors.Is(err, marinecalc.ErrCancelled) {
			t.Fatal(err)
		}
		least = min(least, d)
	}
	t.Logf("to the end %v, stopped after %v", whole, least)
	if least > whole/2 {
		t.Errorf("stopped after %v of %v", least, whole)
	}
}
