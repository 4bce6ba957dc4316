package bayes

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/driveline/marinecalc/problem"
)

// Definition (Good, Probability and the Weighing of Evidence, 1950; from
// memory): an answer ten times as probable weighs 10 decibans; a fair coin
// tells one bit (Shannon 1948, from memory).
func TestUnitsOfWeightAndInformation(t *testing.T) {
	m := Model{Prior: []float64{1, 1}, Yes: [][]float64{{0.5, 1e-9}, {0.05, 1 - 1e-9}}}
	near(t, "weight", m.Against(0, 0, Yes), 10)
	near(t, "weight between", m.Between(1, 0, 0, Yes), -10)
	if b := m.Information([]float64{0.5, 0.5}, 1); math.Abs(b-1) > 1e-7 {
		t.Errorf("a question that settles even odds tells %v bits", b)
	}
}

// Derived: prior odds and the weights between two causes add up to their odds
// after all answers.
func TestWeightsBetweenTwoAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 100 {
		m := randomModel(r, 5, 9)
		answers := randomAnswers(r, 9)
		total := 10 * math.Log10(m.Prior[0]/m.Prior[1])
		for q, a := range answers {
			total += m.Between(0, 1, q, a)
		}
		p := m.Posterior(answers)
		near(t, "log odds", total, 10*math.Log10(p[0]/p[1]))
	}
}

func TestUnknownChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	m := randomModel(r, 4, 6)
	answers := []Answer{Yes, Unknown, No, Unknown, Yes, Unknown}
	short := Model{Prior: m.Prior}
	for _, row := range m.Yes {
		short.Yes = append(short.Yes, []float64{row[0], row[2], row[4]})
	}
	if got, want := m.Posterior(answers), short.Posterior([]Answer{Yes, No, Yes}); !slices.Equal(got, want) {
		t.Errorf("%v with don't know, %v without the questions", got, want)
	}
	for q, a := range answers {
		if a == Unknown && (m.Against(0, q, a) != 0 || m.Between(0, 1, q, a) != 0) {
			t.Error("don't know weighs something")
		}
	}
	if s := m.Surprise(make([]Answer, 6)); s.Best != 0 || s.First >= 0 {
		t.Errorf("no answers surprise: %+v", s)
	}
}

// Many strong answers against every cause run out of neither digits nor sense.
func TestManyAnswersKeepTheirDigits(t *testing.T) {
	m := Model{Prior: []float64{1, 2}, Yes: [][]float64{make([]float64, 2000), make([]float64, 2000)}}
	answers := make([]Answer, 2000)
	for q := range answers {
		m.Yes[0][q], m.Yes[1][q], answers[q] = 0.01, 0.01, Yes
	}
	p := m.Posterior(answers)
	if math.Abs(p[0]-1.0/3) > 1e-9 || math.Abs(p[1]-2.0/3) > 1e-9 {
		t.Errorf("equal evidence moves the priors: %v", p)
	}
}

// Simulated answers of one cause alone are called surprising about as seldom
// as Cantelli's inequality (from memory) bounds it: at most one in ten over
// three standard deviations.
func TestAnswersOfOneCauseSeldomSurprise(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 2))
	surprising := 0
	const runs = 2000
	for range runs {
		m := randomModel(r, 6, 20)
		c := r.IntN(6)
		answers := make([]Answer, 20)
		for q := range answers {
			answers[q] = No
			if r.Float64() < m.Yes[c][q] {
				answers[q] = Yes
			}
		}
		if m.Surprise(answers).Best > 3 {
			surprising++
		}
	}
	if surprising > runs/10 {
		t.Errorf("%d of %d", surprising, runs)
	}
}

func TestNextAsksTheBestOpenQuestionFirst(t *testing.T) {
	m := Model{Prior: []float64{1, 1}, Yes: [][]float64{{0.9, 0.9, 0.9, 0.6, 0.99}, {0.1, 0.1, 0.1, 0.5, 0.01}}}
	p := m.Posterior(make([]Answer, 5))
	answers := []Answer{Unknown, Yes, Unknown, Unknown, Unknown}
	cost := []float64{10, 1, 5, 1, 0}
	list := m.Next(p, answers, cost)
	var order []int
	for _, c := range list {
		order = append(order, c.Question)
		near(t, "rate", c.Rate, c.Bits/cost[c.Question])
	}
	if !slices.Equal(order, []int{2, 0, 3}) {
		t.Errorf("order %v", order)
	}
	if q, bits := m.Part(p, answers, []bool{true, true, true, true, false}, 0, 1); q != 0 || math.Abs(bits-m.Information(p, 0)) > 1e-12 {
		t.Errorf("parted best by %d with %v bits", q, bits)
	}
	if q, _ := m.Part(p, answers, make([]bool, 5), 0, 1); q != -1 {
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
		m     Model
		where string
	}{
		"no causes":        {Model{}, "/prior"},
		"a cause too many": {Model{Prior: []float64{1, 2}, Yes: [][]float64{{0.5}}}, "/prior"},
		"no weight":        {Model{Prior: []float64{0}, Yes: [][]float64{{0.5}}}, "/prior/0"},
		"not a number":     {Model{Prior: []float64{math.NaN()}, Yes: [][]float64{{0.5}}}, "/prior/0"},
		"a short row":      {Model{Prior: []float64{1, 1}, Yes: [][]float64{{0.5, 0.5}, {0.5}}}, "/yes/1"},
		"quite sure":       {Model{Prior: []float64{1}, Yes: [][]float64{{1}}}, "/yes/0/0"},
		"never":            {Model{Prior: []float64{1}, Yes: [][]float64{{0.2, 0}}}, "/yes/0/1"},
	} {
		err := c.m.Check()
		if list := problem.Of(err); len(list) == 0 || list[0].Where != c.where {
			t.Errorf("%s: %v", name, err)
		}
	}
	good := Model{Prior: []float64{1}, Yes: [][]float64{{0.5}}}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
}

func BenchmarkPosteriorAndNext(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	m := randomModel(r, 27, 74)
	answers := randomAnswers(r, 74)
	cost := make([]float64, 74)
	for q := range cost {
		cost[q] = 1 + float64(q)
	}
	for b.Loop() {
		p := m.Posterior(answers)
		m.Next(p, answers, cost)
		m.Surprise(answers)
	}
}
