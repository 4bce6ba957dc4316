package boat_test

import (
	"encoding/json"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A boat is written whole whether it is held by value or by pointer, and none
// leaves what is there.
func TestBoatInJSON(t *testing.T) {
	const text = `{"name":"Tern","units":"us"}`
	b := testboat.Read(t, text)
	got, err := json.Marshal(struct {
		Held  marinecalc.Boat
		Point *marinecalc.Boat
		None  *marinecalc.Boat
	}{Held: *b, Point: b})
	if want := `{"Held":` + text + `,"Point":` + text + `,"None":null}`; err != nil || string(got) != want {
		t.Errorf("got %s, %v", got, err)
	}
	back := struct{ Held marinecalc.Boat }{*b}
	if err := json.Unmarshal([]byte(`{"Held":null}`), &back); err != nil || back.Held.Name() != "Tern" {
		t.Errorf("after null it is %q, %v", back.Held.Name(), err)
	}
	if err := json.Unmarshal([]byte(`{"Held":{"name":"Petrel"}}`), &back); err != nil || back.Held.Name() != "Petrel" {
		t.Errorf("it is %q, %v", back.Held.Name(), err)
	}
}

// What a boat hands out can be written over, and the boat stays as it was.
func TestBoatIsNotEditedFromOutside(t *testing.T) {
	const text = `{"name":"Tern","makersFigures":[{"of":"bolt-proof-load","value":"50 %","source":{"document":"Manual"}}],"readings":[{"date":"2026-05-01","dripRate":"6 drips/min"}]}`
	b := testboat.Read(t, text)
	written, err := b.MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	clear(written)
	figure, _ := b.FigureOf("bolt-proof-load")
	figure.Value, figure.Source = "1 %", "nowhere"
	for e := range b.Readings() {
		e.Date, e.Index = "1900-01-01", 7
	}
	if got, err := b.MarshalJSON(); err != nil || string(got) != text {
		t.Errorf("the text is %q, %v", got, err)
	}
	if f, ok := b.FigureOf("bolt-proof-load"); !ok || f.Value != "50 %" || f.Source != "Manual" {
		t.Errorf("the figure is %+v", f)
	}
	if b.NewestDay() != "2026-05-01" {
		t.Errorf("the newest day is %s", b.NewestDay())
	}
}

// A limit without a maker's figure is looked up for nothing.
func TestFiguresAreFoundWithoutAllocation(t *testing.T) {
	b := testboat.Demo(t, "kittiwake")
	if n := testing.AllocsPerRun(100, func() { b.FigureOf("no-such") }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
