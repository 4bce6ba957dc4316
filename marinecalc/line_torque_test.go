package marinecalc_test

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// lineSheets are the sheets along the line, each of which is handed the torque.
var lineSheets = []string{"shaft-strength", "output-flange", "coupling-grip", "coupling-key", "coupling-bore", "key-strength", "propeller-taper", "line-joints"}

// handed is what one sheet's input is taken from another's result.
var handed = []struct{ to, input, from, result string }{
	{"coupling-grip", "preload", "bolt-preload", "jointClamp"},
	{"output-flange", "pullAstern", "coupling-grip", "pullAstern"},
	{"propeller-taper", "keyTorque", "key-strength", "torqueHeld"},
	{"line-joints", "hubFriction", "output-flange", "frictionTorque"},
	{"line-joints", "hubFlanks", "output-flange", "driveTorque"},
	{"line-joints", "facesAhead", "coupling-grip", "frictionCapacity"},
	{"line-joints", "facesAstern", "coupling-grip", "capacityAstern"},
	{"line-joints", "boreAhead", "coupling-bore", "slipTorque"},
	{"line-joints", "boreAstern", "coupling-bore", "slipAstern"},
	{"line-joints", "taperAhead", "propeller-taper", "slipTorque"},
	{"line-joints", "taperAstern", "propeller-taper", "slipAstern"},
	{"line-joints", "couplingKey", "coupling-key", "torqueHeld"},
	{"line-joints", "propellerKey", "key-strength", "torqueHeld"},
}

// The same torque and the same pull astern go along the line: bolt, flange,
// bore, keys and taper are held against one figure each, and what one sheet
// finds is what the next one takes.
func TestOneTorqueAlongTheLine(t *testing.T) {
	boats := map[string]*marinecalc.Boat{"kittiwake": testboat.Demo(t, "kittiwake"), "juniper": testboat.Demo(t, "juniper")}
	eachJob(t, func(name string, _ *job, b *marinecalc.Boat) { boats[name] = b })
	whole := 0
	for name, b := range boats {
		sheets := map[string]*sheet.Sheet{}
		for _, one := range testboat.Check(t, b, marinecalc.Options{NoRanges: true}).Sheets {
			sheets[one.Calculation] = one
		}
		held := 0
		for _, id := range lineSheets {
			for _, torque := range []string{"shaftTorque", "asternTorque", "peakTorque"} {
				in, r := sheets[id].Input(torque), sheets["shaft-torque"].Result(torque)
				if in == nil || r == nil || in.Origin != sheet.Earlier {
					continue
				}
				held++
				if _, want, _ := r.Stands(); in.SI == nil || math.Abs(*in.SI / *want - 1) > 1e-12 {
					t.Errorf("%s: %s takes %s = %s, the shaft has %s", name, id, torque, in.Text, r.Text)
				}
			}
		}
		for _, h := range handed {
			in, r := sheets[h.to].Input(h.input), sheets[h.from].Result(h.result)
			if in == nil || r == nil || in.Origin != sheet.Earlier {
				continue
			}
			held++
			if _, want, _ := r.Stands(); in.SI == nil || math.Abs(*in.SI-*want) > 1e-9*math.Abs(*want) {
				t.Errorf("%s: %s takes %s = %s, %s says %s", name, h.to, h.input, in.Text, h.from, r.Text)
			}
		}
		if a, b := sheets["coupling-bore"].Result("pullAstern"), sheets["propeller-taper"].Result("pullAstern"); a != nil && b != nil && a.SI != nil && b.SI != nil && *a.SI != *b.SI {
			t.Errorf("%s: the bore bears %s astern, the taper %s", name, a.Text, b.Text)
		}
		if held >= 20 {
			whole++
		}
	}
	if whole < 2 {
		t.Errorf("only %d boats have a line of which most is known", whole)
	}
}
