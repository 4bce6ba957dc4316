// What the answers leave of the causes.

package bayes

import (
	"cmp"
	"math"
	"slices"
)

// Set is causes that may be at work together, beside those found, and how
// probable it is that it is just these.
type Set struct {
	Causes      []int // rising; those found are not among them
	Probability float64
}

// Belief is what the answers leave: every set of causes with its probability.
type Belief struct {
	Model   *Model
	Answers []Answer
	Found   []int // settled by a look; taken to be at work in every set
	Cause   []float64
	Sets    []Set      // the most probable first; what has next to nothing is left out
	effects [][]effect // by question, by cause
	beside  []effect   // by question: of all found together, the leak among it
}

// effect is what a cause does to a question, as Model.effect says.
type effect struct{ spares, low float64 }

// with adds what causes do, but for one of them.
func (e effect) with(row []effect, causes []int, less int) effect {
	for _, c := range causes {
		if c != less {
			e.spares, e.low = e.spares*row[c].spares, min(e.low, row[c].low)
		}
	}
	return e
}

const (
	mostSuspected = 3    // causes taken to be at work at once while none is found
	mostBeside    = 2    // beside those found
	least         = 1e-5 // of the most probable set: under it a set is not kept
)

// walk enumerates the sets. Its slices stand one beside the other for each
// depth, so that a further cause costs one pass over the questions asked.
type walk struct {
	m       *Model
	prior   *priors
	in      []int // found first
	fixed   map[int]bool
	a, b    []float64      // probability of the answer: a + b·(probability that the sign is there)
	spares  [][]float64    // by depth, by question asked
	low     [][]float64    // the same
	effects [][2][]float64 // by cause, by question asked
	causes  []int          // all sets one after the other
	ends    []int
	weights []float64 // prior times likelihood, less the powers taken out
	powers  []int32   // of tiny, taken out
	deepest int
}

// tiny is taken out of a likelihood that would else become too small to hold.
const tiny = 1e-200

// Believe works out what the answers leave: exactly, over every set of one to
// three causes, or of up to two beside those found.
func (m *Model) Believe(answers []Answer) *Belief {
	w := &walk{m: m, prior: newPriors(m), fixed: map[int]bool{}, deepest: mostSuspected}
	found := m.Found(answers)
	for _, c := range found {
		w.fixed[c] = true
	}
	if w.in = slices.Clone(found); len(found) > 0 {
		w.deepest = mostBeside
	}
	var asked []int
	for q, a := range answers {
		if a == Unknown {
			continue
		}
		asked = append(asked, q)
		a0, b0 := m.Wrong[q], 1-2*m.Wrong[q]
		if (a == Yes) == m.Absence[q] { // the answer says that the sign is not there
			a0, b0 = 1-a0, -b0
		}
		w.a, w.b = append(w.a, a0), append(w.b, b0)
	}
	w.ready(asked)
	w.room()
	w.step(0, 0, len(found) > 0)
	return w.belief(answers, found)
}

// ready lays out what each cause does to the questions asked, and what those
// found do together.
func (w *walk) ready(asked []int) {
	for c := range w.m.Arises {
		var e [2][]float64
		for i := range e {
			e[i] = make([]float64, len(asked))
		}
		for i, q := range asked {
			e[0][i], e[1][i] = w.m.effect(c, q)
		}
		w.effects = append(w.effects, e)
	}
	for range w.deepest + 1 {
		w.spares, w.low = append(w.spares, make([]float64, len(asked))), append(w.low, make([]float64, len(asked)))
	}
	for i, q := range asked {
		w.spares[0][i], w.low[0][i] = 1, w.m.leak(q)
		for c := range w.fixed {
			w.spares[0][i] *= w.effects[c][0][i]
			w.low[0][i] = min(w.low[0][i], w.effects[c][1][i])
		}
	}
}

// step takes the set so far, where it counts, and every one with a further
// cause from next on. The last cause of the largest sets is not laid out: its
// part of each answer is used where it comes up.
func (w *walk) step(depth, next int, counts bool) {
	if counts {
		w.take(depth, w.spares[depth], w.low[depth])
	}
	if depth == w.deepest {
		return
	}
	from, lowFrom := w.spares[depth], w.low[depth]
	for c := next; c < len(w.m.Arises); c++ {
		if w.fixed[c] {
			continue
		}
		e, l := w.effects[c][0][:len(from)], w.effects[c][1][:len(from)]
		w.in = append(w.in, c)
		if depth+1 == w.deepest {
			w.takeWith(depth+1, from, lowFrom, e, l)
		} else {
			to, lowTo := w.spares[depth+1][:len(from)], w.low[depth+1][:len(from)]
			for i, s := range from {
				to[i], lowTo[i] = s*e[i], min(lowFrom[i], l[i])
			}
			w.step(depth+1, c+1, true)
		}
		w.in = w.in[:len(w.in)-1]
	}
}

// take weighs the set so far: its prior times the probability of the answers
// under it.
func (w *walk) take(depth int, spares, low []float64) {
	p, powers := 1.0, int32(0)
	a, b := w.a[:len(spares)], w.b[:len(spares)]
	for i, s := range spares {
		if p *= a[i] + b[i]*(1-(1-low[i])*s); p < tiny {
			p, powers = p/tiny, powers+1
		}
	}
	w.keep(depth, p, powers)
}

// takeWith is the same with one cause more.
func (w *walk) takeWith(depth int, spares, low, e, l []float64) {
	p, powers := 1.0, int32(0)
	a, b := w.a[:len(spares)], w.b[:len(spares)]
	for i, s := range spares {
		leak := low[i]
		if l[i] < leak {
			leak = l[i]
		}
		if p *= a[i] + b[i]*(1-(1-leak)*s*e[i]); p < tiny {
			p, powers = p/tiny, powers+1
		}
	}
	w.keep(depth, p, powers)
}

func (w *walk) keep(depth int, answers float64, powers int32) {
	w.causes = append(w.causes, w.in[len(w.in)-depth:]...)
	w.ends, w.weights, w.powers = append(w.ends, len(w.causes)), append(w.weights, w.prior.of(w.in)*answers), append(w.powers, powers)
}

// room makes room for every set at once.
func (w *walk) room() {
	n := len(w.m.Arises)
	sets := n + n*(n-1)/2 + 1
	if w.deepest == mostSuspected {
		sets += n * (n - 1) * (n - 2) / 6
	}
	w.causes, w.ends, w.weights, w.powers = make([]int, 0, w.deepest*sets), make([]int, 0, sets), make([]float64, 0, sets), make([]int32, 0, sets)
}

// heaviest is the weight of the most probable set, with its powers.
func (w *walk) heaviest() (weight float64, powers int32) {
	powers = slices.Min(w.powers)
	for i, p := range w.powers {
		if p == powers {
			weight = max(weight, w.weights[i])
		}
	}
	return weight, powers
}

func (w *walk) belief(answers []Answer, found []int) *Belief {
	b := &Belief{Model: w.m, Answers: answers, Found: found, Cause: make([]float64, len(w.m.Arises))}
	b.effects, b.beside = make([][]effect, len(answers)), make([]effect, len(answers))
	for q := range answers {
		row := make([]effect, len(w.m.Arises))
		for c := range row {
			row[c].spares, row[c].low = w.m.effect(c, q)
		}
		b.effects[q], b.beside[q] = row, effect{1, w.m.leak(q)}.with(row, found, -1)
	}
	total, start := 0.0, 0
	order := make([]weighed, 0, len(w.ends)/4)
	heaviest, powers := w.heaviest()
	for i, end := range w.ends {
		p := w.weights[i] / heaviest
		if over := w.powers[i] - powers; over > 0 {
			p *= math.Pow(tiny, float64(over))
		}
		total += p
		for _, c := range w.causes[start:end] {
			b.Cause[c] += p
		}
		if p >= least {
			order = append(order, weighed{p, start, end})
		}
		start = end
	}
	for c := range b.Cause {
		b.Cause[c] /= total
	}
	for _, c := range found {
		b.Cause[c] = 1
	}
	slices.SortFunc(order, func(x, y weighed) int {
		if c := cmp.Compare(y.p, x.p); c != 0 {
			return c
		}
		return cmp.Compare(x.start, y.start)
	})
	b.Sets = make([]Set, len(order))
	for i, s := range order {
		b.Sets[i] = Set{w.causes[s.start:s.end:s.end], s.p / total}
	}
	return b
}

// weighed is a set by where its causes stand, to be sorted.
type weighed struct {
	p          float64
	start, end int
}

// Rank lists the causes, the most probable first; equals stay in their order.
func Rank(probability []float64) []int {
	order := make([]int, len(probability))
	for c := range order {
		order[c] = c
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(probability[b], probability[a]) })
	return order
}
