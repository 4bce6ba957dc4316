package gland

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// moored is a boat left at its mooring with a slow drip.
func moored() DripInput {
	return DripInput{DripRate: 8. / 60, DripRateAtRest: 4. / 60, DropVolume: 5e-8, TimeUnderWay: 5 * 3600,
		SwitchVolume: 0.020, CycleVolume: 0.012, FloodVolume: 0.300, PumpFlow: 20e-3 / 60,
		PumpPower: 48, StandingPower: 1.2, BatteryEnergy: 1200 * 3600, UsableShare: 0.5, TimeAway: 14 * day}
}

func cost(t *testing.T, in DripInput) DripResult {
	t.Helper()
	return parttest.Must(t, Drip, in)
}

func TestDropsToLitres(t *testing.T) {
	// Derived from the drop of USP 32 <1101>, 20 to the millilitre: 10 drops
	// a minute are 0.72 L a day, 60 are 4.32 L.
	in := moored()
	in.DripRate, in.DripRateAtRest = 1, 10./60
	out := cost(t, in)
	parttest.Within(t, "10 a minute", float64(out.DayAtRest), 0.72e-3, 1e-12)
	parttest.Within(t, "60 a minute", float64(out.DayUnderWay), 4.32e-3, 1e-12)
	// By hand: 5 of the 168 hours of a week are under way.
	parttest.Within(t, "a week", float64(out.WeekVolume), 5*0.18e-3+163*0.03e-3, 1e-12)
}

// In the long run the pump throws out what comes in, and the battery gives
// what the pump and the rest take.
func TestNothingIsLost(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for range 1000 {
		in := moored()
		in.DripRateAtRest = quantity.DripRate(r.Float64())
		in.OtherInflow = quantity.VolumeFlow(1e-7 * r.Float64())
		out := cost(t, in)
		parttest.Within(t, "thrown out a day", float64(in.PumpFlow)*float64(out.PumpTime), float64(out.Inflow)*day, 1e-12)
		parttest.Within(t, "in cycles", float64(out.CyclesPerDay)*float64(in.CycleVolume), float64(out.Inflow)*day, 1e-12)
		if out.TimeToFlat < Never {
			parttest.Within(t, "battery", float64(out.EnergyPerDay)*float64(out.TimeToFlat)/day, float64(in.BatteryEnergy)*float64(in.UsableShare), 1e-12)
		}
		if out.TimeToSwitch > out.TimeToFlood {
			t.Fatal("harm begins before the pump starts")
		}
		parttest.Within(t, "water of the gland", float64(out.GlandShare)*float64(out.Inflow), float64(out.LeakAway), 1e-12)
		parttest.Within(t, "energy of pump and of all else", float64(out.PumpShare)*float64(out.EnergyPerDay)+float64(in.StandingPower)*day, float64(out.EnergyPerDay), 1e-12)
		parttest.Within(t, "greatest inflow", float64(out.PumpLoad)*float64(in.PumpFlow), max(float64(out.LeakUnderWay), float64(out.LeakAway))+float64(in.OtherInflow), 1e-12)
		more := in
		more.DripRateAtRest *= 1.1
		if worse := cost(t, more); worse.TimeUnattended > out.TimeUnattended || worse.EnergyPerDay < out.EnergyPerDay {
			t.Fatal("more drips cost less")
		}
	}
}

// stepped lives through it minute by minute: water comes in, the pump switches
// on and off by the level and runs as long as the battery has anything left.
func stepped(in DripInput) quantity.Time {
	const minute = 60.0
	inflow := float64(in.DropVolume)*float64(in.DripRateAtRest) + float64(in.OtherInflow)
	water, energy, pumping := 0.0, float64(in.BatteryEnergy)*float64(in.UsableShare), false
	for at := 0.0; at < Never; at += minute {
		if water += inflow * minute; water >= float64(in.FloodVolume) {
			return quantity.Time(at)
		}
		if energy -= float64(in.StandingPower) * minute; energy <= 0 {
			continue
		}
		if pumping = water >= float64(in.SwitchVolume) || pumping && water > float64(in.SwitchVolume-in.CycleVolume); pumping {
			run := min(minute, (water-float64(in.SwitchVolume-in.CycleVolume))/float64(in.PumpFlow))
			water -= run * float64(in.PumpFlow)
			energy -= run * float64(in.PumpPower)
		}
	}
	return Never
}

// Boats left alone, lived through minute by minute from the empty bilge. The
// figure is never longer, and shorter by no more than one filling between off
// and on, and what the pump did not take of the battery before it first started.
func TestUnattendedAgainstMinutes(t *testing.T) {
	// The first: 20 drips a minute, 1.44 L a day; 600 W·h of which half are usable
	// and 1.2 W take ten days, before the 28 that fill up to the switch: 60 L are 41.67 days.
	first := DripInput{DropVolume: 5e-8, DripRateAtRest: 20. / 60, SwitchVolume: 0.040, CycleVolume: 0.005, FloodVolume: 0.060, PumpFlow: 20e-3 / 60, PumpPower: 48, StandingPower: 1.2, BatteryEnergy: 600 * 3600, UsableShare: 0.5}
	parttest.Within(t, "battery down before the pump starts", float64(cost(t, first).TimeUnattended)/day, 60/1.44, 1e-12)
	parttest.Within(t, "the same by minutes", float64(stepped(first))/day, 60/1.44, 1e-3)
	r := rand.New(rand.NewPCG(9, 2))
	early, late := 0, 0
	for range 60 {
		in := first
		in.DripRateAtRest = quantity.DripRate(0.2 + 4*r.Float64())
		in.SwitchVolume = quantity.Volume(0.01 + 0.05*r.Float64())
		in.CycleVolume = in.SwitchVolume * quantity.Volume(0.1+0.8*r.Float64())
		in.FloodVolume = in.SwitchVolume * quantity.Volume(1.1+3*r.Float64())
		in.StandingPower = quantity.Power(2 * r.Float64())
		in.BatteryEnergy = quantity.Energy(3600 * (50 + 1000*r.Float64()))
		out, want := cost(t, in), stepped(in)
		slack := float64(in.CycleVolume)/float64(out.Inflow) + float64(out.TimeToSwitch) + 600
		if out.TimeToFlat < out.TimeToSwitch {
			early++
			if slack = 600; float64(in.BatteryEnergy)*float64(in.UsableShare)/float64(in.StandingPower) >= float64(out.TimeToSwitch) {
				slack = float64(want) // the pump may start after all: it has taken nothing yet, and the figure counts it from the first day
			}
		} else {
			late++
		}
		if float64(out.TimeUnattended) > float64(want)+600 || float64(out.TimeUnattended) < float64(want)-slack {
			t.Errorf("%+v: %.2f days, by minutes %.2f", in, float64(out.TimeUnattended)/day, float64(want)/day)
		}
	}
	if early < 5 || late < 5 {
		t.Errorf("%d batteries were down before the pump started, %d after", early, late)
	}
}

func TestUnattendedNeedsEveryFigure(t *testing.T) {
	for name, change := range map[string]func(*DripInput){
		"switch":  func(b *DripInput) { b.SwitchVolume = 0 },
		"flood":   func(b *DripInput) { b.FloodVolume = 0 },
		"pump":    func(b *DripInput) { b.PumpFlow = 0 },
		"battery": func(b *DripInput) { b.BatteryEnergy = 0 },
	} {
		in := moored()
		change(&in)
		if got := cost(t, in).TimeUnattended; !math.IsNaN(float64(got)) {
			t.Errorf("without the %s: %v", name, got)
		}
	}
	in := moored() // more comes in than the pump throws out
	in.OtherInflow = 2 * in.PumpFlow
	if out := cost(t, in); out.TimeUnattended != out.TimeToFlood || out.PumpTime != day {
		t.Errorf("%+v", out)
	}
}

func TestNoDripsNeverFlood(t *testing.T) {
	in := moored()
	in.DripRate, in.DripRateAtRest, in.StandingPower = 0, 0, 0
	out := cost(t, in)
	if Never != 10*365*24*3600 { // ten years
		t.Errorf("never is %g s", float64(Never))
	}
	if out.TimeToSwitch != Never || out.TimeToFlood != Never || out.TimeToFlat != Never || out.EnergyPerDay != 0 {
		t.Errorf("%+v", out)
	}
	if !math.IsNaN(float64(out.GlandShare)) || !math.IsNaN(float64(out.PumpShare)) || out.PumpLoad != 0 {
		t.Errorf("shares of nothing: %+v", out)
	}
	in.DripRateAtRest = -noneBelow / 2 // a count of none, drawn below it
	if got := cost(t, in); got.LeakAtRest != 0 {
		t.Errorf("drips below none leak %v", got.LeakAtRest)
	}
}

func TestWhatIsNotGivenIsNotSaid(t *testing.T) {
	out := cost(t, DripInput{DripRate: 0.1, DripRateAtRest: 0.1, DropVolume: 5e-8, UsableShare: 0.5})
	for name, v := range map[string]float64{"switch": float64(out.TimeToSwitch), "cycles": float64(out.CyclesPerDay), "pump": float64(out.PumpTime),
		"energy": float64(out.EnergyPerDay), "flat": float64(out.TimeToFlat), "flood": float64(out.TimeToFlood), "load": float64(out.PumpLoad), "pump share": float64(out.PumpShare)} {
		if !math.IsNaN(v) {
			t.Errorf("%s is %v", name, v)
		}
	}
}

func TestImpossibleBilgesAreRefused(t *testing.T) {
	for where, change := range map[string]func(*DripInput){
		"/dripRate":      func(b *DripInput) { b.DripRate = -1 },
		"/dropVolume":    func(b *DripInput) { b.DropVolume = 0.05 },
		"/timeUnderWay":  func(b *DripInput) { b.TimeUnderWay = 8 * day },
		"/floodVolume":   func(b *DripInput) { b.FloodVolume = 0.010 },
		"/usableShare":   func(b *DripInput) { b.UsableShare = 50 },
		"/pumpFlow":      func(b *DripInput) { b.PumpFlow = quantity.VolumeFlow(math.NaN()) },
		"/batteryEnergy": func(b *DripInput) { b.BatteryEnergy = -1 },
	} {
		in := moored()
		change(&in)
		_, err := Drip(in)
		parttest.RefusedAt(t, err, where)
	}
}

func TestDripDoesNotAllocate(t *testing.T) {
	in := moored()
	parttest.NoAllocations(t, func() { _, _ = Drip(in) })
}

func BenchmarkDrip(b *testing.B) {
	in := moored()
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Drip(in)
	}
}

// Water of 30 °C has 0.7972/1.3059 of the viscosity of water of 10 °C (CRC
// Handbook, from memory), and so 1.638 times as much of it comes through: the
// bilge fills in 1/1.638 of the time.
func TestWarmerWaterLeaksMore(t *testing.T) {
	in := moored()
	plain := cost(t, in)
	in.WaterTemperature, in.WarmestWater = 283.15, 303.15
	warm := cost(t, in)
	parttest.Within(t, "leak", float64(warm.LeakAway), 1.3059/0.7972*float64(plain.LeakAtRest), 3e-4)
	parttest.Within(t, "as counted", float64(warm.LeakAtRest), float64(plain.LeakAtRest), 1e-12)
	parttest.Within(t, "until harm", float64(warm.TimeToFlood), 0.7972/1.3059*float64(plain.TimeToFlood), 3e-4)
	for _, c := range [][2]quantity.Temperature{{0, 303.15}, {283.15, 0}, {303.15, 283.15}, {290, 290}} {
		in.WaterTemperature, in.WarmestWater = c[0], c[1]
		if out := cost(t, in); out.LeakAway != plain.LeakAtRest || out.TimeUnattended != plain.TimeUnattended {
			t.Errorf("%v: %v, want %v", c, out.LeakAway, plain.LeakAtRest)
		}
	}
	in.WaterTemperature, in.WarmestWater = 270, 350
	if _, err := Drip(in); err == nil {
		t.Error("ice and boiling water are taken")
	}
}
