// A decimal point or a unit that slipped: figures that no boat has together.

package agree

import (
	"fmt"

	"example.org/driveline/marinecalc/problem"
)

// proportions holds figures against each other that go together on any boat,
// within the wide bounds of the table boat-proportions.
func (a *agreement) proportions() {
	over := func(row, of, to, title string, quotient func(of, to float64) float64) {
		g, ok := a.all(of, to)
		r := a.book.Table("boat-proportions").Find(row, nil)
		if !ok || r == nil || g[0].SI <= 0 || g[1].SI <= 0 {
			return // a test finds every row that is asked for
		}
		if q := quotient(g[0].SI, g[1].SI); q < r.Values.Of("low").SI || q > r.Values.Of("high").SI {
			a.tell("proportion-"+row, title, fmt.Sprintf("%s is %s and %s is %s, which do not go together; look at decimal point and unit of both", g[0].Title, g[0].Text, problem.MidSentence(g[1].Title), g[1].Text), g...)
		}
	}
	plain := func(of, to float64) float64 { return of / to }
	over("propeller-on-shaft", "/propeller/diameter", "/shaft/diameter", "Propeller and shaft", plain)
	over("propeller-mass", "/propeller/mass", "/propeller/diameter", "Mass of the propeller", func(mass, diameter float64) float64 { return mass / (diameter * diameter * diameter) })
	over("flange-on-shaft", "/coupling/diameter", "/shaft/diameter", "Coupling flange and shaft", plain)
	over("box-depth", "/gland/boxDepth", "/gland/boxBore", "Stuffing box", plain)
	over("ratios", "/gearbox/ratioAhead", "/gearbox/ratioAstern", "Gear ratios", plain)
	over("mass-for-power", "/engine/mass", "/engine/power", "Mass and power of the engine", func(mass, power float64) float64 { return mass / (power / 1000) })
}
