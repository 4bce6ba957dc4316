package align

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
	"gonum.org/v1/gonum/stat/distuv"
)

// readAt are the gaps of a coupling by geometry: base, opening at the top and to
// starboard across the diameter, and a crooked face that stands at a clock position.
func readAt(up, starboard, crooked, at float64, sd quantity.Length) []Reading {
	var list []Reading
	for place := range 4 {
		clock := float64(place) * math.Pi / 2
		gap := 0.4e-3 + up/2*math.Cos(clock) + starboard/2*math.Sin(clock) + crooked/2*math.Cos(clock-at)
		list = append(list, Reading{Clock: quantity.Direction(clock), Gap: quantity.Length(gap), GapUncertainty: sd})
	}
	return list
}

func changed() ChangeInput {
	return ChangeInput{GapsBefore: readAt(0.1e-3, 0, 0.2e-3, 1, 0.0115e-3), GapsNow: readAt(0.02e-3, 0.06e-3, 0.2e-3, 1, 0.0115e-3),
		CouplingDiameter: 0.1, SamePosition: AtTheirMarks, ExpectedUp: quantity.Length(math.NaN())}
}

// A tilted face that stands alike both times, and a bar that sags alike, drop out.
func TestWhatIsAlikeDropsOut(t *testing.T) {
	out := parttest.Must(t, Change, changed())
	parttest.Near(t, "vertical", out.GapChangeVertical, -0.08e-3, 1e-12)
	parttest.Near(t, "sideways", out.GapChangeHorizontal, 0.06e-3, 1e-12)
	parttest.Near(t, "in all", out.GapChange, 0.1e-3, 1e-12)
	parttest.Near(t, "angle", out.AngleChange, 0.001, 1e-9)
	if out.Seen != ChangeTold || !math.IsNaN(float64(out.OffsetChange)) {
		t.Errorf("%+v", out)
	}
	in := changed() // the same by dials on the shaft flange, with 0.2 mm of sag at the rim
	in.GapsBefore, in.GapsNow = nil, nil
	in.DialRadius, in.Swept = 0.05, SweptTogether
	dial := func(gapUp, offsetUp, sag float64) (list []DialReading) {
		for place := range 4 {
			clock := float64(place) * math.Pi / 2
			low := (1 - math.Cos(clock)) / 2
			list = append(list, DialReading{Clock: quantity.Direction(clock), Face: quantity.Length(-gapUp/2*math.Cos(clock) + sag/5*low), Rim: quantity.Length(offsetUp*math.Cos(clock) + sag*low), FaceUncertainty: 5e-6, RimUncertainty: 5e-6})
		}
		return list
	}
	in.DialBefore, in.DialNow, in.ExpectedUp = dial(0.1e-3, 0.05e-3, -0.2e-3), dial(0.02e-3, 0.2e-3, -0.2e-3), 0.1e-3
	out = parttest.Must(t, Change, in)
	parttest.Near(t, "by dial", out.GapChangeVertical, -0.08e-3, 1e-12)
	parttest.Near(t, "offset", out.OffsetChangeVertical, 0.15e-3, 1e-12)
	parttest.Near(t, "over what heat does", out.LeftUp, 0.05e-3, 1e-12)
	in.Pilot = PilotIn
	if out = parttest.Must(t, Change, in); !math.IsNaN(float64(out.OffsetChange)) || out.PilotState != PilotEngaged {
		t.Errorf("a pilot in its recess: %+v", out)
	}
	in.RimReadAft, in.Pilot = 0.05, PilotOut
	parttest.Near(t, "carried to the face", parttest.Must(t, Change, in).OffsetChangeVertical, 0.15e-3+0.08e-3*0.05/0.1, 1e-12)
}

// A crooked flange that stood turned otherwise is read as a change: nothing is then
// told, unless it was read in several positions both times.
func TestAFlangeTurnedOtherwiseTellsNothing(t *testing.T) {
	in := changed()
	in.GapsNow = readAt(0.1e-3, 0, 0.2e-3, 1+math.Pi, 0.0115e-3)
	for _, p := range []Position{"", TurnedOther} {
		in.SamePosition = p
		if out := parttest.Must(t, Change, in); out.Seen != ChangePosition || !math.IsNaN(float64(out.Chance)) {
			t.Errorf("%q: %+v", p, out)
		}
	}
	turned := func(up float64, first float64) (list []Reading) {
		for _, turn := range []float64{0, math.Pi / 2, math.Pi} {
			for _, r := range readAt(up, 0, 0.2e-3, first+turn, 0.0115e-3) {
				r.Turn = quantity.Angle(turn)
				list = append(list, r)
			}
		}
		return list
	}
	in.GapsBefore, in.GapsNow = turned(0.1e-3, 1), turned(0.1e-3, 3)
	out := parttest.Must(t, Change, in)
	parttest.Near(t, "read in three positions", out.GapChange, 0, 1e-12)
	if out.Seen != ChangeNotTold {
		t.Errorf("%+v", out)
	}
	in.GapsNow[0].GapUncertainty = 0
	if out = parttest.Must(t, Change, in); out.Seen != ChangeGauge {
		t.Errorf("a gauge that nobody knows: %+v", out)
	}
}

// Independent: of couplings that did not move, gauges alone show a chance below 2.5 %
// in 2.5 of 100, and chances lie evenly; the chi-square is gonum's.
func TestChanceOfAChangeIsThatOfTheGauge(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	const sd, runs = 0.01e-3, 2000
	low, mean := 0, 0.0
	for range runs {
		in := changed()
		for _, list := range [][]Reading{in.GapsBefore, in.GapsNow} {
			for i := range list {
				list[i].Gap, list[i].GapUncertainty = 0.4e-3+quantity.Length(sd*r.NormFloat64()), sd
			}
		}
		out := parttest.Must(t, Change, in)
		// By hand: each component of the change of four readings has variance 2·sd²·2/4 in the half gap.
		half := sd * math.Sqrt(2*2/4.)
		chi := (math.Pow(float64(out.GapChangeVertical)/2, 2) + math.Pow(float64(out.GapChangeHorizontal)/2, 2)) / (half * half)
		want := distuv.ChiSquared{K: 2}.Survival(chi)
		if wide := float64(out.Chance); wide < want-1e-9 {
			t.Fatalf("chance %g is surer than %g", wide, want)
		}
		mean += want / runs
		if out.Chance <= surelyNot {
			low++
		}
		if math.Abs(float64(out.LeastTold)) < 2*math.Sqrt(told95)*half*(1-1e-9) {
			t.Fatalf("least told %g", float64(out.LeastTold))
		}
	}
	if low > runs*3/100 || math.Abs(mean-0.5) > 0.03 {
		t.Errorf("%d of %d called moved, mean chance %g", low, runs, mean)
	}
	for _, x := range []float64{0.5, told95, 9.21} {
		parttest.Within(t, "chi-square of 4", chanceOf(x, 4), distuv.ChiSquared{K: 4}.Survival(x), 1e-9)
	}
}

func TestImpossibleChangesAreRefused(t *testing.T) {
	for where, change := range map[string]func(*ChangeInput){
		"/gapsBefore":       func(in *ChangeInput) { in.GapsBefore = nil },
		"/gapsNow":          func(in *ChangeInput) { in.GapsNow = nil },
		"/couplingDiameter": func(in *ChangeInput) { in.CouplingDiameter = 1 },
		"/gapsNow/0/gap":    func(in *ChangeInput) { in.GapsNow[0].Gap = 0.06 },
		"/samePosition":     func(in *ChangeInput) { in.SamePosition = "perhaps" },
		"/pilot":            func(in *ChangeInput) { in.Pilot = "lost" },
		"/expectedUp":       func(in *ChangeInput) { in.ExpectedUp = 0.03 },
		"/turnedFaceUp":     func(in *ChangeInput) { in.TurnedFaceUp = 0.02 },
		"/stepsNow":         func(in *ChangeInput) { in.StepsNow = make([]RimReading, 97) },
		"/dialRadius":       func(in *ChangeInput) { in.DialBefore, in.DialNow = make([]DialReading, 4), make([]DialReading, 4) },
	} {
		in := changed()
		change(&in)
		_, err := Change(in)
		parttest.RefusedAt(t, err, where)
	}
	parttest.SameCodes(t, "alignment-change", "seen", ChangeTold, ChangeNotTold, ChangePosition, ChangeGauge, ChangeHidden, ChangeContra)
}
