package boat

import (
	"fmt"
	"maps"
	"slices"

	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// Boat files written before version 0.2 have some members and ids by older
// names. They are read by the newer ones, with a warning; the owner's text
// stays as it is.
var (
	renamedMembers = map[string]string{
		"sagNew": "deflectionNew", "sagNow": "deflectionNow", "mountSag": "mountDeflection",
	}
	renamedIDs = map[string]string{
		"mountSag":         "mountDeflection", // a reading that is followed
		"insert-nut-reuse": "lock-nut-reuse", "bush-lasts-to-haul-out": "shell-lasts-to-haul-out",
		"key-reckoned": "key-calculated", "grip-reckoned": "grip-calculated", "whirl-reckoned": "whirl-calculated", "shaft-whips": "shaft-whirls",
		"mount-sagged": "mounts-settled", "mount-sag": "mount-deflection",
		"swap-coupling-half": "swap-coupling-flange", "true-coupling-half": "true-coupling-flange", "press-coupling-half": "press-coupling-flange", "draw-coupling-half": "pull-coupling-flange",
		"coupling-half": "coupling-flange", "coupling-half-loose": "coupling-flange-loose", "shaft-half": "shaft-flange", "both-halves": "both-flanges",
		"bolt-preload/runningTorque": "bolt-preload/prevailingTorque", "bolt-preload/measuredRunningTorque": "bolt-preload/measuredPrevailingTorque",
		"bearing-clearance/bushBore": "bearing-clearance/shellBore",
		"mount-load/usualSag":        "mount-load/usualDeflection", "mount-load/meanSag": "mount-load/meanDeflection", "mount-load/sagRatio": "mount-load/deflectionRatio",
		"shaft-whirl/swingingMass": "shaft-whirl/entrainedPropellerMass",
	}
)

// byNewNames is a document in which every member and id has its newer name,
// and what was renamed. A member that stands there by both names is left.
func byNewNames(value any, at []string) (any, problem.List) {
	switch value := value.(type) {
	case map[string]any:
		out, list := value, problem.List(nil)
		for _, name := range slices.Sorted(maps.Keys(value)) {
			place := append(slices.Clip(at), name)
			v, inside := byNewNames(value[name], place)
			now, old := renamedMembers[name]
			if _, both := value[now]; both {
				old = false
			}
			if !old && len(inside) == 0 {
				continue
			}
			if len(list) == 0 {
				out = maps.Clone(value)
			}
			list = append(list, inside...)
			if old {
				delete(out, name)
				list = append(list, problem.Problem{Where: contract.Pointer(place), What: fmt.Sprintf("%q is an older name", name), Hint: fmt.Sprintf("write %q", now)})
				name = now
			}
			out[name] = v
		}
		return out, list
	case []any:
		out, list := value, problem.List(nil)
		for i := range value {
			v, inside := byNewNames(value[i], append(slices.Clip(at), fmt.Sprint(i)))
			if len(inside) == 0 {
				continue
			}
			if len(list) == 0 {
				out = slices.Clone(value)
			}
			out[i], list = v, append(list, inside...)
		}
		return out, list
	case string:
		if now, old := renamedIDs[value]; old {
			return now, problem.List{{Where: contract.Pointer(at), What: fmt.Sprintf("%q is an older name", value), Hint: fmt.Sprintf("write %q", now)}}
		}
	}
	return value, nil
}
