package marinecalc_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

// A typed nil would be an error that says nothing.
func TestNoErrorIsNil(t *testing.T) {
	if _, err := marinecalc.Overlay(); err != nil {
		t.Errorf("%#v", err)
	}
	if _, err := marinecalc.Run("bolt-preload", []byte(boltInput), marinecalc.Options{}); err != nil {
		t.Errorf("%#v", err)
	}
}

// No request at all is an error or nothing back, never a panic.
func TestNilAtTheDoor(t *testing.T) {
	if s, err := marinecalc.Run("work-plan", nil, marinecalc.Options{}); !errors.Is(err, marinecalc.ErrMissing) || s != nil {
		t.Errorf("Run: %v", err)
	}
	if _, err := marinecalc.Run("no-such", nil, marinecalc.Options{}); !errors.Is(err, marinecalc.ErrUnknown) {
		t.Errorf("Run of an unknown calculation: %v", err)
	}
	if _, err := marinecalc.Compare(nil, "2025-01-01", "2026-01-01", marinecalc.Options{}); err == nil {
		t.Error("Compare takes no boat")
	}
	if _, err := marinecalc.Calendar(nil); err == nil {
		t.Error("Calendar takes no sheet")
	}
	if _, err := marinecalc.CSVOf(nil, ""); err == nil {
		t.Error("CSVOf takes no sheet")
	}
	if _, err := marinecalc.AddReadingsCSV(nil, nil); err == nil {
		t.Error("AddReadingsCSV takes no boat")
	}
	if marinecalc.JobSheet(nil) != "" || marinecalc.CSV(nil) != nil || marinecalc.ReadingsCSV(nil) != nil {
		t.Error("something comes of nothing")
	}
	for _, request := range []string{"", "null", "[]", `{"ask": null}`, `{"ask": "survey"}`, `{"ask": "run"}`, `{"ask": "add-readings"}`, `{"ask": "quantity"}`} {
		var reply struct {
			OK       bool
			Problems []marinecalc.Problem
		}
		if err := json.Unmarshal(marinecalc.Call([]byte(request)), &reply); err != nil || reply.OK || len(reply.Problems) == 0 {
			t.Errorf("%q: %v, %+v", request, err, reply)
		}
	}
}

// Nothing where a thing is asked for is the usual one, or has nothing in it.
func TestNilIsTakenEverywhere(t *testing.T) {
	var none struct {
		engine *marinecalc.Engine
		ctx    context.Context
		option marinecalc.Option
		book   *rules.Book
		boat   *marinecalc.Boat
		sheet  *marinecalc.Sheet
	}
	bg, o, demo := context.Background(), marinecalc.Options{NoRanges: true}, testboat.Demo(t, "kittiwake")
	engine, err := marinecalc.New(none.option, marinecalc.WithRules(none.book))
	if err != nil {
		t.Fatal(err)
	}
	ran := func(s *marinecalc.Sheet, err error) bool {
		return err == nil && len(s.Results) > 0 && len(s.Verdicts) > 0
	}
	checked := func(s *marinecalc.Survey, err error) bool { return err == nil && len(s.Sheets) > 0 }
	compared := func(c *marinecalc.Comparison, err error) bool { return err == nil && c != nil }
	answered := func(reply []byte) bool { return bytes.HasPrefix(reply, []byte(`{"ok":true`)) }
	by := func(b *rules.Book) marinecalc.Options { return marinecalc.Options{NoRanges: true, Rules: b} }
	days := demo.Dates()
	for name, fine := range map[string]func() bool{
		"Run of no engine":     func() bool { return ran(none.engine.Run(bg, "bolt-preload", []byte(boltInput), o)) },
		"Check of no engine":   func() bool { return checked(none.engine.Check(bg, demo, o)) },
		"Compare of no engine": func() bool { return compared(none.engine.Compare(bg, demo, days[0], days[len(days)-1], o)) },
		"Call of no engine":    func() bool { return answered(none.engine.Call(bg, []byte(`{"ask": "contents"}`))) },
		"Blank of no engine": func() bool {
			return answered(none.engine.Call(bg, []byte(`{"ask": "blank", "calculation": "gland-drip"}`)))
		},
		"Run in no context":     func() bool { return ran(engine.Run(none.ctx, "bolt-preload", []byte(boltInput), marinecalc.Options{})) },
		"Check in no context":   func() bool { return checked(engine.Check(none.ctx, demo, o)) },
		"Compare in no context": func() bool { return compared(engine.Compare(none.ctx, demo, days[0], days[len(days)-1], o)) },
		"Call in no context": func() bool {
			return answered(engine.Call(none.ctx, []byte(`{"ask": "run", "calculation": "bolt-preload", "input": `+boltInput+`}`)))
		},
		"Run by no rules":          func() bool { return ran(marinecalc.Run("bolt-preload", []byte(boltInput), by(none.book))) },
		"Run by the zero Book":     func() bool { return ran(marinecalc.Run("bolt-preload", []byte(boltInput), by(new(rules.Book)))) },
		"Check by the zero Book":   func() bool { return checked(marinecalc.Check(demo, by(new(rules.Book)))) },
		"a boat's name":            func() bool { return none.boat.Name() == "" },
		"a boat's units":           func() bool { return none.boat.Units() == "" },
		"a boat's warnings":        func() bool { return none.boat.Warnings() == nil },
		"a boat's dates":           func() bool { return none.boat.Dates() == nil },
		"a boat's newest day":      func() bool { return none.boat.NewestDay() == "" },
		"a boat as of a day":       func() bool { return none.boat.AsOf("2026-01-01") == nil },
		"a boat's readings":        func() bool { return len(slices.Collect(none.boat.Readings())) == 0 },
		"a boat's events":          func() bool { return len(slices.Collect(none.boat.Events())) == 0 },
		"a boat's figures":         func() bool { _, ok := none.boat.FigureOf("a"); return !ok },
		"a place in a boat":        func() bool { _, _, _, ok := none.boat.Find("/name"); return !ok },
		"something kept with none": func() bool { _, err := none.boat.Keep(nil, "2026-01-01"); return errors.Is(err, marinecalc.ErrMissing) },
		"no boat in JSON":          func() bool { text, err := json.Marshal(none.boat); return err == nil && string(text) == "null" },
		"a sheet's result":         func() bool { return none.sheet.Result("a") == nil },
		"a sheet's table":          func() bool { return none.sheet.Table("a") == nil },
		"a sheet's cell":           func() bool { return none.sheet.Cell("a", 0, "b") == nil },
		"a sheet's input":          func() bool { return none.sheet.Input("a") == nil },
		"a sheet's verdict":        func() bool { return none.sheet.Verdict("a") == nil },
		"a sheet beyond":           func() bool { return !none.sheet.Beyond() },
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if p := recover(); p != nil {
					t.Errorf("panic: %v", p)
				}
			}()
			if !fine() {
				t.Error("it is not what it should be")
			}
		})
	}
}
