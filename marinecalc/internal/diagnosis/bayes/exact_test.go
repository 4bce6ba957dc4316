package bayes

import (
	"math"
	"math/rand/v2"
	"testing"
)

// table is the whole joint distribution of cause and answers, written out
// row by row: an independent way to everything the model says, by summing
// rows only.
type table struct {
	causes, questions int
	p                 []float64 // [cause<<questions | answers], bit q set: yes to q
}

func enumerate(m Model) table {
	t := table{causes: len(m.Prior), questions: len(m.Yes[0])}
	t.p = make([]float64, t.causes<<t.questions)
	total := 0.0
	for _, w := range m.Prior {
		total += w
	}
	for c := range t.causes {
		for pattern := range 1 << t.questions {
			p := m.Prior[c] / total
			for q := range t.questions {
				if pattern>>q&1 == 1 {
					p *= m.Yes[c][q]
				} else {
					p *= 1 - m.Yes[c][q]
				}
			}
			t.p[c<<t.questions|pattern] = p
		}
	}
	return t
}

// given sums the rows that agree with the answers, by cause.
func (t table) given(answers []Answer) []float64 {
	sums := make([]float64, t.causes)
	for c := range t.causes {
		for pattern := range 1 << t.questions {
			agrees := true
			for q, a := range answers {
				yes := pattern>>q&1 == 1
				agrees = agrees && (a == Unknown || (a == Yes) == yes)
			}
			if agrees {
				sums[c] += t.p[c<<t.questions|pattern]
			}
		}
	}
	return sums
}

func (t table) posterior(answers []Answer) []float64 {
	p := t.given(answers)
	total := sum(p)
	for c := range p {
		p[c] /= total
	}
	return p
}

func sum(v []float64) float64 {
	s := 0.0
	for _, x := range v {
		s += x
	}
	return s
}

func entropy(p []float64) float64 {
	h := 0.0
	for _, v := range p {
		if v > 0 {
			h -= v * math.Log2(v)
		}
	}
	return h
}

// information is the entropy now less the mean entropy after the answer.
func (t table) information(answers []Answer, q int) float64 {
	now := t.given(answers)
	after := 0.0
	for _, a := range []Answer{Yes, No} {
		next := append([]Answer{}, answers...)
		next[q] = a
		after += sum(t.given(next)) / sum(now) * entropy(t.posterior(next))
	}
	return entropy(t.posterior(answers)) - after
}

func randomModel(r *rand.Rand, causes, questions int) Model {
	m := Model{}
	for range causes {
		m.Prior = append(m.Prior, 0.1+9*r.Float64())
		row := make([]float64, questions)
		for q := range row {
			row[q] = 0.01 + 0.98*r.Float64()
		}
		m.Yes = append(m.Yes, row)
	}
	return m
}

func randomAnswers(r *rand.Rand, questions int) []Answer {
	a := make([]Answer, questions)
	for q := range a {
		a[q] = Answer(r.IntN(3) - 1)
	}
	return a
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-12*max(1, math.Abs(want))) {
		t.Errorf("%s: %.17g, the table %.17g", what, got, want)
	}
}

// Derived: every number of the model against sums over the whole joint
// distribution.
func TestAgreesWithExactEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	for range 200 {
		causes, questions := 1+r.IntN(5), 1+r.IntN(6)
		m := randomModel(r, causes, questions)
		joint := enumerate(m)
		answers := randomAnswers(r, questions)
		got, want := m.Posterior(answers), joint.posterior(answers)
		for c := range want {
			near(t, "posterior", got[c], want[c])
		}
		for q, a := range answers {
			if a == Unknown {
				near(t, "information", m.Information(got, q), joint.information(answers, q))
			}
			weightsAgree(t, m, joint, q, a)
		}
		surpriseAgrees(t, m, joint, answers)
	}
}

// weightsAgree holds the weight of one answer against conditional
// probabilities summed from the table.
func weightsAgree(t *testing.T, m Model, joint table, q int, a Answer) {
	t.Helper()
	if a == Unknown || joint.causes < 2 {
		return
	}
	one := make([]Answer, joint.questions)
	before := joint.given(one)
	one[q] = a
	after := joint.given(one)
	for c := range joint.causes {
		others, othersBefore := sum(after)-after[c], sum(before)-before[c]
		near(t, "weight", m.Against(c, q, a), 10*math.Log10(after[c]/before[c]/(others/othersBefore)))
		d := (c + 1) % joint.causes
		near(t, "weight between", m.Between(c, d, q, a), 10*math.Log10(after[c]/before[c]/(after[d]/before[d])))
	}
}

// surpriseAgrees takes mean and variance of −ln P(answers|cause) over every
// pattern of answers to the same questions.
func surpriseAgrees(t *testing.T, m Model, joint table, answers []Answer) {
	t.Helper()
	asked := []int{}
	for q, a := range answers {
		if a != Unknown {
			asked = append(asked, q)
		}
	}
	best := math.Inf(1)
	for c := range joint.causes {
		var mean, square float64
		logOf := func(answers []Answer) (logP, p float64) {
			only := joint.given(make([]Answer, joint.questions))[c]
			p = joint.given(answers)[c] / only
			return -math.Log(p), p
		}
		for pattern := range 1 << len(asked) {
			one := make([]Answer, joint.questions)
			for i, q := range asked {
				one[q] = No
				if pattern>>i&1 == 1 {
					one[q] = Yes
				}
			}
			s, p := logOf(one)
			mean, square = mean+p*s, square+p*s*s
		}
		s, _ := logOf(answers)
		if v := square - mean*mean; v > 1e-9 {
			best = min(best, (s-mean)/math.Sqrt(v))
		} else {
			best = min(best, 0)
		}
	}
	got := m.Surprise(answers)
	if math.Abs(got.Best-best) > 1e-6*max(1, math.Abs(best)) { // the variance by enumeration loses digits
		t.Errorf("surprise %.12g, the table %.12g", got.Best, best)
	}
	if len(asked) < 2 {
		if got.First >= 0 {
			t.Errorf("a pair of fewer than two answers: %+v", got)
		}
		return
	}
	least := math.Inf(1)
	for i, q := range asked {
		for _, k := range asked[i+1:] {
			p := func(questions ...int) float64 {
				one := make([]Answer, joint.questions)
				for _, q := range questions {
					one[q] = answers[q]
				}
				return sum(joint.given(one))
			}
			least = min(least, p(q, k)/(p(q)*p(k)))
		}
	}
	near(t, "worst pair", got.Together, least)
}

// Derived: the information between two causes is that of a model with these
// two alone.
func TestPartingIsTheInformationBetweenTwo(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 100 {
		m := randomModel(r, 4, 3)
		answers := randomAnswers(r, 3)
		answers[1] = Unknown
		p := m.Posterior(answers)
		two := Model{Prior: []float64{m.Prior[1], m.Prior[3]}, Yes: [][]float64{m.Yes[1], m.Yes[3]}}
		near(t, "parting", m.Parting(p, 1, 3, 1), enumerate(two).information(answers, 1))
	}
}
