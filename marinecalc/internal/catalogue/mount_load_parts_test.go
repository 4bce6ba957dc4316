package catalogue

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/quantity"
)

// Each part gives what it says, the same to the last digit, for an engine on four
// mounts; what the other gives it leaves at nothing.
func TestPartsOfMountLoad(t *testing.T) {
	in := mount.LoadInput{EngineMass: 190, CentreForward: 0.55, CentreUp: 0.1, EngineLength: 0.85, EngineWidth: 0.5, EngineHeight: 0.6, BoxFactor: 1,
		SidewaysRatio: 0.4, AlongRatio: 1.3, DynamicRatio: 1.2, DampingRatio: 0.05, Cylinders: 3, IdleSpeed: 80, EngineSpeed: 300,
		Strokes: mount.FourStroke, ShaftTurns: mount.Right, ShaftTorque: 170, AsternTorque: 150, Thrust: 2000, ThrustOnMounts: 1, AsternThrust: 0.6}
	for i, at := range [4][2]quantity.Length{{0.85, -0.25}, {0.85, 0.25}, {0.25, -0.25}, {0.25, 0.25}} {
		in.Mounts = append(in.Mounts, mount.Mount{Name: string(rune('a' + i)), Forward: at[0], Starboard: at[1], Up: 0.1, Stiffness: 150e3, RatedLoad: 1000, RatedThrust: 800, DeflectionNew: 0.003, DeflectionNow: 0.0035})
	}
	whole, err := mount.Load(in)
	if err != nil {
		t.Fatal(err)
	}
	parts := mountLoad(nil).Parts
	for n, p := range parts {
		out, err := p.Compute(in)
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range reflect.VisibleFields(reflect.TypeOf(whole)) {
			name := strings.ToLower(f.Name[:1]) + f.Name[1:]
			a, b := reflect.ValueOf(whole).Field(i), reflect.ValueOf(out).Field(i)
			if p.Gives(name) == parts[1-n].Gives(name) {
				t.Errorf("%s is of one part", name)
			}
			if p.Gives(name) && fmt.Sprint(a) != fmt.Sprint(b) || n == 0 && !p.Gives(name) && !b.IsZero() {
				t.Errorf("%s: %v, in part %d %v", name, a, n, b)
			}
		}
	}
	in.Mounts = in.Mounts[:2]
	for n, p := range parts {
		if _, err := p.Compute(in); err == nil {
			t.Errorf("part %d takes two mounts", n)
		}
	}
}
