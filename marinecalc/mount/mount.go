// One mount, and its checks.

package mount

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Most is how many mounts an engine can have here.
const Most = 8

// Mount is one mount of an engine. Fields tagged unset are not given when
// they are NaN, the others when they are 0 and 0 has no meaning.
type Mount struct {
	Name      string          // not empty
	Forward   quantity.Length // of the coupling plane, -3 m to 10 m
	Starboard quantity.Length // of the shaft line, -3 m to 3 m
	Up        quantity.Length // middle of the rubber over the shaft line, -2 m to 2 m

	ThreadPitch   quantity.Length // of the stud, 0.2 mm to 10 mm; 0: not known
	TravelUp      quantity.Length `unset:"NaN"` // by which it can still be raised, 0 to 0.2 m; NaN: not looked at, taken as enough
	TravelDown    quantity.Length `unset:"NaN"` // by which it can still be lowered, as TravelUp
	SidewaysSlack quantity.Length `unset:"NaN"` // by which it can be shifted to either side, as TravelUp
	FootGap       quantity.Length `unset:"NaN"` // that opens under this foot when its nut is slackened, 0 to 20 mm; NaN: not read

	Stiffness         quantity.Stiffness // new, along its own axis, 1 kN/m to 1 GN/m; 0: not known
	StiffnessSideways quantity.Stiffness // square to its axis, athwartships; 0: not known
	StiffnessAlong    quantity.Stiffness // fore and aft; 0: not known
	Inclination       quantity.Angle     // of its axis from upright, the top leaning toward the shaft line, 0 to 60°
	DeflectionNew     quantity.Length    // of the rubber under the engine, when new, 0.05 mm to 0.1 m; 0: not known
	DeflectionNow     quantity.Length    `unset:"NaN"` // the same, measured now, -50 mm to 0.1 m; nothing or less: it stands as high as without load; NaN: not known
	RubberHeight      quantity.Length    // without load, 1 mm to 0.5 m; 0: not known
	RatedLoad         quantity.Force     // the maker's highest load along its axis, 1 N to 1 MN; 0: not known
	RatedThrust       quantity.Force     // the maker's highest load fore and aft, 1 N to 1 MN; 0: not known
}

// checks collects what is wrong with fields; at is where they stand. That
// which passes costs a call and a comparison, as trials ask for.
type checks struct {
	bad problem.List
	at  string
}

// within refuses a value outside its range, in SI.
func (c *checks) within(name string, value, lo, hi float64, allowed string) {
	if !problem.Within(value, lo, hi) {
		c.bad.Add(c.at+"/"+name, fmt.Sprintf("%.4g is out of range", value), allowed, "")
	}
}

// orNone is within, and lets 0 or NaN pass as not given.
func (c *checks) orNone(name string, value, lo, hi float64, allowed string) {
	if value != 0 && !math.IsNaN(value) {
		c.within(name, value, lo, hi, allowed)
	}
}

// unless is orNone where something else is known that does without it.
func (c *checks) unless(known bool, name string, value, lo, hi float64, allowed string) {
	if known {
		c.orNone(name, value, lo, hi, allowed)
	} else {
		c.within(name, value, lo, hi, allowed)
	}
}

// belowNone is by how much its accuracy may take a length below nothing.
const belowNone = 0.002

// validate collects everything wrong with a list of mounts.
func validate(bad *problem.List, mounts []Mount, fewest int) {
	if len(mounts) < fewest || len(mounts) > Most {
		bad.Add("/mounts", fmt.Sprintf("there are %d mounts", len(mounts)), fmt.Sprintf("%d to %d mounts", fewest, Most), "")
		return
	}
	for i := range mounts {
		m := &mounts[i]
		if m.Name == "" {
			bad.Add(fmt.Sprintf("/mounts/%d/name", i), "the mount has no name", `a name such as "front port"`, "")
		}
		c := checks{at: mountNames[i]}
		c.within("forward", float64(m.Forward), -3, 10, "-3 m to 10 m")
		c.within("starboard", float64(m.Starboard), -3, 3, "-3 m to 3 m")
		c.within("up", float64(m.Up), -2, 2, "-2 m to 2 m")
		c.orNone("threadPitch", float64(m.ThreadPitch), 0.2e-3, 0.01, "0.2 mm to 10 mm")
		c.orNone("travelUp", float64(m.TravelUp), -belowNone, 0.2, "0 to 200 mm")
		c.orNone("travelDown", float64(m.TravelDown), -belowNone, 0.2, "0 to 200 mm")
		c.orNone("sidewaysSlack", float64(m.SidewaysSlack), -belowNone, 0.2, "0 to 200 mm")
		c.orNone("footGap", float64(m.FootGap), -belowNone, 0.02, "0 to 20 mm")
		c.orNone("stiffness", float64(m.Stiffness), 1e3, 1e9, "1 N/mm to 1e6 N/mm")
		c.orNone("stiffnessSideways", float64(m.StiffnessSideways), 1e2, 1e9, "0.1 N/mm to 1e6 N/mm")
		c.orNone("stiffnessAlong", float64(m.StiffnessAlong), 1e2, 1e9, "0.1 N/mm to 1e6 N/mm")
		c.orNone("inclination", float64(m.Inclination), -0.05, math.Pi/3, "0° to 60°")
		c.orNone("deflectionNew", float64(m.DeflectionNew), 0.05e-3, 0.1, "0.05 mm to 100 mm")
		c.orNone("deflectionNow", float64(m.DeflectionNow), -0.05, 0.1, "-50 mm to 100 mm")
		c.orNone("rubberHeight", float64(m.RubberHeight), 1e-3, 0.5, "1 mm to 500 mm")
		c.orNone("ratedLoad", float64(m.RatedLoad), 1, 1e6, "1 N to 1 MN")
		c.orNone("ratedThrust", float64(m.RatedThrust), 1, 1e6, "1 N to 1 MN")
		*bad = append(*bad, c.bad...)
	}
}

// mountNames are the places of the mounts in the input, written out so that
// nothing is allocated.
var mountNames = func() (names [Most]string) {
	for i := range names {
		names[i] = fmt.Sprintf("/mounts/%d", i)
	}
	return names
}()
