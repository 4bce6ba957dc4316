package catalogue_test

import (
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A clamp that cannot be reached holds no coupling: where the tapped thread
// strips under it the slip torque is by what the thread bears; where the nut is not full, the slip torque is OK only once that
// is put right, and is said so; with the thread long enough it is OK as it was.
func TestSlipTorqueHangsOnTheThread(t *testing.T) {
	for _, c := range []struct{ file, from, to, word, says string }{
		{"short-thread", ``, ``, "cannot tell", "not enough to tell"},
		{"short-thread", `"engagementLength": "5 mm"`, `"engagementLength": "18 mm"`, "within", "OK"},
		{"bolt-too-short", ``, ``, "cannot tell", "OK only once this is put right: threads beyond the nut"},
		{"bolt-too-short", `"length": "38 mm"`, `"length": "45 mm"`, "within", "OK"},
	} {
		text, err := os.ReadFile(testboat.Root("testdata", "cases", c.file+".json"))
		if err != nil {
			t.Fatal(err)
		}
		b := testboat.Read(t, strings.Replace(string(text), c.from, c.to, 1))
		v := testboat.Run(t, "coupling-grip", "{}", marinecalc.Options{Boat: b}).Verdict("grip-ahead")
		if string(v.Word) != c.word || !strings.Contains(v.Sentence, c.says) {
			t.Errorf("%s %s: %s", c.file, c.to, v.Sentence)
		}
	}
}

// A reading that cannot be lets nothing else on the sheet pass: a bearing does
// not grow tighter and play does not shrink by running, and no play lies behind
// less. One that can be leaves the rest as it was.
func TestAnImpossibleReadingLetsNothingPass(t *testing.T) {
	const clearance = `{"shaftDiameter":"30 mm","clearanceGauge":"dial-indicator","bearingClearance":"0.3 mm","wornLimit":"1 mm",`
	for _, c := range []struct{ id, input, limit, word string }{
		{"bearing-clearance", clearance + `"earlierClearance":"0.6 mm","runningTime":"400 h"}`, "worn-limit", "cannot tell"},
		{"bearing-clearance", clearance + `"earlierClearance":"0.6 mm","runningTime":"400 h"}`, "worn-share", "cannot tell"},
		{"bearing-clearance", clearance + `"newClearance":"0.45 mm ± 0.01 mm"}`, "worn-limit", "cannot tell"},
		{"bearing-clearance", clearance + `"earlierClearance":"0.2 mm","runningTime":"400 h"}`, "worn-limit", "within"},
		{"bearing-clearance", clearance + `"newClearance":"0.2 mm ± 0.01 mm"}`, "worn-limit", "within"},
		{"backlash", `{"atPropeller":"0° ± 0.1°","earlierAtPropeller":"2.5° ± 0.1°"}`, "backlash-doubled", "cannot tell"},
		{"backlash", `{"atPropeller":"2.6° ± 0.1°","earlierAtPropeller":"2.5° ± 0.1°"}`, "backlash-doubled", "within"},
	} {
		v := testboat.Run(t, c.id, c.input, marinecalc.Options{}).Verdict(c.limit)
		if v == nil || string(v.Word) != c.word && v.Word != sheet.Word(c.word).ByGuide() {
			t.Errorf("%s %s: %s is %+v, want %s", c.id, c.input, c.limit, v, c.word)
		} else if c.word == "cannot tell" && !strings.Contains(v.Sentence, ": met in itself; OK only once this is put right: ") {
			t.Errorf("%s %s: %s", c.id, c.input, v.Sentence)
		}
	}
}

// A gland is left alone only where it surely is cool: a hand tells 13 K from 25
// as little as from none, a thermometer in contact does.
func TestOnlyASurelyCoolGlandIsLeftAlone(t *testing.T) {
	for _, c := range []struct {
		thermometer string
		left        bool
	}{{"hand", false}, {"contact-thermometer", true}} {
		s := testboat.Run(t, "gland-heat", `{"shaftDiameter":"30 mm","boxBore":"46 mm","packedLength":"40 mm","packing":"flax","conductivity":15,"shaftSpeed":"1000 rpm","thermometer":"`+c.thermometer+`","measuredGlandTemperature":"28 °C","waterTemperature":"18 °C","dripRate":"10 drips/min"}`, marinecalc.Options{})
		if advised(s, "Leave the nuts alone") != c.left {
			t.Errorf("%s: %s", c.thermometer, s.Verdict("gland-rise-measured").Sentence)
		}
	}
}

// A joint that holds nothing one way is not signed for the other: a nut without
// clamp, a hub that would come off its cone. What only its own contradiction
// holds back gives none of the advice of a doubtful reading.
func TestAJointThatFailsOneWayIsNotSignedTheOther(t *testing.T) {
	text, err := os.ReadFile(testboat.Root("testdata", "boats", "kittiwake.json"))
	if err != nil {
		t.Fatal(err)
	}
	boat := string(text)
	worn := strings.Replace(boat, `"readings": [`, `"readings": [{"date": "2026-11-20", "outputFaceWear": "0.1 mm"}, `, 1)
	loose := strings.Replace(boat, `"nutTorque": "75 N·m"`, `"nutTorque": "3 N·m"`, 1)
	for _, c := range []struct{ name, boat, id, limit, hangsOn string }{
		{"worn face", worn, "line-joints", "line-ahead", "face wear"},
		{"worn face", worn, "output-flange", "flange-flanks", "face wear"},
		{"loose nut", loose, "propeller-taper", "taper-torque-ahead", "torque margin of the propeller astern"},
		{"loose nut", loose, "line-joints", "line-ahead", "torque margin of the propeller astern"},
	} {
		if c.boat == boat {
			t.Fatalf("%s: the boat has no longer what is changed in it", c.name)
		}
		for b, word := range map[string]sheet.Word{boat: sheet.Within, c.boat: sheet.CannotTell} {
			v := testboat.Run(t, c.id, "{}", marinecalc.Options{Boat: testboat.Read(t, b)}).Verdict(c.limit)
			if v == nil || v.Word != word && !(c.limit == "flange-flanks" && v.Word == sheet.NotMeasured) || word == sheet.CannotTell && !strings.Contains(v.Sentence, ": met in itself; OK only once this is put right: "+c.hangsOn) {
				t.Errorf("%s, %s: %+v", c.name, c.limit, v)
			}
		}
	}
	s := testboat.Run(t, "bolt-preload", `{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","nut":"plain-nut","gripLength":"24 mm","freeLengthNew":"46.40 mm","freeLength":"46.50 mm"}`, marinecalc.Options{})
	if v := s.Verdict("bolt-proof-load"); v.Word != sheet.CannotTell || !strings.Contains(v.Sentence, "bolt longer than new") || !advised(s, "Renew the whole set") || advised(s, "Most of the spread") {
		t.Errorf("a bolt that has grown: %s %+v", v.Sentence, s.Next)
	}
}
