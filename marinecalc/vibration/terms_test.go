package vibration

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// An angular contact bearing as a train of wheels: its rings touch the balls at
// radii that the angle brings together, the cage turns at the middle of both
// rims' speeds, and a ball rolls on the outer ring as fast as its middle goes
// round it.
func TestAngularContactAsWheels(t *testing.T) {
	for _, angle := range []float64{0, 15, 25, 40} {
		const balls, d, pitch = 11, 9.5, 46.0
		a := angle * math.Pi / 180
		inner, outer := (pitch-d*math.Cos(a))/2, (pitch+d*math.Cos(a))/2
		cage := inner / 2 / (pitch / 2) // its middle goes at half the inner ring's rim
		ball := 2 * cage * outer / d
		o := Bearing(balls, d, pitch, a)
		parttest.Within(t, "cage", o.Cage, cage, 1e-12)
		parttest.Within(t, "outer", o.Outer, balls*cage, 1e-12)
		parttest.Within(t, "inner", o.Inner, balls*(1-cage), 1e-12)
		parttest.Within(t, "ball", o.Ball, 2*ball, 1e-12)
	}
}

// The engine on its mounts is as far off as its own accuracy, whatever the speed.
func TestMountsAreAsFarOffAsTheirAccuracy(t *testing.T) {
	in := line()
	in.Frequency, in.MountAccuracy, in.SpeedAccuracy = 9.6, 0.15, 0.5
	out, err := Source(in, []Suspect{{Name: "mounts", Base: "mounts", Multiple: 1}}, &Ranking{})
	if err != nil {
		t.Fatal(err)
	}
	sigma := math.Sqrt((0.5*0.5 + 0.15*9*0.15*9) / 3)
	density := distuv.Normal{Mu: 9, Sigma: sigma}.Prob(9.6)
	parttest.Within(t, "share", out.BestShare, density/(density+1e-3), 1e-9)
	parttest.Within(t, "order", out.Sources[0].Order, 9./30, 1e-12)
	parttest.Within(t, "off by", out.Sources[0].OffBy, 0.6, 1e-9)
}

// Where nothing was measured nothing is matched; where nothing is known of the
// line what was measured is of something else, and nothing comes second.
func TestNothingToMatch(t *testing.T) {
	in := line()
	in.Frequency = 0
	for _, list := range [][]Suspect{sources, sources[:1]} {
		m, err := Source(in, list, &Ranking{})
		if err != nil || m.BestMatch != "" || m.Parting != "" || !math.IsNaN(float64(m.BestShare)) || !math.IsNaN(float64(m.RunnerUpShare)) {
			t.Errorf("nothing measured: %q by %g, %v", m.BestMatch, m.BestShare, err)
		}
	}
	in.Frequency = 45
	m, err := Source(in, []Suspect{{Name: "teeth", Base: "mesh", Multiple: 1}}, &Ranking{})
	if err != nil || m.BestMatch != NotListed || m.BestShare != 1 || m.RunnerUp != "" || !math.IsNaN(float64(m.RunnerUpShare)) || m.Parting != NoneFits {
		t.Errorf("nothing known: %+v, %v", m, err)
	}
	in.InputTeeth = 0
	m, err = Source(SourceInput{EngineSpeed: 100, Gear: Neutral}, []Suspect{{Name: "teeth", Base: "mesh", Multiple: 1}}, &Ranking{})
	if err != nil || m.BestMatch != "" || !math.IsNaN(float64(m.BestShare)) {
		t.Errorf("nothing at all: %+v, %v", m, err)
	}
}

// Two sources some five times apart are parted by a run, within a tenth they are
// alike, and what is not listed is no second; over many places between them.
func TestTwoSourcesBetweenThem(t *testing.T) {
	two := []Suspect{
		{Name: "low", Base: "engine", Multiple: 1, InNeutral: "stays", Look: "look at the low one"},
		{Name: "high", Base: "engine", Multiple: 1.05, InNeutral: "goes", Look: "look at the high one"},
	}
	seen := map[string]int{}
	for at := 28.0; at < 34; at += 0.01 {
		in := line()
		in.Frequency, in.SpeedAccuracy = quantity.Frequency(at), 0
		m, err := Source(in, two, &Ranking{})
		if err != nil {
			t.Fatal(err)
		}
		v := 0.25 / 3
		low, high := distuv.Normal{Mu: 30, Sigma: math.Sqrt(v)}.Prob(at), distuv.Normal{Mu: 31.5, Sigma: math.Sqrt(v)}.Prob(at)
		order := []float64{low, high, 1e-3}
		slices.Sort(order)
		first, second := order[2], order[1]
		ratio := second / first
		unknownFirst, unknownSecond := first == 1e-3, second == 1e-3
		if math.Abs(ratio-0.9) < 0.01 || math.Abs(ratio-0.2) < 0.003 {
			continue // on the edge rounding decides
		}
		want := "sure"
		switch {
		case unknownFirst:
			want = "none"
		case ratio > 0.2 && !unknownSecond:
			want = "parted"
		}
		got := map[bool]string{true: "sure", false: "parted"}[m.Parting == BySureLook]
		if m.Parting == NoneFits {
			got = "none"
		}
		if got != want || (m.Alike() > 1) != (ratio >= 0.9) {
			t.Errorf("%.2f Hz, %.3f of the first: %s, %q", at, ratio, m.BestMatch, m.Parting)
		}
		seen[fmt.Sprint(want, ratio >= 0.9)]++
	}
	if seen["surefalse"] == 0 || seen["partedfalse"] == 0 || seen["partedtrue"] == 0 || seen["nonefalse"] == 0 {
		t.Errorf("not every case came: %v", seen)
	}
}

// One cylinder has its strokes to tell; sixty small balls go round a large circle
// and sixty-one are too many for the rules; a circle takes as many balls as fill
// it, to 2 %.
func TestWhatIsRefusedOfALine(t *testing.T) {
	try := func(change func(*SourceInput), list []Suspect, where string) {
		t.Helper()
		in := line()
		change(&in)
		_, err := Source(in, list, &Ranking{})
		if where == "" {
			if err != nil {
				t.Error(err)
			}
			return
		}
		parttest.RefusedAt(t, err, where)
	}
	try(func(in *SourceInput) { in.Cylinders, in.Strokes = 1, "" }, sources, "/strokes")
	try(func(in *SourceInput) { in.Cylinders, in.Strokes = 0, "" }, sources, "")
	small := func(n int) func(*SourceInput) {
		return func(in *SourceInput) { in.Balls, in.BallDiameter, in.BearingPitch = n, 0.001, 0.1 }
	}
	try(small(60), sources, "")
	try(small(61), sources, "/balls")
	round := func(full float64) func(*SourceInput) {
		return func(in *SourceInput) {
			in.Balls, in.BearingPitch = 16, 0.1
			in.BallDiameter = quantity.Length(0.1 * math.Sin(full*math.Pi/16))
		}
	}
	try(round(1.01), sources, "")
	try(round(1.03), sources, "/balls")
	_, err := Source(line(), make([]Suspect, Most), &Ranking{})
	parttest.Says(t, err, "at most 19")
}
