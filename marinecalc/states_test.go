package marinecalc_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/sheet"
)

// Where the state of things leaves nothing to judge the verdict names that state:
// it is no OK, and it asks for no reading that was taken. The scenarios are our own.
func TestVerdictsNameTheStateOfThings(t *testing.T) {
	const bolt = `"thread": "M10x1.5", "grade": "iso-8.8", "finish": "oiled", "nut": "plain-nut", "clampNeeded": "20 kN", "clampedFaces": 1, "gripLength": "30 mm", "torqueUsed": `
	const typed = `"nominalDiameter": "10 mm", "pitch": "1.5 mm", "threadForm": "metric", "yieldStrength": "640 MPa", "finish": "oiled", "nut": "plain-nut", "clampNeeded": "20 kN", "torqueUsed": `
	const stack = `"thread": "M10x1.5", "headFlangeThickness": "12 mm", "nutFlangeThickness": "12 mm", "nutHeight": "8.4 mm", "headHeight": "6.4 mm", "headRoom": "30 mm", "socketHeight": "30 mm", "nutRoom": "30 mm"`
	for _, c := range []struct{ calculation, input, limit, says string }{
		{"bolt-preload", bolt + `"400 N·m"`, "torque-in-question-needed", "that torque breaks the weakest bolt"},
		{"bolt-preload", bolt + `"400 N·m"`, "torque-in-question-too-loose", "that torque breaks the weakest bolt"},
		{"bolt-preload", bolt + `"400 N·m"`, "bolt-settled", "that torque breaks the weakest bolt"},
		{"bolt-preload", typed + `"400 N·m"`, "torque-in-question-needed", "read the grade from the head"},
		{"bolt-preload", typed + `"400 N·m"`, "torque-in-question-too-loose", "read the grade from the head"},
		{"bolt-fit", stack, "threads-beyond-nut", "no stock length goes through"},
		{"bolt-fit", stack, "nut-clamps", "no stock length goes through"},
		{"bolt-fit", stack, "head-room", "no stock length goes through"},
	} {
		s, err := marinecalc.Run(c.calculation, []byte("{"+c.input+"}"), marinecalc.Options{})
		if err != nil {
			t.Errorf("%s: %v", c.limit, err)
			continue
		}
		v := s.Verdict(c.limit)
		if v == nil || v.Word != sheet.NotMeasured || v.Reads == "not measured" || !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s: %+v", c.limit, v)
		}
	}
}

// A mount whose height nobody read could stand anywhere: no load under way is
// OK without it.
func TestOneMountWithoutItsHeightIsNoOK(t *testing.T) {
	const others = `{"name": "a", "forward": "600 mm", "starboard": "-200 mm", "up": "60 mm"}, {"name": "b", "forward": "600 mm", "starboard": "200 mm", "up": "60 mm"}, {"name": "c", "forward": "100 mm", "starboard": "-200 mm", "up": "60 mm"}, {"name": "d", "forward": "100 mm", "starboard": "200 mm"`
	for last, ok := range map[string]bool{`, "up": "60 mm"}`: true, `}`: false} {
		s, err := marinecalc.Run("mount-load", []byte(`{"engineMass": "200 kg", "centreForward": "350 mm", "centreUp": "100 mm", "shaftTorque": "60 N·m", "asternTorque": "60 N·m", "thrust": "1 kN", "mounts": [`+others+last+`]}`), marinecalc.Options{NoRanges: true})
		if err != nil {
			t.Fatal(err)
		}
		v := s.Verdict("mount-lifts-driving")
		if v == nil || (v.Word.Plain() == sheet.Within) != ok {
			t.Errorf("with the height of all %v: %+v", ok, v)
		}
	}
}
