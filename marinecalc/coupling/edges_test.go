package coupling

import (
	"fmt"
	"testing"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

func TestEdgesOfGrip(t *testing.T) {
	parttest.Edges(t, small(), Grip, map[string]string{
		"/boltCount":            "[2, 23]",
		"/boltCircle":           "(0.036, 0.094)",
		"/preload":              "(0, inf)",
		"/strippingLoad":        "NaN or [0, inf)",
		"/shaftTorque":          "(0, inf)",
		"/faceFriction":         "(0, 1)",
		"/asternTorque":         "[0, inf)",
		"/peakTorque":           "[0, inf)",
		"/thrustAstern":         "[0, inf)",
		"/thrust":               "[0, inf)",
		"/innerBoltCircle":      "[0, inf)",
		"/nominalDiameter":      "[0, inf)",
		"/yieldStrength":        "[0, inf)",
		"/tensileStrength":      "[0, inf)",
		"/permittedShear":       "[0, inf)",
		"/shaftDiameter":        "[0, inf)",
		"/shaftTensileStrength": "[0, inf)",
		"/couplingDiameter":     "[0, inf)",
		"/holeDiameter":         "[0, inf)",
		"/asternThrust":         "[0, 2]",
		"/thrustOnCoupling":     "[0, 1]",
		"/proofStrength":        "[0, inf)",
		"/lowerProofStrength":   "[0, inf)",
		"/lowerYieldStrength":   "[0, inf)",
		"/innerBoltCount":       "[0, 48]",
		"/pitch":                fmt.Sprintf("about (0, %v)", 0.010/inchRootDepth),
		"/bearingShare":         "(0, 1]",
	})
}

func TestEdgesOfGripOfTwoCircles(t *testing.T) {
	in := small()
	in.InnerBoltCount, in.InnerBoltCircle = 4, 0.060
	in.ShearPlane, in.NominalDiameter, in.HoleDiameter, in.ShaftDiameter, in.CouplingDiameter = Shank, 0, 0, 0, 0
	parttest.Edges(t, in, Grip, map[string]string{
		"/boltCount":            "[2, 48]",
		"/innerBoltCircle":      "(0, 0.0825]",
		"/boltCircle":           "(0, inf)",
		"/preload":              "(0, inf)",
		"/strippingLoad":        "NaN or [0, inf)",
		"/shaftTorque":          "(0, inf)",
		"/faceFriction":         "(0, 1)",
		"/asternTorque":         "[0, inf)",
		"/peakTorque":           "[0, inf)",
		"/thrustAstern":         "[0, inf)",
		"/thrust":               "[0, inf)",
		"/nominalDiameter":      "[0, inf)",
		"/yieldStrength":        "[0, inf)",
		"/tensileStrength":      "[0, inf)",
		"/permittedShear":       "[0, inf)",
		"/shaftDiameter":        "[0, inf)",
		"/shaftTensileStrength": "[0, inf)",
		"/couplingDiameter":     "[0, inf)",
		"/holeDiameter":         "[0, inf)",
		"/pitch":                "[0, inf)",
		"/asternThrust":         "[0, 2]",
		"/thrustOnCoupling":     "[0, 1]",
		"/proofStrength":        "[0, inf)",
		"/lowerProofStrength":   "[0, inf)",
		"/lowerYieldStrength":   "[0, inf)",
		"/innerBoltCount":       "[0, 48]",
		"/bearingShare":         "(0, 1]",
	})
}

func TestRefusalsSayTheirFigures(t *testing.T) {
	for says, change := range map[string]func(*GripInput){
		"shaft and hole take 36 mm, the circle is 30 mm": func(in *GripInput) { in.BoltCircle = 0.030 },
		"the flange leaves 94 mm, the circle is 100 mm":  func(in *GripInput) { in.BoltCircle = 0.100 },
		"10.77 mm apart, each is 11 mm wide":             func(in *GripInput) { in.BoltCount = 24 },                                // 82.5·sin 7.5°
		"7.822 mm apart, each is 11 mm wide":             func(in *GripInput) { in.InnerBoltCount, in.InnerBoltCircle = 20, 0.05 }, // 50·sin 9°
		"proof 830 against 580 MPa":                      func(in *GripInput) { in.LowerProofStrength = 830e6 },
		"1 bolts":                                        func(in *GripInput) { in.BoltCount = 1 },
		"49 bolts":                                       func(in *GripInput) { in.InnerBoltCount, in.InnerBoltCircle = 49, 0.05 },
	} {
		in := small()
		change(&in)
		_, err := Grip(in)
		parttest.Says(t, err, says)
	}
}

// Holes that touch the shaft, the rim or one another leave no metal between.
// All sizes are exact in binary: 1/32 m of shaft, holes of 1/64 m.
func TestHolesThatTouch(t *testing.T) {
	in := small()
	in.ShaftDiameter, in.HoleDiameter, in.CouplingDiameter, in.BoltCount = 1./32, 1./64, 1./8, 2
	for circle, where := range map[quantity.Length]string{3. / 64: "/boltCircle", 7. / 64: "/boltCircle"} {
		in.BoltCircle = circle
		_, err := Grip(in)
		parttest.RefusedAt(t, err, where)
		in.BoltCircle += 1e-6 * quantity.Length(1-2*int(circle*16)) // a micrometre inward of the rim, outward of the shaft
		parttest.Must(t, Grip, in)
	}
	in.ShaftDiameter, in.CouplingDiameter, in.BoltCircle = 0, 0, 1./64
	_, err := Grip(in)
	parttest.RefusedAt(t, err, "/boltCount")
}

// Two holes of the second circle lie as far apart as that circle is wide: where
// that is a hole, they meet.
func TestTwoHolesOfTheSecondCircle(t *testing.T) {
	in := small()
	in.InnerBoltCount, in.InnerBoltCircle = 2, 0.011
	_, err := Grip(in)
	parttest.RefusedAt(t, err, "/innerBoltCount")
	in.InnerBoltCircle = 0.0111
	parttest.Must(t, Grip, in)
}

// The root that bears where a thread lies between the faces: ISO 724 has 8.160
// mm for M10; ASME B1.1 by its depth of 1.299038 pitches 0.4001 in for 1/2-13.
func TestRootOfAThreadBetweenTheFaces(t *testing.T) {
	in := small()
	parttest.Near(t, "M10", hold(t, in).ShearDiameter, 8.160e-3, 0.5e-6)
	in.NominalDiameter, in.Pitch, in.ThreadForm, in.HoleDiameter = 0.5*0.0254, 0.0254/13, fastener.Inch, 0.0135
	parttest.Near(t, "1/2-13", hold(t, in).ShearDiameter, 0.4001*0.0254, 0.00005*0.0254)
}

// A shaft whose diameter is not known accuses no bolt circle of lying too near
// it: a circle smaller than its own holes is refused for the holes alone.
func TestAnUnknownShaftTakesNoRoom(t *testing.T) {
	in := small()
	in.ShaftDiameter, in.BoltCircle = 0, 0.010
	_, err := Grip(in)
	parttest.RefusedAt(t, err, "/boltCount")
	for _, p := range problem.Of(err) {
		if p.Where == "/boltCircle" {
			t.Error(p)
		}
	}
}

// Bolts all of one grade are no mixture, and a small peak torque is one too.
func TestOneGradeAndSmallTorques(t *testing.T) {
	in := small()
	in.LowerProofStrength, in.LowerYieldStrength = in.ProofStrength, in.YieldStrength
	parttest.Near(t, "one grade", float64(hold(t, in).GradeRatio), 1, 1e-12)
	in.ShaftTorque, in.AsternTorque, in.PeakTorque = 0.4, 0.3, 0.9
	if out := hold(t, in); !(out.MarginHardest > 1) {
		t.Errorf("a model's coupling: %g", out.MarginHardest)
	}
}
