// What the readings say of themselves: their scatter against the gauge, and
// which way the shaft was turned.

package align

import "math"

// strain is by how much the readings scatter more than their gauge explains:
// the root of chi-square over the readings to spare (the ratio of Birge,
// Physical Review 40 (1932) 207). chance is the probability that a sound gauge
// scatters as much. Both are NaN without a gauge or a reading to spare.
func (f *plane) strain() (ratio, chance float64) {
	if f.spare < 1 || math.IsNaN(f.chi) {
		return math.NaN(), math.NaN()
	}
	return math.Sqrt(f.chi / float64(f.spare)), chanceOf(f.chi, f.spare)
}

// excess is by how much readings disagree, over the most that a sound gauge of
// even spread explains: four of them are in a closure, and the sum of the squared
// residuals is no more than that of the errors. Of four readings the two are one.
// NaN without a gauge or a reading to spare.
func (f *plane) excess(readings int, sd float64) float64 {
	half := math.Sqrt(3) * sd
	if !(half > 0) || !f.checked {
		return math.NaN()
	}
	ratio, _ := f.strain()
	use := ratio / math.Sqrt(3*float64(readings)/float64(max(f.spare, 1)))
	if use = greater(use, f.closure/(4*half)); use < 1e-9 { // rounding
		return 0
	}
	return use
}

// farBeyond is the share of what a gauge explains at most from which readings
// contradict each other: nothing is then told of what was read. Common practice, no
// source.
const farBeyond = 3

// greater is the greater of two of which either may be not known.
func greater(a, b float64) float64 {
	if !(a >= b) && !math.IsNaN(b) {
		return b
	}
	return a
}

// both is the worse of two closures. Where one of them is not known only what
// is too much counts of the other: what closes there says nothing of this one.
func both(a, b float64) float64 {
	worse := greater(a, b)
	if (math.IsNaN(a) || math.IsNaN(b)) && !(worse > 1) {
		return math.NaN()
	}
	return worse
}

// widening is what a ratio of scatters does to the spread of the fit. The
// scatter of few readings is itself not well known: normal quantiles become
// those of Student, but by no more than a fifth, which they are from seven
// readings to spare on. Fewer cannot tell a bad gauge from a good one, and the
// good one, which is the rule, would be made out to be bad; a gauge that is
// worse than said is then held too seldom.
func (f *plane) widening(ratio float64) float64 {
	if wide := ratio * min(student(f.spare), 1.2); wide > 1 {
		return wide
	}
	return 1 // of NaN too
}

// student is Student's 97.5 % quantile over the normal one (Abramowitz and
// Stegun, Handbook of Mathematical Functions, 26.7.5, two terms at 1.960).
func student(freedom int) float64 {
	n := float64(max(freedom, 1))
	return 1 + 1.2104/n + 1.4401/(n*n)
}

// chanceOf is the probability that chi-square of so many degrees of freedom
// is as large or larger (Abramowitz and Stegun, Handbook of Mathematical
// Functions, 26.4.4 and 26.4.5).
func chanceOf(chi float64, freedom int) float64 {
	half := chi / 2
	term, sum, from := math.Exp(-half), 0.0, 0
	if freedom%2 == 1 {
		sum = math.Erfc(math.Sqrt(half))
		term *= math.Sqrt(half) / (math.Sqrt(math.Pi) / 2) // half^½ over Γ(3/2)
		from = 1
	}
	for k := from; k < freedom-1; k += 2 {
		sum += term
		term *= half / (float64(k)/2 + 1)
	}
	return min(sum, 1)
}

// The codes of TurnCheck, for which the schema of coupling-alignment has the words.
const (
	TurnAgrees    = "agrees"
	TurnOtherWay  = "other-way"
	TurnUnchecked = "unchecked"
)

// far is chi-square of two degrees of freedom at 99 %: a fit that much worse
// is not so by chance.
const far = 9.21

// turnCheck fits the readings with the shaft turned the other way than it was
// typed, and says which way they fit: otherWay is then the fixed part of that
// fit. Two positions of the shaft fit either way; what they say of the
// misalignment then hangs on the word of whoever read them.
func (p points) turnCheck(typed *plane) (check string, otherWay vector) {
	sd := 0.0
	for i := range p {
		p[i].turn = -p[i].turn
		sd = max(sd, p[i].sd)
	}
	var other plane
	told := p.fit(&other, nil)
	for i := range p {
		p[i].turn = -p[i].turn
	}
	if !told || !other.apart {
		return TurnAgrees, vector{}
	}
	p.residuals(&other)
	least := far * max(sd*sd, min(typed.sum, other.sum)/float64(max(typed.spare, 1)), 1e-18)
	apart := vector{other.fixed.up - typed.fixed.up, other.fixed.right - typed.fixed.right}
	switch {
	case typed.sum-other.sum > least:
		return TurnOtherWay, other.fixed
	case other.sum-typed.sum > least, 2*apart.size() < max(math.Sqrt(far)*sd, 1e-6):
		return TurnAgrees, vector{}
	}
	return TurnUnchecked, other.fixed
}
