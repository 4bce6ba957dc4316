package fastener

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// The bolt as it is measured end to end, cut into a hundred slices of its own
// thickness, each of which stretches: the clamp by stretch pulls them to what
// was read.
func TestClampByStretchAsSlices(t *testing.T) {
	in := read()
	out := parttest.Must(t, Preload, in)
	area := func(d float64) float64 { return math.Pi * d * d / 4 }
	root, stress := 0.010-1.226869*0.0015, 0.010-0.938194*0.0015 // ISO 898-1
	stretch := 0.0
	for _, part := range [][2]float64{{0.005, area(0.010)}, {0.010, area(0.010)}, {0.014, area(stress)}, {0.005, area(root)}} {
		for range 25 {
			stretch += float64(out.ClampFromStretch) * part[0] / 25 / (207e9 * part[1])
		}
	}
	parttest.Within(t, "stretch", stretch, 30e-6, 1e-6)
	in.BoltStiffness = 0.9 // N/m, as soft as one likes
	in.StretchScatter = 1.1
	parttest.Within(t, "by a stiffness given", parttest.Must(t, Preload, in).ClampFromStretch, 1.1*0.9*30e-6, 1e-12)
	parttest.Within(t, "settled share", out.SettledShare, float64(out.SettledClamp)/float64(out.Preload), 1e-12)
	in.FreeLength = 0.04642
	parttest.Near(t, "grown by 20 µm", parttest.Must(t, Preload, in).Grown, 20e-6, 1e-12)
}

// Stiffnesses given, however soft, go before those worked out.
func TestGivenStiffness(t *testing.T) {
	in := whole()
	in.BoltStiffness, in.MemberStiffness = 0.25, 0.75
	out := parttest.Must(t, Preload, in)
	if out.BoltSpring != 0.25 || out.MemberSpring != 0.75 {
		t.Errorf("bolt %g N/m, members %g N/m", out.BoltSpring, out.MemberSpring)
	}
	parttest.Within(t, "share", out.LoadShare, 0.25, 1e-12)
}

// What is held against yield is the same load in one and two ways: the share of
// yield in a straight pull, and what the setting asks over it. A torque in
// question of less than 1 N·m counts as well.
func TestUsesOfPreload(t *testing.T) {
	in := whole()
	out := parttest.Must(t, Preload, in)
	parttest.Within(t, "stress area of M10 (ISO 898-1)", out.StressArea, 58.0e-6, 0.001)
	parttest.Within(t, "use of yield", out.YieldUse, float64(out.ProofUse)*580/640, 1e-12)
	parttest.Within(t, "use of proof", out.ProofUse, float64(out.MiddlePreload)/(580e6*58.0e-6), 0.001)
	parttest.Within(t, "pressure", out.BearingUse, float64(out.HeadBearingStress)/490e6, 1e-12)
	in.TorqueUsed = 0.9
	in.PrevailingTorque = 0
	out = parttest.Must(t, Preload, in)
	if out.JointClamp != out.PreloadFromTorqueUsed || out.JointClamp == out.AchievedPreload {
		t.Errorf("a torque of 0.9 N·m: %g N", out.JointClamp)
	}
	// Between what breaks it and twice that the bolt is broken all the same.
	in.TorqueUsed = 1.5 * quantity.Torque(float64(out.BreakingTorque))
	if out = parttest.Must(t, Preload, in); !(out.BreakingUse > 1 && out.BreakingUse < 2) || !math.IsNaN(float64(out.JointClamp)) {
		t.Errorf("at one and a half of the breaking torque: %g, %g N", out.BreakingUse, out.JointClamp)
	}
}

// K·F·d read backwards (Shigley eq. 8-27): 80 N·m on a thread of 20 mm with K
// 0.2 clamp 20 kN.
func TestShortClamp(t *testing.T) {
	parttest.Within(t, "clamp", ShortClamp(80, 0.2, 0.020), 20e3, 1e-12)
}

// A share of the thread that is sound bears its share; a wire insert's thread is
// wider by twice three quarters of a sharp thread's height (3/4·√3/2·P on each
// side), and its area in shear lies there.
func TestTappedThreadTerms(t *testing.T) {
	in := tapped()
	all := parttest.Must(t, Engagement, in)
	in.ThreadShare = 0.5
	parttest.Within(t, "half the thread", parttest.Must(t, Engagement, in).TappedShearArea, float64(all.TappedShearArea)/2, 1e-12)
	in.ThreadShare, in.Insert, in.InsertLength = 1, WireInsert, in.EngagementLength
	wire := parttest.Must(t, Engagement, in)
	grown := 2 * 0.75 * math.Sqrt(3) / 2 * 0.0015
	at, over := float64(all.MajorLeast)+grown, float64(all.PitchMost)+grown
	parttest.Within(t, "wire", wire.TappedShearArea, math.Pi*at*(0.015-0.0015)*(0.5+(at-over)*math.Tan(math.Pi/6)/0.0015), 1e-6)
	parttest.Within(t, "1.5 diameters", all.DiametersEngaged, 1.5, 1e-12)
	parttest.Within(t, "turns left below", all.BottomThreads, 0.005/0.0015, 1e-12)
	_, err := Engagement(func() EngagementInput { in := tapped(); in.TappedMinorDiameter = 0.0075; return in }())
	parttest.Says(t, err, "a hole of 7.5 mm", "a thread of 10 mm", "from 8.05 mm to below 10 mm")
	_, err = Engagement(func() EngagementInput { in := tapped(); in.Preload = 50e3; return in }())
	parttest.Says(t, err, "a clamp of 50 kN", "bears 46.39 kN", "below 46.39 kN")
}

// The stack is the sum of what stands in it: flanges, spacer, washers on both
// sides; the nut's room is measured from behind the flange, so that its own
// washers take of it.
func TestStackAsASum(t *testing.T) {
	in := twoFlanges()
	in.HeadFlangeThickness, in.NutFlangeThickness, in.SpacerThickness, in.WasherThickness, in.WashersAtHead, in.WashersAtNut = 0.011, 0.013, 0.006, 0.002, 1, 2
	out := parttest.Must(t, Fit, in)
	parttest.Near(t, "grip", out.GripLength, 0.011+0.013+0.006+3*0.002, 1e-12)
	parttest.Near(t, "shortest", out.ShortestLength, 0.036+0.010+2*0.0015, 1e-12)
	if !math.IsNaN(float64(out.LongestByRoom)) || !math.IsNaN(float64(out.HeadRoomLeft)) || !math.IsNaN(float64(out.NutRoomLeft)) {
		t.Errorf("no room was given: %g, %g, %g", out.LongestByRoom, out.HeadRoomLeft, out.NutRoomLeft)
	}
	in.BoltLength = 0.055
	in.HeadRoom = 0.070
	out = parttest.Must(t, Fit, in)
	parttest.Near(t, "by the head", out.LongestByRoom, 0.070-0.0064, 1e-12)
	in.HeadRoom, in.NutRoom, in.SocketHeight = 0, 0.065, 0.030
	out = parttest.Must(t, Fit, in)
	parttest.Near(t, "by the nut", out.LongestByRoom, 0.065-0.030+0.011+0.013+0.006+0.002, 1e-12)
	parttest.Near(t, "left for the socket", out.NutRoomLeft, float64(out.LongestByRoom)-0.055, 1e-12)
	// ISO 888: M10 of 55 mm has 26 mm of thread.
	parttest.Near(t, "shank past the joint", out.ShankPastJoint, 0.055-0.026-0.011-0.002, 1e-12)
	in.ThreadLength = 0.030
	parttest.Near(t, "thread measured", parttest.Must(t, Fit, in).ThreadedLength, 0.030, 1e-12)
	in.WrenchSetting = 60
	out = parttest.Must(t, Fit, in)
	parttest.Near(t, "first pass", out.FirstTorque, 0.33*60, 1e-9)
	parttest.Near(t, "second pass", out.SecondTorque, 0.67*60, 1e-9)
}

// A measured thread reaches to the head of a bolt that is no longer than it.
func TestThreadNoLongerThanTheBolt(t *testing.T) {
	in := twoFlanges()
	in.ThreadLength = 0.2
	if out := parttest.Must(t, Fit, in); out.ThreadedLength != out.JudgedLength {
		t.Errorf("%g m of thread on a bolt of %g m", out.ThreadedLength, out.JudgedLength)
	}
}

// ASME B18.2.1 and ISO 888 at the lengths at which their additions change,
// which belong to the shorter.
func TestThreadAdditionsAtTheirEdges(t *testing.T) {
	for length, want := range map[float64]float64{0.1524: 0.25, 0.1525: 0.5, 0.3: 0.5} {
		parttest.Near(t, "inch", addition(Inch, length)/0.0254, want, 1e-12)
	}
	for length, want := range map[float64]float64{0.125: 0.006, 0.1251: 0.012, 0.2: 0.012, 0.2001: 0.025} {
		parttest.Near(t, "metric", addition(Metric, length), want, 1e-12)
	}
}

// A length that the head's room refuses by more than the nut's does is told of
// its head.
func TestTheWorstHindranceIsTold(t *testing.T) {
	in := twoFlanges()
	in.StockLengths = "40 mm, 90 mm"
	in.HeadRoom, in.NutRoom, in.SocketHeight = 0.060, 0.050, 0.010 // 53.6 mm by the head, 64 mm by the nut
	out := parttest.Must(t, Fit, in)
	if out.WhyNotLonger != NutMeetsShank && out.WhyNotLonger != NoRoomForHead {
		t.Errorf("%s", out.WhyNotLonger)
	}
	in.Made = FullyThreaded
	if out = parttest.Must(t, Fit, in); out.WhyNotLonger != NoRoomForHead {
		t.Errorf("%s", out.WhyNotLonger)
	}
	parttest.Near(t, "too long by", out.LongerBy, 0.090-0.0536, 1e-9)
	in.StockLengths = "20 mm"
	if out = parttest.Must(t, Fit, in); out.NoneGoes != NoneIsLong || !math.IsNaN(float64(out.ShorterThreads)) {
		t.Errorf("20 mm through 24 mm: %s, %g threads", out.NoneGoes, out.ShorterThreads)
	}
	// As long as the grip it reaches to the nut's face: minus the nut in threads.
	in.StockLengths = "24 mm"
	parttest.Near(t, "threads", parttest.Must(t, Fit, in).ShorterThreads, -0.010/0.0015, 1e-9)
}

// Every count of bolts that is taken has its order in words, the last one too.
func TestEveryCountHasItsOrder(t *testing.T) {
	for n := 2; n <= mostBolts; n++ {
		in := twoFlanges()
		in.BoltCount = n
		words := strings.Split(parttest.Must(t, Fit, in).TighteningOrder.String(), " - ")
		seen := map[string]bool{}
		for _, w := range words {
			seen[w] = true
		}
		if len(words) != n || len(seen) != n || !seen[strconv.Itoa(n)] {
			t.Errorf("%d bolts: %q", n, words)
		}
	}
	for n, want := range map[int]int{-1: 0, 0: 0, 1: 1} {
		if got := TighteningOrder(n); len(got) != want {
			t.Errorf("%d bolts: %v", n, got)
		}
	}
}

// A scrap limit is of one thread: twenty and nineteen to the inch are told
// apart, what a pitch gauge may be off is not.
func TestScrapLimitOfTheSameThread(t *testing.T) {
	in := twoFlanges()
	in.ThreadForm, in.NominalDiameter, in.ThreadSize = Inch, 0.4375*0.0254, "7/16-20"
	for threads, refused := range map[float64]bool{20: false, 20.39: false, 19.61: false, 20.42: true, 19.58: true, 14: true} {
		in.Pitch = quantity.Length(0.0254 / threads)
		if _, err := Fit(in); refused != (err != nil) {
			t.Errorf("%g to the inch: %v", threads, err)
		}
	}
	// A size without threads names a diameter alone.
	in.ThreadSize, in.Pitch = "7/16", 0.0254/14
	parttest.Must(t, Fit, in)
	if d, n := splitSize("1-1/8"); d != "1-1/8" || n != 0 {
		t.Errorf("1-1/8: %q, %g", d, n)
	}
	if d, n := splitSize("1-1/8-12"); d != "1-1/8" || n != 12 {
		t.Errorf("1-1/8-12: %q, %g", d, n)
	}
	if d, n := splitSize("1-8"); d != "1" || n != 8 {
		t.Errorf("1-8: %q, %g", d, n)
	}
	in = twoFlanges()
	in.WashersAtHead, in.WashersAtNut = 1, 1
	_, err := Fit(in)
	parttest.RefusedAt(t, err, "/washerThickness")
}

// M10 with a friction of 0.14: 1.5/2π + 0.14·9.026/(2·cos 30°) = 0.9683 mm of torque for
// each newton; over a round bar of 57.99 mm², 8.593 mm thick, four times that over its
// diameter is the shear over the tension. With no friction the lead alone twists.
func TestTwistOfAThreadByHand(t *testing.T) {
	for friction, torque := range map[float64]float64{0.14: 0.9683, 0: 0.23873} {
		parttest.Within(t, "shear over tension", ElasticTwist(friction, 0.010, 0.0015, 57.99e-6), 4*torque/8.593, 1e-4)
	}
	parttest.Within(t, "together", Combined(0.5), math.Sqrt(1+3*0.25), 1e-12)
}
