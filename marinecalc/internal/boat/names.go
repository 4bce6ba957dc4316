package boat

import (
	"fmt"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/problem"
)

// checkNames warns of names inside the readings that name nothing: a gauge of
// a reading that is not in its entry, an own reading that is not in the list
// of own readings. Nothing is calculated from these.
func (b *Boat) checkNames() {
	own := b.OwnReadings()
	var names []string
	for i := range own {
		names = append(names, own[i].Name)
	}
	for _, e := range b.entries {
		var there []string
		for i, m := range Objects(e.values["gauges"]) {
			name, _ := m["reading"].(string)
			if i == 0 {
				for _, at := range e.read(own) {
					there = append(there, at.of.Name, head(at.of.Name))
				}
			}
			if !slices.Contains(there, name) {
				b.warnName(e, "gauges", i, name, there, "a reading of this entry")
			}
		}
		for i, m := range Objects(e.values["own"]) {
			name, _ := m["reading"].(string)
			at := slices.Index(names, name)
			if at < 0 {
				b.warnName(e, "own", i, name, names, "one of the list ownReadings")
				continue
			}
			text, _ := m["value"].(string)
			if _, err := own[at].Kind.Parse(text); err != nil {
				b.warnings = append(b.warnings, problem.Problem{Where: fmt.Sprintf("/readings/%d/own/%d/value", e.Index, i), What: own[at].Title + ": " + err.Error() + ". Nothing is taken from it."})
			}
		}
	}
}

func (b *Boat) warnName(e *Entry, list string, i int, name string, names []string, wanted string) {
	p := problem.Problem{Where: fmt.Sprintf("/readings/%d/%s/%d/reading", e.Index, list, i), What: fmt.Sprintf("%q is not %s, and nothing is taken from it", name, wanted), Allowed: strings.Join(names, ", ")}
	if best, ok := problem.Closest(name, names); ok {
		p.Hint = fmt.Sprintf("did you mean %q?", best)
	}
	b.warnings = append(b.warnings, p)
}
