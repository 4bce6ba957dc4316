package book

import (
	"fmt"
	"math"

	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/spread"
	"example.org/driveline/marinecalc/internal/trend/series"
)

// What one row may draw: it takes some ten milliseconds.
const (
	mostTrials  = 200_000
	mostFactors = 8
)

// models are the functions of the JCGM 101 examples.
var models = map[string]func(x []float64) float64{
	"sum": func(x []float64) float64 {
		total := 0.0
		for _, v := range x {
			total += v
		}
		return total
	},
	"sum-of-squares": func(x []float64) float64 {
		total := 0.0
		for _, v := range x {
			total += v * v
		}
		return total
	},
	// JCGM 101:2008, 9.3.1.3: deviation from the nominal 100 g, in mg.
	"mass-calibration": func(x []float64) float64 {
		if len(x) < 5 {
			return math.NaN()
		}
		return (x[0]+x[1])*(1+(x[2]-1.2)*(1/x[3]-1/x[4])) - 100000
	},
}

// spread propagates distributions through a model.
func (m *maker) spread() error {
	model, ok := models[m.Model]
	if !ok {
		return fmt.Errorf("there is no model %q", m.Model)
	}
	items, _ := m.Input["factors"].([]any)
	trials := number(m.Input["trials"])
	if !(trials >= spread.MinTrials && trials <= mostTrials) || len(items) == 0 || len(items) > mostFactors {
		return fmt.Errorf("%d factors in %g trials: at most %d in %d", len(items), trials, mostFactors, mostTrials)
	}
	var list []spread.Factor
	for _, item := range items {
		f, _ := item.(map[string]any)
		shape, _ := f["shape"].(string)
		list = append(list, spread.Factor{Estimate: number(f["estimate"]), Low: number(f["low"]), High: number(f["high"]), Shape: inputs.ShapeNamed(shape)})
	}
	out, err := spread.Propagate(list, 1, spread.Plan{Trials: int(trials)}, func(x, y []float64) bool { y[0] = model(x); return true })
	if err != nil {
		return err
	}
	r := out.Results[0]
	return m.several(map[string]float64{"mean": r.Mean, "standardDeviation": r.StdDev, "low": r.Low, "high": r.High})
}

// several holds numbers without units, by name.
func (m *maker) several(got map[string]float64) error {
	for _, name := range m.expected() {
		v, has := got[name]
		if !has {
			return fmt.Errorf("there is no %s", name)
		}
		if err := m.number(name, name, v, m.Expect[name], nil); err != nil {
			return err
		}
	}
	return nil
}

// conformity draws a normal distribution and counts what meets the limit.
func (m *maker) conformity() error {
	y, u := number(m.Input["estimate"]), number(m.Input["standardUncertainty"])
	out, err := spread.Propagate([]spread.Factor{{Estimate: y, Low: y - 1.959963985*u, High: y + 1.959963985*u, Shape: spread.Normal}}, 1,
		spread.Plan{Trials: mostTrials}, func(x, y []float64) bool { y[0] = x[0]; return true })
	if err != nil {
		return err
	}
	j := spread.Judge(y, &out.Results[0], spread.Limit{Max: number(m.Input["max"]), Min: number(m.Input["min"])})
	return m.several(map[string]float64{"probability": j.Probability})
}

// count finds what lies below the most from the draws of a count.
func (m *maker) count() error {
	most, below := number(m.Input["most"]), 0
	counted := number(m.Input["counted"])
	if !(counted >= 0 && counted <= 1e9) {
		return fmt.Errorf("%g is no count", counted)
	}
	out, err := spread.Propagate([]spread.Factor{spread.Count(counted, 1)}, 1, spread.Plan{Trials: mostTrials / 2}, func(x, y []float64) bool {
		if y[0] = x[0]; x[0] <= most {
			below++
		}
		return true
	})
	if err != nil {
		return err
	}
	return m.several(map[string]float64{"below": float64(below) / float64(out.Trials)})
}

func (m *maker) student() error {
	p, freedom := number(m.Input["probability"]), number(m.Input["freedom"])
	if !(p > 0 && p < 1 && freedom >= 1 && freedom <= 1e6) {
		return fmt.Errorf("probability %g of %g degrees of freedom", p, freedom)
	}
	return m.several(map[string]float64{"t": series.Student(p, int(freedom))})
}

func (m *maker) theilSen() error {
	x, y := numbers(m.Input["x"]), numbers(m.Input["y"])
	if len(x) != len(y) || len(x) < 2 || len(x) > 100 {
		return fmt.Errorf("%d and %d readings: as many of each, 2 to 100", len(x), len(y))
	}
	slope, intercept := series.TheilSen(x, y)
	return m.several(map[string]float64{"slope": slope, "intercept": intercept})
}

// Draws tells whether a row takes a hundred thousand draws and more.
func (row *Row) Draws() bool {
	return row.Check == "spread" || row.Check == "conformity" || row.Check == "count"
}
