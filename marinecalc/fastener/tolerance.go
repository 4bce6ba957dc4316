// Limits of a thread by its tolerances.

package fastener

import "math"

// limits are the diameters of the thinnest bolt and the widest hole, in m.
type limits struct {
	major, pitch       float64 // of the bolt, least
	minor, tappedPitch float64 // of the hole, greatest
}

// tolerances gives the limits of a thread of the medium class: 6g in 6H of ISO
// 965-1, whose formulas take the geometric mean of the range in which the
// diameter lies, and 2A in 2B of ASME B1.1, for a length of engagement of one
// diameter (formulas from memory; tests hold both against tables that were
// read).
func tolerances(d, p float64, form ThreadForm) limits {
	if form == Inch {
		return inchLimits(d/inchInMetres, p/inchInMetres)
	}
	return metricLimits(d*1e3, p*1e3)
}

const inchInMetres = 0.0254

// metricLimits takes mm; the tolerances come out in µm.
func metricLimits(d, p float64) limits {
	upper := 15 + 11*p                                           // es of position g
	pitch := 90 * math.Pow(p, 0.4) * math.Pow(rangeMean(d), 0.1) // grade 6 of the bolt
	major := 180*math.Pow(p, 2./3) - 3.15/math.Sqrt(p)
	minor := 230 * math.Pow(p, 0.7) // grade 6 of the hole
	if p < 1 {
		minor = 433*p - 190*math.Pow(p, 1.22)
	}
	return limits{
		major:       (d - (upper+major)/1e3) / 1e3,
		pitch:       (d - pitchDepth*p - (upper+pitch)/1e3) / 1e3,
		minor:       (d - internalDepth*p + minor/1e3) / 1e3,
		tappedPitch: (d - pitchDepth*p + 1.32*pitch/1e3) / 1e3,
	}
}

// rangeMean is the geometric mean of the range of ISO 965-1 in which a diameter
// lies, in mm.
func rangeMean(d float64) float64 {
	ranges := [...]float64{0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355}
	for i := 1; i < len(ranges); i++ {
		if d <= ranges[i] {
			return math.Sqrt(ranges[i-1] * ranges[i])
		}
	}
	return d
}

// inchLimits takes inches.
func inchLimits(d, p float64) limits {
	pitch := 0.0015*math.Cbrt(d) + 0.0015*math.Sqrt(d) + 0.015*math.Pow(p, 2./3) // class 2A
	allowance := 0.3 * pitch
	minor := 0.25*p - 0.4*p*p
	switch {
	case p > 0.25: // coarser than 4 to the inch
		minor = 0.15 * p
	case d < 0.25:
		minor = max(0.25*p-0.4*p*p, 0.05*math.Pow(p, 2./3)+0.03*p/d-0.002)
	}
	return limits{
		major:       (d - allowance - 0.06*math.Pow(p, 2./3)) * inchInMetres,
		pitch:       (d - pitchDepth*p - allowance - pitch) * inchInMetres,
		minor:       (d - internalDepth*p + minor) * inchInMetres,
		tappedPitch: (d - pitchDepth*p + 1.3*pitch) * inchInMetres,
	}
}
