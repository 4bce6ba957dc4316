package setting

import "example.org/driveline/marinecalc/coupling"

// Absent tells whether a coupling that is held so has no such joint. The nut of a
// taper is rare, and stands on the card only where there is one.
func Absent(joint string, held coupling.HoldMethod) bool {
	switch {
	case held == "":
		return joint == "coupling-nut"
	case joint == "pinch-bolts":
		return held != coupling.SplitClamp
	case joint == "coupling-nut":
		return held != coupling.TaperNut
	case joint == "set-screws":
		return held != coupling.SetScrews
	}
	return false
}
