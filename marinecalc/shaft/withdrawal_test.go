package shaft

import (
	"math"
	"testing"

	"example.org/driveline/marinecalc/internal/parttest"
	"example.org/driveline/marinecalc/quantity"
)

// yawl is a scenario of our own.
func yawl() WithdrawalInput {
	return WithdrawalInput{Task: CouplingOff, RoomAft: 0.140, RoomRudderOver: 0.260, RoomForward: 0.150, WorkingClearance: 0.020,
		SocketDepth: 0.070, PilotDepth: 0.005, CouplingLength: 0.085, SealLength: 0.160, ShaftInboard: 2.4, PropellerHubLength: 0.090, FlangeGap: 0.125}
}

func TestWithdrawalEachTask(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*WithdrawalInput)
		travel float64
		way    string
	}{
		{"coupling", func(*WithdrawalInput) {}, 0.075, AftAmidships},
		{"seal", func(d *WithdrawalInput) { d.Task = SealRenewal }, 0.145, AftHardOver},                                    // 160 long, 15 are there already
		{"seal, rudder stays", func(d *WithdrawalInput) { d.Task, d.RoomRudderOver = SealRenewal, 0 }, 0.145, WithForward}, // 25 short
		{"seal, engine stays too", func(d *WithdrawalInput) { d.Task, d.RoomRudderOver, d.RoomForward = SealRenewal, 0, 0 }, 0.145, EngineOrElse},
		{"seal, hardly any room", func(d *WithdrawalInput) { d.Task, d.RoomAft, d.RoomRudderOver, d.RoomForward = SealRenewal, 0, 0, 0.1 }, 0.145, RudderMust},
		{"short seal", func(d *WithdrawalInput) { d.Task, d.SealLength = SealRenewal, 0.03 }, 0.075, AftAmidships},
		{"whole shaft", func(d *WithdrawalInput) { d.Task = ShaftOut }, 2.4, RudderMust},
		{"propeller", func(d *WithdrawalInput) { d.Task = PropellerOff }, 0.090, AftAmidships},
		{"output flange", func(d *WithdrawalInput) { d.Task = OutputFlangeOff }, 0.125, AftHardOver},
		{"output flange, deep pilot", func(d *WithdrawalInput) { d.Task, d.PilotDepth = OutputFlangeOff, 0.13 }, 0.130, AftHardOver},
	} {
		in := yawl()
		c.change(&in)
		out := parttest.Must(t, Withdrawal, in)
		parttest.Within(t, c.name, out.Travel, c.travel, 1e-12)
		parttest.Within(t, c.name+", needed", out.RoomNeeded, c.travel+0.02, 1e-12)
		if out.Way != c.way {
			t.Errorf("%s: %q", c.name, out.Way)
		}
		if forward := float64(out.ForwardNeeded); (in.Task == CouplingOff || in.Task == SealRenewal || in.Task == OutputFlangeOff) == math.IsNaN(forward) {
			t.Errorf("%s: forward by %v", c.name, forward)
		}
	}
}

func TestWithdrawalRefuses(t *testing.T) {
	seal := func() WithdrawalInput {
		d := yawl()
		d.Task = SealRenewal
		return d
	}
	refusals(t, Withdrawal, seal, []refusal[WithdrawalInput]{
		{"/task", "", func(d *WithdrawalInput) { d.Task = "lift" }},
		{"/socketDepth", "100 mm deep in a coupling 85 mm long", func(d *WithdrawalInput) { d.SocketDepth = 0.1 }},
		{"/socketDepth", "", func(d *WithdrawalInput) { d.SocketDepth = 0 }},
		{"/sealLength", "", func(d *WithdrawalInput) { d.SealLength = 0 }},
		{"/roomAft", "", func(d *WithdrawalInput) { d.RoomAft = -0.1 }},
		{"/workingClearance", "", func(d *WithdrawalInput) { d.WorkingClearance = quantity.Length(math.NaN()) }},
		{"/shaftInboard", "", func(d *WithdrawalInput) { d.Task, d.ShaftInboard = ShaftOut, 0 }},
		{"/propellerHubLength", "", func(d *WithdrawalInput) { d.Task, d.PropellerHubLength = PropellerOff, 0 }},
		{"/flangeGap", "", func(d *WithdrawalInput) { d.Task, d.FlangeGap = OutputFlangeOff, 0 }},
	})
}

var roomSink WithdrawalResult

func TestWithdrawalDoesNotAllocate(t *testing.T) {
	in := yawl()
	parttest.NoAllocations(t, func() { roomSink, _ = Withdrawal(in) })
}

func BenchmarkWithdrawal(b *testing.B) {
	in := yawl()
	b.ReportAllocs()
	for b.Loop() {
		roomSink, _ = Withdrawal(in)
	}
}

// Room that is just enough is enough: amidships, hard over, and with what the engine
// goes forward. Binary fractions of a metre, so that nothing is rounded.
func TestRoomThatIsJustEnough(t *testing.T) {
	for _, c := range []struct {
		aft, over, forward quantity.Length // in 64ths of a metre; 6 are needed
		way                string
	}{{6, 0, 0, AftAmidships}, {5, 6, 0, AftHardOver}, {4, 5, 1, WithForward}, {4, 5, 0.5, RudderMust}, {4, 5, 0, EngineOrElse}} {
		in := yawl()
		in.SocketDepth, in.PilotDepth, in.WorkingClearance = 4./64, 1./64, 1./64
		in.RoomAft, in.RoomRudderOver, in.RoomForward = c.aft/64, c.over/64, c.forward/64
		if out := parttest.Must(t, Withdrawal, in); out.Way != c.way {
			t.Errorf("%+v: %s, %g spare, %g forward", c, out.Way, out.RoomSpare, out.ForwardSpare)
		}
	}
}
