package shaft

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"example.org/driveline/marinecalc/quantity"
)

// Input from one end of the schemas' ranges to the other is either refused or
// gives finite figures.
func TestExtremesStayFinite(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 1))
	between := func(lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }
	length := func(lo, hi float64) quantity.Length { return quantity.Length(between(lo, hi)) }
	taken := map[string]int{}
	finite := func(name string, out any, err error, known ...string) {
		if err != nil {
			return
		}
		taken[name]++
		v := reflect.ValueOf(out)
		for i := range v.NumField() {
			if f := v.Field(i); f.CanFloat() && math.IsInf(f.Float(), 0) {
				t.Fatalf("%s: %s is infinite: %+v", name, v.Type().Field(i).Name, out)
			}
		}
		for _, field := range known {
			if math.IsNaN(v.FieldByName(field).Float()) {
				t.Fatalf("%s: no %s: %+v", name, field, out)
			}
		}
	}
	for range 3000 {
		strong, err := Strength(randomShaft(r))
		finite("strength", strong, err, "YachtDiameter", "ClassDiameter", "VonMises")

		droop, err := Droop(DroopInput{ShaftDiameter: length(0.008, 0.8), FreeLength: length(0.02, 6), CouplingMass: quantity.Mass(between(0.01, 5000)), CouplingDiameter: length(0.03, 0.8),
			StepLength: length(0.001, 5), StepDiameter: length(0.005, 0.8), SpanBehind: length(0.05, 15), ElasticModulus: quantity.Stress(between(1e10, 4e11)), ShaftDensity: quantity.Density(between(1e-3, 2e4))})
		finite("droop", droop, err, "DroopSag", "DroopGap", "LiftForce")

		line := WhirlInput{ShaftSpeed: quantity.RotationSpeed(between(1, 1000)), ElasticModulus: quantity.Stress(between(1e10, 4e11)), ShaftDensity: quantity.Density(between(1e-3, 2e4)),
			PropellerMass: quantity.Mass(between(0.01, 5e4)), EntrainedWater: 3}
		end := 0.0
		for range 1 + r.IntN(12) {
			s := Section{length(0.01, 30), length(0.005, 0.8), 0}
			line.Sections = append(line.Sections, s)
			end += float64(s.Length)
		}
		for range 2 + r.IntN(11) {
			line.Bearings = append(line.Bearings, Bearing{At: quantity.Length(end * r.Float64())})
		}
		for range r.IntN(13) {
			line.Masses = append(line.Masses, Load{quantity.Length(end * r.Float64()), quantity.Mass(between(0.01, 5e4))})
		}
		whirl, err := Whirl(line)
		finite("whirl", whirl, err, "Critical", "CriticalLower", "CriticalUpper", "Margin")
		if err == nil && !(whirl.CriticalLower <= whirl.Critical*1.001 && whirl.Critical <= whirl.CriticalUpper*1.001) {
			t.Fatalf("the estimates do not enclose the model: %+v, %+v", whirl, line)
		}

		key, err := KeyStrength(KeyStrengthInput{ShaftDiameter: length(0.008, 0.8), ShaftTorque: quantity.Torque(between(0.5, 5e7)), PeakTorque: quantity.Torque(between(0.5, 5e7)), KeyWidth: length(0.001, 0.2), KeyLength: length(0.003, 1), KeyYieldStrength: quantity.Stress(between(3e7, 2e9)), ShaftYieldStrength: quantity.Stress(between(5e7, 2.5e9)), HubYieldStrength: quantity.Stress(between(2e7, 2e9)), WantedSafety: 2})
		finite("key", key, err, "LeastSafety", "SteadySafety", "LengthWanted")
	}
	for _, name := range []string{"strength", "droop", "whirl", "key"} {
		if taken[name] < 100 {
			t.Errorf("%s: only %d of the inputs were taken", name, taken[name])
		}
	}
}
