package propeller

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/hub"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// What locks the nut is counted once each, and nothing is told where nobody looked.
func TestWhatLocksTheNut(t *testing.T) {
	for _, c := range []struct {
		lock, order string
		want        float64 // NaN: not known
	}{
		{LockCotter, OneNut, 1}, {LockTab, OneNut, 1}, {LockNylon, OneNut, 1}, {LockMakers, OneNut, 1},
		{LockCotter, ThinFirst, 2}, {LockCotter, ThickFirst, 2}, {LockSecond, ThinFirst, 1}, {LockSecond, ThickFirst, 1},
		{LockNone, OneNut, 0}, {LockNone, ThinFirst, 1},
		{LockUnseen, OneNut, math.NaN()}, {"", OneNut, math.NaN()}, {LockNone, OrderUnknown, math.NaN()}, {LockNone, "", math.NaN()},
		{LockUnseen, ThinFirst, 1}, {LockCotter, "", 1},
	} {
		in := fitted()
		in.NutLock, in.NutOrder = c.lock, c.order
		got := float64(parttest.Must(t, Taper, in).NutLocks)
		if got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%q, %q: %g, want %g", c.lock, c.order, got, c.want)
		}
	}
	in := fitted()
	in.NutLock, in.NutOrder = LockSecond, OneNut
	_, err := Taper(in)
	parttest.RefusedAt(t, err, "/nutLock")
}

// The shaft's thread in tension: M24x2 has a stress area of 384 mm² (ISO 898-1,
// table of fine threads), 207 MPa of yield and 2.8 kN of pull astern.
func TestThreadHoldsThePullAlone(t *testing.T) {
	out := parttest.Must(t, Taper, fitted())
	parttest.Within(t, "holds", float64(out.NutHold), 384e-6*207e6, 2e-3)
	parttest.Within(t, "over the pull", float64(out.NutMargin), float64(out.NutHold)/2800, 1e-12)
	parttest.Within(t, "room for the torque", float64(out.NutTorqueRoom), float64(out.MostNutTorque)/float64(out.LeastNutTorque), 1e-12)
}

// Of cone and hub the shorter touches; a cone that nobody measured touches over a
// share of the hub.
func TestWhatTouches(t *testing.T) {
	for _, c := range []struct{ cone, hub, share, want float64 }{
		{0.085, 0.08, 0, 0.08}, {0.085, 0.09, 0, 0.085}, {0.085, 0, 0, 0.085}, {0, 0.08, 0, 0.08},
		{0, 0.08, 0.9, 0.072}, {0.085, 0.08, 0.9, 0.08},
	} {
		in := fitted()
		in.SmallEndDiameter = 0
		in.TaperLength, in.HubLength, in.LengthShare = quantity.Length(c.cone), quantity.Length(c.hub), quantity.Ratio(c.share)
		parttest.Within(t, "contact", float64(parttest.Must(t, Taper, in).ContactLength), c.want, 1e-12)
	}
}

// A key of which only the most it can hold is known makes a margin known where
// both ends lie on one side of 1, and leaves it open else.
func TestAKeyOfWhichTheMostIsKnown(t *testing.T) {
	in := fitted()
	in.NutTorque, in.ThrustAstern, in.KeyTorque, in.Keyed = 20, 100, 0, hub.WithKey
	bare := in
	bare.Keyed = hub.NoKey
	friction := float64(parttest.Must(t, Taper, bare).FrictionTorque)
	for _, c := range []struct {
		most  float64
		known bool
	}{{1, true}, {friction, true}, {219, true}, {600, false}} {
		in.KeyTorqueMost = quantity.Torque(c.most)
		out := parttest.Must(t, Taper, in)
		if c.known {
			parttest.Within(t, "ahead by the most", float64(out.MarginAhead), max(friction, c.most)/250, 1e-12)
		}
		for what, m := range map[string]quantity.Ratio{"ahead": out.MarginAhead, "astern": out.MarginAstern} {
			if known := !math.IsNaN(float64(m)) && m < 1; known != c.known {
				t.Errorf("%s, a key that holds %g N·m at most beside %g of friction: %g", what, c.most, friction, m)
			}
		}
	}
}

// A hub bears no more interference than the most of any metal: so much push-up, by
// the taper.
func TestMostPushUp(t *testing.T) {
	in := fitted()
	most := hub.MostInterference * 0.04 / 0.1
	in.PushUp = quantity.Length(most * 0.999)
	parttest.Must(t, Taper, in)
	in.PushUp = quantity.Length(most * 1.001)
	_, err := Taper(in)
	parttest.RefusedAt(t, err, "/pushUp")
}
