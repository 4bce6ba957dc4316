package testboat

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// Boats and inputs in JSON that the tests of several packages use.

// Logged is a boat with dated readings, one of which fits no cell of a table.
const Logged = `{"name":"Tern","readings":[
 {"date":"2026-05-02","engineHours":"1240 h","dripRate":"6 drips/min","note":"=cmd, \"quoted\""},
 {"date":"2026-05-16","dripRate":0.1,"changed":true},
 {"date":"2026-05-20","couplingGaps":[{"clock":0,"gap":0.0001},{"clock":1,"gap":0.0001},{"clock":3,"gap":0.0001},{"clock":4,"gap":0.0001}]}]}`

// TwoStates is a boat whose coupling was put right between its first reading and
// its second; the third is as the second, but for the gauge.
const TwoStates = `{"name": "Two states",
	"coupling": {"kind": "rigid", "diameter": "100 mm"},
	"readings": [
		{"date": "2026-03-01", "couplingGaps": [{"clock": "0°", "gap": "0.60 mm"}, {"clock": "90°", "gap": "0.40 mm"}, {"clock": "180°", "gap": "0.20 mm"}, {"clock": "270°", "gap": "0.40 mm"}]},
		{"date": "2026-05-01", "couplingGaps": [{"clock": "0°", "gap": "0.31 mm"}, {"clock": "90°", "gap": "0.30 mm"}, {"clock": "180°", "gap": "0.29 mm"}, {"clock": "270°", "gap": "0.30 mm"}]},
		{"date": "2026-06-01", "couplingGaps": [{"clock": "0°", "gap": "0.32 mm"}, {"clock": "90°", "gap": "0.30 mm"}, {"clock": "180°", "gap": "0.29 mm"}, {"clock": "270°", "gap": "0.30 mm"}]}
	]}`

// SpringWork is the input of a work plan.
const SpringWork = `{"today": "2026-03-02", "readyBy": "2026-04-20",
	"remedies": [{"remedy": "repack-gland"}, {"remedy": "align-coupling"}],
	"windows": [{"from": "2026-03-30", "to": "2026-04-09", "kind": "haul-out", "note": "slot; at the yard"},
		{"from": "2026-04-03", "to": "2026-04-06", "kind": "not", "note": "Easter"}]}`

// mountedBoat is a drivetrain written down once: the readings at its
// coupling, its mounts, and a maker's figure of their tolerance.
const mountedBoat = `{"name": "Sorrel", "units": "metric",
 "engine": {"power": "28 kW", "speed": "2800 rpm", "mass": "190 kg", "centreForward": "560 mm", "cylinders": 3, "idleSpeed": "850 rpm"},
 "gearbox": {"ratioAhead": 2.15, "ratioAstern": 1.95},
 "coupling": {"kind": "rigid", "diameter": "102 mm"},
 "mounts": [
  {"name": "front port", "forward": "850 mm", "starboard": "-250 mm", "up": "60 mm", "threadPitch": "1.5 mm", "stiffness": "150 N/mm", "footGap": "0.02 mm"},
  {"name": "front starboard", "forward": "850 mm", "starboard": "250 mm", "up": "60 mm", "threadPitch": "1.5 mm", "stiffness": "150 N/mm", "footGap": "0 mm"},
  {"name": "aft port", "forward": "250 mm", "starboard": "-250 mm", "up": "60 mm", "threadPitch": "1.5 mm", "stiffness": "150 N/mm", "footGap": "0 mm"},
  {"name": "aft starboard", "forward": "250 mm", "starboard": "250 mm", "up": "60 mm", "threadPitch": "1.5 mm", "stiffness": "150 N/mm", "footGap": "0 mm", "travelUp": TRAVEL}],
 "makersFigures": [{"of": "rigid-gap-per-diameter", "value": 0.02, "source": {"document": "coupling plate"}}],
 "readings": [{"date": "2026-05-02",
  "couplingGaps": [{"clock": "12 o'clock", "gap": "GAP mm"}, {"clock": "3 o'clock", "gap": "0.35 mm"}, {"clock": "6 o'clock", "gap": "0.30 mm"}, {"clock": "9 o'clock", "gap": "0.37 mm"}],
  "couplingSteps": [{"clock": "12 o'clock", "step": "-0.3 mm"}, {"clock": "3 o'clock", "step": "0 mm"}, {"clock": "6 o'clock", "step": "0.3 mm"}, {"clock": "9 o'clock", "step": "0 mm"}]}]}`

// Mounted is what mountedBoat's survey says, with that gap at 12 o'clock in
// millimetres and that travel of the last stud.
func Mounted(t testing.TB, gap, travel string) *marinecalc.Survey {
	t.Helper()
	boat := strings.NewReplacer("GAP", gap, "TRAVEL", `"`+travel+`"`).Replace(mountedBoat)
	return Check(t, Read(t, boat), marinecalc.Options{Trials: 1024})
}
