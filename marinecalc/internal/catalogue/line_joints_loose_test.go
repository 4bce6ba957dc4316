package catalogue_test

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/sheet"
)

// What was found loose stands first on the line's sheet, and on its drawing, without
// a margin, by each limit that tells of it.
func TestTheLineNamesWhatWasFoundLoose(t *testing.T) {
	bounds := append(append(slices.Clone(catalogue.LooseJoints.Hub), catalogue.LooseJoints.Coupling...), catalogue.LooseJoints.Taper...)
	for _, id := range bounds {
		known := false
		for _, l := range rules.Standard().Limits("backlash").All() {
			known = known || l.ID == id
		}
		if !known {
			t.Errorf("backlash has no limit %s", id)
		}
	}
	const sound = `"hubFriction": "300 N·m", "hubFlanks": "900 N·m", "hubPullMargin": 20, "facesAhead": "600 N·m", "facesAstern": "590 N·m", "boreAhead": "480 N·m", "boreAstern": "470 N·m", "taperAhead": "400 N·m", "taperAstern": "390 N·m"`
	for _, c := range []struct{ boat, moving, drawn string }{
		{`"coupling": {"bore": {"holdMethod": "clamp"}}, "readings": [{"date": "2026-05-01", "backlashPropeller": "3°", "backlashShaft": "3°", "backlashFlange": "0.5°"}]`, "coupling, at its faces or on its shaft", "Shaft in coupling: found loose, it or the other"},
		{`"readings": [{"date": "2026-05-01", "backlashPropeller": "3°", "backlashShaft": "3°", "backlashFlange": "0.5°"}]`, "coupling, at its faces or on its shaft", "Shaft in coupling: found loose, it or the other"},
		{`"readings": [{"date": "2026-05-01", "backlashPropeller": "3°", "backlashShaft": "0.5°", "backlashFlange": "0.5°"}]`, "propeller on its taper", "Propeller on taper: found loose."},
		{`"outputFlange": {"nutTorque": "210 N·m"}, "readings": [{"date": "2026-05-01", "backlashPropeller": "3°", "backlashShaft": "3°", "backlashFlange": "3°", "backlashOutputShaft": "0.5°"}]`, "output flange on its shaft", "Output flange: found loose."},
		{`"readings": [{"date": "2026-05-01", "backlashPropeller": "0.6°", "backlashShaft": "0.5°", "backlashFlange": "0.5°"}]`, "", ""},
	} {
		boat := testboat.Read(t, `{"name": "Dunlin", `+c.boat+`}`)
		s := testboat.Run(t, "line-joints", `{"shaftTorque": "150 N·m", "peakTorque": "300 N·m", "asternTorque": "120 N·m", "hubDrive": "spline", `+sound+`}`, marinecalc.Options{Boat: boat})
		moving := ""
		if s.Results[0].Name == "foundLoose" {
			moving = s.Results[0].Text
		}
		if moving != c.moving || c.moving != "" && (s.Cell("first", 0, "joint").Text != c.moving || s.Cell("first", 0, "how").Text != "found loose") {
			t.Errorf("%s: %q, want %q", c.boat, moving, c.moving)
		}
		if c.drawn != "" && (!strings.Contains(s.Drawings[0].Description, c.drawn) || !strings.Contains(s.Drawings[0].SVG, "found loose")) {
			t.Errorf("%s: drawn as %s", c.boat, s.Drawings[0].Description)
		}
	}
}

// Where the joint's own sheet counts on nothing, the line's says what is put right
// there, and asks for no figure.
func TestTheLineAsksForWhatTheJointsOwnSheetAsksFor(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "boats", "kittiwake.json"))
	if err != nil {
		t.Fatal(err)
	}
	boat := testboat.Read(t, strings.Replace(string(text), `"pinchTorque": "36 N·m"`, `"pinchTorque": "110 N·m"`, 1))
	s := testboat.Run(t, "line-joints", `{}`, marinecalc.Options{Boat: boat})
	for _, id := range []string{"line-astern", "line-shock"} {
		if v := s.Verdict(id); !strings.Contains(v.Sentence, "renew all pinch bolts") || strings.Contains(v.Sentence, "how it is held") {
			t.Error(v.Sentence)
		}
	}
	if got := s.Cell("joints", 2, "wanted").Text; !strings.Contains(got, "its own sheet") {
		t.Errorf("wanted: %s", got)
	}
	own := testboat.Run(t, "coupling-bore", `{}`, marinecalc.Options{Boat: boat})
	for _, id := range []string{"bore-torque-peak", "bore-torque-astern", "bore-pull-astern", "bore-pull-fouled"} {
		if v := own.Verdict(id); v.Reads != "not to be counted on" || !v.Moot || !strings.Contains(v.Sentence, "renew all pinch bolts") {
			t.Errorf("%s: %s", id, v.Sentence)
		}
	}
}

// The margin of a joint has the same range on the line's sheet as on its own, but for what
// trials of their own make of it: a fifteenth of its width at either end.
func TestALineMarginHasTheRangeOfItsJoint(t *testing.T) {
	boat := testboat.Demo(t, "kittiwake")
	others := map[string]string{"hub": `"hubFriction": "9000 N·m", "hubFlanks": "9000 N·m"`, "faces": `"facesAhead": "9000 N·m", "facesAstern": "9000 N·m"`,
		"bore": `"boreAhead": "9000 N·m", "boreAstern": "9000 N·m"`, "taper": `"taperAhead": "9000 N·m", "taperAstern": "9000 N·m"`}
	for joint, own := range map[string]string{"faces": "coupling-grip", "bore": "coupling-bore", "taper": "propeller-taper"} {
		var strong []string
		for other, typed := range others {
			if other != joint {
				strong = append(strong, typed)
			}
		}
		whole := testboat.Run(t, "line-joints", "{"+strings.Join(strong, ", ")+"}", marinecalc.Options{Boat: boat})
		one := testboat.Run(t, own, `{}`, marinecalc.Options{Boat: boat})
		for of, name := range map[string]string{"leastAhead": "marginAhead", "leastAstern": "marginAstern", "leastShock": "marginPeak"} {
			a, b, ok := whole.Result(of).Range()
			c, d, has := one.Result(name).Range()
			if most := (d - c) / 15; !ok || !has || a-c > most || c-a > most || b-d > most || d-b > most {
				t.Errorf("%s: %g to %g on the line, %s %g to %g on its own sheet", of, a, b, name, c, d)
			}
		}
	}
}

// Of a boat whose flange is loose, its face worn and its ring creeping, no sheet advises to
// watch what must not run, to put off what keeps her still, or to look for what was found.
func TestTheLooseFlangeIsNotToBeWatched(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "jobs", "loose-output-flange.json"))
	if err != nil {
		t.Fatal(err)
	}
	var job struct{ Boat map[string]any }
	if err := json.Unmarshal(text, &job); err != nil {
		t.Fatal(err)
	}
	readings := job.Boat["readings"].([]any)
	job.Boat["readings"] = slices.DeleteFunc(readings, func(r any) bool { return r.(map[string]any)["date"].(string) > "2025-06-07" }) // the flange is off
	boat := testboat.Read(t, testboat.Text(t, job.Boat))
	for id, not := range map[string]string{"output-flange": "each season", "repair-or-replace": "Make sure of the cause first"} {
		for _, n := range testboat.Run(t, id, `{}`, marinecalc.Options{Boat: boat}).Next {
			if strings.Contains(n.Text, not) {
				t.Errorf("%s: %s", id, n.Text)
			}
		}
	}
	decided := testboat.Run(t, "repair-or-replace", `{}`, marinecalc.Options{Boat: boat})
	whens := testboat.Column(t, decided, "engineering", "cause", "when")
	if when := whens["Clamping face of the output flange worn"]; !strings.HasPrefix(when, "Before she runs again") {
		t.Errorf("the worn face: %q of %v", when, whens)
	}
}

// A joint found loose by a look stands first as one whose play was read does, with no
// margin and with what is not done before; each cause of LooseCauses is one of the fault
// finding, and has a look that finds it. A look at one joint of the coupling tells of
// which it is.
func TestTheLineNamesWhatALookFoundLoose(t *testing.T) {
	const sound = `{"shaftTorque": "150 N·m", "peakTorque": "300 N·m", "asternTorque": "120 N·m", "hubDrive": "spline", "hubFriction": "300 N·m", "hubFlanks": "900 N·m", "hubPullMargin": 20, "facesAhead": "600 N·m", "facesAstern": "590 N·m", "boreAhead": "480 N·m", "boreAstern": "470 N·m", "taperAhead": "400 N·m", "taperAstern": "390 N·m"}`
	play := `"backlashPropeller": "3°", "backlashShaft": "3°", "backlashFlange": "0.5°", `
	for cause, c := range map[string]struct{ joint, beside string }{
		"output-nut-loose": {"output flange on its shaft", "more than one joint, as listed"}, "coupling-bolts-loose": {"coupling faces, by their bolts", "coupling faces, by their bolts"},
		"coupling-bore-loose": {"shaft in its coupling flange", "shaft in its coupling flange"}, "propeller-loose": {"propeller on its taper", "more than one joint, as listed"},
	} {
		if _, is := catalogue.LooseCauses[cause]; !is {
			t.Errorf("%s is no cause of a loose joint", cause)
		}
		look := ""
		for _, row := range rules.Standard().Causes().All() {
			if row.ID == cause {
				look = row.Confirm
			}
		}
		for _, read := range []struct{ play, answer, want string }{{"", "yes", c.joint}, {"", "no", ""}, {play, "yes", c.beside}} {
			boat := testboat.Read(t, `{"name": "Dunlin", "readings": [{"date": "2026-05-01", `+read.play+`"symptoms": [{"evidence": "`+look+`", "answer": "`+read.answer+`"}]}]}`)
			s := testboat.Run(t, "line-joints", sound, marinecalc.Options{Boat: boat})
			got := ""
			if r := s.Result("foundLoose"); r != nil {
				got = r.Text
			}
			if got != read.want {
				t.Errorf("%s, %+v: %q", cause, read, got)
			}
			stop := slices.ContainsFunc(s.Next, func(n sheet.Next) bool {
				return strings.HasPrefix(n.Text, "Do not run under power") || strings.HasPrefix(n.Text, "Leave the lever in neutral")
			})
			if stop != (got != "") {
				t.Errorf("%s, %+v: %v", cause, read, s.Next)
			}
			for _, limit := range []string{"line-ahead", "line-astern", "line-shock"} {
				if v := s.Verdict(limit); (v.Reads == "not to be counted on") != (read.answer == "yes") {
					t.Errorf("%s, %+v: %s", cause, read, v.Sentence)
				}
			}
			drawn := s.Drawings[0].Description
			if strings.Contains(drawn, "found loose") != (got != "") || strings.Contains(drawn, "it or the other") != (read.play != "" && strings.HasPrefix(c.beside, "more")) {
				t.Errorf("%s, %+v: drawn as %s", cause, read, drawn)
			}
		}
	}
	if n := len(catalogue.LooseCauses); n != 4 {
		t.Errorf("%d causes of a loose joint, of which four are tried", n)
	}
}
