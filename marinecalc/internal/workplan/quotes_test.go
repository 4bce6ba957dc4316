package workplan_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/day"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
)

// A gearbox that was drained and changed takes its whole volume and a tenth for
// topping up; one that is only drained takes what drains. Mounts are counted.
func TestWholeVolumesAndCounts(t *testing.T) {
	b := sick(t, "", "")
	for work, litres := range map[string]float64{"replace-gearbox": 1.1 * 2.2, "overhaul-gearbox": 1.1 * 2.2, "flush-gearbox-fluid": 2 * (2.2 - 0.7)} {
		s := testboat.Run(t, "work-plan", `{"today": "2026-03-02", "remedies": [{"remedy": "`+work+`"}]}`, marinecalc.Options{Boat: b, NoRanges: true})
		got := testboat.Amount(t, testboat.Column(t, s, "shopping", "part", "amount")["Gearbox fluid, as the maker names it"], nil)
		if math.Abs(got-litres/1000) > 5e-3*litres/1000 {
			t.Errorf("%s: %g m³ of fluid, want %g L", work, got, litres)
		}
	}
	const mounts = `{"today": "2026-03-02", "remedies": [{"remedy": "replace-mounts"}]}`
	s := testboat.Run(t, "work-plan", mounts, marinecalc.Options{Boat: b, NoRanges: true})
	if got := testboat.Column(t, s, "shopping", "part", "amount")["Engine mount"]; got != "6 × piece" {
		t.Errorf("%q mounts for six feet", got)
	}
	if got := testboat.Column(t, planned(t, mounts), "shopping", "part", "amount")["Engine mount"]; !strings.Contains(got, "not known") {
		t.Errorf("%q mounts of a boat of which nobody told how many she has", got)
	}
}

// Thread locker is bought where the maker asks for it, and nowhere else.
func TestLockerOnlyWhereAsked(t *testing.T) {
	const align = `{"today": "2026-03-02", "remedies": [{"remedy": "align-coupling"}]%s}`
	for told, want := range map[string]bool{"": false, `, "partsInHand": [{"part": "thread-lock", "makerAsks": true}]`: true, `, "partsInHand": [{"part": "thread-lock", "leadTime": "9 days"}]`: false} {
		s := planned(t, strings.Replace(align, "%s", told, 1))
		if _, has := testboat.Column(t, s, "shopping", "part", "amount")["Thread locking liquid, removable strength"]; has != want {
			t.Errorf("%q: on the list %v", told, has)
		}
	}
}

// Prices that were typed are added up, and what has none is named; the old
// gearbox goes back within what was agreed.
func TestQuotesAndTheOldUnit(t *testing.T) {
	const input = `{"today": "2026-03-02", "remedies": [{"remedy": "replace-gearbox"}], "partsInHand": [
		{"part": "gearbox", "price": "2100 EUR", "deposit": "300 EUR", "returnWithin": "21 days", "leadTime": "10 days"}, {"part": "absorbent", "price": "12 EUR"}]}`
	s := planned(t, input)
	if got := s.Result("quoted").Text; got != "2112 EUR" {
		t.Errorf("quoted: %q", got)
	}
	if got := s.Result("notQuoted").Text; !strings.Contains(got, "Gearbox fluid") || strings.Contains(got, "absorbent") {
		t.Errorf("without a price: %q", got)
	}
	back, opened := testboat.Column(t, s, "shopping", "part", "returnBy")["Gearbox, new or overhauled in exchange"], s.Result("openFrom").Text
	came := date(t, "2026-03-02") + 10 // and is compared before anything is opened
	if back != day.Text(came+21) || date(t, opened) < came {
		t.Errorf("the gearbox came on %s, opened on %s, the old one back by %s", day.Text(came), opened, back)
	}
	if got := s.Result("coreReturn").Text; !strings.Contains(got, back) || !strings.Contains(got, "300 EUR") || strings.Contains(got, "as a rule") {
		t.Errorf("%q", got)
	}
	usual := planned(t, `{"today": "2026-03-02", "remedies": [{"remedy": "replace-gearbox"}]}`)
	if got := usual.Result("coreReturn").Text; !strings.Contains(got, "30 days") || !strings.Contains(got, "as a rule") || usual.Result("quoted") != nil {
		t.Errorf("nothing agreed: %q", got)
	}
	_, err := marinecalc.Run("work-plan", []byte(strings.Replace(input, `"12 EUR"`, `"12 USD"`, 1)), marinecalc.Options{})
	if list := problem.Of(err); len(list) != 1 || !strings.Contains(list[0].What, "USD") {
		t.Errorf("two currencies: %v", err)
	}
}
