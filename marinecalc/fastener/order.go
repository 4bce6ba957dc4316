// The order in which the bolts of a circle are tightened.

package fastener

import (
	"strconv"
	"strings"
)

// mostBolts is the largest count that is taken for a flange, not for a slip.
const mostBolts = 48

// BoltOrder is the order in which the bolts of a circle of so many are tightened;
// that of none is 0.
type BoltOrder int

// Sequence gives the bolts by their numbers, as [TighteningOrder] does.
func (o BoltOrder) Sequence() []int { return TighteningOrder(int(o)) }

// String is the order as people read it, "1 - 3 - 2 - 4".
func (o BoltOrder) String() string {
	words := make([]string, 0, max(o, 0))
	for _, bolt := range o.Sequence() {
		words = append(words, strconv.Itoa(bolt))
	}
	return strings.Join(words, " - ")
}

// TighteningOrder gives the bolts of a circle of n, numbered round from 1, in
// the order in which a pass goes over them.
//
// Counts that four divides go crosswise by quarters (ASME PCC-1, the older
// cross pattern, from memory: 1-5-3-7-2-6-4-8 for eight); other even counts
// go bolt and opposite bolt, the pairs spread apart; odd counts go in the star
// that skips just under half the circle (common practice, no source).
func TighteningOrder(n int) []int {
	order := make([]int, 0, max(n, 0))
	switch {
	case n <= 3:
		for k := range n {
			order = append(order, k+1)
		}
	case n%4 == 0:
		for k := 1; k <= n/4; k++ {
			order = append(order, k, k+n/2, k+n/4, k+3*n/4)
		}
	case n%2 == 0:
		// Half of an even count that four does not divide is odd.
		for _, k := range star(n / 2) {
			order = append(order, k, k+n/2)
		}
	default:
		order = star(n)
	}
	return order
}

// star goes round an odd count in steps of just under half of it, which meets
// every bolt once.
func star(n int) []int {
	order := make([]int, 0, n)
	for i := range n {
		order = append(order, i*(n/2)%n+1)
	}
	return order
}
