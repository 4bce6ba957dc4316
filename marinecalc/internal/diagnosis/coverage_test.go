package diagnosis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"example.org/driveline/marinecalc/internal/diagnosis/bayes"
	"example.org/driveline/marinecalc/rules"
)

// wrongAnswers is the share of answers that are not true, of looks as well.
const wrongAnswers = 0.1

// drawn draws what is at work by a model: what arises, and what that brings on.
func drawn(r *rand.Rand, m *bayes.Model) []int {
	for {
		at := make([]bool, len(m.Arises))
		var queue []int
		for c, b := range m.Arises {
			if r.Float64() < b {
				at[c], queue = true, append(queue, c)
			}
		}
		for ; len(queue) > 0; queue = queue[1:] {
			for d, l := range m.Brings[queue[0]] {
				if !at[d] && r.Float64() < l {
					at[d], queue = true, append(queue, d)
				}
			}
		}
		var in []int
		for c := range at {
			if at[c] {
				in = append(in, c)
			}
		}
		if len(in) > 0 && len(in) <= 3 {
			return in
		}
	}
}

// perturbed is the model with every weight somewhat otherwise: the log odds of
// each by a normal of 1, how common each cause is by a factor of e^±0.5.
func perturbed(r *rand.Rand, m bayes.Model) *bayes.Model {
	move := func(p, sd float64) float64 {
		return 1 / (1 + math.Exp(-math.Log(p/(1-p))-sd*r.NormFloat64()))
	}
	m.Yes, m.Leak, m.Arises = slices.Clone(m.Yes), slices.Clone(m.Leak), slices.Clone(m.Arises)
	for q, leak := range m.Leak {
		m.Leak[q] = move(leak, 1)
		for c := range m.Yes {
			if m.Yes[c][q] != leak {
				continue
			}
			m.Yes[c] = slices.Clone(m.Yes[c])
			m.Yes[c][q] = m.Leak[q]
		}
	}
	for c, row := range m.Yes {
		m.Yes[c] = slices.Clone(row)
		for q, p := range row {
			if p != m.Leak[q] {
				m.Yes[c][q] = move(p, 1)
			}
		}
		m.Arises[c] = min(0.5, m.Arises[c]*math.Exp(0.5*r.NormFloat64()))
	}
	return &m
}

// twoOf draws two causes that arose each by itself.
func twoOf(r *rand.Rand, m *bayes.Model) []int {
	pick := func() int {
		for {
			if c := r.IntN(len(m.Arises)); r.Float64() < m.Arises[c]/0.1 {
				return c
			}
		}
	}
	for {
		if a, b := pick(), pick(); a < b {
			return []int{a, b}
		}
	}
}

// played is one case: what it said and whether that was so.
type played struct {
	answers                int
	sure, sureRight        bool // a suspected first cause from 90 % on
	found, foundRight      bool // what was found, and the other answers agree
	thrice, thriceRight    bool // found by three looks, and little else points to it
	firstRight, threeRight bool
}

// play answers what is proposed until something is found or nearly sure, or
// thirty answers are given. Half way the boat is hauled out. Without looks
// that settle, only what can be told and measured from outside is asked.
func play(r *rand.Rand, f *finder, in []int, m *bayes.Model, settle bool) (p played, seen []claim) {
	looked := map[int]int{}
	for p.answers < 30 {
		lies := "afloat"
		if p.answers >= 15 {
			lies = "ashore"
		}
		f.believe()
		q := f.proposed(f.ordered(Input{Lies: lies}, f.heldBack() != ""), p.answers, settle)
		if p.answers > 0 {
			for c, prob := range f.belief.Cause {
				if !f.isFound(c) && prob >= 0.5 {
					seen = append(seen, claim{c, prob, slices.Contains(in, c)})
				}
			}
			order := f.order()
			first := order[0]
			p.firstRight = slices.Contains(in, first)
			p.threeRight = slices.ContainsFunc(order[:3], func(c int) bool { return slices.Contains(in, c) })
			switch {
			case f.isFound(first) && looked[first] < 2 && f.ofOneLook(first) < f.figure("sure-nearly"):
				q = f.settler[first] // it says: look a second time
				looked[first]++
			case f.isFound(first) && f.ofOneLook(first) < f.figure("sure-nearly"):
				p.thrice, p.thriceRight = true, p.firstRight // it says no more than that: look again
				return p, seen
			case f.isFound(first):
				p.found, p.foundRight = true, p.firstRight
				return p, seen
			case f.belief.Cause[first] >= f.figure("sure-nearly"):
				p.sure, p.sureRight = true, p.firstRight
				return p, seen
			}
		}
		if q < 0 {
			return p, seen
		}
		yes := r.Float64() < m.Shown(in, q)
		if r.Float64() < wrongAnswers {
			yes = !yes
		}
		a := bayes.No
		if yes {
			a = bayes.Yes
		}
		if f.answers[q] == a {
			f.model.Wrong[q] = bothWrong(f.model.Wrong[q], f.knowledge.model.Wrong[q]) // as by another way
		} else {
			f.put(q, a, byPerson, "")
		}
		p.answers++
	}
	return p, seen
}

// proposed is the question that a patient person answers next: the look that
// settles the leader at once, else eight quick ones, then the looks.
func (f *finder) proposed(list []bayes.Check, answered int, settle bool) int {
	look, quick := -1, -1
	for _, c := range list {
		settles := f.model.Settles[c.Question] >= 0
		switch isLook := f.evidence.At(c.Question).Kind == check; {
		case isLook && look < 0 && (settle || !settles):
			look = c.Question
		case !isLook && quick < 0:
			quick = c.Question
		}
	}
	if look >= 0 && list[0].Question == look && f.model.Settles[look] >= 0 && answered > 0 || quick < 0 {
		return look
	}
	if answered < 8 || look < 0 {
		return quick
	}
	return look
}

// claim is a probability that was given of a cause, and whether it was so.
type claim struct {
	cause int
	p     float64
	right bool
}

// TestNearlySureIsRight plays simulated cases, one answer in ten wrong, looks
// as well: where a probability of 90 % or more is given, at any time, it is
// right nine times in ten, as far as so many cases can tell. MARINECALC_SEED
// names another seed.
func TestNearlySureIsRight(t *testing.T) {
	if os.Getenv("MARINECALC_COVERAGE") == "" {
		t.Skip("a long check: MARINECALC_COVERAGE=1")
	}
	cases := 1000
	if n, err := strconv.Atoi(os.Getenv("MARINECALC_COVERAGE")); err == nil && n > 1 {
		cases = n
	}
	seed := uint64(12)
	if n, err := strconv.ParseUint(os.Getenv("MARINECALC_SEED"), 10, 64); err == nil {
		seed = n
	}
	own := asWritten(rules.Standard()).model
	kinds := []struct {
		name string
		draw func(*rand.Rand) ([]int, *bayes.Model)
	}{
		{"its own model", func(r *rand.Rand) ([]int, *bayes.Model) { return drawn(r, &own), &own }},
		{"other weights", func(r *rand.Rand) ([]int, *bayes.Model) { m := perturbed(r, own); return drawn(r, m), m }},
		{"two causes", func(r *rand.Rand) ([]int, *bayes.Model) { return twoOf(r, &own), &own }},
	}
	rows, sure := make([]string, 2*len(kinds)), make([][2]int, 2*len(kinds))
	var wait sync.WaitGroup
	for n := range rows {
		wait.Go(func() {
			settle, kind := n < len(kinds), kinds[n%len(kinds)]
			r := rand.New(rand.NewPCG(seed, uint64(n)))
			var s scored
			for range cases {
				in, m := kind.draw(r)
				s.add(play(r, newFinder(rules.Standard()), in, m, settle))
			}
			rows[n] = "| " + kind.name + " | " + map[bool]string{true: "made", false: "none"}[settle] + " | " + s.row(cases) + " |\n"
			fmt.Fprint(os.Stderr, rows[n]) // as it goes
			sure[n] = [2]int{s.said[2], s.so[2]}
			if n := s.said[2]; tooFew(s.so[2], n) {
				t.Errorf("%s: from 90 %% on right in %s", kind.name, share(s.so[2], n))
			}
			if n := s.found + s.sure; tooFew(s.foundRight+s.sureRight, n) {
				t.Errorf("%s: found or nearly sure is right in %s", kind.name, share(s.foundRight+s.sureRight, n))
			}
		})
	}
	wait.Wait()
	said, so := 0, 0 // of all kinds: some say it too seldom to be held to it alone
	for _, n := range sure {
		said, so = said+n[0], so+n[1]
	}
	if tooFew(so, said) {
		t.Errorf("all kinds: from 90 %% on right in %s", share(so, said))
	}
	t.Log("\n| at work | looks that settle | found, and the rest agrees: right | found by three looks, little else points to it: right | nearly sure: right | neither | answers, median | true cause first / in three | said 50–70 %, on the average: right | 70–90 % | 90 % and more |\n|---|---|---|---|---|---|---|---|---|---|---|\n" + strings.Join(rows, ""))
}

// scored counts the cases of one kind.
type scored struct {
	found, foundRight, thrice, thriceRight, sure, sureRight, neither, first, three int
	said, so                                                                       [3]int     // by band of probability
	mean                                                                           [3]float64 // of what was said there, times how often
	answers                                                                        []int
}

func (s *scored) add(p played, seen []claim) {
	count := func(n *int, is bool) {
		if is {
			*n++
		}
	}
	s.answers = append(s.answers, p.answers)
	count(&s.found, p.found)
	count(&s.foundRight, p.foundRight)
	count(&s.thrice, p.thrice)
	count(&s.thriceRight, p.thriceRight)
	count(&s.sure, p.sure)
	count(&s.sureRight, p.sureRight)
	count(&s.neither, !p.found && !p.thrice && !p.sure)
	count(&s.first, p.firstRight)
	count(&s.three, p.threeRight)
	told := map[[2]int]bool{} // what is said again at the next answer is the same claim
	for _, c := range seen {
		band := 0
		count(&band, c.p >= 0.7)
		count(&band, c.p >= 0.9)
		if told[[2]int{c.cause, band}] {
			continue
		}
		told[[2]int{c.cause, band}] = true
		s.mean[band] += c.p
		s.said[band]++
		count(&s.so[band], c.right)
	}
}

func share(a, b int) string {
	if b == 0 {
		return "none"
	}
	return fmt.Sprintf("%d of %d (%.0f %%)", a, b, 100*float64(a)/float64(b))
}

func (s *scored) row(cases int) string {
	slices.Sort(s.answers)
	band := func(n int) string {
		if s.said[n] == 0 {
			return "none"
		}
		return fmt.Sprintf("%.0f %%: %s", 100*s.mean[n]/float64(s.said[n]), share(s.so[n], s.said[n]))
	}
	return fmt.Sprintf("%s | %s | %s | %d | %d | %s / %s | %s | %s | %s", share(s.foundRight, s.found), share(s.thriceRight, s.thrice), share(s.sureRight, s.sure), s.neither,
		s.answers[len(s.answers)/2], share(s.first, cases), share(s.three, cases), band(0), band(1), band(2))
}

// tooFew tells whether what is right nine times in ten would come out right so
// seldom less than once in forty (the lower tail of the binomial distribution).
// A bar at 88 of 100, as there was, fails every fourth time at 35 cases.
func tooFew(right, of int) bool {
	ways := func(n int) float64 { v, _ := math.Lgamma(float64(n) + 1); return v }
	chance := 0.0
	for k := range right + 1 {
		chance += math.Exp(ways(of) - ways(k) - ways(of-k) + float64(k)*math.Log(0.9) + float64(of-k)*math.Log(0.1))
	}
	return chance < 0.025
}

func TestTooFewRight(t *testing.T) {
	for _, c := range []struct {
		right, of int
		is        bool
	}{
		{5, 5, false}, {29, 35, false}, {27, 35, true}, {84, 100, false}, {83, 100, true}, {900, 1000, false}, {880, 1000, true},
	} { // lower tails by Python's exact integers (math.comb): 1, 0.132, 0.020, 0.040, 0.021, 0.515, 0.022
		if is := tooFew(c.right, c.of); is != c.is {
			t.Errorf("%d of %d: %v", c.right, c.of, is)
		}
	}
}
