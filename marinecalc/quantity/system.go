// Systems of units.

package quantity

import "strings"

// System is the choice of units a boat is shown in.
type System uint8

// The systems of units.
const (
	Metric System = iota // SI and the metric units of the trade
	US                   // US customary units
	Both                 // metric, with US customary in parentheses
)

// ParseSystem reads "metric", "us" or "both", in any case of letters.
func ParseSystem(text string) (System, error) {
	for s := Metric; s <= Both; s++ {
		if strings.EqualFold(strings.TrimSpace(text), s.String()) {
			return s, nil
		}
	}
	return Metric, refuse(show(text)+" is no system of units", "metric, us, both", `write "metric"`)
}

// String gives the name that [ParseSystem] reads.
func (s System) String() string {
	switch s {
	case US:
		return "us"
	case Both:
		return "both"
	}
	return "metric"
}
