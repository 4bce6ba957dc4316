// Decks that are kept.

package spread

import "sync"

// What is shuffled depends on seed, number of trials and the factor's place
// alone, so that it is dealt once and not for every sheet: without that bolt
// preload takes 1.39 of the time, the whole boat 1.27. It is kept for as many
// trials as most runs have and as many factors; about 17 kB a factor.
const (
	mostKept    = DefaultTrials // trials
	mostPlaces  = 64            // factors
	mostDealers = 6             // pairs of seed and number of trials
)

// dealer deals for one seed and number of trials.
type dealer struct {
	seed   uint64
	n      int
	edges  func() []float64 // see edges
	groups int
	mutex  sync.Mutex
	decks  []*deck // by the factor's place; nil where none is dealt yet
}

var dealers struct {
	sync.Mutex
	list []*dealer
}

// dealerFor finds the dealer for a seed and a number of trials.
func dealerFor(seed uint64, n int) *dealer {
	dealers.Lock()
	defer dealers.Unlock()
	for _, d := range dealers.list {
		if d.seed == seed && d.n == n {
			return d
		}
	}
	d := &dealer{seed: seed, n: n, groups: groupsFor(n), edges: sync.OnceValue(func() []float64 { return edges(n) })}
	if n > mostKept {
		return d
	}
	if len(dealers.list) == mostDealers { // the oldest makes room
		dealers.list = append(dealers.list[:0], dealers.list[1:]...)
	}
	dealers.list = append(dealers.list, d)
	return d
}

// deal deals anew for the factor at a place.
func (d *dealer) deal(place int) *deck {
	if side := arraySide(d.n); place < arrayColumns(side) {
		return dealArray(newStream(d.seed, place), side, place)
	}
	return deal(newStream(d.seed, place), d.n, d.groups)
}

// deck is that of the factor at a place.
func (d *dealer) deck(place int) *deck {
	if d.n > mostKept || place >= mostPlaces {
		return d.deal(place)
	}
	d.mutex.Lock()
	defer d.mutex.Unlock()
	for len(d.decks) <= place {
		d.decks = append(d.decks, nil)
	}
	if d.decks[place] == nil {
		d.decks[place] = d.deal(place)
	}
	return d.decks[place]
}
