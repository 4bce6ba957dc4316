package flange

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

func TestEdgesOfOutput(t *testing.T) {
	given := "[0, inf)"
	edges := map[string]string{
		"/nominalDiameter": "any", "/pitch": "any", // what the thread leaves is tried below
		"/torqueScatter": "(0, inf)", "/turnScatter": "(0, inf)", "/shaftModulus": "(0, inf)", "/stackModulus": "(0, inf)",
		"/seatDiameter": "any",
		"/nutTorque":    "about (0, 41118.70533)", "/nutTurn": "about [0, 5.36165146213)", "/looseningTorque": "about [0, 41118.70533)", "/nutFactor": "(0, inf)",
		"/nutFaceDiameter": "0 or (0.03, inf)", "/hubDiameter": "0 or (0.03, inf)", "/ringDiameter": "0 or (0.03, inf)", "/spacerDiameter": "0 or (0.03, inf)", "/faceDiameter": "0 or (0.03, inf)",
		"/shaftBore": "about [0, 0.0221596965)", "/threadInside": "about [0, 0.064]",
		"/hubLength": "[-0.0003, inf)", "/ringLength": "[-0.0003, inf)", "/spacerLength": "[-0.0003, inf)",
		"/driverLength": "[-0.0003, inf)", "/nutRecess": "[-0.0003, inf)", "/stubLength": "[-0.0003, inf)",
		"/threadFriction": "[0, 1)", "/nutFriction": "[0, 1)", "/faceFriction": "[0, 1)",
		"/faceWear": "NaN or [-0.0003, inf)", "/earlierWear": "NaN or [-0.0003, inf)", "/pullAstern": "NaN or [0, inf)", "/bendingMoment": "NaN or [0, inf)",
		"/permittedBearingStress": given, "/runningTime": given, "/shaftTorque": given, "/peakTorque": given, "/frictionFaces": "[0, 2]", "/driveTeeth": "[0, 200]", "/teethBearing": "(0, 1]",
		"/driveDepth": given, "/driveLength": given, "/driveDiameter": given, "/permittedPressure": given, "/shaftYieldStrength": given,
		"/barLength": "0 or (0.04, inf)", "/boltCircle": "[0, inf)", "/holdBoltDiameter": "[0, inf)", "/holdBoltYield": given,
		"/standOff": given, "/barThickness": given, "/barHeight": "0 or (0.008, inf)", "/barYield": given, "/socketLength": given, "/pullerLength": given,
	}
	in := smallGearbox()
	parttest.Edges(t, in, Output, edges)

	for where, change := range map[string]func(*OutputInput){
		"/pitch":           func(in *OutputInput) { in.Pitch = 0.020 },
		"/threadForm":      func(in *OutputInput) { in.ThreadForm = "" },
		"/drive":           func(in *OutputInput) { in.Drive = "" },
		"/nominalDiameter": func(in *OutputInput) { in.NominalDiameter = 0 },
		"/seatDiameter":    func(in *OutputInput) { in.SeatDiameter = 0.020 },
		"/nutTorque":       func(in *OutputInput) { in.NutTorque = 0 },
		"/nutFactor":       func(in *OutputInput) { in.NutFactor = 0 },
	} {
		in := smallGearbox()
		change(&in)
		_, err := Output(in)
		parttest.RefusedAt(t, err, where)
	}
	in.NutTorque, in.LooseningTorque, in.NutFactor, in.NutTurn = 0, 0, 0, 0.2 // a turn needs no friction
	parttest.Must(t, Output, in)
}

func TestEdgesOfRunOut(t *testing.T) {
	in := RunOutInput{FaceRunOut: 0.0001, FaceAt: 1, RimRunOut: 0.0001, RimAt: 2, FaceRunOutMoved: 0.00005, FaceAtMoved: 3, RimRunOutMoved: 0.00005, RimAtMoved: 4,
		SplineTeeth: 20, TeethMoved: 7, FaceReadDiameter: 0.1, CouplingDiameter: 0.11, FaceSpread: 5e-6, RimSpread: 5e-6, FaceAtSpread: 0.1, RimAtSpread: 0.1}
	read, at := "NaN or [-0.0003, inf)", "NaN or (-inf, inf)"
	parttest.Edges(t, in, RunOut, map[string]string{
		"/faceRunOut": read, "/rimRunOut": read, "/faceRunOutMoved": read, "/rimRunOutMoved": read,
		"/faceAt": at, "/rimAt": at, "/faceAtMoved": at, "/rimAtMoved": at,
		"/faceSpread": "[0, inf)", "/rimSpread": "[0, inf)", "/faceAtSpread": "[0, inf)", "/rimAtSpread": "[0, inf)",
		"/splineTeeth": "[0, 200]", "/teethMoved": "any", "/faceReadDiameter": "about [0, 0.121)", "/couplingDiameter": "[0, inf)",
	})
	in.TeethMoved = 40
	_, err := RunOut(in)
	parttest.RefusedAt(t, err, "/teethMoved")
	nan := quantity.Length(math.NaN())
	in.TeethMoved, in.FaceRunOut, in.RimRunOut = 7, nan, nan
	_, err = RunOut(in)
	parttest.RefusedAt(t, err, "/faceRunOut")
}

func TestEdgesOfBacklash(t *testing.T) {
	in := BacklashInput{AtPropeller: 0.08, TravelAtPropeller: 0.01, RadiusAtPropeller: 0.2, AtShaft: 0.05, TravelAtShaft: 0.002, RadiusAtShaft: 0.05, AtFlange: 0.04, TravelAtFlange: 0.002, RadiusAtFlange: 0.05,
		AtOutputShaft: 0.02, TravelAtOutputShaft: 0.001, RadiusAtOutputShaft: 0.05, HandTorque: 8, ShaftLength: 2, ShaftDiameter: 0.03, ShearModulus: 76e9, EarlierAtPropeller: 0.03, RunningTime: 3600,
		SplineDiameter: 0.03, CouplingBore: 0.03, PropellerDiameter: 0.027,
		PropellerSpread: 0.01, PropellerTravelSpread: 1e-4, ShaftSpread: 0.01, ShaftTravelSpread: 1e-4, FlangeSpread: 0.01, FlangeTravelSpread: 1e-4, OutputShaftSpread: 0.01, OutputShaftTravelSpread: 1e-4}
	angle, travel, given := "NaN or [-0.05, 3.141592653589793]", "NaN or [-0.005, inf)", "[0, inf)"
	parttest.Edges(t, in, Backlash, map[string]string{
		"/atPropeller": angle, "/atShaft": angle, "/atFlange": angle, "/atOutputShaft": angle, "/earlierAtPropeller": angle,
		"/travelAtPropeller": travel, "/travelAtShaft": travel, "/travelAtFlange": travel, "/travelAtOutputShaft": travel,
		"/radiusAtPropeller": given, "/radiusAtShaft": given, "/radiusAtFlange": given, "/radiusAtOutputShaft": given,
		"/handTorque": given, "/shaftLength": given, "/shaftDiameter": given, "/shearModulus": "(0, inf)", "/runningTime": given,
		"/splineDiameter": given, "/couplingBore": given, "/propellerDiameter": given,
		"/propellerSpread": given, "/propellerTravelSpread": given, "/shaftSpread": given, "/shaftTravelSpread": given,
		"/flangeSpread": given, "/flangeTravelSpread": given, "/outputShaftSpread": given, "/outputShaftTravelSpread": given,
	})
	nan := math.NaN()
	none := BacklashInput{AtPropeller: quantity.Angle(nan), TravelAtPropeller: quantity.Length(nan), AtShaft: quantity.Angle(nan), TravelAtShaft: quantity.Length(nan),
		AtFlange: quantity.Angle(nan), TravelAtFlange: quantity.Length(nan), AtOutputShaft: quantity.Angle(nan), TravelAtOutputShaft: quantity.Length(nan), EarlierAtPropeller: quantity.Angle(nan), ShearModulus: 76e9}
	_, err := Backlash(none)
	parttest.RefusedAt(t, err, "/atPropeller")
	none.TravelAtFlange = 0.002
	_, err = Backlash(none)
	parttest.RefusedAt(t, err, "/radiusAtFlange")
	none.RadiusAtFlange = 0.05
	parttest.Must(t, Backlash, none)
	none.TravelAtFlange = 0.157 // half a turn is π·0.05 m
	parttest.Must(t, Backlash, none)
	none.TravelAtFlange = 0.158
	_, err = Backlash(none)
	parttest.RefusedAt(t, err, "/travelAtFlange")
}
