package verdict_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/calc/verdict"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// Of four mounts one foot was read: the largest gap of those read is not the
// largest of all, and a gap over the limit is one whatever the others are. Known
// or not, what was given is not asked for.
func TestWorstOfSeveralWantsThemAll(t *testing.T) {
	moves := func(port, starboard string) *sheet.Sheet {
		return testboat.RunOn(t, "", "mount-moves", `{"gapVertical": "0.2 mm", "gapHorizontal": "0 mm", "couplingDiameter": "102 mm", "couplingKind": "rigid", "mounts": [
			{"name": "front port", "forward": "850 mm", "starboard": "-250 mm", "threadPitch": "1.5 mm"`+port+`},
			{"name": "front starboard", "forward": "850 mm", "starboard": "250 mm", "threadPitch": "1.5 mm"`+starboard+`},
			{"name": "aft port", "forward": "250 mm", "starboard": "-250 mm", "threadPitch": "1.5 mm", "footGap": "0.01 mm"},
			{"name": "aft starboard", "forward": "250 mm", "starboard": "250 mm", "threadPitch": "1.5 mm", "footGap": "0.01 mm"}]}`)
	}
	for _, c := range []struct {
		name, port, starboard string
		word                  sheet.Word
		says                  string
	}{
		{"all read", `, "footGap": "0.01 mm"`, `, "footGap": "0.02 mm"`, sheet.Within, "inside the guide"},
		{"two not read", "", "", sheet.CannotTell, "nothing is known of front port, front starboard. With all other nuts tight"},
		{"one over", `, "footGap": "0.3 mm"`, "", sheet.Beyond, "outside the guide"},
	} {
		if v := moves(c.port, c.starboard).Verdict("soft-foot"); v == nil || v.Word.Plain() != c.word || !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s: %+v", c.name, v)
		}
	}
}

// What driving does is part of the move that is to come true warm: while it is
// not known the move without it is not OK, and one that is too large stays so.
func TestAPartThatIsNotKnownIsNoOK(t *testing.T) {
	target := func(rise, driving string) *sheet.Verdict {
		s := testboat.RunOn(t, "", "alignment-target", `{"couplingKind": "rigid", "couplingDiameter": "102 mm", "gapAllowance": "80 ppm", "frontRise": "`+rise+`", "aftRise": "`+rise+`",
			"creepPerDecade": "0.1 %", "expansion": "12 ppm", "mounts": [
			{"name": "front port", "forward": "850 mm", "starboard": "-250 mm", "up": "-300 mm"}, {"name": "aft port", "forward": "250 mm", "starboard": "-250 mm", "up": "-100 mm"},
			{"name": "aft starboard", "forward": "250 mm", "starboard": "250 mm", "up": "-100 mm"}]`+driving+`}`)
		return s.Verdict("target-gap-needed")
	}
	for _, c := range []struct {
		name, rise, driving string
		word                sheet.Word
		says                string
	}{
		{"all known", "0 K", `, "drivingUp": "0 mm", "drivingFrontUp": "0 mm/m", "drivingStarboard": "0 mm", "drivingFrontStarboard": "0 mm/m"`, sheet.Within, "OK"},
		{"driving not known", "0 K", "", sheet.CannotTell, "not enough to tell; what ahead does to the engine is not in it. Work out"},
		{"a shaft that lets it move by nothing", "0 K", `, "drivingShare": "0 %"`, sheet.Within, "OK"},
		{"too large even so", "60 K", "", sheet.Beyond, "Set even cold"},
	} {
		if v := target(c.rise, c.driving); v == nil || v.Word.Plain() != c.word || !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s: %+v", c.name, v)
		}
	}
}

// A value that was read is no "not measured" for want of a limit.
func TestAValueWithoutALimitIsShown(t *testing.T) {
	s := testboat.RunOn(t, "", "vibration-source", `{"engineSpeed": "2000 rpm", "vibrationVelocity": "6 mm/s", "enginePower": "400 kW"}`)
	v := s.Verdict("vibration-damage")
	if v == nil || v.Word != sheet.NotMeasured || v.Reads != "nothing to hold it against" || v.SI == nil || v.BoundSI != nil ||
		v.Sentence != "Vibration beside zone C of ISO 10816-1: 6 mm/s, with nothing to hold it against yet. The classes kept here end at 300 kW: choose one, or type the limits of the zones." {
		t.Errorf("%+v", v)
	}
	s = testboat.RunOn(t, "", "vibration-source", `{"engineSpeed": "2000 rpm", "enginePower": "40 kW"}`)
	if v := s.Verdict("vibration-damage"); v != nil && v.Reads != "not measured" {
		t.Errorf("not read: %+v", v)
	}
}

// A reading past whose limit the shaft must not run is not enough to tell while that
// limit is not known, and stands before what is OK; others are not measured then.
func TestAReadingThatMayKeepTheShaftStillIsNotNothing(t *testing.T) {
	s := testboat.RunOn(t, "", "output-flange", `{"thread": "M24x2", "finish": "oiled", "nutTorque": "200 N·m", "seatDiameter": "30 mm", "faceWear": "0.1 mm"}`)
	v := s.Verdicts[0]
	if v.Limit != "flange-clamp-gone" || v.Word != sheet.CannotTell || !strings.Contains(v.Sentence, "0.1 mm, with nothing to hold it against yet. Measure hub") {
		t.Errorf("%+v", v)
	}
	if said := verdict.Stands(&v); !strings.HasSuffix(said, ", 0.1 mm, has nothing to hold it against yet") {
		t.Error(said)
	}
	if v := s.Verdict("flange-thread"); v.Word != sheet.Within {
		t.Errorf("%+v", v)
	}
}
