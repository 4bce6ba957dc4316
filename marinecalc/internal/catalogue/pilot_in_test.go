package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A gap that was read with the pilot in its recess, or while the shaft touches, is not
// "not measured": the sheet says what stands in its way and how to clear it.
func TestAGapReadWithThePilotInIsNoGapThatNobodyRead(t *testing.T) {
	const gaps, dials = `{"readings": [{"clock": "12 o'clock", "gap": "0.10 mm"}, {"clock": "3 o'clock", "gap": "0.10 mm"}, {"clock": "6 o'clock", "gap": "0.14 mm"}, {"clock": "9 o'clock", "gap": "0.14 mm"}]`,
		`{"dialReadings": [{"clock": "12 o'clock", "rim": "0 mm", "face": "0 mm"}, {"clock": "3 o'clock", "rim": "0.02 mm", "face": "0.01 mm"}, {"clock": "6 o'clock", "rim": "0.05 mm", "face": "0.02 mm"}, {"clock": "9 o'clock", "rim": "0.03 mm", "face": "0.01 mm"}], "dialRadius": "42 mm", "swept": "together"`
	for id, input := range map[string]string{"coupling-alignment": gaps, "dial-alignment": dials} {
		for _, in := range []string{`"pilot": "engaged"`, `"pilot": "parted", "shaftCentred": "touching"`} {
			s := testboat.Run(t, id, input+`, "couplingDiameter": "102 mm", "couplingKind": "rigid", "toleranceTable": "engine-bulletin", `+in+`}`, marinecalc.Options{})
			for _, limit := range []string{"rigid-gap-per-diameter", "engine-bulletin-gap"} {
				if v := s.Verdict(limit); v == nil || v.Word != sheet.CannotTell && !v.Moot {
					t.Errorf("%s, %s: %+v", id, in, v)
				}
			}
		}
	}
}
