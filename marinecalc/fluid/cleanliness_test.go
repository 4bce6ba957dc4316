package fluid

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

// scale is that of ISO 4406 table 1 from code 10 to 22: each limit is twice the
// one before, rounded.
var scale = []Step{{10, 10}, {11, 20}, {12, 40}, {13, 80}, {14, 160}, {15, 320}, {16, 640}, {17, 1300}, {18, 2500}, {19, 5000}, {20, 10000}, {21, 20000}, {22, 40000}}

// By hand: 150 000, 32 000 and 6400 particles in 100 mL are 1500, 320 and 64
// in one; 320 is a limit of the scale and has its code.
func TestCodeOfACount(t *testing.T) {
	clean := func(in CleanlinessInput) (CleanlinessResult, error) { return Cleanliness(in, scale) }
	in := CleanlinessInput{Count4: 150000, Count6: 32000, Count14: 6400, SampleVolume: 100e-6}
	out := parttest.Must(t, clean, in)
	if out.Code != "18/15/13" || out.PerMillilitre != "1500 / 320 / 64" || out.Code4 != 18 || out.Code6 != 15 || out.Code14 != 13 || out.Doubt != "" {
		t.Errorf("%+v", out)
	}
	// In a tenth of the sample 19 were counted of the largest, ten times as many
	// reported: fewer than 20, so that the code is a least one.
	in.Count14, in.CountedVolume = 190, 10e-6
	if out := parttest.Must(t, clean, in); out.Code != "18/15/≥10" || out.Doubt != tooFew {
		t.Errorf("%+v", out)
	}
	in.Count14 = 200
	if out := parttest.Must(t, clean, in); out.Code != "18/15/10" || out.Doubt != "" {
		t.Errorf("twenty counted: %+v", out)
	}
	// Where nobody knows in how much they were counted, 1999 may be twenty.
	in.CountedVolume, in.Count14 = 0, 1999
	if out := parttest.Must(t, clean, in); out.Doubt != notCounted {
		t.Errorf("%+v", out)
	}
	in.Count4, in.Count14 = math.NaN(), 2000
	if out := parttest.Must(t, clean, in); out.Code != "-/15/11" || out.PerMillilitre != "- / 320 / 20" || !math.IsNaN(float64(out.Code4)) || out.Doubt != "" {
		t.Errorf("%+v", out)
	}
}

// By hand: 0.5 of 2 L stay in, a quarter; 5 % are left after ln 0.05/ln 0.25 =
// 2.161 changes, so after three, of 1.5 L each.
func TestFlushByHand(t *testing.T) {
	out := parttest.Must(t, Flush, FlushInput{FluidVolume: 2e-3, LeftVolume: 0.5e-3, WantedShare: 0.05, PlannedChanges: 2, DebrisShare: 8e-4})
	parttest.Within(t, "a change leaves", out.LeftPerChange, 0.25, 1e-12)
	parttest.Within(t, "changes", out.ChangesExact, 2.160964, 1e-6)
	parttest.Within(t, "fluid for all", out.FluidNeeded, 4.5e-3, 1e-12)
	parttest.Within(t, "fluid planned", out.FluidPlanned, 3e-3, 1e-12)
	parttest.Within(t, "left after two", out.ShareAfterPlan, 0.0625, 1e-12)
	parttest.Within(t, "debris after two", out.DebrisAfterPlan, 5e-5, 1e-12)
	if out.ChangesNeeded != 3 || out.Changes[2].Name != "3rd" || out.Changes[3].Name != "" {
		t.Errorf("%+v", out)
	}
	parttest.Within(t, "left after three", out.Changes[2].Left, 1./64, 1e-12)
	parttest.Within(t, "debris after three", out.Changes[2].Debris, 8e-4/64, 1e-12)
	parttest.Within(t, "fluid after three", out.Changes[2].Fluid, 4.5e-3, 1e-12)
	// A fresh filter of 0.1 L takes its old fluid out, and catches half of the
	// rest: (0.5 - 0.1)/2·½.
	out = parttest.Must(t, Flush, FlushInput{FluidVolume: 2e-3, LeftVolume: 0.5e-3, FilterVolume: 0.1e-3, FilterCatch: 0.5, WantedShare: 0.05, PlannedChanges: 1})
	parttest.Within(t, "with a filter", out.LeftPerChange, 0.1, 1e-12)
	parttest.Within(t, "a fill", out.VolumePerChange, 1.6e-3, 1e-12)
}
