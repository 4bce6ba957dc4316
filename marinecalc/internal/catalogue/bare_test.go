package catalogue

import (
	"slices"
	"testing"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/rules"
)

// exact are the numbers that stay as they are written though nobody gave them
// an accuracy, each by the reason. "*" stands for all inputs of a calculation.
var exact = map[string][]string{
	"chosen: what a person wants, plans or allows, which stands as it is said": {
		"output-flange/hoursToHaulOut",
		"bearing-clearance/hoursToHaulOut", "bearing-life/wantedLife", "bolt-fit/protrudingThreads", "bolt-preload/proofFraction", "bolt-preload/yieldFraction",
		"bolt-preload/tensionFraction", "bolt-preload/clampNeeded", "coupling-grip/wantedMargin", "coupling-grip/thrustOnCoupling", "fluid-flush/wantedShare",
		"gland-drip/timeUnderWay", "gland-drip/timeAway", "gland-heat/wantedRise", "gland-heat/mostDrips", "gland-packing/skiveAllowance", "key-strength/wantedSafety", "coupling-key/wantedSafety",
		"mount-load/thrustOnMounts", "reading-trend/atWithin", "reading-trend/horizon", "sea-trial/steadyWithin",
		"shaft-torque/asternPowerShare", "shaft-withdrawal/workingClearance", "fluid-settling/particleSize", "fluid-settling/visibleSize", "fluid-settling/sizes/size",
		"bearing-life/loadFactor", "work-plan/*", "coupling-bore/fittingClearance", "thread-engagement/shearShare",
	},
	"a bound: what a reading is held against is as the book or the maker has it": {
		"output-flange/permittedPressure", "flange-run-out/gapAllowance", "backlash/allowedBacklash",
		"bearing-clearance/leastNewClearance", "bearing-clearance/mostNewClearance", "bearing-clearance/wornLimit", "bolt-fit/reuseTorque", "bolt-preload/permittedBearingStress", "propeller-taper/permittedBearingStress", "output-flange/permittedBearingStress", "coupling-bore/permittedBearingStress",
		"coupling-alignment/gapAllowance", "dial-alignment/gapAllowance", "alignment-target/gapAllowance", "alignment-target/offsetAllowance", "alignment-target/usualDeflection", "dial-alignment/offsetAllowance", "coupling-alignment/offsetAllowance", "mount-moves/gapAllowance", "mount-moves/offsetAllowance", "gland-packing/mostOver", "gland-packing/mostUnder",
		"vibration-source/zoneAb", "vibration-source/zoneBc", "vibration-source/zoneCd", "wear-debris/wearLimit", "*/mounts/ratedLoad", "*/mounts/ratedThrust", "*/mounts/travelUp",
		"*/mounts/travelDown", "*/mounts/sidewaysSlack", "mount-load/usualDeflection", "thread-engagement/engagementRule", "thread-engagement/studRule", "coupling-bore/tableSeating", "coupling-bore/hubHeatLimit", "shaft-whirl/spanGuideFast", "shaft-whirl/spanGuideSlow",
	},
	"a nominal size, which the standard of its name fixes": {
		"output-flange/nominalDiameter", "output-flange/pitch",
		"bearing-life/bearingBore", "bolt-fit/nominalDiameter", "bolt-fit/pitch", "bolt-preload/nominalDiameter", "bolt-preload/pitch", "coupling-grip/nominalDiameter", "coupling-grip/pitch",
		"key-strength/keyWidth", "coupling-key/keyWidth", "key-strength/keyHeight", "coupling-key/keyHeight", "key-strength/keySeat", "coupling-key/keySeat", "key-strength/taperRatio", "coupling-key/taperRatio", "coupling-bore/keySeat", "key-strength/largeEndDiameter", "coupling-key/largeEndDiameter", "key-strength/taperLength", "coupling-key/taperLength",
		"*/mounts/threadPitch", "*/mounts/rubberHeight", "*/mounts/inclination", "shaft-torque/propellerDiameter", "shaft-strength/propellerDiameter",
		"bearing-life/seatUpper", "bearing-life/seatLower", "bearing-life/boreUpper", "bearing-life/boreLower",
		"coupling-bore/keyWidth", "coupling-bore/keyHeight", "coupling-bore/pinchDiameter", "coupling-bore/pinchPitch", "coupling-bore/taperRatio",
		"thread-engagement/nominalDiameter", "thread-engagement/pitch", "thread-engagement/insertDiameter", "thread-engagement/insertPitch", "propeller-taper/taperRatio", "propeller-taper/nutDiameter", "propeller-taper/nutPitch",
	},
	"a strength is the least that its specification asks, and the true one is above it": {
		"output-flange/shaftYieldStrength", "output-flange/holdBoltYield", "output-flange/barYield",
		"bolt-preload/proofStrength", "bolt-preload/yieldStrength", "bolt-preload/tensileStrength", "coupling-grip/proofStrength", "coupling-grip/lowerProofStrength",
		"coupling-grip/lowerYieldStrength", "coupling-grip/yieldStrength", "coupling-grip/tensileStrength", "coupling-grip/permittedShear", "coupling-grip/shaftTensileStrength",
		"key-strength/keyYieldStrength", "coupling-key/keyYieldStrength", "key-strength/hubYieldStrength", "coupling-key/hubYieldStrength", "key-strength/shaftYieldStrength", "coupling-key/shaftYieldStrength", "shaft-strength/shaftYieldStrength", "shaft-strength/torsionalYield",
		"shaft-strength/shaftTensileStrength", "thread-engagement/tensileStrength", "thread-engagement/tappedTensileStrength", "propeller-taper/hubYieldStrength", "propeller-taper/shaftYieldStrength", "coupling-bore/keyYieldStrength", "coupling-bore/hubYieldStrength", "coupling-bore/shaftYieldStrength", "coupling-bore/shaftTensileStrength", "coupling-bore/pinchYieldStrength", "coupling-bore/pinchTensileStrength",
	},
	"the figures of a rule are what the rule is": {
		"shaft-strength/yachtSafetyFactor", "shaft-strength/ruleScale", "shaft-strength/ruleFactor", "shaft-strength/ruleStrength", "shaft-strength/ruleOffset", "shaft-strength/tensileCap",
		"shaft-strength/allowanceRate", "shaft-strength/allowanceDivisor", "shaft-strength/ruleMinimum",
	},
	"of a bearing's rating and its factors the life's own scatter is the reliability factor": {
		"bearing-life/dynamicRating", "bearing-life/staticRating", "bearing-life/staticRadialFactor", "bearing-life/staticAxialFactor", "bearing-life/radialFactor", "bearing-life/axialFactor",
		"bearing-life/axialRow", "bearing-life/loadLimit", "bearing-life/reliabilityFactor",
	},
	"declared powers and the torque from them: what rules of strength are written for, with what goes beyond it in the shock factor": {
		"shaft-torque/enginePower", "shaft-strength/shaftPower", "coupling-grip/shaftTorque", "coupling-grip/asternTorque", "key-strength/shaftTorque", "coupling-key/shaftTorque", "coupling-bore/shaftTorque", "coupling-bore/asternTorque", "output-flange/shaftTorque", "propeller-taper/shaftTorque", "propeller-taper/asternTorque", "line-joints/shaftTorque", "line-joints/asternTorque", "mount-load/shaftTorque",
		"mount-load/asternTorque", "vibration-source/enginePower", "sea-trial/engineSpeed", "sea-trial/idleSpeed",
	},
	"a ratio of teeth": {
		"shaft-torque/gearRatioAhead", "shaft-torque/gearRatioAstern", "shaft-whirl/gearRatioAhead", "vibration-source/gearRatioAhead", "vibration-source/gearRatioAstern", "sea-trial/ratioAhead", "sea-trial/ratioAstern",
	},
	"has its scatter in an input of its own": {
		"output-flange/nutFactor", "output-flange/threadFriction", "output-flange/nutFriction", "output-flange/torqueScatter", "output-flange/turnScatter",
		"bolt-preload/nutFactor", "bolt-preload/threadFriction", "bolt-preload/headFriction", "bolt-preload/torqueScatter", "bolt-preload/stretchScatter", "bolt-preload/turnScatter", "bolt-preload/wrenchScatter", "bolt-preload/tighteningFactor",
		"vibration-source/engineSpeed", "vibration-source/frequency", "vibration-source/mountFrequency", "vibration-source/mountAccuracy", "vibration-source/frequencyAccuracy", "vibration-source/speedAccuracy",
		"vibration-source/bearingSlip", "gland-drip/batteryEnergy",
	},
	"from the bearing's drawing, which fixes its frequencies to less than the slip": {
		"vibration-source/ballDiameter", "vibration-source/bearingPitch", "vibration-source/contactAngle",
	},
	"where a point lies that other figures are for": {
		"fluid-settling/densityPoint", "fluid-settling/coolPoint", "fluid-settling/hotPoint", "coupling-alignment/readings/clock", "coupling-alignment/readings/turn",
		"dial-alignment/dialReadings/clock", "alignment-change/gapsBefore/clock", "alignment-change/gapsBefore/turn", "alignment-change/gapsNow/clock", "alignment-change/gapsNow/turn", "alignment-change/stepsBefore/clock", "alignment-change/stepsBefore/turn", "alignment-change/stepsNow/clock", "alignment-change/stepsNow/turn", "alignment-change/dialBefore/clock", "alignment-change/dialNow/clock", "coupling-alignment/rimReadings/clock", "coupling-alignment/rimReadings/turn",
	},
	"a length by tape, whose millimetre moves the result by less than its last digit": {
		"shaft-droop/spanBehind", "shaft-droop/propellerOverhang", "shaft-droop/couplingCentre", "shaft-droop/stepLength", "shaft-droop/shaftIncline",
		"shaft-whirl/sections/length", "shaft-whirl/sections/diameter", "shaft-whirl/sections/bore", "shaft-whirl/bearings/at", "shaft-whirl/bearings/length", "shaft-whirl/propellerAt",
		"shaft-whirl/propellerOverhang", "shaft-whirl/couplingAt", "shaft-whirl/masses/at", "shaft-whirl/masses/mass", "*/mounts/forward", "*/mounts/starboard", "*/mounts/up",
	},
	"off a clock or a counter, to a part that does not count": {
		"output-flange/runningTime", "backlash/runningTime",
		"bearing-clearance/runningTime", "fluid-settling/standingTime", "mount-load/mountAge", "wear-debris/serviceTime", "reading-trend/readings/engineHours", "service-schedule/*",
	},
	"picks a row": {"coupling-alignment/shaftSpeed", "dial-alignment/shaftSpeed", "mount-moves/shaftSpeed"},
	"measured out by the laboratory": {
		"fluid-cleanliness/sampleVolume", "fluid-cleanliness/countedVolume",
	},
	"the trend takes the scatter of its readings from the readings": {
		"reading-trend/fluidVolume", "reading-trend/leftVolume", "reading-trend/readings/waterTemperature", "reading-trend/readings/fluidAdded",
	},
	"quotes, and what their owner holds likely: the sheet says where the choice turns": {"repair-or-replace/*"},
	"salt, which moves water's heat by less than a hundredth":                          {"gland-heat/salinity", "shaft-torque/waterDensity"},
	"geometry": {"wear-debris/strengthPower", "wear-debris/wornSides"},
	"read beside a speed, and shown as it was read": {"sea-trial/runs/boatSpeed"},
}

// Every number that goes into a calculation is read by a gauge, counted, set,
// has a row that says how far off it may be, or a reason why it is exact.
func TestNoNumberIsExactWithoutAReason(t *testing.T) {
	table, met := rules.Standard().Table(inputs.BareFigures), map[string]bool{}
	stands := func(id, name string) bool {
		for _, names := range exact {
			for _, key := range []string{id + "/" + name, "*/" + name, id + "/*"} {
				if slices.Contains(names, key) {
					met[key] = true
					return true
				}
			}
		}
		return false
	}
	used := map[string]bool{"digits": true}
	look := func(id, name string, p *contract.Property) {
		if p.Kind == nil {
			return // a word, a yes or no, or a whole number, which is a count
		}
		if p.Bare != "" {
			used[p.Bare] = true
			if p.Bare != "digits" && table.Find(p.Bare, nil) == nil {
				t.Errorf("%s/%s: there is no row %q of %s", id, name, p.Bare, inputs.BareFigures)
			} else if p.Bare != "digits" {
				if _, err := p.Kind.ParseAccuracy(table.Find(p.Bare, nil).Values.Of("accuracy").Text, 300); err != nil {
					t.Errorf("%s/%s: %v", id, name, err)
				}
			}
		}
		if given := p.ReadBy != "" || p.Setting || p.CountedIn != "" || p.Bare != ""; !given && !stands(id, name) {
			t.Errorf("%s/%s (%s): a figure without ± is taken for exact: say what reads it (readBy), that it is set (setting), what it is usually off by (bare), or here why it is exact", id, name, p.Title)
		}
	}
	for _, f := range openAll(t) {
		for _, p := range f.Input.Properties {
			look(f.ID, p.Name, p)
			if p.Items != nil {
				for _, part := range p.Items.Properties {
					look(f.ID, p.Name+"/"+part.Name, part)
				}
			}
		}
	}
	for reason, names := range exact {
		for _, key := range names {
			if !met[key] {
				t.Errorf("%s needs no reason (%s)", key, reason)
			}
		}
	}
	for _, r := range table.Rows.All() {
		if !used[r.ID] {
			t.Errorf("no input is off by the row %s", r.ID)
		}
	}
}
