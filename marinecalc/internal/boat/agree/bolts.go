// Bolts that the boat file describes in two ways that cannot both be.

package agree

import (
	"fmt"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/problem"
)

// freeNut is the pick of the lock nuts that stands for a tapped hole too.
const freeNut = "plain-nut"

// bolts holds the grip against the bolt's length, and coupling bolts with nuts
// against tapped holes: one bolt has one of the two, and every sheet from its
// clamp on goes by which.
func (a *agreement) bolts() {
	a.most("/coupling/bolts/grip", "/coupling/bolts/length", "Coupling bolts", "a bolt is longer than what it clamps")
	hole, tapped := a.any("/coupling/tapped/engagementLength", "/coupling/tapped/metal", "/coupling/tapped/tappedDepth")
	nut, nutted := a.any("/coupling/bolts/plainNut", "/coupling/bolts/nutHeight", "/coupling/bolts/nut")
	if !tapped {
		a.grip()
	}
	if !tapped || !nutted {
		return
	}
	a.tell("nut-and-tapped", "Coupling bolts", fmt.Sprintf("%s is %s, and %s is %s: a bolt goes into a tapped hole or has a nut. Take out what she has not", hole.Title, hole.Text, problem.MidSentence(nut.Title), nut.Text), nut, hole)
}

// grip holds what is between head and nut against the flanges there: it is never less
// than these, and of a rigid coupling washers alone make it more.
func (a *agreement) grip() {
	g, ok := a.all("/coupling/bolts/grip", "/coupling/headFlangeThickness", "/coupling/nutFlangeThickness")
	if !ok {
		return
	}
	flanges := g[1].SI + g[2].SI
	off := a.apart("grip-flanges", flanges)
	kind, _, _, _ := a.boat.Find("/coupling/kind")
	text := fmt.Sprintf("Grip is %s, and the two flanges together are %s", g[0].Text, mm(flanges))
	switch {
	case g[0].SI < flanges-off:
		a.tell("grip-flanges", "Coupling bolts", text+": head and nut lie on either side of both", g...)
	case kind == "rigid" && g[0].SI > flanges+off+a.apart("two-washers", 0):
		a.tell("grip-flanges", "Coupling bolts", text+": more lies between head and nut than flanges and two washers. Look what else is clamped; a spacer counts as part of a flange", g...)
	}
}

// any reads the first of some members that the boat has, in words or numbers.
// A nut that may as well be a tapped hole is none.
func (a *agreement) any(pointers ...string) (Given, bool) {
	for _, pointer := range pointers {
		value, _, date, ok := a.boat.Find(pointer)
		c, err := boat.Contract()
		if !ok || err != nil || value == freeNut {
			continue
		}
		if p, whole := c.Root.At(contract.Tokens(pointer)); whole {
			return Given{Pointer: pointer, Title: p.Title, Text: fmt.Sprint(value), Date: date}, true
		}
	}
	return Given{}, false
}
