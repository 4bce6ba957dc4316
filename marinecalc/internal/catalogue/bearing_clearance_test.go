package catalogue_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// wordOf is the word of a limit as it would read of a limit that decides; "" where it is not applied.
func wordOf(s *marinecalc.Sheet, id string) string {
	v := s.Verdict(id)
	switch {
	case v == nil:
		return ""
	case v.Word == "inside the guide":
		return "within"
	case v.Word == "outside the guide":
		return "beyond"
	}
	return string(v.Word)
}

// 3 mm of play on a 32 mm shaft is not let pass by the rule for ships; the 15 in
// shaft of the rule's exam item (46 CFR 61.20-23, testdata/published) still is. No
// rule of thumb is stretched to shafts it was not made for, and the share of the
// diameter is always there.
func TestNoRuleIsStretched(t *testing.T) {
	for input, want := range map[string][2]string{ // the worn limit, the share of the diameter
		`"wornRule":"cfr-amidships","bearingKind":"other","shaftDiameter":"32 mm","bearingClearance":"3 mm"`:      {"not measured", "beyond"},
		`"wornRule":"cfr-amidships","bearingKind":"other","shaftDiameter":"75 mm","bearingClearance":"3 mm"`:      {"not measured", "beyond"},
		`"wornRule":"cfr-aft","bearingKind":"rubber","shaftDiameter":"15 in","bearingClearance":"1/4 in"`:         {"not measured", "within"},
		`"wornRule":"cfr-amidships","bearingKind":"other","shaftDiameter":"15 in","bearingClearance":"1/4 in"`:    {"within", "within"},
		`"wornRule":"practice-thirty-thou","shaftDiameter":"100 mm","bearingClearance":"0.7 mm"`:                  {"not measured", "within"},
		`"wornRule":"practice-1.5mm","shaftDiameter":"19 mm","bearingClearance":"1.2 mm"`:                         {"not measured", "beyond"},
		`"wornRule":"practice-thirty-thou","shaftDiameter":"30 mm","bearingClearance":"1 mm"`:                     {"about the guide", "beyond"}, // the rules of thumb disagree
		`"wornRule":"practice-thirty-thou","shaftDiameter":"30 mm","bearingClearance":"2 mm"`:                     {"beyond", "beyond"},
		`"wornRule":"practice-thirty-thou","wornLimit":"2 mm","shaftDiameter":"100 mm","bearingClearance":"1 mm"`: {"within", "within"},
	} {
		s := testboat.Run(t, "bearing-clearance", `{"bladeWidth":"0 mm",`+input+`}`, marinecalc.Options{})
		if got := [2]string{wordOf(s, "worn-limit"), wordOf(s, "worn-share")}; got != want {
			t.Errorf("%s: %q, want %q", input, got, want)
		}
	}
}

// A bearing without clearance, or with less than a new one must have, is not let
// pass, and neither is a reading of nothing.
func TestATightBearingIsNotPassedOver(t *testing.T) {
	for input, want := range map[string][2]string{ // clearance at all, that of a new bearing
		`"shaftDiameter":"30 mm","shellBore":"29.9 mm","boreGauge":"micrometer","lengthGauge":"micrometer"`: {"beyond", "beyond"},
		`"shaftDiameter":"30 mm","bearingClearance":"0 mm","clearanceGauge":"dial-indicator"`:               {"", "beyond"},
		`"shaftDiameter":"90 mm","bearingClearance":"0 mm","clearanceGauge":"dial-indicator"`:               {"", ""},
		`"shaftDiameter":"30 mm","bearingClearance":"0.05 mm","clearanceGauge":"dial-indicator"`:            {"within", "beyond"},
		`"shaftDiameter":"30 mm","bearingClearance":"0.2 mm","clearanceGauge":"dial-indicator"`:             {"within", "within"},
		`"shaftDiameter":"90 mm","bearingClearance":"0.2 mm","clearanceGauge":"dial-indicator"`:             {"within", ""},
	} {
		s := testboat.Run(t, "bearing-clearance", `{"bladeWidth":"0 mm",`+input+`}`, marinecalc.Options{})
		for i, id := range []string{"clearance-none", "clearance-tight"} {
			got := wordOf(s, id)
			if v := s.Verdict(id); want[i] == "" && v != nil && (got == "within" || got == "near the limit") || want[i] != "" && got != want[i] {
				t.Errorf("%s: %s is %q, want %q", input, id, got, want[i])
			}
		}
	}
}

// What a flat feeler hides is counted, and where nobody said how wide it was no
// clearance that it could hide is called good enough.
func TestAFlatFeelerIsNotTakenAtItsWord(t *testing.T) {
	for _, c := range []struct{ width, want string }{{`"bladeWidth":"0 mm",`, "within"}, {`"bladeWidth":"4 mm",`, "within"}, {`"bladeWidth":"12.7 mm",`, "beyond"}, {``, "cannot tell"}} {
		s := testboat.Run(t, "bearing-clearance", `{`+c.width+`"shaftDiameter":"30 mm","bearingClearance":"0.45 mm","wornLimit":"0.8 mm"}`, marinecalc.Options{})
		if got := wordOf(s, "worn-limit"); got != c.want {
			t.Errorf("%q: %q, want %q", c.width, got, c.want)
		}
	}
	s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm","bearingClearance":"0.45 mm","wornLimit":"0.8 mm","clearanceGauge":"dial-indicator"}`, marinecalc.Options{})
	if got := wordOf(s, "worn-limit"); got != "within" {
		t.Errorf("a dial hides nothing: %q", got)
	}
	both := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm","bearingClearance":"0.45 mm","bladeWidth":"4 mm","shellBore":"31 mm"}`, marinecalc.Options{})
	if read, bore := both.Result("clearanceRead"), both.Result("clearanceFromBore"); math.Abs(*read.SI-(0.45e-3+16e-6/(4*30.45e-3))) > 1e-9 || math.Abs(*bore.SI-1e-3) > 1e-9 || *both.Result("clearance").SI != *bore.SI {
		t.Errorf("read %v, by bore %v", *read.SI, *bore.SI)
	}
}

// A new bearing is judged by the diameter of its shaft: ABYC P-6 as quoted, 0.003 to
// 0.007 in for 1-1/4 in, 0.005 to 0.010 for 2 in, 0.005 to 0.011 for 2-1/2 in.
func TestANewBearingIsJudgedByDiameter(t *testing.T) {
	for _, c := range []struct{ shaft, clearance, least, most string }{
		{"1-1/4 in", "0.002 in", "beyond", "within"}, {"1-1/4 in", "0.005 in", "within", "within"}, {"1-1/4 in", "0.009 in", "within", "beyond"},
		{"2 in", "0.009 in", "within", "within"}, {"2 in", "0.004 in", "beyond", "within"}, {"2-1/2 in", "0.0105 in", "within", "near the limit"}, {"2 in", "0.0115 in", "within", "beyond"},
		{"4 in", "0.009 in", "", ""},
	} {
		s := testboat.Run(t, "bearing-clearance", `{"bladeWidth":"0 mm","shaftDiameter":"`+c.shaft+`","bearingClearance":"0.4 mm","newClearance":"`+c.clearance+` ± 0.0002 in"}`, marinecalc.Options{})
		if least, most := wordOf(s, "new-clearance-least"), wordOf(s, "new-clearance-most"); least != c.least || most != c.most {
			t.Errorf("%+v: %q and %q", c, least, most)
		}
	}
}

// A bearing does not grow tighter by running: readings that say so are doubted,
// the more so the more the gauges can tell, and no time to the limit is made
// up from them.
func TestBearingThatGrowsTighterIsDoubted(t *testing.T) {
	run := func(now string) *marinecalc.Sheet {
		return testboat.Run(t, "bearing-clearance", `{"bladeWidth":"0 mm","shaftDiameter":"32 mm","bearingClearance":"`+now+`","newClearance":"0.5 mm","earlierClearance":"0.4 mm","runningTime":"100 h"}`, marinecalc.Options{})
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
	c := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm","shellBore":"30.45 mm"}`, marinecalc.Options{}).Result("clearance")
	half := 0.1e-3 * (1 - math.Sqrt(0.05))
	if math.Abs(*c.SI-0.45e-3) > 1e-9 || math.Abs(*c.Low-(0.45e-3-half)) > 0.03*half || math.Abs(*c.High-(0.45e-3+half)) > 0.03*half {
		t.Errorf("%+v, want ± %v m", c, half)
	}
	if _, err := marinecalc.Run("bearing-clearance", []byte(`{"shaftDiameter":"30 mm"}`), marinecalc.Options{}); err == nil || !strings.Contains(err.Error(), "/bearingClearance") || !strings.Contains(err.Error(), "bore") {
		t.Errorf("without clearance and bore: %v", err)
	}
}

// A blade that did not go in settles nothing by being tried again: what is in
// doubt is how wide it is, and where that is known the way of reading.
func TestABladeThatDoesNotGoIn(t *testing.T) {
	for blade, want := range map[string]string{``: "“Width of the feeler”, a usual value here", `,"bladeWidth":"6 mm"`: "“Bearing clearance”, and no finer gauge"} {
		s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm","bearingClearance":"0 mm"`+blade+`}`, marinecalc.Options{})
		doubtful := 0
		for _, v := range s.Verdicts {
			if v.Settle == "" {
				continue
			}
			doubtful++
			if !strings.Contains(v.Settle, want) {
				t.Errorf("%s %s: %s", blade, v.Limit, v.Settle)
			}
		}
		if doubtful == 0 {
			t.Errorf("%s: nothing is in doubt", blade)
		}
	}
}

// A lifted shaft by two pulls is surer than by one, a wire alone is asked for its
// neighbour, and ways that contradict each other tell nothing.
func TestClearanceByLiftWireAndMark(t *testing.T) {
	const two = `"liftTravel":"0.62 mm","liftPull":"300 N","secondTravel":"0.56 mm","secondPull":"150 N","dialAft":"0 mm"`
	for input, want := range map[string][2]string{ // the worn limit, whether the pulls brought it up
		two + `,"wornLimit":"0.6 mm"`:                                  {"within", "within"},
		two + `,"wornLimit":"0.4 mm"`:                                  {"beyond", "within"},
		`"liftTravel":"0.62 mm","dialAft":"0 mm","wornLimit":"0.6 mm"`: {"cannot tell", ""}, // how much of it bends is not known
		`"liftTravel":"0.62 mm","dialAft":"0 mm","wornLimit":"0.8 mm"`: {"cannot tell", ""},
		`"liftTravel":"1.6 mm","liftPull":"300 N","secondTravel":"1.2 mm","secondPull":"150 N","dialAft":"0 mm","wornLimit":"2 mm"`: {"cannot tell", "beyond"},
		`"wireIn":"0.5 mm","wireOut":"0.6 mm","wornLimit":"0.8 mm"`:                                                                 {"within", ""},
		`"wireIn":"0.5 mm","wireOut":"0.6 mm","wornLimit":"0.55 mm"`:                                                                {"cannot tell", ""},
		`"markFirst":"42 mm","markDistance":"42.6 mm","markClearance":"0.15 mm","wornLimit":"0.5 mm"`:                               {"beyond", ""},
		two + `,"bearingClearance":"0.9 mm","bladeWidth":"0 mm","wornLimit":"2 mm"`:                                                 {"cannot tell", "about the guide"}, // by what the other way gives none of it holds
		two + `,"wireIn":"0.45 mm","wireOut":"0.55 mm","bearingClearance":"0.5 mm","bladeWidth":"0 mm","wornLimit":"2 mm"`:          {"within", "within"},
	} {
		s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm",`+input+`}`, marinecalc.Options{})
		if got := [2]string{wordOf(s, "worn-limit"), wordOf(s, "lift-came-to-the-top")}; got != want {
			t.Errorf("%s: %q, want %q", input, got, want)
		}
	}
	s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter":"30 mm","markFirst":"42 mm","markDistance":"41.7 mm","markClearance":"0.5 mm"}`, marinecalc.Options{})
	if wordOf(s, "shaft-not-risen") != "beyond" {
		t.Errorf("a shaft that rose: %q", wordOf(s, "shaft-not-risen"))
	}
}

// Of readings by several gauges only those of the newest day are the boat as she is, and
// the wear since the first goes to that day.
func TestAnOlderWayIsNotTheBoatAsSheIs(t *testing.T) {
	b := testboat.Read(t, `{"name": "X", "shaft": {"diameter": "30 mm"}, "readings": [
		{"date": "2024-05-01", "engineHours": "100 h", "bearingClearance": "0.3 mm", "bearingBladeWidth": "0 mm"},
		{"date": "2025-05-01", "engineHours": "300 h", "bearingLift": "0.5 mm", "bearingLiftPull": "300 N", "bearingSecondLift": "0.44 mm", "bearingSecondPull": "150 N", "bearingDialAft": "0 mm"},
		{"date": "2026-05-01", "engineHours": "500 h", "bearingLift": "0.8 mm"}]}`)
	s := testboat.Run(t, "bearing-clearance", `{}`, marinecalc.Options{Boat: b})
	if s.Input("bearingClearance") != nil || s.Input("secondTravel") != nil || s.Input("runningTime") == nil || math.Abs(*s.Input("runningTime").SI-400*3600) > 1 {
		t.Errorf("taken: %+v, %+v, %+v", s.Input("bearingClearance"), s.Input("secondTravel"), s.Input("runningTime"))
	}
	if rate := s.Result("wearPerThousand"); rate == nil || math.Abs(*rate.SI-(*s.Result("clearance").SI-0.3e-3)/0.4) > 1e-9 {
		t.Errorf("rate: %+v", rate)
	}
}

// One pull does not tell that the shaft came to the top: its own stiffness, gland
// or coupling may have held it, so that the clearance is no less than the travel
// and what bends, and a reading that would be OK is not. A hard stop, or two pulls,
// tell it; a heavier pull that lifts less contradicts itself.
func TestALiftThatMayFallShortIsALowerBound(t *testing.T) {
	for lift, want := range map[string]string{
		`"liftTravel": "0.6 mm"`:                     "cannot tell",
		`"liftTravel": "0.6 mm", "liftStop": "soft"`: "cannot tell",
		`"liftTravel": "0.6 mm", "liftStop": "hard"`: "within",
		`"liftTravel": "2.4 mm"`:                     "beyond",
		`"liftTravel": "0.3 mm"`:                     "within", // twice of it would do
		`"liftTravel": "0.66 mm", "liftPull": "300 N", "secondTravel": "0.62 mm", "secondPull": "150 N"`:                         "within",
		`"liftTravel": "0.62 mm", "liftPull": "300 N", "secondTravel": "0.66 mm", "secondPull": "150 N"`:                         "cannot tell",
		`"liftTravel": "0.9 mm", "liftPull": "300 N", "secondTravel": "0.6 mm", "secondPull": "150 N"`:                           "cannot tell",
		`"liftTravel": "0.62 mm", "liftPull": "300 N", "secondTravel": "0.66 mm", "secondPull": "150 N", "shellBore": "45.5 mm"`: "cannot tell", // disagrees with the bore
	} {
		s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "45 mm", "dialAft": "0 mm", "wornLimit": "1 mm", `+lift+`}`, marinecalc.Options{})
		if got := wordOf(s, "worn-limit"); got != want {
			t.Errorf("%s: %s, want %s: %s", lift, got, want, s.Verdict("worn-limit").Sentence)
		}
	}
}

// A mark that was read twice asks for the clearance it began at, not for the bore;
// the guide's range stands beside its verdict, and no more wear is ever judged
// milder.
func TestWornGuideAndMark(t *testing.T) {
	for input, where := range map[string]string{`"markDistance": "50.4 mm", "markFirst": "50 mm"`: "/markClearance", `"markFirst": "50 mm"`: "/markDistance"} {
		_, err := marinecalc.Run("bearing-clearance", []byte(`{"shaftDiameter": "45 mm", `+input+`}`), marinecalc.Options{})
		if err == nil || !strings.Contains(err.Error(), where) || strings.Contains(err.Error(), "bore") {
			t.Errorf("%s: %v", input, err)
		}
	}
	rank, order := -1, []string{"within", "near the limit", "about the guide", "cannot tell", "beyond"}
	for _, c := range []string{"0.3", "0.6", "0.74", "0.8", "1", "1.2", "1.4", "1.5", "1.7", "3"} {
		s := testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "45 mm", "bladeWidth": "0 mm", "bearingClearance": "`+c+` mm"}`, marinecalc.Options{})
		v := s.Verdict("worn-limit")
		if now := slices.Index(order, wordOf(s, "worn-limit")); now < rank {
			t.Errorf("%s mm is judged milder than less: %s", c, v.Sentence)
		} else {
			rank = now
		}
		if !strings.Contains(v.Bound, "0.76 mm to 1.5 mm") {
			t.Errorf("the two rules of thumb: %s", v.Bound)
		}
	}
}
