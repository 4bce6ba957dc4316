// Interference fits by Lamé's equations: Fit.

package hub

import (
	"math"

	"example.org/driveline/marinecalc/quantity"
)

// Fit is a hub on a shaft, as two thick cylinders.
type Fit struct {
	Diameter quantity.Length // where they meet, above 0
	Outside  quantity.Length // of the hub, above Diameter
	Bore     quantity.Length // through the shaft, 0 for a solid one, below Diameter

	HubModulus, ShaftModulus quantity.Stress // elastic, above 0
	HubPoisson, ShaftPoisson quantity.Ratio
}

// MostInterference, over the diameter, is more than any metal bears elastically, as
// Lamé's equations want it: the yield strength of the strongest steels, 2 GPa, over
// 200 GPa (Hooke's law; both from memory).
const MostInterference = 0.01

// Give is the interference on the diameter that each unit of pressure takes, in
// m/Pa:
//
//	d·[ ((D² + d²)/(D² − d²) + ν_h)/E_h + ((d² + b²)/(d² − b²) − ν_s)/E_s ]
//
// (Shigley, Mechanical Engineering Design, sec. 3-16, press and shrink fits, for
// the interference on the radius; from memory, and held in a test against
// integration of the equations of elasticity).
func (f Fit) Give() float64 {
	d, outside, bore := float64(f.Diameter), float64(f.Outside), float64(f.Bore)
	hub := (outside*outside+d*d)/(outside*outside-d*d) + float64(f.HubPoisson)
	shaft := (d*d+bore*bore)/(d*d-bore*bore) - float64(f.ShaftPoisson)
	return d * (hub/float64(f.HubModulus) + shaft/float64(f.ShaftModulus))
}

// Hoop is the tension round the hub at its bore over the pressure there.
func Hoop(diameter, outside quantity.Length) float64 {
	q := float64(diameter / outside)
	return (1 + q*q) / (1 - q*q)
}

// Equivalent is the stress at the hub's bore that is held against the yield
// strength, over the pressure there: of hoop tension and pressure together by
// the distortion energy, √(3 + q⁴)/(1 − q²) with q = d/D and no stress along
// the shaft.
func Equivalent(diameter, outside quantity.Length) float64 {
	q := float64(diameter / outside)
	return math.Sqrt(3+q*q*q*q) / (1 - q*q)
}
