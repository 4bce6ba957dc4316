package gland

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// sloop is a scenario of our own: a 25 mm stainless shaft at 1000 r/min in
// four 8 mm rings, 18 °C sea water, ten drips a minute.
func sloop() HeatInput {
	return HeatInput{
		MostDrips: 1, ShaftDiameter: 0.025, BoxBore: 0.041, PackedLength: 0.032,
		ShaftSpeed: 1000 * 2 * math.Pi / 60, DripRate: 10.0 / 60, DripRateAtRest: 1.0 / 60,
		WaterTemperature: 291.15, Salinity: 0.035,
		FrictionCoefficient: 0.1, LateralRatio: 0.7, GlandStress: 1e5,
		DropVolume: 5e-8, Conductivity: 15, WaterFilm: 500, AirFilm: 10, BoxAreaRatio: 4, BoxWetRatio: 0.5,
	}
}

func warm(t *testing.T, in HeatInput) HeatResult {
	t.Helper()
	return parttest.Must(t, Heat, in)
}

// Derived, no publication: the decay law of Denny (BHRA 550, 1957) and
// Ochonski (1988) worked for four 8 mm rings.
func TestFrictionDerived(t *testing.T) {
	w := warm(t, sloop())
	parttest.Near(t, "friction torque", w.FrictionTorque, 0.16839, 5e-6)
	parttest.Near(t, "friction power at 1000 r/min", w.FrictionPower, 17.63, 0.005)
	parttest.Near(t, "end stress ratio", w.EndStressRatio, 0.5712, 5e-5)
	parttest.Near(t, "decay length", w.DecayLength, 1/17.5, 1e-12)
}

// Derived: with next to no decay the torque goes to (d/2)·π·d·L·μ·K·σ0,
// 0.21991 N·m in the case above; here at a small friction, scaled.
func TestFrictionWithoutDecay(t *testing.T) {
	in := sloop()
	in.BoxBore = 0.3 // a wide box hardly takes anything off the stress
	in.FrictionCoefficient = 0.005
	w := warm(t, in)
	limit := 0.025 / 2 * math.Pi * 0.025 * 0.032 * 0.005 * 0.7 * 1e5
	parttest.Near(t, "torque", w.FrictionTorque, limit, limit*1e-3)
	parttest.Near(t, "that limit at μ = 0.1", limit*20, 0.21991, 5e-6)
}

// The closed form is the sum of the friction of thin slices of packing.
func TestFrictionAgainstSlices(t *testing.T) {
	in := sloop()
	var torque float64
	const slices = 200000
	dx := float64(in.PackedLength) / slices
	muK := float64(in.FrictionCoefficient * in.LateralRatio)
	for i := range slices {
		x := (float64(i) + 0.5) * dx
		axial := float64(in.GlandStress) * math.Exp(-4*muK*x/float64(in.BoxBore-in.ShaftDiameter))
		torque += muK * axial * math.Pi * float64(in.ShaftDiameter) * dx * float64(in.ShaftDiameter) / 2
	}
	parttest.Near(t, "torque", warm(t, in).FrictionTorque, torque, torque*1e-9)
}

// Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer,
// example 3.9, a very long rod 5 mm in diameter at 75 K above air with
// h = 100 W/(m²·K): value from memory.
func TestFinIncropera(t *testing.T) {
	for _, c := range []struct{ k, watts float64 }{{398, 8.3}, {180, 5.6}, {14, 1.6}} {
		in := HeatInput{ShaftDiameter: 0.005, AirFilm: 100, Conductivity: quantity.Conductivity(c.k)}
		var w HeatResult
		w.conduct(&in)
		parttest.Near(t, "heat along the rod", 75*w.ShaftAirConductance, c.watts, 0.05)
	}
}

// Source: USP 32 <1101>, an official dropper gives 20 drops to the millilitre.
func TestLeakUSP(t *testing.T) {
	in := sloop()
	day := 86400 * 1000.0 // s/day · L/m³
	in.DripRateAtRest = 1
	w := warm(t, in)
	parttest.Near(t, "ten drips a minute in litres a day", float64(w.LeakUnderWay)*day, 0.72, 1e-12)
	parttest.Near(t, "sixty drips a minute in litres a day", float64(w.LeakAtRest)*day, 4.32, 1e-12)
}

func TestHeatOptionalReadings(t *testing.T) {
	in := sloop()
	in.DripRateAtRest = quantity.DripRate(math.NaN())
	w := warm(t, in)
	for name, v := range map[string]float64{
		"measuredRise": float64(w.MeasuredRise), "impliedPower": float64(w.ImpliedPower),
		"riseRatio": float64(w.RiseRatio), "dripRateForRise": float64(w.DripRateForRise), "leakAtRest": float64(w.LeakAtRest),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s = %g without its reading, want NaN", name, v)
		}
	}
	if w.WhatHoldsIt != "" || w.AirDifference != 0 || w.RiseAtRest != 0 {
		t.Errorf("%+v", w)
	}
}

// A gland with a high wanted rise needs no drips, one with a rise a little
// under that without drips a few. Source of the drip rate past which no drip is
// said to hold it: general texts on packed pumps, 40 to 60 drops a minute.
func TestDripRateForRiseWords(t *testing.T) {
	in := sloop()
	in.WantedRise = 60
	if w := warm(t, in); w.DripRateForRise != 0 || w.WhatHoldsIt != HeldByMetal {
		t.Errorf("a 60 K rise: %g, %q", w.DripRateForRise, w.WhatHoldsIt)
	}
	in.WantedRise = warm(t, in).RiseWithoutDrips
	for words := ""; words != HeldByNone; in.WantedRise *= 0.999 {
		w := warm(t, in)
		words = w.WhatHoldsIt
		want := HeldByNone
		switch perMinute := 60 * float64(w.DripRateForRise); {
		case perMinute == 0:
			want = HeldByMetal
		case perMinute <= 60:
			want = HeldByDrips
		}
		if words != want {
			t.Fatalf("a %g K rise: %g drips/s, %q", in.WantedRise, w.DripRateForRise, words)
		}
	}
}

// Properties over running glands of every kind: heat in is heat out; the drip
// rate for a rise gives that rise; the implied power of the computed rise is
// the friction power; hotter with more squeeze, cooler with more drips.
func TestHeatProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	drips, boiled := 0, 0
	for range 3000 {
		in := anyGland(r)
		w := warm(t, in)
		rise := float64(w.TemperatureRise)
		if w.GlandTemperature >= 373.15-1e-9 { // it boils, and the balance ends
			boiled++
			if toWater := float64(w.DryConductance+w.DripConductance) * rise; toWater > float64(w.FrictionPower)+float64(w.ShaftAirConductance+w.BoxAirConductance)*float64(w.AirDifference)*(1+1e-12) || w.GlandTemperature > 373.15+1e-9 {
				t.Fatalf("%g K from %g W", rise, w.FrictionPower)
			}
			continue
		}
		toWater := float64(w.ShaftWaterConductance+w.BoxWaterConductance+w.DripConductance) * rise
		toAir := float64(w.ShaftAirConductance+w.BoxAirConductance) * (rise - float64(w.AirDifference))
		parttest.Near(t, "heat out", toWater+toAir, float64(w.FrictionPower), 1e-9*(math.Abs(toWater)+math.Abs(toAir)))

		dry := in
		dry.DripRate = 0
		parttest.Near(t, "rise without drips", w.RiseWithoutDrips, float64(warm(t, dry).TemperatureRise), 1e-12*math.Abs(float64(w.RiseWithoutDrips)))
		atRest := float64(w.RiseAtRest)
		toWaterAtRest := float64(w.ShaftWaterConductance+w.BoxWaterConductance) * atRest
		fromAirAtRest := float64(w.ShaftAirConductance+w.BoxAirConductance) * (float64(w.AirDifference) - atRest)
		parttest.Near(t, "heat through at rest", toWaterAtRest, fromAirAtRest, 1e-9*toWaterAtRest)
		if w.AirDifference == 0 {
			parttest.Near(t, "drips' share of the heat", float64(w.DripShare)*float64(w.FrictionPower), float64(w.DripConductance)*rise, 1e-9*float64(w.FrictionPower))
		}

		measured := in
		measured.MeasuredGlandTemperature = w.GlandTemperature
		if w.GlandTemperature > 263.2 && w.GlandTemperature < 423 {
			parttest.Near(t, "implied power", warm(t, measured).ImpliedPower, float64(w.FrictionPower), 1e-9*float64(w.FrictionPower)+1e-10*float64(w.DryConductance)*300)
		}

		wanted := in
		wanted.WantedRise = quantity.TemperatureDifference(1 + 40*r.Float64())
		if n := warm(t, wanted).DripRateForRise; n > 0 && n < 20 {
			drips++
			wanted.DripRate = n
			parttest.Near(t, "rise at that drip rate", warm(t, wanted).TemperatureRise, float64(wanted.WantedRise), 1e-9*float64(wanted.WantedRise))
		} else if n == 0 && float64(w.RiseWithoutDrips) > float64(wanted.WantedRise)*(1+1e-12) {
			t.Fatalf("no drips wanted, yet %g K without them is over %g K", w.RiseWithoutDrips, wanted.WantedRise)
		}

		harder, wetter := in, in
		harder.GlandStress *= 1.1
		wetter.DripRate += 0.5
		if warm(t, harder).TemperatureRise <= w.TemperatureRise {
			t.Fatal("more squeeze, less heat")
		}
		if v := warm(t, wetter).TemperatureRise; math.Abs(float64(v)) >= math.Abs(rise) {
			t.Fatal("more drips, no cooler")
		}
	}
	if drips < 100 || boiled < 100 {
		t.Errorf("only %d of the cases needed drips and %d boiled: the property was hardly tried", drips, boiled)
	}
}

// A drip is seen from one a minute on, and is a leak past what is typed as the most.
func TestStatesOfTheDrip(t *testing.T) {
	for perMinute, want := range map[float64]string{0: DripsNone, 0.9: DripsNone, 1: DripsSteady, 20: DripsSteady, 20.1: DripsLeak} {
		in := sloop()
		in.MostDrips, in.DripRate = 20./60, quantity.DripRate(perMinute/60)
		if got := warm(t, in).DripState; got != want {
			t.Errorf("%g a minute: %q, want %q", perMinute, got, want)
		}
	}
}

// Nothing at rest drips: counted, and none.
func TestNoDripsAtRestIsACount(t *testing.T) {
	in := sloop()
	in.DripRateAtRest = 0
	if got := warm(t, in).LeakAtRest; got != 0 {
		t.Errorf("no drips at rest leak %v", got)
	}
}

// Scaling: heat is linear in squeeze and in speed.
func TestHeatScales(t *testing.T) {
	in := sloop()
	one := warm(t, in)
	in.GlandStress, in.ShaftSpeed = 3*in.GlandStress, in.ShaftSpeed/2
	parttest.Near(t, "rise", warm(t, in).TemperatureRise, 1.5*float64(one.TemperatureRise), 1e-12)
}

func TestCurveIsHeat(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for range 200 {
		in := anyGland(r)
		rates := []quantity.DripRate{0, 0.01, 0.2, 1, 5, 20}
		out := make([]quantity.TemperatureDifference, len(rates))
		if err := Curve(in, rates, out); err != nil {
			t.Fatal(err)
		}
		for i, rate := range rates {
			in.DripRate = rate
			want := float64(warm(t, in).TemperatureRise)
			parttest.Near(t, "curve", out[i], want, 1e-12*math.Abs(want)+1e-12)
		}
	}
}

// Where the gland was measured the curve goes through what the thermometer
// says at the drip rate that was counted, and keeps the heat along it.
func TestCurveGoesThroughTheMeasuredRise(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	for range 200 {
		in := anyGland(r)
		in.DripRate = quantity.DripRate(r.Float64())
		in.MeasuredGlandTemperature = max(in.WaterTemperature, in.AirTemperature) + 2 + quantity.Temperature(60*r.Float64())
		w := warm(t, in)
		out := make([]quantity.TemperatureDifference, 2)
		if err := Curve(in, []quantity.DripRate{in.DripRate, 0}, out); err != nil {
			t.Fatal(err)
		}
		parttest.Near(t, "at the drip rate counted", out[0], float64(w.MeasuredRise), 1e-9*float64(w.MeasuredRise))
		parttest.Near(t, "without drips", out[1], float64(w.RiseWithoutDrips), 1e-9*float64(w.RiseWithoutDrips))
		if w.TemperatureRise > 0 {
			parttest.Near(t, "measured over computed", float64(w.RiseRatio)*float64(w.TemperatureRise), float64(w.MeasuredRise), 1e-9*float64(w.MeasuredRise))
		}
	}
}

func TestCurveRefuses(t *testing.T) {
	out := make([]quantity.TemperatureDifference, 1)
	if Curve(sloop(), make([]quantity.DripRate, 2), out) == nil {
		t.Error("a short out was taken")
	}
	if Curve(sloop(), []quantity.DripRate{-1}, out) == nil {
		t.Error("a negative rate was taken")
	}
	if Curve(HeatInput{}, nil, nil) == nil {
		t.Error("an empty gland was taken")
	}
}

// A count of none, less its accuracy, is still none.
func TestDripCountOfNone(t *testing.T) {
	in := sloop()
	in.DripRate = 0
	none := warm(t, in)
	in.DripRate, in.DripRateAtRest = -1.0/60, -1.0/60
	less := warm(t, in)
	if less.LeakUnderWay != 0 || less.LeakAtRest != 0 || less.TemperatureRise != none.TemperatureRise {
		t.Errorf("%+v", less)
	}
}

// The water is that of package fluid at water temperature.
func TestHeatWater(t *testing.T) {
	for _, s := range []quantity.Ratio{0, 0.035} {
		in := sloop()
		in.Salinity = s
		w := warm(t, in)
		want, err := fluid.AtSurface(in.WaterTemperature, s)
		if err != nil || w.WaterDensity != want.Density || w.WaterSpecificHeat != want.SpecificHeat {
			t.Errorf("%+v, want %+v (%v)", w, want, err)
		}
	}
}

func TestHeatAllocatesNothing(t *testing.T) {
	in := sloop()
	in.MeasuredGlandTemperature, in.WantedRise, in.AirTemperature = 305, 10, 303
	parttest.NoAllocations(t, func() { _, _ = Heat(in) })
}

// anyGland draws a gland inside the ranges.
func anyGland(r *rand.Rand) HeatInput {
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	in := HeatInput{
		MostDrips:           1,
		ShaftDiameter:       quantity.Length(between(0.015, 0.15)),
		PackedLength:        quantity.Length(between(0.01, 0.2)),
		ShaftSpeed:          quantity.RotationSpeed(between(5, 300)),
		DripRate:            quantity.DripRate(between(0, 2)),
		WaterTemperature:    quantity.Temperature(between(273.2, 313)),
		Salinity:            quantity.Ratio(between(0, 0.04)),
		FrictionCoefficient: quantity.Ratio(between(0.01, 0.3)),
		LateralRatio:        quantity.Ratio(between(0.3, 1)),
		GlandStress:         quantity.Stress(between(1e4, 5e5)),
		DropVolume:          quantity.Volume(between(3e-8, 1e-7)),
		Conductivity:        quantity.Conductivity(between(10, 100)),
		WaterFilm:           quantity.HeatTransfer(between(100, 2000)),
		AirFilm:             quantity.HeatTransfer(between(5, 30)),
		BoxAreaRatio:        quantity.Ratio(between(1, 8)),
		BoxWetRatio:         quantity.Ratio(between(0, 2)),
	}
	in.BoxBore = in.ShaftDiameter + quantity.Length(between(0.01, 0.05))
	if r.IntN(2) == 0 {
		in.AirTemperature = in.WaterTemperature + quantity.Temperature(between(0, 25))
	}
	return in
}

func BenchmarkHeat(b *testing.B) {
	for name, s := range map[string]quantity.Ratio{"sea": 0.035, "fresh": 0} {
		b.Run(name, func(b *testing.B) {
			in := sloop()
			in.Salinity, in.WantedRise, in.MeasuredGlandTemperature = s, 15, 303
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Heat(in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A measured gland decides: the drips for a wanted rise carry off the heat that
// the thermometer implies, whatever the computed friction; a gland measured no
// warmer than water and air needs none.
func TestMeasuredHeatSetsTheDrips(t *testing.T) {
	in := sloop()
	in.WantedRise = 5
	in.MeasuredGlandTemperature = in.WaterTemperature + 30
	w := warm(t, in)
	parttest.Near(t, "heat held", w.HeatHeld, float64(w.ImpliedPower), 0)
	carried := float64(w.DryConductance) + w.perDripFlow()*float64(in.DropVolume)*float64(w.DripRateForRise)
	fromAir := float64(w.ShaftAirConductance+w.BoxAirConductance) * float64(w.AirDifference)
	parttest.Near(t, "heat carried at the wanted rise", carried*5, float64(w.ImpliedPower)+fromAir, 1e-9*float64(w.ImpliedPower))
	parttest.Near(t, "rise without drips", w.RiseWithoutDrips, (float64(w.ImpliedPower)+fromAir)/float64(w.DryConductance), 1e-9)

	in.MeasuredGlandTemperature = in.WaterTemperature
	if w := warm(t, in); w.DripRateForRise != 0 || w.WhatHoldsIt != HeldByMetal || w.HeatHeld != max(0, w.ImpliedPower) {
		t.Errorf("a cold gland: %g, %q, %g W", w.DripRateForRise, w.WhatHoldsIt, w.HeatHeld)
	}
}

// The box as a wall of its own area: its bore times its length all round, as much
// of it as air and water reach (Newton's law of cooling).
func TestWallsOfTheBox(t *testing.T) {
	in := sloop()
	out := warm(t, in)
	wall := math.Pi * float64(in.BoxBore) * float64(in.PackedLength)
	parttest.Within(t, "to the air", out.BoxAirConductance, wall*float64(in.BoxAreaRatio)*float64(in.AirFilm), 1e-12)
	in.BoxWetRatio = 0.7
	parttest.Within(t, "to the water", warm(t, in).BoxWaterConductance, wall*0.7*float64(in.WaterFilm), 1e-12)
}
