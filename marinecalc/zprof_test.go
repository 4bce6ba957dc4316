package marinecalc_test

import (
	"testing"

	m "example.org/driveline/marinecalc"
)

func BenchmarkZ(b *testing.B) {
	for id, in := range map[string]string{
		"bolt-preload":       `{"thread":"M10x1.5","grade":"iso-8.8","finish":"oiled","gripLength":"24 mm","flangeMaterial":"mild-steel"}`,
		"bearing-clearance":  `{"shaftDiameter":"38 mm","bearingClearance":"0.6 mm","bearingKind":"rubber","newClearance":"0.15 mm","earlierClearance":"0.3 mm","runningTime":"400 h"}`,
		"shaft-torque":       `{"enginePower":"20 kW","engineSpeed":"2400 rpm","gearRatioAhead":2}`,
		"coupling-alignment": `{"readings":[{"clock":"12 o'clock","gap":"0.25 mm"},{"clock":"3 o'clock","gap":"0.15 mm"},{"clock":"6 o'clock","gap":"0.05 mm"},{"clock":"9 o'clock","gap":"0.15 mm"}],"couplingDiameter":"127 mm","couplingKind":"rigid"}`,
	} {
		b.Run(id, func(b *testing.B) {
			b.ReportAllocs()
			for range b.N {
				m.Run(id, []byte(in), m.Options{NoRanges: true})
			}
		})
	}
}
