// Package catalogue says which id is which typed function, and adapts those
// that need rows of the rule data or something kept from run to run.
package catalogue

import (
	"example.org/driveline/marinecalc/align"
	"example.org/driveline/marinecalc/bearing"
	"example.org/driveline/marinecalc/coupling"
	"example.org/driveline/marinecalc/debris"
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/decision"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/drawing"
	"example.org/driveline/marinecalc/internal/trend"
	"example.org/driveline/marinecalc/internal/workplan"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/torque"
)

// Calculations is every calculation, in the order of the line from engine to
// propeller. Adding one is one line here, besides its function, its schema
// and its published checks.
var Calculations = []calc.Calculation{
	calc.Bind("shaft-torque", torque.AtShaft),
	calc.BindDrawn("shaft-strength", shaft.Strong, drawing.ShaftStrength),
	calc.BindDrawn("shaft-whirl", shaft.Whirl, drawing.ShaftWhirl),
	calc.BindDrawn("key-strength", shaft.Key, drawing.KeyStrength),
	calc.BindDrawn("shaft-withdrawal", shaft.Withdraw, drawing.ShaftWithdrawal),
	calc.Bind("bolt-preload", fastener.Tighten),
	calc.BindDrawn("coupling-grip", coupling.Hold, drawing.CouplingGrip),
	calc.BindDrawn("bolt-fit", fastener.Stackup, drawing.BoltFit),
	calc.BindDrawn("shaft-droop", shaft.Droop, drawing.ShaftDroop),
	calc.BindDrawn("coupling-alignment", align.Coupling, drawing.CouplingAlignment),
	calc.BindPerRun("mount-moves", correctOnce),
	calc.BindDrawn("mount-load", mount.Carry, drawing.MountLoad),
	calc.BindDrawn("gland-heat", gland.Heat, drawing.GlandHeat),
	calc.BindDrawn("gland-packing", gland.Pack, drawing.GlandPacking),
	calc.BindDrawn("gland-drip", gland.Cost, drawing.GlandDrip),
	calc.BindDrawn("bearing-clearance", bearing.Worn, drawing.BearingClearance),
	calc.BindPerRun("bearing-life", lifeByRow),
	calc.BindPerRun("repair-or-replace", decision.Weigh),
	calc.BindInSession("work-plan", workplan.Make, workplan.DrawSchedule),
	calc.BindDrawn("wear-debris", debris.Measure, drawing.WearDebris),
	calc.BindInSession("fluid-settling", settle, drawing.FluidSettling),
	calc.BindInSession("fluid-cleanliness", classify, drawing.FluidCleanliness),
	calc.BindDrawn("fluid-flush", fluid.Dilute, drawing.FluidFlush),
	calc.BindPerRun("vibration-source", findSource),
	calc.BindPerRun("reading-trend", trend.Follow),
	calc.BindInSession(diagnosis.FaultFinding, diagnosis.Find, diagnosis.DrawRanking),
}
