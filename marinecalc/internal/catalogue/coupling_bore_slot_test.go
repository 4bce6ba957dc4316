package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

const boreOf = `"shaftDiameter": "40 mm", "engagedLength": "60 mm", "hubDiameter": "80 mm", "hubMetal": "mild-steel", "shaftAlloy": "s31600-annealed", "surfaces": "steel-dry", "shaftTorque": "300 N·m", "asternTorque": "200 N·m", "peakTorque": "450 N·m", "thrustAstern": "3 kN", "foulPull": "4 kN"`

// The bolts of a clamp whose slot is closed clamp the flange on itself: verdict,
// advice and caution say so, whether the grade is known or not, and nothing says to
// tighten them, to go gently or speaks of set screws.
func TestClosedSlotClampsNoShaft(t *testing.T) {
	const clamp = `{"holdMethod": "clamp", "clampKind": "two-halves", "pinchBolts": 4, "pinchThread": "M10x1.5", "pinchTorque": "40 N·m", ` + boreOf
	for _, rest := range []string{`, "keyed": "no", "pinchGrade": "iso-8.8"`, `, "keyed": "no"`, ``, `, "keyed": "yes"`} {
		s := runInput(t, "coupling-bore", clamp+rest+`, "splitGap": "0 mm"}`, "metric")
		advises(t, "closed,"+rest, s, []string{"the slot is closed"}, []string{"tighten the pinch bolts", "gently", "set screw", "Tighten the pinch bolts"})
		if rest != "" && strings.Contains(rest, "no") && (wordOf(s, "bore-torque-ahead") != "beyond" || !strings.Contains(s.Verdict("bore-torque-ahead").Sentence, "slot is closed")) {
			t.Errorf("%s: %s", rest, s.Verdict("bore-torque-ahead").Sentence)
		}
		if by := s.Result("heldBy").Text; !strings.Contains(by, "slot is closed") || strings.Contains(by, "screws") {
			t.Errorf("%s: held by %s", rest, by)
		}
		warned := false
		for _, c := range s.Cautions {
			warned = warned || strings.Contains(c.Text, "slot is closed")
		}
		if !warned {
			t.Errorf("%s: no caution", rest)
		}
	}
	open := runInput(t, "coupling-bore", clamp+`, "keyed": "no", "pinchGrade": "iso-8.8", "splitGap": "1 mm"}`, "metric")
	advises(t, "open", open, []string{"Tighten the pinch bolts in turns"}, []string{"slot is closed"})
}

// Set screws carry no torque: where no key is there or known, what they hold along the
// shaft is not OK, and nothing says to go gently on a joint that turns.
func TestScrewsWithoutAKeyHoldNothingSurely(t *testing.T) {
	const screws = `{"holdMethod": "set-screws", "setScrews": 4, "setScrewSize": "1/2", ` + boreOf
	for _, rest := range []string{`, "keyed": "no"`, `, "keyed": "yes"`, ``} {
		s := runInput(t, "coupling-bore", screws+rest+"}", "metric")
		for _, limit := range []string{"bore-pull-astern", "bore-pull-fouled"} {
			if v := s.Verdict(limit); v.Word.Plain() == sheet.Within {
				t.Errorf("%s: %s", rest, v.Sentence)
			}
		}
		if rest == `, "keyed": "no"` {
			advises(t, rest, s, []string{"Do not run under power"}, []string{"gently", "Look whether there is a key", "Measure the key"})
		}
		if rest == `, "keyed": "yes"` {
			advises(t, rest, s, []string{"Measure the key"}, []string{"Look whether there is a key"})
		}
		if rest == "" {
			advises(t, rest, s, []string{"Look whether there is a key"}, []string{"Measure the key"})
		}
	}
}

// Nothing that a fit without interference asks for is told: no warmth to slip it on, no boss that bears it.
func TestNothingIsPressedOfAClearance(t *testing.T) {
	for _, interference := range []string{"0 mm", "-20 µm"} {
		s := runInput(t, "coupling-bore", `{"holdMethod": "interference", "keyed": "no", "interference": "`+interference+`", `+boreOf+"}", "metric")
		advises(t, interference, s, []string{"no thicker than its bore"}, []string{"Warm the flange"})
		for _, limit := range []string{"bore-heat", "bore-boss-yields"} {
			if v := s.Verdict(limit); v.Word.Plain() == sheet.Within || !strings.Contains(v.Sentence, "nothing is pressed") {
				t.Errorf("%s: %s", interference, v.Sentence)
			}
		}
		for _, none := range []string{"heatOn", "heatOff", "pressForce"} {
			if r := s.Result(none); r != nil {
				t.Errorf("%s: %s", interference, r.Text)
			}
		}
	}
}

// A propeller and a flange without a key are not asked how their key fits.
func TestNoKeyIsNotAskedHowItFits(t *testing.T) {
	s := runInput(t, "propeller-taper", `{"keyed": "no", "shaftDiameter": "30 mm", "taperLength": "70 mm", "taperRatio": 0.1, "hubDiameter": "60 mm", "hubLength": "80 mm", "hubMetal": "manganese-bronze", "nutThread": "M20x1.5", "nutTorque": "100 N·m", "boreFriction": 0.15, "shaftTorque": "100 N·m"}`, "metric")
	if v := s.Verdict("taper-key-holds-off"); v != nil {
		t.Error(v.Sentence)
	}
	const play = `{"couplingBore": "30 mm", "propellerDiameter": "28 mm", "atPropeller": "3 °", "atShaft": "2 °", "atFlange": "1 °"`
	for rest, there := range map[string]bool{``: true, `, "couplingKeyed": "yes", "propellerKeyed": "yes"`: true, `, "couplingKeyed": "no", "propellerKeyed": "no"`: false} {
		s := runInput(t, "backlash", play+rest+"}", "metric")
		for _, limit := range []string{"backlash-coupling-key", "backlash-propeller-key"} {
			if v := s.Verdict(limit); (v != nil) != there {
				t.Errorf("%s, %s: %v", rest, limit, v)
			}
		}
	}
}

// Every stainless grade, in bolt, stud, pinch bolt and tapped hole, has the caution
// that it galls, and no grade of carbon steel has.
func TestEveryStainlessThreadGalls(t *testing.T) {
	galls := func(calculation, input string) bool {
		s := runInput(t, calculation, input, "metric")
		for _, c := range s.Cautions {
			if c.Signal == "CAUTION" && strings.Contains(c.Text, " galls") {
				return true
			}
		}
		return false
	}
	grades := rules.Standard().Table("bolt-grades")
	picks, _ := grades.Picks()
	stainless := 0
	for _, pick := range picks {
		var row *rules.Row
		for _, d := range []float64{0.012, 0.020, 0.027} {
			if row == nil {
				row = grades.Find(pick, func(string) (float64, string, bool) { return d, "", true })
			}
		}
		if row == nil {
			t.Fatalf("no row of %s", pick)
		}
		is := strings.Contains(row.Name, "stainless") || strings.Contains(row.Name, "F593")
		if is {
			stainless++
		}
		size := `"nominalDiameter": "12 mm", "pitch": "1.75 mm", "threadForm": "metric", "tensileStrength": "800 MPa", `
		if !row.Valid.Meets(func(string) (float64, string, bool) { return 0.012, "", true }) {
			size = strings.Replace(strings.Replace(size, "12 mm", "20 mm", 1), "1.75", "2.5", 1)
		}
		for calculation, input := range map[string]string{
			"bolt-preload":      `{` + size + `"proofStrength": "500 MPa", "yieldStrength": "640 MPa", "nutFactor": 0.2, "grade": "` + pick + `"}`,
			"thread-engagement": `{` + size + `"threadShare": 1, "shearShare": 0.5, "engagementLength": "20 mm", "grade": "` + pick + `"}`,
			"coupling-bore":     `{"holdMethod": "clamp", "clampKind": "two-halves", "pinchBolts": 4, "pinchTorque": "40 N·m", "pinchDiameter": "12 mm", "pinchGrade": "` + pick + `", ` + boreOf + "}",
		} {
			if calculation == "coupling-bore" && strings.Contains(size, "20 mm") {
				input = strings.Replace(input, `"pinchDiameter": "12 mm"`, `"pinchDiameter": "20 mm"`, 1)
			}
			if got := galls(calculation, input); got != is {
				t.Errorf("%s, %s: galls %v", pick, calculation, got)
			}
		}
	}
	if stainless < 10 {
		t.Errorf("%d stainless grades", stainless)
	}
}
