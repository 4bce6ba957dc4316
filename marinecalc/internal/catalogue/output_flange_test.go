package catalogue_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// sound is a flange of our own, new and tight.
const soundFlange = `"nominalDiameter":"24 mm","pitch":"1.5 mm","threadForm":"metric","seatDiameter":"30 mm","hubLength":"42 mm","hubDiameter":"46 mm","ringLength":"18 mm","ringDiameter":"46 mm","finish":"oiled","nutTorque":"240 N·m","peakTorque":"340 N·m","pullAstern":"2 kN"`

// Each limit of the output flange on both sides, and none without its reading.
func TestLimitsOfTheOutputFlange(t *testing.T) {
	for _, c := range []struct{ limit, input, word string }{
		{"flange-clamp-gone", `"faceWear":"0 mm"`, "within"},
		{"flange-clamp-gone", `"faceWear":"0.2 mm"`, "beyond"},
		{"flange-clamp-gone", ``, "not measured"},
		{"flange-clamp-loose", `"faceWear":"0.001 mm ± 0.001 mm"`, "within"},
		{"flange-clamp-loose", `"faceWear":"0.05 mm ± 0.002 mm"`, "beyond"},
		{"flange-pull", `"faceWear":"0 mm"`, "within"},
		{"flange-pull", `"faceWear":"0.2 mm"`, "beyond"},
		{"flange-pull", ``, "not measured"},
		{"flange-bending", `"faceWear":"0 mm","bendingMoment":"50 N·m"`, "within"},
		{"flange-bending", `"faceWear":"0 mm","bendingMoment":"900 N·m"`, "beyond"},
		{"flange-bending", `"faceWear":"0 mm"`, ""},
		{"flange-friction-only", `"faceWear":"0 mm","drive":"none","faceFriction":0.1,"peakTorque":"40 N·m"`, "within"},
		{"flange-friction-only", `"faceWear":"0 mm","drive":"none","faceFriction":0.1`, "beyond"},
		{"flange-friction-only", `"faceWear":"0 mm","drive":"spline","faceFriction":0.1`, ""},
		{"flange-flanks", `"driveTeeth":20,"driveDepth":"1.5 mm","driveLength":"36 mm","driveDiameter":"31 mm","teethBearing":1,"permittedPressure":"60 MPa"`, "within"},
		{"flange-flanks", `"driveTeeth":20,"driveDepth":"1.5 mm","driveLength":"36 mm","driveDiameter":"31 mm","teethBearing":1,"permittedPressure":"10 MPa"`, "beyond"},
		{"flange-thread", `"shaftYieldStrength":"600 MPa"`, "within"},
		{"flange-thread", `"shaftYieldStrength":"120 MPa"`, "beyond"},
		{"flange-thread", ``, "within"}, // whatever its steel
		{"flange-lasts-season", `"faceWear":"0.02 mm","runningTime":"2000 h","hoursToHaulOut":"100 h"`, "within"},
		{"flange-lasts-season", `"faceWear":"0.05 mm","runningTime":"400 h","hoursToHaulOut":"2000 h"`, "beyond"},
		{"flange-wear-grows-back", `"faceWear":"0.01 mm","earlierWear":"0.08 mm","runningTime":"400 h"`, "beyond"},
		{"flange-wear-grows-back", `"faceWear":"0.08 mm","earlierWear":"0.01 mm","runningTime":"400 h"`, ""},
		{"flange-hold-bolts", `"barLength":"0.5 m","boltCircle":"80 mm","holdBoltDiameter":"10 mm","holdGrade":"iso-8.8","standOff":"6 mm","barThickness":"12 mm","barHeight":"50 mm"`, "within"},
		{"flange-hold-bolts", `"barLength":"0.5 m","boltCircle":"80 mm","holdBoltDiameter":"6 mm","holdGrade":"iso-8.8","standOff":"20 mm","barThickness":"12 mm","barHeight":"50 mm"`, "beyond"},
		{"flange-hold-bar", `"barLength":"0.5 m","boltCircle":"80 mm","holdBoltDiameter":"8 mm","standOff":"6 mm","barThickness":"12 mm","barHeight":"50 mm"`, "within"},
		{"flange-hold-bar", `"barLength":"0.5 m","boltCircle":"80 mm","holdBoltDiameter":"8 mm","standOff":"6 mm","barThickness":"4 mm","barHeight":"20 mm"`, "beyond"},
	} {
		input := soundFlange
		for _, part := range strings.Split(c.input, `,"`) { // what a case says itself goes before
			name, _, _ := strings.Cut(strings.TrimPrefix(part, `"`), `"`)
			if name == "peakTorque" {
				input = strings.Replace(input, `"peakTorque":"340 N·m",`, "", 1)
			}
		}
		if c.input != "" {
			input += "," + c.input
		}
		s := testboat.Run(t, "output-flange", "{"+input+"}", marinecalc.Options{})
		if got := wordOf(s, c.limit); got != c.word {
			t.Errorf("%s with %s: %q, want %q", c.limit, c.input, got, c.word)
		}
	}
}

// Run-out on both sides of its limits, and a rigid flange is judged only.
func TestLimitsOfFlangeRunOut(t *testing.T) {
	const moved = `,"faceAt":"0°","faceRunOutMoved":"0.02 mm","faceAtMoved":"180°","rimAt":"0°","rimRunOutMoved":"0.02 mm","rimAtMoved":"180°","splineTeeth":20,"teethMoved":10`
	for _, c := range []struct{ limit, input, word string }{
		{"flange-face-run-out", `"faceRunOut":"0.02 mm","couplingKind":"rigid","gapAllowance":0.001`, "within"},
		{"flange-face-run-out", `"faceRunOut":"0.2 mm","couplingKind":"rigid","gapAllowance":0.001`, "beyond"},
		{"flange-face-run-out", `"faceRunOut":"0.2 mm","couplingKind":"flexible"`, ""},
		{"flange-rim-run-out", `"faceRunOut":"0.02 mm","rimRunOut":"0.03 mm","couplingKind":"rigid"`, "within"},
		{"flange-rim-run-out", `"faceRunOut":"0.02 mm","rimRunOut":"0.15 mm","couplingKind":"rigid"`, "beyond"},
		{"flange-face-maker", `"faceRunOut":"0.02 mm","couplingKind":"rigid"`, "within"},
		{"flange-face-maker", `"faceRunOut":"0.1 mm","couplingKind":"rigid"`, "beyond"},
		{"flange-face-best", `"faceRunOut":"0.3 mm","couplingKind":"rigid","gapAllowance":0.0015` + moved, "within"},
		{"flange-face-best", `"faceRunOut":"0.9 mm","couplingKind":"rigid","gapAllowance":0.0005` + strings.Replace(moved, `"faceRunOutMoved":"0.02 mm","faceAtMoved":"180°"`, `"faceRunOutMoved":"0.8 mm","faceAtMoved":"0°"`, 1), "beyond"},
		{"flange-rim-best", `"faceRunOut":"0.02 mm","rimRunOut":"0.03 mm","couplingKind":"rigid"` + moved, "within"},
		{"flange-rim-best", `"faceRunOut":"0.02 mm","rimRunOut":"0.9 mm","couplingKind":"rigid"` + strings.Replace(moved, `"rimRunOutMoved":"0.02 mm","rimAtMoved":"180°"`, `"rimRunOutMoved":"0.8 mm","rimAtMoved":"0°"`, 1), "beyond"},
	} {
		s := testboat.Run(t, "flange-run-out", `{"faceReadDiameter":"100 mm","couplingDiameter":"102 mm",`+c.input+`}`, marinecalc.Options{})
		if got := wordOf(s, c.limit); got != c.word {
			t.Errorf("%s with %s: %q, want %q", c.limit, c.input, got, c.word)
		}
	}
}

func TestLimitsOfBacklash(t *testing.T) {
	for _, c := range []struct{ limit, input, word string }{
		{"backlash-allowed", `"atFlange":"0.5 ± 0.1 °","allowedBacklash":"1°"`, "within"},
		{"backlash-allowed", `"atFlange":"1.5 ± 0.1 °","allowedBacklash":"1°"`, "beyond"},
		{"backlash-allowed", `"atFlange":"1.5 ± 0.1 °"`, ""},
		{"backlash-doubled", `"atPropeller":"1.2 ± 0.1 °","earlierAtPropeller":"1 ± 0.1 °"`, "within"},
		{"backlash-doubled", `"atPropeller":"4 ± 0.1 °","earlierAtPropeller":"1 ± 0.1 °"`, "beyond"},
		{"backlash-coupling-key", `"atFlange":"1 ± 0.1 °","atShaft":"1.1 ± 0.1 °","couplingBore":"30 mm"`, "within"},
		{"backlash-coupling-key", `"atFlange":"1 ± 0.1 °","atShaft":"3 ± 0.1 °","couplingBore":"30 mm"`, "beyond"},
		{"backlash-propeller-key", `"atPropeller":"1.1 ± 0.1 °","atShaft":"1 ± 0.1 °","propellerDiameter":"27 mm"`, "within"},
		{"backlash-propeller-key", `"atPropeller":"3 ± 0.1 °","atShaft":"1 ± 0.1 °","propellerDiameter":"27 mm"`, "beyond"},
		{"backlash-taper-free", `"atPropeller":"1.05 ± 0.05 °","atShaft":"1 ± 0.05 °"`, "within"},
		{"backlash-taper-free", `"atPropeller":"2 ± 0.1 °","atShaft":"1 ± 0.1 °"`, "beyond"},
		{"backlash-taper-free", `"atPropeller":"1.2 ± 0.2 °","atShaft":"1 ± 0.2 °"`, "cannot tell"},
		{"backlash-taper-free", `"atPropeller":"2 ± 0.1 °"`, ""},
		{"backlash-coupling-free", `"atShaft":"2 ± 0.1 °","atFlange":"1 ± 0.1 °","holdMethod":"clamp"`, "beyond"},
		{"backlash-coupling-free", `"atShaft":"1.05 ± 0.05 °","atFlange":"1 ± 0.05 °","holdMethod":"taper"`, "within"},
		{"backlash-coupling-free", `"atShaft":"2 ± 0.1 °","atFlange":"1 ± 0.1 °","holdMethod":"set-screws"`, ""},
		{"backlash-hub-negative", `"atFlange":"1 ± 0.1 °","atOutputShaft":"2 ± 0.1 °"`, "beyond"},
		{"backlash-hub-negative", `"atFlange":"2 ± 0.1 °","atOutputShaft":"1 ± 0.1 °"`, ""},
		{"backlash-coupling-negative", `"atShaft":"1 ± 0.1 °","atFlange":"2 ± 0.1 °"`, "beyond"},
		{"backlash-propeller-negative", `"atPropeller":"1 ± 0.1 °","atShaft":"2 ± 0.1 °"`, "beyond"},
		{"backlash-total-negative", `"atPropeller":"2.5 ± 0.1 °","handTorque":"150 N·m","shaftLength":"1.8 m","shaftDiameter":"30 mm"`, "beyond"},
		{"backlash-total-negative", `"atPropeller":"2.5 ± 0.1 °","handTorque":"8 N·m","shaftLength":"1.8 m","shaftDiameter":"30 mm"`, ""},
		{"backlash-grows-back", `"atPropeller":"1 ± 0.1 °","earlierAtPropeller":"2 ± 0.1 °"`, "beyond"},
	} {
		s := testboat.Run(t, "backlash", `{`+c.input+`}`, marinecalc.Options{})
		if got := wordOf(s, c.limit); got != c.word {
			t.Errorf("%s with %s: %q, want %q", c.limit, c.input, got, c.word)
		}
	}
}

// A clamp or a bearing that is gone is gone now, and not within the season: of a
// clamp that 0.045 mm take 0.1 mm are worn away, and 0.03 mm.
func TestWhatIsGoneIsGoneNow(t *testing.T) {
	for _, c := range []struct{ id, limit, input, says, not string }{
		{"output-flange", "flange-lasts-season", `{"thread":"M24x2","finish":"oiled","nutTorque":"240 N·m","seatDiameter":"28 mm","hubLength":"42 mm","hubDiameter":"46 mm","ringLength":"18 mm","ringDiameter":"46 mm","faceWear":"0.15 mm","earlierWear":"0.02 mm","runningTime":"200 h","hoursToHaulOut":"150 h"}`, "The clamp is gone now", "within the season"},
		{"output-flange", "flange-lasts-season", `{"thread":"M24x2","finish":"oiled","nutTorque":"240 N·m","seatDiameter":"28 mm","hubLength":"42 mm","hubDiameter":"46 mm","ringLength":"18 mm","ringDiameter":"46 mm","faceWear":"0.030 ± 0.001 mm","earlierWear":"0.002 ± 0.001 mm","runningTime":"200 h","hoursToHaulOut":"900 h"}`, "within the season", "gone now"},
		{"bearing-clearance", "shell-lasts-to-haul-out", `{"shaftDiameter":"30 mm","bearingClearance":"1.9 mm","bladeWidth":"4 mm","wornLimit":"1 mm","earlierClearance":"0.3 mm","runningTime":"500 h","hoursToHaulOut":"200 h"}`, "worn out now", "before she is ashore"},
	} {
		v := testboat.Run(t, c.id, c.input, marinecalc.Options{}).Verdict(c.limit)
		if v == nil || v.Word.Plain() != "beyond" || !strings.Contains(v.Sentence, c.says) || strings.Contains(v.Sentence, c.not) {
			t.Errorf("%s: %+v", c.says, v)
		}
	}
}

// looseBoat is an invented launch whose output flange worked loose: its face was
// read twice with 200 hours between.
const looseBoat = `{"name":"Siskin","engine":{"power":"30 kW","speed":"2600 rpm"},"gearbox":{"ratioAhead":"2","ratioAstern":"2"},
 "coupling":{"kind":"rigid","diameter":"102 mm","boltCount":4,"boltCircle":"82.5 mm","holeDiameter":"11 mm","faces":"steel-dry","bolts":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","nut":"plain-nut"}},
 "shaft":{"diameter":"30 mm","roomAft":"180 mm"},
 "outputFlange":{"thread":"M24x2","finish":"oiled","nutTorque":"240 N·m","seatDiameter":"28 mm","hubLength":"42 mm","hubDiameter":"46 mm","ringLength":"18 mm","ringDiameter":"46 mm","faces":"steel-oily","socketLength":"80 mm","driverLength":"45 mm","pullerLength":"140 mm"},
 "readings":[{"date":"2025-05-01","engineHours":"1000 h","boatSpeed":"6 kn","outputFaceWear":"0.02 mm","backlashPropeller":"1.2 ± 0.2 °"},
  {"date":"2026-05-01","engineHours":"1200 h","outputFaceWear":"0.15 mm","backlashPropeller":"4 ± 0.2 °","backlashShaft":"3.6 ± 0.2 °","backlashFlange":"3.4 ± 0.2 °","backlashOutputShaft":"0.9 ± 0.2 °"}]}`

// The sheets of a flange that worked loose agree: the shock of the shaft torque,
// the pull of the coupling and the gap for its tools are handed along; the face
// tells that the clamp is gone and since when at most, the play where it is.
func TestALooseOutputFlangeIsToldThrough(t *testing.T) {
	o := marinecalc.Options{Boat: testboat.Read(t, looseBoat)}
	flange := testboat.Run(t, "output-flange", `{}`, o)
	for input, from := range map[string][2]string{"peakTorque": {"shaft-torque", "peakTorque"}, "pullAstern": {"coupling-grip", "pullAstern"}} {
		r := testboat.Run(t, from[0], `{}`, o).Result(from[1])
		if in := flange.Input(input); in == nil || r == nil || math.Abs(*in.SI-*r.SI) > 1e-9**r.SI {
			t.Errorf("%s: %+v here, %+v there", input, in, r)
		}
	}
	for limit, word := range map[string]string{"flange-clamp-gone": "beyond", "flange-clamp-loose": "beyond", "flange-pull": "beyond"} {
		if got := wordOf(flange, limit); got != word {
			t.Errorf("%s: %q", limit, got)
		}
	}
	// 0.13 mm in 200 h: what lies over the wear that takes the clamp, at that rate.
	gone, ago := *flange.Result("wearToLoss").SI, *flange.Result("lostAgo").SI
	if want := (0.00015 - gone) / 0.00013 * 200 * 3600; math.Abs(ago-want) > 1e-6*want {
		t.Errorf("gone for %g h, want %g", ago/3600, want/3600)
	}
	out := testboat.Run(t, "shaft-withdrawal", `{"task":"output-flange-off"}`, o)
	if gap := out.Input("flangeGap"); gap == nil || *gap.SI != *flange.Result("gapNeeded").SI || math.Abs(*out.Result("travel").SI-0.140) > 1e-9 {
		t.Errorf("gap %+v", gap)
	}
	play := testboat.Run(t, "backlash", `{}`, o)
	if r := play.Result("greatest"); r == nil || !strings.Contains(r.Text, "output flange") || wordOf(play, "backlash-doubled") != "beyond" {
		t.Errorf("%+v, %q", r, wordOf(play, "backlash-doubled"))
	}
	beyond := map[string]bool{}
	for _, f := range testboat.Check(t, o.Boat, o).Findings {
		beyond[f.Verdict.Limit] = beyond[f.Verdict.Limit] || f.Verdict.Word.Plain() == "beyond"
	}
	if !beyond["flange-clamp-gone"] {
		t.Error("the survey does not tell it")
	}
	// The maker's torque goes before that of the boat's own note.
	made := testboat.Read(t, strings.Replace(looseBoat, `"readings"`, `"makersFigures":[{"of":"output-flange/nutTorque","value":"270 N·m","source":{"document":"Gearbox manual (invented)","clause":"p. 9"}}],"readings"`, 1))
	if in := testboat.Run(t, "output-flange", `{}`, marinecalc.Options{Boat: made}).Input("nutTorque"); in == nil || *in.SI != 270 {
		t.Errorf("maker's torque: %+v", in)
	}
	// Nothing known of the nut: it is asked for, and the boat is no fault.
	bare := testboat.Check(t, testboat.Read(t, `{"name":"Bare"}`), marinecalc.Options{NoRanges: true})
	for _, id := range []string{"output-flange", "flange-run-out", "backlash"} {
		for _, f := range bare.Faults {
			if f.Calculation == id {
				t.Errorf("%s of a bare boat: %+v", id, f.Problems)
			}
		}
	}
}
