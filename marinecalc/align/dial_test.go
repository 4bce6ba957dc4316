package align

import (
	"fmt"
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// rigidShaft is one shaft of an independent simulation: a flange on an axis
// through a point, in m, x forward, y to starboard, z up. Its face and rim run
// out by what is given, turning with it.
type rigidShaft struct {
	at, along         [3]float64 // a point of the axis in the plane of its face, and its direction
	faceTilt          float64    // rad, of the face against the plane square to the axis
	rimOff            float64    // m, of the rim's centre off the axis
	tiltTo, offTo     float64    // rad, where these point with the shaft unturned
	radius, turnedNow float64
}

func unit(v [3]float64) [3]float64 {
	n := math.Sqrt(dot(v, v))
	return [3]float64{v[0] / n, v[1] / n, v[2] / n}
}
func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}
func sum(a, b [3]float64, f float64) [3]float64 {
	return [3]float64{a[0] + f*b[0], a[1] + f*b[1], a[2] + f*b[2]}
}

// spoke is the direction square to the axis at a clock position, looking
// forward: up at 0, to starboard at a quarter turn.
func (s *rigidShaft) spoke(clock float64) [3]float64 {
	a := unit(s.along)
	starboard := unit(cross([3]float64{0, 0, 1}, a))
	starboard = [3]float64{-starboard[0], -starboard[1], -starboard[2]}
	if starboard[1] < 0 {
		starboard = [3]float64{-starboard[0], -starboard[1], -starboard[2]}
	}
	up := cross(a, starboard)
	if up[2] < 0 {
		up = [3]float64{-up[0], -up[1], -up[2]}
	}
	return sum([3]float64{up[0] * math.Cos(clock), up[1] * math.Cos(clock), up[2] * math.Cos(clock)}, starboard, math.Sin(clock))
}

// normal of its face, pointing along its axis, as turned.
func (s *rigidShaft) normal() [3]float64 {
	return unit(sum(unit(s.along), s.spoke(s.tiltTo+s.turnedNow), math.Tan(s.faceTilt)))
}

// centre of its rim, as turned.
func (s *rigidShaft) centre() [3]float64 {
	return sum(s.at, s.spoke(s.offTo+s.turnedNow), s.rimOff)
}

// dials puts a bracket on one shaft at a clock position, with a face dial at a
// radius and a rim dial over the other's rim, and gives by how much each
// plunger is pushed in, but for what is common to all positions.
func dials(carrier, other *rigidShaft, clock, faceRadius, rimPlane float64, back bool) (face, rim float64) {
	a := unit(carrier.along)
	// The face dial runs along the carrier's axis at faceRadius.
	from := sum(carrier.at, carrier.spoke(clock), faceRadius)
	n := other.normal()
	along := dot([3]float64{other.at[0] - from[0], other.at[1] - from[1], other.at[2] - from[2]}, n) / dot(a, n)
	forward := a[0] > 0
	if forward == (other.at[0] > carrier.at[0]) { // toward the other flange
		face = -along
	} else {
		face = along
	}
	if back {
		face = -face
	}
	// The rim dial points to the carrier's axis, in a plane across it: the
	// distance from that axis to the other's rim there.
	centre := other.centre()
	plane := sum(carrier.at, a, (rimPlane-carrier.at[0])/a[0])
	axis := unit(other.along)
	// where the other's rim, a cylinder about centre and axis, meets the spoke
	spoke := carrier.spoke(clock)
	lo, hi := other.radius*0.5, other.radius*1.5
	for range 80 {
		mid := (lo + hi) / 2
		p := sum(plane, spoke, mid)
		v := [3]float64{p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]}
		v = sum(v, axis, -dot(v, axis))
		if math.Sqrt(dot(v, v)) < other.radius {
			lo = mid
		} else {
			hi = mid
		}
	}
	return face, lo // farther from the axis pushes the plunger in
}

// Two rigid shafts are placed in space, a dial is swept round numerically, and
// what Dial finds is how they were placed: by either flange, on the face or the
// back of the flange, counted looking forward or aft, with a bar that sags.
func TestDialsFindHowTheShaftsWerePlaced(t *testing.T) {
	const diameter, radius, faceRadius, gap = 0.1, 0.05, 0.042, 0.012
	angleUp, angleStar, high, star := 0.0011, -0.0007, 0.00021, -0.00034 // gap open at the top and to port; engine high and to port
	engine := func() rigidShaft {
		return rigidShaft{at: [3]float64{0, star, high}, along: unit([3]float64{1, -angleStar, -angleUp}), radius: radius}
	}
	shaft := func() rigidShaft {
		return rigidShaft{at: [3]float64{-gap, 0, 0}, along: [3]float64{1, 0, 0}, radius: radius}
	}
	for _, on := range []Carrier{OnShaft, OnEngine} {
		for _, back := range []bool{false, true} {
			for _, counted := range []Counted{LookingForward, LookingAft} {
				for _, swept := range []Sweep{SweptTogether, CarrierTurned} {
					e, s := engine(), shaft()
					carrier, other := &s, &e
					rimPlane := -0.003 // on the engine's rim the dial runs aft of its face by that
					if on == OnEngine {
						carrier, other = &e, &s
						rimPlane = -gap - 0.004
					}
					other.faceTilt, other.rimOff, other.tiltTo, other.offTo = 0.0004, 0.00006, 0.7, 2.1
					if swept == SweptTogether { // whatever the other one's, it drops out; so does the carrier's
						carrier.faceTilt, carrier.rimOff = 0.0009, 0.0001
					}
					in := DialInput{DialRadius: faceRadius, DialOn: on, Swept: swept, CountedFrom: counted, CouplingDiameter: diameter, CouplingKind: Rigid,
						BarSagRim: -0.00008, BarSagFace: 0.00002, RimReadAft: quantity.Length(-rimPlane), FacesApart: gap, Pilot: PilotOut}
					if back {
						in.FaceTouched = Back
					}
					for n := range 5 { // and back to the first
						clock := math.Mod(float64(n), 4) * math.Pi / 2
						if swept == SweptTogether {
							carrier.turnedNow, other.turnedNow = clock, clock
						}
						face, rim := dials(carrier, other, clock, faceRadius, rimPlane, back)
						sag := (1 - math.Cos(clock)) / 2
						typed := clock
						if counted == LookingAft {
							typed = math.Mod(2*math.Pi-clock, 2*math.Pi)
						}
						in.DialReadings = append(in.DialReadings, DialReading{Clock: quantity.Direction(typed),
							Face: quantity.Length(face + 0.00002*sag), Rim: quantity.Length(rim - 0.05 - 0.00008*sag)})
					}
					if swept == CarrierTurned { // told what stands, it takes it out
						const tilt = 0.0004
						up, right := math.Cos(0.7), math.Sin(0.7)
						in.StandingFaceUp = quantity.Length(diameter * tilt * up)
						in.StandingFaceStarboard = quantity.Length(diameter * tilt * right)
						if on == OnShaft { // a normal that points forward and up has its top aft
							in.StandingFaceUp, in.StandingFaceStarboard = -in.StandingFaceUp, -in.StandingFaceStarboard
						}
						in.StandingRimUp = quantity.Length(0.00006 * math.Cos(2.1))
						in.StandingRimStarboard = quantity.Length(0.00006 * math.Sin(2.1))
					}
					name := fmt.Sprintf("%s, back %v, %s, %s", on, back, counted, swept)
					out, err := Dial(in)
					if err != nil {
						t.Fatalf("%s: %v", name, err)
					}
					near := func(what string, got quantity.Length, want float64) {
						if math.Abs(float64(got)-want) > 1e-6 {
							t.Errorf("%s: %s is %.4f mm, want %.4f", name, what, 1e3*float64(got), 1e3*want)
						}
					}
					near("gap up and down", out.GapVertical, diameter*angleUp)
					near("gap across", out.GapHorizontal, diameter*angleStar)
					near("offset up", out.OffsetVertical, high)
					near("offset across", out.OffsetHorizontal, star)
					if out.FaceReturn != 0 && math.Abs(float64(out.FaceReturn)) > 1e-9 {
						t.Errorf("%s: returns to %g", name, out.FaceReturn)
					}
				}
			}
		}
	}
}

// zeroed is what dials show of a flange open at the top by a slope and high by
// an offset.
func zeroed(slope, high float64) DialInput {
	in := DialInput{DialRadius: 0.05, Swept: SweptTogether, CouplingDiameter: 0.1, CouplingKind: Rigid}
	for n := range 4 {
		clock := float64(n) * math.Pi / 2
		in.DialReadings = append(in.DialReadings, DialReading{Clock: quantity.Direction(clock),
			Face: quantity.Length(slope * 0.05 * (1 - math.Cos(clock))), Rim: quantity.Length(high * (math.Cos(clock) - 1)), FaceUncertainty: 5.8e-6, RimUncertainty: 5.8e-6})
	}
	return in
}

func TestDialRefuses(t *testing.T) {
	nan := quantity.Length(math.NaN())
	for _, k := range []struct {
		name   string
		spoil  func(*DialInput)
		places []string
	}{
		{"nothing", func(in *DialInput) { *in = DialInput{} }, []string{"/couplingDiameter", "/couplingKind", "/swept", "/dialRadius", "/dialReadings"}},
		{"only the flange turned that the dial touches", func(in *DialInput) { in.Swept = OtherTurned }, []string{"/swept"}},
		{"two places", func(in *DialInput) { in.DialReadings = in.DialReadings[:2] }, []string{"/dialReadings", "/dialReadings"}},
		{"the rim at one place", func(in *DialInput) { in.DialReadings[2].Rim = nan }, []string{"/dialReadings/2/rim"}},
		{"words", func(in *DialInput) {
			in.DialOn, in.FaceTouched, in.CountedFrom, in.Pilot, in.ShaftCentred = "x", "x", "x", "x", "x"
		}, []string{"/dialOn", "/faceTouched", "/countedFrom", "/pilot", "/shaftCentred"}},
		{"a hanging end of no slope", func(in *DialInput) { in.ShaftEnd = HangingFree }, []string{"/droopSlope", "/droopSag"}},
		{"a gap of a tenth", func(in *DialInput) { *in = zeroed(0.1, 0) }, []string{"/dialReadings"}},
		{"a circle outside the flange", func(in *DialInput) { in.DialRadius = 0.42 }, []string{"/dialRadius"}},
		{"too many", func(in *DialInput) { in.DialReadings = make([]DialReading, most+1) }, []string{"/dialReadings"}},
	} {
		in := zeroed(0.001, 0.0001)
		k.spoil(&in)
		_, err := Dial(in)
		parttest.RefusedAt(t, err, k.places...)
	}
	slipped := zeroed(0.001, 0.0001)
	again := slipped.DialReadings[0]
	again.Rim += 5e-4
	slipped.DialReadings = append(slipped.DialReadings, again)
	_, err := Dial(slipped)
	parttest.Says(t, err, "did the bar, its clamp or a dial slip")
}

// What closes and what does not: opposite sums, and the return to zero, against
// four and two times the half width of the gauge.
func TestDialClosure(t *testing.T) {
	in := zeroed(0.001, 0.0001)
	in.DialReadings = append(in.DialReadings, in.DialReadings[0])
	in.DialReadings[1].Face += 20e-6
	in.DialReadings[4].Rim += 15e-6
	out, err := Dial(in)
	if err != nil {
		t.Fatal(err)
	}
	half := math.Sqrt(3) * 5.8e-6
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"face", float64(out.FaceClosure), 20e-6}, {"rim", float64(out.RimClosure), 15e-6}, {"face return", float64(out.FaceReturn), 0}, {"rim return", float64(out.RimReturn), 15e-6},
		{"use", float64(out.ClosureUse), 15e-6 / (2 * half)},
	} {
		if math.Abs(c.got-c.want) > 1e-9+1e-6*c.want {
			t.Errorf("%s: %g, want %g", c.what, c.got, c.want)
		}
	}
}

// A pilot in its recess takes a cantilever's end over: its slope there
// against that of many short lengths of beam, each bent by the moment of a force
// at the end.
func TestPilotGapIsABentCantilever(t *testing.T) {
	const length, over, d = 0.18, 0.0003, 0.1
	const n = 20000
	slope, at := 0.0, 0.0
	for i := range n { // of unit force and stiffness
		x := (float64(i) + 0.5) / n * length
		at += (slope + (length-x)/2*length/n) * length / n
		slope += (length - x) * length / n
	}
	in := zeroed(0.001, 0.0001)
	in.Pilot, in.FreeLength, in.HiddenOffset = PilotIn, length, over
	out, err := Dial(in)
	if err != nil {
		t.Fatal(err)
	}
	if want := d * over * slope / at; math.Abs(float64(out.PilotGap)-want) > 1e-3*want {
		t.Errorf("%g, by short lengths %g", out.PilotGap, want)
	}
	if !math.IsNaN(float64(out.Offset)) || math.IsNaN(float64(out.GapVertical)) {
		t.Error("an engaged pilot hides the offset and not the gap")
	}
}

func TestEdgesOfDial(t *testing.T) {
	in := zeroed(0.001, 0.0001)
	in.DialRadius = 0.016 // inside the smallest flange
	in.ShaftEnd, in.DroopSlope, in.DroopSag = HangingFree, 0.001, 0.0005
	hair := "NaN or [-0.0001, 0.01]"
	mm10 := "[-0.01, 0.01]"
	parttest.Edges(t, in, Dial, map[string]string{
		"/couplingDiameter": "[0.03, 0.8]", "/dialRadius": "[0.01, 0.055]", "/facesApart": "[-0.0001, 0.3]", "/rimReadAft": "[-0.3, 0.3]",
		"/barSagRim": "NaN or " + mm10, "/barSagFace": "NaN or " + mm10,
		"/standingFaceUp": mm10, "/standingFaceStarboard": mm10, "/standingRimUp": mm10, "/standingRimStarboard": mm10,
		"/droopSlope": "[-0.1, 0.25]", "/droopSag": "[-0.02, 0.06]", "/gapAllowance": "any",
		"/pilotDepth": "NaN or [-0.0001, 0.2]", "/freeLength": "NaN or [-0.0001, 10]", "/hiddenOffset": hair, "/knownFaceRunOut": hair, "/knownRimRunOut": hair,
		"/dialReadings/0/clock": fmt.Sprintf("[-0.2, %v]", 2*math.Pi+0.2),
		"/dialReadings/0/face":  "[-0.05, 0.05]", "/dialReadings/0/rim": "[-0.05, 0.05]",
		"/dialReadings/0/faceUncertainty": "any", "/dialReadings/0/rimUncertainty": "any",
	})
}

func TestCodesOfTheDial(t *testing.T) {
	parttest.SameCodes(t, "dial-alignment", "sweepCheck", RunOutDropsOut, RunOutIsIn)
	for _, id := range []string{"dial-alignment", "coupling-alignment"} {
		parttest.SameCodes(t, id, "pilotState", PilotClear, PilotEngaged, PilotStillIn, PilotNotLooked)
		parttest.SameCodes(t, id, "shaftState", ShaftCentred, ShaftTouching, ShaftNotLooked)
	}
}

// A dial's scatter and closure are told as the dial shows them, whatever circle its tip
// runs on; of a rim that was not read nothing is.
func TestFaceDialOnAnyCircle(t *testing.T) {
	for _, radius := range []quantity.Length{0.02, 0.05} {
		in := zeroed(0.001, 0)
		in.DialRadius = radius
		in.DialReadings[1].Face += 20e-6
		for i := range in.DialReadings {
			in.DialReadings[i].Rim = quantity.Length(math.NaN())
		}
		out := parttest.Must(t, Dial, in)
		parttest.Near(t, "closure", out.FaceClosure, 20e-6, 1e-12)
		parttest.Within(t, "scatter", out.ScatterRatio, 20/(2*5.8), 1e-6) // a quarter of it at each of four, one to spare
		if !math.IsNaN(float64(out.RimClosure)) || !math.IsNaN(float64(out.RimScatterRatio)) {
			t.Errorf("a rim that was not read closes by %g", out.RimClosure)
		}
	}
	in := zeroed(0.001, 0)
	in.KnownFaceRunOut, in.FaceTouched = 0.02, "side"
	_, err := Dial(in)
	parttest.Says(t, err, "a run-out of 20 mm", "front, back")
	in = zeroed(0.001, 0)
	in.DialRadius, in.BarSagRim = 0.06, 0.03
	_, err = Dial(in)
	parttest.Says(t, err, "a circle of 60 mm radius lies outside a flange of 100 mm", "30 mm is out of range")
}
