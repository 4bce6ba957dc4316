// What the answers leave of the causes.

package bayes

import (
	"cmp"
	"slices"
)

// Set is causes that may be at work together, beside those found and taken to
// be at work, and how probable it is that it is just these.
type Set struct {
	Causes      []int // rising; those taken are not among them
	Probability float64
}

// Belief is what the answers leave: every set of causes with its probability.
type Belief struct {
	Model   *Model
	Answers []Answer
	Found   []int      // settled by a look
	Looks   []float64  // of each found: how probable it is by all answers, its look taken at the rate at which looks are wrong
	Cause   []float64  // 1 of one that is found
	Sets    []Set      // the most probable first; what has next to nothing is left out
	taken   []int      // of those found, the ones at work in every set
	most    int        // causes in a set, beside those
	effects [][]effect // by question, by cause
	beside  []effect   // by question: of all taken together, the leak among it
	holding [][]int    // by cause: the most probable sets that hold it, by number
}

// effect is what a cause does to a question, as Model.effect says.
type effect struct{ spares, low float64 }

// and adds what one cause more does.
func (e effect) and(more effect) effect {
	return effect{e.spares * more.spares, min(e.low, more.low)}
}

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
	mostSuspected = 3    // causes taken to be at work at once, beside those found
	least         = 1e-4 // of the most probable set: under it a set is not kept
)

// Believe works out what the answers leave: exactly, over every set of one to
// three causes, or of up to three beside those found: what made one fail and
// what that has brought on besides must have room.
//
// What was found rests on a look, and looks are wrong too: of one that all
// answers together leave in doubt the look is weighed as any other answer, so
// that what it would bring on, or was made by, is no surer than it is itself.
func (m *Model) Believe(answers []Answer) *Belief {
	found := m.Found(answers)
	looks := m.looks(answers, found)
	b := m.believe(answers, m.taken(found, looks), mostSuspected)
	b.Found, b.Looks = found, looks
	for _, c := range found {
		b.Cause[c] = 1
	}
	return b
}

// BelieveFound is the same with all that was found at work in every set: what
// follows if it is so.
func (m *Model) BelieveFound(answers []Answer) *Belief {
	found := m.Found(answers)
	b := m.believe(answers, found, mostSuspected)
	b.Found = found
	return b
}

// looks gives for each cause found how probable it is with its own look at the
// rate at which looks are wrong and the other looks taken at their word.
func (m *Model) looks(answers []Answer, found []int) []float64 {
	list := make([]float64, len(found))
	for i, c := range found {
		list[i] = 1
		if m.Trust == 0 {
			continue
		}
		others, without := slices.Clone(found), slices.Clone(answers)
		others = slices.Delete(others, i, i+1)
		wrong, shows := 1.0, 1.0
		for q, a := range answers {
			if m.Settles[q] == c && a == Yes {
				without[q] = Unknown
				wrong, shows = wrong*m.Wrong[q], shows*m.answered(m.Yes[c][q], q, Yes)
			}
		}
		p := m.believe(without, others, mostBeside).Cause[c]
		list[i] = p * shows / (p*shows + (1-p)*wrong)
	}
	return list
}

// taken are the causes found that are at work in every set: those that all
// answers bear out, and the likeliest of the others beyond mostDoubted, since
// sets have room for three.
func (m *Model) taken(found []int, looks []float64) (list []int) {
	for n, i := range Rank(looks) { // the surest first
		if looks[i] >= m.Trust || len(found)-n > mostDoubted {
			list = append(list, found[i])
		}
	}
	slices.Sort(list)
	return list
}

const (
	mostBeside  = 2 // causes beside those found while a look is weighed
	mostDoubted = 2 // of those found that are held in doubt
)

// believe is the same with these causes at work in every set.
func (m *Model) believe(answers []Answer, taken []int, most int) *Belief {
	b := &Belief{Model: m, Answers: answers, Cause: make([]float64, len(m.Arises)), taken: taken, most: most}
	b.effects, b.beside = make([][]effect, len(answers)), make([]effect, len(answers))
	rows := make([]effect, len(answers)*len(m.Arises))
	for q := range answers {
		row := rows[q*len(m.Arises):][:len(m.Arises)]
		for c := range row {
			row[c].spares, row[c].low = m.effect(c, q)
		}
		b.effects[q], b.beside[q] = row, effect{1, m.leak(q)}.with(row, taken, -1)
	}
	b.weigh()
	b.holding = make([][]int, len(m.Arises))
	for i, s := range b.Sets {
		for _, c := range s.Causes {
			if len(b.holding[c]) < mostHolding {
				b.holding[c] = append(b.holding[c], i)
			}
		}
	}
	return b
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
