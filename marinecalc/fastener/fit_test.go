package fastener

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/stock"
)

const (
	shopInch   = "3/4 in, 1 in, 1-1/4 in, 1-1/2 in, 1-3/4 in, 2 in, 2-1/4 in, 2-1/2 in, 2-3/4 in, 3 in"
	shopMetric = "16 mm, 20 mm, 25 mm, 30 mm, 35 mm, 40 mm, 45 mm, 50 mm, 55 mm, 60 mm, 65 mm, 70 mm, 80 mm, 90 mm, 100 mm, 110 mm, 120 mm, 130 mm, 140 mm, 150 mm"
)

// twoFlanges is M10 through two flanges of 12 mm with a 10 mm nut.
func twoFlanges() FitInput {
	return FitInput{
		NominalDiameter: 0.010, Pitch: 0.0015, ThreadForm: Metric, Made: PartlyThreaded,
		HeadFlangeThickness: 0.012, NutFlangeThickness: 0.012, NutHeight: 0.010, HeadHeight: 0.0064,
		ProtrudingThreads: 2, StockLengths: shopMetric, BoltCount: 4, FirstPass: 0.33, SecondPass: 0.67,
	}
}

func stackup(t *testing.T, in FitInput) FitResult {
	t.Helper()
	return parttest.Must(t, Fit, in)
}

func TestTwoThreadsBeyondTheNut(t *testing.T) {
	// US Army TM 5-2330-325-13&P, work package 0095; nut height 0.468 in of
	// ASME B18.16.6 style NE 7/16-14: 1 + 0.468 + 2/14 = 1.611 in.
	in := twoFlanges()
	in.NominalDiameter, in.Pitch, in.ThreadForm, in.StockLengths = 7./16*inch, inch/14, Inch, shopInch
	in.HeadFlangeThickness, in.NutFlangeThickness, in.NutHeight = 0.5*inch, 0.5*inch, 0.468*inch
	out := stackup(t, in)
	parttest.Within(t, "shortest", float64(out.ShortestLength), 1.610857*inch, 1e-6)
	parttest.Within(t, "chosen", float64(out.ChosenLength), 1.75*inch, 1e-12)
	parttest.Within(t, "shorter", float64(out.ShorterLength), 1.5*inch, 1e-12)
	// The thread of 1-1/8 in (ASME B18.2.1) reaches into 1 in of grip up to 2 in.
	if out.LengthsThatGo != "1-3/4 in, 2 in" || out.WhyNotLonger != NutMeetsShank {
		t.Errorf("%q go, then %q", out.LengthsThatGo, out.WhyNotLonger)
	}
	parttest.Within(t, "too long by", float64(out.LongerBy), 0.125*inch, 1e-9)
}

func TestStandardThreadLengths(t *testing.T) {
	// ASME B18.2.1 up to 6 in: 2D + 1/4 in.
	for d, want := range map[float64]float64{1. / 4: 0.75, 3. / 8: 1, 7. / 16: 1.125, 1. / 2: 1.25, 3. / 4: 1.75, 1: 2.25} {
		in := twoFlanges()
		in.NominalDiameter, in.ThreadForm, in.BoltLength = quantity.Length(d*inch), Inch, 6*inch
		parttest.Within(t, "inch", float64(stackup(t, in).ThreadedLength), want*inch, 1e-12)
	}
	// ISO 888: 2d + 6 up to 125 mm, + 12 up to 200 mm, + 25 above.
	for length, want := range map[float64]float64{100: 26, 125: 26, 130: 32, 200: 32, 220: 45, 20: 20} {
		in := twoFlanges()
		in.BoltLength = quantity.Length(length * mm)
		parttest.Within(t, "metric", float64(stackup(t, in).ThreadedLength), want*mm, 1e-12)
	}
}

func TestWhyLengthsDoNotGo(t *testing.T) {
	for _, c := range []struct {
		what              string
		change            func(*FitInput)
		go_               string
		none, short, long string
	}{
		{"free", func(*FitInput) {}, "40 mm, 45 mm, 50 mm", "", TooFewThreads, NutMeetsShank},
		{"fully threaded", func(s *FitInput) { s.Made, s.StockLengths = FullyThreaded, "35 mm, 40 mm, 45 mm" }, "40 mm, 45 mm", "", TooFewThreads, NothingHinders},
		{"gearbox behind", func(s *FitInput) { s.HeadRoom = 0.052 }, "40 mm, 45 mm", "", TooFewThreads, NoRoomForHead},
		{"tall socket", func(s *FitInput) { s.NutRoom, s.SocketHeight = 0.060, 0.040 }, "40 mm", "", TooFewThreads, NoRoomForNut},
		{"in between", func(s *FitInput) { s.HeadRoom = 0.044 }, "", FallsInBetween, TooFewThreads, NoRoomForHead},
		{"no room at all", func(s *FitInput) { s.HeadRoom, s.StockLengths = 0.044, "40 mm, 45 mm" }, "", NoneIsShort, EndOfList, NoRoomForHead},
		{"short list", func(s *FitInput) { s.StockLengths = "20 mm, 30 mm" }, "", NoneIsLong, TooFewThreads, EndOfList},
	} {
		in := twoFlanges()
		c.change(&in)
		out := stackup(t, in)
		if out.LengthsThatGo != c.go_ || out.NoneGoes != c.none || out.WhyNotShorter != c.short || out.WhyNotLonger != c.long {
			t.Errorf("%s: %q go, none %q, shorter %q, longer %q", c.what, out.LengthsThatGo, out.NoneGoes, out.WhyNotShorter, out.WhyNotLonger)
		}
	}
}

// What the search finds is what a plain check of each length finds, and the
// first that goes is the chosen one.
func TestChoiceAgreesWithEachLength(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	between := func(low, high float64) quantity.Length { return quantity.Length(low + (high-low)*r.Float64()) }
	found := 0
	for range 2000 {
		in := twoFlanges()
		in.HeadFlangeThickness, in.NutFlangeThickness = between(0.006, 0.03), between(0.006, 0.03)
		in.WashersAtHead, in.WashersAtNut, in.WasherThickness = r.IntN(2), r.IntN(3), 0.002
		in.HeadRoom, in.NutRoom, in.SocketHeight = between(0.03, 0.12), between(0.03, 0.12), between(0, 0.05)
		out := stackup(t, in)
		var goes []string
		chosen := math.NaN()
		for rest := in.StockLengths; rest != ""; {
			var size quantity.Length
			var words string
			size, words, rest = rest.Cut()
			one := in
			one.BoltLength = size
			fit := stackup(t, one)
			if fit.ThreadsBeyond >= 2-1e-6 && fit.ThreadBelowNut >= -1e-8 && fit.HeadRoomLeft >= -1e-8 && fit.NutRoomLeft >= -1e-8 {
				goes = append(goes, words)
				if math.IsNaN(chosen) {
					chosen = float64(size)
				}
			}
		}
		if out.LengthsThatGo != strings.Join(goes, ", ") || !(math.IsNaN(chosen) && out.NoneGoes != "" || chosen == float64(out.ChosenLength)) {
			t.Fatalf("%+v\nchooses %v of %q, each alone gives %v of %q", in, out.ChosenLength, out.LengthsThatGo, chosen, goes)
		}
		if len(goes) > 0 {
			found++
		}
	}
	if found < 300 {
		t.Errorf("only %d stacks took a bolt", found)
	}
}

// A bolt that does not reach the nut shows no threads, not even fewer than none.
func TestThreadsOfABoltThatDoesNotReachTheNut(t *testing.T) {
	in := twoFlanges()
	in.StockLengths = "20 mm, 40 mm"
	if got := stackup(t, in).ShorterThreads; !math.IsNaN(float64(got)) {
		t.Errorf("20 mm through 24 mm of flange: %v threads", got)
	}
	in.StockLengths = "35 mm, 40 mm"
	parttest.Within(t, "35 mm, 24 mm and a nut of 10 mm", float64(stackup(t, in).ShorterThreads), 1/1.5, 1e-9)
}

// A stack that measures as it did is what it was; one that is thicker keeps the
// bolt that was bought, which shows so much less beyond the nut.
func TestABoughtBoltStays(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	for range 500 {
		in := twoFlanges()
		in.HeadFlangeThickness, in.NutFlangeThickness = quantity.Length(0.006+0.02*r.Float64()), quantity.Length(0.006+0.02*r.Float64())
		in.HeadRoom, in.NutRoom, in.SocketHeight = quantity.Length(0.03+0.1*r.Float64()), quantity.Length(0.03+0.1*r.Float64()), quantity.Length(0.05*r.Float64())
		bought := stackup(t, in)
		again, err := FitAt(in, bought)
		if err != nil || fmt.Sprint(again) != fmt.Sprint(bought) { // as texts, where NaN is NaN
			t.Fatalf("%v\n%v\n%v", err, again, bought)
		}
		in.NutFlangeThickness += 0.002
		thicker, err := FitAt(in, bought)
		if err != nil {
			t.Fatal(err)
		}
		if bought.ChosenLength > 0 {
			parttest.Within(t, "chosen", float64(thicker.ChosenLength), float64(bought.ChosenLength), 0)
			parttest.Within(t, "protrusion", float64(thicker.Protrusion), float64(bought.Protrusion)-0.002, 1e-9)
		}
	}
}

func TestThickerFlangesNeverTakeAShorterBolt(t *testing.T) {
	in := twoFlanges()
	last := quantity.Length(0)
	for thickness := 0.006; thickness < 0.04; thickness += 0.0005 {
		in.HeadFlangeThickness = quantity.Length(thickness)
		out := stackup(t, in)
		if out.ChosenLength < last {
			t.Fatalf("%v mm of flange takes %v", 1000*thickness, out.ChosenLength)
		}
		last = out.ChosenLength
	}
}

func TestOrderOfTightening(t *testing.T) {
	// ASME PCC-1, the older cross pattern for 4, 8 and 12 bolts, from memory.
	for n, want := range map[int][]int{
		4: {1, 3, 2, 4}, 8: {1, 5, 3, 7, 2, 6, 4, 8}, 12: {1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12},
		3: {1, 2, 3}, 5: {1, 3, 5, 2, 4}, // common practice, no source
	} {
		if got := TighteningOrder(n); !slices.Equal(got, want) {
			t.Errorf("%d bolts: %v, want %v", n, got, want)
		}
	}
	for n := 2; n <= mostBolts; n++ {
		order := TighteningOrder(n)
		sorted := slices.Sorted(slices.Values(order))
		for i, bolt := range sorted {
			if len(order) != n || bolt != i+1 {
				t.Fatalf("%d bolts: %v misses or repeats one", n, order)
			}
		}
		if n%2 == 0 && n > 2 && (order[1]-order[0]) != n/2 {
			t.Errorf("%d bolts: the second is not opposite the first: %v", n, order)
		}
	}
	in := twoFlanges()
	if in.BoltCount = 2; stackup(t, in).TighteningOrder.String() != "1 - 2" {
		t.Errorf("two bolts: %q", stackup(t, in).TighteningOrder)
	}
	if got := stackup(t, twoFlanges()).TighteningOrder; got.String() != "1 - 3 - 2 - 4" || !slices.Equal(got.Sequence(), []int{1, 3, 2, 4}) {
		t.Errorf("four bolts: %v", got)
	}
	if in.BoltCount = 0; stackup(t, in).TighteningOrder.String() != "" {
		t.Error("bolts that nobody counted have an order")
	}
}

func TestReuseLimitsByAuthority(t *testing.T) {
	// 1/2-13: 10, 24 and 15 lbf·in by FAA AC 43.13-1B table 7-2, TM
	// 1-1500-204-23-6 table 2-8 and TM 9-6115-604-34 table 1-3.
	in := twoFlanges()
	in.MeasuredPrevailingTorque = 16 * lbfIn
	in.NominalDiameter, in.Pitch, in.ThreadForm, in.ThreadSize = 0.5*inch, inch/13, Inch, "1/2-13"
	for limit, passes := range map[float64]bool{10: true, 24: false, 15: true} {
		in.ReuseTorque = quantity.Torque(limit * lbfIn)
		if got := stackup(t, in).ReuseMargin; (got >= 1) != passes {
			t.Errorf("16 against %v lbf·in: margin %v", limit, got)
		}
	}
}

// A scrap limit holds for its own diameter and pitch: US Army TM
// 10-3510-209-24 table D-2 has 117 lbf·in at 1-1/8-12, FAA AC 43.13-1B table
// 7-2 has limits of its own for 7/16-14 and 7/16-20.
func TestReuseLimitsAreOfOneThread(t *testing.T) {
	for _, c := range []struct {
		diameter, threads float64
		size              string
		fits              bool
	}{
		{1.125, 12, "1-1/8-12", true}, {1, 12, "1-1/8-12", false}, {1, 8, "1-8", true}, {1.125, 8, "1-8", false},
		{0.4375, 14, "7/16-14", true}, {0.4375, 20, "7/16-14", false}, {0.4375, 20, "7/16-20", true}, {0.4375, 20, "7/16", true},
	} {
		in := twoFlanges()
		in.NominalDiameter, in.Pitch, in.ThreadForm, in.ThreadSize = quantity.Length(c.diameter*inch), quantity.Length(inch/c.threads), Inch, c.size
		if _, err := Fit(in); !c.fits {
			parttest.RefusedAt(t, err, "/reuseRule")
		} else if err != nil {
			t.Errorf("%v-%v by %s: %v", c.diameter, c.threads, c.size, err)
		}
	}
}

func TestImpossibleStacksAreRefused(t *testing.T) {
	for where, change := range map[string]func(*FitInput){
		"/headFlangeThickness": func(s *FitInput) { s.HeadFlangeThickness = 0 },
		"/nutFlangeThickness":  func(s *FitInput) { s.NutFlangeThickness = -0.01 },
		"/nutHeight":           func(s *FitInput) { s.NutHeight = quantity.Length(math.NaN()) },
		"/washersAtNut":        func(s *FitInput) { s.WashersAtNut, s.WasherThickness = 9, 0.002 },
		"/washerThickness":     func(s *FitInput) { s.WashersAtHead = 1 },
		"/headHeight":          func(s *FitInput) { s.HeadRoom, s.HeadHeight = 0.05, 0 },
		"/threadLength":        func(s *FitInput) { s.BoltLength, s.ThreadLength = 0.04, 0.05 },
		"/stockLengths":        func(s *FitInput) { s.StockLengths = "40 mm, 35 mm" },
		"/stockLengths ":       func(s *FitInput) { s.StockLengths = "" },
		"/boltCount":           func(s *FitInput) { s.BoltCount = 1 },
		"/secondPass":          func(s *FitInput) { s.SecondPass = 0.2 },
		"/made":                func(s *FitInput) { s.Made = "" },
		"/threadForm":          func(s *FitInput) { s.ThreadForm = "whitworth" },
		"/pitch":               func(s *FitInput) { s.Pitch = 0.009 },
		"/reuseRule":           func(s *FitInput) { s.ThreadSize = "7/16-14" },
		"/roundRoom":           func(s *FitInput) { s.RoundRoom = 0.004 },
	} {
		in := twoFlanges()
		change(&in)
		_, err := Fit(in)
		parttest.RefusedAt(t, err, strings.TrimSpace(where))
	}
}

func TestFitDoesNotAllocate(t *testing.T) {
	in := twoFlanges()
	in.HeadRoom, in.NutRoom, in.SocketHeight = 0.2, 0.2, 0.05
	parttest.NoAllocations(t, func() { _, _ = Fit(in) })
}

func BenchmarkFit(b *testing.B) {
	in := twoFlanges()
	in.HeadRoom, in.NutRoom, in.SocketHeight = 0.2, 0.2, 0.05
	in.StockLengths = stock.List(shopMetric)
	b.ReportAllocs()
	for b.Loop() {
		_, _ = Fit(in)
	}
}

// 12 and 12 mm, M10: with thread enough 38.9 mm, and the room takes 20 less the
// head. With 60 mm there is a length again.
func TestNoLengthHasThreadEnoughAndRoom(t *testing.T) {
	in := twoFlanges()
	in.StockLengths = stock.List(shopMetric)
	in.HeadRoom, in.HeadHeight = 0.020, 0.0064
	if out := parttest.Must(t, Fit, in); out.NoneGoes != NoLengthCan {
		t.Errorf("%q of %g to %g", out.NoneGoes, out.ShortestLength, out.LongestByRoom)
	}
	in.HeadRoom = 0.070
	if out := parttest.Must(t, Fit, in); out.NoneGoes != "" {
		t.Errorf("%q of %g to %g", out.NoneGoes, out.ShortestLength, out.LongestByRoom)
	}
}

func TestCodesHaveTheirWords(t *testing.T) {
	parttest.SameCodes(t, "bolt-fit", "whyNotShorter", TooFewThreads, NutMeetsShank, NoRoomForHead, NoRoomForNut, EndOfList)
	parttest.SameCodes(t, "bolt-fit", "whyNotLonger", TooFewThreads, NutMeetsShank, NoRoomForHead, NoRoomForNut, EndOfList, NothingHinders)
	parttest.SameCodes(t, "bolt-fit", "noneGoes", NoneIsLong, NoneIsShort, FallsInBetween, NoLengthCan)
}

// M10 through 12 and 12 mm with a nut of 10 mm and two threads of 1.5 mm needs
// 37 mm, so that of the stock 40 mm is chosen. By hand: 6 mm stand out, four
// threads; ISO 888 gives 2·10 + 6 mm of thread, which begins 14 mm under the
// head.
func TestHowTheChosenBoltSits(t *testing.T) {
	in := twoFlanges()
	in.HeadRoom, in.NutRoom, in.SocketHeight = 0.052, 0.060, 0.040
	in.RoundRoom, in.SocketWidth = 0.020, 0.030
	out := stackup(t, in)
	for what, c := range map[string]struct{ got, want float64 }{
		"judged":            {float64(out.JudgedLength), 40},
		"protrusion":        {float64(out.Protrusion), 6},
		"threaded":          {float64(out.ThreadedLength), 26},
		"thread below nut":  {float64(out.ThreadBelowNut), 24 - 14},
		"shank past joint":  {float64(out.ShankPastJoint), 14 - 12},
		"thread addition":   {float64(out.ThreadAddition), 6},
		"head room left":    {float64(out.HeadRoomLeft), 52 - 6.4 - 40},
		"nut room left":     {float64(out.NutRoomLeft), 60 - 40 + 24 - 40},
		"socket room left":  {float64(out.SocketRoomLeft), 20 - 30/2},
		"longest by room":   {float64(out.LongestByRoom), 60 - 40 + 24},
		"threads past, ‰":   {float64(out.ThreadsBeyond), 6 / 1.5 * 1000},
		"grip":              {float64(out.GripLength), 24},
		"shortest possible": {float64(out.ShortestLength), 37},
	} {
		parttest.Within(t, what, c.got, c.want/1000, 1e-9)
	}
	in.BoltLength = 0.045 // the one in hand instead
	parttest.Within(t, "in hand", float64(stackup(t, in).Protrusion), 0.011, 1e-9)
	for what, change := range map[string]func(*FitInput){
		"no socket":            func(s *FitInput) { s.SocketWidth = 0 },
		"nothing beside":       func(s *FitInput) { s.RoundRoom = 0 },
		"nothing nor a socket": func(s *FitInput) { s.RoundRoom, s.SocketWidth = 0, 0 },
		"no room given at all": func(s *FitInput) { s.RoundRoom, s.SocketWidth, s.HeadRoom, s.NutRoom = 0, 0, 0, 0 },
	} {
		in := twoFlanges()
		in.HeadRoom, in.NutRoom, in.RoundRoom, in.SocketWidth = 0.052, 0.060, 0.020, 0.030
		change(&in)
		out := stackup(t, in)
		if got := out.SocketRoomLeft; !math.IsNaN(float64(got)) {
			t.Errorf("%s: %v are left for the socket", what, got)
		}
		if math.IsNaN(float64(out.HeadRoomLeft)) != (in.HeadRoom == 0) || math.IsNaN(float64(out.NutRoomLeft)) != (in.NutRoom == 0) {
			t.Errorf("%s: %v and %v are left for head and nut", what, out.HeadRoomLeft, out.NutRoomLeft)
		}
	}
}
