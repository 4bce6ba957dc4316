package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc/sheet"
)

// What a rigid coupling is held to is not what a flexible one is: nobody having
// said which it is, the sheet says that, and judges nothing.
func TestRunOutOfACouplingOfNoKind(t *testing.T) {
	const read = `{"faceRunOut": "0.2 mm", "rimRunOut": "0.2 mm", "couplingDiameter": "100 mm", "faceReadDiameter": "100 mm"`
	s := runInput(t, "flange-run-out", read+`}`, "metric")
	if v := s.Verdict("flange-run-out-kind"); v == nil || v.Word != sheet.CannotTell || !strings.Contains(v.Sentence, "Say which it is") {
		t.Errorf("kind not said: %+v", v)
	}
	if v := s.Verdict("flange-rim-run-out"); v != nil {
		t.Errorf("judged as rigid: %s", v.Sentence)
	}
	s = runInput(t, "flange-run-out", read+`, "couplingKind": "rigid"}`, "metric")
	if s.Verdict("flange-run-out-kind") != nil || s.Verdict("flange-rim-run-out").Word != sheet.Beyond {
		t.Errorf("rigid: %+v", s.Verdicts)
	}
}

// A dial of 0.01 mm that stands still says that the flange runs true, and blames
// nothing; face and rim are blamed each by itself.
func TestRunOutBlamesNothingForNothing(t *testing.T) {
	s := runInput(t, "flange-run-out", `{"faceRunOut": "0 mm", "faceAt": "12 o'clock", "faceRunOutMoved": "0 mm", "faceAtMoved": "12 o'clock", "splineTeeth": 20, "teethMoved": 7, "couplingKind": "rigid"}`, "metric")
	if word := s.Result("cause").Text; !strings.Contains(word, "nothing") || advised(s, "It goes with") || advised(s, "it goes with") {
		t.Errorf("a dial that stands still: %s", word)
	}
	if s.Result("rimCause") != nil || s.Result("bestTeeth") != nil {
		t.Error("the rim, which was not read, or a tooth to move it to")
	}
	s = runInput(t, "flange-run-out", `{"faceRunOut": "0.1 mm", "faceAt": "3 o'clock", "faceRunOutMoved": "0.1 mm", "faceAtMoved": "7 o'clock", "rimRunOut": "0.1 mm", "rimAt": "3 o'clock", "rimRunOutMoved": "0.1 mm", "rimAtMoved": "3 o'clock", "splineTeeth": 18, "teethMoved": 6, "couplingKind": "rigid"}`, "metric")
	if !advised(s, "Face: it goes with the flange") || !advised(s, "Rim: it stays with the shaft") {
		t.Errorf("face %s, rim %s", s.Result("cause").Text, s.Result("rimCause").Text)
	}
}
