// Whether the answers contradict every cause.

package bayes

import "math"

// Surprise is how badly the answers fit together.
type Surprise struct {
	// Best is how many standard deviations the surprise −ln P(answers|cause)
	// lies over what that cause leads to expect, under the cause where that
	// is least. By Cantelli's inequality it is over k in at most 1/(1+k²) of
	// the cases in which one of the causes is at work alone.
	Best float64
	// First and Second are the two questions whose answers go together worst:
	// Together is how many times as probable the pair is as it would be if
	// they had nothing to do with each other. First is −1 with fewer than two
	// answers.
	First, Second int
	Together      float64
}

// Surprise measures whether any one cause explains the answers.
func (m Model) Surprise(answers []Answer) Surprise {
	s := Surprise{Best: math.Inf(1), First: -1, Second: -1, Together: math.Inf(1)}
	for c := range m.Prior {
		s.Best = min(s.Best, m.excess(c, answers))
	}
	for i, a := range answers {
		if a == Unknown {
			continue
		}
		for j := i + 1; j < len(answers); j++ {
			if answers[j] == Unknown {
				continue
			}
			if t := m.together(i, j, a, answers[j]); t < s.Together {
				s.First, s.Second, s.Together = i, j, t
			}
		}
	}
	return s
}

// excess is how many standard deviations the surprise of the answers under
// cause c lies over the mean of it under that cause. Without answers it is 0.
func (m Model) excess(c int, answers []Answer) float64 {
	over, variance := 0.0, 0.0
	for q, a := range answers {
		if a == Unknown {
			continue
		}
		p := m.Yes[c][q]
		yes, no := -math.Log(p), -math.Log(1-p)
		got := yes
		if a == No {
			got = no
		}
		over += got - (p*yes + (1-p)*no)
		variance += p * (1 - p) * (yes - no) * (yes - no)
	}
	if variance == 0 {
		return 0 // every answer was as likely as its contrary
	}
	return over / math.Sqrt(variance)
}

// together is P(both answers) over the product of their probabilities, before
// any other answer.
func (m Model) together(i, j int, a, b Answer) float64 {
	var both, first, second, total float64
	for c, w := range m.Prior {
		p, r := m.likelihood(c, i, a), m.likelihood(c, j, b)
		both, first, second, total = both+w*p*r, first+w*p, second+w*r, total+w
	}
	return both * total / (first * second)
}
