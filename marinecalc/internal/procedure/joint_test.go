package procedure_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// twite is a boat with an output flange whose face is worn by so much, keys of two
// sizes, one propeller nut and the lock that is told.
func twite(t *testing.T, wear, couplingKey, shaftKey, lock string) *marinecalc.Boat {
	return testboat.Read(t, `{"name": "Twite", "units": "metric", "engine": {"power": "30 kW", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": "2.5", "ratioAstern": "2.2"},
		"coupling": {"diameter": "110 mm", "bore": {"holdMethod": "set-screws", "engagedLength": "70 mm", "hubDiameter": "60 mm", "hubMetal": "mild-steel", "surfaces": "steel-dry", "setScrewSize": "m10", "setScrews": 2, "key": `+couplingKey+`},
			"bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "nut": "plain-nut"}},
		"shaft": {"diameter": "30 mm", "alloy": "s31600-annealed", "key": `+shaftKey+`},
		"propeller": {"hubDiameter": "62 mm", "hubMetal": "manganese-bronze", "taper": "iso-4566", "taperLength": "70 mm", "taperSurfaces": "bronze-dry", "nutThread": "M20x1.5", "nutTorque": "110 N·m", "nutOrder": "one-nut", "nutLock": "`+lock+`"},
		"outputFlange": {"thread": "M24x2", "finish": "oiled", "nutTorque": "180 N·m", "seatDiameter": "32 mm", "hubLength": "42 mm", "hubDiameter": "50 mm", "ringLength": "20 mm", "ringDiameter": "48 mm", "faces": "steel-oily"},
		"readings": [{"date": "2026-10-10", "outputFaceWear": "`+wear+`"}]}`)
}

const (
	keyOf8  = `{"fitted": "yes", "width": "8 mm", "height": "7 mm", "length": "60 mm", "yieldStrength": "250 MPa"}`
	keyOf10 = `{"fitted": "yes", "width": "10 mm", "height": "8 mm", "length": "45 mm", "yieldStrength": "355 MPa"}`
	noKey   = `{"fitted": "no"}`
)

// The key that is fitted in the coupling is the coupling's own, and where it has
// none there is none to fit; the propeller's figures stand in no step of it.
func TestKeyOfTheCouplingIsItsOwn(t *testing.T) {
	for _, work := range []string{"replace-key", "replace-coupling", "refit-coupling"} {
		p := made(t, twite(t, "0 mm", keyOf10, keyOf8, "cotter"), marinecalc.Options{NoRanges: true}, work)
		s := stepNamed(t, p, "fit-key")
		for i, want := range []string{"10 mm", "8 mm", "45 mm"} {
			if s.Figures[i].Text != want {
				t.Errorf("%s: %+v, want %s", work, s.Figures[i], want)
			}
		}
		if len(s.Parts) != 1 || !strings.Contains(s.Parts[0].Size, "10 mm") {
			t.Errorf("%s takes %+v", work, s.Parts)
		}
		p = made(t, twite(t, "0 mm", noKey, keyOf8, "cotter"), marinecalc.Options{NoRanges: true}, work)
		for _, s := range stepsOf(p) {
			if s.ID == "fit-key" {
				t.Errorf("%s fits a key in a bore without one: %+v", work, s)
			}
		}
		if !strings.Contains(strings.Join(p.LeftOut, " "), "no key in the coupling's bore") {
			t.Errorf("%s leaves out %v", work, p.LeftOut)
		}
		p = made(t, testboat.Read(t, `{"name": "Bare"}`), marinecalc.Options{NoRanges: true}, work)
		if s := stepNamed(t, p, "fit-key"); len(s.Parts) != 1 || s.Figures[0].Why == "" { // not known is not none
			t.Errorf("%s on a bare boat: %+v", work, s)
		}
	}
}

// Work on what the boat file says is not there stops at its first line with why; what
// laid her open already is gone through to its end; beside other work only that is done.
func TestWorkOnWhatIsNotThereStopsAtOnce(t *testing.T) {
	const opened = `, "work": {"steps": [{"step": "pull-coupling-flange", "done": "2026-05-02", "remedies": ["replace-key"]}]}}`
	const read = `, "work": {"steps": [{"step": "torque-card", "done": "2026-05-02", "remedies": ["replace-key"]}]}}`
	for _, c := range []struct {
		boat   string
		work   []string
		told   string
		walked bool
	}{
		{`{"name": "Siskin", "coupling": {"bore": {"key": {"fitted": "no"}}}}`, []string{"replace-key"}, "“Fit a new key” is no work of this boat: the boat file says that there is no key", false},
		{`{"name": "Siskin", "coupling": {"bore": {"key": {"fitted": "no"}}}` + read, []string{"replace-key"}, "is no work of this boat", false},
		{`{"name": "Siskin", "coupling": {"bore": {"key": {"fitted": "no"}}}` + opened, []string{"replace-key"}, "is no work of this boat", true},
		{`{"name": "Siskin", "coupling": {"bore": {"key": {"fitted": "no"}}}}`, []string{"replace-key", "align-coupling"}, "is no work of this boat", true},
		{`{"name": "Siskin", "coupling": {"bore": {"key": {"fitted": "yes"}}}}`, []string{"replace-key"}, "", true},
		{`{"name": "Siskin"}`, []string{"replace-key"}, "", true},
		{`{"name": "Siskin", "coupling": {"kind": "rigid"}}`, []string{"replace-coupling-insert"}, "the coupling is rigid", false},
		{`{"name": "Siskin", "coupling": {"kind": "flexible"}}`, []string{"replace-coupling-insert"}, "", true},
	} {
		p := made(t, testboat.Read(t, c.boat), marinecalc.Options{NoRanges: true}, c.work...)
		if (p.Steps > 0) != c.walked || len(stepsOf(p)) != p.Steps {
			t.Errorf("%s, %v: %d steps", c.boat, c.work, p.Steps)
		}
		if told := strings.Join(p.LeftOut, " "); (c.told != "") != strings.Contains(told, "is no work of this boat") || !strings.Contains(told, c.told) {
			t.Errorf("%s, %v: %s", c.boat, c.work, told)
		}
		if c.told != "" && !c.walked && (len(p.Cures) > 0 || len(p.Tools) > 0) {
			t.Errorf("%s, %v: cures %v with %v", c.boat, c.work, p.Cures, p.Tools)
		}
	}
}

// A torque of a joint whose own sheets say that it does not hold as it stands is
// marked at every step that has it, and one of a sound joint is not.
func TestTorqueOfAJointThatDoesNotHoldIsMarked(t *testing.T) {
	for wear, marked := range map[string]bool{"0 mm": false, "0.04 mm": true, "0.2 mm": true} {
		p := made(t, twite(t, wear, keyOf8, keyOf8, "cotter"), marinecalc.Options{NoRanges: true}, "tighten-output-nut")
		for _, id := range []string{"torque-card", "torque-output-nut"} {
			s := stepNamed(t, p, id)
			at := slices.IndexFunc(s.Figures, func(f marinecalc.StepFigure) bool { return f.Of == "output-flange/nutTorque" })
			if at < 0 {
				t.Fatalf("%s: %+v", id, s.Figures)
			}
			if f := s.Figures[at]; f.Text != "180 N·m" || (f.Reads == "not as it stands") != marked || strings.Contains(f.Sentence, "before a wrench goes on") != marked {
				t.Errorf("%s, worn by %s: %+v", id, wear, f)
			}
		}
	}
}

// The torque card of a work has the torques that the work sets, each with its
// joint, and no other.
func TestTorquesAreOfTheWorkAndNameTheirJoint(t *testing.T) {
	b := twite(t, "0 mm", keyOf8, keyOf8, "cotter")
	for work, joints := range map[string][]string{"refit-propeller": {"Torque of the propeller nut"}, "tighten-coupling-bolts": {"Coupling bolts"}, "replace-coupling": {"Set screws of the coupling", "Coupling bolts"}, "tighten-output-nut": {"Output flange nut", "Coupling bolts"}} {
		var got []string
		for _, f := range stepNamed(t, made(t, b, marinecalc.Options{NoRanges: true}, work), "torque-card").Figures {
			joint, _, _ := strings.Cut(f.Title, ":")
			got = append(got, joint)
		}
		if !slices.Equal(got, joints) {
			t.Errorf("%s: %q, want %q", work, got, joints)
		}
	}
}

// A propeller is fitted as it is: with its key or by friction alone, with one nut
// or two, and what nothing locks is told.
func TestPropellerIsFittedAsItIs(t *testing.T) {
	for _, c := range []struct {
		key, lock  string
		has, hasnt []string
	}{
		{keyOf8, "cotter", []string{"Key in, and", "One nut, ", "New pin or lock."}, []string{"No key", "Thin nut", "where it has one", "nothing that locks"}},
		{noKey, "none", []string{"No key: friction", "One nut, ", "nothing that locks"}, []string{"Key in", "Thin nut", "New pin"}},
		{"{}", "not-known", []string{"Key in where it has one", "Look what locks"}, []string{"No key", "Key in, and", "nothing that locks"}},
	} {
		p := made(t, twite(t, "0 mm", keyOf8, c.key, c.lock), marinecalc.Options{NoRanges: true}, "refit-propeller")
		s := stepNamed(t, p, "fit-propeller")
		for _, text := range c.has {
			if !strings.Contains(s.Text, text) {
				t.Errorf("%s, %s: %q is not in %s", c.key, c.lock, text, s.Text)
			}
		}
		for _, text := range c.hasnt {
			if strings.Contains(s.Text, text) {
				t.Errorf("%s, %s: %q is in %s", c.key, c.lock, text, s.Text)
			}
		}
		mark := stepNamed(t, p, "mark-propeller")
		for _, f := range mark.Figures {
			if strings.HasPrefix(f.Of, "key-strength/") && c.key != keyOf8 {
				t.Errorf("%s: a key's figure %+v", c.key, f)
			}
		}
		if nut := s.Figures[slices.IndexFunc(s.Figures, func(f marinecalc.StepFigure) bool { return f.Of == "propeller-taper/nutTorque" })]; strings.Contains(strings.ToLower(nut.Sentence), "locks of the propeller's nut, 0") != (c.lock == "none") {
			t.Errorf("%s: %+v", c.lock, nut)
		}
	}
}

// A flange that holds by friction goes on dry, as its torque is worked out, and is
// warmed, with the caution for that, only where it is pressed on; a film of oil is for
// a bore that slides and has its key. Where nobody told what holds it, it goes on dry.
func TestFlangeGoesOnAsItHolds(t *testing.T) {
	const dry, key = "no oil, grease or anti-seize", "The key carries the torque here"
	for method, want := range map[string]struct {
		says, not []string
		heated    bool
		figure    string
	}{
		"clamp":        {[]string{dry, "the slot is still open"}, []string{key, "thin film", "oven"}, false, "coupling-bore/surfaces"},
		"taper":        {[]string{dry, "by its nut"}, []string{key, "thin film", "oven", "bridge"}, false, "coupling-bore/surfaces"},
		"interference": {[]string{"dry, unless its maker presses it on with oil", "no flame on one spot", "until it grips"}, []string{key, "thin film", "bridge"}, true, "coupling-bore/heatOn"},
		"set-screws":   {[]string{key, "thin film", "without one it stays dry"}, []string{dry, "oven"}, false, "coupling-bore/tableSeating"},
		"":             {[]string{dry, "look first", "not warmed by a guess"}, []string{key, "oven"}, true, "coupling-bore/holdMethod"},
	} {
		held := `{}`
		if method != "" {
			held = `{"holdMethod": "` + method + `", "interference": "25 µm", "surfaces": "steel-dry"}`
		}
		b := testboat.Read(t, `{"name": "Dunlin", "shaft": {"diameter": "30 mm"}, "coupling": {"bore": `+held+`}}`)
		s := stepNamed(t, made(t, b, marinecalc.Options{NoRanges: true}, "refit-coupling"), "press-coupling-flange")
		for _, words := range want.says {
			if !strings.Contains(s.Text, words) {
				t.Errorf("%q: %q is not in %s", method, words, s.Text)
			}
		}
		for _, words := range want.not {
			if strings.Contains(s.Text, words) {
				t.Errorf("%q: %q is in %s", method, words, s.Text)
			}
		}
		if heated := slices.ContainsFunc(s.Cautions, func(c sheet.Caution) bool { return strings.HasPrefix(c.Text, "A heated hub") }); heated != want.heated {
			t.Errorf("%q: the caution of a heated hub stands: %v", method, heated)
		}
		if !slices.ContainsFunc(s.Figures, func(f marinecalc.StepFigure) bool { return f.Of == want.figure }) {
			t.Errorf("%q has not %s: %+v", method, want.figure, s.Figures)
		}
	}
}

// A torque from which the joint can give way is no plain figure at the steps that have
// it, and no pass of it is tightened; one that the joint bears stands as it is.
func TestStepPrintsNoTorqueThatIsNotSettled(t *testing.T) {
	nut := func(torque string) marinecalc.StepFigure {
		b := testboat.Read(t, `{"name": "Dunlin", "units": "metric", "gearbox": {"ratioAhead": "2.5"}, "outputFlange": {"thread": "M24x2", "finish": "oiled", "nutTorque": "`+torque+`", "seatDiameter": "32 mm", "hubLength": "42 mm", "hubDiameter": "50 mm", "ringLength": "20 mm", "ringDiameter": "48 mm"}}`)
		s := stepNamed(t, made(t, b, marinecalc.Options{NoRanges: true}, "tighten-output-nut"), "torque-output-nut")
		return s.Figures[slices.IndexFunc(s.Figures, func(f marinecalc.StepFigure) bool { return f.Of == "output-flange/nutTorque" })]
	}
	if f := nut("180 N·m"); f.Text != "180 N·m" {
		t.Errorf("one that it bears: %+v", f)
	}
	if f := nut("2000 N·m"); !strings.HasPrefix(f.Text, "NOT SETTLED: 2000 N·m typed, the shaft's thread can yield from ") || f.Word == "" || f.Reads == "" || f.Sentence == "" {
		t.Errorf("one that yields it: %+v", f)
	}
	for maker, settled := range map[string]bool{"30 N·m": true, "300 N·m": false} {
		b := testboat.Read(t, `{"name": "Dunlin", "units": "metric", "coupling": {"boltCount": 4, "bolts": {"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "nut": "plain-nut"}},
			"makersFigures": [{"of": "bolt-preload/wrenchSetting", "value": "`+maker+`", "source": {"document": "Coupling plate (invented)"}}]}`)
		s := stepNamed(t, made(t, b, marinecalc.Options{NoRanges: true}, "tighten-coupling-bolts"), "tighten-coupling-bolts")
		f := s.Figures[slices.IndexFunc(s.Figures, func(f marinecalc.StepFigure) bool { return f.Of == "bolt-preload/wrenchSetting" })]
		if strings.HasPrefix(f.Text, "NOT SETTLED: 300 N·m given, this bolt can break from ") == settled || (len(s.Tightening.Passes) == 3) != settled || strings.Contains(s.Tightening.Text, "not settled") == settled || (f.Maker != nil) != settled {
			t.Errorf("%s: %+v, %+v", maker, f, s.Tightening)
		}
	}
}

// A maker's torque that stands in the boat file alone reaches the step: beside another
// neither is printed bare, in place of none it is printed, and of two none is.
func TestStepHeedsTheMakersTorquesOfTheBoat(t *testing.T) {
	const one, two = `{"joint": "output-nut", "torque": "260 N·m", "source": "Gearbox book, p. 9 (invented)"}`, `{"joint": "output-nut", "torque": "200 N·m", "lubrication": "oiled", "source": "Gearbox book, p. 9 (invented)"}`
	for _, c := range []struct{ nut, torques, text, sentence string }{
		{"180 N·m", ``, "180 N·m", ""},
		{"180 N·m", one, "NOT SETTLED: 180 N·m (as entered) or 260 N·m (Gearbox book, p. 9 (invented))", "take the other out"},
		{"192 lbf·ft", one, "260 N·m", "The maker's: Gearbox book, p. 9 (invented)."},
		{"192 lbf·ft", one + "," + two, "260 N·m", "The maker's: Gearbox book, p. 9 (invented)."},
		{"", one, "260 N·m", "The maker's: Gearbox book, p. 9 (invented)."},
		{"", one + "," + two, "NOT SETTLED: 260 N·m (Gearbox book, p. 9 (invented)) or 200 N·m (oiled; Gearbox book, p. 9 (invented))", "take the other out"},
	} {
		nut := ""
		if c.nut != "" {
			nut = `"nutTorque": "` + c.nut + `",`
		}
		b := testboat.Read(t, `{"name": "Dunlin", "units": "metric", "gearbox": {"ratioAhead": "2.5"}, "torques": [`+c.torques+`], "outputFlange": {"thread": "M24x2", "finish": "oiled", `+nut+` "seatDiameter": "32 mm", "hubLength": "42 mm", "hubDiameter": "50 mm", "ringLength": "20 mm", "ringDiameter": "48 mm"}}`)
		s := stepNamed(t, made(t, b, marinecalc.Options{NoRanges: true}, "tighten-output-nut"), "torque-output-nut")
		f := s.Figures[slices.IndexFunc(s.Figures, func(f marinecalc.StepFigure) bool { return f.Of == "output-flange/nutTorque" })]
		text, said := f.Text, f.Sentence
		if f.Maker != nil {
			text, said = f.Maker.Text, "The maker's: "+f.Maker.Source+"."
		}
		if text != c.text || !strings.Contains(said, c.sentence) {
			t.Errorf("%q with %s: %+v", c.nut, c.torques, f)
		}
	}
}

// The torque of a coupling's nut is named as that, and not as one of pinch bolts.
func TestTorqueIsOfTheJointThatThereIs(t *testing.T) {
	for how, want := range map[string]string{"taper": "Nut of the coupling's taper: ", "clamp": "Pinch bolts of the coupling: "} {
		b := testboat.Read(t, `{"name": "Twite", "engine": {"power": "30 kW", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": "2.5", "ratioAstern": "2.2"}, "shaft": {"diameter": "30 mm", "alloy": "s31600-annealed"},
			"coupling": {"bore": {"holdMethod": "`+how+`", "clampKind": "two-halves", "pinchBolts": 4, "splitGap": "1 mm", "taperRatio": "0.1", "engagedLength": "60 mm", "hubDiameter": "60 mm", "hubMetal": "mild-steel", "surfaces": "steel-dry", "pinchThread": "M12x1.75", "pinchTorque": "40 N·m"}}}`)
		found := false
		for _, s := range stepsOf(made(t, b, marinecalc.Options{NoRanges: true}, "refit-coupling")) {
			for _, f := range s.Figures {
				if f.Of == "coupling-bore/pinchTorque" {
					found = true
					if !strings.HasPrefix(f.Title, want) {
						t.Errorf("%s: %s", how, f.Title)
					}
				}
			}
		}
		if !found {
			t.Errorf("%s: no torque", how)
		}
	}
}
