// The temperature rise over the drip rate.

package gland

import (
	"fmt"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Curve gives the drip curve: the temperature rise under way at each of the
// drip rates, written into out, all else as in HeatInput. It is calculated with
// the heat of HeatResult.HeatHeld: where the gland was measured, the curve goes
// through the measured rise at DripRate, and where it was not, through the
// computed one. The error is
// that of Heat, or a *problem.Error where a rate is not within 0 to 20/s
// ("/rates/3") or out is shorter than rates ("/out"). It allocates nothing
// when it succeeds.
func Curve(in HeatInput, rates []quantity.DripRate, out []quantity.TemperatureDifference) error {
	if len(out) < len(rates) {
		return problem.List{{Where: "/out", What: "out is shorter than the list of drip rates", Allowed: fmt.Sprintf("%d or more", len(rates))}}.Err()
	}
	w, err := Heat(in)
	if err != nil {
		return err
	}
	if !in.sized() {
		return problem.List{{Where: "/shaftDiameter", What: "shaft, box, packing, shaft speed or drips are not known", Allowed: "all of them: the curve is computed from these"}}.Err()
	}
	heat := float64(w.HeatHeld) + float64(w.ShaftAirConductance+w.BoxAirConductance)*float64(w.AirDifference)
	perDrip := w.perDripFlow() * float64(in.DropVolume)
	for i, rate := range rates {
		if !problem.Within(float64(rate), 0, 20) {
			return problem.List{{Where: fmt.Sprintf("/rates/%d", i), What: fmt.Sprintf("the drip rate %.4g/s is out of range", float64(rate)), Allowed: "0 to 20 drips per second"}}.Err()
		}
		out[i] = quantity.TemperatureDifference(min(heat/(float64(w.DryConductance)+perDrip*float64(rate)), float64(in.hottest())))
	}
	return nil
}
