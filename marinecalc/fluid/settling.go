// How particles sink in a fluid that stands still: Settling.

package fluid

import (
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// MostSizes is how many sizes a table of settling can have.
const MostSizes = 8

// SettlingInput is a sump that stands still after the engine was stopped. A field
// marked optional is not given when it is 0.
type SettlingInput struct {
	ParticleSize       quantity.Length             // diameter, above 0 up to 10 mm
	MetalDensity       quantity.Density            // of the particles; above the fluid's
	FluidDensity       quantity.Density            // at DensityPoint, 500 to 2000 kg/m³
	DensityPoint       quantity.Temperature        // 243 K to 423 K; 0: FluidDensity is that of every temperature
	StandingTime       quantity.Time               // since the engine stopped, 1 s to 10 years
	DipDepth           quantity.Length             // from the surface down to the tip of the dipstick, above 0 up to SumpDepth
	SumpDepth          quantity.Length             // of the fluid, up to 5 m
	FluidTemperature   quantity.Temperature        // while it stands, 243 K to 423 K
	RunningTemperature quantity.Temperature        // as under way; optional
	CoolViscosity      quantity.KinematicViscosity // at CoolPoint, 2 mm²/s or more; needed without FluidViscosity
	HotViscosity       quantity.KinematicViscosity // at HotPoint, 2 mm²/s or more, below CoolViscosity
	CoolPoint          quantity.Temperature        // below HotPoint
	HotPoint           quantity.Temperature
	FluidViscosity     quantity.KinematicViscosity // measured at FluidTemperature; optional, goes before the two points
	VisibleSize        quantity.Length             // the smallest particle that an eye sees; optional
	Sizes              []Size                      // at most MostSizes
}

// Size is a size of particles to be told about.
type Size struct {
	Name string          // not empty
	Size quantity.Length // diameter, above 0 up to 10 mm
}

// Settled is what standing does to particles of one size.
type Settled struct {
	Name           string
	Size           quantity.Length
	DipLeft        quantity.Ratio // of them left in the layer that the dipstick reaches
	SumpLeft       quantity.Ratio // of them left afloat anywhere in the sump
	TimeToClearDip quantity.Time  // until none is left in the dipstick's layer
	Note           string         // where Stokes's law does not hold
}

// SettlingResult is what a dipstick can see of debris. NaN marks a figure for which
// an optional input is missing.
type SettlingResult struct {
	SlopeB            quantity.Ratio // of the viscosity line; NaN without the two points, as are the next
	InterceptA        quantity.Ratio
	Viscosity         quantity.KinematicViscosity // while it stands
	WarmViscosity     quantity.KinematicViscosity // under way
	DynamicViscosity  quantity.DynamicViscosity
	Density           quantity.Density // while it stands
	WarmDensity       quantity.Density
	ViscosityIndex    quantity.Ratio
	SettlingSpeed     quantity.Velocity
	WarmSettlingSpeed quantity.Velocity
	Reynolds          quantity.Ratio // of the particle; Stokes's law asks for less than 1
	DipLeft           quantity.Ratio // of this size left in the layer that the dipstick reaches
	SumpLeft          quantity.Ratio // of this size left afloat anywhere in the sump
	TimeToClearDip    quantity.Time
	TimeToBottom      quantity.Time
	LargestInDip      quantity.Length // the largest size of which anything is left in the dipstick's layer
	TimeToBlind       quantity.Time   // until no visible particle is left there; NaN without VisibleSize
	SampleWithin      quantity.Time   // after stopping, for a sample at half depth; NaN without RunningTemperature
	DipSays           string
	BySize            [MostSizes]Settled
}

// The codes of DipSays and, last, of a size's Note, for which the schema of
// fluid-settling has the words.
const (
	dipBlind = "nothing"
	dipThin  = "little"
	dipFresh = "most"

	pastStokes = "slower-than-stokes"
)

// Settling finds how far particles have sunk in a fluid that stands still.
//
// The speed is that of Stokes (1851), (ρ_p − ρ_f)·g·d²/(18·μ), for smooth
// spheres far from walls and from each other; flakes fall slower. It holds
// for particles with a Reynolds number v·d/ν below 1: above that the result
// is an upper bound of the speed, which Reynolds and the notes of the table
// show. The particles are taken as evenly mixed when the engine stops, so
// that after a time t the top layer of depth h has lost the share v·t/h.
//
// The viscosity is that measured, or by ASTM D341 from two points (see
// Walther). The fluid swells as a lubricating oil does (see Swollen). The slow
// currents of a sump that cools are left out.
//
// The error is a *problem.Error of everything that cannot be. Settling does not
// allocate unless it refuses.
func Settling(in SettlingInput) (SettlingResult, error) {
	if err := in.validate(); err != nil {
		return SettlingResult{}, err
	}
	nan := quantity.Ratio(math.NaN())
	out := SettlingResult{SlopeB: nan, InterceptA: nan, ViscosityIndex: nan, WarmViscosity: quantity.KinematicViscosity(nan), WarmDensity: quantity.Density(nan)}
	out.Density = in.FluidDensity
	if in.DensityPoint > 0 {
		out.Density = Swollen(in.FluidDensity, in.DensityPoint, in.FluidTemperature)
	}
	if in.RunningTemperature > 0 {
		if out.WarmDensity = in.FluidDensity; in.DensityPoint > 0 {
			out.WarmDensity = Swollen(in.FluidDensity, in.DensityPoint, in.RunningTemperature)
		}
	}
	if in.CoolViscosity > 0 {
		line := Through(in.CoolViscosity, in.CoolPoint, in.HotViscosity, in.HotPoint)
		out.SlopeB, out.InterceptA = quantity.Ratio(line.B), quantity.Ratio(line.A)
		out.Viscosity = line.At(in.FluidTemperature)
		out.ViscosityIndex = ViscosityIndex(line.At(zeroCelsius+40), line.At(zeroCelsius+100))
		if in.RunningTemperature > 0 {
			out.WarmViscosity = line.At(in.RunningTemperature)
		}
	}
	if in.FluidViscosity > 0 {
		out.Viscosity = in.FluidViscosity
	}
	nu, rho := float64(out.Viscosity), float64(out.Density)
	mu := nu * rho
	out.DynamicViscosity = quantity.DynamicViscosity(mu)
	pull := (float64(in.MetalDensity) - rho) * gravity
	per := pull / (18 * mu) // speed over the square of the size
	warm := float64(out.WarmDensity)
	warmPer := (float64(in.MetalDensity) - warm) * gravity / (18 * float64(out.WarmViscosity) * warm)
	d, t, h, depth := float64(in.ParticleSize), float64(in.StandingTime), float64(in.DipDepth), float64(in.SumpDepth)
	v := per * d * d
	out.SettlingSpeed, out.WarmSettlingSpeed = quantity.Velocity(v), quantity.Velocity(warmPer*d*d)
	out.Reynolds = quantity.Ratio(v * d / nu)
	out.DipLeft, out.SumpLeft = quantity.Ratio(max(0, 1-v*t/h)), quantity.Ratio(max(0, 1-v*t/depth))
	out.TimeToClearDip, out.TimeToBottom = quantity.Time(h/v), quantity.Time(depth/v)
	out.LargestInDip = quantity.Length(math.Sqrt(h / (per * t)))
	seen := quantity.OrNaN(float64(in.VisibleSize))
	out.TimeToBlind = quantity.Time(h / (per * seen * seen))
	out.SampleWithin = quantity.Time(depth / (2 * warmPer * d * d))
	switch largest := float64(out.LargestInDip); {
	case largest < seen:
		out.DipSays = dipBlind
	case largest < 4*seen: // of the size seen, a sixteenth is gone
		out.DipSays = dipThin
	default:
		out.DipSays = dipFresh
	}
	for i := range in.Sizes {
		size := float64(in.Sizes[i].Size)
		v := per * size * size
		s := Settled{Name: in.Sizes[i].Name, Size: in.Sizes[i].Size,
			DipLeft: quantity.Ratio(max(0, 1-v*t/h)), SumpLeft: quantity.Ratio(max(0, 1-v*t/depth)),
			TimeToClearDip: quantity.Time(h / v)}
		if v*size/nu > 1 {
			s.Note = pastStokes
		}
		out.BySize[i] = s
	}
	return out, nil
}

const gravity = 9.80665 // m/s², standard acceleration of free fall, ISO 80000-3

func (in *SettlingInput) validate() error {
	var bad problem.List
	orNone := in.FluidViscosity > 0 // the two points are not needed then
	for _, b := range [...]bound{
		{"/particleSize", "size of the particle", float64(in.ParticleSize), 1e-8, 0.01, "above 0, up to 10 mm", false},
		{"/fluidDensity", "density of the fluid", float64(in.FluidDensity), 500, 2000, "500 to 2000 kg/m³", false},
		{"/densityPoint", "temperature of the density", float64(in.DensityPoint), 243, 423.2, "-30 °C to 150 °C", true},
		{"/metalDensity", "density of the particles", float64(in.MetalDensity), 500, 25000, "500 to 25 000 kg/m³", false},
		{"/standingTime", "time of standing", float64(in.StandingTime), 0.1, 4e8, "1 s to 10 years", false},
		{"/sumpDepth", "depth of the fluid", float64(in.SumpDepth), 1e-3, 5, "1 mm to 5 m", false},
		{"/dipDepth", "depth that the dipstick reaches", float64(in.DipDepth), 1e-4, 5, "above 0, up to the depth of the fluid", false},
		{"/fluidTemperature", "temperature of the fluid", float64(in.FluidTemperature), 243, 423.2, "-30 °C to 150 °C", false},
		{"/runningTemperature", "temperature under way", float64(in.RunningTemperature), 243, 423.2, "-30 °C to 150 °C", true},
		{"/coolViscosity", "viscosity at the cool point", float64(in.CoolViscosity), 1.99e-6, 1, "2 mm²/s or more", orNone},
		{"/hotViscosity", "viscosity at the hot point", float64(in.HotViscosity), 1.99e-6, 1, "2 mm²/s or more", orNone},
		{"/coolPoint", "temperature of the cool point", float64(in.CoolPoint), 243, 423.2, "-30 °C to 150 °C", orNone},
		{"/hotPoint", "temperature of the hot point", float64(in.HotPoint), 243, 423.2, "-30 °C to 150 °C", orNone},
		{"/fluidViscosity", "viscosity of the fluid", float64(in.FluidViscosity), 1e-7, 1, "above 0", true},
		{"/visibleSize", "smallest visible size", float64(in.VisibleSize), 1e-6, 0.01, "1 µm to 10 mm", true},
	} {
		b.add(&bad)
	}
	if bad == nil {
		in.validateTogether(&bad)
	}
	return bad.Err()
}

// validateTogether names what is possible by itself but not together.
func (in *SettlingInput) validateTogether(bad *problem.List) {
	if in.MetalDensity <= in.FluidDensity {
		bad.Add("/metalDensity", "particles that are no heavier than the fluid do not sink", "above the density of the fluid", "")
	}
	if float64(in.DipDepth) > 1.05*float64(in.SumpDepth) { // a hair over is the accuracy of the two
		bad.Add("/dipDepth", "the dipstick reaches deeper than the fluid is", "up to the depth of the fluid", "measure from the surface down, not from the top of the stick")
	}
	if in.CoolViscosity > 0 && (in.HotPoint <= in.CoolPoint || in.HotViscosity >= in.CoolViscosity) {
		bad.Add("/hotViscosity", "the two points of viscosity do not go together: warm fluid is thinner", "a lower viscosity at a higher temperature", "are the two temperatures, or the two viscosities, changed about?")
	}
	if len(in.Sizes) > MostSizes {
		bad.Add("/sizes", "there are too many sizes", "at most 8", "")
		return
	}
	for i := range in.Sizes {
		if s := &in.Sizes[i]; s.Name == "" || !problem.Within(float64(s.Size), 1e-8, 0.01) {
			bad.Add("/sizes", "a size has no name, or is not above 0 and up to 10 mm", "a name and a size", "")
		}
	}
}
