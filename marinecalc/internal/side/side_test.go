//go:build unix

// Package side_test measures the calculations beside what a person would write
// or take instead, in the same run: a plain loop in Go, the unit "loop", and a
// general-purpose library of units from the registry. Ratios hold on a machine
// that others slow, where milliseconds do not.
package side_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/bcicen/go-units"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/torque"
)

// loop is one bolt sheet as a person would write it by hand: 4096 trials of six
// inputs, eleven results, each sorted for the ends of its 95 % interval. The
// formulas are those of any handbook (VDI 2230:2015, 5.4.3: torque over thread
// and head; tension and torsion together by von Mises).
func loop(random *rand.Rand) (ends [11][2]float64) {
	const trials = 4096
	var results [11][]float64
	for i := range results {
		results[i] = make([]float64, trials)
	}
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	for t := range trials {
		turning := between(22.5, 27.5)
		thread, head := between(0.1, 0.16), between(0.1, 0.16)
		pitch, across := 1.25e-3*between(0.99, 1.01), 7.188e-3*between(0.995, 1.005)
		bearing := 11e-3 * between(0.95, 1.05)
		area := math.Pi / 4 * math.Pow((across+8e-3-1.2269*pitch)/2, 2)
		clamp := turning / (0.159*pitch + 0.577*thread*across + 0.5*head*bearing)
		twist := clamp * (0.159*pitch + 0.577*thread*across)
		d := 2 * math.Sqrt(area/math.Pi)
		tension, shear := clamp/area, 16*twist/(math.Pi*d*d*d)
		together := math.Sqrt(tension*tension + 3*shear*shear)
		results[0][t], results[1][t], results[2][t], results[3][t] = clamp, twist, tension, shear
		results[4][t], results[5][t], results[6][t] = together, 640e6/together, 580e6*area/clamp
		results[7][t], results[8][t] = turning/(clamp*8e-3), clamp*40e-3/(205e9*area)
		results[9][t], results[10][t] = 0.159*pitch*clamp/turning, 0.5*head*bearing*clamp/turning
	}
	for i, r := range results {
		slices.Sort(r)
		ends[i] = [2]float64{r[trials*25/1000], r[trials*975/1000]}
	}
	return ends
}

// unitsTorque is one torque by the general-purpose library: what was typed is
// read, turned into SI, and the torque printed in the units of either system.
func unitsTorque() string {
	read := func(text, in string) float64 {
		var x float64
		var name string
		if _, err := fmt.Sscan(text, &x, &name); err != nil {
			panic(err)
		}
		from, err := units.Find(name)
		if err != nil {
			panic(err)
		}
		to, err := units.Find(in)
		if err != nil {
			panic(err)
		}
		return units.MustConvertFloat(x, from, to).Float()
	}
	power, speed := read("20 kW", "W"), read("2400 rpm", "rad/s")
	newton, err := units.Find("N·m")
	if err != nil {
		panic(err)
	}
	foot, err := units.Find("lbf·ft")
	if err != nil {
		panic(err)
	}
	t := units.NewValue(power*2*0.96/speed, newton)
	return t.String() + " " + t.MustConvert(foot).String()
}

// What the library does not bring.
func init() {
	turns, angle := units.NewUnit("turns a minute", "rpm"), units.NewUnit("radians a second", "rad/s")
	units.NewRatioConversion(turns, angle, math.Pi/30)
	newton, foot := units.NewUnit("newton metre", "N·m"), units.NewUnit("pound-force foot", "lbf·ft")
	units.NewRatioConversion(newton, foot, 1/1.3558179483314004) // 0.3048 m × 0.45359237 kg × 9.80665 m/s², exact
}

// The yardsticks give what they should: the middle of the loop's clamp load by
// hand, 25 N·m over the estimates, and 20 kW at 2400 rpm through 2:1 at 96 % as
// 152.789 N·m, 112.691 lbf·ft.
func TestYardsticks(t *testing.T) {
	ends := loop(rand.New(rand.NewPCG(1, 1)))
	middle := 25 / (0.159*1.25e-3 + 0.577*0.13*7.188e-3 + 0.5*0.13*11e-3)
	if !(ends[0][0] < middle && middle < ends[0][1]) || ends[0][1] > 1.5*middle || ends[0][0] < 0.6*middle {
		t.Errorf("the loop's clamp load %v, by hand %g", ends[0], middle)
	}
	if got := unitsTorque(); !strings.HasPrefix(got, "152.78") || !strings.Contains(got, "112.691") {
		t.Errorf("the library's torque is %s", got)
	}
}

// one is a thing to measure, in as many runs for one reading of the clock as
// take some 30 ms: shorter ones would be lucky where others have the machine.
type one struct {
	name string
	runs int
	run  func()
}

func sheet(t testing.TB, name, id string, o marinecalc.Options, runs int) one {
	input := []byte(testboat.Typed(t, id))
	return one{name, runs, func() {
		if _, err := marinecalc.Run(id, input, o); err != nil {
			t.Fatal(err)
		}
	}}
}

// things are what is measured; the first two are the yardsticks.
func things(t testing.TB) []one {
	random := rand.New(rand.NewPCG(1, 1))
	boat := testboat.Demo(t, "kittiwake")
	in := torque.ShaftInput{EnginePower: 20e3, EngineSpeed: 2 * math.Pi * 40, GearRatioAhead: 2, GearboxEfficiency: 0.96}
	plain := marinecalc.Options{NoRanges: true}
	return []one{
		{"loop", 15, func() { loop(random) }},
		{"units library, one torque", 600, func() { unitsTorque() }},
		{"typed call, shaft torque", 300000, func() { _, _ = torque.Shaft(in) }},
		sheet(t, "plain sheet, shaft torque", "shaft-torque", plain, 1000),
		sheet(t, "plain sheet, bolt preload", "bolt-preload", plain, 300),
		sheet(t, "plain sheet, gland heat", "gland-heat", plain, 400),
		sheet(t, "plain sheet, alignment", "coupling-alignment", plain, 300),
		sheet(t, "sheet, bolt preload", "bolt-preload", marinecalc.Options{}, 12),
		sheet(t, "sheet, shaft whirl", "shaft-whirl", marinecalc.Options{}, 4),
		sheet(t, "sheet, mount load", "mount-load", marinecalc.Options{}, 4),
		{"whole boat", 1, func() {
			if _, err := marinecalc.Check(boat, marinecalc.Options{}); err != nil {
				t.Fatal(err)
			}
		}},
	}
}

// processor is the time that this process has had on any core.
func processor() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano()) // their sum is exact, how it is parted is not
}

// measure takes turns at all of it, so that what slows the machine slows all,
// and keeps the least processor time of each.
func measure(list []one, rounds int) []time.Duration {
	least := make([]time.Duration, len(list))
	for range rounds {
		for i, o := range list {
			runtime.GC()
			from := processor()
			for range o.runs {
				o.run()
			}
			if took := (processor() - from) / time.Duration(o.runs); least[i] == 0 || took < least[i] {
				least[i] = took
			}
		}
	}
	return least
}

// ratios are the times over the loop's, by name; of the plain sheets those over
// the library's torque too.
func ratios(list []one, least []time.Duration) map[string]float64 {
	out := map[string]float64{}
	for i, o := range list[2:] {
		out[o.name+" / loop"] = float64(least[i+2]) / float64(least[0])
		if strings.HasPrefix(o.name, "plain") {
			out[o.name+" / units library"] = float64(least[i+2]) / float64(least[1])
		}
	}
	return out
}

// BenchmarkSide reports each thing beside the yardsticks.
func BenchmarkSide(b *testing.B) {
	list := things(b)
	least := measure(list, 7)
	for i, o := range list {
		b.Run(o.name, func(b *testing.B) {
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(float64(least[i])/1e3, "µs")
			b.ReportMetric(float64(least[i])/float64(least[0]), "loops")
			b.ReportMetric(float64(least[i])/float64(least[1]), "torques")
		})
	}
	for _, g := range growths(b) {
		b.Run(g.name, func(b *testing.B) {
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(g.of(5), "times")
		})
	}
}

// growth is a thing that is to take in proportion to its size.
type growth struct {
	name       string
	small, big one
	times      float64 // how much larger the big one is
}

// of is by how much more than its size the larger one takes.
func (g *growth) of(rounds int) float64 {
	least := measure([]one{g.small, g.big}, rounds)
	return float64(least[1]) / float64(least[0]) / g.times
}

func growths(t testing.TB) []growth {
	strength := func(trials int) one {
		return sheet(t, fmt.Sprint(trials), "shaft-strength", marinecalc.Options{Trials: trials}, 4)
	}
	boats := func(n int) one {
		boat := testboat.Demo(t, "kittiwake")
		return one{fmt.Sprint(n), 1, func() {
			for range n {
				if _, err := marinecalc.Check(boat, marinecalc.Options{NoRanges: true}); err != nil {
					t.Fatal(err)
				}
			}
		}}
	}
	readings := func(n int) one {
		list := make([]map[string]string, n)
		for i := range list {
			list[i] = map[string]string{"date": time.Date(2000, 1, 1+i, 0, 0, 0, 0, time.UTC).Format(time.DateOnly), "engineHours": fmt.Sprintf("%d h", 10*i)}
		}
		text, err := json.Marshal(map[string]any{"name": "Tern", "readings": list})
		if err != nil {
			t.Fatal(err)
		}
		return one{fmt.Sprint(n), 1, func() {
			if _, err := marinecalc.ReadBoat(text); err != nil {
				t.Fatal(err)
			}
		}}
	}
	return []growth{
		{"growth with trials", strength(8192), strength(32768), 4},
		{"growth with boats", boats(2), boats(8), 4},
		{"growth with readings", readings(500), readings(2000), 4},
	}
}

// TestRatiosStayInBudget is a long check: the ratios are at most those in
// testdata/ratios.json, and nothing grows faster than its size.
func TestRatiosStayInBudget(t *testing.T) {
	if os.Getenv("MARINECALC_RATIOS") == "" {
		t.Skip("set MARINECALC_RATIOS=1 to measure")
	}
	text, err := os.ReadFile("../../../testdata/ratios.json")
	if err != nil {
		t.Fatal(err)
	}
	var budget struct {
		Ratios map[string]struct{ Most float64 }
		Growth float64
	}
	if err := json.Unmarshal(text, &budget); err != nil {
		t.Fatal(err)
	}
	list := things(t)
	got := ratios(list, measure(list, 9))
	for name, r := range got {
		most, known := budget.Ratios[name]
		if !known {
			t.Errorf("%s has no budget; it is %.3f", name, r)
			continue
		}
		t.Logf("%-50s %8.4f of %g", name, r, most.Most)
		if r > most.Most {
			t.Errorf("%s is %.3f, at most %g is allowed", name, r, most.Most)
		}
	}
	for name := range budget.Ratios {
		if _, measured := got[name]; !measured {
			t.Errorf("%s has a budget and is not measured", name)
		}
	}
	for _, g := range growths(t) {
		by := g.of(5)
		t.Logf("%-50s %8.2f of %g", g.name, by, budget.Growth)
		if by > budget.Growth {
			t.Errorf("%s: four times as many take %.2f times that", g.name, by)
		}
	}
}
