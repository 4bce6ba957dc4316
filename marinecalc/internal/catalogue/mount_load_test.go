package catalogue_test

import (
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// The boat feeds mount-load: torque from the shaft's sheet, mounts from the
// same list; the moved coupling is judged by the coupling's own limit.
func TestBoatLoadsItsMounts(t *testing.T) {
	load := testboat.Page(t, testboat.Mounted(t, "0.42", "9 mm"), "mount-load")
	if i := load.Input("shaftTorque"); i == nil || i.Origin != "earlier result" {
		t.Errorf("torque: %+v", i)
	}
	if i := load.Input("engineWidth"); i == nil || i.Origin != "usual value" || i.Range == "" {
		t.Errorf("width: %+v", i)
	}
	v := load.Verdict("rigid-gap-per-diameter")
	if v == nil || v.On != "movedGapPerDiameter" || v.Authority != "maker's figure" {
		t.Errorf("%+v", v)
	}
	if len(load.Drawings) != 2 || load.Drawings[1].Name != "mount-isolation" {
		t.Errorf("%d drawings", len(load.Drawings))
	}
	if c := load.Cell("modes", 5, "frequency"); c == nil || c.Low == nil {
		t.Errorf("highest mode: %+v", c)
	}
}
