package lzma

import "math/bits"

// Most probabilities depend on the lowest 2 bits of the place, as tables in
// the data stand at even addresses; those of literals on the highest 3 bits of
// the byte before.
const (
	positionBits = 2
	positions    = 1 << positionBits
	literalBits  = 3
)

// model holds the probabilities of all bits, in the order that site/lzma.js
// has them too. The names are those of the specification.
type model [modelSize]uint16

const (
	states     = 12
	isMatch    = 0                             // by state and position; 0 is a literal
	isRep      = isMatch + states*positions    // by state; 1 is one of the last four distances
	isRepG0    = isRep + states                // by state; 0 is the last distance
	isRepG1    = isRepG0 + states              // by state; 0 is the one before
	isRepG2    = isRepG1 + states              // by state; 0 is the third, 1 the fourth
	isRep0Long = isRepG2 + states              // by state and position; 0 is one byte only
	matchLen   = isRep0Long + states*positions // the length at a new distance
	repLen     = matchLen + lengthSize         // the length at one of the last four
	slots      = repLen + lengthSize           // the slot of a distance: four trees of 64, by length
	nearBits   = slots + 4*64                  // the bits below slots 4 to 13: a tree of 32 for each
	alignBits  = nearBits + (farSlot-4)*32     // the lowest four bits below any other slot: a tree of 16
	literals   = alignBits + 16                // three trees of 256, by the byte before
	modelSize  = literals + 3*256<<literalBits
)

// farSlot is the first slot with more bits below than have probabilities.
const farSlot = 14

// The probabilities of a length.
const (
	isLong     = 0                       // 0 is less than 10
	isLongest  = 1                       // 0 is less than 18
	shortLen   = 2                       // trees of 8, by position
	middleLen  = shortLen + 8*positions  // the same
	longLen    = middleLen + 8*positions // a tree of 256
	lengthSize = longLen + 256
)

const (
	minMatch = 2
	maxMatch = minMatch + 8 + 8 + 256 - 1
)

func newModel() *model {
	m := &model{}
	for i := range m {
		m[i] = certain / 2
	}
	return m
}

// literal are the probabilities of a byte that stands behind before.
func (m *model) literal(before byte) []uint16 {
	return m[literals+3*256*int(before>>(8-literalBits)):][:3*256]
}

// slotTree are the probabilities of a distance's slot, for a match's length.
func (m *model) slotTree(class int) []uint16 { return m[slots+64*class:][:64] }

// lengthClass is what the slot of a distance depends on.
func lengthClass(length int32) int { return int(min(length-minMatch, 3)) }

// slotOf tells the highest two bits of a distance less one and their place, as
// one number, and how many bits come below them.
func slotOf(distance uint32) (slot, below int) {
	if distance < 4 {
		return int(distance), 0
	}
	below = bits.Len32(distance) - 2
	return below*2 + int(distance>>below), below
}
