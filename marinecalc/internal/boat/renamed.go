package boat

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

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
		"mountSag":                         "mountDeflection", // a reading that is followed
		"shaft-half":                       "shaft-flange",    // what was turned
		"both-halves":                      "both-flanges",
		"coupling-half":                    "coupling-flange", // a part, and its steps
		"swap-coupling-half":               "swap-coupling-flange",
		"true-coupling-half":               "true-coupling-flange",
		"press-coupling-half":              "press-coupling-flange",
		"draw-coupling-half":               "pull-coupling-flange",
		"reckon-bearing-place":             "calculate-bearing-place",
		"mount-sagged":                     "mounts-settled", // a cause, and what was noticed
		"mount-sag":                        "mount-deflection",
		"shaft-whips":                      "shaft-whirls",
		"key-reckoned":                     "key-calculated",
		"grip-reckoned":                    "grip-calculated",
		"whirl-reckoned":                   "whirl-calculated",
		"insert-nut-reuse":                 "lock-nut-reuse", // limits that a maker's figure replaces
		"bush-lasts-to-haul-out":           "shell-lasts-to-haul-out",
		"bearing-clearance/bushBore":       "bearing-clearance/shellBore", // results and inputs
		"bolt-fit/measuredRunningTorque":   "bolt-fit/measuredPrevailingTorque",
		"bolt-preload/runningTorque":       "bolt-preload/prevailingTorque",
		"bolt-preload/runningTorqueGauge":  "bolt-preload/prevailingTorqueGauge",
		"bolt-preload/runningShare":        "bolt-preload/prevailingShare",
		"bolt-preload/runningTorqueAdded":  "bolt-preload/prevailingTorqueAdded",
		"mount-load/usualSag":              "mount-load/usualDeflection",
		"mount-load/meanSag":               "mount-load/meanDeflection",
		"mount-load/sagRatio":              "mount-load/deflectionRatio",
		"mount-load/sagRatioAt":            "mount-load/deflectionRatioAt",
		"mount-load/shakenIdle":            "mount-load/bouncePassedIdle",
		"mount-load/shakenFull":            "mount-load/bouncePassedFull",
		"shaft-strength/tensileReckoned":   "shaft-strength/tensileUsed",
		"shaft-strength/torsionalReckoned": "shaft-strength/torsionalUsed",
		"shaft-whirl/swingingMass":         "shaft-whirl/entrainedPropellerMass",
		"shaft-whirl/whipAt":               "shaft-whirl/greatestDeflectionAt",
	}
)

// freeText are members in which people write as they like.
var freeText = []string{"name", "note", "what", "document", "edition", "clause"}

// byNewNames is a document in which every member and id has its newer name;
// what was renamed is added to said. changed is false where nothing was, and
// the document is the same. A member that stands there by both names is left.
func byNewNames(value any, at []string, said *contract.Alike) (renamed any, changed bool) {
	switch value := value.(type) {
	case map[string]any:
		out := value
		for _, name := range slices.Sorted(maps.Keys(value)) {
			if slices.Contains(freeText, name) {
				continue
			}
			place := append(slices.Clip(at), name)
			v, inside := byNewNames(value[name], place, said)
			now, old := renamedMembers[name]
			if _, both := value[now]; both {
				old = false
			}
			if !old && !inside {
				continue
			}
			if !changed {
				out, changed = maps.Clone(value), true
			}
			if old {
				delete(out, name)
				said.Add(place, func() problem.Problem { return olderName(name, now) })
				name = now
			}
			out[name] = v
		}
		return out, changed
	case []any:
		out := value
		for i := range value {
			v, inside := byNewNames(value[i], append(slices.Clip(at), strconv.Itoa(i)), said)
			if !inside {
				continue
			}
			if !changed {
				out, changed = slices.Clone(value), true
			}
			out[i] = v
		}
		return out, changed
	case string:
		if now, old := renamedIDs[value]; old {
			said.Add(at, func() problem.Problem { return olderName(value, now) })
			return now, true
		}
	}
	return value, false
}

func olderName(was, now string) problem.Problem {
	return problem.Problem{What: fmt.Sprintf("%q is an older name", was), Hint: fmt.Sprintf("write %q", now)}
}
