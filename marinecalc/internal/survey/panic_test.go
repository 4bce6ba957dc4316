package survey_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/binding"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/survey"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/torque"
)

// instead puts another calculation in the place of the one of its id for a test.
func instead(t *testing.T, c calc.Calculation) {
	t.Helper()
	all := catalogue.Calculations
	t.Cleanup(func() { catalogue.Calculations = all })
	catalogue.Calculations = slices.Clone(all)
	at := slices.IndexFunc(all, func(o calc.Calculation) bool { return o.ID == c.ID })
	catalogue.Calculations[at] = c
}

// A calculation that panics, at once or in a trial, on whatever goroutine, is one that
// failed and says so by its name: the process lives, and sheets that need nothing of it
// stand as they did.
func TestAPanicIsAProblemOfItsCalculation(t *testing.T) {
	b := testboat.Demo(t, "kittiwake")
	sound := testboat.Check(t, b, marinecalc.Options{Trials: 128})
	for name, after := range map[string]int64{"at once": 0, "in a trial": 20} {
		t.Run(name, func(t *testing.T) {
			var runs atomic.Int64
			instead(t, calc.Bind("shaft-torque", func(in torque.ShaftInput) (torque.ShaftResult, error) {
				if runs.Add(1) > after {
					var none []int
					_ = none[len(none)]
				}
				return torque.Shaft(in)
			}))
			s := testboat.Check(t, b, marinecalc.Options{Trials: 128})
			at := slices.IndexFunc(s.Faults, func(f survey.Fault) bool { return f.Calculation == "shaft-torque" })
			if at < 0 || s.Faults[at].Problems[0].Kind != "failed" || !strings.Contains(s.Faults[at].Problems[0].What, "in shaft-torque: runtime error: index out of range") {
				t.Errorf("%+v", s.Faults)
			}
			for _, id := range []string{"wear-debris", "gland-packing", "mount-load", "bolt-fit"} {
				one := func(s *marinecalc.Survey) int {
					return slices.IndexFunc(s.Sheets, func(o *marinecalc.Sheet) bool { return o.Calculation == id })
				}
				if one(sound) < 0 || one(s) < 0 {
					t.Errorf("there is no sheet of %s: %d, %d", id, one(sound), one(s))
				}
			}
			runs.Store(0)
			_, err := marinecalc.Run("shaft-torque", nil, marinecalc.Options{Boat: b})
			if !errors.Is(err, marinecalc.ErrFailed) {
				t.Errorf("run alone: %v", err)
			}
		})
	}
}

// A request in which anything else panics is answered too.
func TestCallAnswersWhateverPanics(t *testing.T) {
	instead(t, calc.Calculation{ID: "shaft-torque", Form: func() (*binding.Form, error) { panic("no form") }})
	e, _ := marinecalc.New()
	reply := string(e.Call(context.Background(), []byte(`{"ask": "form", "calculation": "shaft-torque"}`)))
	if !strings.HasPrefix(reply, `{"ok":false`) || !strings.Contains(reply, `"kind":"failed"`) || !strings.Contains(reply, "no form") {
		t.Error(reply)
	}
}
