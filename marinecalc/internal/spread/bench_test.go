package spread

import "testing"

// twelve is a set of factors of mixed shapes and a model of about 100 ns.
func twelve() ([]Factor, func(x, y []float64) bool) {
	f := make([]Factor, 12)
	for i := range f {
		e := float64(i + 1)
		f[i] = Factor{Estimate: e, Low: e - 0.1*e, High: e + 0.1*e, Shape: Shape(i%3 + 1)}
	}
	return f, func(x, y []float64) bool {
		a := 1.0
		for r := range y {
			for i := range 4 {
				a = 0.5*a + x[(r+i)%12]
			}
			y[r] = a
		}
		return true
	}
}

func BenchmarkPropagate(b *testing.B) {
	f, model := twelve()
	var w Workspace
	b.ReportAllocs()
	for b.Loop() {
		if _, err := w.Propagate(f, 12, Plan{}, model); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPropagateFresh(b *testing.B) {
	f, model := twelve()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Propagate(f, 12, Plan{}, model); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkModel is the model alone, 4096 times.
func BenchmarkModel(b *testing.B) {
	f, model := twelve()
	x, y := make([]float64, 12), make([]float64, 12)
	for i := range f {
		x[i] = f[i].Estimate
	}
	for b.Loop() {
		for range 4096 {
			model(x, y)
		}
	}
}

func BenchmarkPropagateExact(b *testing.B) {
	f, model := twelve()
	for i := range f {
		f[i].Shape = Exact
	}
	var w Workspace
	for b.Loop() {
		if _, err := w.Propagate(f, 12, Plan{}, model); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkJudge(b *testing.B) {
	f, model := twelve()
	out, err := Propagate(f, 12, Plan{}, model)
	if err != nil {
		b.Fatal(err)
	}
	r := &out.Results[3]
	for b.Loop() {
		Judge(r.Mean, r, AtMost(r.Mean+r.StdDev))
	}
}
