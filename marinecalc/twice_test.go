package marinecalc_test

import (
	"maps"
	"math"
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
)

// notTwice are the inputs that stand before others without being a second
// reading of the same thing, by the reason.
var notTwice = map[string]string{
	"coupling-grip/peakTorque":                "the harder of the two is counted",
	"key-strength/peakTorque":                 "the harder of the two is counted",
	"propeller-taper/peakTorque":              "the harder of the two is counted",
	"shaft-strength/peakTorque":               "the harder of the two is counted",
	"shaft-torque/gearRatioAstern":            "the harder of the two is counted",
	"propeller-taper/keyTorque":               "the harder of the two is counted",
	"propeller-taper/contactShare":            "the harder of the two is counted",
	"mount-load/shaftTorque":                  "the harder of the two is counted",
	"bolt-fit/headRoom":                       "the lesser of several counts",
	"bolt-preload/nominalDiameter":            "the lesser of several counts",
	"bolt-preload/pitch":                      "the lesser of several counts",
	"bolt-preload/torqueUsed":                 "the lesser of several counts",
	"bolt-preload/wrenchScatter":              "the lesser of several counts",
	"coupling-bore/keyHeight":                 "the lesser of several counts",
	"coupling-bore/nutFactor":                 "what the clamp holds, beside what the key holds: the one that carries counts",
	"coupling-bore/keySeat":                   "the lesser of several counts",
	"coupling-key/smallEndDiameter":           "a figure of this very part, and without it an estimate by rule of thumb",
	"key-strength/keyHeight":                  "the lesser of several counts",
	"key-strength/keySeat":                    "the lesser of several counts",
	"key-strength/shaftDiameter":              "the lesser of several counts",
	"key-strength/smallEndDiameter":           "the lesser of several counts",
	"shaft-withdrawal/roomRudderOver":         "the lesser of several counts",
	"propeller-taper/taperLength":             "the lesser of several counts",
	"propeller-taper/taperRatio":              "the lesser of several counts",
	"thread-engagement/lostThreads":           "the lesser of several counts",
	"thread-engagement/tappedTensileStrength": "the lesser of several counts",
	"thread-engagement/tensileStrength":       "the lesser of several counts",
	"thread-engagement/threadShare":           "the lesser of several counts",
	"repair-or-replace/repairLife":            "the lesser of several counts",
	"repair-or-replace/replaceLife":           "the lesser of several counts",
	"bearing-life/axialFactor":                "the lesser of several counts",
	"bearing-life/radialFactor":               "the lesser of several counts",
	"bolt-preload/boltStiffness":              "a figure of this very part, and without it an estimate by rule of thumb",
	"bolt-preload/memberStiffness":            "a figure of this very part, and without it an estimate by rule of thumb",
	"coupling-grip/lowerProofStrength":        "a figure of this very part, and without it an estimate by rule of thumb",
	"coupling-grip/permittedShear":            "a figure of this very part, and without it an estimate by rule of thumb",
	"mount-load/inertiaPitch":                 "a figure of this very part, and without it an estimate by rule of thumb",
	"mount-load/inertiaRoll":                  "a figure of this very part, and without it an estimate by rule of thumb",
	"mount-load/inertiaYaw":                   "a figure of this very part, and without it an estimate by rule of thumb",
	"output-flange/faceDiameter":              "a figure of this very part, and without it an estimate by rule of thumb",
	"propeller-taper/nutFaceDiameter":         "a figure of this very part, and without it an estimate by rule of thumb",
	"propeller-taper/hubHole":                 "a figure of this very part, and without it an estimate by rule of thumb",
	"output-flange/nutFaceDiameter":           "a figure of this very part, and without it an estimate by rule of thumb",
	"thread-engagement/tappedMinorDiameter":   "a figure of this very part, and without it an estimate by rule of thumb",
	"bearing-life/boreLower":                  "a figure of this very part, and without it an estimate by rule of thumb",
	"bearing-life/seatUpper":                  "a figure of this very part, and without it an estimate by rule of thumb",
	"service-schedule/hoursPerYear":           "a figure of this very part, and without it an estimate by rule of thumb",
	"line-joints/boreAhead":                   "another joint: the weaker of the two is the margin",
	"line-joints/boreAstern":                  "another joint: the weaker of the two is the margin",
	"flange-run-out/faceAt":                   "another state: the newer, or the worn, and without it the one before",
	"flange-run-out/faceAtMoved":              "another state: the newer, or the worn, and without it the one before",
	"flange-run-out/faceRunOut":               "another state: the newer, or the worn, and without it the one before",
	"flange-run-out/faceRunOutMoved":          "another state: the newer, or the worn, and without it the one before",
	"flange-run-out/rimRunOutMoved":           "another state: the newer, or the worn, and without it the one before",
	"flange-run-out/rimAt":                    "another state: the newer, or the worn, and without it the one before",
	"flange-run-out/rimAtMoved":               "another state: the newer, or the worn, and without it the one before",
	"flange-run-out/rimRunOut":                "another state: the newer, or the worn, and without it the one before",
	"bearing-clearance/markClearance":         "another state: the newer, or the worn, and without it the one before",
	"bearing-clearance/secondTravel":          "a figure of this very part, and without it an estimate by rule of thumb",
	"output-flange/earlierWear":               "another state: the newer, or the worn, and without it the one before",
	"shaft-strength/neckDiameter":             "another state: the newer, or the worn, and without it the one before",
	"gland-heat/measuredGlandTemperature":     "what is measured, beside what is computed for it: both stand on the sheet, the computed one with its wide range",
	"gland-heat/conductivity":                 "what is measured, beside what is computed for it: both stand on the sheet, the computed one with its wide range",
	"output-flange/hubDiameter":               "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/hubLength":                 "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/nominalDiameter":           "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/pitch":                     "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/ringDiameter":              "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/ringLength":                "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/spacerDiameter":            "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/spacerLength":              "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/threadInside":              "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/seatDiameter":              "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/shaftModulus":              "part of the stack, without which the clamp follows from the torque alone",
	"output-flange/stackModulus":              "part of the stack, without which the clamp follows from the torque alone",
	"shaft-droop/propellerOverhang":           "without it another figure of the shaft's own lie is not known",
	"shaft-droop/spanBehind":                  "without it another figure of the shaft's own lie is not known",
	"coupling-bore/peakTorque":                "the lesser of several counts",
	"key-strength/wantedSafety":               "the lesser of several counts",
	"shaft-strength/ruleMinimum":              "the lesser of several counts",
	"thread-engagement/nominalDiameter":       "the lesser of several counts",
	"thread-engagement/shearShare":            "the lesser of several counts",
	"shaft-droop/shaftDensity":                "without it another figure of the shaft's own lie is not known",
	"bolt-preload/threadFriction":             "the nut factor is for the torque and the friction for the twist, and how far both are off is the torque's scatter",
	"bolt-preload/headFriction":               "the nut factor is for the torque and the friction for the twist, and how far both are off is the torque's scatter",
	"output-flange/threadFriction":            "the nut factor is for the torque and the friction for the twist, and how far both are off is the torque's scatter",
	"output-flange/nutFriction":               "the nut factor is for the torque and the friction for the twist, and how far both are off is the torque's scatter",
	"coupling-key/keyHeight":                  "the lesser of several counts",
	"coupling-key/largeEndDiameter":           "the end by its table: a shaft that is no such is refused",
	"coupling-key/keySeat":                    "the lesser of several counts",
	"coupling-key/peakTorque":                 "the harder of the two is counted",
	"bolt-preload/gripLength":                 "the clamp by stretch or turn needs it, and these have their ways",
	"bolt-preload/proofStrength":              "the lesser of several counts",
	"alignment-target/afloatGapHorizontal":    oneOfSeveralMoves,
	"alignment-target/afloatGapVertical":      oneOfSeveralMoves,
	"alignment-target/aftRise":                oneOfSeveralMoves,
	"alignment-target/drivingFrontStarboard":  oneOfSeveralMoves,
	"alignment-target/drivingFrontUp":         oneOfSeveralMoves,
	"alignment-target/drivingShare":           oneOfSeveralMoves,
	"coupling-grip/strippingLoad":             "the lesser of several counts",
	"line-joints/taperAhead":                  "the least of several counts",
	"line-joints/taperAstern":                 "the least of several counts",
	"mount-load/dampingRatio":                 "it says how near a frequency counts as passed, and is no frequency",
	"mount-load/engineLength":                 "the highest of several counts",
	"dial-alignment/barSagFace":               "the correction of a reading, and none itself",
	"mount-load/centreStarboard":              "where the engine's weight lies: without it the middle is taken, and the sheet says so",
	"bolt-preload/nutFactor":                  "the nut factor is for the torque and the friction for the twist, and how far both are off is the torque's scatter",
}

const oneOfSeveralMoves = "one of several moves, which add up: a result near nothing shows three figures, and hides the smaller ones"

// Where two inputs each lead to one result, and one goes before the other, a
// result says so by its ways, so that the sheet tells where they disagree. It
// is found by trying: a result that the first moves and the second does not,
// and the second does as soon as the first is left out.
func TestTwoReadingsOfOneThingAreHeldTogether(t *testing.T) {
	alone(t)
	o := marinecalc.Options{NoRanges: true}
	tried, found := 0, map[string]string{}
	eachInput(t, func(f *binding.Form, input map[string]any) {
		declared := map[string]bool{}
		for _, r := range f.Result.Properties {
			for _, way := range r.Ways {
				declared[way] = true
			}
		}
		shifted := func(in map[string]any, p *contract.Property) *marinecalc.Sheet {
			other := put(in, p, nil, func(_ *contract.Property, si float64) any { return si * 1.01 })
			if other == nil {
				return nil
			}
			return worked(f, other, o)
		}
		whole, moved := worked(f, input, o), map[string]*marinecalc.Sheet{}
		for _, p := range f.Input.Properties {
			moved[p.Name] = shifted(input, p)
		}
		moves := func(a, b *marinecalc.Sheet, name string) (yes, known bool) {
			x, y := a.Result(name), b.Result(name)
			if x == nil || y == nil || x.SI == nil || y.SI == nil {
				return false, false
			}
			return math.Abs(*x.SI-*y.SI) > 1e-9*math.Abs(*x.SI), true // what summing in another order loses moves nothing
		}
		for _, a := range f.Input.Properties {
			if moved[a.Name] == nil || declared[a.Name] || notTwice[f.ID+"/"+a.Name] != "" {
				continue
			}
			less := maps.Clone(input)
			delete(less, a.Name)
			without := worked(f, less, o)
			if without == nil {
				continue
			}
			for _, b := range f.Input.Properties {
				if b == a || moved[b.Name] == nil {
					continue
				}
				alone := shifted(less, b)
				if alone == nil {
					continue
				}
				tried++
				for i := range whole.Results {
					r := whole.Results[i].Name
					byFirst, k1 := moves(whole, moved[a.Name], r)
					bySecond, k2 := moves(whole, moved[b.Name], r)
					bySecondAlone, k3 := moves(without, alone, r)
					if k1 && k2 && k3 && byFirst && !bySecond && bySecondAlone {
						found[f.ID+"/"+a.Name+" before "+b.Name] = r
					}
				}
			}
		}
	})
	for _, pair := range slices.Sorted(maps.Keys(found)) {
		t.Errorf("%s, of %s: give the result its ways, or say why they are not two readings of one thing", pair, found[pair])
	}
	if tried < 2000 {
		t.Errorf("only %d pairs were tried", tried)
	}
	t.Logf("%d pairs", tried)
}
