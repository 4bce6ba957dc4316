package marinecalc_test

import (
	"os"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// What a sheet advises must not contradict what another sheet, or another line of
// the same one, found on the boat. Each of these was read on a sheet of an invented
// boat by an engineer, who would not have signed it.
func TestAdviceThatStandsTogether(t *testing.T) {
	for _, c := range []struct {
		boat, calculation string
		first             string // with which the first advice begins; "" for whatever it is
		says, not         string // that must, and must not, be advised; "" for none
	}{
		{boat: "cases/weak-split-clamp", calculation: "shaft-torque", first: "Not under power yet"}, // a run for the thrust
		{boat: "cases/worn-flange-face", calculation: "shaft-torque", first: "Not under power yet"},
		{boat: "cases/nothing-wrong", calculation: "shaft-torque", first: "Compare the torque", not: "Not under power yet"},
		{boat: "cases/soft-foot", calculation: "mount-moves", first: "Find out which foot", not: "Leave every nut as it is"},
		{boat: "cases/nothing-wrong", calculation: "mount-moves", says: "Leave every nut as it is"},
		{boat: "cases/bent-shaft", calculation: "shaft-strength", not: "what is left to watch"}, // the shaft is bent
		{boat: "cases/bent-shaft", calculation: "sea-trial", first: "Have the shaft put right first"},
		{boat: "cases/long-span", calculation: "sea-trial", first: "Left out of this trial is all that turns the shaft near its critical speed"},
		{boat: "cases/backlash-doubled", calculation: "backlash", first: "Engine stopped, key out, look at the joints"},
		{boat: "cases/drips-rising", calculation: "reading-trend", first: "Bring the work forward", not: "or read twice as often"},          // it is at its limit before the work
		{boat: "boats/kittiwake", calculation: "shaft-whirl", not: "has another cause"},                                                     // its blades excite the whirl at full speed
		{boat: "cases/bent-shaft", calculation: "coupling-alignment", first: "Bolt nothing up and turn no nut yet", not: "Move the mounts"}, // the shaft is bent
		{boat: "boats/kittiwake", calculation: "gland-heat", says: "Leave the nuts alone", not: "Set the drip"},
	} {
		t.Run(c.boat+"/"+c.calculation, func(t *testing.T) {
			file, err := os.ReadFile(testboat.Root("testdata", c.boat+".json"))
			if err != nil {
				t.Fatal(err)
			}
			advice(t, testboat.RunOn(t, string(file), c.calculation, "{}"), c.first, c.says, c.not)
		})
	}
}

// advice holds what a sheet advises: how it begins, what it says, and what it does not;
// "" asks for nothing.
func advice(t *testing.T, made *marinecalc.Sheet, first, says, not string) {
	t.Helper()
	var all []string
	for _, n := range made.Next {
		all = append(all, n.Text)
	}
	text := strings.Join(all, "\n")
	if !strings.HasPrefix(text, first) {
		t.Errorf("first %q, want %q", all[0], first)
	}
	if !strings.Contains(text, says) {
		t.Errorf("nothing says %q:\n%s", says, text)
	}
	if not != "" && strings.Contains(text, not) {
		t.Errorf("it says %q:\n%s", not, text)
	}
}

// A shaft that bends itself to death is told what to do, and not that nothing is
// left but to watch it.
func TestAdviceOfAShaftThatBendsTooFar(t *testing.T) {
	made := testboat.RunOn(t, `{"name": "Tern"}`, "shaft-strength", `{"shaftDiameter": "30 mm", "shaftAlloy": "s31600-annealed", "shaftPower": "20 kW", "shaftSpeed": "1300 rpm",
		"peakTorque": "300 N·m", "bendingMoment": "300 N·m", "shaftProtection": "bare-sea", "shaftPlace": "propeller-keyed", "boatUse": "light-petrol-yacht"}`)
	if v := made.Verdict("shaft-fatigue"); v == nil || v.Word != "beyond" {
		t.Fatalf("fatigue reads %v", v)
	}
	if got := made.Next[0].Text; !strings.HasPrefix(got, "Measure overhang and mass of the propeller again") {
		t.Errorf("first %q", got)
	}
	for _, n := range made.Next {
		if strings.Contains(n.Text, "what is left to watch") {
			t.Errorf("it says %q", n.Text)
		}
	}
}

// One thing over, and what the sheets beside it then must not advise: each pair was
// read on an invented boat with two faults.
func TestAdviceOfTwoFaultsTogether(t *testing.T) {
	whole := map[string]bool{} // boats of which all sheets were laid side by side
	turned := `"couplingGaps": [{"clock": "0°", "gap": "5.9 mm"}, {"clock": "90°", "gap": "5.4 mm"}, {"clock": "180°", "gap": "5.0 mm"}, {"clock": "270°", "gap": "5.4 mm"}]`
	for _, c := range []struct {
		name             string
		from, to         string // what is typed otherwise in the boat file
		reading          string // members of one more reading
		calculation      string
		first, says, not string
	}{
		{name: "bent shaft", reading: `"shaftRunOut": "0.6 mm"`, calculation: "mount-moves", first: "Turn no nut yet: by its run-out the shaft is bent"},
		{name: "bent shaft", reading: `"shaftRunOut": "0.6 mm"`, calculation: "dial-alignment", first: "Bolt nothing up and turn no nut yet", not: "then bolt up, run"},
		{name: "bent shaft", reading: `"shaftRunOut": "0.6 mm"`, calculation: "coupling-alignment", first: "Bolt nothing up and turn no nut yet", not: "good enough to bolt up"},
		{name: "crooked output flange", reading: `"outputFaceRunOut": "0.4 mm"`, calculation: "coupling-alignment", first: "Bolt nothing up yet: the output flange", not: "good enough to bolt up"},
		{name: "crooked output flange", reading: `"outputFaceRunOut": "0.4 mm"`, calculation: "dial-alignment", first: "Bolt nothing up yet: the output flange", not: "then bolt up, run"},
		{name: "crooked output flange", reading: `"outputFaceRunOut": "0.4 mm"`, calculation: "mount-moves", first: "The output flange runs out"},
		{name: "gaps that contradict", reading: turned, calculation: "mount-moves", first: "Move nothing by this table", not: "Make half of the first pair's move"},
		{name: "gaps that contradict", reading: turned, calculation: "bearing-life", not: "before anything else"},
		{name: "settled mount", from: `"deflectionNow": "3.6 mm"`, to: `"deflectionNow": "8 mm"`, calculation: "mount-moves", first: "Turn no nut for alignment before the settled mounts are renewed"},
		{name: "soft foot", from: `"footGap": "0.02 mm"`, to: `"footGap": "1.2 mm"`, calculation: "mount-moves", first: "Find out which foot stands off"},
		{name: "neck too thin", from: `"grooveDiameter": "24.8 mm"`, to: `"grooveDiameter": "21 mm"`, calculation: "gland-packing", first: "By shaft strength what is left of this shaft is too little", not: "sleeve the shaft"},
		{name: "drips that jump", reading: `"dripRate": "60 drips/min"`, calculation: "reading-trend", first: "Read again now, the same way, before believing it", says: "Stop using it as before"},
		{name: "bearing that does not last", reading: `"bearingClearance": "0.6 mm"`, calculation: "bearing-clearance", says: "Order the bearing now", not: "at the next haul-out"},
		{name: "bearing grown tight", reading: `"bearingClearance": "0.02 mm"`, calculation: "bearing-clearance", says: "Read the clearance again at both ends", not: "read again after more hours"},
		{name: "drips over their limit", reading: `"dripRate": "60 drips/min"`, calculation: "fault-finding", says: "on another sheet goes first"},
		{name: "propeller nut drawn too far", from: `"nutTorque": "75 N·m"`, to: `"nutTorque": "350 N·m"`, calculation: "propeller-taper", says: "Do not run under power before nut and threaded end", not: "draw it further, or shim"},
		{name: "propeller nut drawn too far", from: `"nutTorque": "75 N·m"`, to: `"nutTorque": "350 N·m"`, calculation: "shaft-strength", first: "Not under power yet"}, // before “take off power”
		{name: "propeller nut hardly drawn", from: `"nutTorque": "75 N·m"`, to: `"nutTorque": "10 N·m"`, calculation: "sea-trial", first: "Not under power yet"},
	} {
		t.Run(c.name+"/"+c.calculation, func(t *testing.T) {
			file, err := os.ReadFile(testboat.Root("testdata", "boats/kittiwake.json"))
			if err != nil {
				t.Fatal(err)
			}
			text := string(file)
			if c.from != "" {
				if !strings.Contains(text, c.from) {
					t.Fatalf("the boat has no %s", c.from)
				}
				text = strings.ReplaceAll(text, c.from, c.to)
			}
			if c.reading != "" {
				text = strings.Replace(text, `"readings": [`, `"readings": [{"date": "2026-08-01", "engineHours": "1930 h", `+c.reading+`},`, 1)
			}
			if !whole[c.name] {
				whole[c.name] = true
				oneWay(t, c.name, testboat.Check(t, testboat.Read(t, text), marinecalc.Options{Trials: 128}).Sheets...)
			}
			advice(t, testboat.RunOn(t, text, c.calculation, "{}"), c.first, c.says, c.not)
		})
	}
}
