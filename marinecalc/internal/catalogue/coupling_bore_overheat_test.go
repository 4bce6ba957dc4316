package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A fit that splits its boss, or that the flange would have to be overheated for, is
// not told how to be put on. An iron boss of 75 mm on 40 mm takes 0.15 mm at 222 % of
// its yield strength and would slip on at 470 °C; of steel 0.01 mm go on at about
// 130 °C and the boss bears them.
func TestNoAdviceToPutOnAFitThatSplitsOrOverheats(t *testing.T) {
	for _, c := range []struct {
		metal, interference string
		boss, heat          sheet.Word
		on                  bool
		says                []string
	}{
		{"grey-iron", "0.15 mm", sheet.Beyond, sheet.Beyond, false, []string{"Do not press or shrink it on: this fit strains the boss", "Do not warm it so far"}},
		{"mild-steel", "0.05 mm", sheet.CannotTell, sheet.CannotTell, false, []string{"before it is known that the boss bears it", "Do not warm it before"}},
		{"mild-steel", "0.01 mm ± 1 µm", sheet.Within, sheet.Within, true, []string{"not in a bath of oil"}},
	} {
		s := testboat.Run(t, "coupling-bore", `{"holdMethod": "interference", "shaftDiameter": "40 mm", "engagedLength": "60 mm", "hubDiameter": "75 mm", "hubMetal": "`+c.metal+`",
			"surfaces": "steel-oily", "shaftTorque": "400 N·m", "asternTorque": "350 N·m", "peakTorque": "800 N·m", "thrust": "5 kN", "keyed": "no", "shaftAlloy": "s31600-annealed", "interference": "`+c.interference+`"}`, marinecalc.Options{})
		if boss, heat := s.Verdict("bore-boss-yields").Word.Plain(), s.Verdict("bore-heat").Word.Plain(); boss != c.boss || heat != c.heat {
			t.Errorf("%s %s: boss %s, heat %s", c.metal, c.interference, boss, heat)
		}
		var next []string
		for _, n := range s.Next {
			next = append(next, n.Text)
		}
		all := strings.Join(next, "\n")
		if strings.Contains(all, "on in one go") != c.on {
			t.Errorf("%s %s: %s", c.metal, c.interference, all)
		}
		if c.boss == sheet.Beyond && strings.Contains(all, "astern gently") {
			t.Errorf("%s %s: %s", c.metal, c.interference, all)
		}
		for _, says := range c.says {
			if !strings.Contains(all, says) {
				t.Errorf("%s %s: no %q in %s", c.metal, c.interference, says, all)
			}
		}
	}
}
