package align

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// Readings taken with the end hanging free give the same coupling as with the
// end held up: a droop opens the bottom and makes the engine look high.
func TestDroopIsTakenOff(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 2))
	for range 50 {
		c := anyTruth(r)
		held := faces(c.read(round(4), []float64{0, math.Pi / 2}))
		for _, s := range c.read(round(4), []float64{0}) {
			held.RimReadings = append(held.RimReadings, RimReading{Clock: s.Clock, Turn: s.Turn, Step: s.Gap})
		}
		slope, sag := 0.002*r.Float64()+1e-4, 0.001*r.Float64()+1e-5
		free := held
		free.ShaftEnd, free.DroopSlope, free.DroopSag = HangingFree, quantity.Angle(slope), quantity.Length(sag)
		half := float64(held.CouplingDiameter) / 2 * math.Tan(slope)
		free.Readings, free.RimReadings = nil, nil
		for _, g := range held.Readings {
			g.Gap -= quantity.Length(half * math.Cos(float64(g.Clock))) // closer at the top, wider at the bottom
			free.Readings = append(free.Readings, g)
		}
		for _, s := range held.RimReadings {
			s.Step += quantity.Length(sag * math.Cos(float64(s.Clock)))
			free.RimReadings = append(free.RimReadings, s)
		}
		want, got := solved(t, held), solved(t, free)
		parttest.Near(t, "gap vertical", got.GapVertical, float64(want.GapVertical), 1e-12)
		parttest.Near(t, "gap horizontal", got.GapHorizontal, float64(want.GapHorizontal), 1e-12)
		parttest.Near(t, "offset vertical", got.OffsetVertical, float64(want.OffsetVertical), 1e-12)
		parttest.Near(t, "run-out", got.RunOut, float64(want.RunOut), 1e-12)
		parttest.Near(t, "gap of the droop", got.DroopGapTaken, 2*half, 1e-15)
		if !math.IsNaN(float64(want.DroopGapTaken)) || !math.IsNaN(float64(want.DroopOffsetTaken)) {
			t.Error("a droop was taken off an end that was held up")
		}
		held.DroopSlope, held.DroopSag = free.DroopSlope, free.DroopSag
		if again := solved(t, held); again.GapVertical != want.GapVertical || again.OffsetVertical != want.OffsetVertical {
			t.Error("the droop counts although the end was held up")
		}
	}
}

func TestHangingFreeNeedsTheDroop(t *testing.T) {
	c := truth{mean: 1e-3, fixed: vector{1e-4, 0}}
	in := faces(c.read(round(4), []float64{0}))
	for _, s := range c.read(round(4), []float64{0}) {
		in.RimReadings = append(in.RimReadings, RimReading{Clock: s.Clock, Turn: s.Turn, Step: s.Gap})
	}
	for _, k := range []struct {
		end    End
		slope  quantity.Angle
		sag    quantity.Length
		places []string
	}{
		{HangingFree, 0, 0, []string{"/droopSlope", "/droopSag"}},
		{HangingFree, 0.001, 0, []string{"/droopSag"}},
		{HangingFree, 0.001, 0.2, []string{"/droopSag"}},
		{"lying", 0.001, 0.001, []string{"/shaftEnd"}},
	} {
		in.ShaftEnd, in.DroopSlope, in.DroopSag = k.end, k.slope, k.sag
		_, err := Coupling(in)
		parttest.RefusedAt(t, err, k.places...)
	}
}
