package marinecalc_test

import (
	"iter"
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/sheet"
)

// standsForAnother are the inputs whose absence is a case of its own, and no lack.
var standsForAnother = map[string]string{
	"coupling-grip/permittedShear":  "without it the strength follows from the grade",
	"bolt-fit/boltLength":           "the bolt in hand, and without it the one chosen from the list",
	"shaft-strength/neckDiameter":   "none measured is none worn",
	"bearing-life/addedLoad":        "one known by itself, beside what offset and angle bend: these without it are the whole",
	"bearing-life/angle":            bendsNot,
	"bearing-life/offset":           bendsNot,
	"bearing-life/freeLength":       bendsNot,
	"bearing-life/bearingSpan":      bendsNot,
	"bearing-life/shaftAlloy":       bendsNot,
	"bearing-life/shaftDiameter":    bendsNot,
	"bolt-fit/spacerThickness":      "none given is none there",
	"propeller-taper/pushUp":        "the fit by its push-up, and without it that by the torque of its nut",
	"bolt-preload/boltStiffness":    "the stiffness by itself, and without it that by diameter and length",
	"coupling-grip/strippingLoad":   "bolts with nuts have none: of a tapped hole thread-engagement hands it on",
	"coupling-bore/pinchClamp":      "the clamp by itself, and without it that by the torque of the bolt",
	"coupling-bore/pinchThread":     "the clamp that was typed stands by itself where no thread tells what the bolt bears",
	"bolt-preload/stretchMeasured":  "the clamp by the stretch, and without it that by the turn",
	"output-flange/looseningTorque": "the clamp by the loosening torque, and without it that by turn or torque",
	"bearing-clearance/liftTravel":  "the clearance by the lift, and without it that by the feeler or the bore",
}

// standsForAnotherAt says so of one limit only.
var standsForAnotherAt = map[string]string{
	"coupling-bore/pinchGrade bore-boss-yields":           "the boss bears what any bolt can give; the grade of one that may yield leaves its clamp untold",
	"line-joints/taperAstern line-shock":                  "one joint that is over is told by itself; of the others the weakest, never as OK",
	"alignment-change/stepsBefore coupling-stands":        gapsAlone,
	"alignment-change/stepsNow coupling-stands":           gapsAlone,
	"mount-load/mounts/stiffness mount-lifts-driving":     usualMount,
	"mount-load/mounts/deflectionNew mount-lifts-driving": usualMount,
	"mount-load/mounts/deflectionNow mount-lifts-driving": usualMount,
}

// disagree tells whether a verdict tells nothing because two ways to one figure
// disagree: what is left out can let the other way in.
func disagree(v sheet.Verdict, s *marinecalc.Sheet) bool {
	return v.Word.Plain() == sheet.CannotTell && len(s.Conflicts) > 0
}

const gapsAlone = "the gaps by themselves stand, and the sheet says that they tell nothing of the offset"

const bendsNot = "a load from misalignment that was given stands by itself, where the bending of the shaft cannot be worked out"

// sameInputs tells whether one sheet has no input that the other has not, or
// has otherwise: what was left out was filled from nowhere.
func sameInputs(less, whole *marinecalc.Sheet) bool {
	for i := range less.Inputs {
		a := &less.Inputs[i]
		b := whole.Input(a.Name)
		if b == nil || a.Word != b.Word || a.Origin != b.Origin || (a.SI == nil) != (b.SI == nil) || a.SI != nil && *a.SI != *b.SI {
			return false
		}
	}
	return true
}

// wants tells whether a verdict that tells nothing says by name what it lacks, or
// has no limit to hold its reading against: that is doubt, and no milder.
func wants(v sheet.Verdict) bool {
	return v.Word.Plain() == sheet.CannotTell && (v.BoundSI == nil || len(v.Awaits) > 0 || strings.Contains(v.Sentence, "nothing is known of"))
}

// leftOut goes through what can be left out of an input: each of its members,
// and each column of each entry of its lists, as a mount of which the maker's
// load was not found.
func leftOut(input map[string]any) iter.Seq2[string, map[string]any] {
	return func(yield func(string, map[string]any) bool) {
		for _, name := range slices.Sorted(maps.Keys(input)) {
			less := maps.Clone(input)
			delete(less, name)
			if !yield(name, less) {
				return
			}
			list, _ := input[name].([]any)
			for i, item := range list {
				entry, _ := item.(map[string]any)
				for _, column := range slices.Sorted(maps.Keys(entry)) {
					one := maps.Clone(entry)
					delete(one, column)
					anew := slices.Clone(list)
					anew[i] = one
					less := maps.Clone(input)
					less[name] = anew
					if !yield(name+"/"+column, less) {
						return
					}
				}
			}
		}
	}
}

// An input that is left out, and that nothing else fills, makes no verdict
// milder.
func TestAMissingInputNeverMakesAVerdictMilder(t *testing.T) {
	alone(t)
	runs := 0
	eachInput(t, func(f *binding.Form, input map[string]any) {
		o := marinecalc.Options{Trials: propertyTrials}
		whole := worked(f, input, o)
		if whole == nil {
			return
		}
		for name, less := range leftOut(input) {
			s := worked(f, less, o)
			if s == nil || !sameInputs(s, whole) || len(whole.Conflicts) > 0 || standsForAnother[f.ID+"/"+name] != "" {
				continue // refused, filled from elsewhere, or a contradiction that is no more
			}
			runs++
			for _, v := range s.Verdicts {
				was := whole.Verdict(v.Limit)
				if was == nil || was.Word == sheet.NotMeasured || v.Word == sheet.NotMeasured || allBut(v.Probability) || allBut(was.Probability) || withdrawn(*was) { // what takes it back stands on its own line, as not measured
					continue
				}
				if severity(v.Word) > severity(was.Word) && !wants(v) && !disagree(v, s) && standsForAnotherAt[f.ID+"/"+name+" "+v.Limit] == "" {
					t.Errorf("%s without %s: %s is %q, and %q with it: %s; with it: %s", f.ID, name, v.Limit, v.Word, was.Word, v.Sentence, was.Sentence)
				}
			}
		}
	})
	if runs < 50 {
		t.Errorf("only %d runs", runs)
	}
	t.Logf("%d runs", runs)
}
