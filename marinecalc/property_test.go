package marinecalc_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// What must hold of every verdict of every calculation, whatever its input:
// tried on the examples of the schemas and on random inputs, one input at a
// time.

const propertyTrials = 256

// worked is the sheet of an input, or nil where it is refused.
func worked(f *binding.Form, input map[string]any, o marinecalc.Options) *marinecalc.Sheet {
	text, err := json.Marshal(input)
	if err != nil {
		return nil
	}
	o.Brief = true
	s, err := marinecalc.Run(f.ID, text, o)
	if err != nil {
		return nil
	}
	return s
}

// numberOf is an input as a number in SI, where it is one with a unit.
func numberOf(p *contract.Property, v any) (si float64, ok bool) {
	if p == nil || p.Kind == nil || p.Kind.Name == "money" {
		return 0, false
	}
	switch v := v.(type) {
	case string:
		r, err := p.Kind.Parse(v)
		return r.SI, err == nil
	case json.Number:
		f, err := v.Float64()
		return f, err == nil
	case float64:
		return v, true
	}
	return 0, false
}

// put is the input with one of its numbers, or one column of one of its lists,
// written anew; nil where there is none.
func put(input map[string]any, p, part *contract.Property, write func(p *contract.Property, si float64) any) map[string]any {
	out := maps.Clone(input)
	if part == nil {
		si, ok := numberOf(p, input[p.Name])
		if !ok {
			return nil
		}
		out[p.Name] = write(p, si)
		return out
	}
	list, _ := input[p.Name].([]any)
	anew, written := make([]any, len(list)), false
	for i, item := range list {
		entry, _ := item.(map[string]any)
		one := maps.Clone(entry)
		if si, ok := numberOf(part, entry[part.Name]); ok {
			one[part.Name], written = write(part, si), true
		}
		anew[i] = one
	}
	if out[p.Name] = anew; !written {
		return nil
	}
	return out
}

// eachNumber calls with every input of a number, and every column of numbers
// in a list.
func eachNumber(f *binding.Form, with func(name string, p, part *contract.Property)) {
	for _, p := range f.Input.Properties {
		with(f.ID+"/"+p.Name, p, nil)
		if p.Items != nil {
			for _, part := range p.Items.Properties {
				with(f.ID+"/"+p.Name+"/"+part.Name, p, part)
			}
		}
	}
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', 17, 64) }

// plusMinus writes a number with an accuracy.
func plusMinus(share float64) func(p *contract.Property, si float64) any {
	return func(p *contract.Property, si float64) any {
		a := math.Abs(si) * share
		if si == 0 {
			a = share * 1e-3
		}
		unit := p.Kind.SIUnit()
		return number(si) + " " + unit + " ± " + number(a) + " " + unit
	}
}

// sure tells whether a word tells something.
func sure(w sheet.Word) bool {
	w = w.Plain()
	return w != sheet.CannotTell && w != sheet.NotMeasured
}

// allBut tells whether a probability is so near those from which on a word is
// given that the draw of the trials decides.
func allBut(p *float64) bool {
	return p != nil && (*p > 0.96 && *p < 0.99 || *p > 0.01 && *p < 0.04)
}

// accuracies are those that are tried, each wider than the one before.
var accuracies = [...]float64{0.03, 0.3, 1.2, 3}

// widestPasses are the inputs of which accuracies beyond the value itself are left
// out: they spread the trials past the place that hurts, so that fewer of them lie
// there than at a narrower one.
var widestPasses = map[string]string{
	"bearing-clearance/secondPull":    "two pulls that are nearly alike lead anywhere",
	"mount-moves/mounts/threadPitch":  "a nut turned on a pitch several times the true one moves the foot out of reach, and the trial is none",
	"mount-load/mounts/deflectionNow": softer,
	"mount-load/mounts/forward":       "most feet lie far from the engine then, where they hold it stiffly against pitch",
	"thread-engagement/preload":       "a clamp is at least nothing: most lie far above what was read",
	"shaft-whirl/bearings/length":     "a bearing is at least as long as nothing: most are far longer than what was read",
	"shaft-whirl/propellerAt":         "at least at the last bearing: most propellers hang far behind where this one was read",
}

const softer = "a deflection is at least nothing: most mounts are far softer than what was read, and isolate the better"

// ofTheGauge are the limits on what a gauge can show by itself: a coarser one
// explains more, and a change that it explains is not told as one.
var ofTheGauge = []string{"coupling-stands"}

// A wider accuracy never makes a verdict surer. A verdict that was all but told
// may come to be told by the draw of the trials. An input of which the verdicts
// are the same to the last digit at the least and at the widest accuracy is none
// that they rest on, and is not tried between.
func TestAWiderAccuracyNeverMakesAVerdictSurer(t *testing.T) {
	var runs atomic.Int64
	eachCalculation(t, func(t *testing.T, f *binding.Form, input map[string]any) {
		eachNumber(f, func(name string, p, part *contract.Property) {
			var sheets [len(accuracies)]*marinecalc.Sheet
			at := func(i int) *marinecalc.Sheet {
				wide := put(input, p, part, plusMinus(accuracies[i]))
				if wide == nil {
					return nil
				}
				runs.Add(1)
				return worked(f, wide, marinecalc.Options{Trials: propertyTrials})
			}
			last := len(accuracies) - 1
			for widestPasses[name] != "" && accuracies[last] > 1 {
				last--
			}
			if sheets[0], sheets[last] = at(0), at(last); sheets[0] != nil && sheets[last] != nil && sameVerdicts(sheets[0], sheets[last]) {
				return
			}
			for i := 1; i < last; i++ {
				sheets[i] = at(i)
			}
			unsure := map[string]float64{} // by limit, the accuracy at which it was not told
			for i, s := range sheets[:last+1] {
				if s == nil {
					continue // an accuracy beyond what is taken
				}
				for _, v := range s.Verdicts {
					if slices.Contains(ofTheGauge, v.Limit) {
						continue
					}
					at, was := unsure[v.Limit]
					if was && sure(v.Word) && !allBut(v.Probability) {
						t.Errorf("%s ± %g %%: %s is %q, and was not told at ± %g %%: %s", name, 100*accuracies[i], v.Limit, v.Word, 100*at, v.Sentence)
					}
					told := v.Probability != nil && (*v.Probability < 0.01 || *v.Probability > 0.99)                // and only the reading itself, off its trials, keeps it from being said
					if !sure(v.Word) && !allBut(v.Probability) && !told && len(s.Conflicts) == 0 && !withdrawn(v) { // which a wider accuracy can explain away
						unsure[v.Limit] = accuracies[i]
					}
				}
			}
		})
	})
	t.Cleanup(func() { // when all calculations are through
		if runs.Load() < 1000 {
			t.Errorf("only %d runs", runs.Load())
		}
		t.Logf("%d runs", runs.Load())
	})
}

// sameVerdicts tells whether two sheets judge alike, to the last digit of every
// probability.
func sameVerdicts(a, b *marinecalc.Sheet) bool {
	return len(a.Conflicts) == len(b.Conflicts) && slices.EqualFunc(a.Verdicts, b.Verdicts, func(v, w sheet.Verdict) bool {
		return v.Limit == w.Limit && v.Word == w.Word && (v.Probability == nil) == (w.Probability == nil) && (v.Probability == nil || *v.Probability == *w.Probability)
	})
}

// severity orders what a verdict says, the gravest first; what is not measured
// is not judged.
func severity(w sheet.Word) int {
	return map[sheet.Word]int{sheet.Beyond: 0, sheet.CannotTell: 1, sheet.NearLimit: 2, sheet.Within: 3}[w.Plain()]
}

// A limit that is moved toward the value, and past it, makes no verdict milder:
// it is moved by a maker's figure.
func TestALimitThatIsNearerNeverMakesAVerdictMilder(t *testing.T) {
	alone(t)
	moved := 0
	eachInput(t, func(f *binding.Form, input map[string]any) {
		whole := worked(f, input, marinecalc.Options{Trials: propertyTrials})
		if whole == nil {
			return
		}
		for _, v := range whole.Verdicts {
			if v.SI == nil || v.BoundSI == nil || *v.SI == 0 || v.Word == sheet.NotMeasured {
				continue
			}
			last, word := -1, sheet.Word("")
			for _, away := range []float64{0.9, 0.5, 0.2, 0.05, 0, -0.05, -0.2, -0.5, -0.9} {
				figure := *v.SI + away*math.Abs(*v.SI)
				if v.Side == sheet.AtLeast {
					figure = *v.SI - away*math.Abs(*v.SI)
				}
				b := testboat.Read(t, fmt.Sprintf(`{"name": "T", "makersFigures": [{"of": %q, "value": %s, "source": {"document": "D"}}]}`, v.Limit, number(figure)))
				s := worked(f, input, marinecalc.Options{Trials: propertyTrials, Boat: b})
				if s == nil || s.Verdict(v.Limit) == nil || s.Verdict(v.Limit).Replaced == nil {
					break // a chance, which has no figure
				}
				moved++
				is := s.Verdict(v.Limit)
				if now := severity(is.Word); last >= 0 && now > last {
					t.Errorf("%s, %s: %q after %q as the limit came nearer: %s", f.ID, v.Limit, is.Word, word, is.Sentence)
				} else {
					last, word = now, is.Word
				}
			}
		}
	})
	if moved < 200 {
		t.Errorf("only %d limits were moved", moved)
	}
	t.Logf("%d moved", moved)
}

// Of two inputs without ranges that which lies nearer its limit, or further
// past it, is judged no milder.
func TestAValueThatIsNearerNeverMakesAVerdictMilder(t *testing.T) {
	alone(t)
	pairs := 0
	eachInput(t, func(f *binding.Form, input map[string]any) {
		o := marinecalc.Options{NoRanges: true}
		whole := worked(f, input, o)
		eachNumber(f, func(name string, p, part *contract.Property) {
			for _, by := range []float64{0.8, 0.95, 1.05, 1.25} {
				other := put(input, p, part, func(_ *contract.Property, si float64) any { return si * by })
				if other == nil {
					return
				}
				s := worked(f, other, o)
				if s == nil {
					continue
				}
				for _, v := range s.Verdicts {
					was := whole.Verdict(v.Limit)
					if was == nil || v.SI == nil || was.SI == nil || v.BoundSI == nil || was.BoundSI == nil || *v.BoundSI != *was.BoundSI ||
						v.Word == sheet.NotMeasured || was.Word == sheet.NotMeasured || v.Over != was.Over || len(v.Awaits)+len(was.Awaits)+len(s.Conflicts)+len(whole.Conflicts) > 0 ||
						withdrawn(v) || withdrawn(*was) {
						continue
					}
					pairs++
					step := *v.SI - *was.SI
					if v.Side == sheet.AtLeast {
						step = -step
					}
					toward, turned := step > 0, severity(v.Word)-severity(was.Word)
					if step != 0 && (toward && turned > 0 || !toward && turned < 0) {
						t.Errorf("%s by %g: %s is %q at %g, and %q at %g", name, by, v.Limit, v.Word, *v.SI, was.Word, *was.SI)
					}
				}
			}
		})
	})
	if pairs < 500 {
		t.Errorf("only %d pairs", pairs)
	}
	t.Logf("%d pairs", pairs)
}

// An input in US units, shown in US units, gives what it gives in metric ones.
func TestMetricAndUSAgree(t *testing.T) {
	held := 0
	eachInput(t, func(f *binding.Form, input map[string]any) {
		metric, us := input, input
		eachNumber(f, func(_ string, p, part *contract.Property) {
			in := func(system int) func(p *contract.Property, si float64) any {
				return func(p *contract.Property, si float64) any {
					v, ok := p.Kind.Convert(si, p.Units[system])
					if !ok || p.Units[system] == "" || p.Kind.Name == "direction" {
						return si
					}
					return number(v) + " " + p.Units[system]
				}
			}
			if m, u := put(metric, p, part, in(0)), put(us, p, part, in(1)); m != nil && u != nil {
				metric, us = m, u
			}
		})
		o := marinecalc.Options{Trials: propertyTrials, Units: "metric"}
		a := worked(f, metric, o)
		o.Units = "us"
		b := worked(f, us, o)
		if a == nil || b == nil {
			if (a == nil) != (b == nil) {
				t.Errorf("%s: one of %v and %v is refused", f.ID, metric, us)
			}
			return
		}
		held++
		alike, nothing := 1e-9, 1e-15
		if f.ID == "shaft-whirl" {
			// Its modes are found by rounds until 1/ω² changes by less than 1e-7
			// (settled in shaft/beam.go). A length that differs in its last bit may
			// take a round more, and a margin is what is left of two speeds.
			alike, nothing = 2e-7, 2e-7
		}
		same := func(what string, x, y *float64, by float64) {
			t.Helper()
			switch {
			case x == nil && y == nil:
			case x == nil || y == nil:
				t.Errorf("%s, %s: told in metric units %v, in US ones %v", f.ID, what, x != nil, y != nil)
			case math.Abs(*x-*y) > by*math.Max(math.Abs(*x), math.Abs(*y))+nothing:
				t.Errorf("%s, %s: %v in metric units, %v in US ones", f.ID, what, *x, *y)
			}
		}
		for i := range a.Results {
			if i < len(b.Results) && a.Results[i].Name == b.Results[i].Name {
				by := alike
				if a.Results[i].Name == "greatestDeflectionAt" {
					by = 1e-4 // where a flat curve is highest goes by the root of how far its height has settled
				}
				same(a.Results[i].Name, a.Results[i].SI, b.Results[i].SI, by)
			} else {
				t.Errorf("%s: %s is a result of one alone", f.ID, a.Results[i].Name)
			}
		}
		for _, v := range a.Verdicts {
			w := b.Verdict(v.Limit)
			if w == nil || w.Word != v.Word {
				t.Errorf("%s, %s: %q in metric units, and in US ones %+v", f.ID, v.Limit, v.Word, w)
				continue
			}
			same(v.Limit, v.BoundSI, w.BoundSI, alike)
		}
	})
	if held < 50 {
		t.Errorf("only %d inputs", held)
	}
	t.Logf("%d inputs", held)
}

// withdrawn says whether another limit that is over takes a verdict back: a
// reading that cannot be, a clamp that breaks its bolt.
func withdrawn(v sheet.Verdict) bool {
	return strings.Contains(v.Sentence, "only once this is put right")
}
