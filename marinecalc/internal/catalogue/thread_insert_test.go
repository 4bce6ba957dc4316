package catalogue_test

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc"
)

// A solid insert of the table holds in the parent metal by its own outside
// thread: 0.4844-20 for a bolt of 3/8 in (MIL-I-45932/3). By the simplest
// estimate, half of the cylinder at its outside, it holds π·D·L/2 in shear; the
// handbook's formula lies between 0.8 and 1.6 of it.
func TestSolidInsertHoldsByItsOutside(t *testing.T) {
	const input = `{"thread": "3/8-16 UNC", "grade": "j429-5", "tappedTensileStrength": "30 ksi", "engagementLength": "0.56 in", "lostThreads": 0, "threadShare": 1, "shearShare": 0.5, `
	s := runInput(t, "thread-engagement", input+`"insert": "solid", "insertSize": "thin-wall-oversize-3/8"}`, "us")
	if in := s.Input("insertDiameter"); in == nil || math.Abs(*in.SI/(0.4844*0.0254)-1) > 1e-9 {
		t.Fatalf("outside of the insert: %+v", in)
	}
	area := result(s, "tappedShearArea")
	if simple := math.Pi * 0.4844 * 0.56 / 2 * 0.0254 * 0.0254; area < 0.8*simple || area > 1.6*simple {
		t.Errorf("area in shear %g, half of the cylinder %g", area, simple)
	}
	bare := runInput(t, "thread-engagement", input+`"insert": "none"}`, "us")
	if grown := area / result(bare, "tappedShearArea"); grown < 1.15 || grown > 1.45 {
		t.Errorf("the insert holds %g times the bare thread; its outside is 1.29 times the bolt's", grown)
	}
	if _, err := marinecalc.Run("thread-engagement", []byte(`{"thread": "1/2-13 UNC", "grade": "j429-5", "engagementLength": "0.56 in", "insert": "solid", "insertSize": "thin-wall-oversize-3/8"}`), marinecalc.Options{NoRanges: true}); err == nil {
		t.Error("an insert for 3/8 in takes a bolt of 1/2 in")
	}
}
