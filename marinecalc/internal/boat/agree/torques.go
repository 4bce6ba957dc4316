// Torques of one joint that the boat file has in two places.

package agree

import (
	"fmt"
	"math"
	"slices"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// torqueAt is where the boat holds the torque of a joint of the torque card, and
// the input that a maker's figure for it names. What coupling bolts were tightened
// to stands there in question, and has a verdict of its own.
var torqueAt = []struct{ joint, pointer, input string }{
	{"output-nut", "/outputFlange/nutTorque", "output-flange/nutTorque"},
	{"propeller-nut", "/propeller/nutTorque", "propeller-taper/nutTorque"},
	{"pinch-bolts", "/coupling/bore/pinchTorque", "coupling-bore/pinchTorque"},
	{"set-screws", "/coupling/bore/seatingTorque", "coupling-bore/seatingTorque"},
}

// TwoTorques begins the code of two torques of one joint, whose pick follows.
const TwoTorques = "two-torques-"

// torques holds the torque of each joint against the makers' torques of the file
// and against the maker's figure for it. One joint may stand there more than once,
// as dry and as oiled: then one of them must be it.
func (a *agreement) torques() {
	kind, _ := quantity.Lookup("torque")
	value, _, _, _ := a.boat.Find("/torques")
	byJoint, alike := map[any][]Given{}, map[[3]any]Given{}
	for i, entry := range boat.Objects(value) {
		si, ok := boat.Number(kind, entry["torque"])
		if !ok {
			continue
		}
		g := Given{Pointer: fmt.Sprintf("/torques/%d/torque", i), Title: "Torque by the maker", Text: fmt.Sprintf("%v (%v)", entry["torque"], entry["source"]), SI: si}
		byJoint[entry["joint"]] = append(byJoint[entry["joint"]], g)
		key := [3]any{entry["joint"], entry["thread"], entry["lubrication"]}
		if other, has := alike[key]; has && a.noneOf(g, []Given{other}) {
			a.twoTorques(fmt.Sprint(entry["joint"]), g, other)
		} else if !has {
			alike[key] = g
		}
	}
	for _, at := range torqueAt {
		makers := byJoint[at.joint]
		if fig, ok := a.boat.FigureOf(at.input); ok {
			if si, ok := boat.Number(kind, fig.Value); ok {
				g := Given{Pointer: "/makersFigures", Title: "The maker's figure", Text: fmt.Sprintf("%v (%s)", fig.Value, fig.Source), SI: si}
				if len(makers) > 0 && a.noneOf(g, makers) {
					a.twoTorques(at.joint, g, makers[0])
					continue
				}
				makers = append(makers, g)
			}
		}
		own, has := a.at(at.pointer)
		if has && own.SI > 0 && len(makers) > 0 && a.noneOf(own, makers) { // 0 is found loose
			a.twoTorques(at.joint, own, makers[0])
		}
	}
}

// noneOf tells that a torque is none of some others: further from each than a
// wrench that is set to both explains, by the accuracy of one that clicks.
func (a *agreement) noneOf(g Given, others []Given) bool {
	kind, _ := quantity.Lookup("torque")
	row := a.book.Table("gauges").Find("torque-wrench", func(string) (float64, string, bool) { return 0, "", false })
	return !slices.ContainsFunc(others, func(o Given) bool {
		off := 0.0
		if row != nil { // a test finds it
			off, _ = kind.ParseAccuracy(row.Values.Of("accuracy").Text, o.SI)
		}
		return math.Abs(g.SI-o.SI) <= off+1e-9
	})
}

// twoTorques tells of two torques of one joint.
func (a *agreement) twoTorques(joint string, one, other Given) {
	a.list = append(a.list, Disagreement{TwoTorques + joint, one.Title, fmt.Sprintf("%s is %s, and %s for this joint is %s, further apart than a wrench explains. Look which of the two is for this thread as it is greased, take out the other, and tighten by that one.", one.Title, one.Text, problem.MidSentence(other.Title), other.Text), []Given{one, other}})
}
