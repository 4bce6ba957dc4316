package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
	"example.org/driveline/marinecalc/sheet"
)

// A count of eyes that no gauge reads says how surely it must be found, and
// found so surely it is told, on either side of the guide of 70 %.
func TestAShareOfTheConeSaysHowSurelyItMustBeFound(t *testing.T) {
	for share, want := range map[string]struct {
		word   sheet.Word
		settle string
	}{
		"80 %":       {sheet.About, "± 10 %"},
		"80 % ± 9 %": {sheet.Within.ByGuide(), ""},
		"64 %":       {sheet.About, "± 6 %"},
		"64 % ± 5 %": {sheet.Outside, ""},
	} {
		s := testboat.Run(t, "propeller-taper", `{"shaftDiameter":"25 mm","taperStandard":"iso-4566","hubDiameter":"52 mm","shaftTorque":"150 N·m","pushUp":"0.6 mm","taperLength":"54 mm","contactShare":"`+share+`"}`, marinecalc.Options{})
		v := s.Verdict("taper-contact")
		if v == nil || v.Word != want.word || !strings.Contains(v.Settle, want.settle) || (v.Settle == "") != (want.settle == "") {
			t.Errorf("%s: %+v", share, v)
		}
	}
}
