package workplan_test

import (
	"fmt"
	"strings"
	"testing"
)

// The days before a launch are counted on the calendar by hand: she is ashore
// to 12 April, and the work ashore of a gland is done in a day.
func TestReserveBeforeTheLaunch(t *testing.T) {
	const plan = `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}], "reserve": "%s", "readyBy": "2026-04-20",
		"partsInHand": [{"part": "gland-packing", "leadTime": "%s"}], "windows": [{"from": "2026-03-16", "to": "2026-04-12", "kind": "haul-out"}]}`
	for _, one := range []struct{ reserve, lead, opened, says, trouble string }{
		{"2 days", "5 days", "2026-04-10", "2 days before the launch on 2026-04-13; 5 days before the date wanted on 2026-04-20", ""},
		{"5 days", "5 days", "2026-04-07", "5 days before the launch on 2026-04-13", ""},
		{"0 days", "5 days", "2026-04-12", "none before the launch on 2026-04-13", ""},
		{"2 days", "40 days", "2026-04-11", "1 day before the launch", "Of 2 days to be kept before the launch on 2026-04-13 only 1 is left: Gland packing: on board on 2026-04-11 at the soonest."},
		{"2 days", "41 days", "2026-04-12", "none before the launch", "Of 2 days to be kept before the launch on 2026-04-13 none is left: Gland packing: on board on 2026-04-12 at the soonest."},
	} {
		s := planned(t, fmt.Sprintf(plan, one.reserve, one.lead))
		if got := s.Result("openFrom").Text; got != one.opened {
			t.Errorf("%s, packing in %s: opened on %s, want %s", one.reserve, one.lead, got, one.opened)
		}
		if got := s.Result("reserveLeft").Text; !strings.Contains(got, one.says) {
			t.Errorf("%s, packing in %s: %s", one.reserve, one.lead, got)
		}
		trouble := ""
		if r := s.Result("trouble"); r != nil {
			trouble = r.Text
		}
		if !strings.HasPrefix(trouble, one.trouble) || one.trouble == "" && trouble != "" {
			t.Errorf("%s, packing in %s: trouble %q, want %q", one.reserve, one.lead, trouble, one.trouble)
		}
		if got := s.Result("finish").Text; got != "2026-04-14" {
			t.Errorf("%s, packing in %s: done on %s", one.reserve, one.lead, got)
		}
	}
}

// A haul-out that is as long as its work leaves none, and says so.
func TestNoReserveSaysWhy(t *testing.T) {
	s := planned(t, `{"today": "2026-03-02", "remedies": [{"remedy": "repack-gland"}], "partsInHand": [{"part": "gland-packing", "onBoard": true}],
		"windows": [{"from": "2026-03-16", "to": "2026-03-16", "kind": "haul-out"}]}`)
	if got := s.Result("trouble").Text; !strings.Contains(got, "before the launch on 2026-03-17 none is left: the work takes the days there are, up to “Pack the gland”.") {
		t.Error(got)
	}
}
