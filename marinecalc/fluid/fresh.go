// Fresh water, by IAPWS-IF97.

package fluid

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/problem"
	"example.org/driveline/marinecalc/quantity"
)

// Fresh gives liquid water without salt by IAPWS-IF97 region 1 (IAPWS
// R7-97(2012), equation 7 with table 2; specific volume and isobaric specific
// heat by table 3).
//
// Valid from 273.15 K to 623.15 K and from the saturation pressure at that
// temperature to 100 MPa; outside it the error is a *problem.Error with the
// places "/waterTemperature" and "/pressure".
func Fresh(t quantity.Temperature, p quantity.Pressure) (Water, error) {
	if !problem.Within(float64(t), 273.15, 623.15) {
		return Water{}, problem.List{{Where: "/waterTemperature",
			What:    fmt.Sprintf("%.4g °C is outside the range of the fresh water equations", float64(t)-zeroCelsius),
			Allowed: "0 °C to 350 °C"}}.Err()
	}
	if boil := saturation(float64(t)); !problem.Within(float64(p), boil, 100e6) {
		return Water{}, problem.List{{Where: "/pressure",
			What:    fmt.Sprintf("at %.4g Pa water of this temperature is not a liquid of region 1", float64(p)),
			Allowed: fmt.Sprintf("%.4g Pa to 100 MPa", boil)}}.Err()
	}
	const gasConstant = 461.526 // J/(kg·K), R7-97 equation 1
	pi := float64(p) / 16.53e6
	tau := 1386 / float64(t)
	volume, heat := region1(pi, tau)
	return Water{
		Density:      quantity.Density(float64(p) / (volume * pi * gasConstant * float64(t))),
		SpecificHeat: quantity.SpecificHeat(-tau * tau * heat * gasConstant),
	}, nil
}

// region1 gives γ_π and γ_ττ, the derivatives of the dimensionless Gibbs free
// energy of equation 7 (R7-97 table 4).
func region1(pi, tau float64) (gammaPi, gammaTauTau float64) {
	a, b := 7.1-pi, tau-1.222
	var ofA [33]float64 // powers of a from 0 to 32
	ofA[0] = 1
	for i := 1; i < len(ofA); i++ {
		ofA[i] = ofA[i-1] * a
	}
	const lowest = 41
	var ofB [lowest + 18]float64 // powers of b from -41 to 17
	ofB[lowest] = 1
	for j, inv := lowest-1, 1/b; j >= 0; j-- {
		ofB[j] = ofB[j+1] * inv
	}
	for j := lowest + 1; j < len(ofB); j++ {
		ofB[j] = ofB[j-1] * b
	}
	for k := range region1Terms {
		t := &region1Terms[k]
		term := t.n * ofA[t.i] * ofB[lowest+t.j]
		gammaPi -= float64(t.i) * term
		gammaTauTau += float64(t.j*(t.j-1)) * term
	}
	return gammaPi / a, gammaTauTau / (b * b)
}

// region1Terms is table 2 of R7-97.
var region1Terms = [34]struct {
	i, j int
	n    float64
}{
	{0, -2, 0.14632971213167},
	{0, -1, -0.84548187169114},
	{0, 0, -0.37563603672040e1},
	{0, 1, 0.33855169168385e1},
	{0, 2, -0.95791963387872},
	{0, 3, 0.15772038513228},
	{0, 4, -0.16616417199501e-1},
	{0, 5, 0.81214629983568e-3},
	{1, -9, 0.28319080123804e-3},
	{1, -7, -0.60706301565874e-3},
	{1, -1, -0.18990068218419e-1},
	{1, 0, -0.32529748770505e-1},
	{1, 1, -0.21841717175414e-1},
	{1, 3, -0.52838357969930e-4},
	{2, -3, -0.47184321073267e-3},
	{2, 0, -0.30001780793026e-3},
	{2, 1, 0.47661393906987e-4},
	{2, 3, -0.44141845330846e-5},
	{2, 17, -0.72694996297594e-15},
	{3, -4, -0.31679644845054e-4},
	{3, 0, -0.28270797985312e-5},
	{3, 6, -0.85205128120103e-9},
	{4, -5, -0.22425281908000e-5},
	{4, -2, -0.65171222895601e-6},
	{4, 10, -0.14341729937924e-12},
	{5, -8, -0.40516996860117e-6},
	{8, -11, -0.12734301741641e-8},
	{8, -6, -0.17424871230634e-9},
	{21, -29, -0.68762131295531e-18},
	{23, -31, 0.14478307828521e-19},
	{29, -38, 0.26335781662795e-22},
	{30, -39, -0.11947622640071e-22},
	{31, -40, 0.18228094581404e-23},
	{32, -41, -0.93537087292458e-25},
}

// saturation gives the boiling pressure in Pa: R7-97 region 4, equation 30
// with table 34; t in K.
func saturation(t float64) float64 {
	theta := t - 0.23855557567849/(t-0.65017534844798e3)
	a := theta*(theta+0.11670521452767e4) - 0.72421316703206e6
	b := theta*(-0.17073846940092e2*theta+0.12020824702470e5) - 0.32325550322333e7
	c := theta*(0.14915108613530e2*theta-0.48232657361591e4) + 0.40511340542057e6
	root := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return root * root * root * root * 1e6
}
