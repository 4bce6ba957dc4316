package marinecalc

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/sheet"
)

// boltedCalculations are those of coupling bolts, gland work and bearings.
var boltedCalculations = []string{"coupling-grip", "bolt-fit", "gland-packing", "gland-drip", "bearing-clearance", "bearing-life"}

// A boat that has all that these calculations take from a boat file.
const boltedBoat = `{"name":"Oystercatcher",
 "engine":{"power":"21 kW","speed":"2800 rpm"},"gearbox":{"ratioAhead":"2.15","ratioAstern":"1.95"},
 "coupling":{"diameter":"105 mm","kind":"rigid","boltCount":4,"boltCircle":"82.5 mm","faces":"steel-dry","holeFit":"clearance","headFlangeThickness":"12 mm","nutFlangeThickness":"13 mm",
  "bolts":{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","length":"45 mm"}},
 "shaft":{"diameter":"25 mm","alloy":"s31600-annealed","freeLength":"700 mm","grooveDiameter":"24.5 mm"},
 "gland":{"boxBore":"41 mm","boxDepth":"48 mm","followerDepth":"10 mm"},
 "bilge":{"switchVolume":"20 L","cycleVolume":"12 L","floodVolume":"200 L","pumpFlow":"20 L/min","pumpPower":"48 W"},
 "battery":{"energy":"1200 W·h","standingPower":"1.2 W"},
 "sternBearing":{"kind":"rubber","length":"100 mm","newClearance":"0.12 mm","grooveDepth":"3.2 mm"},
 "makersFigures":[{"of":"worn-practice","value":0.5,"source":{"document":"the bush maker's sheet"}}],
 "readings":[{"date":"2026-03-20","dripRate":"8 drips/min","dripRateAtRest":"4 drips/min","bearingClearance":"0.45 mm","bearingGrooveDepth":"2.4 mm"}]}`

// Each draws what can be drawn, warns, judges and says what to do next, on its
// own examples and in every unit system.
func TestBoltedSheetsAreWhole(t *testing.T) {
	for i, k := range openAll(t) {
		id := catalogue.Calculations[i].ID
		if !slices.Contains(boltedCalculations, id) {
			continue
		}
		for _, units := range []string{"metric", "us", "both"} {
			s, err := standard.run(context.Background(), id, typedInput(t, k.ID), Options{Trials: 256, Units: units})
			if err != nil {
				t.Errorf("%s: its own examples are refused: %v", id, err)
				continue
			}
			if len(s.Drawings) == 0 || len(s.Cautions) == 0 || len(s.Next) == 0 || len(s.Verdicts) == 0 || s.Trials == 0 {
				t.Errorf("%s: %d drawings, %d cautions, %d things to do, %d verdicts, %d trials, notes %q", id, len(s.Drawings), len(s.Cautions), len(s.Next), len(s.Verdicts), s.Trials, s.Notes)
			}
			for _, d := range s.Drawings {
				if fault := wellFormed(d.SVG); fault != "" {
					t.Errorf("%s: %s: %s", id, d.Name, fault)
				}
			}
		}
	}
}

// What goes in in one unit system comes out the same as in the other.
func TestBoltedUnitsInAndOut(t *testing.T) {
	for _, c := range []struct{ id, metric, us string }{
		{"coupling-grip", `{"boltCount":4,"boltCircle":"82.55 mm","faces":"steel-dry","preload":"25 kN","shaftTorque":"169.477 N·m","thread":"7/16-14 UNC","grade":"j429-5"}`,
			`{"boltCount":4,"boltCircle":"3-1/4 in","faces":"steel-dry","preload":"5620.224 lbf","shaftTorque":"125 lbf·ft","thread":"7/16-14 UNC","grade":"j429-5"}`},
		{"bolt-fit", `{"thread":"7/16-14 UNC","headFlangeThickness":"12.7 mm","nutFlangeThickness":"12.7 mm","nut":"ne-7/16-14"}`, `{"thread":"7/16-14 UNC","headFlangeThickness":"1/2 in","nutFlangeThickness":"1/2 in","nut":"ne-7/16-14"}`},
		{"gland-packing", `{"shaftDiameter":"31.75 mm","boxBore":"50.8 mm","boxDepth":"63.5 mm","followerDepth":"9.525 mm"}`, `{"shaftDiameter":"1-1/4 in","boxBore":"2 in","boxDepth":"2-1/2 in","followerDepth":"3/8 in"}`},
		{"gland-drip", `{"dripRate":"8 drips/min","dripRateAtRest":"4 drips/min","switchVolume":"18.92706 L","pumpFlow":"18.92706 L/min","pumpPower":"48 W"}`, `{"dripRate":"8 drips/min","dripRateAtRest":"4 drips/min","switchVolume":"5 US gal","pumpFlow":"5 US gal/min","pumpPower":"48 W"}`},
		{"bearing-clearance", `{"shaftDiameter":"31.75 mm","bearingClearance":"0.4572 mm","earlierClearance":"0.254 mm","runningTime":"400 h"}`, `{"shaftDiameter":"1-1/4 in","bearingClearance":"18 thou","earlierClearance":"0.010 in","runningTime":"400 h"}`},
		{"bearing-life", `{"bearing":"6206","radialLoad":"889.6443 N","thrust":"1201.020 N","axialFactors":"0.11","shaftSpeed":"1300 rpm"}`, `{"bearing":"6206","radialLoad":"200 lbf","thrust":"270 lbf","axialFactors":"0.11","shaftSpeed":"1300 rpm"}`},
	} {
		metric, us := runInput(t, c.id, c.metric, "us"), runInput(t, c.id, c.us, "metric")
		for _, r := range metric.Results {
			other := us.Result(r.Name)
			if other == nil || (r.SI == nil) != (other.SI == nil) || r.SI == nil && r.Text != other.Text ||
				r.SI != nil && math.Abs(*r.SI-*other.SI) > 2e-5*math.Abs(*r.SI)+1e-9 {
				t.Errorf("%s: %s is %+v from metric and %+v from US input", c.id, r.Name, r, other)
			}
		}
	}
}

// On a boat file nothing is typed twice: clamp and torque come from the
// earlier calculations with their ranges, and the maker's figure wins.
func TestBoltedCalculationsTakeFromTheBoat(t *testing.T) {
	boat, err := ReadBoat([]byte(boltedBoat))
	if err != nil {
		t.Fatal(err)
	}
	o := Options{Boat: boat, Trials: 512}
	run := func(id, input string) *Sheet {
		s, err := Run(id, []byte(input), o)
		if err != nil {
			t.Fatalf("%s: %v", id, err)
		}
		return s
	}
	grip, preload, torque := run("coupling-grip", `{}`), run("bolt-preload", `{}`), run("shaft-torque", `{}`)
	for name, from := range map[string]*float64{"preload": preload.Result("achievedPreload").SI, "shaftTorque": torque.Result("shaftTorque").SI,
		"asternTorque": torque.Result("asternTorque").SI, "peakTorque": torque.Result("peakTorque").SI} {
		if in := grip.Input(name); in == nil || in.Origin != "earlier result" || in.Range == "" || *in.SI != *from {
			t.Errorf("%s came as %+v, worked out before: %v", name, in, *from)
		}
	}
	for _, v := range grip.Verdicts {
		if v.Limit == "grip-ahead" && (v.Probability == nil || *v.Probability <= 0.5) {
			t.Errorf("the grip ahead is given no probability: %+v", v)
		}
	}
	fit := run("bolt-fit", `{"plainNut":"hex-nut"}`)
	if in := fit.Input("wrenchSetting"); in == nil || in.Origin != "earlier result" || *in.SI != *preload.Result("wrenchSetting").SI {
		t.Errorf("the wrench setting came as %+v", in)
	}
	if fit.Input("boltLength") == nil || *fit.Result("judgedLength").SI != 0.045 {
		t.Error("the bolt on the boat is not the one that is judged")
	}
	run("gland-packing", `{}`)
	run("gland-drip", `{}`)
	wear := run("bearing-clearance", `{}`)
	for _, v := range wear.Verdicts {
		if v.Limit == "worn-practice" && (v.Word != "beyond" || v.Authority != "maker's figure" || !strings.Contains(v.Source, "bush maker")) {
			t.Errorf("the maker's figure does not win: %+v", v)
		}
	}
	life := run("bearing-life", `{"bearing":"6206","radialLoad":"0.9 kN","thrust":"1 kN","axialFactors":"0.11"}`)
	if in := life.Input("shaftSpeed"); in == nil || in.Origin != "earlier result" {
		t.Errorf("the shaft speed came as %+v", in)
	}
}

// The pull astern on the coupling is that on the engine's mounts: two
// calculations of one boat do not differ. Where nobody knows it, the grip
// astern is not measured; without a peak torque nor is that in a shock, and
// the sheet says what the rest goes by.
func TestGripAsternCountsThePull(t *testing.T) {
	o := Options{Boat: demoBoat(t, "kittiwake"), NoRanges: true}
	grip, mounts := mustRun(t, "coupling-grip", `{}`, o), mustRun(t, "mount-load", `{}`, o)
	pull := 1.0
	for _, name := range []string{"thrust", "asternThrust"} {
		a, b := grip.Input(name), mounts.Input(name)
		if a == nil || b == nil || *a.SI != *b.SI || a.Origin != b.Origin || a.Source != b.Source {
			t.Fatalf("%s: %+v at the coupling, %+v at the mounts", name, a, b)
		}
		pull *= *a.SI
	}
	if r := grip.Result("pullAstern"); r == nil || math.Abs(*r.SI-pull) > 1e-9*pull {
		t.Errorf("pull astern %+v, want %g N", r, pull)
	}
	if !(*grip.Result("capacityAstern").SI < *grip.Result("frictionCapacity").SI) {
		t.Error("the pull takes nothing of the grip")
	}

	s := runInput(t, "coupling-grip", `{"boltCount":4,"boltCircle":"82.5 mm","faces":"steel-dry","preload":"25 kN","shaftTorque":"170 N·m","asternTorque":"150 N·m"}`, "metric")
	for limit, says := range map[string]string{"grip-astern": "propeller's thrust", "grip-peak": "peak torque"} {
		if v := verdictsOf(s)[limit]; v.Word != "not measured" || !strings.Contains(v.Sentence, says) {
			t.Errorf("%s: %+v", limit, v)
		}
	}
	if r := s.Result("hardestCase"); r == nil || r.Text != "the steady torque ahead" {
		t.Errorf("the sheet says of its hardest torque: %+v", r)
	}
	if v := verdictsOf(s)["grip-one-loose"]; !strings.Contains(v.Title, "hardest torque known") {
		t.Errorf("%+v", v)
	}
}

// A flange that nobody can drill is refused at the place of the boat file it
// came from, with the figure that shows it.
func TestImpossibleFlangeOfTheBoatIsBlamedOnTheBoat(t *testing.T) {
	boat, err := ReadBoat([]byte(strings.Replace(boltedBoat, `"boltCircle":"82.5 mm"`, `"boltCircle":"34 mm"`, 1)))
	if err != nil {
		t.Fatal(err)
	}
	_, err = Run("coupling-grip", []byte(`{}`), Options{Boat: boat, NoRanges: true})
	if err == nil || !strings.Contains(err.Error(), "/boat/coupling/boltCircle") || !strings.Contains(err.Error(), "36 mm") {
		t.Errorf("%v", err)
	}
}

// A scrap limit of another size than the bolt's is not used.
func TestReuseLimitOfAnotherSizeIsRefused(t *testing.T) {
	_, err := Run("bolt-fit", []byte(`{"thread":"M10x1.5","headFlangeThickness":"12 mm","nutFlangeThickness":"12 mm","plainNut":"hex-nut","reuseRule":"faa-7/16-14","measuredRunningTorque":"1 N·m"}`), Options{NoRanges: true})
	if err == nil || !strings.Contains(err.Error(), "/reuseRule") {
		t.Errorf("%v", err)
	}
}

// A joint that some of the bolts would hold shut and others not is not called
// shut: Shigley ch. 8, F_i/(1 − C), goes by the preload that is in the bolt.
func TestJointIsJudgedByTheClampReached(t *testing.T) {
	s := mustRun(t, "bolt-preload", `{"thread":"7/16-14 UNC","grade":"j429-5","finish":"zinc-shigley","nut":"ne-7/16-14","gripLength":"26 mm","externalLoad":"34 kN"}`, Options{})
	opens, reached, share := s.Result("separationLoad"), s.Result("achievedPreload"), s.Result("loadShare")
	for _, pair := range [][2]float64{{*opens.SI, *reached.SI}, {*opens.Low, *reached.Low}, {*opens.High, *reached.High}} {
		if want := pair[1] / (1 - *share.SI); math.Abs(pair[0]-want) > 0.005*want { // the share of the pull has a little spread of its own
			t.Errorf("opens at %v N, want %v", pair[0], want)
		}
	}
	if v := s.Verdict("joint-stays-closed"); v == nil || v.Word != "cannot tell" {
		t.Errorf("34 kN on a joint that opens somewhere from %v to %v N: %+v", opens.Low, opens.High, v)
	}
}

// The sheet says whether the wrench setting holds the running torque of the
// nut. US Army TM 5-2330-325-13&P: it does from a third of the target on; on a
// 1/4-20 at a target of 70 lbf·in that is 23.3 lbf·in.
func TestRunningTorqueIsSaidToBeInTheSettingOrNot(t *testing.T) {
	for running, want := range map[string]string{"0 N·m": "", "23 lbf·in": "nothing was added", "24 lbf·in": "add nothing more"} {
		s := mustRun(t, "bolt-preload", `{"nominalDiameter":"1/4 in","pitch":"1/20 in","threadForm":"inch","proofStrength":"85 ksi","yieldStrength":"92 ksi","nutFactor":0.2,"proofFraction":0.5176,"runningTorque":"`+running+`"}`, Options{NoRanges: true})
		said := ""
		for _, step := range s.Next {
			for _, words := range []string{"nothing was added", "add nothing more"} {
				if strings.Contains(step.Text, words) {
					said += words
				}
			}
		}
		if said != want {
			t.Errorf("%s: the sheet says %q, want %q", running, said, want)
		}
	}
}

// 3 mm of play on a 32 mm shaft is not let pass by the rule for ships; the 15 in
// shaft of the rule's exam item (46 CFR 61.20-23, testdata/published) still is.
func TestShipRuleDoesNotPassSmallShafts(t *testing.T) {
	for input, want := range map[string]map[string]string{
		`"shaftDiameter":"32 mm","bearingClearance":"3 mm"`:   {"worn-cfr-small-shaft": "cannot tell", "worn-ship-rule-small-craft": "beyond"},
		`"shaftDiameter":"75 mm","bearingClearance":"3 mm"`:   {"worn-cfr-small-shaft": "cannot tell"},
		`"shaftDiameter":"15 in","bearingClearance":"1/4 in"`: {"worn-cfr": "within"},
	} {
		s := mustRun(t, "bearing-clearance", `{"wornRule":"cfr-amidships","bearingKind":"other",`+input+`}`, Options{})
		for _, id := range []string{"worn-cfr", "worn-cfr-small-shaft", "worn-ship-rule-small-craft"} {
			word := ""
			if v := s.Verdict(id); v != nil {
				word = string(v.Word)
			}
			if word != want[id] {
				t.Errorf("%s: %s: %q, want %q", input, id, word, want[id])
			}
		}
	}
}

// ISO 281 has X, Y and e by thrust over static rating: 0.5 kN on the 16.6 kN of
// a 6208 is 0.030, between the rows 0.028 and 0.056; the row 0.56 makes the
// life three times too long.
func TestAxialRowMustBeNextToTheThrust(t *testing.T) {
	input := func(row, thrust string) []byte {
		return []byte(`{"bearing":"6208","radialLoad":"0.9 kN","thrust":"` + thrust + `","axialFactors":"` + row + `","shaftSpeed":"1200 rpm","wantedLife":"5000 h"}`)
	}
	for _, c := range []struct{ row, thrust, allowed string }{
		{"0.028", "0.5 kN", ""}, {"0.056", "0.5 kN", ""}, {"0.56", "0.5 kN", "0.028 or 0.056"}, {"0.014", "0.5 kN", "0.028 or 0.056"},
		{"0.014", "0.1 kN", ""}, {"0.028", "0.1 kN", "0.014"}, {"0.56", "12 kN", ""}, {"0.42", "12 kN", "0.56"}, {"0.56", "0 kN", ""},
	} {
		_, err := Run("bearing-life", input(c.row, c.thrust), Options{NoRanges: true})
		if list := problem.Of(err); c.allowed == "" && err != nil || c.allowed != "" && (len(list) != 1 || list[0].Where != "/axialFactors" || list[0].Allowed != c.allowed) {
			t.Errorf("row %s, thrust %s: %v, want %q", c.row, c.thrust, err, c.allowed)
		}
	}
	// A thrust known to a third may stray past the rows in its trials.
	if s := mustRun(t, "bearing-life", string(input("0.028", "0.5 kN ± 0.17 kN")), Options{}); s.Result("adjustedLife").Low == nil {
		t.Errorf("no range: %q", s.Notes)
	}
}

// A bush does not grow tighter by running: readings that say so are doubted,
// the more so the more the gauges can tell, and no time to the limit is made
// up from them.
func TestBushThatGrowsTighterIsDoubted(t *testing.T) {
	run := func(now string) *Sheet {
		return mustRun(t, "bearing-clearance", `{"shaftDiameter":"32 mm","bearingClearance":"`+now+`","newClearance":"0.5 mm","earlierClearance":"0.4 mm","runningTime":"100 h"}`, Options{})
	}
	for _, c := range []struct {
		now, before, new string // the verdicts on wear since before and since new
		left             bool
	}{
		{"0.3 mm", "beyond", "beyond", false}, {"0.395 mm", "cannot tell", "beyond", false}, {"0.4 mm", "", "beyond", false},
		{"0.41 mm", "", "beyond", true}, {"0.6 mm", "", "", true},
	} {
		s := run(c.now)
		for id, want := range map[string]string{"not-tighter-than-before": c.before, "not-tighter-than-new": c.new} {
			word := ""
			if v := s.Verdict(id); v != nil {
				word = string(v.Word)
			}
			if word != want {
				t.Errorf("%s: %s: %q, want %q", c.now, id, word, want)
			}
		}
		left := s.Result("timeLeft")
		if (left != nil) != c.left || s.Trials == 0 {
			t.Errorf("%s: left %+v, %d trials, %q", c.now, left, s.Trials, s.Notes)
		}
		if advised := slices.ContainsFunc(s.Next, func(n sheet.Next) bool { return strings.Contains(n.Text, "show no wear") }); advised == c.left {
			t.Errorf("%s: said that no wear shows: %v", c.now, advised)
		}
	}
	// Where the gauge leaves room for no wear at all, the range has no end.
	if s := run("0.41 mm").Result("timeLeft"); !strings.HasSuffix(s.Interval, " or more") || strings.Contains(s.Interval, "87") {
		t.Errorf("left %s (%s)", s.Text, s.Interval)
	}
}

// A clearance that is the difference of two diameters has the accuracy of
// both: two calliper readings of ± 0.05 mm spread as a triangle of ± 0.1 mm,
// whose middle 95 % are ± 0.1·(1 − √0.05) mm (JCGM 101, 6.4.5, clause from memory).
func TestClearanceOfBoreAndShaftHasBothAccuracies(t *testing.T) {
	c := mustRun(t, "bearing-clearance", `{"shaftDiameter":"30 mm","bushBore":"30.45 mm"}`, Options{}).Result("clearance")
	half := 0.1e-3 * (1 - math.Sqrt(0.05))
	if math.Abs(*c.SI-0.45e-3) > 1e-9 || math.Abs(*c.Low-(0.45e-3-half)) > 0.03*half || math.Abs(*c.High-(0.45e-3+half)) > 0.03*half {
		t.Errorf("%+v, want ± %v m", c, half)
	}
	if _, err := Run("bearing-clearance", []byte(`{"shaftDiameter":"30 mm"}`), Options{}); err == nil || !strings.Contains(err.Error(), "/bearingClearance") || !strings.Contains(err.Error(), "bore") {
		t.Errorf("without clearance and bore: %v", err)
	}
}
