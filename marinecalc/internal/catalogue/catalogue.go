// Package catalogue says which id is which typed function, and adapts those
// that need rows of the rule data or something kept from run to run.
package catalogue

import (
	"example.org/driveline/marinecalc/bearing"
	"example.org/driveline/marinecalc/debris"
	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/gland"
	"example.org/driveline/marinecalc/internal/calc"
	"example.org/driveline/marinecalc/internal/diagnosis"
	"example.org/driveline/marinecalc/internal/drawing/gearing"
	"example.org/driveline/marinecalc/internal/drawing/joints"
	"example.org/driveline/marinecalc/internal/drawing/shaftline"
	"example.org/driveline/marinecalc/internal/drawing/stern"
	"example.org/driveline/marinecalc/internal/seatrial"
	"example.org/driveline/marinecalc/internal/trend"
	"example.org/driveline/marinecalc/internal/upkeep"
	"example.org/driveline/marinecalc/internal/workplan"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/shaft"
	"example.org/driveline/marinecalc/torque"
)

// Calculations is every calculation, in the order of the line from engine to
// propeller. What adding one takes besides a line here, DEVELOPERS.md says
// under "Add a calculation".
var Calculations = []calc.Calculation{
	calc.Bind("shaft-torque", torque.Shaft),
	calc.BindDrawn("shaft-strength", shaft.Strength, shaftline.ShaftStrength),
	calc.BindDrawn("shaft-whirl", shaft.Whirl, shaftline.ShaftWhirl),
	calc.BindDrawn("key-strength", shaft.KeyStrength, shaftline.KeyStrength),
	calc.BindPerRun("propeller-taper", propellerTaper),
	calc.BindDrawn("shaft-withdrawal", shaft.Withdrawal, shaftline.ShaftWithdrawal),
	calc.BindPerRun("bolt-preload", boltPreload),
	calc.BindPerRun("coupling-grip", couplingGrip),
	calc.BindPerRun("bolt-fit", boltFit),
	calc.BindDrawn("thread-engagement", fastener.Engagement, joints.ThreadEngagement),
	calc.BindDrawn("coupling-key", shaft.KeyStrength, shaftline.CouplingKey),
	calc.BindPerRun("coupling-bore", couplingBore),
	calc.BindPerRun("output-flange", outputFlange),
	calc.BindPerRun("line-joints", lineJoints),
	calc.BindPerRun("flange-run-out", flangeRunOut),
	calc.BindPerRun("backlash", backlash),
	calc.BindDrawn("shaft-droop", shaft.Droop, shaftline.ShaftDroop),
	calc.BindPerRun("coupling-alignment", couplingAlignment),
	calc.BindPerRun("dial-alignment", dialAlignment),
	calc.BindPerRun("alignment-change", alignmentChange),
	calc.BindDrawn("alignment-target", mount.Target, joints.AlignmentTarget),
	calc.BindPerRun("mount-moves", mountMoves),
	calc.BindPerRun("mount-load", mountLoad),
	calc.BindDrawn("gland-heat", gland.Heat, stern.GlandHeat),
	calc.BindPerRun("gland-packing", glandPacking),
	calc.BindDrawn("gland-drip", gland.Drip, stern.GlandDrip),
	calc.BindDrawn("bearing-clearance", bearing.Clearance, stern.BearingClearance),
	calc.BindPerRun("bearing-life", bearingLife),
	calc.BindPerRun("repair-or-replace", repairOrReplace),
	calc.BindInSession("work-plan", workplan.Make, workplan.DrawSchedule),
	calc.BindDrawn("wear-debris", debris.Wear, gearing.WearDebris),
	calc.BindInSession("fluid-settling", fluidSettling, gearing.FluidSettling),
	calc.BindPerRun("fluid-cleanliness", fluidCleanliness),
	calc.BindDrawn("fluid-flush", fluid.Flush, gearing.FluidFlush),
	calc.BindPerRun("vibration-source", vibrationSource),
	calc.BindPerRun("reading-trend", trend.Follow),
	calc.BindPerRun("sea-trial", seatrial.Prove),
	calc.BindPerRun("service-schedule", upkeep.Keep),
	calc.BindInSession(diagnosis.FaultFinding, diagnosis.Find, diagnosis.DrawRanking),
}
