package catalogue_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
	"example.org/driveline/marinecalc/stock"
)

// What is bought, what the verdict says of it and what is advised agree: a size
// is judged beyond only where no size of the list is inside both limits.
func TestPackingBoughtIsPackingAdvised(t *testing.T) {
	usual := func(row, input string) float64 {
		return rules.Standard().Usual("gland-packing").Find(row, nil).Values.Of(input).SI
	}
	bound := map[string]float64{"packing-over": usual("packing-over", "mostOver"), "packing-under": -usual("packing-under", "mostUnder")}
	const noSize = "None of these sizes fits"
	usable, not := 0, 0
	for room := 5.0; room < 13; room += 0.083 {
		s := testboat.Run(t, "gland-packing", fmt.Sprintf(`{"shaftDiameter": "32 mm", "boxBore": "%.6f mm", "boxDepth": "60 mm", "followerDepth": "8 mm", "sizes": "either", "cut": "bevel", "spareRings": 1}`, 32+2*room), marinecalc.Options{NoRanges: true})
		fits := false
		for rest := stock.List(s.Input("stockSections").Text); rest != ""; {
			var size quantity.Length
			size, _, rest = rest.Cut()
			over := float64(size) - room/1000
			fits = fits || over <= bound["packing-over"] && over >= bound["packing-under"]
		}
		if none := s.Result("sectionFit").Text != "can be used"; none == fits || advised(s, noSize) == fits {
			t.Errorf("room of %.3f mm: %s bought, a size fits: %v; said that none does: %v, advised: %+v", room, s.Result("soldAs").Text, fits, none, s.Next)
		}
		if fits {
			usable++
		} else {
			not++
		}
	}
	if usable == 0 || not == 0 {
		t.Errorf("%d rooms with a size, %d without", usable, not)
	}
}

// What is typed as allowed is what is judged, on both sides, and what is chosen by.
func TestPackingIsHeldToWhatIsTyped(t *testing.T) {
	for _, c := range []struct {
		room, over, under, sold string
		thick, thin             string
	}{
		{"8.25 mm", "0.5 mm", "0.4 mm", "8 mm", "within", "within"},
		{"8.25 mm", "0.5 mm", "0.1 mm", "8 mm", "within", "beyond"},
		{"7.6 mm", "0.5 mm", "0.1 mm", "8 mm", "within", "within"},
		{"7.6 mm", "0.1 mm", "0.1 mm", "8 mm", "beyond", "within"},
	} {
		var room float64
		fmt.Sscanf(c.room, "%f mm", &room)
		s := testboat.Run(t, "gland-packing", fmt.Sprintf(`{"shaftDiameter": "32 mm ± 0.001 mm", "boxBore": "%.6f mm ± 0.001 mm", "boxDepth": "60 mm", "followerDepth": "8 mm", "stockSections": "8 mm, 10 mm", "mostOver": "%s", "mostUnder": "%s"}`, 32+2*room, c.over, c.under), marinecalc.Options{})
		thick, thin := string(s.Verdict("packing-over").Word), string(s.Verdict("packing-under").Word)
		if s.Result("soldAs").Text != c.sold || thick != c.thick || thin != c.thin {
			t.Errorf("%+v: %s, %s and %s", c, s.Result("soldAs").Text, thick, thin)
		}
	}
}

// A room of 7 mm has its size in the list of both kinds, as it has in the metric one.
func TestBothKindsHaveEverySize(t *testing.T) {
	sizes := func(pick string) string {
		return ", " + rules.Standard().Table("packing-sections").Find(pick, nil).Values.Of("stockSections").Text + ", "
	}
	for _, kind := range []string{"metric", "inch"} {
		for _, size := range strings.Split(strings.Trim(sizes(kind), ", "), ", ") {
			if !strings.Contains(sizes("either"), ", "+size+", ") {
				t.Errorf("%s is sold as %s, and not as either", size, kind)
			}
		}
	}
}

// The packing bought is one size, and the box may truly be wider or narrower:
// the callipers' accuracy stays in how well it fits.
func TestPackingBoughtStaysTheSame(t *testing.T) {
	s := testboat.Run(t, "gland-packing", `{"shaftDiameter": "32 mm ± 1 mm", "boxBore": "48 mm ± 1 mm", "boxDepth": "60 mm", "followerDepth": "8 mm"}`, marinecalc.Options{})
	if r := s.Result("stockSection"); r.Low != nil {
		t.Errorf("bought: %s", r.Interval)
	}
	if r := s.Result("sectionExcess"); r.Low == nil || *r.High-*r.Low < 1.4e-3 {
		t.Errorf("it fits within %s", r.Interval)
	}
}

// A neck in the shaft is not passed over, and goes on by name.
func TestANeckedShaftIsNotPassedOver(t *testing.T) {
	const box = `{"shaftDiameter": "25 mm", "boxBore": "41 mm", "boxDepth": "48 mm", "followerDepth": "10 mm"`
	s := testboat.Run(t, "gland-packing", box+`, "grooveDiameter": "15 mm"}`, marinecalc.Options{})
	if v := s.Verdict("neck-strength"); v == nil || v.Word == "within" || v.Word == "near the limit" || *s.Result("neckDiameter").SI != 0.015 {
		t.Errorf("%+v", v)
	}
	advises(t, "a neck", s, []string{"Work shaft strength out"}, nil)
	shallow := testboat.Run(t, "gland-packing", box+`, "grooveDiameter": "24.8 mm"}`, marinecalc.Options{})
	if v := shallow.Verdict("neck-strength"); v == nil || v.Word == "beyond" {
		t.Errorf("a shallow one: %+v", v)
	}
	if v := testboat.Run(t, "gland-packing", box+`}`, marinecalc.Options{}).Verdict("neck-strength"); v == nil || v.Word != "not measured" {
		t.Errorf("nobody looked: %+v", v)
	}
	if v := testboat.Run(t, "gland-packing", box+`, "grooveDiameter": "25 mm"}`, marinecalc.Options{}).Verdict("neck-strength"); v == nil || v.Word != "inside the guide" {
		t.Errorf("a smooth one: %+v", v)
	}
}
