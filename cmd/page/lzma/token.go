package lzma

// token is one step through the data: a byte, or length bytes that came
// before.
type token struct {
	length int32
	from   int32 // literal, which of the last four distances (0 to 3), or fresh + a distance
}

const (
	literal = -1
	fresh   = 3 // the least distance is 1
)

// past is what the probabilities of a token depend on of those before it: the
// state sums up their kinds, reps are the last four distances.
type past struct {
	state uint8
	reps  [4]int32
}

var nothingYet = past{reps: [4]int32{1, 1, 1, 1}}

// afterLiteral tells whether the last token was one.
func (p *past) afterLiteral() bool { return p.state < 7 }

// with is the past once t is past.
func (p past) with(t token) past {
	if t.from == literal {
		p.state = [states]uint8{0, 0, 0, 0, 1, 2, 3, 4, 5, 6, 4, 5}[p.state]
		return p
	}
	first := p.afterLiteral()
	switch {
	case t.from > fresh:
		p.state = either(first, 7, 10)
		p.reps = [4]int32{t.from - fresh, p.reps[0], p.reps[1], p.reps[2]}
	case t.length == 1:
		p.state = either(first, 9, 11)
	default:
		p.state = either(first, 8, 11)
		distance := p.reps[t.from]
		copy(p.reps[1:t.from+1], p.reps[:t.from])
		p.reps[0] = distance
	}
	return p
}

func either(first bool, a, b uint8) uint8 {
	if first {
		return a
	}
	return b
}

// tokenWriter writes tokens, and keeps model and past up to date.
type tokenWriter struct {
	rangeEncoder
	model *model
	past  past
	data  []byte
	at    int // the place in data
}

func (w *tokenWriter) token(t token) {
	m, state, position := w.model, int(w.past.state), w.at%positions
	isMatch := &m[isMatch+state*positions+position]
	switch {
	case t.from == literal:
		w.bit(isMatch, 0)
		w.literal()
	case t.from > fresh:
		w.bit(isMatch, 1)
		w.bit(&m[isRep+state], 0)
		w.length(m[matchLen:], t.length, position)
		w.distance(uint32(t.from-fresh-1), lengthClass(t.length))
	default:
		w.bit(isMatch, 1)
		w.bit(&m[isRep+state], 1)
		w.rep(t, state, position)
	}
	w.past = w.past.with(t)
	w.at += int(t.length)
}

// rep writes a match at one of the last four distances.
func (w *tokenWriter) rep(t token, state, position int) {
	m, which := w.model, uint32(t.from)
	w.bit(&m[isRepG0+state], min(which, 1))
	if which == 0 {
		w.bit(&m[isRep0Long+state*positions+position], min(uint32(t.length)-1, 1))
	} else {
		w.bit(&m[isRepG1+state], min(which-1, 1))
		if which > 1 {
			w.bit(&m[isRepG2+state], which-2)
		}
	}
	if t.length > 1 {
		w.length(m[repLen:], t.length, position)
	}
}

// literal writes the byte at hand. Behind a match, the byte that would have
// gone on with the match tells something about it: other probabilities serve
// as long as the bits of both are the same.
func (w *tokenWriter) literal() {
	probabilities := w.model.literal(before(w.data, w.at))
	b := uint32(w.data[w.at])
	if w.past.afterLiteral() {
		w.tree(probabilities, b, 8)
		return
	}
	expected := uint32(w.data[w.at-int(w.past.reps[0])])
	node, same := uint32(1), true
	for i := 7; i >= 0; i-- {
		bit, other := b>>i&1, expected>>i&1
		if same {
			w.bit(&probabilities[256+256*other+node], bit)
		} else {
			w.bit(&probabilities[node], bit)
		}
		same = same && bit == other
		node = node<<1 | bit
	}
}

// before is the byte before a place.
func before(data []byte, at int) byte {
	if at == 0 {
		return 0
	}
	return data[at-1]
}

func (w *tokenWriter) length(probabilities []uint16, length int32, position int) {
	l := uint32(length - minMatch)
	switch {
	case l < 8:
		w.bit(&probabilities[isLong], 0)
		w.tree(probabilities[shortLen+8*position:], l, 3)
	case l < 16:
		w.bit(&probabilities[isLong], 1)
		w.bit(&probabilities[isLongest], 0)
		w.tree(probabilities[middleLen+8*position:], l-8, 3)
	default:
		w.bit(&probabilities[isLong], 1)
		w.bit(&probabilities[isLongest], 1)
		w.tree(probabilities[longLen:], l-16, 8)
	}
}

// distance writes a distance less one.
func (w *tokenWriter) distance(distance uint32, class int) {
	slot, below := slotOf(distance)
	w.tree(w.model.slotTree(class), uint32(slot), 6)
	switch {
	case slot < 4: // that was all
	case slot < farSlot:
		w.reverseTree(w.model[nearBits+(slot-4)*32:], distance, below)
	default:
		w.direct(distance>>4, below-4)
		w.reverseTree(w.model[alignBits:], distance, 4)
	}
}
