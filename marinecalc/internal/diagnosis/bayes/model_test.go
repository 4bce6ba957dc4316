package bayes

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/problem"
)

// What was looked at and is there is at work in every set, however many.
func TestFoundIsSettled(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	m := randomModel(r, 9, 12)
	answers := make([]Answer, 12)
	for q := range 9 {
		m.Settles[q], m.Absence[q] = q, false
	}
	for q := range 8 {
		answers[q] = Yes
		b := m.Believe(answers)
		if len(b.Found) != q+1 {
			t.Fatalf("found are %v", b.Found)
		}
		for _, c := range b.Found {
			near(t, "found", b.Cause[c], 1)
		}
		for c, p := range b.Cause {
			if math.IsNaN(p) || p < 0 || p > 1+1e-12 {
				t.Errorf("cause %d has %v", c, p)
			}
		}
	}
}

func TestUnknownChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 5))
	m := randomModel(r, 4, 6)
	answers := []Answer{Yes, Unknown, No, Unknown, Yes, Unknown}
	want := m.Believe(answers).Cause
	m.Yes[2][1], m.Leak[3], m.Wrong[5] = 0.99, 0.01, 0.4
	if got := m.Believe(answers).Cause; !slices.Equal(got, want) {
		t.Errorf("%v, then %v", want, got)
	}
	if s, first, _ := m.Believe(make([]Answer, 6)).Surprise(); s != 0 || first >= 0 {
		t.Errorf("no answers surprise: %v", s)
	}
}

// Many strong answers against every cause run out of neither digits nor sense.
func TestManyAnswersKeepTheirDigits(t *testing.T) {
	answers, same, leak := make([]Answer, 3000), make([]float64, 3000), make([]float64, 3000)
	for q := range answers {
		answers[q], same[q], leak[q] = Yes, 0.01, 0.01
	}
	m := sharp([]float64{0.001, 0.002}, [][]float64{same, same}, leak)
	for q := range m.Wrong {
		m.Wrong[q] = 1e-9
	}
	if p := m.Believe(answers).Cause; math.Abs(p[1]/p[0]-2) > 0.01 {
		t.Errorf("equal evidence moves the odds: %v", p)
	}
}

// Simulated answers of listed causes are called surprising about as seldom as
// Cantelli's inequality (from memory) bounds it: at most one in ten over three
// standard deviations.
func TestAnswersOfListedCausesSeldomSurprise(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 2))
	surprising := 0
	const runs = 500
	for range runs {
		m := randomModel(r, 6, 20)
		in := []int{r.IntN(6)}
		if d := r.IntN(6); d > in[0] {
			in = append(in, d)
		}
		answers := make([]Answer, 20)
		for q := range answers {
			answers[q] = No
			if r.Float64() < m.answered(m.Shown(in, q), q, Yes) {
				answers[q] = Yes
			}
		}
		if s, _, _ := m.Believe(answers).Surprise(); s > 3 {
			surprising++
		}
	}
	if surprising > runs/10 {
		t.Errorf("%d of %d", surprising, runs)
	}
}

func TestNextAsksTheBestOpenQuestionFirst(t *testing.T) {
	m := sharp([]float64{0.01, 0.01}, [][]float64{{0.9, 0.9, 0.9, 0.6, 0.99}, {0.1, 0.1, 0.1, 0.5, 0.01}}, []float64{0.1, 0.1, 0.1, 0.5, 0.01})
	for q := range m.Wrong {
		m.Wrong[q] = 0.01
	}
	b := m.Believe([]Answer{Unknown, Yes, Unknown, Unknown, Unknown})
	cost := []float64{10, 1, 5, 1, 0}
	var order []int
	for _, c := range b.Next(cost, []int{0, 1}) {
		order = append(order, c.Question)
		near(t, "rate", c.Rate, c.Bits/cost[c.Question])
	}
	if !slices.Equal(order, []int{2, 0, 3}) {
		t.Errorf("order %v", order)
	}
	if q, bits := b.Part([]bool{true, true, true, true, false}, 0, 1); q != 0 || bits <= 0 {
		t.Errorf("parted best by %d with %v bits", q, bits)
	}
	if q, _ := b.Part(make([]bool, 5), 0, 1); q != -1 {
		t.Errorf("parted by %d, which is not open", q)
	}
}

func TestRankKeepsEqualsInOrder(t *testing.T) {
	if got := Rank([]float64{0.2, 0.3, 0.2, 0.3}); !slices.Equal(got, []int{1, 3, 0, 2}) {
		t.Error(got)
	}
}

func TestImpossibleModelsAreRefused(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(*Model)
		where string
	}{
		"no causes":    {func(m *Model) { m.Arises = nil }, "/arises"},
		"a short row":  {func(m *Model) { m.Yes[1] = m.Yes[1][:1] }, "/yes/1"},
		"never arises": {func(m *Model) { m.Arises[0] = 0 }, "/arises/0"},
		"not a number": {func(m *Model) { m.Arises[1] = math.NaN() }, "/arises/1"},
		"quite sure":   {func(m *Model) { m.Yes[0][0] = 1 }, "/yes/0/0"},
		"always on":    {func(m *Model) { m.Brings[0][1] = 1 }, "/brings/0/1"},
		"always wrong": {func(m *Model) { m.Wrong[1] = 0.5 }, "/wrong/1"},
	} {
		m := randomModel(rand.New(rand.NewPCG(1, 2)), 2, 2)
		if err := m.Check(); err != nil {
			t.Fatal(err)
		}
		c.spoil(m)
		if list := problem.Of(m.Check()); len(list) == 0 || list[0].Where != c.where {
			t.Errorf("%s: %v", name, list)
		}
	}
}

func BenchmarkBelieveAndNext(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	m := randomModel(r, 27, 74)
	for c := range m.Arises {
		m.Arises[c] /= 10
		for d := range m.Brings[c] {
			if r.Float64() < 0.9 {
				m.Brings[c][d] = 0
			}
		}
	}
	for q := range m.Settles {
		m.Settles[q] = -1
	}
	answers, cost := randomAnswers(r, 74), make([]float64, 74)
	for q := range cost {
		cost[q] = 1 + float64(q)
	}
	all := Rank(m.Arises)
	for b.Loop() {
		m.Believe(answers).Next(cost, all)
	}
}

// Over both answers to a question, each as often as a set of causes gives it,
// the surprise is nothing on the whole and one standard deviation in size.
func TestSurpriseIsCentredAndScaled(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 28))
	looked := 0
	for range 50 {
		m := randomModel(r, 3, 1)
		if m.Settles[0] >= 0 {
			continue
		}
		yes, no := m.Believe([]Answer{Yes}), m.Believe([]Answer{No})
		s := yes.Sets[0]
		p := yes.said(s, 0)
		a, b := yes.excess(s), no.excess(s)
		looked++
		if mean, size := p*a+(1-p)*b, p*a*a+(1-p)*b*b; math.Abs(mean) > 1e-9 || math.Abs(size-1) > 1e-9 && size != 0 {
			t.Errorf("p %g: mean %g, mean square %g", p, mean, size)
		}
	}
	if looked < 5 {
		t.Errorf("only %d", looked)
	}
}
