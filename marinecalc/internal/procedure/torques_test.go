package procedure_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// Step, passes and torque card have one torque of a joint, and one sentence where it is
// not to be set: by the joint's own sheet, by a maker's torque, by several, and by one for
// another thread or another finish.
func TestStepPassesAndCardHaveOneTorque(t *testing.T) {
	e, err := marinecalc.New()
	if err != nil {
		t.Fatal(err)
	}
	by := func(joint, thread, on, torque string) string {
		return fmt.Sprintf(`{"joint": %q, "thread": %q, "lubrication": %q, "torque": %q, "source": "Leaflet (invented), p. 2"}`, joint, thread, on, torque)
	}
	const bare, whole = `"thread": "M10x1.5"`, `"thread": "M10x1.5", "grade": "iso-8.8", "nut": "plain-nut", "finish": "%s"`
	oiled, dry, paste := fmt.Sprintf(whole, "oiled"), fmt.Sprintf(whole, "zinc-dry"), fmt.Sprintf(whole, "stainless-anti-seize")
	other := func(torque, on, has string) string {
		return "NOT SETTLED: " + torque + " (" + on + "; Leaflet (invented), p. 2), and the boat file has the joint as " + has
	}
	for name, c := range map[string]struct{ bolts, torques, text string }{
		"no sheet, a maker's":          {bare, by("coupling-bolts", "", "", "45 N·m"), "45 N·m"},
		"no sheet, of the diameter":    {bare, by("coupling-bolts", "M10", "", "45 N·m"), "45 N·m"},
		"no sheet, another thread":     {bare, by("coupling-bolts", "M12", "", "80 N·m"), other("80 N·m", "M12", "M10x1.5")},
		"a sheet and a maker's":        {oiled, by("coupling-bolts", "", "", "35 N·m"), "35 N·m"},
		"two, one of the diameter":     {oiled, by("coupling-bolts", "M10", "", "35 N·m") + "," + by("coupling-bolts", "M12", "", "80 N·m"), "35 N·m"},
		"word for word goes first":     {oiled, by("coupling-bolts", "", "as supplied", "45 N·m") + "," + by("coupling-bolts", "", "oiled", "35 N·m"), "35 N·m"},
		"no sheet, no maker's":         {bare, "", ""},
		"dry on oiled":                 {oiled, by("coupling-bolts", "M10", "dry", "45 N·m"), other("45 N·m", "M10; dry", "M10x1.5, oiled")},
		"lightly oiled on oiled":       {oiled, by("coupling-bolts", "", "Lightly oiled", "35 N·m"), "35 N·m"},
		"engine oil on oiled":          {oiled, by("coupling-bolts", "", "engine oil", "35 N·m"), "35 N·m"},
		"as supplied on oiled":         {oiled, by("coupling-bolts", "", "as supplied", "35 N·m"), "35 N·m"},
		"as supplied on paste":         {paste, by("coupling-bolts", "", "as supplied", "35 N·m"), other("35 N·m", "as supplied", "M10x1.5, with paste or grease")},
		"no oil on dry":                {dry, by("coupling-bolts", "", "no oil", "45 N·m"), "45 N·m"},
		"no oil on oiled":              {oiled, by("coupling-bolts", "", "no oil", "45 N·m"), other("45 N·m", "no oil", "M10x1.5, oiled")},
		"moly grease on paste":         {paste, by("coupling-bolts", "", "MoS2 grease", "35 N·m"), "35 N·m"},
		"moly grease on dry":           {dry, by("coupling-bolts", "", "MoS2 grease", "35 N·m"), other("35 N·m", "MoS2 grease", "M10x1.5, dry")},
		"words that are not known":     {oiled, by("coupling-bolts", "", "medium locker", "35 N·m"), "35 N·m"},
		"of two the one of this kind":  {oiled, by("coupling-bolts", "", "dry", "45 N·m") + "," + by("coupling-bolts", "", "light oil", "35 N·m"), "35 N·m"},
		"two, and nothing picks":       {bare, by("coupling-bolts", "", "dry", "45 N·m") + "," + by("coupling-bolts", "", "oiled", "35 N·m"), "NOT SETTLED: 45 N·m (dry; Leaflet (invented), p. 2) or 35 N·m (oiled; Leaflet (invented), p. 2)"},
		"more than the bolt can stand": {oiled, by("coupling-bolts", "", "", "200 N·m"), "NOT SETTLED: 200 N·m given, this bolt can break from *"},
	} {
		t.Run(name, func(t *testing.T) {
			b := testboat.Read(t, `{"name": "Dunlin", "units": "metric", "coupling": {"boltCount": 4, "bolts": {`+c.bolts+`}}, "torques": [`+c.torques+`]}`)
			card, err := e.TorqueCard(context.Background(), b, marinecalc.Options{NoRanges: true})
			if err != nil {
				t.Fatal(err)
			}
			onCard := card.Joints[0].Stands()
			s := stepNamed(t, made(t, b, marinecalc.Options{NoRanges: true}, "tighten-coupling-bolts"), "tighten-coupling-bolts")
			f := s.Figures[slices.IndexFunc(s.Figures, func(f marinecalc.StepFigure) bool { return f.Of == "bolt-preload/wrenchSetting" })]
			start, open := strings.CutSuffix(c.text, "*")
			text, by := f.Text, ""
			if f.Maker != nil {
				text, by = f.Maker.Text, f.Maker.Source
			}
			if text != onCard || text != c.text && (!open || !strings.HasPrefix(text, start)) {
				t.Errorf("the step has %q, the card %q, want %q", text, onCard, c.text)
			}
			last, why := "", strings.TrimPrefix(c.text, "NOT SETTLED: ")
			if n := len(s.Tightening.Passes); n > 0 {
				last = s.Tightening.Passes[n-1]
			}
			switch {
			case why != c.text:
				if last != "" || !strings.Contains(s.Tightening.Text, "The torque is not settled: "+strings.TrimSuffix(why, "*")) || !strings.Contains(f.Sentence, "before a wrench goes on") {
					t.Errorf("%+v, %+v", s.Tightening, f)
				}
			case c.text == "":
				if last != "" || !strings.Contains(s.Tightening.Text, "not known") {
					t.Errorf("%+v", s.Tightening)
				}
			case last != c.text || len(s.Tightening.Passes) != 3 || !strings.Contains(s.Tightening.Text, "The torque is the maker's") || !strings.Contains(by, "Leaflet"):
				t.Errorf("%+v, %+v", s.Tightening, f)
			}
		})
	}
}
