package boat_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// A joint's only maker's torque stands where its torque was not typed; of several none
// does, and that of the nut of a coupling's taper is none of pinch bolts.
func TestOnlyMakersTorqueStands(t *testing.T) {
	const flange, pinch = "/outputFlange/nutTorque", "/coupling/bore/pinchTorque"
	for _, c := range []struct{ has, joints, pointer, torque, where string }{
		{`"outputFlange": {"thread": "M24x2"}`, "output-nut", flange, "61 N·m", "/boat/torques/0/torque"},
		{`"outputFlange": {"nutTorque": "50 N·m"}`, "output-nut", flange, "50 N·m", "/boat/outputFlange/nutTorque"},
		{`"units": "metric"`, "mount-nuts output-nut", flange, "62 N·m", "/boat/torques/1/torque"},
		{`"units": "metric"`, "output-nut output-nut", flange, "", ""},
		{`"units": "metric"`, "propeller-nut", "/propeller/nutTorque", "61 N·m", "/boat/torques/0/torque"},
		{`"units": "metric"`, "propeller-nut", flange, "", ""},
		{`"units": "metric"`, "", flange, "", ""},
		{`"coupling": {"bore": {"holdMethod": "clamp"}}`, "coupling-nut pinch-bolts", pinch, "62 N·m", "/boat/torques/1/torque"},
		{`"coupling": {"bore": {"holdMethod": "taper"}}`, "coupling-nut pinch-bolts", pinch, "61 N·m", "/boat/torques/0/torque"},
		{`"coupling": {"bore": {"holdMethod": "taper"}}`, "pinch-bolts", pinch, "", ""},
	} {
		var entries []string
		for i, joint := range strings.Fields(c.joints) {
			entries = append(entries, fmt.Sprintf(`{"joint": %q, "torque": "%d N·m", "source": "Book (invented)"}`, joint, 61+i))
		}
		b := testboat.Read(t, `{"name": "Tern", `+c.has+`, "torques": [`+strings.Join(entries, ", ")+`]}`)
		value, where, _, ok := b.Find(c.pointer)
		if ok != (c.torque != "") || ok && (value != c.torque || where != c.where) {
			t.Errorf("%s, %s, %s: %v at %s", c.has, c.joints, c.pointer, value, where)
		}
	}
}
