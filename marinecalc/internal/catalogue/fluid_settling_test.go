package catalogue_test

import (
	"fmt"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// The reference's negative test: a particle of 0.5 mm in water lies outside
// Stokes's law, and the sheet says so; one of 10 µm gets no such verdict.
func TestStokesOutOfReachIsSaid(t *testing.T) {
	const water = `{"standingTime":"1 h","sumpDepth":"100 mm","dipDepth":"20 mm","metalDensity":2500,"fluidDensity":997,"fluidTemperature":"25 °C","fluidViscosity":8.927e-7,"particleSize":%q}`
	if v := testboat.RunOn(t, "", "fluid-settling", fmt.Sprintf(water, "0.5 mm")).Verdict("stokes-law"); v == nil || v.Word != "beyond" {
		t.Errorf("%+v", v)
	}
	if v := testboat.RunOn(t, "", "fluid-settling", fmt.Sprintf(water, "10 µm")).Verdict("stokes-law"); v != nil {
		t.Errorf("%+v", v)
	}
}

// Sizes of one's own replace those of the rule data.
func TestOwnSizes(t *testing.T) {
	s := testboat.RunOn(t, "", "fluid-settling", `{"standingTime":"1 h","sumpDepth":"100 mm","dipDepth":"20 mm","fluid":"iso-vg-32","sizes":[{"name":"mesh","size":"25 µm"}]}`)
	if c := s.Cell("bySize", 0, "name"); c == nil || c.Text != "mesh" || s.Cell("bySize", 1, "name") != nil {
		t.Errorf("%+v", c)
	}
}
