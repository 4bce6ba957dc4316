package rules_test

import (
	"math"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/rules"
)

func TestOverlayReplacesAndAdds(t *testing.T) {
	book := testboat.Overlay(t, `{"table": "bolt-grades", "title": "Yard steel", "rows": [
		{"id": "yard-special", "name": "Yard special", "values": {"proofStrength": "600 MPa", "yieldStrength": "700 MPa"}, "source": {"document": "Yard certificate 12"}, "basis": "maker"}]}`)
	s := testboat.Run(t, "bolt-preload", `{"thread": "M10x1.5", "grade": "yard-special", "finish": "oiled"}`, marinecalc.Options{Rules: book, NoRanges: true})
	if in := s.Input("proofStrength"); math.Abs(*in.SI-600e6) > 1 || in.Source != "Yard certificate 12" {
		t.Errorf("got %+v", in)
	}
	if rules.Standard().Table("bolt-grades").Find("yard-special", func(string) (float64, string, bool) { return 0, "", false }) != nil {
		t.Error("the standard rules were changed")
	}
	if !strings.Contains(strings.Join(s.Notes, " "), "Yard steel") {
		t.Errorf("the notes do not name the overlay: %v", s.Notes)
	}
}

// A row without a source does not load, and each fault is named.
func TestRowsWithoutSourceDoNotLoad(t *testing.T) {
	cases := []struct{ name, file, what string }{
		{"no source", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {}, "basis": "maker"}]}`, `source is missing; allowed: an object; for example {"document"`},
		{"no basis", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {}, "source": {"document": "D"}}]}`, "basis"},
		{"a column too many", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {"colour": "red"}, "source": {"document": "D"}, "basis": "maker"}]}`, "columns"},
		{"a unit of another kind", `{"table": "bolt-grades", "rows": [{"id": "x", "values": {"proofStrength": "5 kg"}, "source": {"document": "D"}, "basis": "maker"}]}`, "proofStrength"},
		{"limits the wrong way round", `{"table": "thread-finishes", "rows": [{"id": "x", "values": {"nutFactor": {"low": 0.3, "typical": 0.2, "high": 0.4, "shape": "triangular"}}, "source": {"document": "D"}, "basis": "maker"}]}`, "order"},
		{"no side", `{"limits": [{"id": "x", "calculation": "gland-heat", "on": "measuredRise", "title": "T", "source": {"document": "D"}, "basis": "maker"}]}`, "max or min"},
		{"no table", `{"rows": [{"id": "x", "values": {}, "source": {"document": "D"}, "basis": "maker"}]}`, "no table"},
		{"no JSON", `{`, "cannot be read"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := marinecalc.Overlay([]byte(c.file))
			if err == nil || !strings.Contains(err.Error(), c.what) {
				t.Errorf("got %v", err)
			}
		})
	}
}
