package spread

// Mean is the mean of a function over what is known of a factor: over the
// middles of 256 strata of equal probability, so to some 1e-5 for a function
// that is smooth.
func (f Factor) Mean(of func(float64) float64) float64 {
	const strata = 256
	if !f.varies() {
		return of(f.Estimate)
	}
	middles := deck{at: make([]float64, strata)}
	for s := range middles.at {
		middles.at[s] = float64(s) + 0.5
	}
	values := make([]float64, strata)
	middles.place(&f, values, func() []float64 { return edges(strata) })
	sum := 0.0
	for _, v := range values {
		sum += of(v)
	}
	return sum / strata
}
