package lzma

// match is the nearest earlier place where the same length bytes stand,
// distance bytes back.
type match struct{ length, distance int32 }

// found are the matches of a stretch of places, for each place by length, and
// therewith by distance.
type found struct {
	matches []match
	begins  []int32 // of each place, and the end of the last
}

func (f *found) at(i int) []match { return f.matches[f.begins[i]:f.begins[i+1]] }

// finder keeps the places it has passed in binary trees, sorted by the data
// that stands there: a tree for every first two bytes. Each new place becomes
// the root of its tree. So the way down goes from near places to far ones, and
// comes by the nearest match of every length.
type finder struct {
	data  []byte
	at    int // the next place
	roots [1 << 16]int32
	sides [][2]int32 // of each place, the trees of what sorts before it and behind it
}

// A tree is told by the place at its root, plus one: so 0 is the empty tree.

// deepest is how many steps down a tree it goes at most; what hangs below is
// forgotten.
const deepest = 100

func newFinder(data []byte) *finder {
	return &finder{data: data, sides: make([][2]int32, len(data))}
}

// find gives the matches of the next places.
func (f *finder) find(places int) *found {
	list := &found{}
	for range min(places, len(f.data)-f.at) {
		list.begins = append(list.begins, int32(len(list.matches)))
		list.matches = f.pass(list.matches)
	}
	list.begins = append(list.begins, int32(len(list.matches)))
	return list
}

// pass adds the matches of one place, and the place to its tree.
//
//go:norace
func (f *finder) pass(matches []match) []match {
	at := f.at
	f.at++
	here := f.data[at:min(at+maxMatch, len(f.data))]
	if len(here) < minMatch {
		return matches
	}
	root := &f.roots[int(here[0])<<8|int(here[1])]
	tree := *root
	*root = int32(at + 1)

	// The old tree is taken apart along the way down. Whatever sorts before
	// the new place goes to one side of it, the rest to the other; ends are
	// where the next part of each goes.
	ends := [2]*int32{&f.sides[at][0], &f.sides[at][1]}
	var same [2]int // how many bytes the last place on each side has in common with the new one: all between have, too
	best := minMatch - 1
	for step := 0; tree > 0 && step < deepest; step++ {
		other := int(tree - 1)
		there := f.data[other:]
		length := min(same[0], same[1])
		for length < len(here) && there[length] == here[length] {
			length++
		}
		if length > best {
			best = length
			matches = append(matches, match{int32(length), int32(at - other)})
		}
		if length == len(here) { // nothing tells the two apart: the new place stands for both
			*ends[0], *ends[1] = f.sides[other][0], f.sides[other][1]
			return matches
		}
		side := 0
		if there[length] > here[length] {
			side = 1
		}
		same[side] = length
		*ends[side] = tree
		ends[side] = &f.sides[other][1-side]
		tree = *ends[side]
	}
	*ends[0], *ends[1] = 0, 0
	return matches
}
