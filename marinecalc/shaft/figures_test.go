package shaft

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// Figures that stand on a sheet by themselves, by hand from the two scenarios.
func TestFiguresByHand(t *testing.T) {
	line := cruiser()
	out := parttest.Must(t, Whirl, line)
	parttest.Within(t, "mass of the shaft", float64(out.ShaftMass), 8000*math.Pi/4*(2.6*0.030*0.030+0.15*0.028*0.028), 1e-12)
	parttest.Within(t, "margin", float64(out.Margin), float64(out.CriticalUsed)/float64(line.ShaftSpeed)-1, 1e-12)
	parttest.Within(t, "use", float64(out.SpeedUse)*(1+float64(out.Margin)), 1, 1e-12)
	line.Sections[0].Bore = 0.012
	parttest.Within(t, "mass of a hollow shaft", float64(parttest.Must(t, Whirl, line).ShaftMass), 8000*math.Pi/4*(2.6*(0.030*0.030-0.012*0.012)+0.15*0.028*0.028), 1e-12)

	bar := parttest.Must(t, Strength, ketch())
	parttest.Within(t, "diameter of the class over the shaft's", float64(bar.ClassUse), float64(bar.ClassDiameter)/0.028, 1e-12)

	key := sloopKey()
	key.SmallEndDiameter = 0
	for _, c := range []struct {
		what                     string
		ratio, length, share, of float64 // of the diameter, the mean of the cone
	}{
		{"parallel", 0, 0, 0, 1},
		{"1 in 16 and two diameters long", 1.0 / 16, 2, 0, 1 - 1.0/16},
		{"a cone whose length nobody measured", 1.0 / 16, 0, 0.93, 0.93},
		{"a cone of which nothing is known", 1.0 / 16, 0, 0, 1},
	} {
		in := key
		in.TaperRatio, in.MeanShare = quantity.Ratio(c.ratio), quantity.Ratio(c.share)
		in.TaperLength = inch * quantity.Length(c.length)
		parttest.Within(t, c.what, float64(parttest.Must(t, KeyStrength, in).ForceDiameter), c.of*float64(inch), 1e-9)
	}
	key = sloopKey()
	key.TaperLength = 2 * inch
	parttest.Within(t, "taper by both ends", float64(parttest.Must(t, KeyStrength, key).TaperMeasured), (1-0.828)/2, 1e-9)
	key.LargeEndDiameter = 1.001 * inch
	parttest.Within(t, "by the large end of the table", float64(parttest.Must(t, KeyStrength, key).TaperMeasured), (1.001-0.828)/2, 1e-9)
}
