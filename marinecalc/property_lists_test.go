package marinecalc_test

import (
	"maps"
	"slices"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// emptyMeans are the columns of a list, or a limit that such a column bears on,
// which are no silence where they are left empty.
var emptyMeans = map[string]string{
	"alignment-change/dialBefore/rim":     oneLess,
	"alignment-change/dialNow/rim":        oneLess,
	"mount-load/mounts/inclination":       "a mount stands upright unless its lean is given",
	"mount-load/mounts/stiffness":         usualMount,
	"mount-moves/mounts/travelUp":         "taken as enough, as its help says; the nut itself tells",
	"mount-load/mounts/deflectionNew":     usualMount,
	"mount-load/mounts/deflectionNow":     usualMount,
	"mount-load/mounts/stiffnessSideways": usualMount,
	"mount-load/mounts/stiffnessAlong":    usualMount,
}

const (
	oneLess    = "of the readings left none contradicts the others"
	usualMount = "how stiff a mount is follows from its other figures, or from what is usual; how it has settled does not"
)

// silentIsNoOK are the limits to which these reasons do not go.
var silentIsNoOK = []string{"mount-settled", "mount-rose"}

// entryWith is the input with one column of one entry of a list written anew, or
// left out where write gives nil; nil where there is no number.
func entryWith(input map[string]any, p, part *contract.Property, i int, write func(si float64) any) map[string]any {
	list, _ := input[p.Name].([]any)
	entry, _ := list[i].(map[string]any)
	si, ok := numberOf(part, entry[part.Name])
	if !ok {
		return nil
	}
	one, anew, out := maps.Clone(entry), slices.Clone(list), maps.Clone(input)
	if v := write(si); v != nil {
		one[part.Name] = v
	} else {
		delete(one, part.Name)
	}
	anew[i] = one
	out[p.Name] = anew
	return out
}

// What was not read at one of several, as the load that the maker of one mount
// allows, could be anything: where some figure there would be over a limit, no
// verdict is OK without it.
func TestAnEntryThatWasNotReadIsNoOK(t *testing.T) {
	alone(t)
	held := 0
	eachInput(t, func(f *binding.Form, input map[string]any) {
		o := marinecalc.Options{NoRanges: true}
		eachNumber(f, func(name string, p, part *contract.Property) {
			list, _ := input[p.Name].([]any)
			if part == nil || len(list) < 2 {
				return
			}
			for i := range list {
				without := entryWith(input, p, part, i, func(float64) any { return nil })
				if without == nil {
					continue
				}
				less := worked(f, without, o)
				if less == nil {
					continue // refused
				}
				for _, by := range []float64{0.02, 0.2, 5, 50} {
					s := worked(f, entryWith(input, p, part, i, func(si float64) any { return si * by }), o)
					if s == nil {
						continue
					}
					for _, v := range s.Verdicts {
						silent := less.Verdict(v.Limit)
						if v.Word.Plain() != sheet.Beyond || silent == nil || emptyMeans[name] != "" && !slices.Contains(silentIsNoOK, v.Limit) {
							continue
						}
						held++
						if severity(silent.Word) > severity(sheet.CannotTell) && silent.Word != sheet.NotMeasured {
							t.Errorf("%s of entry %d left out: %s; by %g: %s", name, i, silent.Sentence, by, v.Sentence)
						}
					}
				}
			}
		})
	})
	if held < 20 {
		t.Errorf("only %d verdicts", held)
	}
	t.Logf("%d verdicts", held)
}
