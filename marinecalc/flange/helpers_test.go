package flange

import "example.org/driveline/marinecalc/fastener"

// smallGearbox is a flange of our own: an M24 × 1.5 nut on a 30 mm shaft.
func smallGearbox() OutputInput {
	return OutputInput{
		NominalDiameter: 0.024, Pitch: 0.0015, ThreadForm: fastener.Metric,
		NutTorque: 240, LooseningTorque: 220, NutFactor: 0.18, NutFaceDiameter: 0.044, TorqueScatter: 1, TurnScatter: 1,
		SeatDiameter: 0.030, HubLength: 0.042, HubDiameter: 0.046, RingLength: 0.018, RingDiameter: 0.042, SpacerLength: 0.004, SpacerDiameter: 0.044,
		ShaftModulus: 207e9, StackModulus: 207e9, ThreadInside: 0.008,
		FaceWear: 0.00002, EarlierWear: 0.00001, RunningTime: 500 * 3600,
		ShaftTorque: 170, PeakTorque: 340, PullAstern: 2000, BendingMoment: 50, FaceFriction: 0.1, FrictionFaces: 1,
		Drive: Spline, DriveTeeth: 20, DriveDepth: 0.0015, DriveLength: 0.036, DriveDiameter: 0.031, TeethBearing: 0.5, PermittedPressure: 60e6,
		ShaftYieldStrength: 600e6,
		BarLength:          0.5, BoltCircle: 0.080, HoldBoltDiameter: 0.008, HoldBoltYield: 640e6, StandOff: 0.008, BarThickness: 0.012, BarHeight: 0.050, BarYield: 235e6,
		SocketLength: 0.080, DriverLength: 0.045, NutRecess: 0.020, PullerLength: 0.120, StubLength: 0.026,
	}
}
