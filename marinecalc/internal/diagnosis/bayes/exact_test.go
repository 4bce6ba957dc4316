package bayes

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(want))) {
		t.Errorf("%s: %.17g, not %.17g", what, got, want)
	}
}

// sharp is a model without chains, settling looks or wrong answers.
func sharp(arises []float64, yes [][]float64, leak []float64) *Model {
	m := &Model{Arises: arises, Yes: yes, Leak: leak, Absence: make([]bool, len(leak)), Wrong: make([]float64, len(leak))}
	for range arises {
		m.Brings = append(m.Brings, make([]float64, len(arises)))
	}
	for range leak {
		m.Settles = append(m.Settles, -1)
	}
	return m
}

// Russell and Norvig, Artificial Intelligence: A Modern Approach, noisy-or of
// cold, flu and malaria on fever (no leak; each fails to cause it with 0.6, 0.2
// and 0.1), from memory.
func TestNoisyOrOfTheTextbook(t *testing.T) {
	m := sharp([]float64{0.1, 0.1, 0.1}, [][]float64{{0.4}, {0.8}, {0.9}}, []float64{0})
	for _, c := range []struct {
		causes []int
		want   float64
	}{{nil, 0}, {[]int{0}, 0.4}, {[]int{1}, 0.8}, {[]int{2}, 0.9}, {[]int{0, 1}, 0.88}, {[]int{0, 2}, 0.94}, {[]int{1, 2}, 0.98}, {[]int{0, 1, 2}, 0.988}} {
		near(t, "fever", m.Shown(c.causes, 0), c.want)
	}
}

// By hand: a leak of 0.1, and two causes that show the sign with 0.55 and 0.73
// each on its own, make it by s = 0.5 and 0.7 of themselves; both together show
// it with 1 − 0.9·0.5·0.3.
func TestLeakByHand(t *testing.T) {
	m := sharp([]float64{0.1, 0.1, 0.1}, [][]float64{{0.55}, {0.73}, {0.02}}, []float64{0.1})
	near(t, "both", m.Shown([]int{0, 1}, 0), 0.865)
	near(t, "neither", m.Shown(nil, 0), 0.1)
	near(t, "one that hides the leak", m.Shown([]int{2}, 0), 0.02)
	near(t, "one of each", m.Shown([]int{0, 2}, 0), 1-0.98*0.5)
	m.Absence[0] = true // a yes is that it is absent: the noes add up
	near(t, "absent under both", m.Shown([]int{0, 2}, 0), 1-(1-(1-0.45)*(0.02/0.1)))
}

func randomModel(r *rand.Rand, causes, questions int) *Model {
	m := &Model{}
	for c := range causes {
		m.Arises = append(m.Arises, 0.01+0.4*r.Float64())
		yes, brings := make([]float64, questions), make([]float64, causes)
		for q := range yes {
			yes[q] = 0.01 + 0.98*r.Float64()
		}
		for d := range brings {
			if d != c && r.Float64() < 0.5 {
				brings[d] = 0.6 * r.Float64()
			}
		}
		m.Yes, m.Brings = append(m.Yes, yes), append(m.Brings, brings)
	}
	for q := range questions {
		m.Leak, m.Absence = append(m.Leak, 0.02+0.5*r.Float64()), append(m.Absence, r.Float64() < 0.3)
		m.Wrong, m.Settles = append(m.Wrong, 0.01+0.2*r.Float64()), append(m.Settles, -1)
		if q < causes && r.Float64() < 0.3 {
			m.Settles[q], m.Absence[q] = q, false
		}
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

// sets works out how probable each set of causes (bit c) is by trying every
// way in which causes arise and links act, and following them.
func sets(m *Model) []float64 {
	n := len(m.Arises)
	type link struct {
		from, to int
		p        float64
	}
	var links []link
	for c, row := range m.Brings {
		for d, p := range row {
			if p > 0 {
				links = append(links, link{c, d, p})
			}
		}
	}
	all := make([]float64, 1<<n)
	for arisen := range 1 << n {
		p := 1.0
		for c, b := range m.Arises {
			if arisen>>c&1 == 1 {
				p *= b
			} else {
				p *= 1 - b
			}
		}
		for acting := range 1 << len(links) {
			q, at := p, arisen
			for i, l := range links {
				if acting>>i&1 == 1 {
					q *= l.p
				} else {
					q *= 1 - l.p
				}
			}
			for range n {
				for i, l := range links {
					if acting>>i&1 == 1 && at>>l.from&1 == 1 {
						at |= 1 << l.to
					}
				}
			}
			all[at] += q
		}
	}
	return all
}

func members(mask int) []int {
	var list []int
	for c := 0; mask>>c > 0; c++ {
		if mask>>c&1 == 1 {
			list = append(list, c)
		}
	}
	return list
}

// Derived: how probable it is that just these are at work, against every way
// in which it can come to that; rings of chains among them.
func TestTogetherAgreesWithEveryWay(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	for range 30 {
		m := randomModel(r, 4, 0)
		all, sum := sets(m), 0.0
		for mask, want := range all {
			near(t, "together", m.Together(members(mask)), want)
			sum += m.Together(members(mask))
		}
		near(t, "all sets", sum, 1)
	}
}

// shownByEvents is the probability of a true yes by trying whether the leak and
// each cause make the sign.
func shownByEvents(m *Model, in []int, q int) float64 {
	leak, makes := m.Leak[q], map[int]float64{}
	if m.Absence[q] {
		leak = 1 - leak
	}
	if m.Settles[q] >= 0 {
		leak = 0
	}
	low := leak
	for _, c := range in {
		there := m.Yes[c][q]
		if m.Absence[q] {
			there = 1 - there
		}
		switch {
		case m.Settles[q] >= 0 && m.Settles[q] != c:
		case there < leak:
			low = min(low, there)
		default:
			makes[c] = (there - leak) / (1 - leak) // so that alone, with the leak, it comes to there
		}
	}
	none := 1 - low
	for _, s := range makes {
		none *= 1 - s
	}
	if m.Absence[q] {
		return none
	}
	return 1 - none
}

// Derived: what the answers leave of the causes, the probability of further
// answers, information and weight, against sums over every set.
func TestBeliefAgreesWithSumsOverEverySet(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 100 {
		const causes, questions = 4, 6
		m := randomModel(r, causes, questions)
		answers := randomAnswers(r, questions)
		b := m.Believe(answers)
		found := m.Found(answers)
		p := map[int]float64{}
		total := 0.0
		said := func(mask, q int) float64 {
			yes := shownByEvents(m, members(mask), q)
			return yes*(1-m.Wrong[q]) + (1-yes)*m.Wrong[q]
		}
		for mask, w := range sets(m) {
			in := members(mask)
			has := !slices.ContainsFunc(found, func(c int) bool { return mask>>c&1 == 0 })
			if !has || len(found) == 0 && (len(in) == 0 || len(in) > 3) || len(found) > 0 && len(in)-len(found) > 3 {
				continue
			}
			for q, a := range answers {
				switch a {
				case Yes:
					w *= said(mask, q)
				case No:
					w *= 1 - said(mask, q)
				}
			}
			p[mask], total = w, total+w
		}
		for c := range causes {
			want := 0.0
			for mask, w := range p {
				if mask>>c&1 == 1 {
					want += w / total
				}
			}
			near(t, "cause", b.Cause[c], want)
		}
		entropy := func(w map[int]float64) float64 {
			sum, h := 0.0, 0.0
			for _, v := range w {
				sum += v
			}
			for _, v := range w {
				if v > 0 {
					h -= v / sum * math.Log2(v/sum)
				}
			}
			return h
		}
		if math.Abs(b.Doubt()-entropy(p)) > 1e-3 { // sets of next to nothing are left out
			t.Errorf("doubt %v, the sum %v", b.Doubt(), entropy(p))
		}
		for q, a := range answers {
			if a != Unknown {
				continue
			}
			yes, no := map[int]float64{}, map[int]float64{}
			share := 0.0
			for mask, w := range p {
				yes[mask], no[mask] = w*said(mask, q), w*(1-said(mask, q))
				share += yes[mask] / total
			}
			want := entropy(p) - share*entropy(yes) - (1-share)*entropy(no)
			if math.Abs(b.Information(q, []int{0, 1, 2, 3})-want) > 0.01 { // over the sets that hold 99.5 %
				t.Errorf("information %v, the sum %v", b.Information(q, []int{0, 1, 2, 3}), want)
			}
			byOne, yesOf, sum := [2]float64{}, [2]float64{}, 0.0
			for mask, w := range p {
				byOne[mask&1] += w
				yesOf[mask&1] += yes[mask]
			}
			for i, w := range byOne {
				if w > 0 {
					sum += w / total * entropyOf(yesOf[i]/w)
				}
			}
			if got := b.Information(q, []int{0}); math.Abs(got-(entropyOf(share)-sum)) > 0.01 {
				t.Errorf("information on one cause %v, the sum %v", got, entropyOf(share)-sum)
			}
			after, answer := b.After(q, Yes)
			if math.Abs(answer-share) > 0.01 { // over the sets that hold 99.5 %
				t.Errorf("a yes has %v, the sum %v", answer, share)
			}
			for c := range causes {
				want, sum := 0.0, 0.0
				for mask, w := range yes {
					sum += w
					if mask>>c&1 == 1 {
						want += w
					}
				}
				if math.Abs(after[c]-want/sum) > 0.02 {
					t.Errorf("after a yes %v, the sum %v", after[c], want/sum)
				}
			}
		}
	}
}

// Derived: with one cause and no other at work, ten times as probable an
// answer weighs ten decibans (Good 1950, from memory).
func TestWeightIsTheRatioOfTheAnswer(t *testing.T) {
	m := sharp([]float64{0.01, 0.01}, [][]float64{{0.5}, {0.05}}, []float64{0.05})
	m.Wrong[0] = 1e-12
	b := m.Believe([]Answer{Yes})
	if w := b.Weight(0, 0, Yes); math.Abs(w-10) > 0.2 { // a little of it is with the second cause
		t.Errorf("%v decibans", w)
	}
	near(t, "don't know", b.Weight(0, 0, Unknown), 0)
}

// Derived: a cause found by a look that is wrong at its rate makes the others
// no surer than it is itself: sums over every set in which the look is an
// answer as any other. From the trust on it is at work in every set.
func TestALookIsAsWrongAsAnAnswer(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 2))
	doubted, trusted := 0, 0
	for range 200 {
		m := randomModel(r, 4, 6)
		m.Settles[0] = 1
		m.Absence[0] = false
		m.Yes[1][0], m.Wrong[0] = 0.93, 0.02+0.3*r.Float64()
		m.Trust = 0.6
		answers := []Answer{Yes, Unknown, Yes, No, Unknown, Unknown}
		for q := 1; q < len(answers); q++ {
			m.Settles[q] = -1
		}
		b := m.Believe(answers)
		with := make([]float64, 4)
		total := 0.0
		for mask, w := range sets(m) {
			in := members(mask)
			if len(in) == 0 || len(in) > 3 {
				continue
			}
			for q, a := range answers {
				yes := shownByEvents(m, in, q)
				yes = yes*(1-m.Wrong[q]) + (1-yes)*m.Wrong[q]
				switch a {
				case Yes:
					w *= yes
				case No:
					w *= 1 - yes
				}
			}
			total += w
			for _, c := range in {
				with[c] += w
			}
		}
		if b.Cause[1] != 1 {
			t.Fatal("what was found is not said to be")
		}
		// Bayes by hand: the look shows it, or is wrong at its rate; sets of two before it.
		unlooked := slices.Clone(answers)
		unlooked[0] = Unknown
		p, wrong := m.believe(unlooked, nil, mostBeside).Cause[1], m.Wrong[0]
		shows := 0.93*(1-wrong) + 0.07*wrong
		near(t, "the look itself", b.Looks[0], p*shows/(p*shows+(1-p)*wrong))
		if b.Looks[0] >= m.Trust {
			trusted++
			continue
		}
		doubted++
		for _, c := range []int{0, 2, 3} {
			near(t, "beside a look in doubt", b.Cause[c], with[c]/total)
		}
	}
	if doubted < 20 || trusted < 20 {
		t.Errorf("%d in doubt, %d trusted", doubted, trusted)
	}
}
