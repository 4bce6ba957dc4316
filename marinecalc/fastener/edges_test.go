package fastener

import (
	"fmt"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

func TestEdgesOfPreload(t *testing.T) {
	parttest.Edges(t, read(), Preload, map[string]string{
		"/stretchMeasured":        fmt.Sprintf("[0, %v]", 0.05*0.024+0.05*0.010),
		"/turnMeasured":           fmt.Sprintf("[0, %v]", fullCircle),
		"/stretchScatter":         "(0, inf)",
		"/turnScatter":            "(0, inf)",
		"/clampedFaces":           "[0, 20]",
		"/settlingEnds":           "[0, inf)",
		"/settlingFaces":          "[0, inf)",
		"/freeLength":             fmt.Sprintf("about 0 or (%v, %v)", 0.0464*0.95, 0.0464*1.05),
		"/freeLengthNew":          "[0, inf)", // the other one is blamed
		"/nominalDiameter":        "(0, inf)",
		"/yieldStrength":          "(0, inf)",
		"/nutFactor":              "(0, inf)",
		"/torqueScatter":          "(0, inf)",
		"/wrenchScatter":          "[0, inf)",
		"/tensionFraction":        "any",
		"/wrenchLength":           "(0, inf)",
		"/boltModulus":            "(0, inf)",
		"/memberModulus":          "(0, inf)",
		"/pitch":                  fmt.Sprintf("(0, %v)", 0.010/rootDepth(Metric)),
		"/proofStrength":          "[0, 6.4e+08]",
		"/tensileStrength":        "0 or [6.4e+08, inf)",
		"/threadFriction":         "(0, 1)",
		"/headFriction":           "(0, 1)",
		"/proofFraction":          "(0, 1]",
		"/yieldFraction":          "any",
		"/prevailingTorque":       "[0, inf)",
		"/torqueUsed":             "[0, inf)",
		"/extensionLength":        "[0, inf)",
		"/headBearingDiameter":    "[0, inf)",
		"/permittedBearingStress": "[0, inf)",
		"/gripLength":             "[0, inf)",
		"/boltStiffness":          "[0, inf)",
		"/memberStiffness":        "[0, inf)",
		"/externalLoad":           "[0, inf)",
		"/tighteningFactor":       "0 or [1, inf)",
		"/holeDiameter":           fmt.Sprintf("0 or [%v, 0.0146)", 0.010-pitchDepth*0.0015),
		"/shankLength":            "[0, 0.024]",
	})
}

func TestEdgesOfFit(t *testing.T) {
	in := twoFlanges()
	in.BoltLength = 0.045
	parttest.Edges(t, in, Fit, map[string]string{
		"/nominalDiameter":          "(0, inf)",
		"/headFlangeThickness":      "(0, inf)",
		"/nutFlangeThickness":       "(0, inf)",
		"/nutHeight":                "(0, inf)",
		"/pitch":                    fmt.Sprintf("about (0, %v)", 0.010/inchRootDepth),
		"/spacerThickness":          "[-0.002, inf)",
		"/socketHeight":             "[-0.002, inf)",
		"/washersAtHead":            "[0, 4]",
		"/washersAtNut":             "[0, 4]",
		"/washerThickness":          "[0, inf)",
		"/headHeight":               "[0, inf)",
		"/protrudingThreads":        "[0, inf)",
		"/boltLength":               "[0, inf)",
		"/headRoom":                 "[0, inf)",
		"/nutRoom":                  "[0, inf)",
		"/socketWidth":              "[0, inf)",
		"/wrenchSetting":            "[0, inf)",
		"/measuredPrevailingTorque": "[0, inf)",
		"/reuseTorque":              "[0, inf)",
		"/threadLength":             "[0, 0.045]",
		"/roundRoom":                "0 or [0.005, inf)",
		"/boltCount":                "0 or [2, 48]",
		"/firstPass":                "(0, 1]",
		"/secondPass":               "[0.33, 1]",
	})
}

// A share of yield takes the friction in the thread and its own share; without
// an elastic modulus there must be a stiffness.
func TestEdgesOfTarget(t *testing.T) {
	in := whole()
	in.Target, in.Method = Yield, Short
	for share, refused := range map[quantity.Ratio]bool{0: true, 1e-9: false, 1: false, 1 + 1e-6: true} {
		in.YieldFraction = share
		if _, err := Preload(in); refused {
			parttest.RefusedAt(t, err, "/yieldFraction")
		} else if err != nil {
			t.Errorf("%g of yield: %v", float64(share), err)
		}
	}
	in = whole()
	in.BoltModulus, in.MemberModulus, in.BoltStiffness, in.MemberStiffness = 0, 0, 1e8, 1e9
	if _, err := Preload(in); err != nil {
		t.Errorf("both stiffnesses given: %v", err)
	}
}

func TestRefusalsSayTheirFigures(t *testing.T) {
	for says, change := range map[string]func(*FitInput){
		"1 bolts":                       func(s *FitInput) { s.BoltCount = 1 },
		"2 to 48":                       func(s *FitInput) { s.BoltCount = 49 },
		"5 washers":                     func(s *FitInput) { s.WashersAtNut, s.WasherThickness = 5, 0.002 },
		"(50 mm) than the bolt (40 mm)": func(s *FitInput) { s.BoltLength, s.ThreadLength = 0.040, 0.050 },
		"4 mm from its middle":          func(s *FitInput) { s.RoundRoom = 0.004 },
		"the bolt reaches 5 mm":         func(s *FitInput) { s.RoundRoom = 0.004 },
		"a metric thread of 10 mm":      func(s *FitInput) { s.ThreadSize = "7/16-14" },
		"0.5 in and 13 threads per inch": func(s *FitInput) {
			s.ThreadSize, s.ThreadForm, s.NominalDiameter, s.Pitch = "7/16-14", Inch, 0.5*inch, inch/13
		},
	} {
		in := twoFlanges()
		change(&in)
		_, err := Fit(in)
		parttest.Says(t, err, says)
	}
	// The lead of 1.5 mm takes 1.5/(2·π·10) of the diameter.
	in := whole()
	in.ThreadFriction, in.HeadFriction, in.NutFactor = 0, 0, 0.023
	_, err := Preload(in)
	parttest.Says(t, err, "above 0.0239")
}
