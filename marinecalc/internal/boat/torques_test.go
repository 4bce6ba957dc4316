package boat_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/internal/testboat"
)

// A joint's only maker's torque is told by where its torque would be typed; of several none
// is, and that of the nut of a coupling's taper is none of pinch bolts.
func TestOnlyMakersTorqueOfAJoint(t *testing.T) {
	const flange, pinch = "/outputFlange/nutTorque", "/coupling/bore/pinchTorque"
	for _, c := range []struct{ has, joints, pointer, torque, where string }{
		{`"outputFlange": {"thread": "M24x2"}`, "output-nut", flange, "61 N·m", "/boat/torques/0/torque"},
		{`"units": "metric"`, "mount-nuts output-nut", flange, "62 N·m", "/boat/torques/1/torque"},
		{`"units": "metric"`, "output-nut output-nut", flange, "", ""},
		{`"units": "metric"`, "propeller-nut", "/propeller/nutTorque", "61 N·m", "/boat/torques/0/torque"},
		{`"units": "metric"`, "propeller-nut", flange, "", ""},
		{`"units": "metric"`, "coupling-bolts", "/coupling/bolts/torqueUsed", "61 N·m", "/boat/torques/0/torque"},
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
		if stands := b.OnlyTorqueAt(c.pointer); (stands != nil) != (c.torque != "") || stands != nil && (stands.Text != c.torque || "/boat"+stands.Where != c.where) {
			t.Errorf("%s, %s, %s: %+v", c.has, c.joints, c.pointer, stands)
		}
	}
}
