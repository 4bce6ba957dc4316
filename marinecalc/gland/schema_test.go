package gland

import (
	"reflect"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/problem"
)

// What the schema allows, Heat takes; just beyond it Heat refuses, naming the
// place. Optional readings are tried with the rest of the gland around them.
func TestRangesAgreeWithSchema(t *testing.T) {
	k, err := contract.OpenCalculation("gland-heat")
	if err != nil {
		t.Fatal(err)
	}
	tried := 0
	for _, p := range k.Input.Properties {
		name := p.Name
		if p.Kind == nil {
			continue
		}
		if p.Minimum == nil || p.Maximum == nil {
			t.Errorf("%s has no range", name)
			continue
		}
		beyond := 0.02 * (*p.Maximum - *p.Minimum)
		if strings.HasPrefix(name, "drip") {
			beyond = max(beyond, 1.01*noneBelow)
		}
		for _, c := range []struct {
			value   float64
			refused bool
		}{{*p.Minimum, false}, {*p.Maximum, false}, {*p.Minimum - beyond, true}, {*p.Maximum + beyond, true}} {
			if c.value == 0 && name == "wantedRise" {
				continue
			}
			in := sloop()
			field := reflect.ValueOf(&in).Elem().FieldByName(strings.ToUpper(name[:1]) + name[1:])
			field.SetFloat(c.value)
			_, err := Heat(in)
			list := problem.Of(err)
			blamed := false
			for _, one := range list {
				// A shaft or box at the end of its range does not fit the other, and a
				// gland is not colder than its water: those have words of their own.
				if one.Where == "/"+name && strings.Contains(one.What, "out of range") {
					blamed = true
				}
			}
			if blamed != c.refused {
				t.Errorf("%s = %g: %v", name, c.value, err)
			}
			tried++
		}
	}
	if tried < 60 {
		t.Errorf("only %d cases were tried", tried)
	}
}

func TestHeatNamesEveryFault(t *testing.T) {
	in := sloop()
	in.ShaftDiameter, in.Salinity, in.GlandStress, in.DripRate = 25, 35, -1, -2
	_, err := Heat(in)
	list := problem.Of(err)
	if len(list) != 4 {
		t.Fatalf("%v, want four problems", err)
	}
	for _, p := range list {
		if p.Allowed == "" {
			t.Errorf("%v does not say what is allowed", p)
		}
	}
}

func TestHeatRefusesWhatCannotBe(t *testing.T) {
	in := sloop()
	in.BoxBore = in.ShaftDiameter + 0.001
	if _, err := Heat(in); err == nil || !strings.Contains(err.Error(), "/boxBore") {
		t.Errorf("half a millimetre of packing: %v", err)
	}
	in = sloop()
	in.MeasuredGlandTemperature = in.WaterTemperature - 8
	if _, err := Heat(in); err == nil || !strings.Contains(err.Error(), "/measuredGlandTemperature") {
		t.Errorf("a gland colder than its water: %v", err)
	}
	in.AirTemperature = in.WaterTemperature - 12
	if _, err := Heat(in); err != nil {
		t.Errorf("a gland between cold air and warmer water: %v", err)
	}
}

func TestCodesHaveTheirWords(t *testing.T) {
	parttest.SameCodes(t, "gland-heat", "whatHoldsIt", HeldByDrips, HeldByMetal, HeldByNone)
	parttest.SameCodes(t, "gland-heat", "dripState", DripsNone, DripsSteady, DripsLeak)
	parttest.SameCodes(t, "gland-packing", "sectionFit", Fits, TooThick, TooThin)
}
