package rewrite

// layout is how the basic blocks of a function are to stand in WebAssembly
// blocks and loops. Places are those in the order of the basic blocks.
type layout struct {
	place   []int         // of each basic block
	loops   map[int]int   // the last place of each loop, by its first
	back    map[int]int64 // the points by which jumps back go through the table, by place
	entered []bool        // by place: whether the table leads there
	wanted  []bool        // by place: whether a WebAssembly block must end there
	home    []int         // by place: the first place of the loop that this block must stand in, or noLoop
}

const noLoop = -1

func (f *function) lay() *layout {
	n := len(f.order)
	l := &layout{place: make([]int, n), wanted: make([]bool, n), home: make([]int, n)}
	for at, b := range f.order {
		l.place[b] = at
	}
	l.findLoops(f)
	copy(l.wanted, l.entered)
	f.eachJump(func(at int, s step) {
		if to := l.place[s.to]; to > at {
			l.wanted[to] = true
		}
	})
	for at := range l.home {
		l.home[at] = noLoop
		for first, last := range l.loops {
			if first < at && at <= last {
				l.home[at] = max(l.home[at], first) // the innermost
			}
		}
	}
	return l
}

// findLoops finds the loops that can stand as WebAssembly loops, which are
// those that nothing enters but at their beginning. Each loop that cannot has
// its beginning entered through the table, and so may spoil another.
func (l *layout) findLoops(f *function) {
	l.loops = map[int]int{}
	f.eachJump(func(at int, s step) {
		if to := l.place[s.to]; to <= at {
			l.loops[to] = at // the last of all is kept
		}
	})
	for spoilt := true; spoilt; {
		l.enter(f)
		spoilt = false
		for first, last := range l.loops {
			if l.isEntered(f, first, last) {
				delete(l.loops, first)
				spoilt = true
			}
		}
	}
}

// enter finds which places the table must lead to.
func (l *layout) enter(f *function) {
	l.entered, l.back = make([]bool, len(f.order)), map[int]int64{}
	for p := range f.entries {
		l.entered[l.place[f.blockOf(p)]] = true
	}
	f.eachJump(func(at int, s step) {
		to := l.place[s.to]
		if _, ok := l.loops[to]; to <= at && !ok {
			l.entered[to] = true
			l.back[to] = f.pointOf(s.to)
		}
	})
}

// isEntered tells whether anything goes into a loop but at its beginning.
func (l *layout) isEntered(f *function, first, last int) bool {
	for at := first + 1; at <= last; at++ {
		if l.entered[at] {
			return true
		}
	}
	entered := false
	f.eachJump(func(at int, s step) {
		if to := l.place[s.to]; (at < first || at > last) && first < to && to <= last {
			entered = true
		}
	})
	return entered
}

// eachJump calls do for each jump between basic blocks, in order.
func (f *function) eachJump(do func(at int, s step)) {
	for at, b := range f.order {
		for _, s := range f.blocks[b] {
			if s.to >= 0 {
				do(at, s)
			}
		}
	}
}
