package catalogue

import (
	"slices"

	"example.org/driveline/marinecalc/internal/boat"
)

// Group is calculations that belong together for whoever looks for one.
type Group struct {
	Title        string   `json:"title"`
	About        string   `json:"about"`
	Calculations []string `json:"calculations"` // ids
}

// Groups lists the calculations as a person looks for them. A test holds that
// each stands in one group.
func Groups() []Group {
	return []Group{
		{"Something is wrong", "It knocks, runs hot, leaks or vibrates: find the part first.",
			[]string{"fault-finding", "vibration-source"}},
		{"Shaft", "From the gearbox output flange to the propeller.",
			[]string{"shaft-torque", "shaft-strength", "shaft-whirl", "shaft-droop", "key-strength", "propeller-taper", "shaft-withdrawal"}},
		{"Coupling and bolts", "What holds the flanges, and how well they are aligned.",
			[]string{"bolt-preload", "bolt-fit", "thread-engagement", "coupling-grip", "coupling-key", "coupling-bore", "coupling-alignment", "dial-alignment", "alignment-change"}},
		{"Output flange and the line", "The flange on the gearbox's shaft, the weakest joint of the line, and where it has free play.",
			[]string{"output-flange", "line-joints", "flange-run-out", "backlash"}},
		{"Mounts", "What the engine stands on.",
			[]string{"alignment-target", "mount-moves", "mount-load"}},
		{"Gland and bearings", "Where the shaft turns and where the sea is kept out.",
			[]string{"gland-heat", "gland-packing", "gland-drip", "bearing-clearance", "bearing-life"}},
		{"Wear and fluid", "What wear debris and the dipstick show.",
			[]string{"wear-debris", "fluid-settling", "fluid-cleanliness", "fluid-flush"}},
		{"Deciding", "Repair or replace, which job, which day, how long it lasts.",
			[]string{"repair-or-replace", "work-plan", "reading-trend"}},
		{"Proof and watch", "Whether she is well again, and what to look at when.",
			[]string{"sea-trial", "service-schedule"}},
	}
}

// ofPacking are the calculations of a gland that is packed: a shaft with a face
// or lip seal has nothing to enter for them.
var ofPacking = []string{"gland-heat", "gland-packing"}

// Aboard tells whether a boat has what a calculation is of: nothing clamps an output
// flange that a clip holds.
func Aboard(id string, b *boat.Boat) bool {
	if id == "output-flange" {
		held, _, _, _ := b.Find("/outputFlange/heldBy")
		return held != "clip"
	}
	return !slices.Contains(ofPacking, id) || !b.FaceSealed()
}
