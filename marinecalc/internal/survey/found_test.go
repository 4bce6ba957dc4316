package survey_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
)

const whirling = `"engine": {"power": "20 kW", "speed": "3000 rpm"}, "gearbox": {"ratioAhead": 2}, "shaft": {"diameter": "25 mm", "alloy": "s31600-annealed", "sections": [{"length": "2600 mm", "diameter": "25 mm"}],
	"bearings": [{"at": "0 mm", "length": "30 mm"}, {"at": "2400 mm", "length": "100 mm"}]}, "propeller": {"mass": "8 kg", "blades": 3, "overhang": "150 mm"}`

// What was seen and measured leads, above every verdict that was calculated:
// metal in the fluid, play at the flange and a worn face name the gearbox.
func TestWhatWasSeenLeadsTheSurvey(t *testing.T) {
	s := testboat.Check(t, testboat.Read(t, `{"name": "Tern", `+whirling+`, "wornPart": {"metal": "carbon-steel", "depth": "0.4 mm", "length": "20 mm", "width": "8 mm", "shape": "even", "places": 1}, "fluid": {"grade": "iso-vg-46", "volume": "2 L"},
		"symptoms": [{"evidence": "output-flange-play", "answer": "yes"}], "readings": [{"date": "2026-06-01", "fluidLook": "glitter", "fluidLookBy": "jar"}]}`), marinecalc.Options{})
	if len(s.Found) < 3 {
		t.Fatalf("found %+v", s.Found)
	}
	kinds := []survey.FoundKind{survey.FoundCause, survey.FoundLook, survey.FoundWear, survey.FoundMeasured, survey.FoundComputed}
	last := 0
	for _, f := range s.Found {
		at := slices.Index(kinds, f.Kind)
		if at < last {
			t.Errorf("%s (%s) stands below %s", f.Title, f.Kind, kinds[last])
		}
		last = at
	}
	all := ""
	for _, f := range s.Found {
		all += f.Title + ". " + f.Text + "\n"
	}
	for _, want := range []string{"glitter", "gearbox", "output", "0.4 mm deep", "reading of 2026-06-01"} {
		if !strings.Contains(strings.ToLower(all), strings.ToLower(want)) {
			t.Errorf("%q is not among what was found:\n%s", want, all)
		}
	}
	if first := s.Summary[0].Code; first != "found" && first != "seen" {
		t.Errorf("the summary begins with %+v", s.Summary[0])
	}
	// Wear inside its maker's limit is no finding, over it is a limit.
	for limit, want := range map[string]survey.FoundKind{"1 mm": "", "0.2 mm": survey.FoundMeasured} {
		s := testboat.Check(t, testboat.Read(t, `{"name": "Tern", "wornPart": {"metal": "carbon-steel", "depth": "0.4 mm", "length": "20 mm", "width": "8 mm", "shape": "even", "places": 1, "limit": "`+limit+`"}, "fluid": {"grade": "iso-vg-46", "volume": "2 L"}}`), marinecalc.Options{})
		kind := survey.FoundKind("")
		for _, f := range s.Found {
			if f.Calculation == "wear-debris" {
				kind = f.Kind
			}
		}
		if kind != want {
			t.Errorf("limit %s: %q, want %q: %+v", limit, kind, want, s.Found)
		}
	}
}

// The summary fits a screen, whatever the boat: a line has its width, and what is
// wrong two.
func TestTheSummaryFitsAScreen(t *testing.T) {
	for _, b := range []*marinecalc.Boat{testboat.Demo(t, "kittiwake"), testboat.Demo(t, "juniper"), testboat.Read(t, `{"name": "Bare"}`), testboat.Read(t, `{"name": "Tern", `+whirling+`}`)} {
		s := testboat.Check(t, b, marinecalc.Options{NoRanges: true})
		if len(s.Summary) == 0 || len(s.Summary) > 12 {
			t.Errorf("%s: %d lines", b.Name(), len(s.Summary))
		}
		for _, l := range s.Summary {
			most := 80
			if slices.Contains([]string{"still", "found", "seen", "measured", "computed", "disagree", "faults", "outside"}, l.Code) {
				most *= 2
			}
			if n := len([]rune(l.Head + ": " + l.Text)); n > most {
				t.Errorf("%s: %d letters: %s: %s", b.Name(), n, l.Head, l.Text)
			}
		}
	}
}

// What the survey says would settle a verdict settles it: with the example of
// the schema in its place the verdict is told.
func TestWhatSettlesAVerdictSettlesIt(t *testing.T) {
	b := testboat.Demo(t, "juniper")
	s := testboat.Check(t, b, marinecalc.Options{})
	settled := 0
	for _, m := range s.Measure {
		if len(m.Settles)+len(m.Helps) == 0 || m.Text == "" || m.Input == "" {
			t.Errorf("settles nothing: %+v", m)
		}
		settled += len(m.Settles)
	}
	if settled < 5 {
		t.Errorf("%d verdicts are settled by one thing", settled)
	}
	for i := 1; i < len(s.Measure); i++ {
		before, next := s.Measure[i-1], s.Measure[i]
		order := []survey.Do{survey.DoMeasure, survey.DoLookUp, survey.DoChoose}
		if a, b := slices.Index(order, before.Do), slices.Index(order, next.Do); a > b || a == b && len(next.Settles) > len(before.Settles) {
			t.Errorf("%s stands above %s", before.Title, next.Title)
		}
	}
	// No owner reads a friction, a shock factor, a thrust or a pull: it is chosen, last,
	// and it is said how.
	for _, m := range s.Measure {
		is := slices.ContainsFunc([]string{"riction", "actor", "Pull on", "Peak torque", "Holding power", "hrust"}, func(w string) bool { return strings.Contains(m.Title, w) })
		if is != (m.Do == survey.DoChoose) || is != strings.Contains(m.Text, "makes the verdict worse") {
			t.Errorf("%s: %s, %s", m.Title, m.Do, m.Text)
		}
	}
	if s.Measure[0].Do != survey.DoMeasure || s.Measure[0].Gauge == "" {
		t.Errorf("first is %+v", s.Measure[0])
	}
	at := slices.IndexFunc(s.Measure, func(m survey.Measure) bool { return m.Title == "Face gap allowed per unit of flange diameter" })
	if at < 0 || len(s.Measure[at].Settles) != 3 {
		t.Fatalf("%+v", s.Measure)
	}
	typed := testboat.Run(t, "coupling-alignment", `{"gapAllowance": 0.002}`, marinecalc.Options{Boat: b})
	if v := typed.Verdict("flexible-gap"); v == nil || v.Word == "not measured" {
		t.Errorf("typed, and still %+v", v)
	}
	// A gauge that settles a doubt is named with what is read again.
	near := testboat.Check(t, testboat.Read(t, `{"name": "Tern", "wornPart": {"metal": "carbon-steel", "depth": "0.22 mm", "length": "20 mm", "width": "8 mm", "shape": "even", "places": 1, "limit": "0.25 mm"}, "fluid": {"grade": "iso-vg-46", "volume": "2 L"}}`), marinecalc.Options{})
	if i := slices.IndexFunc(near.Measure, func(m survey.Measure) bool { return strings.HasSuffix(m.Title, " again") && m.Gauge != "" }); i < 0 {
		t.Errorf("nothing to read again: %+v", near.Measure)
	}
}

// What another calculation gives is not typed, and never chosen: proposed is
// what that one lacks, and with it the verdict is drawn.
func TestACarriedFigureIsGotWhereItIsWorkedOut(t *testing.T) {
	const lacking = "output-flange/permittedPressure"
	file, err := os.ReadFile(testboat.Root("testdata", "boats", "juniper.json"))
	if err != nil {
		t.Fatal(err)
	}
	raw := string(file)
	drawn := func(text string) (proposed, told bool) {
		s := testboat.Check(t, testboat.Read(t, text), marinecalc.Options{NoRanges: true})
		for _, m := range s.Measure {
			if strings.HasPrefix(m.Input, "line-joints/hub") {
				t.Errorf("proposed: %s", m.Text)
			}
			if m.Input == lacking && slices.ContainsFunc(m.Settles, func(w survey.Settled) bool { return w.Calculation == "line-joints" }) {
				proposed = true
				if m.Do != survey.DoLookUp {
					t.Errorf("%s: %s", m.Do, m.Text)
				}
			}
		}
		for _, f := range s.Findings {
			told = told || f.Calculation == "line-joints" && f.Verdict.Limit == "line-shock" && f.Verdict.Word != "not measured"
		}
		return proposed, told
	}
	if proposed, told := drawn(raw); !proposed || told {
		t.Errorf("without the pressure: proposed %t, told %t", proposed, told)
	}
	figure := `"makersFigures": [{"of": "` + lacking + `", "value": "50 MPa", "source": {"document": "gearbox manual"}},`
	if proposed, told := drawn(strings.Replace(raw, `"makersFigures": [`, figure, 1)); proposed || !told {
		t.Errorf("with the pressure: proposed %t, told %t", proposed, told)
	}
}

// A look that says nothing of the leading cause is not told to point to it: dark
// fluid is no sign of a misaligned coupling, and metal in it is one of a bearing.
func TestALookPointsOnlyToWhatItIsEvidenceFor(t *testing.T) {
	for _, c := range []struct {
		symptoms, look string
		points         bool
	}{
		{`{"evidence": "coupling-gaps", "answer": "yes"}, {"evidence": "shake-grows", "answer": "yes"}`, "dark", false},
		{`{"evidence": "output-flange-play", "answer": "yes"}`, "glitter", true},
	} {
		s := testboat.Check(t, testboat.Read(t, `{"name": "Dunlin", "symptoms": [`+c.symptoms+`], "readings": [{"date": "2026-06-01", "fluidLook": "`+c.look+`", "fluidLookBy": "jar"}]}`), marinecalc.Options{NoRanges: true})
		seen := false
		for _, f := range s.Found {
			if f.Kind == survey.FoundLook && strings.Contains(f.Text, "reading of 2026-06-01") {
				seen = true
				if points := strings.Contains(f.Text, "It points to"); points != c.points {
					t.Errorf("%s: %s %s", c.look, f.Title, f.Text)
				}
			}
		}
		if !seen {
			t.Errorf("%s is not told: %+v", c.look, s.Found)
		}
	}
}

// The line of the work says when its plan rests on a suspicion, and names a day
// or that there is none; why there is none stands on the plan.
func TestTheWorkLine(t *testing.T) {
	for _, c := range []struct{ more, want string }{
		{`"symptoms": [{"evidence": "clatter-at-idle", "answer": "yes"}, {"evidence": "knock-into-gear", "answer": "yes"}]`, "%); planned: nothing yet: what is suspected is looked for first."},
		{`"symptoms": [{"evidence": "clatter-at-idle", "answer": "yes"}, {"evidence": "knock-into-gear", "answer": "yes"}, {"evidence": "bell-dust", "answer": "yes"}, {"evidence": "came-suddenly", "answer": "yes"}, {"evidence": "gone-in-neutral", "answer": "no"}]`, "planned: Change the damper plate (on that suspicion: order nothing yet), ready 20"},
		{`"symptoms": [{"evidence": "damper-seen", "answer": "yes"}]`, "Planned: Change the damper plate, ready 20"},
		{`"lies": "afloat", "symptoms": [{"evidence": "blade-seen", "answer": "yes"}]`, "no date yet: see the work plan."},
	} {
		s := testboat.Check(t, testboat.Read(t, `{"name": "Dunlin", `+c.more+`, "readings": [{"date": "2026-06-01", "engineHours": "100 h"}]}`), marinecalc.Options{NoRanges: true})
		if s.Choice == nil || !strings.Contains(s.Choice.Text, c.want) || strings.Contains(s.Choice.Text, "..") {
			t.Errorf("%s: %+v, want %q", c.more, s.Choice, c.want)
		}
	}
}

// A boat that nobody read is told to be that, and one that was read in part how much of
// her: silence is no OK.
func TestNothingFoundSaysHowMuchWasLookedAt(t *testing.T) {
	for _, c := range []struct{ name, boat, want, never string }{
		{"bare", `{"name": "Knot"}`, "nothing was read on the boat yet, which is no OK", "over a limit"},
		{"built", `{"name": "Knot", "sternBearing": {"length": "100 mm"}, "shaft": {"diameter": "30 mm"}}`, "nothing was read on the boat yet, which is no OK", "was read or"},
		{"read once, long ago", `{"name": "Knot", "readings": [{"date": "2019-05-02", "glandTemperature": "20 °C", "waterTemperature": "15 °C"}]}`, "1 of 8 parts were read, last on 2019-05-02", "no OK"},
		{"a dial at the coupling", `{"name": "Knot", "readings": [{"date": "2026-05-02", "couplingFaceRunOut": "0.02 mm"}]}`, "1 of 8 parts were read, last on 2026-05-02", "over a limit"},
		{"on the sea trial", `{"name": "Knot", "seaTrial": {"date": "2026-05-02", "runs": [{"stage": "cruise", "gearboxTemperature": "60 °C"}]}}`, "1 of 8 parts were read, last on 2026-05-02", "no OK"},
	} {
		s := testboat.Check(t, testboat.Read(t, c.boat), marinecalc.Options{})
		if !strings.Contains(s.Nothing, c.want) || strings.Contains(s.Nothing, c.never) {
			t.Errorf("%s: %q of %d findings", c.name, s.Nothing, len(s.Findings))
		}
	}
}
