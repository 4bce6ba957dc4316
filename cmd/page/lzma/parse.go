package lzma

import "slices"

const (
	stretch   = 2048 // places that are parsed at the same prices
	lookahead = 128  // places behind these that are parsed with them, as what pays shows later
	longRep   = 16   // beyond it, only the whole of a match at a last distance is tried
)

// parse cuts the data into the tokens that cost least in all, and writes them.
// What a token costs depends on those before it, by the model. So it goes
// stretch by stretch, with the prices of what is written so far.
func parse(w *tokenWriter) {
	finder := newFinder(w.data)
	lists := make(chan *found, 4)
	go func() {
		for finder.at < len(w.data) {
			lists <- finder.find(stretch)
		}
		close(lists)
	}()
	p := &parser{data: w.data, next: <-lists}
	for from := 0; from < len(w.data); from += stretch {
		p.from, p.this, p.next = from, p.next, <-lists
		p.prices.learn(w.model)
		for _, t := range p.cheapest(w.at, w.past) {
			if w.at >= from+stretch {
				break
			}
			w.token(t)
		}
	}
}

// parser finds the way through one stretch after the other.
type parser struct {
	data       []byte
	prices     prices
	from       int    // where the stretch begins
	this, next *found // the matches in it and in the next
	places     [stretch + lookahead + maxMatch]ways
}

// cheapest gives the tokens of the cheapest way from a place to the end of the
// stretch and some more.
//
//go:norace
func (p *parser) cheapest(begin int, now past) []token {
	end := min(p.from+stretch+lookahead, len(p.data))
	for i := range p.places {
		p.places[i].count = 0
	}
	p.places[0].add(way{distance: now.reps[0]})
	p.places[0].pasts[0] = now
	for at := begin; at < end; at++ {
		here := &p.places[at-begin]
		for i, w := range here.list[:here.count] {
			if at > begin {
				here.pasts[i] = p.places[at-begin-int(w.token.length)].pasts[w.before].with(w.token)
			}
			p.steps(at, p.places[at-begin:], i)
		}
	}
	var tokens []token
	for at, i := end-begin, int32(0); at > 0; {
		w := &p.places[at].list[i]
		tokens = append(tokens, w.token)
		at, i = at-int(w.token.length), w.before
	}
	slices.Reverse(tokens)
	return tokens
}

// steps goes on, by every step that there is, from one of the ways to a place.
//
//go:norace
func (p *parser) steps(at int, places []ways, from int) {
	cost, past := places[0].list[from].cost, &places[0].pasts[from]
	position := at % positions
	kinds := p.prices.kinds(int(past.state), position)
	step := func(price uint32, distance int32, t token) {
		places[t.length].add(way{cost: cost + price, distance: distance, token: t, before: int32(from)})
	}

	last := past.reps[0]
	step(kinds.literal+p.prices.literal(p.data, at, past), last, token{1, literal})
	for i, distance := range past.reps {
		length := p.same(at, int(distance))
		if i == 0 && length > 0 {
			step(kinds.oneByte, last, token{1, 0})
		}
		for length >= minMatch {
			step(kinds.rep[i]+p.prices.repLen[position][length], distance, token{int32(length), int32(i)})
			length = min(length-1, longRep)
		}
	}
	if from > 0 {
		return // a fresh distance goes best with the cheapest way
	}
	length := int32(minMatch)
	for _, m := range p.matches(at) {
		for ; length <= m.length; length++ {
			price := kinds.fresh + p.prices.matchLen[position][length] + p.prices.distance(uint32(m.distance-1), lengthClass(length))
			step(price, m.distance, token{length, fresh + m.distance})
		}
	}
}

// same counts the bytes that go on as they do distance bytes back.
func (p *parser) same(at, distance int) int {
	if distance > at {
		return 0
	}
	here, there := p.data[at:min(at+maxMatch, len(p.data))], p.data[at-distance:]
	length := 0
	for length < len(here) && there[length] == here[length] {
		length++
	}
	return length
}

func (p *parser) matches(at int) []match {
	if at < p.from+stretch {
		return p.this.at(at - p.from)
	}
	return p.next.at(at - p.from - stretch)
}
