package book

import (
	"example.org/driveline/marinecalc/fluid"
	"example.org/driveline/marinecalc/mount"
	"example.org/driveline/marinecalc/quantity"
)

// seaWater is at t68 degrees of the scale of 1968 (Saunders 1990).
func (m *maker) seaWater() error {
	t90 := number(m.Input["t68"])/1.00024 + 273.15
	w, err := fluid.Sea(quantity.Temperature(t90), quantity.Ratio(number(m.Input["practicalSalinity"])/1000))
	if err != nil {
		return err
	}
	return m.several(map[string]float64{"density": float64(w.Density), "specificHeat": float64(w.SpecificHeat)})
}

func (m *maker) freshWater() error {
	t, err := read(m.Input["temperature"], nil)
	if err != nil {
		return err
	}
	p, err := read(m.Input["pressure"], nil)
	if err != nil {
		return err
	}
	w, err := fluid.Fresh(quantity.Temperature(t.si), quantity.Pressure(p.si))
	if err != nil {
		return err
	}
	return m.several(map[string]float64{"density": float64(w.Density), "specificHeat": float64(w.SpecificHeat)})
}

func (m *maker) transmissibility() error {
	passed := mount.Transmissibility(quantity.Ratio(number(m.Input["ratio"])), quantity.Ratio(number(m.Input["damping"])))
	return m.several(map[string]float64{"passed": float64(passed)})
}
