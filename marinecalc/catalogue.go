package marinecalc

import (
	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/bearing"
	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/debris"
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/torque"
)

// catalogue is every calculation, in the order of the line from engine to
// propeller. Adding one is one line here, besides its function, its schema
// and its published checks.
var catalogue = []calculation{
	bind("shaft-torque", torque.AtShaft),
	bindDrawn("shaft-strength", shaft.Strong, drawShaftSizes),
	bindDrawn("shaft-whirl", shaft.Whirl, drawWhirl),
	bindDrawn("key-strength", shaft.Key, drawKey),
	bindDrawn("shaft-withdrawal", shaft.Withdraw, drawWithdrawal),
	bind("bolt-preload", fastener.Tighten),
	bindDrawn("coupling-grip", coupling.Hold, drawGrip),
	bindDrawn("bolt-fit", fastener.Stackup, drawBoltFit),
	bindDrawn("shaft-droop", shaft.Droop, drawDroop),
	bindDrawn("coupling-alignment", align.Coupling, drawCouplingFace),
	bindOpened("mount-moves", correctOnce),
	bindDrawn("mount-load", mount.Carry, drawMountLoad),
	bindDrawn("gland-heat", gland.Heat, drawDripCurve),
	bindDrawn("gland-packing", gland.Pack, drawPacking),
	bindDrawn("gland-drip", gland.Cost, drawBilge),
	bindDrawn("bearing-clearance", bearing.Worn, drawBush),
	bindOpened("bearing-life", lifeByRow),
	bindOpened("repair-or-replace", weigh),
	bindInSession("work-plan", planWork, drawSchedule),
	bindDrawn("wear-debris", debris.Measure, drawWear),
	bindInSession("fluid-settling", settle, drawSettling),
	bindInSession("fluid-cleanliness", classify, drawCleanliness),
	bindDrawn("fluid-flush", fluid.Dilute, drawFlush),
	bindOpened("vibration-source", findSource),
	bindOpened("reading-trend", followReading),
	bindInSession(faultFinding, findFault, drawRanking),
}

// Entry is one line of the contents: what can be calculated.
type Entry struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Answers string `json:"answers"`
}

// Calculations lists what can be calculated, from engine to propeller.
func Calculations() []Entry {
	list := make([]Entry, 0, len(catalogue))
	for _, c := range catalogue {
		if title, answers, err := contract.Heading(c.id); err == nil { // a test opens every contract
			list = append(list, Entry{ID: c.id, Title: title, Answers: answers})
		}
	}
	return list
}
