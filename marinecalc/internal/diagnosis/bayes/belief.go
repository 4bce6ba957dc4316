// What the answers leave of the causes.

package bayes

import (
	"cmp"
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
func (m *Model) Believe(answers []Answer) *Belief {
	found := m.Found(answers)
	b := &Belief{Model: m, Answers: answers, Found: found, Cause: make([]float64, len(m.Arises))}
	b.effects, b.beside = make([][]effect, len(answers)), make([]effect, len(answers))
	rows := make([]effect, len(answers)*len(m.Arises))
	for q := range answers {
		row := rows[q*len(m.Arises):][:len(m.Arises)]
		for c := range row {
			row[c].spares, row[c].low = m.effect(c, q)
		}
		b.effects[q], b.beside[q] = row, effect{1, m.leak(q)}.with(row, found, -1)
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
