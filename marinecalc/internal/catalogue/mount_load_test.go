package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// The boat feeds mount-load: torque from the shaft's sheet, mounts from the
// same list; the moved coupling is shown.
func TestBoatLoadsItsMounts(t *testing.T) {
	load := testboat.Page(t, testboat.Mounted(t, "0.42", "9 mm"), "mount-load")
	if i := load.Input("shaftTorque"); i == nil || i.Origin != "earlier result" {
		t.Errorf("torque: %+v", i)
	}
	if i := load.Input("engineWidth"); i == nil || i.Origin != "usual value" || i.Range == "" {
		t.Errorf("width: %+v", i)
	}
	// The boat has no thrust: of driving nothing is said, and not that all is well.
	if v := load.Verdict("mount-lifts-driving"); v == nil || v.Word != "not measured" || load.Result("movedGapPerDiameter") != nil {
		t.Errorf("%+v", v)
	}
	if len(load.Drawings) != 2 || load.Drawings[1].Name != "mount-isolation" {
		t.Errorf("%d drawings", len(load.Drawings))
	}
	if c := load.Cell("modes", 5, "frequency"); c == nil || c.Low == nil {
		t.Errorf("highest mode: %+v", c)
	}
}

// With torque and no thrust nothing is said of driving; with both, loads along
// the mounts and fore and aft are held against the maker's.
func TestMountsUnderWay(t *testing.T) {
	run := func(drive string) *marinecalc.Sheet {
		var mounts []string
		for _, at := range []string{`"a", "forward": "850 mm", "starboard": "-250 mm"`, `"b", "forward": "850 mm", "starboard": "250 mm"`, `"c", "forward": "250 mm", "starboard": "-250 mm"`, `"d", "forward": "250 mm", "starboard": "250 mm"`} {
			mounts = append(mounts, `{"name": `+at+`, "stiffness": "150 N/mm", "stiffnessSideways": "60 N/mm", "stiffnessAlong": "200 N/mm", "up": "100 mm", "ratedLoad": "1000 N", "ratedThrust": "800 N"}`)
		}
		return testboat.Run(t, "mount-load", `{"engineMass": "190 kg", "centreForward": "550 mm", "centreUp": "100 mm", "engineLength": "850 mm", "engineWidth": "500 mm", "engineHeight": "600 mm", "boxFactor": 1,
			"mounts": [`+strings.Join(mounts, ", ")+`], "shaftTorque": "170 N·m"`+drive+`}`, marinecalc.Options{})
	}
	for _, c := range []struct{ drive, rest, load, thrust, lifts string }{
		{``, "within", "not measured", "not measured", "not measured"},
		{`, "asternTorque": "150 N·m", "thrust": "2 kN"`, "within", "within", "within", "within"},
		{`, "thrust": "2 kN"`, "within", "not measured", "not measured", "not measured"}, // ahead alone
		{`, "thrust": "40 kN"`, "within", "beyond", "beyond", "beyond"},
	} {
		s := run(c.drive)
		// How the coupling moves is shown, and not held against tolerances made for
		// an engine at rest.
		if v := s.Verdict("rigid-gap-per-diameter"); v != nil || (s.Result("movedGapPerDiameter") != nil) != (c.drive != "") {
			t.Errorf("%s: %+v", c.drive, v)
		}
		for limit, word := range map[string]string{"mount-rest-load": c.rest, "mount-rated-load": c.load, "mount-rated-thrust": c.thrust, "mount-lifts-driving": c.lifts} {
			if v := s.Verdict(limit); v == nil || string(v.Word) != word {
				t.Errorf("%s: %s is %+v, want %s", c.drive, limit, v, word)
			}
		}
	}
}
