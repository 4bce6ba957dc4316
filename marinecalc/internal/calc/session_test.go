package calc_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/catalogue"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

func session(t *testing.T, o calc.Options) *calc.Session {
	t.Helper()
	s, err := o.Session(t.Context(), catalogue.Calculations)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestOptionsAreRefusedAtTheirPlace(t *testing.T) {
	for _, o := range []calc.Options{{Trials: spread.MinTrials - 1}, {Trials: 1}, {Trials: -1}, {Trials: calc.MaxTrials + 1}} {
		_, err := o.Session(t.Context(), nil)
		parttest.RefusedAt(t, err, "/trials")
	}
	for trials, large := range map[int]bool{-1: false, spread.MinTrials - 1: false, calc.MaxTrials + 1: true} {
		if _, err := (calc.Options{Trials: trials}).Session(t.Context(), nil); errors.Is(err, problem.ErrTooLarge) != large {
			t.Errorf("%d trials: %v", trials, err)
		}
	}
	for _, trials := range []int{0, spread.MinTrials, calc.MaxTrials} {
		session(t, calc.Options{Trials: trials})
	}
	_, err := calc.Options{Units: "imperial"}.Session(t.Context(), nil)
	parttest.RefusedAt(t, err, "/units")
}

// The units asked for go before those of the boat, and these before metric.
func TestUnitsOfTheSession(t *testing.T) {
	b := testboat.Read(t, `{"name": "Test", "units": "us"}`)
	for _, c := range []struct {
		o    calc.Options
		want quantity.System
	}{
		{calc.Options{}, quantity.Metric}, {calc.Options{Boat: b}, quantity.US}, {calc.Options{Boat: b, Units: "both"}, quantity.Both},
	} {
		if got := session(t, c.o).Units; got != c.want {
			t.Errorf("%q: %v, want %v", c.o.Units, got, c.want)
		}
	}
}

// An earlier result is worked out once, and there is none where the boat does
// not allow it.
func TestEarlierIsWorkedOutOnce(t *testing.T) {
	s := session(t, calc.Options{Boat: testboat.Demo(t, "kittiwake"), NoRanges: true})
	if first := s.Earlier("shaft-torque"); first == nil || s.Earlier("shaft-torque") != first {
		t.Errorf("got %v", first)
	}
	if out := s.Earlier("no-such"); out != nil {
		t.Errorf("what is not there gave %v", out)
	}
	bare := session(t, calc.Options{Boat: testboat.Read(t, `{"name": "Bare"}`), NoRanges: true})
	if out := bare.Earlier("shaft-torque"); out != nil {
		t.Errorf("a bare boat gave %v", out)
	}
}

func TestTheClosestCalculationIsNamed(t *testing.T) {
	_, err := calc.Find(catalogue.Calculations, "shaft-tork")
	parttest.RefusedAt(t, err, "/calculation")
	if list := problem.Of(err); !strings.Contains(list[0].Hint, `"shaft-torque"`) {
		t.Errorf("%+v", list)
	}
}

func TestPropertiesByTheirPath(t *testing.T) {
	s := session(t, calc.Options{})
	if p := s.Property("shaft-torque/peakTorque"); p == nil || !p.IsResult {
		t.Errorf("a result: %+v", p)
	}
	if p := s.Property("shaft-torque/enginePower"); p == nil || p.IsResult {
		t.Errorf("an input: %+v", p)
	}
	for _, of := range []string{"shaft-torque/no-such", "no-such/enginePower", "shaft-torque", ""} {
		if p := s.Property(of); p != nil {
			t.Errorf("%q is %s", of, p.Path)
		}
	}
}
