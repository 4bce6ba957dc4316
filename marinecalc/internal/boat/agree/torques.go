// Torques of one joint that the boat file has in two places.

package agree

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
	"example.org/driveline/marinecalc/rules"
)

const makersFigures = "/makersFigures"

// torqueAt is where the boat holds the torque of a joint of the torque card, and
// the input that a maker's figure for it names. What coupling bolts were tightened
// to stands there in question, and has a verdict of its own.
var torqueAt = []struct{ joint, pointer, input string }{
	{"coupling-bolts", "", "bolt-preload/wrenchSetting"},
	{"output-nut", "/outputFlange/nutTorque", "output-flange/nutTorque"},
	{"propeller-nut", "/propeller/nutTorque", "propeller-taper/nutTorque"},
	{"pinch-bolts", "/coupling/bore/pinchTorque", "coupling-bore/pinchTorque"},
	{"coupling-nut", "/coupling/bore/pinchTorque", "coupling-bore/pinchTorque"},
	{"set-screws", "/coupling/bore/seatingTorque", "coupling-bore/seatingTorque"},
}

// TwoTorques begins the code of two torques of one joint, whose pick follows.
const TwoTorques = "two-torques-"

// torques holds the torque of each joint against the makers' torques of the file
// and against the maker's figure for it. One joint may stand there more than once,
// as dry and as oiled: then one of them must be it.
func (a *agreement) torques() {
	kind, _ := quantity.Lookup("torque")
	byJoint, alike := map[string][]Given{}, map[[3]string]Given{}
	for _, t := range a.boat.Torques() {
		g := Given{Pointer: t.Where, Title: "Torque by the maker", Text: fmt.Sprintf("%s (%s)", t.Text, t.Source), SI: t.SI}
		byJoint[t.Joint] = append(byJoint[t.Joint], g)
		key := [3]string{t.Joint, boat.Folded(t.Thread), boat.Folded(t.Lubrication)}
		if other, has := alike[key]; has && a.noneOf(g, []Given{other}) {
			a.twoTorques(t.Joint, g, other)
		} else if !has {
			alike[key] = g
		}
	}
	for _, at := range torqueAt {
		makers := byJoint[at.joint]
		if fig, ok := a.boat.FigureOf(at.input); ok {
			if si, ok := boat.Number(kind, fig.Value); ok {
				g := Given{Pointer: makersFigures, Title: "The maker's figure", Text: fmt.Sprintf("%v (%s)", fig.Value, fig.Source), SI: si}
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

// TorqueIn is what the boat file has of a joint's torque beside the makers' torques: the
// maker's figure for the input or result of that name, with its source, else what was typed.
func TorqueIn(b *boat.Boat, joint, of string) (g Given, source string, has bool) {
	if fig, ok := b.FigureOf(of); ok {
		kind, _ := quantity.Lookup("torque")
		g.SI, has = boat.Number(kind, fig.Value)
		g.Text = fmt.Sprint(fig.Value)
		return g, fig.Source, has
	}
	for _, at := range torqueAt {
		if at.joint == joint && at.input == of {
			g, has = (&agreement{boat: b}).at(at.pointer)
		}
	}
	return g, "", has
}

// noneOf tells that a torque is none of some others.
func (a *agreement) noneOf(g Given, others []Given) bool {
	return !slices.ContainsFunc(others, func(o Given) bool { return !TorquesApart(a.book, g.SI, o.SI) })
}

// TorquesApart tells that two torques, in N·m, are further apart than a wrench that is
// set to both explains, by the accuracy of one that clicks.
func TorquesApart(book *rules.Book, one, other float64) bool {
	kind, _ := quantity.Lookup("torque")
	off := 0.0
	if row := book.Table("gauges").Find("torque-wrench", nil); row != nil { // a test finds it
		off, _ = kind.ParseAccuracy(row.Values.Of("accuracy").Text, other)
	}
	return math.Abs(one-other) > off+1e-9
}

// MakersIn counts, of the figures of a disagreement, those that are torques by makers,
// and of these those of the maker's figures.
func (d *Disagreement) MakersIn() (listed, figures int) {
	for _, g := range d.Figures {
		if g.Pointer == makersFigures {
			figures++
		} else if strings.HasPrefix(g.Pointer, "/torques/") {
			listed++
		}
	}
	return listed, figures
}

// twoTorques tells of two torques of one joint.
func (a *agreement) twoTorques(joint string, one, other Given) {
	a.list = append(a.list, Disagreement{TwoTorques + joint, one.Title, fmt.Sprintf("%s is %s, and %s for this joint is %s, further apart than a wrench explains. Look which of the two is for this thread as it is greased, take out the other, and tighten by that one.", one.Title, one.Text, problem.MidSentence(other.Title), other.Text), []Given{one, other}})
}
