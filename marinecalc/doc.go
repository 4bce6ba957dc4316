// Package marinecalc is the calculations of a small boat's drivetrain, from
// engine to propeller, and the job around them: finding the fault, planning
// the work, and deciding whether to repair or to replace.
//
// [Run] takes an id and an input as JSON and gives a sheet: what went in and
// where it came from, what came out with its 95 % range, how each result stands
// to its limit or guide and who says so, what can hurt, and what to do next. A [Boat] is
// read once with [ReadBoat] and gives what is not typed; [Check] runs all that
// it allows, [Compare] holds two of its days against each other. A program that
// runs many makes an [Engine] with [New]: its methods take a context, and it
// serves any number of goroutines. [Engine.Procedure] is work to go by, step by
// step, and [Engine.Tick] keeps what was ticked off. [Engine.Call] is the same way
// in for hosts that speak JSON.
//
// Quantities are texts with their unit, or bare numbers in SI. Errors are an
// [*Error] with every problem at its place; errors.Is tells [ErrUnknown],
// [ErrMissing], [ErrTooLarge] and [ErrCancelled]. What a function hands out is
// the caller's to change. No clock is read, and the same input gives the same
// sheet, to the last digit of every range.
//
// # Calculations
//
// Each calculation is one typed function. Those of a machine part take a
// struct named after the function with Input, and give one with Result. Those
// of the job stand in internal packages, are run by their id, and take Input
// and give Result of their package. Where rows of the rule data have to be
// read first, internal/catalogue adapts the function.
//
//	id                  function           file
//	shaft-torque        torque.Shaft       torque/shaft.go
//	shaft-strength      shaft.Strength     shaft/strength.go
//	shaft-whirl         shaft.Whirl        shaft/whirl.go
//	key-strength        shaft.KeyStrength  shaft/key_strength.go
//	propeller-taper     propeller.Taper    propeller/taper.go
//	shaft-withdrawal    shaft.Withdrawal   shaft/withdrawal.go
//	bolt-preload        fastener.Preload   fastener/preload.go
//	coupling-grip       coupling.Grip      coupling/grip.go
//	bolt-fit            fastener.Fit       fastener/fit.go
//	thread-engagement   fastener.Engagement fastener/engagement.go
//	coupling-key        shaft.KeyStrength  shaft/key_strength.go
//	coupling-bore       coupling.Bore      coupling/bore.go
//	output-flange       flange.Output      flange/output.go
//	line-joints         line.Joints        line/joints.go
//	flange-run-out      flange.RunOut      flange/run_out.go
//	backlash            flange.Backlash    flange/backlash.go
//	shaft-droop         shaft.Droop        shaft/droop.go
//	coupling-alignment  align.Coupling     align/coupling.go
//	dial-alignment      align.Dial         align/dial.go
//	alignment-change    align.Change       align/change.go
//	alignment-target    mount.Target       mount/target.go
//	mount-moves         mount.Moves        mount/moves.go
//	mount-load          mount.Load         mount/load.go
//	gland-heat          gland.Heat         gland/heat.go
//	gland-packing       gland.Packing      gland/packing.go
//	gland-drip          gland.Drip         gland/drip.go
//	bearing-clearance   bearing.Clearance  bearing/clearance.go
//	bearing-life        bearing.Life       bearing/life.go
//	repair-or-replace   cost.Weigh         internal/decision/cost/weigh.go
//	work-plan           workplan.Make      internal/workplan/plan.go
//	wear-debris         debris.Wear        debris/wear.go
//	fluid-settling      fluid.Settling     fluid/settling.go
//	fluid-cleanliness   fluid.Cleanliness  fluid/cleanliness.go
//	fluid-flush         fluid.Flush        fluid/flush.go
//	vibration-source    vibration.Source   vibration/source.go
//	reading-trend       trend.Follow       internal/trend/trend.go
//	sea-trial           seatrial.Prove     internal/seatrial/seatrial.go
//	service-schedule    upkeep.Keep        internal/upkeep/upkeep.go
//	fault-finding       diagnosis.Find     internal/diagnosis/findings.go
package marinecalc
