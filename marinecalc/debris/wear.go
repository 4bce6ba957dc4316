// A worn place and what it gave to the fluid: Wear.

package debris

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// WearInput is a worn place as it was measured. A field marked optional is not
// given when it is 0.
type WearInput struct {
	WearDepth    quantity.Length  // at the deepest, above 0
	WearLength   quantity.Length  // of the worn patch, above 0
	WearWidth    quantity.Length  // of the worn patch, above 0
	WearFullness quantity.Ratio   // worn volume over depth × length × width, above 0 up to 1
	WearOutline  quantity.Ratio   // area of the patch over length × width, above 0 up to 1; 0: all of it
	WornPlaces   int              // how many places are worn alike, 1 to 1000
	MetalDensity quantity.Density // of the worn part, 500 to 25 000 kg/m³

	FluidVolume  quantity.Volume  // in the sump; optional
	FluidDensity quantity.Density // 500 to 2000 kg/m³; needed with FluidVolume

	PartThickness quantity.Length // when new, across the wear: wall, tooth, shaft diameter; optional
	WornSides     quantity.Ratio  // 2 where both faces, or the whole girth, wear, else 1; needed with PartThickness
	StrengthPower quantity.Ratio  // power of the thickness that carries the load, 1 to 3; needed with PartThickness

	WearLimit   quantity.Length // depth at which the maker renews the part; optional
	CaseDepth   quantity.Length // of the hardened skin; optional
	ContactArea quantity.Area   // of one such surface when new; optional
	ServiceTime quantity.Time   // in which the wear came about; optional
}

// WearResult is what the wear came to. NaN marks a figure for which an optional
// input is missing.
type WearResult struct {
	WearArea       quantity.Area   // of one patch
	WornVolume     quantity.Volume // of all places
	WornMass       quantity.Mass
	DebrisShare    quantity.Ratio  // mass of the metal over mass of the fluid, were all of it still afloat in it
	ThicknessLeft  quantity.Length // 0 where it is worn through
	ThicknessShare quantity.Ratio  // of the thickness when new
	StrengthLeft   quantity.Ratio  // of the strength when new
	SurfaceLeft    quantity.Ratio  // of the contact area; below 0 where the patch is the larger
	CaseLeft       quantity.Ratio  // of the hardened skin; below 0 where the wear is through it
	WearUse        quantity.Ratio  // depth over the limit: renew at 1
	TimeToLimit    quantity.Time   // at the same pace; 0 where the limit is passed
}

// Wear works out what a worn place came to.
//
// The volume is depth × length × width × fullness, the fullness being that of
// the solid which the wear took (1 for an even layer, 1/2 for a wedge, 2/3
// for a groove of parabolic section: geometry); the area of the patch is
// length × width × outline (π/4 for an ellipse). The strength goes with the
// power of the thickness that carries the load: 1 in tension, 2 for a tooth
// or plate in bending (section modulus b·h²/6), 3 for a shaft in torsion
// (π·d³/16; Shigley, Mechanical Engineering Design, 9th ed., ch. 3). Notches,
// cracks and the loss of a hard skin take more, and are not in it.
//
// The error is a *problem.Error of everything that cannot be. Wear does not
// allocate unless it refuses.
func Wear(in WearInput) (WearResult, error) {
	if err := validate(&in); err != nil {
		return WearResult{}, err
	}
	depth := float64(in.WearDepth)
	around := float64(in.WearLength) * float64(in.WearWidth)
	area := around
	if in.WearOutline > 0 {
		area *= float64(in.WearOutline)
	}
	volume := float64(in.WornPlaces) * float64(in.WearFullness) * depth * around
	mass := float64(in.MetalDensity) * volume
	thick := quantity.OrNaN(float64(in.PartThickness))
	left := max(thick-float64(in.WornSides)*depth, 0)
	use := depth / quantity.OrNaN(float64(in.WearLimit))
	return WearResult{
		WearArea:       quantity.Area(area),
		WornVolume:     quantity.Volume(volume),
		WornMass:       quantity.Mass(mass),
		DebrisShare:    quantity.Ratio(mass / (quantity.OrNaN(float64(in.FluidVolume)) * quantity.OrNaN(float64(in.FluidDensity)))),
		ThicknessLeft:  quantity.Length(left),
		ThicknessShare: quantity.Ratio(left / thick),
		StrengthLeft:   quantity.Ratio(math.Pow(left/thick, quantity.OrNaN(float64(in.StrengthPower)))),
		SurfaceLeft:    quantity.Ratio(1 - area/quantity.OrNaN(float64(in.ContactArea))),
		CaseLeft:       quantity.Ratio(1 - depth/quantity.OrNaN(float64(in.CaseDepth))),
		WearUse:        quantity.Ratio(use),
		TimeToLimit:    quantity.Time(max(quantity.OrNaN(float64(in.ServiceTime))*(1/use-1), 0)),
	}, nil
}

// validate lists everything in the wear that cannot be.
func validate(in *WearInput) error {
	var bad problem.List
	for _, c := range [...]struct {
		where, name string
		v, lo, hi   float64
		allowed     string
		orNone      bool
	}{
		{"/wearDepth", "depth of the wear", float64(in.WearDepth), 1e-9, 0.5, "above 0, up to 500 mm", false},
		{"/wearLength", "length of the worn patch", float64(in.WearLength), 1e-6, 10, "above 0, up to 10 m", false},
		{"/wearWidth", "width of the worn patch", float64(in.WearWidth), 1e-6, 10, "above 0, up to 10 m", false},
		{"/wearFullness", "fullness of the wear", float64(in.WearFullness), 1e-3, 1, "above 0, up to 1", false},
		{"/wearOutline", "outline of the wear", float64(in.WearOutline), 1e-3, 1, "above 0, up to 1", true},
		{"/wornPlaces", "number of worn places", float64(in.WornPlaces), 1, 1000, "1 to 1000", false},
		{"/metalDensity", "density of the metal", float64(in.MetalDensity), 500, 25000, "500 to 25 000 kg/m³", false},
		{"/fluidVolume", "fluid in the sump", float64(in.FluidVolume), 1e-6, 100, "above 0, up to 100 m³", true},
		{"/fluidDensity", "density of the fluid", float64(in.FluidDensity), 500, 2000, "500 to 2000 kg/m³", true},
		{"/partThickness", "thickness when new", float64(in.PartThickness), 1e-5, 2, "above 0, up to 2 m", true},
		{"/wornSides", "number of worn sides", float64(in.WornSides), 1, 2, "1 or 2", true},
		{"/strengthPower", "power of the thickness", float64(in.StrengthPower), 1, 3, "1 to 3", true},
		{"/wearLimit", "limit of the wear", float64(in.WearLimit), 1e-6, 0.5, "above 0, up to 500 mm", true},
		{"/caseDepth", "depth of the hardened skin", float64(in.CaseDepth), 1e-6, 0.1, "above 0, up to 100 mm", true},
		{"/contactArea", "contact area", float64(in.ContactArea), 1e-9, 100, "above 0, up to 100 m²", true},
		{"/serviceTime", "time in service", float64(in.ServiceTime), 1, 1e10, "above 0", true},
	} {
		if c.orNone && c.v == 0 {
			continue
		}
		if !problem.Within(c.v, c.lo, c.hi) {
			bad.Add(c.where, fmt.Sprintf("the %s is missing or cannot be", c.name), c.allowed, "")
		}
	}
	if thick := float64(in.PartThickness) * (1 + 1e-9); thick > 0 {
		if sides := max(float64(in.WornSides), 1); sides*float64(in.WearDepth) > thick {
			bad.Add("/wearDepth", fmt.Sprintf("a part that was %.4g mm thick cannot be worn %.4g mm deep", 1000*in.PartThickness, 1000*in.WearDepth), fmt.Sprintf("up to %.4g mm", 1000*float64(in.PartThickness)/sides), "is a unit or a decimal point wrong, or was the thickness measured elsewhere?")
		}
		if float64(in.WearLimit) > thick {
			bad.Add("/wearLimit", fmt.Sprintf("a limit of %.4g mm is more than the part's own %.4g mm", 1000*in.WearLimit, 1000*in.PartThickness), "less than the thickness when new", "it is the depth of the wear, not what must be left")
		}
	}
	return bad.Err()
}
