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

// HexagonCollar is the mean diameter of the face under a hexagon, in diameters
// of its thread: Shigley, Mechanical Engineering Design, ch. 8.
const HexagonCollar = 1.25

// AlikeFriction is the friction that thread and face have alike when the nut
// factor is what lead and friction come to (Motosh, as in Bickford and ISO
// 16047); below nothing where the lead alone is more. The collar is the mean
// diameter of the face that turns.
func AlikeFriction(nutFactor quantity.Ratio, diameter, pitch, collar quantity.Length) float64 {
	d, p := float64(diameter), float64(pitch)
	return (float64(nutFactor)*d - p/(2*math.Pi)) / ((d-pitchDepth*p)*secant30/2 + float64(collar)/2)
}

// ElasticTwist is the shear over the tension in a thread while it is tightened,
// as in a round bar of its stress area: 16·T/(π·d³) over F/A, T of lead and
// friction in the thread.
func ElasticTwist(friction float64, diameter, pitch quantity.Length, area quantity.Area) float64 {
	d, p := float64(diameter), float64(pitch)
	return 4 * (p/(2*math.Pi) + friction*(d-pitchDepth*p)*secant30/2) / math.Sqrt(4*float64(area)/math.Pi)
}

// Combined is the equivalent stress over that of the tension alone, by the
// distortion energy, with so much shear for each of tension.
func Combined(twist float64) float64 { return math.Sqrt(1 + 3*twist*twist) }

// ShortClamp is the clamp of a torque by the short form, T/(K·d): Shigley,
// Mechanical Engineering Design, 9th ed., eq. 8-27 read backwards.
func ShortClamp(torque quantity.Torque, nutFactor quantity.Ratio, diameter quantity.Length) quantity.Force {
	return quantity.Force(float64(torque) / (float64(nutFactor) * float64(diameter)))
}
