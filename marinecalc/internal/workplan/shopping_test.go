package workplan_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

func TestOrdersComeInTime(t *testing.T) {
	input := strings.Replace(testboat.SpringWork, `"today"`, `"partsInHand": [{"part": "gland-packing", "leadTime": "25 days"}, {"part": "wood-plug", "onBoard": true}], "today"`, 1)
	s := planned(t, input)
	by, needed := testboat.Column(t, s, "shopping", "part", "orderBy"), testboat.Column(t, s, "shopping", "part", "neededOn")
	if by["Soft-wood plug that fits the stern tube"] != "on board" {
		t.Errorf("the plug: %q", by)
	}
	packing := "Gland packing"
	arrives, err := time.Parse(time.DateOnly, by[packing])
	if err != nil {
		t.Fatal(err)
	}
	// Ordered on the last day it comes before the slot ends; ordered at once, before the step as planned.
	if in := arrives.AddDate(0, 0, 25).Format(time.DateOnly); in > "2026-04-09" {
		t.Errorf("ordered by %s it arrives on %s", by[packing], in)
	}
	if needed[packing] < "2026-03-27" {
		t.Errorf("needed on %s, before it can be there", needed[packing])
	}
	if first := s.Result("firstOrder").Text; !strings.HasPrefix(first, packing) {
		t.Errorf("first order: %s", first)
	}
}

// Amounts and sizes come from the boat's own sheets, and where these are
// missing the list says which.
func TestAmountsComeFromTheSheets(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "shaft": {"diameter": "25 mm"}, "coupling": {"boltCount": 6, "bolts": {"thread": "M10x1.5"}},
		"gland": {"boxBore": "41 mm", "boxDepth": "48 mm", "followerDepth": "10 mm"}, "fluid": {"volume": "2.2 L", "leftVolume": "0.7 L"}}`)
	const input = `{"today": "2026-03-02", "lies": "ashore", "remedies": [{"remedy": "repack-gland"}, {"remedy": "replace-coupling-bolts"}, {"remedy": "flush-gearbox-fluid"}]}`
	packing := testboat.Run(t, "gland-packing", `{}`, marinecalc.Options{Boat: b, NoRanges: true})
	s := testboat.Run(t, "work-plan", input, marinecalc.Options{Boat: b, NoRanges: true})
	amounts, sizes := testboat.Column(t, s, "shopping", "part", "amount"), testboat.Column(t, s, "shopping", "part", "size")
	if got, want := amounts["Gland packing"], packing.Result("totalLength").Text; math.Abs(testboat.Amount(t, got, nil)-testboat.Amount(t, want, nil)) > 5e-3*testboat.Amount(t, want, nil) { // three figures
		t.Errorf("%q, the sheet of the gland says %q", got, want)
	}
	if got := amounts["Coupling bolts"]; got != "6 × piece" {
		t.Errorf("%q bolts", got)
	}
	if got := sizes["Coupling bolts"]; !strings.Contains(got, "M10") {
		t.Errorf("bolts: %q", got)
	}
	flush := testboat.Run(t, "fluid-flush", `{}`, marinecalc.Options{Boat: b, NoRanges: true})
	if got, want := testboat.Amount(t, amounts["Gearbox fluid, as the maker names it"], nil), 2**flush.Result("volumePerChange").SI; math.Abs(got-want) > 5e-3*want {
		t.Errorf("%g m³ of fluid for two changes, want %g", got, want)
	}
	s = planned(t, input)
	if got := testboat.Column(t, s, "shopping", "part", "amount")["Gland packing"]; !strings.Contains(got, "not known") {
		t.Errorf("without a boat: %q", got)
	}
}

// New nuts are bought of the sort that the boat has.
func TestNutsAreOfTheBoatsSort(t *testing.T) {
	for nut, want := range map[string]string{"plain-nut": "Coupling nuts", "ne-7/16-14": "Coupling nuts with insert", "": "Coupling nuts"} {
		text := `{"name": "Test", "coupling": {"boltCount": 4, "bolts": {"thread": "7/16-14 UNC"}}}`
		if nut != "" {
			text = strings.Replace(text, `"bolts": {`, `"bolts": {"nut": "`+nut+`", `, 1)
		}
		b := testboat.Read(t, text)
		s := testboat.Run(t, "work-plan", `{"today": "2026-03-02", "remedies": [{"remedy": "replace-coupling-bolts"}]}`, marinecalc.Options{Boat: b, NoRanges: true})
		var got []string
		for part := range testboat.Column(t, s, "shopping", "part", "amount") {
			if strings.HasPrefix(part, "Coupling nuts") {
				got = append(got, part)
			}
		}
		if len(got) != 1 || got[0] != want {
			t.Errorf("with %q: %q", nut, got)
		}
	}
}

// Every amount and size of the rule data leads to a result or an input.
func TestAmountsAndSizesLeadSomewhere(t *testing.T) {
	p := &calc.Session{Calculations: catalogue.Calculations}
	for _, s := range rules.Standard().Steps().All() {
		for _, n := range s.Parts.All() {
			if of := n.Quantity.Of; of != "" && (p.Property(of) == nil || p.Property(of).Title == "") {
				t.Errorf("step %s takes %q, which is nowhere", s.ID, of)
			}
		}
	}
	for _, part := range rules.Standard().Parts().All() {
		for _, of := range part.Sizes.All() {
			if p.Property(of) == nil {
				t.Errorf("part %s is sized by %q, which is nowhere", part.ID, of)
			}
		}
	}
}
