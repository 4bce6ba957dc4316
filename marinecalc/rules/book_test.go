package rules

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A book with nothing in it, and none at all, mean the standard rules.
func TestTheZeroBookIsTheStandard(t *testing.T) {
	for name, b := range map[string]*Book{"zero": {}, "nil": nil} {
		for what, c := range map[string]struct{ got, want any }{
			"tables":       {b.Tables(), Standard().Tables()},
			"a table":      {b.Table("bolt-grades").Rows.Len(), Standard().Table("bolt-grades").Rows.Len()},
			"questions":    {b.Table("evidence").Rows.Len(), Standard().Table("evidence").Rows.Len()},
			"no table":     {b.Table("no-such") == nil, true},
			"limits":       {b.Limits("bolt-preload").Len(), Standard().Limits("bolt-preload").Len()},
			"no limits":    {b.Limits("no-such").Len(), 0},
			"cautions":     {b.Cautions("bolt-preload").Len(), Standard().Cautions("bolt-preload").Len()},
			"advice":       {b.Advice("bolt-preload").Len(), Standard().Advice("bolt-preload").Len()},
			"usual values": {b.Usual("gland-packing").Rows.Len(), Standard().Usual("gland-packing").Rows.Len()},
			"all limits":   {b.AllLimits().Len(), Standard().AllLimits().Len()},
			"all shared":   {b.AllShared().Len(), Standard().AllShared().Len()},
			"all cautions": {b.AllCautions().Len(), Standard().AllCautions().Len()},
			"all advice":   {b.AllAdvice().Len(), Standard().AllAdvice().Len()},
			"the job": {[]int{b.Causes().Len(), b.Evidence().Len(), b.Signs().Len(), b.Chains().Len(), b.Remedies().Len(), b.Steps().Len(), b.Parts().Len()},
				[]int{Standard().Causes().Len(), Standard().Evidence().Len(), Standard().Signs().Len(), Standard().Chains().Len(), Standard().Remedies().Len(), Standard().Steps().Len(), Standard().Parts().Len()}},
			"dangling": {len(b.DanglingIDs()), 0},
			"overlays": {len(b.Overlays()), 0},
		} {
			if diff := cmp.Diff(c.want, c.got); diff != "" {
				t.Errorf("%s book, %s (-want +got):\n%s", name, what, diff)
			}
		}
		next, err := b.Overlay([]byte(`{"title": "Yard"}`))
		if err != nil || len(next.Overlays()) != 1 || !slices.Equal(next.Tables(), Standard().Tables()) {
			t.Errorf("%s book under an overlay: %v", name, err)
		}
	}
}
