package flange

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

func unread() BacklashInput {
	nan := math.NaN()
	return BacklashInput{AtPropeller: quantity.Angle(nan), TravelAtPropeller: quantity.Length(nan), AtShaft: quantity.Angle(nan), TravelAtShaft: quantity.Length(nan),
		AtFlange: quantity.Angle(nan), TravelAtFlange: quantity.Length(nan), AtOutputShaft: quantity.Angle(nan), TravelAtOutputShaft: quantity.Length(nan), EarlierAtPropeller: quantity.Angle(nan), ShearModulus: 76e9}
}

// A line of loose joints and a springy shaft, turned from stop to stop: what the
// hand feels at a place is the sum of what lies ahead of it.
func TestBacklashOfALooseLine(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	for range 100 {
		var gap [4]float64 // gears, hub, coupling, propeller
		for i := range gap {
			gap[i] = 0.05 * random.Float64()
		}
		torque, length, d := 10*random.Float64(), 1+2*random.Float64(), 0.02+0.02*random.Float64()
		spring := 76e9 * math.Pi * math.Pow(d, 4) / 32 / length
		stop := func(side float64, joints int, twisted bool) float64 {
			at := 0.0
			for _, g := range gap[:joints] {
				at += side * g / 2
			}
			if twisted {
				at += side * torque / spring
			}
			return at
		}
		read := func(joints int, twisted bool) float64 { return stop(1, joints, twisted) - stop(-1, joints, twisted) }
		in := unread()
		in.AtOutputShaft, in.AtShaft, in.AtPropeller = quantity.Angle(read(1, false)), quantity.Angle(read(3, false)), quantity.Angle(read(4, true))
		in.TravelAtFlange, in.RadiusAtFlange = quantity.Length(0.05*read(2, false)), 0.05
		in.HandTorque, in.ShaftLength, in.ShaftDiameter = quantity.Torque(torque), quantity.Length(length), quantity.Length(d)
		out := parttest.Must(t, Backlash, in)
		for i, v := range []quantity.Angle{out.GearboxShare, out.HubShare, out.CouplingShare, out.PropellerShare} {
			parttest.Near(t, "joint", v, gap[i], 1e-12)
		}
		parttest.Near(t, "in all", out.Total, gap[0]+gap[1]+gap[2]+gap[3], 1e-12)
		most, name := 0.0, ""
		for i, n := range []string{InGearbox, InHub, InCoupling, InPropeller} {
			if gap[i] > most {
				most, name = gap[i], n
			}
		}
		if out.Greatest != name {
			t.Errorf("%v: %s", gap, out.Greatest)
		}
	}
}

// What was not read is not split, and nothing is made of it.
func TestBacklashOfOnePlace(t *testing.T) {
	in := unread()
	in.AtPropeller = 0.05
	out := parttest.Must(t, Backlash, in)
	if out.Greatest != NotSplit || out.Total != 0.05 || !math.IsNaN(float64(out.PropellerShare)) || !math.IsNaN(float64(out.GearboxAndHub)) {
		t.Errorf("%+v", out)
	}
	in.AtFlange = 0.04
	if out = parttest.Must(t, Backlash, in); out.Greatest != NotSplit || !math.IsNaN(float64(out.CouplingShare)) {
		t.Errorf("flange and propeller: %+v", out)
	}
	in.AtShaft = 0.045
	if out = parttest.Must(t, Backlash, in); out.Greatest != InGearboxAndHub {
		t.Errorf("three places: %+v", out)
	}
	in.AtOutputShaft = 0.01
	if out = parttest.Must(t, Backlash, in); out.Greatest != InHub {
		t.Errorf("four places: %+v", out)
	}
	parttest.SameCodes(t, "backlash", "greatest", InGearbox, InGearboxAndHub, InHub, InCoupling, InPropeller, NotSplit)
	parttest.NoAllocations(t, func() { _, _ = Backlash(in) })
}
