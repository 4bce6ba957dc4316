package catalogue_test

import (
	"fmt"
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

// A mount that stands higher than when new, or springs that carry another weight,
// leave no verdict of the sheet OK; with both put right they are.
func TestMountsThatContradictTheWeight(t *testing.T) {
	mounts := func(now, stiffness string) string {
		var list []string
		for i, at := range []string{`"forward": "800 mm", "starboard": "-250 mm"`, `"forward": "800 mm", "starboard": "250 mm"`, `"forward": "200 mm", "starboard": "-250 mm"`, `"forward": "200 mm", "starboard": "250 mm"`} {
			deflection := "3.4 mm"
			if i == 0 {
				deflection = now
			}
			list = append(list, fmt.Sprintf(`{"name": "%d", %s, "stiffness": "%s", "deflectionNew": "3.1 mm", "deflectionNow": "%s", "ratedLoad": "1200 N"}`, i, at, stiffness, deflection))
		}
		return `{"mounts": [` + strings.Join(list, ",") + `], "engineMass": "190 kg", "centreForward": "500 mm", "centreUp": "100 mm", "engineLength": "900 mm", "engineWidth": "500 mm", "engineHeight": "600 mm", "thrustOnMounts": 0}`
	}
	for _, c := range []struct {
		now, stiffness, rose, more, less, rest string
	}{ // 190 kg is 1863 N; four mounts of 150 N/mm pressed 3.1 mm carry 1860 N
		{"3.4 mm", "150 N/mm", "inside the guide", "inside the guide", "inside the guide", "within"},
		{"2 mm", "150 N/mm", "outside the guide", "inside the guide", "inside the guide", "cannot tell"},
		{"-1 mm", "150 N/mm", "outside the guide", "inside the guide", "inside the guide", "cannot tell"},
		{"3.4 mm", "300 N/mm", "inside the guide", "outside the guide", "inside the guide", "cannot tell"},
		{"3.4 mm", "75 N/mm", "inside the guide", "inside the guide", "outside the guide", "cannot tell"},
	} {
		s := testboat.Run(t, "mount-load", mounts(c.now, c.stiffness), marinecalc.Options{})
		for limit, word := range map[string]string{"mount-rose": c.rose, "mount-weight-more": c.more, "mount-weight-less": c.less, "mount-rest-load": c.rest, "mount-lifts-at-rest": c.rest} {
			if v := s.Verdict(limit); v == nil || string(v.Word) != word {
				t.Errorf("%+v, %s: %+v", c, limit, v)
			}
		}
	}
}
