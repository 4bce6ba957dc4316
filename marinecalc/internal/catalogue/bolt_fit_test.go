package catalogue_test

import (
	"strings"
	"testing"

	"example.org/driveline/marinecalc"
)

// A scrap limit of another size than the bolt's is not used.
func TestReuseLimitOfAnotherSizeIsRefused(t *testing.T) {
	_, err := marinecalc.Run("bolt-fit", []byte(`{"thread":"M10x1.5","headFlangeThickness":"12 mm","nutFlangeThickness":"12 mm","plainNut":"hex-nut","reuseRule":"faa-7/16-14","measuredPrevailingTorque":"1 N·m"}`), marinecalc.Options{NoRanges: true})
	if err == nil || !strings.Contains(err.Error(), "/reuseRule") {
		t.Errorf("%v", err)
	}
}
