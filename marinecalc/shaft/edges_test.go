package shaft

import (
	"fmt"
	"maps"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
)

func TestEdgesOfStrength(t *testing.T) {
	parttest.Edges(t, ketch(), Strength, map[string]string{
		"/shaftDiameter":        "(0, inf)",
		"/shaftPower":           "(0, inf)",
		"/shaftSpeed":           "(0, inf)",
		"/shaftBore":            "[0, 0.028)",
		"/peakTorque":           "[0, inf)",
		"/thrust":               "[0, inf)",
		"/bendingMoment":        "[0, inf)",
		"/shaftYieldStrength":   "[0, inf)",
		"/torsionalYield":       "[0, inf)",
		"/shaftTensileStrength": "0 or [207e6, inf)",
		"/yachtSafetyFactor":    "[0, inf)",
		"/ruleScale":            "[0, inf)",
		"/ruleFactor":           "[0, inf)",
		"/ruleStrength":         "[0, inf)",
		"/ruleOffset":           "[0, inf)",
		"/tensileCap":           "[0, inf)",
		"/propellerDiameter":    "[0, inf)",
		"/allowanceRate":        "[0, inf)",
		"/allowanceDivisor":     "[0, inf)",
		"/ruleMinimum":          "[0, inf)",
		"/sectionFactor":        "0 or [1, 10]",
		"/notchFactor":          "0 or [1, 10]",
		"/fatigueStrength":      "[0, inf)",
		"/neckDiameter":         "[0, 0.02856]",
	})
}

func TestEdgesOfKeyStrength(t *testing.T) {
	in := sloopKey()
	in.ShaftDiameter, in.SmallEndDiameter, in.KeyWidth, in.KeyHeight, in.KeySeat = 0.030, 0.025, 0.006, 0.006, 0.003
	in.TaperLength = 0.06
	parttest.Edges(t, in, KeyStrength, map[string]string{
		"/shaftDiameter":      "(0, inf)",
		"/shaftTorque":        "(0, inf)",
		"/keyLength":          "(0, 0.06]",
		"/taperLength":        "any",
		"/largeEndDiameter":   "any",
		"/keyYieldStrength":   "(0, inf)",
		"/keyWidth":           "(0, 0.015]",
		"/keyHeight":          "[0, 0.015]",
		"/keySeat":            "[0, 0.006)",
		"/smallEndDiameter":   "[0, 0.03)",
		"/taperRatio":         "NaN or [0, 0.25]",
		"/meanShare":          "0 or [0.6, 1]",
		"/heightShare":        "0 or [0.3, 2]",
		"/seatShare":          "0 or [0.3, 0.8]",
		"/peakTorque":         "[0, inf)",
		"/shaftYieldStrength": "[0, inf)",
		"/hubYieldStrength":   "[0, inf)",
		"/wantedSafety":       "[0, inf)",
		"/keyCount":           "[0, 2]",
	})
}

func TestEdgesOfDroop(t *testing.T) {
	parttest.Edges(t, cutter(), Droop, map[string]string{
		"/shaftDiameter":     "(0, inf)",
		"/freeLength":        "(0, inf)",
		"/elasticModulus":    "(0, inf)",
		"/shaftDensity":      "(0, inf)",
		"/stepDiameter":      "(0, inf)",
		"/couplingMass":      "[0, inf)",
		"/couplingDiameter":  "[0, inf)",
		"/spanBehind":        "[0, inf)",
		"/propellerMass":     "[0, inf)",
		"/propellerOverhang": "[0, inf)",
		"/couplingCentre":    "[0, 0.1]",
		"/stepLength":        "[0, 0.7)",
		"/shaftBore":         "[0, 0.025)",
		"/shaftIncline":      "[-1, 1]",
	})
}

func TestEdgesOfWhirl(t *testing.T) {
	along := fmt.Sprintf("[%v, %v]", -endSlack*2.75, 2.75*(1+endSlack))
	parttest.Edges(t, cruiser(), Whirl, map[string]string{
		"/sections/0/length":   "(0, inf)",
		"/sections/0/diameter": "(0, inf)",
		"/shaftSpeed":          "(0, inf)",
		"/elasticModulus":      "(0, inf)",
		"/shaftDensity":        "(0, inf)",
		"/sections/0/bore":     "[0, 0.03)",
		"/bearings/0/at":       along,
		"/masses/0/at":         along,
		"/propellerAt":         along,
		"/couplingAt":          along,
		"/bearings/0/length":   "[0, inf)",
		"/masses/0/mass":       "[0, inf)",
		"/propellerMass":       "[0, inf)",
		"/entrainedWater":      "[0, inf)",
		"/couplingMass":        "[0, inf)",
		"/propellerOverhang":   "[0, inf)",
		"/blades":              "[0, inf)",
		"/endFixity":           "[0, 1]",
		"/supportFactor":       "[0, 1]",
		"/idleSpeed":           "[0, inf)",
		"/gearRatioAhead":      "[0, inf)",
		"/spanGuideFast":       "[0, inf)",
		"/spanGuideSlow":       "[0, inf)",
	})
}

func TestEdgesOfWithdrawal(t *testing.T) {
	for task, needs := range map[Task]map[string]string{
		CouplingOff:  {"/socketDepth": "(0, 0.09]"}, // of a coupling of 85 mm, less what a rule may be out
		SealRenewal:  {"/socketDepth": "(0, 0.09]", "/sealLength": "(0, inf)"},
		ShaftOut:     {"/shaftInboard": "(0, inf)"},
		PropellerOff: {"/propellerHubLength": "(0, inf)"},

		OutputFlangeOff: {"/flangeGap": "(0, inf)"},
	} {
		in := yawl()
		in.Task = task
		edges := map[string]string{
			"/roomAft":            "[-0.005, inf)",
			"/roomRudderOver":     "[-0.005, inf)",
			"/roomForward":        "[-0.005, inf)",
			"/workingClearance":   "[0, inf)",
			"/pilotDepth":         "[0, inf)",
			"/couplingLength":     "[0, inf)",
			"/socketDepth":        "any",
			"/sealLength":         "any",
			"/shaftInboard":       "any",
			"/propellerHubLength": "any",
			"/flangeGap":          "any",
		}
		maps.Copy(edges, needs)
		parttest.Edges(t, in, Withdrawal, edges)
	}
}
