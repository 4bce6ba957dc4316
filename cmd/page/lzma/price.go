package lzma

// prices are what tokens cost, by the model as it is. They are worked out
// beforehand where the same ones are asked for again and again.
type prices struct {
	model    *model
	matchLen [positions][maxMatch + 1]uint32
	repLen   [positions][maxMatch + 1]uint32
	slot     [4][64]uint32  // by class; with the direct bits below
	near     [4][128]uint32 // by class; of whole distances less one
	align    [16]uint32
}

// learn takes the prices from the model.
func (p *prices) learn(m *model) {
	p.model = m
	for position := range positions {
		lengthPrices(&p.matchLen[position], m[matchLen:], position)
		lengthPrices(&p.repLen[position], m[repLen:], position)
	}
	for class := range 4 {
		for slot := range 64 {
			p.slot[class][slot] = treePrice(m.slotTree(class), uint32(slot), 6)
			if slot >= farSlot {
				p.slot[class][slot] += uint32(slot/2-1-4) * wholeBit
			}
		}
		for d := range uint32(len(p.near[class])) {
			slot, below := slotOf(d)
			p.near[class][d] = p.slot[class][slot]
			if slot >= 4 {
				p.near[class][d] += reverseTreePrice(m[nearBits+(slot-4)*32:], d, below)
			}
		}
	}
	for d := range uint32(len(p.align)) {
		p.align[d] = reverseTreePrice(m[alignBits:], d, 4)
	}
}

func lengthPrices(prices *[maxMatch + 1]uint32, probabilities []uint16, position int) {
	short := bitPrice(probabilities[isLong], 0)
	middle := bitPrice(probabilities[isLong], 1) + bitPrice(probabilities[isLongest], 0)
	long := bitPrice(probabilities[isLong], 1) + bitPrice(probabilities[isLongest], 1)
	for l := range uint32(8) {
		prices[minMatch+l] = short + treePrice(probabilities[shortLen+8*position:], l, 3)
		prices[minMatch+8+l] = middle + treePrice(probabilities[middleLen+8*position:], l, 3)
	}
	for l := range uint32(256) {
		prices[minMatch+16+l] = long + treePrice(probabilities[longLen:], l, 8)
	}
}

// distance is the price of a distance less one.
func (p *prices) distance(distance uint32, class int) uint32 {
	if distance < uint32(len(p.near[class])) {
		return p.near[class][distance]
	}
	slot, _ := slotOf(distance)
	return p.slot[class][slot] + p.align[distance&15]
}

// literal is the price of the byte at a place, without that of its kind.
//
//go:norace
func (p *prices) literal(data []byte, at int, past *past) (price uint32) {
	probabilities := p.model.literal(before(data, at))
	b := uint32(data[at])
	if past.afterLiteral() {
		return treePrice(probabilities, b, 8)
	}
	expected := uint32(data[at-int(past.reps[0])])
	node, same := uint32(1), true
	for i := 7; i >= 0; i-- {
		bit, other := b>>i&1, expected>>i&1
		if same {
			price += bitPrice(probabilities[256+256*other+node], bit)
		} else {
			price += bitPrice(probabilities[node], bit)
		}
		same = same && bit == other
		node = node<<1 | bit
	}
	return price
}

// kindPrices are what it costs to tell the kind of a token.
type kindPrices struct {
	literal, oneByte, fresh uint32
	rep                     [4]uint32
}

func (p *prices) kinds(state, position int) (k kindPrices) {
	m := p.model
	match := bitPrice(m[isMatch+state*positions+position], 1)
	rep := match + bitPrice(m[isRep+state], 1)
	rep0 := rep + bitPrice(m[isRepG0+state], 0)
	rep123 := rep + bitPrice(m[isRepG0+state], 1)
	rep23 := rep123 + bitPrice(m[isRepG1+state], 1)

	k.literal = bitPrice(m[isMatch+state*positions+position], 0)
	k.fresh = match + bitPrice(m[isRep+state], 0)
	k.oneByte = rep0 + bitPrice(m[isRep0Long+state*positions+position], 0)
	k.rep[0] = rep0 + bitPrice(m[isRep0Long+state*positions+position], 1)
	k.rep[1] = rep123 + bitPrice(m[isRepG1+state], 0)
	k.rep[2] = rep23 + bitPrice(m[isRepG2+state], 0)
	k.rep[3] = rep23 + bitPrice(m[isRepG2+state], 1)
	return k
}
