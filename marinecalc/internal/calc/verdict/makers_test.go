package verdict_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

func withFigure(of, value string) string {
	return `{"name": "Tern", "shaft": {"diameter": "40 mm"}, "makersFigures": [{"of": "` + of + `", "value": ` + value + `, "source": {"document": "Bearing leaflet", "clause": "p. 2"}}]}`
}

// A maker's figure takes the place of a published limit, on either side, and
// the verdict says what it took the place of.
func TestMakersFigureSaysWhatItReplaces(t *testing.T) {
	for _, c := range []struct{ limit, value, bound, was, input string }{
		{"worn-share", `0.02`, "at most 2 %", "at most 2.5 %", `{"bearingClearance": "0.4 mm"}`},
		{"bearing-length", `3`, "at least 3", "at least 4", `{"bearingClearance": "0.4 mm", "bearingLength": "150 mm"}`},
	} {
		s := testboat.Run(t, "bearing-clearance", c.input, marinecalc.Options{Boat: testboat.Read(t, withFigure(c.limit, c.value))})
		v := s.Verdict(c.limit)
		if v.Replaced == nil || v.Replaced.Bound != c.was || !strings.HasPrefix(v.Bound, c.bound) || v.Replaced.BoundSI == nil || v.Replaced.Source == "" || v.Guide {
			t.Errorf("%s: %+v, replaced %+v", c.limit, v, v.Replaced)
			continue
		}
		if !strings.Contains(v.Sentence, "It takes the place of "+c.was+" (") || v.Source != "Bearing leaflet, p. 2" {
			t.Errorf("%s: %s [%s]", c.limit, v.Sentence, v.Source)
		}
	}
}

// A maker's figure that cannot be read leaves its limit untold, and is told of
// beforehand too: the published limit does not decide in its place.
func TestMakersFigureThatCannotBeReadIsTold(t *testing.T) {
	for value, says := range map[string]string{`"20 rpm"`: "", `"two"`: "", `true`: "true is no figure", `"2 % ± 0.5 %"`: "\"2 % ± 0.5 %\" has a ±, and a limit is one figure", `"0.8 mm"`: ""} {
		b := testboat.Read(t, withFigure("worn-share", value))
		s := testboat.Run(t, "bearing-clearance", `{"bearingClearance": "2 mm"}`, marinecalc.Options{Boat: b})
		v := s.Verdict("worn-share")
		if v.Word.Plain() != sheet.CannotTell || !strings.Contains(v.Sentence, "the maker's figure for it cannot be read: "+says) || !strings.Contains(v.Sentence, "Mend it in the boat file") {
			t.Errorf("%s: %+v", value, v)
		}
		told := new(marinecalc.Engine).Unused(b, marinecalc.Options{})
		if len(told) != 1 || told[0].Where != "/makersFigures/0/value" || !strings.Contains(told[0].What, "worn-share cannot be read") {
			t.Errorf("%s: %v", value, told)
		}
	}
	b := testboat.Read(t, withFigure("bearing-clearance/clearance", `"20 rpm"`))
	if told := new(marinecalc.Engine).Unused(b, marinecalc.Options{}); len(told) != 1 || told[0].Where != "/makersFigures/0/value" {
		t.Errorf("a figure for a result: %v", told)
	}
	b = testboat.Read(t, `{"name": "Tern", "makersFigures": [{"of": "worn-share", "value": 0.03, "source": {"document": "A"}}, {"of": "worn-share", "value": 0.04, "source": {"document": "B"}}]}`)
	if told := new(marinecalc.Engine).Unused(b, marinecalc.Options{}); len(told) == 0 || told[0].Where != "/makersFigures/1/of" {
		t.Errorf("a figure written twice: %v", told)
	}
}

// A maker's figure for a limit that does not apply, or whose calculation is
// not worked out, is told.
func TestMakersFigureThatIsNotUsedIsTold(t *testing.T) {
	b := testboat.Read(t, withFigure("bearing-length-synthetic", `3`))
	s := testboat.Run(t, "bearing-clearance", `{"bearingClearance": "0.4 mm"}`, marinecalc.Options{Boat: b})
	idle := slices.IndexFunc(s.Conflicts, func(c sheet.Conflict) bool { return c.Code == sheet.FigureIdle })
	if got := s.Conflicts; idle < 0 || got[idle].On != "bearing-length-synthetic" || !strings.Contains(got[idle].Text, "does not apply to what is given here") {
		t.Errorf("on the sheet: %+v", s.Conflicts)
	}
	survey := testboat.Check(t, testboat.Read(t, strings.Replace(withFigure("bearing-length-synthetic", `3`), `"makersFigures"`, `"readings": [{"date": "2026-06-01", "bearingClearance": "0.4 mm"}], "makersFigures"`, 1)), marinecalc.Options{})
	if w := survey.Warnings; len(w) != 1 || w[0].Where != "/makersFigures/0/of" || !strings.Contains(w[0].What, "does not apply to this boat") {
		t.Errorf("in the survey: %v", w)
	}
	for of, figure := range map[string]string{"gland-rise-measured": `"22 K"`, "gland-heat/frictionCoefficient": `0.2`} {
		survey = testboat.Check(t, testboat.Read(t, withFigure(of, figure)), marinecalc.Options{})
		if w := survey.Warnings; len(w) != 1 || !strings.Contains(w[0].What, "gland-heat cannot be worked out") {
			t.Errorf("%s without its calculation: %v", of, w)
		}
	}
}

// An overlay says what it replaces, and where its own conditions are not met
// the limit that it replaced stays in force.
func TestOverlaySaysWhatItReplaces(t *testing.T) {
	book := testboat.Overlay(t, `{"title": "Yard", "limits": [{"id": "worn-share", "calculation": "bearing-clearance", "on": "clearanceRatio", "title": "Ours", "max": 0.01,
		"valid": {"shaftDiameter": {"max": "30 mm"}}, "source": {"document": "Yard sheet 7"}, "basis": "maker"}]}`)
	run := func(diameter string) *sheet.Verdict {
		return testboat.Run(t, "bearing-clearance", `{"shaftDiameter": "`+diameter+`", "bearingClearance": "0.5 mm"}`, marinecalc.Options{Rules: book}).Verdict("worn-share")
	}
	own := run("25 mm")
	if own.Word != sheet.Beyond || own.Replaced == nil || own.Replaced.Bound != "at most 2.5 %" || !strings.Contains(own.Sentence, "It takes the place of at most 2.5 % (") {
		t.Errorf("where it applies: %+v", own)
	}
	if other := run("40 mm"); other == nil || other.Title == "Ours" || other.Replaced != nil || other.Bound != "at most 2.5 %" {
		t.Errorf("where it does not: %+v", other)
	}
}
