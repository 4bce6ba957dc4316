package align

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
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
	in.Swept = SweptTogether // of dials, and these are feelers
	if out := parttest.Must(t, Change, in); out.Seen != ChangePosition {
		t.Errorf("feelers, swept together: %+v", out)
	}
	in.Swept = ""
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

func TestEdgesOfChange(t *testing.T) {
	in := changed()
	in.DialRadius, in.Swept, in.ExpectedUp = 0.05, SweptTogether, 0
	in.DialBefore, in.DialNow = zeroed(0.001, 0.0001).DialReadings, zeroed(0.0005, 0.0002).DialReadings
	in.GapsBefore, in.GapsNow = nil, nil
	mm10 := "[-0.01, 0.01]"
	edges := map[string]string{"/couplingDiameter": "[0.03, 0.8]", "/dialRadius": "[0.01, 0.6]", "/rimReadAft": "[-0.3, 0.3]",
		"/turnedFaceUp": mm10, "/turnedFaceStarboard": mm10, "/turnedRimUp": mm10, "/turnedRimStarboard": mm10, "/expectedUp": "NaN or [-0.02, 0.02]"}
	for _, list := range []string{"/dialBefore/0/", "/dialNow/0/"} {
		edges[list+"clock"] = fmt.Sprintf("[-0.2, %v]", 2*math.Pi+0.2)
		edges[list+"face"] = "[-0.05, 0.05]"
		edges[list+"rim"], edges[list+"faceUncertainty"], edges[list+"rimUncertainty"] = "any", "any", "any" // without one rim there is no offset
	}
	parttest.Edges(t, in, Change, edges)
	in.ExpectedUp = 0.03
	_, err := Change(in)
	parttest.Says(t, err, "30 mm is out of range")
	in.ExpectedUp = 0
	for _, kind := range []Kind{"", Rigid, Flexible} {
		in.CouplingKind = kind
		parttest.Must(t, Change, in)
	}
	in.CouplingKind = "soft"
	_, err = Change(in)
	parttest.RefusedAt(t, err, "/couplingKind")
}

// Gaps and rim read all round with a gauge of its own at each place: the variance of
// the half gaps by the inverse of the normal matrix, and the chance by that of both days.
func TestChanceOfReadingsThatAreNotEvenRound(t *testing.T) {
	places := []float64{0, 1, 2.2, 3.5, 5.3}
	sds := [2][]float64{{8e-6, 5e-6, 9e-6, 6e-6, 7e-6}, {4e-6, 9e-6, 5e-6, 8e-6, 6e-6}}
	days := [2]vector{{5e-5, 2e-5}, {6.2e-5, 1.2e-5}}
	variance := func(sd []float64) *mat.Dense { // of the ordinary least squares, each reading by its own gauge
		x, w := mat.NewDense(len(places), 3, nil), mat.NewDiagDense(len(places), nil)
		for i, at := range places {
			x.SetRow(i, []float64{1, math.Cos(at), math.Sin(at)})
			w.SetDiag(i, sd[i]*sd[i])
		}
		var normal, by, c mat.Dense
		normal.Mul(x.T(), x)
		if err := normal.Inverse(&normal); err != nil {
			t.Fatal(err)
		}
		by.Mul(&normal, x.T())
		c.Product(&by, w, by.T())
		return mat.DenseCopyOf(c.Slice(1, 3, 1, 3))
	}
	in := ChangeInput{CouplingDiameter: 0.1, SamePosition: AtTheirMarks, ExpectedUp: quantity.Length(math.NaN())}
	for i, at := range places {
		clock := quantity.Direction(at)
		reading := func(day int) quantity.Length { return quantity.Length(0.4e-3 + days[day].at(at)) }
		in.GapsBefore = append(in.GapsBefore, Reading{Clock: clock, Gap: reading(0), GapUncertainty: quantity.Length(sds[0][i])})
		in.GapsNow = append(in.GapsNow, Reading{Clock: clock, Gap: reading(1), GapUncertainty: quantity.Length(sds[1][i])})
		in.StepsBefore = append(in.StepsBefore, RimReading{Clock: clock, Step: reading(0), StepUncertainty: quantity.Length(sds[1][i])})
		in.StepsNow = append(in.StepsNow, RimReading{Clock: clock, Step: reading(1), StepUncertainty: quantity.Length(sds[1][i])})
	}
	move := mat.NewVecDense(2, []float64{days[1].up - days[0].up, days[1].right - days[0].right})
	squared := func(a, b []float64) (chi float64, both mat.Dense) {
		both.Add(variance(a), variance(b))
		var inverse mat.Dense
		if err := inverse.Inverse(&both); err != nil {
			t.Fatal(err)
		}
		return mat.Inner(move, &inverse, move), both
	}
	face, both := squared(sds[0], sds[1])
	rim, _ := squared(sds[1], sds[1])
	var main mat.EigenSym
	main.Factorize(mat.NewSymDense(2, []float64{both.At(0, 0), both.At(0, 1), both.At(1, 0), both.At(1, 1)}), false)
	out := parttest.Must(t, Change, in)
	parttest.Within(t, "chance of both", float64(out.Chance), distuv.ChiSquared{K: 4}.Survival(face+rim), 1e-6)
	parttest.Within(t, "least told", float64(out.LeastTold), 2*math.Sqrt(distuv.ChiSquared{K: 2}.Quantile(0.95)*main.Values(nil)[1]), 1e-4)
	in.StepsBefore = nil
	parttest.Within(t, "chance of the gaps", float64(parttest.Must(t, Change, in).Chance), distuv.ChiSquared{K: 2}.Survival(face), 1e-6)
}

// Four gaps whose opposite sums disagree by more than four half widths of the gauge
// contradict each other, whichever day they are of.
func TestReadingsOfOneDayThatContradict(t *testing.T) {
	for _, day := range []string{"before", "now"} {
		for use, contra := range map[float64]bool{0.9: false, 1.5: true} {
			in := changed()
			list := in.GapsBefore
			if day == "now" {
				list = in.GapsNow
			}
			for i := range list {
				list[i].Gap += quantity.Length(use * math.Sqrt(3) * 0.0115e-3 * math.Pow(-1, float64(i)))
			}
			out := parttest.Must(t, Change, in)
			if (out.Seen == ChangeContra) != contra {
				t.Errorf("%s, %g of what the gauge explains: %s", day, use, out.Seen)
			}
			parttest.Within(t, day, float64(max(out.ClosureBefore, out.ClosureNow)), use, 1e-6)
		}
	}
}

// A rim that was read to be compared and did not move tells so only of a pilot that
// was clear.
func TestNoOffsetMayHideInThePilot(t *testing.T) {
	in := changed()
	in.GapsNow = in.GapsBefore
	for range 2 {
		for _, r := range in.GapsBefore {
			in.StepsBefore = append(in.StepsBefore, RimReading{Clock: r.Clock, Step: r.Gap, StepUncertainty: 5e-6})
		}
		in.StepsNow = in.StepsBefore
	}
	for pilot, want := range map[Pilot]string{"": ChangeHidden, PilotOut: ChangeNotTold, PilotIn: ChangeHidden, NoPilot: ChangeNotTold} {
		in.Pilot = pilot
		if out := parttest.Must(t, Change, in); out.Seen != want {
			t.Errorf("%q: %s", pilot, out.Seen)
		}
	}
}

// Dials of one day alone are no pair: the gaps of both days count.
func TestDialsOfOneDayAreLeftOut(t *testing.T) {
	for _, day := range []string{"before", "now"} {
		in := changed()
		if day == "now" {
			in.DialNow = zeroed(0.001, 0).DialReadings
		} else {
			in.DialBefore = zeroed(0.001, 0).DialReadings
		}
		parttest.Near(t, day, parttest.Must(t, Change, in).GapChangeVertical, -0.08e-3, 1e-12)
	}
}

// What a flange that stood turned otherwise brings in is taken off, the gap by its
// difference across the faces and the offset as it is; at the same marks it brings none.
func TestTurnedFlangeIsTakenOff(t *testing.T) {
	in := changed()
	for i, r := range in.GapsBefore {
		in.StepsBefore = append(in.StepsBefore, RimReading{Clock: r.Clock, Step: 0})
		in.StepsNow = append(in.StepsNow, RimReading{Clock: r.Clock, Step: quantity.Length(1e-5 * float64([]int{1, 0, -1, 0}[i]))})
	}
	in.TurnedFaceUp, in.TurnedFaceStarboard, in.TurnedRimUp, in.TurnedRimStarboard = 0.04e-3, 0.05e-3, 0.02e-3, 0.03e-3
	for position, took := range map[Position]float64{AtTheirMarks: 0, TurnedOther: 1} {
		in.SamePosition = position
		out := parttest.Must(t, Change, in)
		for name, c := range map[string][3]float64{"gap up": {float64(out.GapChangeVertical), -0.08e-3, 0.04e-3}, "gap to starboard": {float64(out.GapChangeHorizontal), 0.06e-3, 0.05e-3},
			"offset up": {float64(out.OffsetChangeVertical), 0.01e-3, 0.02e-3}, "offset to starboard": {float64(out.OffsetChangeHorizontal), 0, 0.03e-3}} {
			parttest.Near(t, string(position)+", "+name, c[0], c[1]-took*c[2], 1e-12)
		}
	}
}

// A trial moves the change by what its readings of now lie off those found, less what
// those of before do, each as far again as its own day scatters.
func TestTrialsOfAChange(t *testing.T) {
	in := changed()
	for i := range in.GapsNow { // four gaps scatter by the root of chi-square over one to spare, and count a fifth more
		in.GapsNow[i].Gap += quantity.Length(0.0115e-3 * math.Pow(-1, float64(i)))
	}
	wide := 1.2 * 2.
	var trials ChangeTrials
	found, err := trials.Run(in)
	if err != nil {
		t.Fatal(err)
	}
	// Half the gap of four readings has a variance of sd²/2 either way; it moved by 0.05 mm.
	chi := 0.05e-3 * 0.05e-3 / (0.0115e-3 * 0.0115e-3 / 2 * (1 + wide*wide))
	parttest.Within(t, "chance, the scatter of now counted", float64(found.Chance), math.Exp(-chi/2), 1e-6)
	in.GapsBefore, in.GapsNow = slices.Clone(in.GapsBefore), slices.Clone(in.GapsNow)
	for i, r := range in.GapsNow {
		sin, cos := math.Sincos(float64(r.Clock))
		in.GapsBefore[i].Gap += quantity.Length(1e-6*cos + 2e-6*sin)
		in.GapsNow[i].Gap += quantity.Length(3e-6*cos + 5e-6*sin)
	}
	trial, err := trials.Run(in)
	if err != nil {
		t.Fatal(err)
	}
	parttest.Near(t, "up", float64(trial.GapChangeVertical-found.GapChangeVertical), 2*(3e-6*wide-1e-6), 1e-12)
	parttest.Near(t, "to starboard", float64(trial.GapChangeHorizontal-found.GapChangeHorizontal), 2*(5e-6*wide-2e-6), 1e-12)
}
