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
	parttest.SameCodes(t, "backlash", "greatest", InGearbox, InGearboxAndHub, InHub, InCoupling, InPropeller, NotSplit, NoPlay, GreatestNotTold)
	parttest.NoAllocations(t, func() { _, _ = Backlash(in) })
}

// Play at a surface is the way that a point of it goes: the chord of so small an
// angle. Growth is of one place, in a thousand hours.
func TestPlayAtItsSurface(t *testing.T) {
	in := unread()
	in.AtOutputShaft, in.AtFlange, in.AtShaft, in.AtPropeller = 0.004, 0.010, 0.013, 0.022
	in.SplineDiameter, in.CouplingBore, in.PropellerDiameter = 0.031, 0.035, 0.028
	in.EarlierAtPropeller, in.RunningTime = 0.011, 250*3600
	out := parttest.Must(t, Backlash, in)
	chord := func(angle, d float64) float64 { return d * math.Sin(angle/2) }
	parttest.Within(t, "spline", out.HubPlay, chord(0.006, 0.031), 1e-5)
	parttest.Within(t, "bore", out.CouplingPlay, chord(0.003, 0.035), 1e-5)
	parttest.Within(t, "taper", out.PropellerPlay, chord(0.009, 0.028), 1e-5)
	parttest.Near(t, "growth", out.PlayGrowth, 0.011, 1e-12)
	parttest.Near(t, "in a thousand hours", out.PlayGrowthPerThousand, 4*0.011, 1e-12)
	parttest.Near(t, "times", out.TimesEarlier, 2, 1e-12)
}

// Two places read part the line once; of alike shares neither is named, and each place alone is read.
func TestBacklashOfTwoPlaces(t *testing.T) {
	in := unread()
	in.AtFlange, in.AtShaft = 0.010, 0.030
	if out := parttest.Must(t, Backlash, in); out.Greatest != InCoupling || out.Total != 0.030 {
		t.Errorf("%+v", out)
	}
	in.AtShaft = 0.020
	if out := parttest.Must(t, Backlash, in); out.Greatest != GreatestNotTold {
		t.Errorf("a joint as loose as gears, clutch and flange together: %s", out.Greatest)
	}
	in = unread()
	in.AtOutputShaft, in.AtFlange = 0.010, 0.020
	if out := parttest.Must(t, Backlash, in); out.Greatest != GreatestNotTold || out.Total != 0.020 {
		t.Errorf("%+v", out)
	}
	for i, read := range []func(*BacklashInput){
		func(in *BacklashInput) { in.AtPropeller = 0.02 }, func(in *BacklashInput) { in.AtShaft = 0.02 },
		func(in *BacklashInput) { in.AtFlange = 0.02 }, func(in *BacklashInput) { in.AtOutputShaft = 0.02 },
		func(in *BacklashInput) { in.TravelAtPropeller, in.RadiusAtPropeller = 0.002, 0.1 }, func(in *BacklashInput) { in.TravelAtShaft, in.RadiusAtShaft = 0.002, 0.1 },
		func(in *BacklashInput) { in.TravelAtFlange, in.RadiusAtFlange = 0.002, 0.1 }, func(in *BacklashInput) { in.TravelAtOutputShaft, in.RadiusAtOutputShaft = 0.002, 0.1 },
	} {
		in := unread()
		read(&in)
		if out := parttest.Must(t, Backlash, in); !in.Read() || out.Total != 0.02 || out.Greatest != NotSplit {
			t.Errorf("place %d alone: %g, %s", i, out.Total, out.Greatest)
		}
	}
	in = unread()
	in.TravelAtFlange, in.RadiusAtFlange = 0.2, 0.05
	_, err := Backlash(in)
	parttest.Says(t, err, "up to 157.1 mm")
}

// With readings good for ±1° (rectangular: 0.58° of standard uncertainty) a share
// is told from nothing from 1.1° on, of the first place, and from the next by 2.5°
// and more (GUM: root of the sum of squares).
func TestGreatestShareIsToldByItsGauge(t *testing.T) {
	degree := math.Pi / 180
	for _, c := range []struct {
		output, flange, shaft float64 // read, in degrees
		want                  string
	}{{0, 0, 0, NoPlay}, {1, 1, 1, NoPlay}, {2, 3.5, 3.5, GreatestNotTold}, {1, 6, 7, InHub}, {0.5, 2.6, 3.1, GreatestNotTold}, {5, 5.5, 6, InGearbox}} {
		in := unread()
		in.AtOutputShaft, in.AtFlange, in.AtShaft = quantity.Angle(c.output*degree), quantity.Angle(c.flange*degree), quantity.Angle(c.shaft*degree)
		u := quantity.Angle(degree / math.Sqrt(3))
		in.OutputShaftSpread, in.FlangeSpread, in.ShaftSpread = u, u, u
		if out := parttest.Must(t, Backlash, in); out.Greatest != c.want {
			t.Errorf("%+v: %s", c, out.Greatest)
		}
		// By travel on a radius of 100 mm the same.
		in.TravelAtFlange, in.RadiusAtFlange, in.AtFlange = quantity.Length(float64(in.AtFlange)*0.1), 0.1, quantity.Angle(math.NaN())
		in.FlangeSpread, in.FlangeTravelSpread = 0, quantity.Length(float64(u)*0.1)
		if out := parttest.Must(t, Backlash, in); out.Greatest != c.want {
			t.Errorf("by travel, %+v: %s", c, out.Greatest)
		}
	}
}

// A reading by angle is off by what the angle is, one by travel by that on its radius.
func TestHowFarAReadingIsOff(t *testing.T) {
	nan := quantity.Angle(math.NaN())
	for _, c := range []struct {
		angle  quantity.Angle
		radius quantity.Length
		want   float64
	}{{0.01, 0.05, 0.003}, {0.01, 0, 0.003}, {nan, 0.05, 0.002}, {nan, 0, 0.003}} {
		parttest.Within(t, "off", off(c.angle, 0.003, 1e-4, c.radius), c.want, 1e-12)
	}
}
