package lzma

// way is a way to a place: the cheapest that ends with that distance.
type way struct {
	cost     uint32
	distance int32 // the last one
	token    token // the last step
	before   int32 // which way to the place where that step began
}

// mostWays is how many ways to a place are kept. One would not do: a dearer
// one may pay later, when its last distance serves once more.
const mostWays = 4

// ways are those to one place, cheapest first, each with a distance of its own.
type ways struct {
	list  [mostWays]way
	count int
	pasts [mostWays]past // of each way; set once the place is reached
}

// add takes w in, unless there are better ones.
//
//go:norace
func (s *ways) add(w way) {
	if s.count == mostWays && w.cost >= s.list[mostWays-1].cost {
		return
	}
	at := 0
	for ; at < s.count && s.list[at].cost <= w.cost; at++ {
		if s.list[at].distance == w.distance {
			return
		}
	}
	// It takes the room of the one with the same distance, or of the dearest.
	room := at
	for room < s.count && s.list[room].distance != w.distance {
		room++
	}
	if room == s.count {
		s.count = min(s.count+1, mostWays)
		room = s.count - 1
	}
	copy(s.list[at+1:room+1], s.list[at:room])
	s.list[at] = w
}
