// Critical speed in bending: Whirl.

package shaft

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// WhirlInput is a propeller shaft in its bearings with what hangs on it. Places are
// measured along the shaft from its forward end.
type WhirlInput struct {
	Sections       []Section       // 1 to 12, from forward to aft
	Bearings       []Bearing       // 2 to 12; the gearbox's output bearing is one when the coupling is bolted up
	Masses         []Load          // 0 to 12, besides propeller and coupling
	PropellerMass  quantity.Mass   // in air; 0 for none
	EntrainedWater quantity.Ratio  // entrained water, over the propeller's mass
	PropellerAt    quantity.Length // centre of its mass; 0 goes by PropellerOverhang
	CouplingMass   quantity.Mass   // 0 for none
	CouplingAt     quantity.Length // centre of its mass; 0 is the forward end

	PropellerOverhang quantity.Length // centre of its mass aft of the aftmost bearing; 0 puts it at the aft end of the shaft
	Blades            int             // of the propeller; 0 when not known
	EndFixity         quantity.Ratio  // how much the gearbox holds the slope of the shaft: 0 not at all, 1 quite
	SupportFactor     quantity.Ratio  // critical speed in the bearings as they are over that in stiff ones, above 0 up to 1; 0 is 1

	ShaftSpeed     quantity.RotationSpeed // highest in use, above 0
	IdleSpeed      quantity.RotationSpeed // of the engine; optional
	GearRatioAhead quantity.Ratio         // engine turns for one of the shaft; needed for ShaftSpeedIdle

	ElasticModulus quantity.Stress  // above 0
	ShaftDensity   quantity.Density // above 0

	SpanGuideFast quantity.Ratio // K2 of the class guide, above 350 rpm; 0 for none
	SpanGuideSlow quantity.Ratio // K1 of the class guide, up to 350 rpm; 0 for none
}

// Section is a length of shaft of one thickness.
type Section struct {
	Length   quantity.Length // above 0
	Diameter quantity.Length // above 0
	Bore     quantity.Length // 0 for solid
}

// Bearing is a bearing, taken as a point in its middle.
type Bearing struct {
	At     quantity.Length
	Length quantity.Length // 0 when not given
}

// Load is a mass on the shaft.
type Load struct {
	At   quantity.Length
	Mass quantity.Mass
}

// WhirlResult is what Whirl finds. NaN marks a figure that cannot be given.
type WhirlResult struct {
	Critical        quantity.RotationSpeed // of the model, the shaft free to turn in every bearing
	CriticalClamped quantity.RotationSpeed // the same, its slope held at the gearbox; Critical where no bearing sits at the forward end
	CriticalUsed    quantity.RotationSpeed // between the two by EndFixity, times SupportFactor
	CriticalLower   quantity.RotationSpeed // Dunkerley, free to turn
	CriticalUpper   quantity.RotationSpeed // Rayleigh, free to turn
	Margin          quantity.Ratio         // CriticalUsed over ShaftSpeed, less 1
	SpeedUse        quantity.Ratio         // ShaftSpeed over CriticalUsed

	GreatestDeflectionAt quantity.Length // at Critical
	Orders               [3]WhirlOrder   // once a turn; with the blades known, at each blade and at twice that
	BladesApart          quantity.Ratio  // of the full speed, from it to that at which each blade excites CriticalUsed; NaN without Blades
	BladeCrossing        string          // whether the blades excite the shaft at a speed in use

	LongestSpan         quantity.Length // between neighbouring bearings
	ShortestSpan        quantity.Length
	SpanAtSpeed         quantity.Length // span rule, no margin
	ClassSpan           quantity.Length // class guide
	LongestPerDiameter  quantity.Ratio
	ShortestPerDiameter quantity.Ratio
	ClassSpanUse        quantity.Ratio // LongestSpan over ClassSpan

	ShaftSpeedIdle         quantity.RotationSpeed // NaN without idle speed and gear ratio
	IdleUse                quantity.Ratio         // ShaftSpeedIdle over CriticalUsed; NaN like it
	CriticalShaft          quantity.RotationSpeed // the shaft without the masses on it
	ShaftLength            quantity.Length
	LeastDiameter          quantity.Length
	ShaftMass              quantity.Mass
	EntrainedPropellerMass quantity.Mass   // propeller and its water
	PropellerPlace         quantity.Length // of its centre of mass from the forward end, as calculated; NaN without a propeller
	ShaftBeyond            quantity.Length // of the shaft's aft end beyond PropellerPlace; NaN without a propeller
}

// Whirl finds the first critical speed of a shaft, at which it whirls like a
// skipping rope, and holds it and the bearing spans against the speed in use.
//
// The model is made of beam elements with consistent mass, whose frequencies
// lie above the true ones (Rayleigh and Ritz). Rayleigh's estimate
// ω² = g·Σm·y/Σm·y² from the static deflection is higher still, Dunkerley's
// 1/ω² = 1/ω_s² + Σ m·a is low, where ω_s is the shaft alone and a the
// deflection at each mass under a unit force (Shigley, Mechanical Engineering
// Design, 9th ed., eq. 7-22, 7-23, 7-32, from memory; Ugural, Mechanical
// Design, eq. 9.18). Beyond an overhang or a bearing the weights are turned to
// the side to which the mode bends. Bearings are rigid points and gyroscopic
// moments are left out: soft bearings and a stern tube lower the true speed,
// for which SupportFactor stands. A gearbox flange holds the slope of the
// shaft to a degree that nobody knows: at the bearing within a tenth of the
// first span from the forward end the shaft is taken both as free to turn and
// as clamped.
//
// The blades pass the hull at Blades times the shaft's speed, so they meet the
// critical speed at that part of it; natural frequencies are to be compared
// with both (Lloyd's Register, Naval Ships, Vol 2 Pt 5 Ch 3, 2.2.2).
//
// The span rule is the first critical speed of a uniform simply supported
// span, L = π·√(d/(4·ω))·(E/ρ)^(1/4), which is ABYC P-6's
// √(3.21·d/n)·(E/w)^(1/4) in feet; it has no margin. The class guide is
// K2·√(d/n) above 350 rpm, K1·√d below (GL I-1-2 sec. 4 D.5; K1 from memory).
//
// The error is a *problem.Error of everything that cannot be. Whirl allocates
// nothing when it succeeds.
func Whirl(in WhirlInput) (WhirlResult, error) {
	var b beam
	out, err := in.lay(&b)
	if err != nil {
		return WhirlResult{}, err
	}
	out.criticals(&in, &b)
	out.orders(&in)
	out.spanRules(&in)
	return out, nil
}

// criticals finds the estimates of the first critical speed.
func (out *WhirlResult) criticals(in *WhirlInput, b *beam) {
	speed := func(flex float64) quantity.RotationSpeed {
		return quantity.RotationSpeed(1 / math.Sqrt(quantity.OrNaN(flex)))
	}
	b.begin()
	alone := b.lowest(false, free)
	out.CriticalShaft = speed(alone)
	low := alone
	for i := range b.nodes {
		if b.hung[i] > 0 && !b.held[i] {
			low += b.hung[i] * b.influence(i)
		}
	}
	out.CriticalLower = speed(low)
	b.begin()
	out.Critical = speed(b.lowest(true, free))
	out.GreatestDeflectionAt = quantity.Length(b.greatest())
	out.CriticalUpper = speed(b.rayleigh())
	out.CriticalClamped = out.Critical
	if clamp := b.forward(); clamp != free {
		b.clampAt(clamp)
		out.CriticalClamped = speed(b.lowest(true, clamp))
	}
	out.CriticalUsed = in.soft() * (out.Critical + quantity.RotationSpeed(in.EndFixity)*(out.CriticalClamped-out.Critical))
	out.SpeedUse = quantity.Ratio(in.ShaftSpeed / out.CriticalUsed)
	out.Margin = quantity.Ratio(out.CriticalUsed/in.ShaftSpeed) - 1
	out.ShaftSpeedIdle = in.IdleSpeed / quantity.RotationSpeed(quantity.OrNaN(float64(in.GearRatioAhead)))
	if in.IdleSpeed == 0 {
		out.ShaftSpeedIdle = quantity.RotationSpeed(math.NaN())
	}
	out.IdleUse = quantity.Ratio(out.ShaftSpeedIdle / out.CriticalUsed)
}

// soft is the factor for the bearings as they are.
func (in *WhirlInput) soft() quantity.RotationSpeed {
	if in.SupportFactor == 0 {
		return 1
	}
	return quantity.RotationSpeed(in.SupportFactor)
}

// spanRules holds the spans against the published rules.
func (out *WhirlResult) spanRules(in *WhirlInput) {
	d, omega := float64(out.LeastDiameter), float64(in.ShaftSpeed)
	out.SpanAtSpeed = quantity.Length(math.Pi * math.Sqrt(d/(4*omega)) * math.Sqrt(math.Sqrt(float64(in.ElasticModulus/quantity.Stress(in.ShaftDensity)))))
	out.LongestPerDiameter = quantity.Ratio(out.LongestSpan / out.LeastDiameter)
	out.ShortestPerDiameter = quantity.Ratio(out.ShortestSpan / out.LeastDiameter)
	rpm := omega * 30 / math.Pi
	guide := float64(in.SpanGuideFast) * math.Sqrt(1000*d/rpm) / 1000
	if rpm <= 350 {
		guide = float64(in.SpanGuideSlow) * math.Sqrt(1000*d) / 1000
	}
	out.ClassSpan = quantity.Length(quantity.OrNaN(guide))
	out.ClassSpanUse = quantity.Ratio(out.LongestSpan / out.ClassSpan)
}
