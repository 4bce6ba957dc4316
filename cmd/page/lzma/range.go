package lzma

import "math"

// The probability of a bit to be 0, in 1/2048. It moves by a 32nd of the way
// at each bit seen.
const (
	probabilityBits = 11
	certain         = 1 << probabilityBits
	moveBits        = 5
)

// rangeEncoder writes bits as one long binary fraction. Each bit leaves, of
// the range that the fraction can still be in, a part as wide as the bit was
// probable.
type rangeEncoder struct {
	bytes []byte
	low   uint64 // where the range begins, 32 bits and a carry
	width uint32
	held  byte // the last byte, held back because a carry may come
	full  int  // bytes of 0xff behind it, which a carry would run through
}

// bit writes a bit, and lets its probability learn from it.
func (e *rangeEncoder) bit(probability *uint16, bit uint32) {
	bound := e.width >> probabilityBits * uint32(*probability)
	if bit == 0 {
		e.width = bound
		*probability += (certain - *probability) >> moveBits
	} else {
		e.low += uint64(bound)
		e.width -= bound
		*probability -= *probability >> moveBits
	}
	e.widen()
}

// direct writes the lowest count bits of value, highest first, as even odds.
func (e *rangeEncoder) direct(value uint32, count int) {
	for i := count - 1; i >= 0; i-- {
		e.width >>= 1
		e.low += uint64(e.width) * uint64(value>>i&1)
		e.widen()
	}
}

// tree writes the lowest count bits of value, highest first. Each bit has a
// probability for every way the bits before it can be.
func (e *rangeEncoder) tree(probabilities []uint16, value uint32, count int) {
	node := uint32(1)
	for i := count - 1; i >= 0; i-- {
		bit := value >> i & 1
		e.bit(&probabilities[node], bit)
		node = node<<1 | bit
	}
}

// reverseTree is tree with the lowest bit first.
func (e *rangeEncoder) reverseTree(probabilities []uint16, value uint32, count int) {
	node := uint32(1)
	for i := range count {
		bit := value >> i & 1
		e.bit(&probabilities[node], bit)
		node = node<<1 | bit
	}
}

// widen goes on to the next byte where the range has become narrow.
func (e *rangeEncoder) widen() {
	for e.width < 1<<24 {
		e.width <<= 8
		e.shift()
	}
}

// shift takes the highest byte from low, and writes those that no carry can
// change any more. The first byte of a stream is always 0.
func (e *rangeEncoder) shift() {
	carry, top := byte(e.low>>32), byte(e.low>>24)
	if carry == 0 && top == 0xff {
		e.full++
	} else {
		e.bytes = append(e.bytes, e.held+carry)
		for ; e.full > 0; e.full-- {
			e.bytes = append(e.bytes, 0xff+carry)
		}
		e.held = top
	}
	e.low = e.low & 0xffffff << 8
}

// finish writes what is held back.
func (e *rangeEncoder) finish() {
	for range 5 {
		e.shift()
	}
}

// wholeBit is the price of a bit at even odds.
const wholeBit = 64

// prices0 are the prices of a 0 at each probability (Shannon).
var prices0 = func() (prices [certain]uint32) {
	for p := range prices {
		prices[p] = uint32(math.Round(-wholeBit * math.Log2(max(float64(p), 0.5)/certain)))
	}
	return prices
}()

func bitPrice(probability uint16, bit uint32) uint32 {
	if bit == 0 {
		return prices0[probability]
	}
	return prices0[certain-probability]
}

func treePrice(probabilities []uint16, value uint32, count int) (price uint32) {
	node := uint32(1)
	for i := count - 1; i >= 0; i-- {
		bit := value >> i & 1
		price += bitPrice(probabilities[node], bit)
		node = node<<1 | bit
	}
	return price
}

func reverseTreePrice(probabilities []uint16, value uint32, count int) (price uint32) {
	node := uint32(1)
	for i := range count {
		bit := value >> i & 1
		price += bitPrice(probabilities[node], bit)
		node = node<<1 | bit
	}
	return price
}
