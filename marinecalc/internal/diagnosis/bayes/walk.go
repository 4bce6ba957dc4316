// Every set of causes, and how probable the answers are under it.
//
// A cause bears on few questions. Under a set the answer to one on which none
// of it bears is as probable as without any, to one on which a single cause
// bears as with that one alone. So the logarithm of the probability of all
// answers is that of none, and a part for each cause; what two or three do
// together counts only for the questions on which they all bear.

package bayes

import (
	"math"
	"math/bits"
	"slices"
)

// walk goes through the sets, always in the same order: once for the
// logarithms, and again when the greatest is known. Causes are numbered among
// those that are not found.
type walk struct {
	b      *Belief
	of     []int // the causes, rising
	asked  []asked
	words  int       // of the mask of a cause
	bears  []uint64  // by cause: on which of those asked it bears
	alone  []float64 // by cause: the part of it alone
	pairs  []float64 // by two causes, the first the smaller: what both do beyond that
	counts bool      // that none is at work beside those found is a set as well
	logs   []float64
}

// asked is a question that was answered.
type asked struct {
	row    []effect
	beside effect
	a, b   float64   // probability of the answer: a + b·(probability that the sign is there)
	place  []int     // by cause: its place among those that bear, −1 for none
	bear   int       // how many bear
	alone  []float64 // by place: how many times as probable the answer is with it
	pairs  []float64 // by two places
}

// weigh fills in the sets and the probability of each cause.
func (b *Belief) weigh() {
	w := &walk{b: b, counts: len(b.taken) > 0}
	for c := range b.Model.Arises {
		if !slices.Contains(b.taken, c) {
			w.of = append(w.of, c)
		}
	}
	for q, a := range b.Answers {
		if a != Unknown {
			w.asked = append(w.asked, b.ask(q, a))
		}
	}
	n := len(w.of)
	w.words = (len(w.asked) + 63) / 64
	w.bears, w.alone, w.pairs = make([]uint64, n*w.words), make([]float64, n), make([]float64, n*n)
	for k := range w.asked {
		w.lay(k)
	}
	w.weighAnswers()
	w.take()
}

func (b *Belief) ask(q int, a Answer) asked {
	k := asked{row: b.effects[q], beside: b.beside[q], a: b.Model.Wrong[q], b: 1 - 2*b.Model.Wrong[q]}
	if (a == Yes) == b.Model.Absence[q] { // the answer says that the sign is not there
		k.a, k.b = 1-k.a, -k.b
	}
	return k
}

// under is the probability of the answer while all that the effect sums up is
// at work.
func (k *asked) under(e effect) float64 {
	return max(k.a+k.b*(1-(1-e.low)*e.spares), math.SmallestNonzeroFloat64)
}

// lay notes what each cause and each two do to the answer of a question.
func (w *walk) lay(number int) {
	k := &w.asked[number]
	none := k.under(k.beside)
	k.place = make([]int, len(w.of))
	var bear []int
	for i, c := range w.of {
		k.place[i] = -1
		if e := k.row[c]; e.spares != 1 || e.low < k.beside.low {
			k.place[i], bear = len(bear), append(bear, i)
			k.alone = append(k.alone, k.under(k.beside.and(e))/none)
			w.alone[i] += math.Log(k.alone[k.place[i]])
			w.bears[i*w.words+number/64] |= 1 << (number % 64)
		}
	}
	k.bear = len(bear)
	k.pairs = make([]float64, k.bear*k.bear)
	for x, i := range bear {
		one := k.beside.and(k.row[w.of[i]])
		for y := x + 1; y < len(bear); y++ {
			both := k.under(one.and(k.row[w.of[bear[y]]])) / none
			k.pairs[x*k.bear+y] = both
			w.pairs[i*len(w.of)+bear[y]] += math.Log(both / (k.alone[x] * k.alone[y]))
		}
	}
}

// beyond is how many times as probable three causes make the answer beyond
// what each two and each alone do.
func (w *walk) beyond(k *asked, i, j, l int) float64 {
	x, y, z := k.place[i], k.place[j], k.place[l]
	e := k.beside.and(k.row[w.of[i]]).and(k.row[w.of[j]]).and(k.row[w.of[l]])
	all := k.under(e) / k.under(k.beside)
	return all * k.alone[x] * k.alone[y] * k.alone[z] / (k.pairs[x*k.bear+y] * k.pairs[x*k.bear+z] * k.pairs[y*k.bear+z])
}

// weighAnswers takes the logarithm for every set.
func (w *walk) weighAnswers() {
	n := len(w.of)
	w.logs = make([]float64, 0, 1+n+n*(n-1)/2+n*(n-1)*(n-2)/6)
	if w.counts {
		w.logs = append(w.logs, 0)
	}
	common := make([]uint64, w.words)
	for i := range n {
		w.logs = append(w.logs, w.alone[i])
		for j := i + 1; j < n; j++ {
			two := w.alone[i] + w.alone[j] + w.pairs[i*n+j]
			w.logs = append(w.logs, two)
			for g := range common {
				common[g] = w.bears[i*w.words+g] & w.bears[j*w.words+g]
			}
			if w.b.most < mostSuspected {
				continue
			}
			withI, withJ := w.pairs[i*n:(i+1)*n], w.pairs[j*n:(j+1)*n]
			for l := j + 1; l < n; l++ {
				w.logs = append(w.logs, two+w.alone[l]+withI[l]+withJ[l]+w.together(common, i, j, l))
			}
		}
	}
}

// together is the logarithm of what three causes do beyond each two.
func (w *walk) together(common []uint64, i, j, l int) float64 {
	sum := 0.0
	for g, mask := range common {
		mask &= w.bears[l*w.words+g]
		if mask == 0 {
			continue
		}
		times := 1.0
		for ; mask != 0; mask &= mask - 1 {
			times *= w.beyond(&w.asked[64*g+bits.TrailingZeros64(mask)], i, j, l)
			if times < 1e-100 || times > 1e100 {
				sum, times = sum+math.Log(times), 1
			}
		}
		sum += math.Log(times)
	}
	return sum
}

// each goes through the sets in their order.
func (w *walk) each(take func(set int, causes *[mostSuspected]int, size int)) {
	set := 0
	var in [mostSuspected]int
	next := func(size int) { take(set, &in, size); set++ }
	if w.counts {
		next(0)
	}
	for i, a := range w.of {
		in[0] = a
		next(1)
		for j, b := range w.of[i+1:] {
			in[1] = b
			next(2)
			if w.b.most < mostSuspected {
				continue
			}
			for _, c := range w.of[i+j+2:] {
				in[2] = c
				next(3)
			}
		}
	}
}

// take makes probabilities of the logarithms and of how probable each set is
// before any answer.
func (w *walk) take() {
	b, prior := w.b, newPriors(w.b.Model)
	greatest := slices.Max(w.logs)
	heaviest, total := 0.0, 0.0
	all := make([]int, len(b.taken)+mostSuspected)
	copy(all, b.taken)
	w.each(func(set int, causes *[mostSuspected]int, size int) {
		n := copy(all[len(b.taken):], causes[:size])
		p := prior.of(all[:len(b.taken)+n]) * math.Exp(w.logs[set]-greatest)
		w.logs[set] = p
		heaviest, total = max(heaviest, p), total+p
		for _, c := range causes[:size] {
			b.Cause[c] += p
		}
	})
	for c := range b.Cause {
		b.Cause[c] /= total
	}
	for _, c := range b.taken {
		b.Cause[c] = 1
	}
	b.Sets = w.kept(heaviest, total)
}

// kept are the sets that count for something, the most probable first. They
// are sorted by whole numbers, the probability before the place, which is
// several times as fast as by a function.
func (w *walk) kept(heaviest, total float64) []Set {
	keys, causes := make([]uint64, 0, 4096), make([]int, 0, 5*4096)
	w.each(func(set int, in *[mostSuspected]int, size int) {
		if p := w.logs[set] / heaviest; p >= least {
			keys = append(keys, uint64(math.MaxUint32-math.Float32bits(float32(p)))<<32|uint64(len(causes)))
			causes = append(causes, set, size)
			causes = append(causes, in[:size]...)
		}
	})
	slices.Sort(keys)
	sets := make([]Set, len(keys))
	for i, key := range keys {
		at := int(key & math.MaxUint32)
		end := at + 2 + causes[at+1]
		sets[i] = Set{causes[at+2 : end : end], w.logs[causes[at]] / total}
	}
	return sets
}
