package gzip

import (
	"math"
	"math/bits"
	"slices"
)

// The symbols of DEFLATE (RFC 1951, 3.2.5): literals 0 to 255, end of block
// 256, lengths 257 to 285 and distances 0 to 29, the last two with extra bits.
const (
	endOfBlock      = 256
	literalSymbols  = 286
	distanceSymbols = 30
)

// lengthSymbol is the symbol of a match's length.
func lengthSymbol(length int) int {
	switch l := length - minMatch; {
	case length == maxMatch:
		return 285
	case l < 8:
		return 257 + l
	default:
		extra := bits.Len(uint(l)) - 3
		return 257 + extra*4 + l>>extra
	}
}

// lengthExtra is how many bits follow the symbol of a length, and their value.
func lengthExtra(length int) (count int, value uint32) {
	l := length - minMatch
	if length == maxMatch || l < 8 {
		return 0, 0
	}
	count = bits.Len(uint(l)) - 3
	return count, uint32(l) & (1<<count - 1)
}

// distanceSymbol is the symbol of a match's distance.
func distanceSymbol(distance int) int {
	d := distance - 1
	if d < 4 {
		return d
	}
	extra := bits.Len(uint(d)) - 2
	return extra*2 + d>>extra
}

// distanceExtra is how many bits follow the symbol of a distance, and their value.
func distanceExtra(distance int) (count int, value uint32) {
	d := distance - 1
	if d < 4 {
		return 0, 0
	}
	count = bits.Len(uint(d)) - 2
	return count, uint32(d) & (1<<count - 1)
}

// prices are what tokens cost, in 1/256 bit.
type prices struct {
	literal  [256]uint32
	length   [maxMatch + 1]uint32
	distance [distanceSymbols]uint32
}

// firstPrices are a guess that serves until there are tokens to count.
func firstPrices() *prices {
	var literals [literalSymbols]int
	var distances [distanceSymbols]int
	for i := range literals {
		literals[i] = 1 + i/endOfBlock*7 // lengths more often than any one byte
	}
	for i := range distances {
		distances[i] = 1
	}
	return priced(&literals, &distances)
}

func pricesOf(tokens []token) *prices { return priced(count(tokens)) }

// priced gives each symbol the bits that its share of all symbols is worth
// (Shannon), and adds the extra bits.
func priced(literals *[literalSymbols]int, distances *[distanceSymbols]int) *prices {
	worth := func(counts []int) []uint32 {
		all := 0
		for _, n := range counts {
			all += n
		}
		out := make([]uint32, len(counts))
		for i, n := range counts {
			// A symbol not seen yet costs about what one seen once does.
			out[i] = uint32(math.Round(256 * math.Log2(float64(all+1)/(float64(n)+0.5*float64(1-min(n, 1))))))
		}
		return out
	}
	p := &prices{}
	lit, dist := worth(literals[:]), worth(distances[:])
	copy(p.literal[:], lit)
	for l := minMatch; l <= maxMatch; l++ {
		extra, _ := lengthExtra(l)
		p.length[l] = lit[lengthSymbol(l)] + uint32(extra)<<8
	}
	for s := range p.distance {
		p.distance[s] = dist[s] + uint32(max(0, s/2-1))<<8
	}
	return p
}

// count tells how often each symbol comes up.
func count(tokens []token) (*[literalSymbols]int, *[distanceSymbols]int) {
	var literals [literalSymbols]int
	var distances [distanceSymbols]int
	for _, t := range tokens {
		if t.length == 0 {
			literals[t.literal]++
		} else {
			literals[lengthSymbol(int(t.length))]++
			distances[distanceSymbol(int(t.distance))]++
		}
	}
	literals[endOfBlock] = 1
	return &literals, &distances
}

// codeLengths are the lengths of a Huffman code for the counts, none above
// most. Where the best code is longer, the counts are flattened until it fits.
func codeLengths(counts []int, most int) []int {
	type node struct {
		count       int
		left, right int // of the list; symbols have none
	}
	weights := slices.Clone(counts)
	for {
		var nodes []node
		var open []int // nodes without a parent
		symbol := map[int]int{}
		for s, n := range weights {
			if n > 0 {
				symbol[len(nodes)] = s
				open = append(open, len(nodes))
				nodes = append(nodes, node{n, -1, -1})
			}
		}
		lengths := make([]int, len(counts))
		if len(open) == 1 {
			lengths[symbol[0]] = 1
			return lengths
		}
		for len(open) > 1 {
			slices.SortStableFunc(open, func(a, b int) int { return nodes[b].count - nodes[a].count })
			a, b := open[len(open)-1], open[len(open)-2]
			open = append(open[:len(open)-2], len(nodes))
			nodes = append(nodes, node{nodes[a].count + nodes[b].count, a, b})
		}
		deepest := 0
		var walk func(at, depth int)
		walk = func(at, depth int) {
			if n := nodes[at]; n.left >= 0 {
				walk(n.left, depth+1)
				walk(n.right, depth+1)
				return
			}
			lengths[symbol[at]] = depth
			deepest = max(deepest, depth)
		}
		if len(open) == 1 {
			walk(open[0], 0)
		}
		if deepest <= most {
			return lengths
		}
		for i, n := range weights {
			if n > 0 {
				weights[i] = n/2 + 1
			}
		}
	}
}

// codesOf are the canonical codes of these lengths (RFC 1951, 3.2.2), turned
// round, as the stream begins with the highest bit of a code.
func codesOf(lengths []int) []uint32 {
	var have [16]int
	for _, l := range lengths {
		have[l]++
	}
	have[0] = 0
	var next [16]uint32
	for l, code := 1, uint32(0); l < 16; l++ {
		code = (code + uint32(have[l-1])) << 1
		next[l] = code
	}
	codes := make([]uint32, len(lengths))
	for s, l := range lengths {
		if l > 0 {
			codes[s] = bits.Reverse32(next[l]) >> (32 - l)
			next[l]++
		}
	}
	return codes
}
