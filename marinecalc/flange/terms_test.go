package flange

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/fastener"
	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// Stress in the shaft's thread while the nut is tightened: tension over the
// ring and the twist of lead and thread friction, added up over small pieces of
// the ring (Saint-Venant: it grows with the radius), by the distortion energy.
func TestThreadStressAsASum(t *testing.T) {
	in := smallGearbox()
	in.ShaftBore, in.ThreadFriction, in.NutFriction = 0.010, 0.13, 0.11
	out := parttest.Must(t, Output, in)
	d2, d3 := 0.024-0.649519*0.0015, 0.024-1.226869*0.0015 // ISO 898-1
	parttest.Near(t, "pitch diameter", out.PitchDiameter, d2, 1e-12)
	parttest.Near(t, "root", out.MinorDiameter, d3, 1e-12)
	parttest.Near(t, "stress diameter", out.StressDiameter, (d2+d3)/2, 1e-12)
	outer, inner := (d2+d3)/4, 0.005
	area, polar := 0.0, 0.0
	const n = 20000
	for i := range n {
		r := inner + (outer-inner)*(float64(i)+0.5)/n
		area += 2 * math.Pi * r * (outer - inner) / n
		polar += 2 * math.Pi * r * r * r * (outer - inner) / n
	}
	force := float64(out.FittedClamp)
	twist := force * (0.0015/(2*math.Pi) + 0.13*d2/2/math.Cos(math.Pi/6))
	tension, torsion := force/area, twist*outer/polar
	parttest.Within(t, "stress", out.ShaftStress, math.Sqrt(tension*tension+3*torsion*torsion), 1e-6)
	parttest.Within(t, "use", out.ShaftUse, float64(out.ShaftStress)/600e6, 1e-12)
}

// The nut factor comes to one friction in thread and face alike: with it the
// torque of lead, thread and face is K·F·d again. A face nobody measured is a
// hexagon's, 1.25 diameters (Shigley, ch. 8, from memory).
func TestNutFactorAsFriction(t *testing.T) {
	for _, face := range []quantity.Length{0.044, 0} {
		in := smallGearbox()
		in.NutFaceDiameter = face
		out := parttest.Must(t, Output, in)
		collar := 1.25 * 0.024
		if face > 0 {
			collar = (0.044 + 0.030) / 2
		}
		parttest.Near(t, "collar", out.CollarDiameter, collar, 1e-12)
		d2, mu := 0.024-0.649519*0.0015, float64(out.ThreadFrictionUsed)
		parttest.Within(t, "torque over clamp", 0.0015/(2*math.Pi)+mu*d2/2/math.Cos(math.Pi/6)+mu*collar/2, 0.18*0.024, 1e-9)
		parttest.Within(t, "clamp", out.ClampFromTorque, 240/(0.18*0.024), 1e-9)
		if out.NutFrictionUsed != out.ThreadFrictionUsed {
			t.Errorf("thread %g, face %g", out.ThreadFrictionUsed, out.NutFrictionUsed)
		}
	}
	// One friction given alone takes the other from the nut factor.
	in := smallGearbox()
	in.ThreadFriction = 0.2
	out := parttest.Must(t, Output, in)
	alike := parttest.Must(t, Output, smallGearbox())
	if out.ThreadFrictionUsed != 0.2 || out.NutFrictionUsed != alike.NutFrictionUsed {
		t.Errorf("thread %g, face %g", out.ThreadFrictionUsed, out.NutFrictionUsed)
	}
	in.NutFactor = 0.0099 // less than the lead alone takes
	if out = parttest.Must(t, Output, in); !math.IsNaN(float64(out.NutFrictionUsed)) {
		t.Errorf("friction %g of a nut factor under the lead's", out.NutFrictionUsed)
	}
	// A thread so steep and smooth that the nut would undo itself tells nothing.
	in = smallGearbox()
	in.ThreadFriction, in.NutFriction, in.Pitch = 0.001, 0.001, 0.003
	if out = parttest.Must(t, Output, in); !math.IsNaN(float64(out.ClampFromLoosening)) {
		t.Errorf("a nut that undoes itself: %g N", out.ClampFromLoosening)
	}
}

// The springs at work: the turn that makes the clamp takes up stretch and
// squeeze; of a pull the shaft takes on what its spring is of both; the smallest
// part gives the clamped face unless that was measured.
func TestSpringsAtWork(t *testing.T) {
	in := smallGearbox()
	out := parttest.Must(t, Output, in)
	parttest.Within(t, "turn", float64(out.TurnFromSnug)*0.0015/(2*math.Pi), float64(out.Stretch+out.Squeeze), 1e-9)
	parttest.Within(t, "share", out.LoadShare, float64(out.ShaftSpring)/float64(out.ShaftSpring+out.StackSpring), 1e-12)
	parttest.Near(t, "the ring is the smallest", out.FaceOutside, 0.042, 1e-12)
	in.FaceDiameter = 0.043
	parttest.Near(t, "measured", parttest.Must(t, Output, in).FaceOutside, 0.043, 1e-12)
	in.FaceDiameter, in.RingLength, in.RingDiameter, in.SpacerLength, in.SpacerDiameter = 0, 0, 0, 0, 0
	parttest.Near(t, "the hub alone", parttest.Must(t, Output, in).FaceOutside, 0.046, 1e-12)
	in = smallGearbox()
	in.HubLength = 0
	if out = parttest.Must(t, Output, in); !math.IsNaN(float64(out.StackSpring)) || !math.IsNaN(float64(out.ClampedLength)) {
		t.Errorf("a hub whose length nobody measured: %g N/m", out.StackSpring)
	}
	// Of an unmeasured stack any turn is taken, and none is made of it.
	in.NutTurn = 6
	parttest.Must(t, Output, in)
}

// Wear followed hour by hour at the rate between two readings: when the clamp is
// gone, or since when.
func TestWearHourByHour(t *testing.T) {
	in := smallGearbox() // 10 µm in 500 h
	out := parttest.Must(t, Output, in)
	parttest.Near(t, "in a thousand hours", out.FaceWearRate, 20e-6, 1e-12)
	worn, hours := 20e-6, 0
	for worn < float64(out.WearToLoss) {
		worn += 10e-6 / 500
		hours++
	}
	parttest.Near(t, "hours left", float64(out.TimeToLoss)/3600, float64(hours), 1)
	if out.LostAgo != 0 {
		t.Errorf("lost %g s ago while there is clamp", out.LostAgo)
	}
	in.FaceWear, in.EarlierWear = quantity.Length(float64(out.WearToLoss)+5e-6), quantity.Length(math.NaN())
	in.RunningTime = 1000 * 3600 // since it was tightened
	out = parttest.Must(t, Output, in)
	parttest.Near(t, "rate since the tightening", out.FaceWearRate, float64(in.FaceWear), 1e-12)
	parttest.Near(t, "hours since", float64(out.LostAgo)/3600, 5e-6/(float64(in.FaceWear)/1000), 0.01)
	if out.TimeToLoss != 0 || out.ShareLeft != 0 {
		t.Errorf("gone: %g s left, %g", out.TimeToLoss, out.ShareLeft)
	}
	// No wear between the readings: no date of loss, unless it lies behind.
	in = smallGearbox()
	in.EarlierWear = in.FaceWear
	if out = parttest.Must(t, Output, in); out.TimeToLoss != Never || out.LostAgo != 0 {
		t.Errorf("no wear: %g s, %g s", out.TimeToLoss, out.LostAgo)
	}
	in.FaceWear = 0.001
	in.EarlierWear = 0.001
	if out = parttest.Must(t, Output, in); !math.IsNaN(float64(out.TimeToLoss)) || !math.IsNaN(float64(out.LostAgo)) {
		t.Errorf("gone at no rate: %g s, %g s", out.TimeToLoss, out.LostAgo)
	}
	in = smallGearbox()
	in.FaceWear, in.EarlierWear = 0, -0.00005 // by its error a gauge reads slightly the other way
	if out = parttest.Must(t, Output, in); out.ShareLeft != 1 {
		t.Errorf("no wear leaves %g of the clamp", out.ShareLeft)
	}
	in.FaceWear = -0.0001
	if out = parttest.Must(t, Output, in); out.ShareLeft != 1 || out.RetorqueTurn != 0 {
		t.Errorf("a slightly negative reading leaves %g of the clamp", out.ShareLeft)
	}
	// A nut that came loose at little has the clamp of that, though its face wore
	// nothing: settling and creep take clamp too. One that rust held has no more than
	// the wear leaves.
	in = smallGearbox()
	in.FaceWear, in.EarlierWear, in.LooseningTorque = 0, quantity.Length(math.NaN()), 40
	if out = parttest.Must(t, Output, in); out.ClampLeft != out.ClampFromLoosening || out.ShareLeft > 0.2 || out.ShareLeft != out.ShareByLoosening {
		t.Errorf("undone at 40 N·m: %g N left, %g", out.ClampLeft, out.ShareLeft)
	}
	in.LooseningTorque = 400
	if out = parttest.Must(t, Output, in); out.ShareLeft != 1 {
		t.Errorf("held by rust: %g", out.ShareLeft)
	}
	// Known for how long, but nothing known of the stack: no time is told.
	in = smallGearbox()
	in.HubLength = 0
	if out = parttest.Must(t, Output, in); !math.IsNaN(float64(out.TimeToLoss)) || !math.IsNaN(float64(out.LostAgo)) {
		t.Errorf("of an unknown stack: %g s, %g s", out.TimeToLoss, out.LostAgo)
	}
	in = smallGearbox()
	in.FaceWear, in.EarlierWear, in.RunningTime = 0.0002, 0.00019999999, 1 // worn through, but hardly any since
	in.EarlierWear = quantity.Length(0.0002 - 1e-16)
	if out = parttest.Must(t, Output, in); out.LostAgo > Never {
		t.Errorf("lost %g s ago", out.LostAgo)
	}
}

// Flanks of a spline or key: tooth by tooth at the permitted pressure (SAE, as
// Machinery's Handbook has it). Without one nothing is told.
func TestFlanksToothByTooth(t *testing.T) {
	in := smallGearbox()
	out := parttest.Must(t, Output, in)
	torque := 0.0
	for range 10 { // half of twenty bear
		torque += 60e6 * 0.0015 * 0.036 * 0.0155
	}
	parttest.Within(t, "torque", out.DriveTorque, torque, 1e-12)
	parttest.Within(t, "pressure", out.DrivePressure, 60e6*340/torque, 1e-12)
	parttest.Within(t, "use", out.DriveUse, 340/torque, 1e-12)
	parttest.Within(t, "friction", out.MarginFriction, float64(out.FrictionTorque)/340, 1e-12)
	parttest.Within(t, "friction, steady", out.MarginSteady, float64(out.FrictionTorque)/170, 1e-12)
	one := out.FrictionTorque
	in.FrictionFaces = 2
	parttest.Within(t, "two faces", parttest.Must(t, Output, in).FrictionTorque, 2*float64(one), 1e-12)
	in.FrictionFaces, in.Drive = 0, Friction
	out = parttest.Must(t, Output, in)
	if out.FrictionTorque != one || !math.IsNaN(float64(out.DriveTorque)) || !math.IsNaN(float64(out.DrivePressure)) || !math.IsNaN(float64(out.DriveUse)) {
		t.Errorf("nothing but friction: %g N·m, flanks %g N·m", out.FrictionTorque, out.DriveTorque)
	}
}

// A holding bolt as a round bar that stands out: bending and shear added up over
// slices of its section, by the distortion energy at its edge as the books take
// it.
func TestHoldingBoltAsASum(t *testing.T) {
	in := smallGearbox()
	out := parttest.Must(t, Output, in)
	const d, n = 0.008, 20000
	area, inertia := 0.0, 0.0
	for i := range n {
		y := d * ((float64(i)+0.5)/n - 0.5)
		strip := 2 * math.Sqrt(d*d/4-y*y) * d / n
		area += strip
		inertia += strip * y * y
	}
	force := float64(out.HoldBoltForce)
	bending, shear := force*0.008*d/2/inertia, force/area
	parttest.Within(t, "use", out.HoldBoltUse, math.Sqrt(bending*bending+3*shear*shear)/640e6, 1e-5)
}

// The gap that the work needs is the longest of what goes into it: socket and
// driver less the recess, puller, hub over the shaft's end.
func TestRoomForTheWork(t *testing.T) {
	for _, c := range []struct {
		socket, driver, recess, puller, stub, want quantity.Length
	}{
		{0.080, 0.100, 0.020, 0.120, 0.026, 0.160},
		{0.080, 0.045, 0.020, 0.120, 0.026, 0.120},
		{0.080, 0.045, 0.020, 0.100, 0.070, 0.112},
	} {
		in := smallGearbox()
		in.SocketLength, in.DriverLength, in.NutRecess, in.PullerLength, in.StubLength = c.socket, c.driver, c.recess, c.puller, c.stub
		parttest.Near(t, "gap", parttest.Must(t, Output, in).GapNeeded, float64(c.want), 1e-12)
	}
}

func TestFlangeRefusalsSayTheirFigures(t *testing.T) {
	for says, change := range map[string]func(*OutputInput){
		"above 40 mm":    func(in *OutputInput) { in.BarLength = 0.030 },
		"up to 307°":     func(in *OutputInput) { in.NutTurn = 6 }, // 2 % of 64 mm are 1.28 mm, 0.853 turns
		"draws 1.432 mm": func(in *OutputInput) { in.NutTurn = 6 },
	} {
		in := smallGearbox()
		change(&in)
		_, err := Output(in)
		parttest.Says(t, err, says)
	}
	// A torque asks for a nut factor or both frictions; either torque does.
	for name, c := range map[string]struct {
		nut, loose     quantity.Torque
		thread, face   quantity.Ratio
		wanted, turned bool
	}{
		"torque alone":      {240, 0, 0, 0, true, false},
		"loosened alone":    {0, 150, 0, 0, true, true},
		"thread alone":      {240, 0, 0.13, 0, true, false},
		"face alone":        {240, 0, 0, 0.11, true, false},
		"both frictions":    {240, 150, 0.13, 0.11, false, false},
		"a turn, no torque": {0, 0, 0, 0, false, true},
	} {
		in := smallGearbox()
		in.NutTorque, in.LooseningTorque, in.ThreadFriction, in.NutFriction, in.NutFactor = c.nut, c.loose, c.thread, c.face, 0
		if c.turned {
			in.NutTurn = 0.2
		}
		_, err := Output(in)
		if c.wanted {
			parttest.RefusedAt(t, err, "/nutFactor")
		} else if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	// At the edges where nothing is rounded: a seat as wide as the root, a bore as
	// wide as it, a pitch that leaves nothing.
	in := smallGearbox()
	_, root := in.diameters()
	in.SeatDiameter, in.NutFaceDiameter = quantity.Length(root), 0.044
	parttest.Must(t, Output, in)
	in = smallGearbox()
	in.ShaftBore = quantity.Length(root)
	_, err := Output(in)
	parttest.RefusedAt(t, err, "/shaftBore")
	in = smallGearbox()
	in.ThreadForm = fastener.Inch
	in.Pitch = 1
	in.NominalDiameter = inchRootDepth
	in.SeatDiameter, in.HubDiameter, in.RingDiameter, in.SpacerDiameter, in.NutFaceDiameter = 2, 3, 3, 3, 3
	_, err = Output(in)
	parttest.RefusedAt(t, err, "/pitch")
}

// Torque over clamp and diameter by the frictions themselves, P/2π + μ·d2/(2·cos 30°) +
// μ·Dm/2 (Shigley ch. 8): M24 × 1.5 has a pitch diameter of 23.026 mm (ISO 724), the
// face reaches from 30 to 44 mm. Of one friction alone no such factor is told.
func TestNutFactorOfBothFrictions(t *testing.T) {
	in := smallGearbox()
	in.ThreadFriction, in.NutFriction, in.PermittedBearingStress, in.TorqueScatter = 0.12, 0.15, 200e6, 1.3
	out := parttest.Must(t, Output, in)
	want := (1.5/(2*math.Pi) + 0.12*23.026/(2*math.Cos(math.Pi/6)) + 0.15*37/2) / 24
	parttest.Within(t, "factor", float64(out.FrictionsFactor), want, 1e-4)
	parttest.Within(t, "torque for each newton", float64(out.TorquePerClamp), want*0.024, 1e-4)
	parttest.Within(t, "pressure over what is allowed", float64(out.FaceUse), float64(out.FittedClamp)/(math.Pi/4*(0.044*0.044-0.030*0.030))/200e6, 1e-9)
	even := in
	even.TorqueScatter = 1
	parttest.Within(t, "torque that a hard pull makes too much", float64(out.MostNutTorque), float64(parttest.Must(t, Output, even).MostNutTorque)/1.3, 1e-12)
	for _, one := range []func(*OutputInput){func(in *OutputInput) { in.ThreadFriction = 0 }, func(in *OutputInput) { in.NutFriction = 0 }} {
		in := in
		one(&in)
		if out := parttest.Must(t, Output, in); !math.IsNaN(float64(out.FrictionsFactor)) {
			t.Errorf("of one friction: %g", out.FrictionsFactor)
		}
	}
}

// A face that does not wear holds for the ten years that are looked ahead, and of one
// whose hours nobody counted it is not known.
func TestClampThatIsNotLost(t *testing.T) {
	in := smallGearbox()
	in.EarlierWear = in.FaceWear
	if out := parttest.Must(t, Output, in); math.Abs(float64(out.TimeToLoss)/(10*365.25*24*3600)-1) > 1e-9 || out.LostAgo != 0 {
		t.Errorf("it does not wear: lost in %g s, %g s ago", out.TimeToLoss, out.LostAgo)
	}
	in.RunningTime = 0
	if out := parttest.Must(t, Output, in); !math.IsNaN(float64(out.TimeToLoss)) || !math.IsNaN(float64(out.LostAgo)) {
		t.Errorf("hours that nobody counted: %g s", out.TimeToLoss)
	}
}
