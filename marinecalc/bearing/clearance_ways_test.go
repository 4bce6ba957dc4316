package bearing

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
	"gonum.org/v1/gonum/mat"
)

// lifted is a bearing that was read by a lifted shaft alone.
func lifted() ClearanceInput {
	in := unread(ClearanceInput{BearingKind: Rubber, ShaftDiameter: 0.030, BearingClearance: unreadLength, WornLimit: 0.00075})
	in.LiftTravel, in.LiftPull, in.SecondTravel, in.SecondPull = 0.00062, 300, 0.00056, 150
	return in
}

// stern is a shaft with its propeller, by finite elements: held at its fore end, in a
// bearing that touches it below or above through rubber, and beyond it to the propeller.
type stern struct {
	built               bool    // in ahead; else it hinges
	span, dial, overall float64 // from ahead to the bearing, to the dial, to the propeller, m
	bending             float64 // E·I, N·m²
	weight, propeller   float64 // N/m and N
	rubber, clearance   float64 // N/m and m
}

// height is that of the shaft at the dial, lying below or lifted to the top by a pull at
// the propeller, and the force of the bearing on the shaft, up.
func (s *stern) height(pull float64) (dial, bearing float64) {
	const cells = 48
	node := func(x float64) int { return int(math.Round(x / s.overall * cells)) }
	h, n := s.overall/cells, 2*(cells+1)
	k, load := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil)
	beam := [4][4]float64{{12, 6 * h, -12, 6 * h}, {6 * h, 4 * h * h, -6 * h, 2 * h * h}, {-12, -6 * h, 12, -6 * h}, {6 * h, 2 * h * h, -6 * h, 4 * h * h}}
	for e := range cells {
		for i := range 4 {
			for j := range 4 {
				k.Set(2*e+i, 2*e+j, k.At(2*e+i, 2*e+j)+beam[i][j]*s.bending/(h*h*h))
			}
		}
		for i, v := range [4]float64{h / 2, h * h / 12, h / 2, -h * h / 12} {
			load.SetVec(2*e+i, load.AtVec(2*e+i)-s.weight*v)
		}
	}
	load.SetVec(2*node(s.overall), load.AtVec(2*node(s.overall))-s.propeller+pull)
	const stiff = 1e12
	k.Set(0, 0, k.At(0, 0)+stiff)
	if s.built {
		k.Set(1, 1, k.At(1, 1)+stiff)
	}
	at, side := 2*node(s.span), -s.clearance/2
	if pull > 0 {
		side = s.clearance / 2
	}
	k.Set(at, at, k.At(at, at)+s.rubber)
	load.SetVec(at, load.AtVec(at)+s.rubber*side)
	var y mat.VecDense
	if err := y.SolveVec(k, load); err != nil {
		panic(err)
	}
	return y.AtVec(2 * node(s.dial)), s.rubber * (side - y.AtVec(at))
}

// The clearance comes out of two pulls, whatever the shaft bends and the rubber gives:
// the travels are those of a beam by finite elements. One pull alone reads long.
func TestTwoPullsTakeOffWhatBends(t *testing.T) {
	steel := 193e9 * math.Pi / 64 * math.Pow(0.030, 4)
	for _, s := range []stern{
		{built: true, span: 1.0, dial: 1.0, overall: 1.2, bending: steel, weight: 55, propeller: 90, rubber: 4e6, clearance: 0.5e-3},
		{built: true, span: 1.0, dial: 1.1, overall: 1.2, bending: steel, weight: 55, propeller: 90, rubber: 3e6, clearance: 1e-3},
		{span: 1.0, dial: 1.1, overall: 1.2, bending: steel, weight: 55, propeller: 60, rubber: 3e6, clearance: 0.8e-3},
		{span: 1.4, dial: 1.3, overall: 1.6, bending: 3 * steel, weight: 90, propeller: 150, rubber: 1e8, clearance: 1.5e-3},
	} {
		in := unread(ClearanceInput{BearingKind: Rubber, ShaftDiameter: 0.030, BearingClearance: unreadLength})
		lies, below := s.height(0)
		in.LiftPull, in.SecondPull = 600, 320
		first, above := s.height(float64(in.LiftPull))
		second, still := s.height(float64(in.SecondPull))
		if below < 0 || above > 0 || still > 0 {
			t.Fatalf("%+v: not lying below and lifted to the top: %g, %g, %g N", s, below, above, still)
		}
		in.LiftTravel, in.SecondTravel = quantity.Length(first-lies), quantity.Length(second-lies)
		in.DialAft, in.SpanAhead, in.TiltFactor = quantity.Length(s.dial-s.span), quantity.Length(s.span), 1
		if s.built {
			in.TiltFactor = 1.5
		}
		out := worn(t, in)
		parttest.Within(t, "clearance", float64(out.Clearance), s.clearance, 0.012)
		if one := float64(in.LiftTravel / quantity.Length(out.DialLever)); s.dial >= s.span && one < s.clearance*1.05 { // forward of it the pull bows the shaft down
			t.Errorf("one pull alone reads %g of %g", one, s.clearance)
		}
		in.LiftTravel, in.SecondTravel, in.LiftPull, in.SecondPull = in.SecondTravel, in.LiftTravel, in.SecondPull/7, in.LiftPull/7
		parttest.Within(t, "swapped, by the pull on a lever", float64(worn(t, in).Clearance), float64(out.Clearance), 1e-9)
	}
}

// Derived: 0.62 mm at 300 N and 0.56 at 150 N lie on a line that begins at 0.50 mm. With
// one pull the share given goes off; without a share nothing is told.
func TestLiftByOnePullAndTwo(t *testing.T) {
	out := worn(t, lifted())
	parttest.Within(t, "clearance", float64(out.Clearance), 0.0005, 1e-9)
	parttest.Within(t, "bends", float64(out.ElasticTravel), 0.00012, 1e-9)
	parttest.Within(t, "share", float64(out.ElasticFound), 0.12/0.62, 1e-9)
	in := lifted()
	in.SecondTravel, in.ElasticShare = unreadLength, 0.25
	out = worn(t, in)
	parttest.Within(t, "one pull", float64(out.Clearance), 0.75*0.00062, 1e-9)
	if !math.IsNaN(float64(out.ElasticFound)) {
		t.Errorf("one pull found a share of %v", out.ElasticFound)
	}
	in.ElasticShare = quantity.Ratio(math.NaN())
	_, err := Clearance(in)
	parttest.RefusedAt(t, err, "/bearingClearance")
}

// Between 0.5 and 0.6 mm wire lies what lies between them; a shaft that has dropped by
// 0.3 mm since its clearance was 0.2 mm has 0.5 mm. Derived.
func TestClearanceByWireAndByTheMark(t *testing.T) {
	in := lifted()
	in.LiftTravel, in.SecondTravel = unreadLength, unreadLength
	in.WireIn, in.WireOut, in.WireShare = 0.0005, 0.0006, 0.5
	parttest.Within(t, "wire", float64(worn(t, in).Clearance), 0.00055, 1e-9)
	in.WireIn, in.WireOut = unreadLength, 0
	in.MarkDistance, in.MarkFirst, in.MarkClearance, in.NewClearance = 0.0420, 0.0417, 0.0002, 0.0001
	out := worn(t, in)
	parttest.Within(t, "mark", float64(out.Clearance), 0.0005, 1e-9)
	parttest.Within(t, "drop", float64(out.DropSinceMark), 0.0003, 1e-9)
	in.MarkClearance = unreadLength
	parttest.Within(t, "from new", float64(worn(t, in).Clearance), 0.0004, 1e-9)
	in.MarkFirst = 0
	_, err := Clearance(in)
	parttest.RefusedAt(t, err, "/markFirst")
	in = lifted() // the first of several ways counts, and the others stand beside it
	in.BearingClearance, in.WireIn, in.WireOut, in.WireShare = 0.0009, 0.0006, 0.0008, 0.5
	out = worn(t, in)
	for what, pair := range map[string][2]quantity.Length{"used": {out.Clearance, 0.0005}, "wire": {out.ClearanceFromWire, 0.0007}, "read": {out.ClearanceRead, 0.0009}} {
		parttest.Within(t, what, float64(pair[0]), float64(pair[1]), 1e-9)
	}
}

func TestImpossibleLiftsWiresAndMarksAreRefused(t *testing.T) {
	for where, change := range map[string]func(*ClearanceInput){
		"/liftPull":       func(b *ClearanceInput) { b.LiftPull = 0 },
		"/secondPull":     func(b *ClearanceInput) { b.SecondPull = 0 },
		"/secondPull ":    func(b *ClearanceInput) { b.SecondPull = 290 },
		"/secondTravel":   func(b *ClearanceInput) { b.SecondTravel = 0.0010 },
		"/secondTravel ":  func(b *ClearanceInput) { b.SecondTravel = 0.0001 }, // it was not up
		"/secondTravel  ": func(b *ClearanceInput) { b.SecondTravel = -0.001 },
		"/liftTravel":     func(b *ClearanceInput) { b.LiftTravel = 0.05 },
		"/liftTravel ":    func(b *ClearanceInput) { b.LiftTravel = unreadLength },
		"/dialAft":        func(b *ClearanceInput) { b.DialAft, b.SpanAhead, b.TiltFactor = -0.9, 1, 1 },
		"/tiltFactor":     func(b *ClearanceInput) { b.DialAft, b.SpanAhead, b.TiltFactor = 0.1, 1, 2 },
		"/wireIn":         func(b *ClearanceInput) { b.LiftTravel, b.WireOut = unreadLength, 0.001 },
		"/wireOut":        func(b *ClearanceInput) { b.WireIn = 0.001 },
		"/wireOut ":       func(b *ClearanceInput) { b.WireIn, b.WireOut = 0.001, 0.0005 },
		"/wireOut  ":      func(b *ClearanceInput) { b.WireIn, b.WireOut = 0.001, 0.02 },
		"/markDistance":   func(b *ClearanceInput) { b.MarkDistance, b.MarkFirst = 0.060, 0.042 },
		"/markDistance ":  func(b *ClearanceInput) { b.MarkDistance, b.MarkFirst = 0.030, 0.042 },
		"/markClearance":  func(b *ClearanceInput) { b.MarkClearance = 0.02 },
		"/markClearance ": func(b *ClearanceInput) {
			b.LiftTravel, b.SecondTravel, b.MarkDistance, b.MarkFirst = unreadLength, unreadLength, 0.043, 0.042
		},
		"/markDistance  ": func(b *ClearanceInput) {
			b.LiftTravel, b.SecondTravel, b.MarkFirst = unreadLength, unreadLength, 0.042
		},
		"/markFirst": func(b *ClearanceInput) {
			b.LiftTravel, b.SecondTravel, b.MarkDistance = unreadLength, unreadLength, 0.042
		},
		"/dialAft ":         func(b *ClearanceInput) { b.DialAft, b.SpanAhead, b.TiltFactor = -2.1, 8, 1 },
		"/dialAft  ":        func(b *ClearanceInput) { b.DialAft, b.SpanAhead, b.TiltFactor = 2.1, 8, 1 },
		"/secondTravel   ":  func(b *ClearanceInput) { b.SecondTravel, b.SecondPull = 0.031, 400 }, // more than the shaft is thick
		"/elasticShare":     func(b *ClearanceInput) { b.ElasticShare = 1 },
		"/bearingKind":      func(b *ClearanceInput) { b.BearingKind = "" },
		"/bearingClearance": func(b *ClearanceInput) { b.LiftTravel, b.SecondTravel = unreadLength, unreadLength },
	} {
		in := lifted()
		change(&in)
		_, err := Clearance(in)
		parttest.RefusedAt(t, err, strings.TrimSpace(where))
	}
}

// What holds the shaft ahead of a dial that stands aft need not be known where the
// clearance is known another way, and the lift tells nothing then.
func TestDialAftOfAnUnknownSpan(t *testing.T) {
	in := lifted()
	in.DialAft, in.TiltFactor, in.BearingClearance = 0.1, 1, 0.0009
	out := worn(t, in)
	if !math.IsNaN(float64(out.ClearanceFromLift)) {
		t.Errorf("lift by an unknown lever: %g", out.ClearanceFromLift)
	}
	parttest.Within(t, "read", float64(out.Clearance), 0.0009, 1e-9)
}
