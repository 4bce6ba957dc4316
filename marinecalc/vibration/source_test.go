package vibration

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

const rpm = math.Pi / 30

var sources = []Suspect{
	{Name: "half", Base: "engine", Multiple: 0.5, InNeutral: "stays", AtSpeed: "moves", InAstern: "stays", Look: "look at the injectors"},
	{Name: "crank", Base: "engine", Multiple: 1, InNeutral: "stays", AtSpeed: "moves", InAstern: "stays", Look: "look at the plate"},
	{Name: "input", Base: "engine", Multiple: 1, InNeutral: "stays", AtSpeed: "moves", InAstern: "stays", Look: "listen at the box"},
	{Name: "firing", Base: "firing", Multiple: 1, InNeutral: "stays", AtSpeed: "moves", InAstern: "stays", Look: "look at the mounts"},
	{Name: "shaft", Base: "shaft", Multiple: 1, InNeutral: "goes", AtSpeed: "moves", InAstern: "changes", Look: "turn it by hand"},
	{Name: "blade", Base: "blade", Multiple: 1, InNeutral: "goes", AtSpeed: "moves", InAstern: "changes", Look: "look at the blades"},
	{Name: "outer", Base: "outer-race", Multiple: 1, InNeutral: "goes", AtSpeed: "moves", InAstern: "changes", Look: "listen"},
	{Name: "mounts", Base: "mounts", Multiple: 1, InNeutral: "stays", AtSpeed: "stays", InAstern: "stays", Look: "go through the speeds"},
}

func line() SourceInput {
	return SourceInput{EngineSpeed: 1800 * rpm, Gear: Ahead, Cylinders: 3, Strokes: FourStroke, GearRatioAhead: 2, GearRatioAstern: 1.9, Blades: 3,
		Balls: 9, BallDiameter: 0.3126 * 0.0254, BearingPitch: 1.537 * 0.0254, BearingTurns: WithShaft, BearingSlip: 0.02,
		MountFrequency: 9, MountAccuracy: 0.1, Frequency: 45, FrequencyAccuracy: 0.5, SpeedAccuracy: 0.02}
}

func find(t *testing.T, in SourceInput) SourceResult {
	t.Helper()
	m, err := Source(in, sources, &Ranking{})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Source: Case Western Reserve University bearing data centre, multipliers of
// the drive-end bearing 6205 for each turn.
func TestBearingCWRU6205(t *testing.T) {
	o := Bearing(9, 0.3126, 1.537, 0)
	for _, c := range []struct{ got, want float64 }{{o.Outer, 3.5848}, {o.Inner, 5.4152}, {o.Cage, 0.39828}, {o.Ball, 4.7135}} {
		if math.Abs(c.got-c.want) > 6e-5 {
			t.Errorf("%.6g, published %.6g", c.got, c.want)
		}
	}
}

// Property: outer and inner ring together meet every ball once a turn.
func TestBearingIdentity(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 1000 {
		n := 3 + r.IntN(30)
		o := Bearing(n, 0.2+0.6*r.Float64(), 1, r.Float64())
		if math.Abs(o.Outer+o.Inner-float64(n)) > 1e-12*float64(n) || math.Abs(o.Cage*float64(n)-o.Outer) > 1e-12*float64(n) {
			t.Fatalf("%d balls: %+v", n, o)
		}
	}
}

// The shares are the likelihoods of a general statistics library over their
// sum.
func TestSharesAgainstGonum(t *testing.T) {
	in := line()
	in.Frequency, in.SpeedAccuracy = 44, 0.05
	m := find(t, in)
	total, want := 0.0, map[string]float64{}
	for _, c := range m.Sources {
		if c.Name == "" || c.Name == NotListed {
			continue
		}
		f := float64(c.Frequency)
		speed := 0.05 * f
		if c.Name == "mounts" {
			speed = 0.1 * f
		}
		v := (0.25 + speed*speed) / 3
		if c.Name == "outer" {
			v += 0.0001 * f * f / 3
		}
		want[c.Name] = distuv.Normal{Mu: f, Sigma: math.Sqrt(v)}.Prob(44)
		total += want[c.Name]
	}
	want[NotListed] = 1.0 / 1000
	total += want[NotListed]
	for _, c := range m.Sources {
		if c.Name != "" && math.Abs(float64(c.Share)-want[c.Name]/total) > 2*least {
			t.Errorf("%s: %.9g, want %.9g", c.Name, c.Share, want[c.Name]/total)
		}
	}
}

// What is not looked at changes nothing: a gear's teeth, whose mesh lies far
// off, leave the share of a measured 46 Hz as it was.
func TestFarSourcesChangeNoShare(t *testing.T) {
	in := line()
	in.Frequency = 46
	without := find(t, in).BestShare
	list := append(append([]Suspect(nil), sources...), Suspect{Name: "mesh", Base: "mesh", Multiple: 2})
	for _, teeth := range []int{0, 23, 60} {
		in.InputTeeth = teeth
		m, err := Source(in, list, &Ranking{})
		if err != nil || math.Abs(float64(m.BestShare-without)) > 1e-12 {
			t.Errorf("%d teeth: %g, without %g, %v", teeth, m.BestShare, without, err)
		}
	}
}

// The vibration over what it was.
func TestGrowth(t *testing.T) {
	in := line()
	in.VibrationVelocity = 6e-3
	if m := find(t, in); !math.IsNaN(float64(m.Growth)) {
		t.Errorf("without a baseline %g", m.Growth)
	}
	in.VibrationBaseline = 2e-3
	parttest.Near(t, "growth", float64(find(t, in).Growth), 3, 1e-12)
	in.VibrationVelocity = 0
	if m := find(t, in); !math.IsNaN(float64(m.Growth)) {
		t.Errorf("without a reading %g", m.Growth)
	}
}

// Property: the shares add up to 1 and are in order; every source, heard at
// its own frequency, is first or as likely as the first.
func TestEachSourceIsFoundAtItsOwnFrequency(t *testing.T) {
	quiet := line()
	quiet.Frequency = 0
	for _, s := range find(t, quiet).Sources {
		if s.Name == "" {
			continue
		}
		in := line()
		in.Frequency = s.Frequency
		m := find(t, in)
		sum, last := 0.0, 2.0
		for _, c := range m.Sources {
			if c.Name == "" {
				continue
			}
			if float64(c.Share) > last {
				t.Errorf("%s: the shares are not in order", s.Name)
			}
			sum, last = sum+float64(c.Share), float64(c.Share)
			// A neighbour's tail may overlap where the frequencies are close.
			if c.Name == s.Name && float64(c.Share) < 0.9*float64(m.BestShare) {
				t.Errorf("%s: %.3g, behind %s with %.3g", s.Name, c.Share, m.BestMatch, m.BestShare)
			}
		}
		if math.Abs(sum-1) > 1e-5 {
			t.Errorf("%s: the shares add up to %g", s.Name, sum)
		}
	}
}

// Ties: three cylinders fire, and three blades at 2:1 pass, both at 45 Hz,
// and neutral parts them; crank and input shaft are parted by no run.
func TestTies(t *testing.T) {
	m := find(t, line())
	if m.BestMatch != "firing" || m.Alike() != 2 || m.Sources[1].Name != "blade" || m.RunnerUp != NotListed || m.Parting != ByNeutral || math.Abs(float64(m.BestShare-0.5)) > 0.01 {
		t.Errorf("%s %g, %s %g: %s", m.BestMatch, m.BestShare, m.RunnerUp, m.RunnerUpShare, m.Parting)
	}
	in := line()
	in.Frequency = 30
	if m := find(t, in); m.Parting != ByNoRun {
		t.Error(m.Parting)
	}
	in.Frequency = 400
	if m := find(t, in); m.BestMatch != NotListed || m.Parting != NoneFits {
		t.Errorf("%s: %s", m.BestMatch, m.Parting)
	}
	in.Gear = Neutral
	for _, c := range find(t, in).Sources {
		if c.Name == "shaft" || c.Name == "blade" || c.Name == "outer" {
			t.Errorf("in neutral %s turns", c.Name)
		}
	}
}

// Where nothing was measured the sources stand by their frequency; where
// something was, the likeliest stands first, of slow ones too.
func TestOrderOfTheSources(t *testing.T) {
	in := line()
	in.Frequency = 0
	last := 0.0
	for _, c := range find(t, in).Sources {
		if c.Name == "" {
			continue
		}
		if float64(c.Frequency) < last {
			t.Errorf("%s at %g Hz stands after %g Hz", c.Name, c.Frequency, last)
		}
		last = float64(c.Frequency)
	}
	in.EngineSpeed, in.Blades, in.FrequencyAccuracy, in.Frequency = 40*rpm, 0, 0.02, 1 // turned over by hand, three compressions in two turns
	if m := find(t, in); m.BestMatch != "firing" {
		t.Errorf("the compressions are felt, and %s stands first", m.BestMatch)
	}
}

// Zones are asked for as a whole: where their last limit is missing there is
// no zone, and nobody is asked for the one between.
func TestZonesWithoutTheirLastLimit(t *testing.T) {
	in := line()
	in.ZoneAb, in.VibrationVelocity = 0.0018, 0.003
	if m := find(t, in); m.Zone != "" {
		t.Errorf("zone %q", m.Zone)
	}
}

// As many kinds of sources as there are rows are one too many: the last row is
// for none of them.
func TestMostSources(t *testing.T) {
	many := make([]Suspect, Most-1)
	for i := range many {
		many[i] = Suspect{Name: string(rune('a' + i)), Base: "engine", Multiple: float64(i + 1)}
	}
	m, err := Source(line(), many, &Ranking{})
	if err != nil || m.Sources[Most-1].Name == "" {
		t.Errorf("%d kinds: %v, %v", len(many), m.Sources[Most-1], err)
	}
	if _, err = Source(line(), append(many, many[0]), &Ranking{}); err == nil {
		t.Error("one more is taken")
	}
}

// A source keeps its row while trials move the numbers.
func TestRankingIsKept(t *testing.T) {
	var keep Ranking
	in := line()
	first, err := Source(in, sources, &keep)
	if err != nil {
		t.Fatal(err)
	}
	in.Frequency = 15
	second, err := Source(in, sources, &keep)
	if err != nil {
		t.Fatal(err)
	}
	for i := range first.Sources {
		if first.Sources[i].Name != second.Sources[i].Name {
			t.Errorf("row %d was %q and is %q", i, first.Sources[i].Name, second.Sources[i].Name)
		}
	}
}

func TestSourceRefuses(t *testing.T) {
	for where, spoil := range map[string]func(*SourceInput){
		"/engineSpeed":       func(r *SourceInput) { r.EngineSpeed = 0 },
		"/gear":              func(r *SourceInput) { r.Gear = "sideways" },
		"/strokes":           func(r *SourceInput) { r.Strokes = "" },
		"/ballDiameter":      func(r *SourceInput) { r.BallDiameter = 0.05 },
		"/balls":             func(r *SourceInput) { r.Balls = 30 },
		"/frequencyAccuracy": func(r *SourceInput) { r.FrequencyAccuracy = 0 },
		"/zoneCd":            func(r *SourceInput) { r.ZoneAb, r.ZoneBc, r.ZoneCd = 1e-3, 2e-3, 1.5e-3 },
		"/mountAccuracy":     func(r *SourceInput) { r.MountAccuracy = 0 },
		"/frequency":         func(r *SourceInput) { r.Frequency = quantity.Frequency(math.Inf(1)) },
	} {
		in := line()
		spoil(&in)
		_, err := Source(in, sources, &Ranking{})
		parttest.RefusedAt(t, err, where)
	}
}

func BenchmarkSource(b *testing.B) {
	var keep Ranking
	in := line()
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Source(in, sources, &keep)
	}
}

// A source is off by what was measured less its own frequency: of 45 Hz the
// crankshaft at 1800 r/min, 30 Hz, is 15 Hz below.
func TestOffByIsMeasuredLessComputed(t *testing.T) {
	seen := 0
	for _, c := range find(t, line()).Sources {
		if c.Name == "" || c.Name == NotListed {
			continue
		}
		if seen++; math.Abs(float64(c.OffBy)-(45-float64(c.Frequency))) > 1e-9 {
			t.Errorf("%s at %g Hz is off by %g", c.Name, c.Frequency, c.OffBy)
		}
	}
	if seen < 5 {
		t.Errorf("only %d sources", seen)
	}
}
