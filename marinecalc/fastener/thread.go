// Diameters and stress area of a thread.

package fastener

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Depths in pitches by which the diameters of the thread lie below the
// nominal diameter: the basic 60° profile of ISO 68-1 and ASME B1.1, and the
// root that each standard takes for the stress area (ISO 898-1 cl. 9.1.6;
// ASME B1.1, whose 0.9743 is the mean of 0.649519 and 1.299038).
const (
	pitchDepth      = 0.649519
	metricRootDepth = 1.226869
	inchRootDepth   = 1.299038
)

// rootDepth is the depth of the root in pitches.
func rootDepth(form ThreadForm) float64 {
	if form == Metric {
		return metricRootDepth
	}
	return inchRootDepth
}

// StressArea is the stress area of a thread by its standard, of a diameter
// above the depth of its threads: π/4·((d2 + d3)/2)².
func StressArea(diameter, pitch quantity.Length, form ThreadForm) quantity.Area {
	ds := float64(diameter) - (pitchDepth+rootDepth(form))/2*float64(pitch)
	return quantity.Area(math.Pi / 4 * ds * ds)
}

// thread sets the diameters and the stress area.
func (out *PreloadResult) thread(in *PreloadInput) {
	d, p := float64(in.NominalDiameter), float64(in.Pitch)
	d2, d3 := d-pitchDepth*p, d-rootDepth(in.ThreadForm)*p
	ds := (d2 + d3) / 2
	out.PitchDiameter = quantity.Length(d2)
	out.MinorDiameter = quantity.Length(d3)
	out.StressDiameter = quantity.Length(ds)
	out.StressArea = quantity.Area(math.Pi / 4 * ds * ds)
	out.LeadAngle = quantity.Angle(math.Atan(p / (math.Pi * d2)))
}

// ShortClamp is the clamp of a torque by the short form, T/(K·d): Shigley,
// Mechanical Engineering Design, 9th ed., eq. 8-27 read backwards.
func ShortClamp(torque quantity.Torque, nutFactor quantity.Ratio, diameter quantity.Length) quantity.Force {
	return quantity.Force(float64(torque) / (float64(nutFactor) * float64(diameter)))
}
